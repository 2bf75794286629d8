#pragma once
/// The utilities in the order in which to expose them: values of the picked one, how it is known, what follows for the
/// bore, its test holes; the answers of the utility search; lines that are drawn only. What is asked of many is
/// answered at once: why lines end, what the search says, that no line drawn only is a service.

#include "burrow/crossing/find.h"
#include "burrow/document/utility_fields.h"
#include "burrow/panels/form_panel.h"

class QLineEdit;
class QPushButton;

namespace burrow {

class AtOnceForm;
struct Card;

class UtilitiesPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit UtilitiesPanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  /// Shows a utility by its id; an unknown one changes nothing. Says nothing about it.
  void pick(const std::string& id);
  [[nodiscard]] const std::string& picked_id() const { return picked_; }
  /// Each is one undo step.
  void add();
  void duplicate();
  void remove();
  void add_hole();
  void remove_hole();
  /// Takes the trench of the picked one as a strip of softer ground, or leaves it out again.
  void take_trench();

  [[nodiscard]] CardList* list() const { return list_; }
  [[nodiscard]] TextForm* names() const { return names_; }
  [[nodiscard]] TextForm* dates() const { return date_; }
  [[nodiscard]] TextForm* precautions() const { return precaution_; }
  [[nodiscard]] TextForm* search_texts() const { return search_texts_; }
  [[nodiscard]] EntryForm* size_entry() const { return size_; }
  [[nodiscard]] EntryForm* level() const { return level_; }
  [[nodiscard]] EntryForm* location() const { return location_; }
  [[nodiscard]] EntryForm* gap() const { return gap_; }
  [[nodiscard]] EntryForm* hole_entries() const { return hole_values_; }
  [[nodiscard]] EntryForm* unknown_rate() const { return rate_; }
  [[nodiscard]] QComboBox* presets() const { return presets_; }
  [[nodiscard]] QLineEdit* measured() const { return measured_; }
  /// Of the camera before and after the bore.
  [[nodiscard]] const std::vector<TextForm*>& camera_texts() const { return camera_texts_; }
  [[nodiscard]] TextForm* abandonment() const { return abandonment_; }
  [[nodiscard]] TextForm* hole_texts() const { return hole_texts_; }
  [[nodiscard]] TextForm* head_located() const { return head_located_; }
  [[nodiscard]] TextForm* background_texts() const { return background_texts_; }
  [[nodiscard]] AtOnceForm* ends_form() const { return ends_form_; }
  [[nodiscard]] AtOnceForm* search_form() const { return search_form_; }
  [[nodiscard]] AtOnceForm* background_form() const { return background_form_; }
  [[nodiscard]] QPushButton* trench_button() const { return add_trench_; }
  [[nodiscard]] CardList* holes() const { return holes_; }
  /// What is said about level, preset, what follows and test holes, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// A person picked a utility here.
  void picked(const QString& id);

 protected:
  void refresh() override;

 private:
  void make_values();
  void make_material();
  void make_place();
  void make_answers();
  void make_ends();
  void make_ends_at_once();
  void make_abandonment();
  void make_hole_texts();
  void make_search();
  void make_search_at_once();
  void make_background();
  void make_camera();
  void make_head_located();
  [[nodiscard]] const Utility* current() const;
  [[nodiscard]] const UtilityAnswer* answer_of(const std::string& id) const;
  [[nodiscard]] PassingPlace place() const;
  [[nodiscard]] ItemRef part() const { return {ItemKind::utility, picked_, -1}; }
  /// A choice of the picked utility: reads and writes one of its members.
  template <class Read, class Write>
  QComboBox* utility_choice(const QString& label, const QStringList& words, Read read, Write write,
                            bool long_words = false);
  /// Where something of the picked one stands; `member` finds it in there.
  template <class Member>
  auto in_utility(Member member) const {
    return [this, member](auto& c) {
      auto* utility = find_by_id(c.site.utilities, picked_);
      return utility ? member(*utility) : nullptr;
    };
  }
  void edit(const QString& step_name, const std::function<void(Utility&)>& change_it);
  void edit_search(const QString& step_name, const std::function<void(UtilitySearch&)>& change_it);
  void choose(const QString& id);
  void choose_preset(int row, PresetReading reading);
  void choose_located(LocatedHow how, const QString& word);
  void point_forms();
  void list_utilities();
  void show_whole_bore();
  [[nodiscard]] Card row_of_utility(const Utility& utility) const;
  void show_place();
  void show_material();
  void show_answer();
  void show_holes();
  void show_trench();
  void show_search();
  void show_ends();
  void show_open_ends();
  void take_lone_hole();
  void show_lone_holes();
  void show_background();
  void show_located();
  [[nodiscard]] QString hole_words() const;
  [[nodiscard]] QString chance_text(double chance) const;

  std::string picked_, hole_, line_;
  CardList* list_;
  QPushButton *add_, *duplicate_, *remove_;
  QLabel *whole_bore_, *search_state_;
  std::vector<QWidget*> of_utility_;  ///< hidden where there is none
  QLabel* heading_ = nullptr;
  TextForm* names_ = nullptr;
  EntryForm* size_ = nullptr;
  EntryForm* level_ = nullptr;
  QLabel *level_text_ = nullptr, *material_text_ = nullptr;
  TextForm* abandonment_ = nullptr;
  QLabel* ends_text_ = nullptr;
  QPushButton* ends_button_ = nullptr;
  AtOnceForm* ends_form_ = nullptr;
  QComboBox* tracer_ = nullptr;
  QLabel* located_text_ = nullptr;
  std::optional<Located> reset_;  ///< as a choice of "located by" left it; told until something else is said
  QComboBox* presets_ = nullptr;
  QLabel* preset_text_ = nullptr;
  EntryForm* location_ = nullptr;
  TextForm* date_ = nullptr;
  EntryForm* gap_ = nullptr;
  TextForm* precaution_ = nullptr;
  QLabel* answer_ = nullptr;
  QLabel* trench_text_ = nullptr;
  QPushButton* add_trench_ = nullptr;
  QLabel* hole_text_ = nullptr;
  QLabel* measured_name_ = nullptr;
  QLineEdit* measured_ = nullptr;
  QLabel* measured_wrong_ = nullptr;
  QPushButton* add_hole_ = nullptr;
  CardList* holes_ = nullptr;
  EntryForm* hole_values_ = nullptr;
  TextForm* hole_texts_ = nullptr;
  QPushButton *remove_hole_ = nullptr, *lone_hole_ = nullptr;
  QLabel* search_heading_ = nullptr;
  TextForm *search_texts_ = nullptr, *head_located_ = nullptr;
  std::vector<TextForm*> camera_texts_;
  EntryForm* rate_ = nullptr;
  QPushButton* search_button_ = nullptr;
  AtOnceForm* search_form_ = nullptr;
  QLabel* background_text_ = nullptr;
  CardList* background_ = nullptr;
  TextForm* background_texts_ = nullptr;
  QPushButton *background_button_ = nullptr, *make_service_ = nullptr;
  AtOnceForm* background_form_ = nullptr;
};

}  // namespace burrow
