#include "burrow/window/help_window.h"

#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QListWidget>
#include <QSplitter>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextDocument>
#include <QVBoxLayout>
#include <utility>

#include "burrow/document/text.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "burrow/words/label_table.h"

namespace burrow {

namespace {
constexpr double page_margin = 14;
}  // namespace

std::vector<HelpPage> help_pages() {
  std::vector<HelpPage> pages;
  const QString own = QStringLiteral(":/help/%1/").arg(text_from(dictionary().language));
  const QString folder = QDir(own).exists() ? own : QStringLiteral(":/help/");
  const QString labels = text_from(label_table(load_tables()));  // counted now: it cannot be out of date
  for (const QString& name : QDir(folder).entryList({QStringLiteral("*.md")}, QDir::Files, QDir::Name)) {
    QFile file(folder + name);
    if (!file.open(QIODevice::ReadOnly)) continue;
    HelpPage page;
    page.text = QString::fromUtf8(file.readAll());
    page.text.replace(QLatin1String("{{labels}}\n"), labels);
    page.title = page.text.section(QLatin1Char('\n'), 0, 0).remove(QLatin1String("# "));
    pages.push_back(page);
  }
  return pages;
}

HelpWindow::HelpWindow(QWidget* parent)
    : QWidget(parent, Qt::Window),
      pages_(help_pages()),
      search_(new QLineEdit(this)),
      list_(new QListWidget(this)),
      text_(new QTextBrowser(this)) {
  setWindowTitle(tr("Help – Burrowline"));
  search_->setPlaceholderText(tr("search all pages"));
  search_->setClearButtonEnabled(true);
  search_->setAccessibleName(tr("Search the help"));
  list_->setAccessibleName(tr("Pages of the help"));
  text_->setAccessibleName(tr("Page of the help"));
  text_->setOpenLinks(false);
  auto* left = new QWidget(this);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(search_);
  column->addWidget(list_);
  auto* splitter = new QSplitter(this);
  splitter->addWidget(left);
  splitter->addWidget(text_);
  splitter->setStretchFactor(1, 1);
  splitter->setSizes({230, 640});
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(splitter);
  connect(search_, &QLineEdit::textChanged, this, &HelpWindow::filter);
  connect(list_, &QListWidget::currentRowChanged, this, &HelpWindow::show_page);
  filter({});
  resize(920, 640);
}

void HelpWindow::filter(const QString& words) {
  shown_.clear();
  list_->clear();
  const QStringList wanted = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    bool all = true;
    for (const QString& word : wanted) all = all && pages_[i].text.contains(word, Qt::CaseInsensitive);
    if (!all) continue;
    shown_.push_back(i);
    list_->addItem(pages_[i].title);
  }
  if (shown_.empty())
    text_->setPlainText(tr("No page has all of these words. Try fewer."));
  else
    list_->setCurrentRow(0);
}

void HelpWindow::show_heading(const QString& heading) {
  const QString line = QStringLiteral("\n## %1\n").arg(heading);
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    if (!pages_[i].text.contains(line)) continue;
    search_->clear();  // then every page is listed, in order
    list_->setCurrentRow(static_cast<int>(i));
    for (QTextBlock block = text_->document()->begin(); block.isValid(); block = block.next()) {
      if (block.blockFormat().headingLevel() != 2 || block.text() != heading) continue;
      text_->setTextCursor(QTextCursor(text_->document()->end()));
      text_->ensureCursorVisible();  // from below: then the heading comes to stand at the top
      text_->setTextCursor(QTextCursor(block));
      return;
    }
  }
}

void HelpWindow::show_page(int row) {
  if (row < 0 || static_cast<std::size_t>(row) >= shown_.size()) return;
  // Read before it is shown: a document that is on the screen is laid out anew at every block of it.
  auto* page = new QTextDocument(this);
  page->setDefaultFont(text_->document()->defaultFont());
  page->setDocumentMargin(page_margin);
  page->setMarkdown(pages_[shown_[static_cast<std::size_t>(row)]].text);
  const QTextDocument* last = std::exchange(page_, page);
  text_->setDocument(page);
  delete last;
  const QStringList wanted = search_->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
  if (!wanted.isEmpty()) text_->find(wanted.front());
}

}  // namespace burrow
