#include "findings_list.h"

#include <QLayout>
#include <QResizeEvent>
#include <QStyle>
#include <algorithm>

namespace burrow {

namespace {
constexpr int indent_px = 6;
}

FindingsList::FindingsList(QWidget* parent) : QListView(parent) {}

void FindingsList::set_foldout(QWidget* foldout) {
  foldout_ = foldout;
  foldout_->hide();
}

int FindingsList::row_width() const {
  return width() - style()->pixelMetric(QStyle::PM_ScrollBarExtent, nullptr, this) - 2;
}

void FindingsList::open(const QModelIndex& row) {
  open_ = row;
  foldout_changed();
  scheduleDelayedItemsLayout();  // another row has its height now, though it may be as high as the one before
  executeDelayedItemsLayout();
  if (row.isValid()) scrollTo(row);
  place_foldout();
}

void FindingsList::foldout_changed() {
  const int wide = row_width() - 2 * indent_px;
  int high = 0;
  if (open_.isValid() && foldout_ && foldout_->layout()) {
    foldout_->resize(wide, foldout_->height());
    high = foldout_->layout()->hasHeightForWidth() ? foldout_->layout()->totalHeightForWidth(wide)
                                                   : foldout_->layout()->totalSizeHint().height();
    high += indent_px;
  }
  if (high != extra_) {
    extra_ = high;
    scheduleDelayedItemsLayout();
  }
  place_foldout();
}

void FindingsList::place_foldout() {
  if (!foldout_) return;
  if (!open_.isValid() || extra_ == 0 || !isVisible()) {
    foldout_->hide();
    return;
  }
  const QRect row = visualRect(open_);
  const QPoint at = viewport()->mapTo(parentWidget(), QPoint(row.left() + indent_px, row.bottom() + 1 - extra_));
  foldout_->setGeometry(at.x(), at.y(), row_width() - 2 * indent_px, extra_ - indent_px);
  foldout_->show();
  foldout_->raise();
}

void FindingsList::updateGeometries() {
  QListView::updateGeometries();
  place_foldout();
}

void FindingsList::scrollContentsBy(int dx, int dy) {
  QListView::scrollContentsBy(dx, dy);
  place_foldout();
}

void FindingsList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  foldout_changed();
}

}  // namespace burrow
