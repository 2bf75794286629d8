#include "burrow/panels/findings_model.h"

#include <QCache>
#include <QPainter>
#include <cmath>

#include "burrow/check/mute.h"
#include "burrow/document/figures.h"
#include "burrow/document/text.h"
#include "burrow/drawing/flags.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "findings_list.h"

namespace burrow {

namespace {
constexpr int mark_role = Qt::UserRole + 1;
constexpr int source_role = Qt::UserRole + 2;
constexpr int muted_role = Qt::UserRole + 3;

QString source_line(const Finding& finding, const Crossing& crossing, const Tables& tables) {
  if (finding.muted) {
    QStringList who;
    if (!finding.muted->by.empty()) who << text_from(finding.muted->by);
    if (!finding.muted->date.empty()) who << text_from(finding.muted->date);
    const QString shown_text = who.isEmpty() ? QString() : QStringLiteral(" (%1)").arg(who.join(QStringLiteral(", ")));
    const bool counts = counts_in_verdict(finding);
    return (counts ? QObject::tr("accepted, but still counts: %1") : QObject::tr("accepted: %1"))
               .arg(text_from(finding.muted->reason)) +
           shown_text;
  }
  if (const Mute* lapsed = mute_of(crossing, finding)) {
    std::optional<MuteFault> fault = fault_of_words(*lapsed, tables.judged_on);
    if (!fault) fault = fault_of_matter(crossing, *lapsed, finding);
    return QObject::tr("was accepted (%1), does not count: %2")
        .arg(text_from(lapsed->reason),
             text_from(burrow::translated(why_void(fault.value_or(MuteFault::nothing_there)))));
  }
  if (finding.missing) return QObject::tr("not entered");
  const QString label = text_from(burrow::label_text(finding.source.label));
  return finding.source.text.empty() ? label : text_from(finding.source.text) + QStringLiteral(" – ") + label;
}
}  // namespace

FindingsModel::FindingsModel(Document& document, QObject* parent) : QAbstractListModel(parent), document_(document) {}

int FindingsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(findings_.size());
}

QVariant FindingsModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Finding& f = finding(index.row());
  switch (role) {
    case Qt::DisplayRole:
      return text_from(finding_text(f, units_));
    case Qt::AccessibleTextRole:
      return (f.muted ? QObject::tr("%1, accepted: %2") : QStringLiteral("%1: %2"))
          .arg(text_from(burrow::translated(burrow::word_of(f.severity))), text_from(finding_text(f, units_)));
    case mark_role:
      return static_cast<int>(mark_of(f));
    case source_role:
      return source_line(f, document_.crossing(), document_.tables());
    case muted_role:
      return f.muted.has_value();
    case finding_number_role:
      return index.row() + 1;
    default:
      return {};
  }
}

int FindingsModel::row_like(const Finding& finding, int near_row) const {
  int best = -1;
  for (int row = 0; row < rowCount(); ++row) {
    const Finding& here = this->finding(row);
    if (here.code != finding.code || here.subject != finding.subject) continue;
    // Several at one subject, as the layers of a pit's side: the one at the same station, else the nearest row.
    if (here.station_m == finding.station_m && here.measured == finding.measured) return row;
    if (best < 0 || std::abs(row - near_row) < std::abs(best - near_row)) best = row;
  }
  return best;
}

QString FindingsModel::words(int row) const {
  const Finding& f = finding(row);
  return text_from(finding_text(f, units_)) + QLatin1Char('\n') +
         source_line(f, document_.crossing(), document_.tables()) + QLatin1Char('\n') +
         (f.muted ? QObject::tr("%1 accepted").arg(text_from(f.name)) : text_from(f.name));
}

void FindingsModel::set_units(UnitSystem units) {
  units_ = units;
  if (!findings_.empty()) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
}

void FindingsModel::refresh() {
  const std::vector<Finding>& now = document_.assessment().findings;
  if (now == findings_) return;
  if (now.size() == findings_.size()) {
    findings_ = now;
    if (!findings_.empty()) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
    return;
  }
  beginResetModel();
  findings_ = now;
  endResetModel();
}

namespace {
struct Boxes {
  QRect mark, words, source;
  int height = 0;
};

/// Height of wrapped words. A drag changes the numbers of some findings thirty times a second, while the list measures
/// all of them anew; what was measured lately is looked up.
int wrapped_height(const QFont& font, int room, const QString& words) {
  static QCache<QString, int> measured(4000);
  const QString alike = with_noughts(words);
  const QString key = QString::number(room) + font.key() + alike;
  if (const int* known = measured.object(key)) return *known;
  const int height = QFontMetrics(font).boundingRect(QRect(0, 0, room, 4000), Qt::TextWordWrap, alike).height();
  measured.insert(key, new int(height));
  return height;
}

Boxes boxes_for(const QStyleOptionViewItem& option, const QModelIndex& index, int width) {
  const QFontMetrics metrics(option.font);
  QFont small = option.font;
  small.setPointSizeF(small.pointSizeF() * 0.88);
  const int pad = metrics.height() / 2;
  const int mark = metrics.height() * 3 / 2;
  const int left = pad + mark + pad * 2 / 3;
  const int room = std::max(60, width - left - pad);
  Boxes b;
  b.mark = QRect(pad, pad, mark, mark);
  const QString words = index.data(Qt::DisplayRole).toString();
  b.words = QRect(left, pad, room, wrapped_height(option.font, room, words));
  const QString source = index.data(source_role).toString();
  b.source = QRect(left, b.words.bottom() + 3, room, wrapped_height(small, room, source));
  b.height = std::max(b.mark.bottom(), b.source.bottom()) + pad;
  return b;
}
}  // namespace

namespace {
int row_width(const QStyleOptionViewItem& option) {
  const auto* list = qobject_cast<const FindingsList*>(option.widget);
  return list ? list->row_width() : option.rect.width();
}
}  // namespace

QSize FindingDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const int width = row_width(option);
  const auto* list = qobject_cast<const FindingsList*>(option.widget);
  return {width, boxes_for(option, index, width).height + (list ? list->extra_height(index) : 0)};
}

void FindingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const Boxes b = boxes_for(option, index, row_width(option));
  const bool picked = option.state.testFlag(QStyle::State_Selected);
  painter->save();
  painter->fillRect(option.rect, picked ? theme_.field : theme_.panel);
  if (picked) painter->fillRect(QRect(option.rect.left(), option.rect.top(), 4, option.rect.height()), theme_.focus);
  painter->translate(option.rect.topLeft());
  const auto mark = static_cast<FindingMark>(index.data(mark_role).toInt());
  // Muted: the mark pales and the words are struck through; they stay as readable as the others.
  const bool muted = index.data(muted_role).toBool();
  if (muted) painter->setOpacity(0.45);
  painter->setFont(option.font);
  paint_finding_mark(*painter, b.mark, mark, theme_, index.data(finding_number_role).toString());
  painter->setOpacity(1);
  QFont shown_text = option.font;
  shown_text.setStrikeOut(muted);
  painter->setFont(shown_text);
  painter->setPen(muted ? theme_.ink_soft : theme_.ink);
  painter->drawText(b.words, Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());
  QFont small = option.font;
  small.setPointSizeF(small.pointSizeF() * 0.88);
  painter->setFont(small);
  painter->setPen(theme_.ink_soft);
  painter->drawText(b.source, Qt::TextWordWrap, index.data(source_role).toString());
  painter->setPen(theme_.grid);
  painter->drawLine(8, option.rect.height() - 1, option.rect.width() - 8, option.rect.height() - 1);
  painter->restore();
}

}  // namespace burrow
