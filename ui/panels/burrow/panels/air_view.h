#pragma once
/// Pressure along the air line as bars, one below the other: compressor, each part, tool.

#include <QString>
#include <QWidget>
#include <optional>
#include <vector>

#include "burrow/drawing/theme.h"

namespace burrow {

struct AirBar {
  QString name;        ///< "20 m hose, 19 mm"
  QString value;       ///< "6.7 bar"
  double share = 0;    ///< of the longest that fits, 0 to 1
  bool alarm = false;  ///< choked, or below what is wanted
};

class AirView : public QWidget {
 public:
  explicit AirView(QWidget* parent);
  /// `wanted`: share at which a line stands for the least pressure, with its words. No bars: hidden.
  void show_bars(std::vector<AirBar> bars, std::optional<double> wanted, const QString& wanted_words,
                 const Theme& theme);
  [[nodiscard]] const std::vector<AirBar>& bars() const { return bars_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  [[nodiscard]] int row_height() const;

  std::vector<AirBar> bars_;
  std::optional<double> wanted_;
  QString wanted_words_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
