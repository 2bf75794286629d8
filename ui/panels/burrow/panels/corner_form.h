#pragma once
/// The corners of a line in plan: a list, station and offset of the one chosen, one more, one less.

#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/document/lens.h"
#include "burrow/drawing/theme.h"

class QPushButton;

namespace burrow {

class CardList;
class EntryForm;

class CornerForm : public QWidget {
  Q_OBJECT

 public:
  /// `least`: fewer corners are not left.
  CornerForm(Document& document, std::size_t least, QWidget* parent);
  /// Shows the corners of this line, which belongs to that part.
  void show_line(const ItemRef& part, const Lens<PlanLine>& line);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  void catch_up();

  [[nodiscard]] CardList* list() const { return list_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] QPushButton* add() const { return add_; }
  [[nodiscard]] QPushButton* remove() const { return remove_; }

 private:
  void point_form();
  void change_line(const QString& step_name, const std::function<void(PlanLine&)>& change_it);

  Document& document_;
  std::size_t least_, corner_ = 0;
  ItemRef part_;
  Lens<PlanLine> line_;
  UnitSystem units_ = UnitSystem::metric;
  CardList* list_;
  EntryForm* values_;
  QPushButton *add_, *remove_;
};

}  // namespace burrow
