#pragma once
/// A small form in which several questions are answered at once. It is opened by a button, lies in the page below it,
/// and gives its answers when its own button is pressed; Esc or "Leave" changes nothing.

#include <QFrame>
#include <vector>

#include "burrow/panels/text_form.h"

class QComboBox;
class QPushButton;
class QVBoxLayout;

namespace burrow {

class AtOnceForm : public QFrame {
  Q_OBJECT

 public:
  AtOnceForm(Document& document, const QString& take, QWidget* parent);
  /// Entries and choices stand in the order in which they are added.
  QLineEdit* add_text(const QString& label, TextKind kind, const QString& hint = {});
  QComboBox* add_choice(const QString& label, const QStringList& words);

  /// What is asked, above the entries.
  void set_title(const QString& text);
  void open();
  void close_form();
  void set_theme(const Theme& theme);
  void set_locked(bool locked);
  /// Says why the answers are not taken and keeps the form open.
  void complain(const QString& what);
  [[nodiscard]] QString complaint() const;
  [[nodiscard]] QPushButton* take_button() const { return take_; }

 Q_SIGNALS:
  /// All entries can be read.
  void given();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Row {
    QLineEdit* entry;
    TextKind kind;
    OfferedText* offer;
  };
  void give();
  void add_labelled(const QString& label, QWidget* field);

  Document& document_;
  QLabel* title_;
  QVBoxLayout* form_;
  QLabel* wrong_;
  QPushButton* leave_;
  QPushButton* take_;
  QWidget* first_ = nullptr;
  std::vector<Row> rows_;
  std::vector<QComboBox*> choices_;
};

}  // namespace burrow
