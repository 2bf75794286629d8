#pragma once
/// The row of tools under the menus. While something is dragged it becomes the readout: same place, same height.

#include <QStackedWidget>

#include "burrow/drawing/theme.h"
#include "burrow/window/readout_row.h"

class QAction;
class QMenu;
class QToolBar;
class QToolButton;

namespace burrow {

class ToolStrip : public QStackedWidget {
  Q_OBJECT

 public:
  explicit ToolStrip(QWidget* parent);
  void add(QAction* action);
  /// A button that opens a menu; its text may change.
  QToolButton* add_menu(QMenu* menu, const QString& icon, const QString& name, const QString& text);
  void add_gap();
  void set_finder(QAction* action);
  void set_theme(const Theme& theme);

  void show_readout(const Readout& readout);
  void end_readout();
  [[nodiscard]] const ReadoutRow& readout() const { return *readout_; }
  [[nodiscard]] bool reads_out() const { return currentIndex() == 1; }

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void fit_height();

  QToolBar* bar_;
  QToolButton* finder_;
  ReadoutRow* readout_;
};

}  // namespace burrow
