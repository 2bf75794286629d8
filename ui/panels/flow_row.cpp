#include "flow_row.h"

#include <algorithm>

namespace burrow {

namespace {
constexpr int gap = 6;
}

FlowRow::~FlowRow() {
  for (const QLayoutItem* item : items_) delete item;
}

QLayoutItem* FlowRow::itemAt(int at) const {
  return at >= 0 && at < count() ? items_[static_cast<std::size_t>(at)] : nullptr;
}

QLayoutItem* FlowRow::takeAt(int at) {
  QLayoutItem* item = itemAt(at);
  if (item) items_.erase(items_.begin() + at);
  return item;
}

QSize FlowRow::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : items_) size = size.expandedTo(item->minimumSize());
  return size;
}

int FlowRow::place(int width, const QRect* room) const {
  int x = 0, y = 0, row_height = 0;
  for (QLayoutItem* item : items_) {
    if (item->isEmpty()) continue;
    const QSize size(std::min(item->sizeHint().width(), width), item->sizeHint().height());
    if (x > 0 && x + size.width() > width) {
      x = 0;
      y += row_height + gap;
      row_height = 0;
    }
    if (room) item->setGeometry(QRect(room->topLeft() + QPoint(x, y), size));
    x += size.width() + gap;
    row_height = std::max(row_height, size.height());
  }
  return y + row_height;
}

void FlowRow::setGeometry(const QRect& room) {
  QLayout::setGeometry(room);
  place(room.width(), &room);
}

}  // namespace burrow
