#pragma once
/// In which somebody says why a finding may stand. Nothing is muted without a reason.

#include <QFrame>
#include <functional>
#include <optional>

#include "burrow/check/mute.h"
#include "burrow/drawing/theme.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace burrow {

class MuteForm : public QFrame {
  Q_OBJECT

 public:
  explicit MuteForm(QWidget* parent);
  void set_theme(const Theme& theme);
  /// Shows the form for a finding; `shown_text` is what was said before.
  void open_for(const Finding& finding, const QString& what, const Mute* shown_text);
  void close_form();
  /// Tells what is wrong and keeps the form open.
  void complain(const Error& error);
  [[nodiscard]] QLineEdit* reason() const { return reason_; }
  [[nodiscard]] QLineEdit* by() const { return by_; }
  [[nodiscard]] QLabel* wrong() const { return wrong_; }
  [[nodiscard]] QLabel* effect() const { return effect_; }
  [[nodiscard]] QPushButton* take() const { return take_; }

 Q_SIGNALS:
  void given(const QString& reason, const QString& by);
  void left();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QLabel* title_;
  QLabel* effect_;
  QLineEdit* reason_;
  QLineEdit* by_;
  QLabel* wrong_;
  QPushButton* take_;
};

}  // namespace burrow
