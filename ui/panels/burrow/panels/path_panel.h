#pragma once
/// Where it goes and how it gets on: deviation with its bands, time, grip, and the pit by which a stuck tool is dug
/// out.

#include <optional>

#include "burrow/panels/live_panel.h"
#include "burrow/pit/shape.h"

class QCheckBox;
class QLabel;
class QLineEdit;

namespace burrow {

class AdvanceChart;
class DeviationChart;

class PathPanel : public LivePanel {
  Q_OBJECT

 public:
  explicit PathPanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  [[nodiscard]] QCheckBox* rescue_wanted() const { return rescue_; }
  [[nodiscard]] QLineEdit* nose() const { return nose_; }
  [[nodiscard]] QString summary() const;

 Q_SIGNALS:
  /// The pit to be drawn, or none.
  void rescue_changed(const std::optional<PitShape>& pit);

 protected:
  void refresh() override;

 private:
  void show_pressures();
  void show_rescue();

  DeviationChart* up_;
  DeviationChart* sideways_;
  AdvanceChart* advance_;
  QLabel* summary_;
  QLabel* pressures_;
  QCheckBox* rescue_;
  QLineEdit* nose_;
  QLabel* rescue_said_;
};

}  // namespace burrow
