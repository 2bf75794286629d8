#pragma once
/// A quiet line across the window: what happened, and the one thing to do about it. Nobody has to answer.

#include <QFrame>

#include "burrow/drawing/theme.h"

class QLabel;
class QPushButton;

namespace burrow {

class NoticeLine : public QFrame {
  Q_OBJECT

 public:
  explicit NoticeLine(QWidget* parent = nullptr);
  /// Shows the line; screen readers are told.
  void say(const QString& text, const QString& action);
  [[nodiscard]] QString text() const;
  [[nodiscard]] QPushButton& action() { return *action_; }
  void set_theme(const Theme& theme);

 Q_SIGNALS:
  void action_wanted();

 private:
  QLabel* text_;
  QPushButton* action_;
};

}  // namespace burrow
