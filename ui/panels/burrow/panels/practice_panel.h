#pragma once
/// Practice bores: lessons, the trainer's truth, the bore mark by mark, the reveal with its debrief, the class table;
/// and the way to trying one error.

#include <memory>
#include <optional>

#include "burrow/drawing/scene.h"
#include "burrow/panels/form_panel.h"
#include "burrow/practice/practice.h"

class QCheckBox;
class QLineEdit;
class QSlider;
class QTableWidget;
class QTimer;

namespace burrow {

class PracticePanel : public FormPanel {
  Q_OBJECT

 public:
  explicit PracticePanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;

  [[nodiscard]] QPushButton* button(const QString& begins_with) const;
  [[nodiscard]] const PracticeRun* run() const { return run_.get(); }
  [[nodiscard]] EntryForm* truth() const { return truth_; }
  [[nodiscard]] EntryForm* hidden_truth() const { return hidden_; }
  [[nodiscard]] QComboBox* moved() const { return moved_; }
  [[nodiscard]] QCheckBox* trainer() const { return trainer_; }
  [[nodiscard]] QSlider* speed() const { return speed_; }
  [[nodiscard]] QTableWidget* results() const { return results_; }
  [[nodiscard]] QString visible_text() const;
  /// Shows the whole of the reveal at once; for pictures and tests.
  void finish_reveal();
  /// The bore that really was, once it has been shown; null before.
  [[nodiscard]] std::shared_ptr<const Playback> shown_truth() const;

 Q_SIGNALS:
  void lesson_wanted(const QString& sample);
  void read_path_changed(const std::vector<PathPoint>& points, double nose_m);
  void try_wanted();
  void truth_changed(const std::optional<TrueLine>& truth);

 protected:
  void refresh() override;

 private:
  void make_truth();
  void make_hidden();
  void make_results();
  void start();
  void choose(PracticeChoice choice);
  void reveal();
  void step_reveal();
  void report_truth();
  void show_run();
  void show_debrief();
  void show_results();
  void enter_result();
  void forget();
  void start_anew();
  void draw_random();
  void show_choices();
  void show_log();
  [[nodiscard]] QString decisions_html() const;
  void edit_truth(const QString& step_name, const std::function<void(Practice&)>& edit);

  std::unique_ptr<PracticeRun> run_;
  std::optional<Debrief> debrief_;
  double revealed_m_ = -1;                     ///< arc length; below 0: nothing
  std::optional<PracticeChoice> asked_twice_;  ///< what ends the bore, or starts one on a Stop (go on), pressed once
  bool entered_ = false;                       ///< in the class table
  QTimer* slow_ = nullptr;
  QLabel *lesson_ = nullptr, *state_ = nullptr, *log_ = nullptr, *result_text_ = nullptr;
  QComboBox *lessons_ = nullptr, *true_soil_ = nullptr, *moved_ = nullptr, *trench_ = nullptr;
  QString shown_lesson_;
  QCheckBox* trainer_ = nullptr;
  EntryForm *truth_ = nullptr, *hidden_ = nullptr;
  QPushButton *add_stone_ = nullptr, *remove_stone_ = nullptr;
  std::vector<QWidget*> trainers_;
  std::vector<QPushButton*> choices_;
  QPushButton *start_ = nullptr, *again_ = nullptr, *reveal_ = nullptr, *enter_ = nullptr;
  QLineEdit* name_ = nullptr;
  QSlider* speed_ = nullptr;
  QTableWidget* results_ = nullptr;
};

}  // namespace burrow
