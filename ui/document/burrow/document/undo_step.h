#pragma once
/// One step of undo: it holds the *other* whole crossing, and undo and redo are the same swap. The long lists of a
/// crossing seldom change: all steps between two changes of one hold the same list.   Evidence: UndoStep.*

#include <QUndoCommand>
#include <memory>
#include <vector>

#include "burrow/crossing/crossing.h"

namespace burrow {

class Document;

template <class T>
using SharedList = std::shared_ptr<const std::vector<T>>;

/// The long lists of a crossing, as steps hold them.
struct LongLists {
  SharedList<Point3> ground_points;
  SharedList<Background> background;
  SharedList<Utility> utilities;
};

/// Those of the crossing; where one is equal to that of `known` it is the same one.
LongLists long_lists(const Crossing& crossing, const LongLists& known);

Crossing without_long_lists(Crossing crossing);

/// `present` becomes `wanted`, whose other members are `rest`. A long list that is equal is not copied.
void put_back(Crossing& present, const Crossing& rest, const Crossing& wanted);

class UndoStep : public QUndoCommand {
 public:
  /// `rest` and `lists` make the other crossing. `done`: the document stands changed already, as after a drag.
  UndoStep(Document& document, const QString& name, Crossing rest, LongLists lists, bool done);
  void redo() override;
  void undo() override;
  [[nodiscard]] const LongLists& lists() const { return lists_; }
  /// The records of the crossing that undoing it would bring back.
  [[nodiscard]] const std::vector<DayRecord>& records_before() const { return rest_.record; }

 private:
  void swap();

  Document& document_;
  Crossing rest_;
  LongLists lists_;
  bool done_;
};

}  // namespace burrow
