#include "burrow/widgets/field_undo.h"

#include <QKeyEvent>
#include <QLineEdit>

namespace burrow {

bool FieldUndo::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride) return false;
  const auto* field = qobject_cast<QLineEdit*>(watched);
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool undo = key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
  if (!field || !undo || field->isModified()) return false;
  event->ignore();
  return true;
}

}  // namespace burrow
