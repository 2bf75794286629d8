#include "burrow/widgets/offered_text.h"

#include <QAction>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyle>

namespace burrow {

OfferedText::OfferedText(QLineEdit* entry, std::function<QString()> offer)
    : QObject(entry), entry_(entry), offer_(std::move(offer)) {
  arrow_ = entry_->addAction(entry_->style()->standardIcon(QStyle::SP_ArrowDown), QLineEdit::TrailingPosition);
  connect(arrow_, &QAction::triggered, this, &OfferedText::take);
  connect(entry_, &QLineEdit::textChanged, this, &OfferedText::refresh);
  entry_->installEventFilter(this);
  refresh();
}

QString OfferedText::on_offer() const {
  return entry_->text().isEmpty() && !entry_->isReadOnly() ? offer_() : QString();
}

void OfferedText::refresh() {
  const QString text = on_offer();
  arrow_->setVisible(!text.isEmpty());
  arrow_->setText(text.isEmpty() ? QString() : tr("Take %1").arg(text));
  arrow_->setToolTip(text.isEmpty() ? QString() : tr("Take %1 (Down key)").arg(text));
  entry_->setPlaceholderText(text.isEmpty() ? QString() : tr("%1?").arg(text));
  entry_->setAccessibleDescription(text.isEmpty() ? QString() : tr("Not entered. The Down key takes %1.").arg(text));
}

void OfferedText::take() {
  const QString text = on_offer();
  if (text.isEmpty()) return;
  entry_->setText(text);
  entry_->setModified(true);
  Q_EMIT taken();
}

bool OfferedText::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Down &&
      !on_offer().isEmpty()) {
    take();
    event->accept();
    return true;
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace burrow
