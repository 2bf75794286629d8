#include "burrow/widgets/field_undo.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>

namespace burrow {

bool FieldUndo::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride) return false;
  const auto* field = qobject_cast<QLineEdit*>(watched);
  const auto* lines = qobject_cast<QPlainTextEdit*>(watched);
  if (!field && !lines) return false;
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool undo = key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
  if (!undo || (field ? field->isModified() : lines->document()->isModified())) return false;
  event->ignore();
  return true;
}

}  // namespace burrow
