#pragma once
/// What an entry offers while it is empty: today's day, the name typed last. It stands there grey and counts for
/// nothing until a person takes it: the Down key in the empty entry, or a click on the arrow at its end.
/// Evidence: UtilitiesEntry.NameAndDay_*

#include <QObject>
#include <QString>
#include <functional>

class QAction;
class QLineEdit;

namespace burrow {

class OfferedText : public QObject {
  Q_OBJECT

 public:
  /// `offer`: what is offered now; empty: nothing. Lives as long as the entry.
  OfferedText(QLineEdit* entry, std::function<QString()> offer);
  /// Shows what is offered now.
  void refresh();
  void take();

 Q_SIGNALS:
  /// It stands in the entry now, as if it had been typed.
  void taken();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  [[nodiscard]] QString on_offer() const;

  QLineEdit* entry_;
  std::function<QString()> offer_;
  QAction* arrow_;
};

}  // namespace burrow
