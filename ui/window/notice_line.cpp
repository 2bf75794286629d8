#include "burrow/window/notice_line.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace burrow {

NoticeLine::NoticeLine(QWidget* parent) : QFrame(parent), text_(new QLabel(this)), action_(new QPushButton(this)) {
  setObjectName(QStringLiteral("noticeLine"));
  setAttribute(Qt::WA_StyledBackground);
  text_->setWordWrap(true);
  text_->setTextFormat(Qt::PlainText);
  action_->setAutoDefault(false);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(12, 4, 8, 4);
  row->setSpacing(12);
  row->addWidget(action_);  // first: reached also where the window is wider than the screen
  row->addWidget(text_, 1);
  connect(action_, &QPushButton::clicked, this, &NoticeLine::action_wanted);
  hide();
}

void NoticeLine::say(const QString& text, const QString& action) {
  action_->setText(action);
  if (isVisible() && text_->text() == text) return;
  text_->setText(text);
  setAccessibleName(text);
  show();
  QAccessibleEvent reported(this, QAccessible::Alert);
  QAccessible::updateAccessibility(&reported);
}

QString NoticeLine::text() const {
  return text_->text();
}

void NoticeLine::set_theme(const Theme& theme) {
  setStyleSheet(
      QStringLiteral("#noticeLine { background: %1; border-left: 6px solid %2; border-bottom: 1px solid %3; }")
          .arg(theme.field.name(), theme.caution.name(), theme.grid.name()));
}

}  // namespace burrow
