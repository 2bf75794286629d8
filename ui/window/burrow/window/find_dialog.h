#pragma once
/// Finds what the program can do and what the crossing holds: commands of the menus with their keys, pages, things on
/// the drawing, findings, headings of the help. Type some letters, choose with the arrow keys, Enter goes there.

#include <QDialog>
#include <functional>
#include <vector>

#include "burrow/drawing/theme.h"

class QLabel;
class QLineEdit;
class QListWidget;

namespace burrow {

struct Findable {
  QString name;
  QString where;  ///< "menu View", "utility", "finding 3"
  QString keys;   ///< of a command; empty: none
  std::function<void()> go;
};

/// Places in `all` whose name and kind hold every word, in any order: first those whose name begins with what was
/// typed, then those with a word that begins so, then the others; among equals in their order. Nothing typed: all.
/// Evidence: FindDialog.*
std::vector<std::size_t> matching(const std::vector<Findable>& all, const QString& typed);

class FindDialog : public QDialog {
  Q_OBJECT

 public:
  FindDialog(std::vector<Findable> all, const Theme& theme, QWidget* parent);
  [[nodiscard]] QLineEdit* entry() const { return entry_; }
  [[nodiscard]] QListWidget* list() const { return list_; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void show_matching(const QString& typed);
  void go();

  std::vector<Findable> all_;
  QLineEdit* entry_;
  QListWidget* list_;
  QLabel* none_;
};

}  // namespace burrow
