#pragma once
/// Boundaries, trees, machines and trenches beside the bore: a list, what is known of the one chosen, its corners; and
/// how the site lies in a map.

#include "burrow/document/surroundings.h"
#include "burrow/panels/form_panel.h"

namespace burrow {

class CornerForm;

class SurroundingsPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit SurroundingsPanel(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units) override;
  void set_theme(const Theme& theme) override;
  void pick(const Around& which);
  [[nodiscard]] const Around& picked() const { return picked_; }

  [[nodiscard]] CardList* list() const { return list_; }
  /// Adds one of a kind; in the order of the kinds, the last one takes the chosen one out.
  [[nodiscard]] QPushButton* button(std::size_t which) const { return buttons_[which]; }
  [[nodiscard]] TextForm* name() const { return name_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] CornerForm* corners() const { return corners_; }
  [[nodiscard]] EntryForm* map() const { return map_; }
  [[nodiscard]] TextForm* map_texts() const { return map_texts_; }
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  void make_choices();
  void make_map();
  void add(AroundKind kind);
  void remove();
  void point_form();
  void list_cards();
  [[nodiscard]] ItemRef part() const;
  [[nodiscard]] QString title_of(const Around& which) const;
  [[nodiscard]] QString facts_of(const Around& which) const;

  Around picked_;
  QLabel *nothing_ = nullptr, *heading_ = nullptr, *map_hint_ = nullptr;
  CardList* list_ = nullptr;
  std::vector<QPushButton*> buttons_;
  TextForm *name_ = nullptr, *map_texts_ = nullptr;
  QComboBox *boundary_kind_ = nullptr, *soil_ = nullptr;
  EntryForm *values_ = nullptr, *soil_values_ = nullptr, *map_ = nullptr;
  CornerForm* corners_ = nullptr;
};

}  // namespace burrow
