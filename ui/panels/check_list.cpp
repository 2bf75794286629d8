#include "burrow/panels/check_list.h"
#include "burrow/document/text.h"

#include <QPainter>
#include <QSignalBlocker>
#include <QStyledItemDelegate>
#include <algorithm>

namespace burrow {

namespace {

constexpr int pad = 6, bar_height = 5;

QFont bold(QFont font) {
  font.setBold(true);
  return font;
}

/// Where the pieces of one row stand.
struct Layout {
  QRect name, used, numbers, bar;
  int height = 0;
};

Layout lay_out(const CheckRow& row, const QFont& font, int width) {
  const QFontMetrics plain(font), strong(bold(font));
  Layout at;
  int right = width - pad;
  if (!row.used.isEmpty()) {
    const int wide = strong.horizontalAdvance(row.used);
    at.used = QRect(right - wide, pad / 2, wide + 1, strong.height());
    right -= wide + pad;
  }
  const auto box = [](const QFontMetrics& metrics, int wide, const QString& text) {
    return metrics.boundingRect(QRect(0, 0, std::max(wide, 30), 10000), Qt::TextWordWrap, text).height();
  };
  at.name = QRect(pad, pad / 2, std::max(right - pad, 30), box(plain, right - pad, row.name));
  at.numbers = QRect(pad, at.name.bottom() + 1, width - 2 * pad, box(strong, width - 2 * pad, row.numbers));
  int bottom = at.numbers.bottom() + 1;
  if (!row.used.isEmpty()) {
    at.bar = QRect(pad, bottom + 2, width - 2 * pad, bar_height);
    bottom = at.bar.bottom() + 1;
  }
  at.height = bottom + pad / 2 + 2;
  return at;
}

class CheckDelegate : public QStyledItemDelegate {
 public:
  explicit CheckDelegate(CheckList* list) : QStyledItemDelegate(list), list_(list) {}

  QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
    const int width = list_->viewport()->width();
    return {width, lay_out(row(index), list_->font(), width).height};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const CheckRow& shown = row(index);
    const Theme& theme = list_->theme();
    const bool picked = option.state & QStyle::State_Selected;
    const Layout at = lay_out(shown, list_->font(), option.rect.width());
    const QColor ink = picked ? option.palette.color(QPalette::HighlightedText) : theme.ink;
    painter->save();
    painter->translate(option.rect.topLeft());
    painter->fillRect(QRect(QPoint(), option.rect.size()), picked ? theme.focus : theme.field);
    painter->setPen(ink);
    painter->setFont(list_->font());
    painter->drawText(at.name, Qt::TextWordWrap, shown.name);
    painter->setFont(bold(list_->font()));
    painter->drawText(at.numbers, Qt::TextWordWrap, shown.numbers);
    if (!shown.used.isEmpty()) {
      painter->drawText(at.used, Qt::AlignRight | Qt::AlignTop, shown.used);
      paint_bar(*painter, shown, at.bar, picked, ink);
    }
    if (!picked) {
      QColor line = theme.ink;
      line.setAlpha(40);
      painter->fillRect(QRect(0, option.rect.height() - 1, option.rect.width(), 1), line);
    }
    painter->restore();
  }

 private:
  /// The limit stands at four fifths of the room, so that what is over it sticks out beyond the mark.
  void paint_bar(QPainter& painter, const CheckRow& shown, const QRect& room, bool picked, const QColor& ink) const {
    constexpr double limit_at = 0.8;
    const Theme& theme = list_->theme();
    QColor empty = ink;
    empty.setAlpha(35);
    painter.fillRect(room, empty);
    QRect full = room;
    full.setWidth(static_cast<int>(room.width() * std::clamp(shown.share * limit_at, 0.0, 1.0)));
    QColor colour = shown.broken ? theme.severity(shown.severity) : shown.near ? theme.caution_line : theme.fine;
    if (picked) colour = ink;
    painter.fillRect(full, colour);
    painter.fillRect(
        QRect(room.left() + static_cast<int>(room.width() * limit_at), room.top() - 1, 2, room.height() + 2), ink);
  }

  [[nodiscard]] const CheckRow& row(const QModelIndex& index) const {
    return list_->rows()[static_cast<std::size_t>(index.row())];
  }
  CheckList* list_;
};

}  // namespace

CheckList::CheckList(const QString& accessible_name, QWidget* parent) : QListWidget(parent) {
  setAccessibleName(accessible_name);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // the page scrolls
  setResizeMode(QListView::Adjust);
  setTabKeyNavigation(false);
  setItemDelegate(new CheckDelegate(this));
  connect(this, &QListWidget::currentRowChanged, this, [this](int row) {
    if (row >= 0 && static_cast<std::size_t>(row) < rows_.size())
      Q_EMIT chosen(text_from(rows_[static_cast<std::size_t>(row)].code));
  });
}

void CheckList::set_theme(const Theme& theme) {
  theme_ = theme;
  viewport()->update();
}

void CheckList::show_checks(std::vector<CheckRow> rows, const std::string& picked) {
  const QSignalBlocker blocker(this);
  while (count() > static_cast<int>(rows.size())) delete takeItem(count() - 1);
  rows_ = std::move(rows);
  while (count() < static_cast<int>(rows_.size())) addItem(QString());
  int now = -1;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const CheckRow& row = rows_[i];
    const QString used = row.used.isEmpty() ? QString() : QStringLiteral(", ") + row.used;
    const QString text = row.name + QLatin1Char('\n') + row.numbers + used;  // for screen readers
    if (item(static_cast<int>(i))->text() != text) item(static_cast<int>(i))->setText(text);
    if (row.code == picked) now = static_cast<int>(i);
  }
  if (now != currentRow()) setCurrentRow(now);
  scheduleDelayedItemsLayout();
  fit_height();
  viewport()->update();
}

void CheckList::fit_height() {
  int height = 2 * frameWidth() + 2;
  for (const CheckRow& row : rows_) height += lay_out(row, font(), viewport()->width()).height;
  setFixedHeight(std::max(height, fontMetrics().height() * 2));
}

void CheckList::resizeEvent(QResizeEvent* event) {
  QListWidget::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) {
    scheduleDelayedItemsLayout();
    fit_height();
  }
}

}  // namespace burrow
