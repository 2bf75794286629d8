#pragma once
/// Widgets side by side, going on below where the width ends.

#include <QLayout>
#include <vector>

namespace burrow {

class FlowRow : public QLayout {
  Q_OBJECT

 public:
  explicit FlowRow(QWidget* parent) : QLayout(parent) { setContentsMargins(0, 0, 0, 0); }
  ~FlowRow() override;
  void addItem(QLayoutItem* item) override { items_.push_back(item); }
  [[nodiscard]] int count() const override { return static_cast<int>(items_.size()); }
  [[nodiscard]] QLayoutItem* itemAt(int at) const override;
  QLayoutItem* takeAt(int at) override;
  [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override { return place(width, nullptr); }
  [[nodiscard]] QSize sizeHint() const override { return minimumSize(); }
  [[nodiscard]] QSize minimumSize() const override;
  void setGeometry(const QRect& room) override;

 private:
  /// Height needed at this width; puts the items into `room` if there is one.
  int place(int width, const QRect* room) const;

  std::vector<QLayoutItem*> items_;
};

}  // namespace burrow
