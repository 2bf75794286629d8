#pragma once
/// Answers the questions of a window while it waits for them.

#include <QApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QStringList>
#include <QTimer>

namespace burrow::test {

/// One press for each question, in order: the name of a button of a message, or a path for a dialog that asks where.
class Answers {
 public:
  explicit Answers(QStringList presses) : presses_(std::move(presses)) {
    QObject::connect(&style_, &QTimer::timeout, [this] { answer(); });
    style_.start(5);
  }
  /// Text and explanation of each message that was answered.
  QStringList shown_text;
  [[nodiscard]] bool all_asked() const { return presses_.isEmpty(); }

 private:
  void answer() {
    if (presses_.isEmpty()) return;
    QWidget* asking = QApplication::activeModalWidget();
    if (auto* box = qobject_cast<QMessageBox*>(asking)) {
      for (QAbstractButton* button : box->buttons()) {
        if (button->text().remove(QLatin1Char('&')) != presses_.front()) continue;
        shown_text << box->text() + QLatin1Char('\n') + box->informativeText();
        presses_.removeFirst();
        return button->click();
      }
    } else if (auto* dialog = qobject_cast<QFileDialog*>(asking)) {
      dialog->selectFile(presses_.takeFirst());
      // Later: it may ask in its turn, and that too is to be answered here.
      QMetaObject::invokeMethod(dialog, "accept", Qt::QueuedConnection);
    }
  }

  QStringList presses_;
  QTimer style_;
};

}  // namespace burrow::test
