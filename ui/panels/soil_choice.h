#pragma once
/// A class of soil in the list of a picker: its name, and below it the sign by hand.

#include <QStyledItemDelegate>

namespace burrow {

class SoilChoiceDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  static constexpr int sign_role = Qt::UserRole + 1;

  explicit SoilChoiceDelegate(QObject* parent) : QStyledItemDelegate(parent) {}
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

}  // namespace burrow
