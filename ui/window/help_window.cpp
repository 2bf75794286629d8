#include "burrow/window/help_window.h"

#include <QDir>
#include <QFile>
#include <QHash>
#include <QLineEdit>
#include <QListWidget>
#include <QSplitter>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextDocument>
#include <QVBoxLayout>
#include <optional>
#include <utility>
#include <vector>

#include "burrow/document/language.h"
#include "burrow/document/text.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "burrow/words/label_table.h"

namespace burrow {

namespace {
constexpr double page_margin = 14;

/// Below a line "{{languages}}" stand rows with an English term each: they get a column for every language, read from
/// its own catalogue.
QString with_terms(const QString& page) {
  const QString mark = QStringLiteral("{{languages}}");
  if (!page.contains(mark)) return page;
  static QHash<QString, QString> made;  // the catalogues take a while to read
  if (const auto known = made.constFind(page); known != made.constEnd()) return *known;
  std::vector<Dictionary> dictionaries;
  QString heading = QStringLiteral("| English |"), line = QStringLiteral("| --- |");
  for (const QString& language : languages()) {
    std::optional<Dictionary> known =
        language == QLatin1String("en") ? std::nullopt : dictionary_of(language.toStdString());
    if (!known) continue;
    heading += QStringLiteral(" %1 |").arg(language_name(language));
    line += QStringLiteral(" --- |");
    dictionaries.push_back(std::move(*known));
  }
  QStringList out;
  bool in_table = false;
  for (const QString& row : page.split(QLatin1Char('\n'))) {
    if (row == mark) out << heading << line;
    in_table = row == mark || (in_table && row.startsWith(QLatin1Char('|')));
    if (row == mark) continue;
    if (!in_table) {
      out << row;
      continue;
    }
    const std::string term = row.section(QLatin1Char('|'), 1, 1).trimmed().toStdString();
    QString cells = row;
    for (const Dictionary& dictionary : dictionaries) {
      const auto it = dictionary.texts.find(term);
      cells += QStringLiteral(" %1 |").arg(it == dictionary.texts.end() ? QStringLiteral("–") : text_from(it->second));
    }
    out << cells;
  }
  return *made.insert(page, out.join(QLatin1Char('\n')));
}
}  // namespace

std::vector<HelpPage> help_pages() {
  std::vector<HelpPage> pages;
  const QString english = QStringLiteral(":/help/");
  const QString own = english + text_from(dictionary().language) + QLatin1Char('/');
  const QString labels = text_from(label_table(load_tables()));  // counted now: it cannot be out of date
  for (const QString& name : QDir(english).entryList({QStringLiteral("*.md")}, QDir::Files, QDir::Name)) {
    const bool translated_page = dictionary().language == "en" || QFile::exists(own + name);
    QFile file((QFile::exists(own + name) ? own : english) + name);
    if (!file.open(QIODevice::ReadOnly)) continue;
    HelpPage page;
    page.text = QString::fromUtf8(file.readAll());
    if (!translated_page)
      page.text.insert(
          page.text.indexOf(QLatin1Char('\n')),
          QStringLiteral("\n\n*%1*").arg(QObject::tr("This page has no translation yet: it is in English.")));
    page.text.replace(QLatin1String("{{labels}}\n"), labels);
    page.text = with_terms(page.text);
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
