#pragma once
/// A column of entries for words: name, owner, date. Each is one undo step when the entry is left or Enter pressed; Esc
/// puts the old words back. An empty one may offer today's day or the name typed last; what is no day is not taken.

#include <QWidget>
#include <functional>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/widgets/typing.h"

class QGridLayout;
class QLabel;
class QLineEdit;

namespace burrow {

class OfferedText;

/// What kind of words it takes, and so what it offers while it is empty.
enum class TextKind { words, name, day };

struct TextField {
  QString label;
  std::function<QString()> now;
  std::function<void(Crossing&, const QString&)> apply;
  TextKind kind = TextKind::words;
};

/// What is offered for that kind of words: nothing, the name typed last, the day by which is judged.
QString offered(TextKind kind, const Document& document);
/// Why the text cannot be taken; empty: it can. A day is written as 2026-03-14.
QString fault_of_text(TextKind kind, const QString& text);

class TextForm : public QWidget, public HoldsTyping {
  Q_OBJECT

 public:
  /// `part` tells whose words they are whenever something is typed.
  TextForm(Document& document, std::function<ItemRef()> part, QWidget* parent);
  /// `long_words`: the entry has the whole width, below its label.
  void add(TextField field, const QString& hint = {}, bool long_words = false);
  void set_theme(const Theme& theme);
  /// Brings what is shown up to date; typing under way stays, unless it was for another part.
  void catch_up();
  bool take_typing() override;
  void drop_typing();
  [[nodiscard]] QLineEdit* entry(const QString& label) const;
  /// What is wrong with what was typed last; empty: nothing.
  [[nodiscard]] QString complaint() const;

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    TextField field;
    QLineEdit* entry = nullptr;
    QString hint;
    OfferedText* offer = nullptr;
  };
  void take_over(std::size_t at);
  void complain(const QString& what);

  Document& document_;
  std::function<ItemRef()> part_;
  ItemRef shown_;
  QGridLayout* grid_;
  QLabel* wrong_;
  std::vector<Row> rows_;
};

}  // namespace burrow
