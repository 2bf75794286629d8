#pragma once
/// Asks for a name and a reason in the column, where a dialog would stand before Mark and Stop.

#include <QWidget>
#include <functional>

class QLabel;
class QLineEdit;
class QPushButton;

namespace burrow {

class AskBox : public QWidget {
  Q_OBJECT

 public:
  using Answer = std::function<void(const QString& first, const QString& second)>;
  explicit AskBox(QWidget* parent);
  /// Until it is answered or closed. Both are wanted; without a second label only the first.
  void ask(const QString& question, const QString& first, const QString& second, const QString& button, Answer answer);
  void close_it();

 private:
  void answer();

  QLabel *question_, *first_label_, *second_label_, *complaint_;
  QLineEdit *first_, *second_;
  QPushButton *button_, *close_;
  Answer answer_;
};

}  // namespace burrow
