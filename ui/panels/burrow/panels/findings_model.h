#pragma once
/// The findings as a list: what the drawing says with flags, in the same order and under the same numbers.

#include <QAbstractListModel>
#include <QStyledItemDelegate>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"

namespace burrow {

/// Number in the whole list, whatever a filter leaves of it.
inline constexpr int finding_number_role = Qt::UserRole + 4;

class FindingsModel : public QAbstractListModel {
  Q_OBJECT

 public:
  FindingsModel(Document& document, QObject* parent);
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] const Finding& finding(int row) const { return findings_[static_cast<std::size_t>(row)]; }
  /// Where a finding of this code and subject stands, nearest to a row; −1: gone.
  [[nodiscard]] int row_like(const Finding& finding, int near_row) const;
  /// All its words: what it says, and the line below.
  [[nodiscard]] QString words(int row) const;
  void set_units(UnitSystem units);
  void refresh();

 private:
  Document& document_;
  std::vector<Finding> findings_;
  UnitSystem units_ = UnitSystem::metric;
};

/// Draws a finding: its mark and number, its words, and below them the limit's source and label.
class FindingDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  explicit FindingDelegate(QObject* parent) : QStyledItemDelegate(parent) {}
  void set_theme(const Theme& theme) { theme_ = theme; }
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

 private:
  Theme theme_ = Theme::light();
};

}  // namespace burrow
