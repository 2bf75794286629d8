#pragma once
/// Random trials: many bores drawn from what is not known, what became of them, the closed forms beside.

#include "burrow/document/trials_job.h"
#include "burrow/panels/live_panel.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;
class QTableWidget;

namespace burrow {

class ArrivalChart;

class TrialsPanel : public LivePanel {
  Q_OBJECT

 public:
  TrialsPanel(Document& document, TrialsJob& job, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  [[nodiscard]] QPushButton* button() const { return button_; }
  [[nodiscard]] QCheckBox* cloud_wanted() const { return cloud_; }
  [[nodiscard]] QCheckBox* following() const { return following_; }
  [[nodiscard]] QTableWidget* table() const { return table_; }
  [[nodiscard]] ArrivalChart* chart() const { return chart_; }
  [[nodiscard]] QLineEdit* count() const { return count_; }
  [[nodiscard]] QLabel* state() const { return state_; }

 Q_SIGNALS:
  void cloud_toggled(bool on);

 protected:
  void refresh() override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fit_table();
  void take_count();
  void show_state();

  TrialsJob& job_;
  QPushButton* button_;
  QProgressBar* progress_;
  QLineEdit* count_;
  QLineEdit* seed_;
  QCheckBox* following_;
  QCheckBox* cloud_;
  QLabel* state_;
  ArrivalChart* chart_;
  QTableWidget* table_;
};

}  // namespace burrow
