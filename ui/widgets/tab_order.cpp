#include "burrow/widgets/tab_order.h"
#include "watch_program.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <algorithm>
#include <vector>

namespace burrow {

namespace {

/// Parts that Qt builds into a control belong to it.
bool whole(const QWidget& w) {
  return qobject_cast<const QComboBox*>(&w) || qobject_cast<const QAbstractSpinBox*>(&w) ||
         qobject_cast<const QAbstractItemView*>(&w) || qobject_cast<const QLineEdit*>(&w);
}

/// Children in rows: one that begins above the middle of the row's first stands beside it.
std::vector<QWidget*> by_rows(const QWidget& container) {
  std::vector<QWidget*> all;
  for (QObject* child : container.children())
    if (auto* w = qobject_cast<QWidget*>(child); w && w->isVisibleTo(&container) && !w->isWindow()) all.push_back(w);
  std::stable_sort(all.begin(), all.end(), [](const QWidget* a, const QWidget* b) { return a->y() < b->y(); });
  for (auto first = all.begin(); first != all.end();) {
    const int middle = (*first)->y() + (*first)->height() / 2;
    const auto next = std::find_if(first, all.end(), [&](const QWidget* w) { return w->y() >= middle; });
    const auto end = next == first ? first + 1 : next;
    std::stable_sort(first, end, [](const QWidget* a, const QWidget* b) { return a->x() < b->x(); });
    first = end;
  }
  return all;
}

void collect(QWidget& w, std::vector<QWidget*>& chain) {
  if ((w.focusPolicy() & Qt::TabFocus) == Qt::TabFocus && w.isEnabled()) chain.push_back(&w);
  if (whole(w)) return;
  for (QWidget* child : by_rows(w)) collect(*child, chain);
}

class BeforeTab : public QObject {
 public:
  using QObject::QObject;
  bool eventFilter(QObject* watched, QEvent* event) override {
    if (event->type() == QEvent::KeyPress) {
      const int key = static_cast<QKeyEvent*>(event)->key();
      if (key == Qt::Key_Tab || key == Qt::Key_Backtab)
        if (auto* w = qobject_cast<QWidget*>(watched)) order_tabs(*w->window());
    }
    return QObject::eventFilter(watched, event);
  }
};

}  // namespace

void order_tabs(QWidget& window) {
  std::vector<QWidget*> chain;
  collect(window, chain);
  for (std::size_t i = 1; i < chain.size(); ++i) QWidget::setTabOrder(chain[i - 1], chain[i]);
}

void tab_by_place() {
  watch_program<BeforeTab>();
}

}  // namespace burrow
