#pragma once
/// Beside the drawing: the findings worst first, and the working of the picked one.

#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"
#include "burrow/panels/findings_model.h"

class QListView;
class QLabel;
class QPushButton;
class QTextBrowser;
class QTimer;

namespace burrow {

class FindingsPanel : public QWidget {
  Q_OBJECT

 public:
  FindingsPanel(Document& document, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  void pick(int row);
  [[nodiscard]] QListView* list() const { return list_; }
  /// Text of the working shown, for copying.
  [[nodiscard]] QString working() const;
  [[nodiscard]] QPushButton* copy() const { return copy_; }

 Q_SIGNALS:
  void picked(int row);

 private:
  void refresh();
  void show_working(int row);

  Document& document_;
  FindingsModel* model_;
  FindingDelegate* delegate_;
  QLabel* heading_;
  QListView* list_;
  QLabel* working_heading_;
  QTextBrowser* working_;
  QPushButton* copy_;
  QString plain_;  ///< finding and working as text
  QTimer* later_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
};

}  // namespace burrow
