#pragma once
/// The two pits: floor, sides, soil type, what somebody saw, spoil and ladder; and what follows: earth to be moved,
/// surface opened, duties, supports of the published tables, water.

#include "burrow/document/pit_fields.h"
#include "burrow/panels/form_panel.h"

namespace burrow {

class PitView;

class PitsPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit PitsPanel(Document& document, QWidget* parent = nullptr);
  /// Shows one of the two pits.
  void show_pit(WhichPit which);
  [[nodiscard]] WhichPit shown() const { return which_; }

  [[nodiscard]] PitView* view() const { return view_; }
  [[nodiscard]] EntryForm* floor() const { return floor_; }
  [[nodiscard]] EntryForm* corner_values() const { return corner_values_; }
  [[nodiscard]] CardList* corners() const { return corners_; }
  [[nodiscard]] EntryForm* sides() const { return sides_; }
  [[nodiscard]] EntryForm* soil() const { return soil_; }
  [[nodiscard]] EntryForm* spoil() const { return spoil_; }
  [[nodiscard]] TextForm* confirmed() const { return confirmed_; }
  [[nodiscard]] TextForm* shield() const { return shield_; }
  [[nodiscard]] TextForm* conditions() const { return conditions_; }
  [[nodiscard]] TextForm* load_design() const { return load_design_; }
  /// What is said about soil type, earth, duties and supports, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// A person chose one of the two pits here.
  void picked(WhichPit which);

 protected:
  void refresh() override;

 private:
  [[nodiscard]] const Pit& pit() const { return pit_of(document_.crossing().pits, which_); }
  [[nodiscard]] const PitShape& shape() const;
  [[nodiscard]] const PitAnswer& work() const;
  void edit(const QString& step_name, const std::function<void(Pit&)>& change_it);
  void make_floor();
  void make_corners();
  void show_corners();
  void set_outline(const QString& step_name, PlanLine outline);
  void make_sides();
  void make_load_design();
  void make_soil();
  void make_conditions();
  void make_spoil();
  void add_sign(const QString& question, std::optional<bool> PitSigns::*member);
  void point_forms();
  [[nodiscard]] QString type_words(ExcavationType best, ExcavationType worst) const;
  [[nodiscard]] QString soil_words() const;
  [[nodiscard]] QString earth_words() const;
  [[nodiscard]] QString duty_words() const;
  [[nodiscard]] QString support_words() const;

  WhichPit which_ = WhichPit::launch;
  QComboBox* pits_ = nullptr;
  PitView* view_ = nullptr;
  QLabel *earth_ = nullptr, *soil_text_ = nullptr, *duties_ = nullptr, *supports_ = nullptr;
  EntryForm *floor_ = nullptr, *sides_ = nullptr, *soil_ = nullptr, *spoil_ = nullptr;
  TextForm *confirmed_ = nullptr, *conditions_ = nullptr, *load_design_ = nullptr, *shield_ = nullptr;
  std::size_t corner_ = 0;
  QLabel* corners_text_ = nullptr;
  CardList* corners_ = nullptr;
  EntryForm* corner_values_ = nullptr;
  QPushButton *shape_it_ = nullptr, *rectangle_ = nullptr, *add_corner_ = nullptr, *remove_corner_ = nullptr;
};

}  // namespace burrow
