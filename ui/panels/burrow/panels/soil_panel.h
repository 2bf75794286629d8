#pragma once
/// The ground: one stratum at a time with its class, how it is known and what that does to the band; the water; the
/// constants of the path model.

#include "burrow/panels/form_panel.h"

class QListWidget;
class QPushButton;

namespace burrow {

class SoilPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit SoilPanel(Document& document, QWidget* parent = nullptr);
  /// Shows a stratum by its id; an unknown one changes nothing.
  void pick(const std::string& stratum);
  [[nodiscard]] QListWidget* strata() const { return strata_; }
  [[nodiscard]] QComboBox* classes() const { return classes_; }
  [[nodiscard]] QComboBox* known() const { return known_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] EntryForm* water() const { return water_; }
  [[nodiscard]] EntryForm* model() const { return model_; }
  [[nodiscard]] QPushButton* back_to_class() const { return back_; }
  /// What is said about the class, about how it is known, and about the model, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  [[nodiscard]] const Stratum* picked() const;
  [[nodiscard]] ItemRef part() const { return {ItemKind::stratum, picked_, -1}; }
  void list_strata();
  void show_stratum();
  [[nodiscard]] QString known_words(const Stratum& stratum) const;
  [[nodiscard]] QString guess_words(const GuessEffect& effect, const Stratum& stratum) const;
  void choose_class(int row);
  void choose_known(int row);
  void take_typed_values_out();
  void point_form();
  void make_choices();

  std::string picked_;
  QListWidget* strata_;
  QComboBox* classes_;
  QLabel* class_text_;
  QComboBox* known_;
  QLabel* known_text_;
  EntryForm* values_;
  QComboBox *drained_ = nullptr, *excavation_ = nullptr;
  QLabel* more_;
  QPushButton* back_;
  EntryForm* water_;
  QLabel* status_;
  EntryForm* model_;
};

}  // namespace burrow
