#pragma once
/// The bar under the drawing where something is set wrong on purpose: level, sight, depth, soil, tool. The drawing
/// shows where the bore would go; nothing is changed, and nothing judged, until it is kept. Evidence: WhatIf.*

#include <QLabel>
#include <QLineEdit>
#include <QSlider>
#include <QWidget>
#include <array>
#include <memory>
#include <optional>

#include "burrow/base/quantity_text.h"
#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/practice/try_error.h"

class QComboBox;
class QHBoxLayout;
class QPushButton;
class QToolButton;

namespace burrow {

class WhatIfBar : public QWidget {
  Q_OBJECT

 public:
  WhatIfBar(Document& document, QWidget* parent);

  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  /// Another crossing, or the same changed.
  void catch_up();
  /// Nothing is wrong any more.
  void start_again();

  [[nodiscard]] const TryError& error() const { return error_; }
  /// The bore with what is set wrong; nothing while nothing is, or while the bar is closed.
  [[nodiscard]] std::shared_ptr<const BorePath> tried() const { return tried_; }
  [[nodiscard]] std::optional<Miss> miss() const { return miss_; }
  [[nodiscard]] QString visible_text() const { return said_->text(); }

  enum Turn { level, sight, depth, turns };
  [[nodiscard]] QSlider* slider(Turn turn) const { return knobs_[turn].slider; }
  [[nodiscard]] QLineEdit* entry(Turn turn) const { return knobs_[turn].entry; }

 Q_SIGNALS:
  void tried_changed();
  void closed();

 protected:
  void hideEvent(QHideEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Knob {
    QSlider* slider = nullptr;
    QLineEdit* entry = nullptr;
    double* value = nullptr;
    Dimension dimension = Dimension::angle;
    double step = 0;
  };
  Knob make_knob(const QString& name, double* value, Dimension dimension, double step, int half_range);
  QComboBox* make_choice(const QString& name);
  void type(Knob& knob);
  void keep();
  void show_answer();
  void show_knobs();
  [[nodiscard]] QString words() const;
  [[nodiscard]] QString nearest_line() const;
  [[nodiscard]] QString thumb() const;

  Document& document_;
  UnitSystem units_ = UnitSystem::metric;
  TryError error_;
  TryErrorAnswer answer_;
  std::shared_ptr<const BorePath> tried_;
  std::optional<Miss> miss_;
  std::array<Knob, turns> knobs_;
  QComboBox *soil_, *tool_;
  QLabel *said_, *thumb_;
  QPushButton *keep_, *back_;
  QToolButton* close_;
  QHBoxLayout* row_;
};

}  // namespace burrow
