#pragma once
/// What chooses the page beside the drawing: a rail with one button for each group of pages, and over the page a row
/// with the pages of that group. What is shown is told by weight and by a bar, never by colour alone. Arrow keys go
/// from button to button; Tab leaves them.

#include <QAbstractButton>
#include <QPushButton>
#include <QWidget>
#include <vector>

#include "burrow/drawing/theme.h"

class QButtonGroup;
class QHBoxLayout;
class QVBoxLayout;

namespace burrow {

class PageButton : public QPushButton {
  Q_OBJECT

 public:
  PageButton(const QString& name, QWidget* parent);
  void set_theme(const Theme& theme);
  /// Space left and right of the name.
  void set_padding(int px);
  /// Of the letters, 1 as usual: where even with the least space the names of a long language find no room.
  void set_scale(double scale);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Theme theme_ = Theme::light();
  [[nodiscard]] QFont letters(bool strong) const;
  double scale_ = 1;
  int padding_ = 10;
};

/// The pages of the group that is shown. Groups are told apart by number, pages by their number among all.
class PageBar : public QWidget {
  Q_OBJECT

 public:
  explicit PageBar(QWidget* parent);
  /// The buttons added from now on are of the next group.
  void begin_group() { ++group_; }
  void add(const QString& name, const QString& hint);
  void set_theme(const Theme& theme);
  /// Shows a page, with its group.
  void check(int page);
  /// The page last shown of a group; its first, if none was.
  [[nodiscard]] int last_of(int group) const { return last_[static_cast<std::size_t>(group)]; }
  /// The next page of the group of a page; after its last the first.
  [[nodiscard]] int after(int page) const;
  [[nodiscard]] int group_of(int page) const { return groups_[static_cast<std::size_t>(page)]; }
  [[nodiscard]] PageButton* button(int page) const { return buttons_[static_cast<std::size_t>(page)]; }

 Q_SIGNALS:
  void wanted(int page);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fit_names();

  QHBoxLayout* row_;
  QButtonGroup* exclusive_;
  std::vector<PageButton*> buttons_;
  std::vector<int> groups_;  ///< of each page
  std::vector<int> last_;    ///< page last shown of each group
  int group_ = -1;
  Theme theme_ = Theme::light();
};

class RailButton : public QAbstractButton {
  Q_OBJECT

 public:
  RailButton(const QString& name, const QString& icon, QWidget* parent);
  void set_theme(const Theme& theme);
  /// A number at the icon's corner, 0: none.
  void set_count(int count, const QColor& ground, const QColor& ink);
  [[nodiscard]] int count() const { return count_; }
  /// Narrow: the icon alone.
  void set_with_name(bool on);
  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString icon_;
  Theme theme_ = Theme::light();
  int count_ = 0;
  QColor count_ground_, count_ink_;
  bool with_name_ = true;
};

class PageRail : public QWidget {
  Q_OBJECT

 public:
  explicit PageRail(QWidget* parent);
  void add_group(const QString& name, const QString& icon);
  /// At the foot, not a group: what it does is the caller's.
  RailButton* add_foot(const QString& name, const QString& icon);
  void check(int group);
  void set_theme(const Theme& theme);
  void set_with_names(bool on);
  [[nodiscard]] RailButton* button(int group) const { return groups_[static_cast<std::size_t>(group)]; }
  [[nodiscard]] int count() const { return static_cast<int>(groups_.size()); }

 Q_SIGNALS:
  void wanted(int group);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QVBoxLayout* column_;
  QButtonGroup* exclusive_;
  std::vector<RailButton*> groups_, feet_;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
