#pragma once
/// What the Edit menu does with what is selected on the drawing. Each is one step of undo; what is not done is told.

#include <QObject>
#include <optional>
#include <vector>

#include "burrow/drawing/drawing_view.h"

class QMimeData;

namespace burrow {

class NameEntry;

class EditCommands : public QObject {
  Q_OBJECT

 public:
  EditCommands(Document& document, DrawingView& drawing, QObject* parent);

  /// What can be done with the selection now.
  [[nodiscard]] bool may_copy() const;
  [[nodiscard]] bool may_remove() const;
  [[nodiscard]] bool may_rename() const;
  [[nodiscard]] bool may_lock() const;
  /// All of it is locked.
  [[nodiscard]] bool locked() const;

  /// As text, so that another window takes it.   Evidence: Clipboard.*
  void copy();
  void cut();
  /// At that station; without one where it was, half a metre further where it still stands.
  void paste(std::optional<double> station_m = std::nullopt);
  void duplicate();
  /// A thing, or the point, bend or corner that is selected alone. What is locked stays.
  void remove();
  void select_all();
  /// All of the kinds that are selected.
  void select_same_kind();
  void select_kind(ItemKind kind);
  void set_locked(bool locked);
  /// Every thing of these kinds.
  void lock_kinds(const std::vector<ItemKind>& kinds, bool locked);
  /// Types the name where the thing stands; `at` in the drawing's viewport.
  void rename(std::optional<QPoint> at = std::nullopt);
  /// Launch and exit change places.
  void reverse();
  [[nodiscard]] NameEntry* name_entry() const { return name_; }

 Q_SIGNALS:
  void refused(const QString& why);

 private:
  [[nodiscard]] bool several_or_one() const;
  [[nodiscard]] QString selected_name() const;
  [[nodiscard]] std::vector<ItemRef> locked_ones(const std::vector<ItemRef>& parts) const;
  void remove_point(const ItemRef& point);

  Document& document_;
  DrawingView& drawing_;
  NameEntry* name_;
};

}  // namespace burrow
