#pragma once
/// The wheel scrolls; it never turns a value over which the pointer happens to pass.

#include <QObject>

namespace burrow {

/// Filters the events of the program: a choice, slider or number field leaves the wheel to the page around it, unless
/// it has the focus and Ctrl is held.   Evidence: WheelGuard.*
class WheelGuard : public QObject {
  Q_OBJECT

 public:
  explicit WheelGuard(QObject* parent = nullptr) : QObject(parent) {}
  bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace burrow
