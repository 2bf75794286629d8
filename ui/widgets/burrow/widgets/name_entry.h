#pragma once
/// A name typed where it stands on the drawing: Enter, or a click elsewhere, takes it; Esc leaves it as it was.

#include <QLineEdit>
#include <functional>

#include "burrow/widgets/typing.h"

namespace burrow {

class NameEntry : public QLineEdit, public HoldsTyping {
  Q_OBJECT

 public:
  explicit NameEntry(QWidget* parent);
  /// Opens at a place of its parent, wholly within it.
  void open(const QString& name, const QString& what, const QPoint& at, std::function<void(const QString&)> take);
  bool take_typing() override;

 Q_SIGNALS:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void close_entry(bool take_over);

  std::function<void(const QString&)> take_;
};

}  // namespace burrow
