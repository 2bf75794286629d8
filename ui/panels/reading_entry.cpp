#include "reading_entry.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
constexpr int glove = 48;
}

ReadingEntry::ReadingEntry(QWidget* parent)
    : QWidget(parent),
      kinds_(new QComboBox(this)),
      entry_(new QWidget(this)),
      grid_(new QGridLayout(entry_)),
      time_(new QLineEdit(entry_)),
      words_(new QLineEdit(entry_)),
      complaint_(new QLabel(this)),
      forms_(reading_forms(0)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  kinds_->setAccessibleName(tr("Kind"));
  kinds_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  kinds_->setMinimumContentsLength(6);
  kinds_->setFocusPolicy(Qt::StrongFocus);
  for (const ReadingForm& form : forms_) kinds_->addItem(text_from(translated_label(form.name)));
  make_kinds(column);
  column->addWidget(kinds_);
  column->addWidget(entry_);
  complaint_->setWordWrap(true);
  complaint_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Minimum);
  complaint_->setAccessibleName(tr("What is wrong with it"));
  column->addWidget(complaint_);
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setColumnStretch(0, 1);
  grid_->setColumnStretch(1, 1);
  time_->setAccessibleName(tr("time"));
  time_->setPlaceholderText(tr("now"));
  time_->setToolTip(tr("By the clock, as 19:58 or 7:58 pm, or since the start, as 5:10 or 12 min"));
  words_->setAccessibleName(tr("in words"));
  words_->hide();
  connect(kinds_, &QComboBox::activated, this, [this](int row) {
    keep_typing();
    show_form(row);
  });
  for (QLineEdit* edit : {time_, words_}) {
    connect(edit, &QLineEdit::returnPressed, this, &ReadingEntry::typed);
    edit->installEventFilter(this);
  }
  show_form(0);
}

/// What is read most often is one tap away: its first number has the focus then, and Enter takes it.
void ReadingEntry::make_kinds(QVBoxLayout* column) {
  auto* row = new QGridLayout;
  row->setSpacing(4);
  const std::pair<ReadingKind, QString> often[] = {{ReadingKind::pressure, tr("Pressure")},
                                                   {ReadingKind::grade, tr("Grade")},
                                                   {ReadingKind::fix, tr("Location")},
                                                   {ReadingKind::peg, tr("Peg")}};
  int at = 0;
  for (const auto& [kind, word] : often) {
    auto* button = new QPushButton(word, this);
    button->setAutoDefault(false);
    button->setMinimumHeight(glove);
    button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    row->addWidget(button, at / 2, at % 2);
    ++at;
    connect(button, &QPushButton::clicked, this, [this, wanted = kind] { begin(wanted); });
  }
  column->addLayout(row);
}

void ReadingEntry::begin(ReadingKind kind) {
  const auto form =
      std::find_if(forms_.begin(), forms_.end(), [&](const ReadingForm& one) { return one.kind == kind; });
  if (form == forms_.end()) return;
  const int row = static_cast<int>(form - forms_.begin());
  kinds_->setCurrentIndex(row);
  keep_typing();
  show_form(row);
  (inputs_.empty() ? time_ : inputs_.front())->setFocus(Qt::OtherFocusReason);
}

/// An empty entry has nothing of its own to take back: the last reading is.
bool ReadingEntry::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->matches(QKeySequence::Undo))
    if (const auto* edit = qobject_cast<QLineEdit*>(watched); edit && edit->text().isEmpty()) return true;
  return QWidget::eventFilter(watched, event);
}

void ReadingEntry::keep_typing() {
  QStringList texts;
  for (const QLineEdit* input : inputs_) texts << input->text();
  texts << words_->text();
  typed_[form_] = texts;
}

/// The inputs of one kind, with what was begun there before.
void ReadingEntry::show_form(int form) {
  form_ = std::clamp(form, 0, static_cast<int>(forms_.size()) - 1);
  grid_->removeWidget(time_);
  grid_->removeWidget(words_);
  while (QLayoutItem* item = grid_->takeAt(0)) {
    if (QWidget* widget = item->widget(); widget && widget != time_ && widget != words_) widget->deleteLater();
    delete item;
  }
  inputs_.clear();
  int row = 0;
  const auto add = [&](const QString& label, QLineEdit* input) {
    auto* name = new QLabel(label, entry_);
    name->setWordWrap(true);
    name->setBuddy(input);
    input->setAccessibleName(label);
    input->setMinimumHeight(glove);
    grid_->addWidget(name, row, 0);
    grid_->addWidget(input, row++, 1);
    input->show();
  };
  // The time stands first: of a mark it is all that is typed.
  add(tr("time"), time_);
  const QStringList begun = typed_[form_];
  for (const ReadingInput& input : this->form().inputs) {
    auto* edit = new QLineEdit(entry_);
    edit->setPlaceholderText(text_from(input.hint));
    edit->setText(begun.value(static_cast<int>(inputs_.size())));
    add(text_from(translated_label(input.label)), edit);
    connect(edit, &QLineEdit::returnPressed, this, &ReadingEntry::typed);
    edit->installEventFilter(this);
    inputs_.push_back(edit);
  }
  words_->setVisible(this->form().words);
  if (this->form().words) {
    words_->setText(begun.value(static_cast<int>(inputs_.size())));
    add(tr("in words"), words_);
  }
  complain({});
}

std::vector<std::string> ReadingEntry::numbers() const {
  std::vector<std::string> texts;
  for (const QLineEdit* input : inputs_) texts.push_back(input->text().toStdString());
  return texts;
}

std::string ReadingEntry::words() const {
  return words_->text().toStdString();
}

std::string ReadingEntry::time() const {
  return time_->text().trimmed().toStdString();
}

QLineEdit* ReadingEntry::input(const QString& label) const {
  for (QLineEdit* one : entry_->findChildren<QLineEdit*>())
    if (one->accessibleName().startsWith(label)) return one;
  return nullptr;
}

void ReadingEntry::complain(const QString& text) {
  complaint_->setText(text);
  complaint_->setVisible(!text.isEmpty());
}

void ReadingEntry::clear_form() {
  for (QLineEdit* input : inputs_) input->clear();
  words_->clear();
  time_->clear();
  typed_.erase(form_);
  complain({});
}

void ReadingEntry::clear_all() {
  typed_.clear();
  clear_form();
}

}  // namespace burrow
