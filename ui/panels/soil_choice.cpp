#include "soil_choice.h"

#include <QPainter>
#include <algorithm>

namespace burrow {

namespace {
constexpr int pad = 6;

QFont name_font(const QStyleOptionViewItem& option) {
  QFont font = option.font;
  font.setBold(true);
  return font;
}

int room_for_sign(const QStyleOptionViewItem& option) {
  const int width = option.widget ? option.widget->width() - 24 : option.rect.width();
  return std::max(width, 200) - 2 * pad;
}

int sign_height(const QStyleOptionViewItem& option, const QString& sign) {
  return option.fontMetrics.boundingRect(0, 0, room_for_sign(option), 10000, Qt::TextWordWrap, sign).height();
}
}  // namespace

QSize SoilChoiceDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const int name = QFontMetrics(name_font(option)).height();
  return {room_for_sign(option), name + sign_height(option, index.data(sign_role).toString()) + pad + 2};
}

void SoilChoiceDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const bool picked = option.state & QStyle::State_Selected;
  painter->save();
  painter->fillRect(option.rect, option.palette.color(picked ? QPalette::Highlight : QPalette::Base));
  QRect room = option.rect.adjusted(pad, pad / 2, -pad, 0);
  painter->setPen(option.palette.color(picked ? QPalette::HighlightedText : QPalette::Text));
  painter->setFont(name_font(option));
  painter->drawText(room, Qt::AlignTop | Qt::AlignLeft, index.data(Qt::DisplayRole).toString());
  room.adjust(0, QFontMetrics(name_font(option)).height(), 0, 0);
  painter->setFont(option.font);
  painter->drawText(room, Qt::AlignTop | Qt::AlignLeft | Qt::TextWordWrap, index.data(sign_role).toString());
  painter->restore();
}

}  // namespace burrow
