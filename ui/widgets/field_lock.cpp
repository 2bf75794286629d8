#include "burrow/widgets/field_lock.h"

#include <QAction>
#include <QIcon>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>

#include "burrow/crossing/locks.h"

namespace burrow {

namespace {

constexpr int icon_px = 16;

/// Closed, or with its shackle swung open and pale: told by the shape, not by the colour alone.
QIcon padlock(bool closed, const QColor& ink) {
  constexpr double ratio = 3;
  QPixmap pixels(static_cast<int>(icon_px * ratio), static_cast<int>(icon_px * ratio));
  pixels.setDevicePixelRatio(ratio);
  pixels.fill(Qt::transparent);
  QPainter painter(&pixels);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setOpacity(closed ? 1 : 0.45);
  painter.setPen(QPen(ink, 1.4));
  painter.setBrush(closed ? QBrush(ink) : QBrush(Qt::NoBrush));
  painter.drawRoundedRect(QRectF(3.5, 7.5, 9, 6.5), 1, 1);
  painter.setBrush(Qt::NoBrush);
  painter.drawArc(QRectF(closed ? 5 : 8.5, 2.5, 6, 9), 0, 180 * 16);
  return QIcon(pixels);
}

}  // namespace

FieldLock::FieldLock(Document& document, QLineEdit* entry) : QObject(entry), document_(document), entry_(entry) {
  entry_->installEventFilter(this);
  connect(&document_, &Document::changed, this, &FieldLock::refresh);
}

void FieldLock::show_place(const std::string& place, const QString& name) {
  place_ = place;
  name_ = name;
  refresh();
}

bool FieldLock::locked() const {
  return !place_.empty() && lock_stands(document_.crossing(), place_);
}

void FieldLock::refresh() {
  if (place_.empty()) {
    if (action_) action_->setVisible(false);
    return;
  }
  if (!action_) {
    action_ = entry_->addAction(QIcon(), QLineEdit::TrailingPosition);
    action_->setCheckable(true);
    connect(action_, &QAction::triggered, this, &FieldLock::toggle);
  }
  const bool closed = locked();
  if (action_->icon().isNull() || closed != action_->isChecked())
    action_->setIcon(padlock(closed, entry_->palette().color(QPalette::Text)));
  action_->setVisible(true);
  action_->setChecked(closed);
  const QString what = closed ? tr("Unlock %1: it is neither dragged nor searched now (Ctrl+L)").arg(name_)
                              : tr("Lock %1 against dragging and searching (Ctrl+L)").arg(name_);
  action_->setText(what);
  action_->setToolTip(what);
}

void FieldLock::toggle() {
  if (place_.empty()) return;
  const bool lock = !locked();
  document_.change((lock ? tr("Lock %1") : tr("Unlock %1")).arg(name_),
                   [&](Crossing& c) { set_lock(c, place_, lock); });
  refresh();
}

bool FieldLock::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::PaletteChange && action_) action_->setIcon(QIcon());
  const bool key = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
  if (key && !place_.empty()) {
    const auto* pressed = static_cast<QKeyEvent*>(event);
    if (pressed->key() == Qt::Key_L && pressed->modifiers() == Qt::ControlModifier) {
      if (event->type() == QEvent::KeyPress) toggle();
      event->accept();
      return true;
    }
  }
  return QObject::eventFilter(watched, event);
}

}  // namespace burrow
