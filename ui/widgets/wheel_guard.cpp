#include "burrow/widgets/wheel_guard.h"

#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QScrollBar>
#include <QWheelEvent>

namespace burrow {

namespace {

/// Whether the wheel would change what it holds.
bool holds_a_value(const QWidget* widget) {
  return qobject_cast<const QComboBox*>(widget) || qobject_cast<const QAbstractSpinBox*>(widget) ||
         (qobject_cast<const QAbstractSlider*>(widget) && !qobject_cast<const QScrollBar*>(widget));
}

}  // namespace

bool WheelGuard::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::Wheel || !watched->isWidgetType()) return false;
  const auto* widget = static_cast<QWidget*>(watched);
  // The line of an editable choice gives the wheel on to the choice.
  if (!holds_a_value(widget)) return false;
  const bool meant = widget->hasFocus() && (static_cast<QWheelEvent*>(event)->modifiers() & Qt::ControlModifier);
  if (meant) return false;
  event->ignore();  // goes on to the widget around it
  return true;
}

}  // namespace burrow
