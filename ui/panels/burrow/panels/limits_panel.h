#pragma once
/// Every limit that judges this crossing: its value here and in the table, where it comes from, why it was set and by
/// whom. What is looser than the table's is marked, and counts only with a reason.

#include "burrow/panels/form_panel.h"
#include "burrow/tables/tables.h"

class QCheckBox;
class QLineEdit;

namespace burrow {

struct Card;

class LimitsPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit LimitsPanel(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units) override;
  /// Shows one limit, whatever is sought.
  void pick(const std::string& id);
  [[nodiscard]] const std::string& picked() const { return picked_; }

  [[nodiscard]] CardList* list() const { return list_; }
  [[nodiscard]] QLineEdit* words() const { return words_; }
  [[nodiscard]] QCheckBox* set_only() const { return set_only_; }
  [[nodiscard]] EntryForm* value() const { return value_; }
  [[nodiscard]] TextForm* reason() const { return reason_; }
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  void point_form();
  void list_cards();
  [[nodiscard]] const LimitRow* row() const;
  [[nodiscard]] ItemRef part() const;
  [[nodiscard]] bool is_set(const LimitRow& row) const;
  [[nodiscard]] QString number_of(double value, const LimitRow& row) const;
  [[nodiscard]] QString state_of(const LimitRow& row) const;
  [[nodiscard]] Card card_of(const LimitRow& row) const;

  std::string picked_;
  QLabel *summary_ = nullptr, *heading_ = nullptr, *source_ = nullptr, *state_ = nullptr;
  QLineEdit* words_ = nullptr;
  QCheckBox* set_only_ = nullptr;
  CardList* list_ = nullptr;
  EntryForm* value_ = nullptr;
  TextForm* reason_ = nullptr;
};

}  // namespace burrow
