#include "burrow/panels/text_form.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

#include "burrow/base/date.h"
#include "burrow/document/text.h"
#include "burrow/widgets/offered_text.h"

namespace burrow {

namespace {
constexpr int longest = 400;     ///< letters
constexpr int most_rows = 1000;  ///< the complaint stands below all of them
}  // namespace

QString offered(TextKind kind, const Document& document) {
  if (kind == TextKind::name) return document.last_name();
  const std::optional<Date>& today = document.tables().judged_on;
  return kind == TextKind::day && today ? text_from(text_of(*today)) : QString();
}

QString fault_of_text(TextKind kind, const QString& text) {
  if (kind != TextKind::day || text.trimmed().isEmpty() || date_of(text.trimmed().toStdString())) return {};
  return TextForm::tr("Not taken: “%1” is no day. Write it as 2026-03-14.").arg(text.trimmed());
}

TextForm::TextForm(Document& document, std::function<ItemRef()> part, QWidget* parent)
    : QWidget(parent),
      document_(document),
      part_(std::move(part)),
      grid_(new QGridLayout(this)),
      wrong_(new QLabel(this)) {
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setHorizontalSpacing(8);
  grid_->setVerticalSpacing(4);
  grid_->setColumnStretch(0, 2);
  grid_->setColumnStretch(1, 3);
  wrong_->setWordWrap(true);
  wrong_->hide();
  grid_->addWidget(wrong_, most_rows, 0, 1, 2);
}

void TextForm::add(TextField field, const QString& hint, bool long_words) {
  const auto at = rows_.size();
  auto* name = new QLabel(field.label, this);
  name->setWordWrap(true);
  auto* entry = new QLineEdit(this);
  entry->setAccessibleName(field.label);
  entry->setToolTip(hint);
  entry->setMaxLength(longest);
  entry->setMinimumWidth(60);
  entry->installEventFilter(this);
  name->setBuddy(entry);
  const int line = 2 * static_cast<int>(at);
  grid_->addWidget(name, line, 0, 1, long_words ? 2 : 1);
  grid_->addWidget(entry, long_words ? line + 1 : line, long_words ? 0 : 1, 1, long_words ? 2 : 1);
  connect(entry, &QLineEdit::editingFinished, this, [this, at] { take_over(at); });
  OfferedText* offer = nullptr;
  if (field.kind != TextKind::words) {
    offer = new OfferedText(entry, [this, kind = field.kind] { return offered(kind, document_); });
    connect(offer, &OfferedText::taken, this, [this, at] { take_over(at); });
  }
  rows_.push_back({std::move(field), entry, hint, offer});
}

void TextForm::complain(const QString& what) {
  wrong_->setText(what);
  wrong_->setVisible(!what.isEmpty());
}

QString TextForm::complaint() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
}

void TextForm::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::WindowText, theme.stop);
  wrong_->setPalette(colours);
}

void TextForm::catch_up() {
  const ItemRef part = part_();
  if (!(part == shown_)) drop_typing();
  shown_ = part;
  const bool locked = document_.crossing().version > known_file_version;
  for (const Row& row : rows_) {
    row.entry->setReadOnly(locked);
    if (row.offer) row.offer->refresh();
    if (row.entry->isModified()) continue;
    const QString text = row.field.now();
    if (row.entry->text() == text) continue;
    row.entry->setText(text);
    row.entry->setCursorPosition(0);
    // What is longer than its entry can still be read in full.
    const bool longer = row.entry->fontMetrics().horizontalAdvance(text) + 8 > row.entry->width();
    row.entry->setToolTip(longer ? text : row.hint);
  }
}

bool TextForm::take_typing() {
  for (std::size_t i = 0; i < rows_.size(); ++i) take_over(i);
  return std::none_of(rows_.begin(), rows_.end(), [](const Row& row) { return row.entry->isModified(); });
}

void TextForm::drop_typing() {
  wrong_->hide();
  for (const Row& row : rows_) row.entry->setModified(false);
}

void TextForm::take_over(std::size_t at) {
  const Row& row = rows_[at];
  if (!row.entry->isModified()) return;
  const QString text = row.entry->text();
  if (const QString fault = fault_of_text(row.field.kind, text); !fault.isEmpty()) {
    complain(fault);
    return;
  }
  if (text != row.field.now()) {
    const QString whose = text_from(part_name(document_.crossing(), shown_));
    if (!document_.change(tr("Type %1 of %2").arg(row.field.label, whose),
                          [&](Crossing& c) { row.field.apply(c, text); })) {
      complain(tr("Not taken now: %1").arg(row.field.label));
      return;
    }
    if (row.field.kind == TextKind::name) document_.note_name(text);
  }
  row.entry->setModified(false);
  complain({});
}

QLineEdit* TextForm::entry(const QString& label) const {
  const auto row = std::find_if(rows_.begin(), rows_.end(), [&](const Row& r) { return r.field.label == label; });
  return row == rows_.end() ? nullptr : row->entry;
}

bool TextForm::eventFilter(QObject* watched, QEvent* event) {
  const auto row = std::find_if(rows_.begin(), rows_.end(), [&](const Row& r) { return r.entry == watched; });
  const bool key = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
  if (row != rows_.end() && key && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape &&
      row->entry->isModified()) {
    if (event->type() == QEvent::KeyPress) {
      drop_typing();
      catch_up();
      row->entry->selectAll();
    }
    event->accept();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace burrow
