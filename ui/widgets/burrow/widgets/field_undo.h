#pragma once
/// Undo in a field: of what is being typed while it is, of the crossing once it is taken over.

#include <QObject>

namespace burrow {

/// Filters the events of the program: an entry that holds nothing unfinished leaves Undo and Redo to the window,
/// whose step the value became.   Evidence: FieldUndo.*
class FieldUndo : public QObject {
  Q_OBJECT

 public:
  explicit FieldUndo(QObject* parent = nullptr) : QObject(parent) {}
  bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace burrow
