#include "accessible_drawing.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QPointer>
#include <map>

#include "burrow/document/text.h"
#include "burrow/drawing/drawing_view.h"

namespace burrow {

namespace {

/// One item of the drawing. It asks the drawing anew each time: nothing is kept that could be out of date.
class AccessibleItem : public QAccessibleInterface {
 public:
  AccessibleItem(DrawingView& drawing, int place) : drawing_(&drawing), place_(place) {}

  [[nodiscard]] bool isValid() const override { return drawing_ && part().has_value(); }
  [[nodiscard]] QObject* object() const override { return nullptr; }
  [[nodiscard]] QAccessibleInterface* parent() const override {
    return drawing_ ? QAccessible::queryAccessibleInterface(drawing_) : nullptr;
  }
  [[nodiscard]] QAccessibleInterface* child(int) const override { return nullptr; }
  [[nodiscard]] QAccessibleInterface* childAt(int, int) const override { return nullptr; }
  [[nodiscard]] int childCount() const override { return 0; }
  [[nodiscard]] int indexOfChild(const QAccessibleInterface*) const override { return -1; }
  [[nodiscard]] QAccessible::Role role() const override { return QAccessible::ListItem; }

  [[nodiscard]] QString text(QAccessible::Text what) const override {
    const std::optional<ItemRef> item = part();
    if (!item) return {};
    if (what == QAccessible::Name) return drawing_->item_name(*item);
    if (what == QAccessible::Value) return drawing_->item_numbers(*item);
    return {};
  }
  void setText(QAccessible::Text, const QString&) override {}

  [[nodiscard]] QRect rect() const override {
    const std::optional<ItemRef> item = part();
    if (!item) return {};
    const QPoint at = drawing_->viewport()->mapToGlobal(drawing_->place_of(*item).toPoint());
    constexpr int half = 10;
    return {at.x() - half, at.y() - half, 2 * half, 2 * half};
  }

  [[nodiscard]] QAccessible::State state() const override {
    QAccessible::State state;
    state.selectable = true;
    state.focusable = true;
    const std::optional<ItemRef> item = part();
    state.invisible = !item || !drawing_->viewport()->rect().contains(drawing_->place_of(*item).toPoint());
    state.selected = item && drawing_->picked() == *item;
    state.focused = state.selected && drawing_->hasFocus();
    return state;
  }

 private:
  [[nodiscard]] std::optional<ItemRef> part() const {
    if (!drawing_) return std::nullopt;
    const std::vector<ItemRef> items = drawing_->items();
    return static_cast<std::size_t>(place_) < items.size() ? std::optional(items[static_cast<std::size_t>(place_)])
                                                           : std::nullopt;
  }

  QPointer<DrawingView> drawing_;
  int place_;
};

class AccessibleDrawing : public QAccessibleWidget {
 public:
  explicit AccessibleDrawing(DrawingView& drawing) : QAccessibleWidget(&drawing, QAccessible::List) {}
  ~AccessibleDrawing() override {
    for (const auto& [place, id] : children_) QAccessible::deleteAccessibleInterface(id);
  }

  [[nodiscard]] int childCount() const override { return static_cast<int>(drawing().items().size()); }
  [[nodiscard]] QAccessibleInterface* child(int place) const override {
    if (place < 0 || place >= childCount()) return nullptr;
    auto at = children_.find(place);
    if (at == children_.end())
      at = children_.emplace(place, QAccessible::registerAccessibleInterface(new AccessibleItem(drawing(), place)))
               .first;
    return QAccessible::accessibleInterface(at->second);
  }
  [[nodiscard]] int indexOfChild(const QAccessibleInterface* wanted) const override {
    for (const auto& [place, id] : children_)
      if (QAccessible::accessibleInterface(id) == wanted) return place;
    return -1;
  }
  [[nodiscard]] QAccessibleInterface* focusChild() const override {
    const std::vector<ItemRef> items = drawing().items();
    const auto at = std::find(items.begin(), items.end(), drawing().picked());
    return at == items.end() ? nullptr : child(static_cast<int>(at - items.begin()));
  }

 private:
  [[nodiscard]] DrawingView& drawing() const { return *static_cast<DrawingView*>(widget()); }
  mutable std::map<int, QAccessible::Id> children_;
};

QAccessibleInterface* interface_of(const QString&, QObject* object) {
  auto* drawing = qobject_cast<DrawingView*>(object);
  return drawing ? new AccessibleDrawing(*drawing) : nullptr;
}

}  // namespace

void make_drawing_accessible() {
  static const bool done = [] {
    QAccessible::installFactory(interface_of);
    return true;
  }();
  (void)done;
}

}  // namespace burrow
