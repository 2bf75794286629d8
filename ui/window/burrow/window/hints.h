#pragma once
/// A few short hints, one at a time, each with a line to the thing on the screen that it is about.

#include <QWidget>
#include <functional>
#include <vector>

#include "burrow/drawing/theme.h"

class QLabel;
class QPushButton;

namespace burrow {

struct Hint {
  QString text;
  std::function<QRect()> about;  ///< in the coordinates of the window; empty rectangle: not on the screen now
};

/// Lies over a window and lets everything through but its own box: the thing pointed at can be tried at once. The last
/// hint, the cross and Esc end it.
class Hints : public QWidget {
  Q_OBJECT

 public:
  Hints(std::vector<Hint> hints, const Theme& theme, QWidget* window);

  [[nodiscard]] int shown() const { return at_; }
  [[nodiscard]] QString text() const;
  /// Where the box stands and what it points at, in the window.
  [[nodiscard]] QRect box() const;
  [[nodiscard]] QPoint tip() const;

 Q_SIGNALS:
  void ended();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  void show_hint(int at);
  [[nodiscard]] bool nothing_else_ends_with_escape() const;
  void place();
  void end();

  std::vector<Hint> hints_;
  Theme theme_;
  int at_ = 0;
  QWidget* box_;
  QLabel* text_;
  QLabel* count_;
  QPushButton* next_;
};

}  // namespace burrow
