#include "burrow/panels/card_list.h"
#include "burrow/document/text.h"

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

Layout lay_out(const Card& card, const QFont& font, int width) {
  const QFontMetrics plain(font), strong(bold(font));
  Layout at;
  int left = pad, right = width - pad;
  if (!card.badge.isEmpty()) {
    const int side = strong.height() + 2;
    at.badge = QRect(left, pad / 2, side, side);
    left += side + pad;
  }
  if (!card.tag.isEmpty()) {
    const int wide = strong.horizontalAdvance(card.tag) + 2 * pad;
    at.tag = QRect(right - wide, pad / 2, wide, strong.height() + 2);
    right -= wide + pad;
  }
  const auto box = [&](const QFontMetrics& metrics, int from, int to, const QString& text) {
    return metrics.boundingRect(QRect(0, 0, std::max(to - from, 30), 10000), Qt::TextWordWrap, text).height();
  };
  at.title = QRect(left, pad / 2, std::max(right - left, 30), box(strong, left, right, card.title));
  const int below = std::max(at.title.bottom(), at.badge.isNull() ? 0 : at.badge.bottom()) + 1;
  at.facts = QRect(left, below, width - pad - left, box(plain, left, width - pad, card.facts));
  at.height = at.facts.bottom() + pad / 2 + 1;
  return at;
}

class CardDelegate : public QStyledItemDelegate {
 public:
  explicit CardDelegate(CardList* list) : QStyledItemDelegate(list), list_(list) {}

  QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
    const int width = list_->viewport()->width();
    return {width, std::max(list_->least_row(), lay_out(card(index), list_->font(), width).height)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Card& shown = card(index);
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
  [[nodiscard]] const Card& card(const QModelIndex& index) const {
    return list_->cards()[static_cast<std::size_t>(index.row())];
  }
  CardList* list_;
};

}  // namespace

CardList::CardList(const QString& accessible_name, std::size_t most_rows, QWidget* parent)
    : QListWidget(parent), most_rows_(most_rows) {
  setAccessibleName(accessible_name);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setResizeMode(QListView::Adjust);
  setTabKeyNavigation(false);
  setItemDelegate(new CardDelegate(this));
  connect(this, &QListWidget::currentRowChanged, this, [this](int row) {
    if (row >= 0 && static_cast<std::size_t>(row) < cards_.size())
      Q_EMIT chosen(text_from(cards_[static_cast<std::size_t>(row)].id));
  });
  connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) {
    const auto row = static_cast<std::size_t>(this->row(item));
    if (row < cards_.size()) Q_EMIT chosen(text_from(cards_[row].id));
  });
}

void CardList::set_theme(const Theme& theme) {
  theme_ = theme;
  viewport()->update();
}

void CardList::show_cards(std::vector<Card> cards, const std::string& picked) {
  const QSignalBlocker blocker(this);
  while (count() > static_cast<int>(cards.size())) delete takeItem(count() - 1);
  cards_ = std::move(cards);
  while (count() < static_cast<int>(cards_.size())) addItem(QString());
  int row = -1;
  for (std::size_t i = 0; i < cards_.size(); ++i) {
    const Card& card = cards_[i];
    const QString tag = card.tag.isEmpty() ? QString() : QStringLiteral(" – ") + card.tag;
    const QString text = card.title + tag + QLatin1Char('\n') + card.facts;
    if (item(static_cast<int>(i))->text() != text) item(static_cast<int>(i))->setText(text);
    if (card.id == picked) row = static_cast<int>(i);
  }
  if (row != currentRow()) {
    setCurrentRow(row);
    if (row >= 0) scrollToItem(item(row));
  }
  scheduleDelayedItemsLayout();
  fit_height();
  viewport()->update();
}

void CardList::fit_height() {
  int height = 2 * frameWidth() + 2;
  for (std::size_t i = 0; i < std::min(cards_.size(), most_rows_); ++i)
    height += std::max(least_row_, lay_out(cards_[i], font(), viewport()->width()).height);
  setFixedHeight(std::max(height, fontMetrics().height() * 2));
}

void CardList::resizeEvent(QResizeEvent* event) {
  QListWidget::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) {
    scheduleDelayedItemsLayout();
    fit_height();
  }
}

}  // namespace burrow
