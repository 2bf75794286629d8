#pragma once
/// The drawing and the player alone, for a room: type that is read at three metres, a ring round the pointer, a key
/// that darkens the screen.

#include <QFont>
#include <QObject>
#include <functional>
#include <utility>
#include <vector>

class QMainWindow;
class QWidget;

namespace burrow {

class DrawingView;
class PlayerBar;

/// Cap height of the drawing's and the player's letters: 24 px on a projector of 1280 × 720.   Source: common practice,
/// no source (letters of 1/150 of the distance).   Evidence: Presentation.*
constexpr double cap_height_px = 24;

class Presentation : public QObject {
  Q_OBJECT

 public:
  /// `others`: what is hidden as long as it lasts. `dress`: colours of high contrast, or those from before.
  Presentation(QMainWindow& window, DrawingView& drawing, PlayerBar& player, std::vector<QWidget*> others,
               std::function<void(bool on)> dress);
  [[nodiscard]] bool on() const { return on_; }
  void set_on(bool on);
  [[nodiscard]] bool darkened() const;
  bool eventFilter(QObject* watched, QEvent* event) override;

 Q_SIGNALS:
  void changed(bool on);

 private:
  void begin();
  void end();
  void darken(bool on);
  void move_ring();

  QMainWindow& window_;
  DrawingView& drawing_;
  PlayerBar& player_;
  std::vector<QWidget*> others_;
  std::function<void(bool)> dress_;
  std::vector<std::pair<QWidget*, bool>> were_shown_;
  QFont drawing_font_, player_font_;
  bool was_full_ = false, on_ = false;
  QWidget* ring_;
  QWidget* dark_;
};

}  // namespace burrow
