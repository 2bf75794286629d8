#pragma once
/// What stands on top of the bore: roads, tracks, ditches, drives, footings, buildings; what their owners ask for, and
/// whether they allow it, how a stuck tool would be got out; or who says that there is nothing.

#include "burrow/crossing/find.h"
#include "burrow/panels/form_panel.h"

class QPushButton;
class QSlider;

namespace burrow {

class CornerForm;
class HeaveChart;

class SurfacePanel : public FormPanel {
  Q_OBJECT

 public:
  explicit SurfacePanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  void set_units(UnitSystem units) override;
  /// Shows a thing by its id; an unknown one changes nothing. Says nothing about it.
  void pick(const std::string& id);
  [[nodiscard]] const std::string& picked_id() const { return picked_; }
  /// Each is one undo step.
  void add();
  void remove();
  void add_peg();
  void remove_peg();

  [[nodiscard]] CardList* list() const { return list_; }
  [[nodiscard]] TextForm* names() const { return names_; }
  [[nodiscard]] TextForm* permits() const { return permit_; }
  [[nodiscard]] TextForm* rescue() const { return rescue_; }
  [[nodiscard]] TextForm* nothing_above() const { return nothing_said_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] EntryForm* limits() const { return limits_; }
  [[nodiscard]] QComboBox* rules() const { return rules_; }
  [[nodiscard]] HeaveChart* heave() const { return heave_; }
  [[nodiscard]] QSlider* tip() const { return tip_; }
  [[nodiscard]] CardList* pegs() const { return pegs_; }
  [[nodiscard]] EntryForm* peg_entries() const { return peg_values_; }
  [[nodiscard]] TextForm* level_dates() const { return dates_; }
  /// What is said about place, rule and permission, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// A person picked a thing here.
  void picked(const QString& id);

 protected:
  void refresh() override;

 private:
  [[nodiscard]] const SurfaceFeature* current() const;
  [[nodiscard]] ItemRef part() const { return {ItemKind::surface, picked_, -1}; }
  /// Where something of the picked one stands; `member` finds it in there.
  template <class Member>
  auto in_feature(Member member) const {
    return [this, member](auto& c) {
      auto* feature = find_by_id(c.site.surface, picked_);
      return feature ? member(*feature) : nullptr;
    };
  }
  void edit(const QString& step_name, const std::function<void(SurfaceFeature&)>& change_it);
  void make_values();
  void make_rule();
  void make_rescue();
  void make_nothing_above();
  void make_levels();
  void show_levels();
  void show_heave();
  [[nodiscard]] QString moved_words(const LevelPeg& peg) const;
  void choose(const QString& id);
  void choose_rule(int row);
  void point_form();
  void list_cards();
  void fill_rules();
  void show_rule();
  [[nodiscard]] QString place_words(const SurfaceFeature& feature) const;
  [[nodiscard]] QString rule_words(const SurfaceRule& rule) const;

  std::string picked_;
  std::size_t peg_ = 0;
  CardList* list_;
  QPushButton *add_, *remove_;
  std::vector<QWidget*> of_item_;  ///< hidden where there is none
  QLabel* nothing_;
  HeaveChart* heave_ = nullptr;
  QSlider* tip_ = nullptr;
  QLabel* tip_text_ = nullptr;
  QLabel* heading_ = nullptr;
  TextForm* names_ = nullptr;
  QLabel* place_text_ = nullptr;
  CornerForm* corners_ = nullptr;
  QComboBox *rules_ = nullptr, *structure_ = nullptr;
  QLabel* rule_text_ = nullptr;
  EntryForm* values_ = nullptr;
  EntryForm* limits_ = nullptr;
  TextForm* permit_ = nullptr;
  TextForm* rescue_ = nullptr;
  TextForm* nothing_said_ = nullptr;
  QLabel* levels_text_ = nullptr;
  TextForm* dates_ = nullptr;
  CardList* pegs_ = nullptr;
  EntryForm* peg_values_ = nullptr;
  QPushButton *add_peg_ = nullptr, *remove_peg_ = nullptr;
};

}  // namespace burrow
