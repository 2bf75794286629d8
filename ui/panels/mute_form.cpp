#include "burrow/panels/mute_form.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
constexpr int longest_reason = 300;
QString name_key() {
  return QStringLiteral("muted-by");
}
}  // namespace

MuteForm::MuteForm(QWidget* parent)
    : QFrame(parent),
      title_(new QLabel(this)),
      effect_(new QLabel(this)),
      reason_(new QLineEdit(this)),
      by_(new QLineEdit(this)),
      wrong_(new QLabel(this)),
      take_(new QPushButton(tr("Accept"), this)) {
  setFrameShape(QFrame::StyledPanel);
  for (QLabel* label : {title_, effect_, wrong_}) label->setWordWrap(true);
  reason_->setMaxLength(longest_reason);
  reason_->setAccessibleName(tr("Reason for accepting"));
  reason_->setPlaceholderText(tr("as: cut and capped, seen on site"));
  by_->setMaxLength(80);
  by_->setAccessibleName(tr("Who accepts it"));
  by_->setPlaceholderText(tr("name or initials"));
  auto* rows = new QVBoxLayout(this);
  rows->addWidget(title_);
  auto* form = new QFormLayout;
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  form->addRow(tr("&Why it may stand"), reason_);
  form->addRow(tr("W&ho says so"), by_);
  rows->addLayout(form);
  rows->addWidget(effect_);
  rows->addWidget(wrong_);
  auto* buttons = new QHBoxLayout;
  auto* leave = new QPushButton(tr("Leave"), this);
  leave->setAutoDefault(false);
  take_->setAutoDefault(false);
  buttons->addStretch();
  buttons->addWidget(leave);
  buttons->addWidget(take_);
  rows->addLayout(buttons);
  const auto give = [this] {
    QSettings().setValue(name_key(), by_->text().trimmed());
    Q_EMIT given(reason_->text().trimmed(), by_->text().trimmed());
  };
  connect(take_, &QPushButton::clicked, this, give);
  connect(reason_, &QLineEdit::returnPressed, this, give);
  connect(by_, &QLineEdit::returnPressed, this, give);
  connect(reason_, &QLineEdit::textEdited, wrong_, &QWidget::hide);
  connect(by_, &QLineEdit::textEdited, wrong_, &QWidget::hide);
  connect(leave, &QPushButton::clicked, this, [this] {
    close_form();
    Q_EMIT left();
  });
  hide();
}

void MuteForm::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  QPalette red = colours;
  red.setColor(QPalette::WindowText, theme.stop);
  wrong_->setPalette(red);
}

void MuteForm::open_for(const Finding& finding, const QString& what, const Mute* shown_text) {
  title_->setText(tr("Accept “%1”").arg(what));
  reason_->setText(shown_text ? text_from(shown_text->reason) : QString());
  by_->setText(shown_text && !shown_text->by.empty() ? text_from(shown_text->by)
                                                     : QSettings().value(name_key()).toString());
  QString effect;
  if (finding.severity == Severity::stop)
    effect =
        tr("It is a stop: accepted or not, the verdict stays “Stop” until the limit is kept. The reason is kept and "
           "printed.");
  else if (finding.missing)
    effect =
        tr("It is not known: accepted or not, the verdict stays “Incomplete” until it is entered. The reason is kept "
           "and printed.");
  else if (finding.severity == Severity::note)
    effect = tr("A note does not count in the verdict. It stays in the list, marked as accepted.");
  else if (can_hurt_people(finding))
    effect =
        tr("Somebody may come to harm over it: accepted or not, it counts in the verdict. The headline names it with "
           "your reason, which is kept and printed.");
  else
    effect =
        tr("It stays in the list and on the sheet with your reason, and no longer counts in the verdict. It "
           "counts again when it gets worse or, where nothing was measured, when layout, place or tool change.");
  effect_->setText(effect);
  wrong_->hide();
  show();
  reason_->setFocus(Qt::OtherFocusReason);
  reason_->selectAll();
}

void MuteForm::close_form() {
  hide();
}

void MuteForm::complain(const Error& error) {
  wrong_->setText(tr("Not accepted: %1 is missing. Say %2.").arg(text_from(error.place), text_from(error.expected)));
  wrong_->show();
  (error.code == "name" ? by_ : reason_)->setFocus(Qt::OtherFocusReason);
}

void MuteForm::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) {
    close_form();
    Q_EMIT left();
    return;
  }
  QFrame::keyPressEvent(event);
}

}  // namespace burrow
