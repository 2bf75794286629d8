#include "burrow/panels/at_once_form.h"

#include <QComboBox>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "burrow/widgets/offered_text.h"
#include "flow_row.h"

namespace burrow {

namespace {
constexpr int longest = 400;  ///< letters
}

AtOnceForm::AtOnceForm(Document& document, const QString& take, QWidget* parent)
    : QFrame(parent),
      document_(document),
      title_(new QLabel(this)),
      form_(new QVBoxLayout),
      wrong_(new QLabel(this)),
      leave_(new QPushButton(tr("Leave"), this)),
      take_(new QPushButton(take, this)) {
  setFrameShape(QFrame::StyledPanel);
  for (QLabel* label : {title_, wrong_}) label->setWordWrap(true);
  title_->setAccessibleName(tr("What is asked"));
  wrong_->setAccessibleName(tr("What is wrong with the answers"));
  wrong_->hide();
  form_->setSpacing(4);
  auto* rows = new QVBoxLayout(this);
  rows->addWidget(title_);
  rows->addLayout(form_);
  rows->addWidget(wrong_);
  auto* flow = new FlowRow(nullptr);
  for (QPushButton* button : {leave_, take_}) {
    button->setAutoDefault(false);
    flow->addWidget(button);
  }
  rows->addLayout(flow);
  connect(take_, &QPushButton::clicked, this, &AtOnceForm::give);
  connect(leave_, &QPushButton::clicked, this, &AtOnceForm::close_form);
  hide();
}

void AtOnceForm::add_labelled(const QString& label, QWidget* field) {
  auto* name = new QLabel(label, this);
  name->setWordWrap(true);
  name->setBuddy(field);
  form_->addWidget(name);
  form_->addWidget(field);
}

QLineEdit* AtOnceForm::add_text(const QString& label, TextKind kind, const QString& hint) {
  auto* entry = new QLineEdit(this);
  entry->setMaxLength(longest);
  entry->setMinimumWidth(60);
  entry->setAccessibleName(label);
  entry->setToolTip(hint);
  add_labelled(label, entry);
  OfferedText* offer = nullptr;
  if (kind != TextKind::words) offer = new OfferedText(entry, [this, kind] { return offered(kind, document_); });
  connect(entry, &QLineEdit::returnPressed, this, &AtOnceForm::give);
  rows_.push_back({entry, kind, offer});
  if (!first_) first_ = entry;
  return entry;
}

QComboBox* AtOnceForm::add_choice(const QString& label, const QStringList& words) {
  auto* combo = new QComboBox(this);
  combo->setAccessibleName(label);
  combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  combo->setMinimumContentsLength(6);
  combo->setFocusPolicy(Qt::StrongFocus);
  combo->addItems(words);
  add_labelled(label, combo);
  choices_.push_back(combo);
  if (!first_) first_ = combo;
  return combo;
}

void AtOnceForm::set_title(const QString& text) {
  title_->setText(text);
  title_->setVisible(!text.isEmpty());
}

void AtOnceForm::open() {
  complain({});
  for (const Row& row : rows_)
    if (row.offer) row.offer->refresh();
  show();
  if (first_) first_->setFocus(Qt::OtherFocusReason);
}

void AtOnceForm::close_form() {
  hide();
}

void AtOnceForm::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  QPalette red = colours;
  red.setColor(QPalette::WindowText, theme.stop);
  wrong_->setPalette(red);
}

void AtOnceForm::set_locked(bool locked) {
  for (QPushButton* button : {leave_, take_}) button->setEnabled(!locked);
  for (const Row& row : rows_) row.entry->setReadOnly(locked);
  for (QComboBox* combo : choices_) combo->setEnabled(!locked);
}

void AtOnceForm::complain(const QString& what) {
  wrong_->setText(what);
  wrong_->setVisible(!what.isEmpty());
}

QString AtOnceForm::complaint() const {
  return wrong_->isHidden() ? QString() : wrong_->text();
}

void AtOnceForm::give() {
  for (const Row& row : rows_)
    if (const QString fault = fault_of_text(row.kind, row.entry->text()); !fault.isEmpty()) {
      complain(fault);
      row.entry->setFocus(Qt::OtherFocusReason);
      row.entry->selectAll();
      return;
    }
  complain({});
  for (const Row& row : rows_)
    if (row.kind == TextKind::name) document_.note_name(row.entry->text());
  Q_EMIT given();
}

void AtOnceForm::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    close_form();
    return;
  }
  QFrame::keyPressEvent(event);
}

}  // namespace burrow
