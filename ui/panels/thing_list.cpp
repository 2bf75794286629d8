#include "burrow/panels/thing_list.h"

#include <QPainter>
#include <QSignalBlocker>
#include <QStyledItemDelegate>
#include <algorithm>

namespace burrow {

namespace {

constexpr int pad = 6;

/// Where the pieces of one row stand.
struct Layout {
  QRect badge, title, tag, facts;
  int height = 0;
};

QFont bold(QFont font) {
  font.setBold(true);
  return font;
}

Layout lay_out(const Thing& thing, const QFont& font, int width) {
  const QFontMetrics plain(font), strong(bold(font));
  Layout at;
  int left = pad, right = width - pad;
  if (!thing.badge.isEmpty()) {
    const int side = strong.height() + 2;
    at.badge = QRect(left, pad / 2, side, side);
    left += side + pad;
  }
  if (!thing.tag.isEmpty()) {
    const int wide = strong.horizontalAdvance(thing.tag) + 2 * pad;
    at.tag = QRect(right - wide, pad / 2, wide, strong.height() + 2);
    right -= wide + pad;
  }
  const auto box = [&](const QFontMetrics& metrics, int from, int to, const QString& text) {
    return metrics.boundingRect(QRect(0, 0, std::max(to - from, 30), 10000), Qt::TextWordWrap, text).height();
  };
  at.title = QRect(left, pad / 2, std::max(right - left, 30), box(strong, left, right, thing.title));
  const int below = std::max(at.title.bottom(), at.badge.isNull() ? 0 : at.badge.bottom()) + 1;
  at.facts = QRect(left, below, width - pad - left, box(plain, left, width - pad, thing.facts));
  at.height = at.facts.bottom() + pad / 2 + 1;
  return at;
}

class ThingDelegate : public QStyledItemDelegate {
 public:
  explicit ThingDelegate(ThingList* list) : QStyledItemDelegate(list), list_(list) {}

  QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
    const int width = list_->viewport()->width();
    return {width, lay_out(thing(index), list_->font(), width).height};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Thing& shown = thing(index);
    const Theme& theme = list_->theme();
    const bool picked = option.state & QStyle::State_Selected;
    const Layout at = lay_out(shown, list_->font(), option.rect.width());
    const QColor ink = picked ? option.palette.color(QPalette::HighlightedText) : theme.ink;
    painter->save();
    painter->translate(option.rect.topLeft());
    painter->fillRect(QRect(QPoint(), option.rect.size()), picked ? theme.focus : theme.field);
    painter->setPen(ink);
    painter->setFont(list_->font());
    painter->drawText(at.facts, Qt::TextWordWrap, shown.facts);
    painter->setFont(bold(list_->font()));
    painter->drawText(at.title, Qt::TextWordWrap, shown.title);
    if (!shown.badge.isEmpty()) {
      painter->fillRect(at.badge, theme.field);
      painter->setPen(QPen(shown.badge_colour, 2));
      painter->drawRect(at.badge.adjusted(1, 1, -1, -1));
      painter->setPen(theme.ink);
      painter->drawText(at.badge, Qt::AlignCenter, shown.badge);
    }
    if (!shown.tag.isEmpty()) {
      painter->fillRect(at.tag, theme.caution);
      painter->setPen(theme.on_caution);
      painter->drawText(at.tag, Qt::AlignCenter, shown.tag);
    }
    if (!picked) {
      QColor line = theme.ink;
      line.setAlpha(40);
      painter->fillRect(QRect(0, option.rect.height() - 1, option.rect.width(), 1), line);
    }
    painter->restore();
  }

 private:
  [[nodiscard]] const Thing& thing(const QModelIndex& index) const {
    return list_->things()[static_cast<std::size_t>(index.row())];
  }
  ThingList* list_;
};

}  // namespace

ThingList::ThingList(const QString& accessible_name, std::size_t most_rows, QWidget* parent)
    : QListWidget(parent), most_rows_(most_rows) {
  setAccessibleName(accessible_name);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setResizeMode(QListView::Adjust);
  setTabKeyNavigation(false);
  setItemDelegate(new ThingDelegate(this));
  connect(this, &QListWidget::currentRowChanged, this, [this](int row) {
    if (row >= 0 && static_cast<std::size_t>(row) < things_.size())
      Q_EMIT chosen(QString::fromStdString(things_[static_cast<std::size_t>(row)].id));
  });
  connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) {
    const auto row = static_cast<std::size_t>(this->row(item));
    if (row < things_.size()) Q_EMIT chosen(QString::fromStdString(things_[row].id));
  });
}

void ThingList::set_theme(const Theme& theme) {
  theme_ = theme;
  viewport()->update();
}

void ThingList::show_things(std::vector<Thing> things, const std::string& picked) {
  const QSignalBlocker quiet(this);
  while (count() > static_cast<int>(things.size())) delete takeItem(count() - 1);
  things_ = std::move(things);
  while (count() < static_cast<int>(things_.size())) addItem(QString());
  int row = -1;
  for (std::size_t i = 0; i < things_.size(); ++i) {
    const Thing& thing = things_[i];
    const QString tag = thing.tag.isEmpty() ? QString() : QStringLiteral(" – ") + thing.tag;
    const QString text = thing.title + tag + QLatin1Char('\n') + thing.facts;
    if (item(static_cast<int>(i))->text() != text) item(static_cast<int>(i))->setText(text);
    if (thing.id == picked) row = static_cast<int>(i);
  }
  if (row != currentRow()) {
    setCurrentRow(row);
    if (row >= 0) scrollToItem(item(row));
  }
  scheduleDelayedItemsLayout();
  fit_height();
  viewport()->update();
}

void ThingList::fit_height() {
  int height = 2 * frameWidth() + 2;
  for (std::size_t i = 0; i < std::min(things_.size(), most_rows_); ++i)
    height += lay_out(things_[i], font(), viewport()->width()).height;
  setFixedHeight(std::max(height, fontMetrics().height() * 2));
}

void ThingList::resizeEvent(QResizeEvent* event) {
  QListWidget::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) {
    scheduleDelayedItemsLayout();
    fit_height();
  }
}

}  // namespace burrow
