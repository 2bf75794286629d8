#pragma once
/// The row of tools under the menus. While something is dragged it becomes the readout: same place, same height. Where
/// the window is too narrow for all of them, those that yield first stand under one button at the end of the row.

#include <QStackedWidget>
#include <utility>
#include <vector>

#include "burrow/drawing/theme.h"
#include "burrow/window/readout_row.h"

class QAction;
class QHBoxLayout;
class QMenu;
class QToolButton;

namespace burrow {

class ToolStrip : public QStackedWidget {
  Q_OBJECT

 public:
  /// `early` leave the row before all others; the rest from the right.
  enum class Yields { late, early };

  explicit ToolStrip(QWidget* parent);
  void add(QAction* action, Yields yields = Yields::late);
  /// A button that opens a menu; its text may change.
  QToolButton* add_menu(QMenu* menu, const QString& icon, const QString& name, const QString& text);
  void add_gap();
  /// A tool that has nothing to do now is not there.
  void offer(const QAction* action, bool on);
  void set_find(QAction* action);
  void set_theme(const Theme& theme);

  void show_readout(const Readout& readout);
  void end_readout();
  [[nodiscard]] const ReadoutRow& readout() const { return *readout_; }
  [[nodiscard]] bool reads_out() const { return currentIndex() == 1; }
  /// The buttons in the row, those that have yielded too.
  [[nodiscard]] std::vector<QToolButton*> buttons() const;
  /// Opens what has yielded; hidden while all find room.
  [[nodiscard]] QToolButton* more() const { return more_; }

 protected:
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Tool {
    QWidget* widget = nullptr;  ///< a button, or the line of a gap
    QAction* action = nullptr;  ///< none: a gap or a menu
    QMenu* menu = nullptr;
    Yields yields = Yields::late;
    bool offered = true;
    [[nodiscard]] bool gap() const { return !action && !menu; }
  };

  QToolButton* add_button(const Tool& tool);
  void fit_height();
  void fit_width();
  void show_gaps(const std::vector<bool>& shown);
  void fill_more();

  QWidget* tools_;
  QHBoxLayout* row_;
  QToolButton* find_button_;
  QToolButton* more_;
  ReadoutRow* readout_;
  std::vector<Tool> all_;
  std::pair<int, int> fitted_;  ///< for this room and this width of all tools
};

}  // namespace burrow
