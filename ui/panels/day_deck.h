#pragma once
/// The block at the top of the site log that never moves and never scrolls: what to do now, where the nose is, the two
/// large buttons, the last five readings. Large enough for gloves; one key each.

#include <QWidget>
#include <array>
#include <vector>

#include "burrow/drawing/theme.h"

class QGridLayout;
class QLabel;
class QPushButton;

namespace burrow {

class DayDeck : public QWidget {
  Q_OBJECT

 public:
  static constexpr std::size_t rows_shown = 5;

  struct Row {
    std::size_t reading = 0;  ///< its number in the record
    QString when, what;
    bool struck = false, asked = false;
  };
  struct State {
    QString title, text, reason;  ///< the reason is cut to a line where there is no room
    QColor ground, ink;           ///< of the advice; no valid colour: of the page
    QString nose, pace;
    QString mark;  ///< where the next mark puts the nose
    bool may_start = false, may_mark = false, may_tick = false, may_go = false, may_stop = false;
    bool advised = false;  ///< to start, to go on: the button is filled only then
    QString start;
    std::vector<Row> rows;  ///< newest first
  };

  explicit DayDeck(QWidget* parent);
  void show_state(const State& state);
  void set_theme(const Theme& theme);
  /// On a low screen: less room for words, the last readings side by side, so that something of the page is left.
  void set_low(bool low);
  [[nodiscard]] QLabel* advice() const { return advice_; }
  [[nodiscard]] QLabel* pace() const { return pace_; }

 Q_SIGNALS:
  void start_tapped();
  void mark_tapped();
  void stop_tapped();
  void done_tapped();
  void go_tapped();
  void danger_tapped();
  void taken_back(std::size_t reading);

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  struct Cell {
    QLabel* text;
    QPushButton* undo;
  };
  void show_advice();
  void show_rows();
  void show_row(std::size_t i);
  void place_rows();
  void make_rows();
  void colour();
  void colour_advice();
  [[nodiscard]] int advice_height() const;

  State state_;
  Theme theme_ = Theme::light();
  QLabel *advice_, *nose_, *pace_;
  QPushButton *start_, *mark_, *stop_, *done_, *go_, *danger_;
  std::array<Cell, rows_shown> cells_{};
  QGridLayout* rows_ = nullptr;
  bool low_ = false;
};

}  // namespace burrow
