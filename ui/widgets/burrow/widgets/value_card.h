#pragma once
/// A small card beside a thing on the drawing, in which its values are typed in any unit. Enter takes all that
/// changed as one undo step each; Esc closes without a change. What is typed is never altered silently: a wrong entry
/// says what is wrong and stays.

#include <QFrame>
#include <functional>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/document/fields.h"

class QLineEdit;
class QLabel;

namespace burrow {

class ValueCard : public QFrame {
  Q_OBJECT

 public:
  ValueCard(Document& document, QWidget* parent);

  /// Shows the fields of a part near `at` (in the parent's coordinates), wholly inside the parent.
  void open_for(const ItemRef& part, const QPoint& at, UnitSystem units);
  /// The same for entries of another kind: `fields` makes them from a crossing, what they change is `part`.
  void open_fields(const QString& title, const ItemRef& part, std::function<std::vector<Field>(const Crossing&)> fields,
                   const QPoint& at, UnitSystem units);
  [[nodiscard]] const std::vector<QLineEdit*>& entries() const { return entries_; }

 Q_SIGNALS:
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void take_over();
  void close_card();
  void clear();
  void complain(std::size_t row, const Error& error);

  Document& document_;
  ItemRef part_;
  QString title_;
  std::function<std::vector<Field>(const Crossing&)> make_;
  UnitSystem units_ = UnitSystem::metric;
  std::vector<Field> fields_;
  std::vector<QLineEdit*> entries_;
  std::vector<QString> shown_;
  QLabel* wrong_ = nullptr;
};

}  // namespace burrow
