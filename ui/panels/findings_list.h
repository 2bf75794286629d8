#pragma once
/// The list of findings with one row unfolded: what belongs to it stands below its words and scrolls with them.

#include <QListView>
#include <QPersistentModelIndex>

namespace burrow {

class FindingsList : public QListView {
  Q_OBJECT

 public:
  explicit FindingsList(QWidget* parent);
  /// The widget that an open row shows; a sibling, over the list.
  void set_foldout(QWidget* foldout);
  /// Opens a row, or none.
  void open(const QModelIndex& row);
  [[nodiscard]] QModelIndex open_row() const { return open_; }
  /// Its height may have changed.
  void foldout_changed();
  /// Of the foldout, below the words of an open row; 0 for the others.
  [[nodiscard]] int extra_height(const QModelIndex& row) const { return open_.isValid() && row == open_ ? extra_ : 0; }
  /// Width that rows have, whether a scroll bar is there or not.
  [[nodiscard]] int row_width() const;

 protected:
  void updateGeometries() override;
  void scrollContentsBy(int dx, int dy) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void place_foldout();

  QWidget* foldout_ = nullptr;
  QPersistentModelIndex open_;
  int extra_ = 0;
};

}  // namespace burrow
