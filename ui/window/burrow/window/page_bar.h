#pragma once
/// The bar that chooses the page beside the drawing: flat buttons in named rows, one row for each kind of page. The
/// page shown is told by weight and by a bar under its name, never by colour alone. Arrow keys go from button to
/// button; Tab leaves the bar.

#include <QPushButton>
#include <QWidget>
#include <vector>

#include "burrow/drawing/theme.h"

class QButtonGroup;
class QGridLayout;
class QLabel;

namespace burrow {

class PageButton : public QPushButton {
  Q_OBJECT

 public:
  PageButton(const QString& name, QWidget* parent);
  void set_theme(const Theme& theme);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Theme theme_ = Theme::light();
};

class PageBar : public QWidget {
  Q_OBJECT

 public:
  explicit PageBar(QWidget* parent);
  /// The buttons added from now on stand in a row of this name.
  void begin_row(const QString& name);
  void add(const QString& name, const QString& hint);
  void set_theme(const Theme& theme);
  void check(int page);
  [[nodiscard]] PageButton* button(int page) const { return buttons_[static_cast<std::size_t>(page)]; }

 Q_SIGNALS:
  void wanted(int page);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QGridLayout* grid_;
  QButtonGroup* group_;
  std::vector<PageButton*> buttons_;
  std::vector<QLabel*> row_names_;
  int row_ = -1;
  int column_ = 0;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
