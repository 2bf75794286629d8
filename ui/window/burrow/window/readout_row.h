#pragma once
/// In place of the tool bar while something is dragged: what moves, its numbers before and now, why it is held, and
/// which keys help. Numbers that break their limit stand in the stop colour, with a mark and the limit.

#include <QWidget>

#include "burrow/drawing/readout.h"
#include "burrow/drawing/theme.h"

namespace burrow {

class ReadoutRow : public QWidget {
  Q_OBJECT

 public:
  explicit ReadoutRow(QWidget* parent = nullptr);
  void show_readout(const Readout& readout);
  void set_theme(const Theme& theme);
  /// All of it in one sentence, as a screen reader is told.
  [[nodiscard]] QString sentence() const;
  [[nodiscard]] const Readout& readout() const { return readout_; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  [[nodiscard]] int paint_number(QPainter& painter, int left, const ChangedNumber& number) const;
  [[nodiscard]] int width_of(const ChangedNumber& number) const;

  Readout readout_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
