#include "burrow/drawing/utility_chips.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <numeric>

#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "text_width.h"

namespace burrow {

namespace {

constexpr double longest_texts = 21;  ///< a longer name loses its middle
constexpr double ring_texts = 1.5;
constexpr double chip_texts = 1.75;  ///< its height
constexpr double gap_px = 5;
constexpr std::size_t always_named = 3;  ///< if they take no more than this of the lane:
constexpr double names_share = 0.4;

/// 0 first: selected or hovered, then by the worst finding that counts, then the others.
std::vector<int> ranks_of(const Scene& scene) {
  const std::vector<Utility>& utilities = scene.crossing.site.utilities;
  const std::vector<Finding>& findings = scene.assessment.findings;
  std::vector<int> ranks(utilities.size());
  const int none = static_cast<int>(findings.size()) + 1;
  for (std::size_t i = 0; i < utilities.size(); ++i) {
    const std::string& id = utilities[i].id;
    const auto is = [&](const ItemRef& part) { return part.kind == ItemKind::utility && part.id == id; };
    if (is(scene.focus.picked) || is(scene.focus.hovered)) continue;
    const auto worst = std::find_if(findings.begin(), findings.end(),
                                    [&](const Finding& f) { return f.subject == id && counts_in_verdict(f); });
    ranks[i] = worst == findings.end() ? none : 1 + static_cast<int>(worst - findings.begin());
  }
  return ranks;
}

QString name_words(const Scene& scene, const Utility& utility) {
  QString words = text_from(utility.name);
  if (utility.outside_diameter) {
    if (!words.isEmpty()) words += QLatin1Char(' ');
    words += text_from(format(*utility.outside_diameter, scene.style.units, Dimension::small_length));
  }
  if (!utility.path.empty() && !utility_mark(utility).depth_known) {
    if (!words.isEmpty()) words += QStringLiteral(" · ");
    words += QObject::tr("depth not known");
  }
  return words;
}

struct Candidate {
  const Utility* utility = nullptr;
  UtilityChip chip;
  double whole_wide = 0, letter_wide = 0;
  int rank = 0;
  bool whole = true;
  [[nodiscard]] double wide() const { return whole ? whole_wide : letter_wide; }
};

std::vector<Candidate> candidates_of(const Scene& scene) {
  const Frame& f = scene.frame;
  const double text = scene.style.text;
  const TextWidths metrics(drawing_font(text * 0.92));
  const std::vector<int> ranks = ranks_of(scene);
  const std::vector<Utility>& utilities = scene.crossing.site.utilities;
  std::vector<Candidate> all;
  for (std::size_t i = 0; i < utilities.size(); ++i) {
    const Utility& utility = utilities[i];
    const UtilityMark mark = utility_mark(utility);
    const double x = f.px_x(mark.station_m);
    if (utility.path.empty() || x < f.elevation.left() || x > f.elevation.right()) continue;
    Candidate one;
    one.utility = &utility;
    one.rank = ranks[i];
    one.chip.id = utility.id;
    one.chip.letter = utility_letter(scene, utility.kind);
    const double y = mark.depth_known ? f.px_z(mark.elevation_m) : f.elevation.bottom();
    one.chip.mark = QPointF(x, std::clamp(y, f.elevation.top(), f.elevation.bottom()));
    one.chip.text = metrics.elided(name_words(scene, utility), Qt::ElideMiddle, text * longest_texts);
    one.letter_wide = text * chip_texts;
    one.whole = !one.chip.text.isEmpty();
    one.whole_wide = metrics.of(one.chip.text) + text * (ring_texts + 0.9);
    all.push_back(std::move(one));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Candidate& a, const Candidate& b) { return a.chip.mark.x() < b.chip.mark.x(); });
  return all;
}

double row_width(const std::vector<Candidate>& all) {
  return std::accumulate(all.begin(), all.end(), -gap_px,
                         [](double sum, const Candidate& one) { return sum + one.wide() + gap_px; });
}

/// Shortens until the row fits: all that matter to nobody at once, then one after the other from the least telling.
int shorten(std::vector<Candidate>& all, double room, int unnamed) {
  if (row_width(all) <= room) return 0;
  for (Candidate& one : all)
    if (one.rank >= unnamed) one.whole = false;
  std::vector<std::size_t> order(all.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return all[a].rank > all[b].rank; });
  double wide = row_width(all);
  // The most telling keep their names, and rather some letters go.
  std::size_t kept = std::min(always_named, order.size());
  const auto names = [&] {
    double sum = 0;
    for (std::size_t k = order.size() - kept; k < order.size(); ++k) sum += all[order[k]].whole_wide;
    return sum;
  };
  while (kept > 0 && names() > names_share * room) --kept;
  for (std::size_t k = 0; k + kept < order.size() && wide > room; ++k) {
    Candidate& one = all[order[k]];
    if (!one.whole) continue;
    wide -= one.whole_wide - one.letter_wide;
    one.whole = false;
  }
  std::vector<std::size_t> gone;
  for (const std::size_t i : order) {
    if (wide <= room) break;
    wide -= all[i].wide() + gap_px;
    gone.push_back(i);
  }
  std::sort(gone.rbegin(), gone.rend());
  for (const std::size_t i : gone) all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
  return static_cast<int>(gone.size());
}

QColor colour_of_row(const UtilityKindRow& row, const Theme& theme) {
  return QColor(text_from(theme.dark ? row.colour_dark : row.colour));
}

}  // namespace

std::vector<double> in_order(const std::vector<double>& wanted, const std::vector<double>& widths, double gap,
                             double from, double to) {
  // In order without overlap: lefts less the widths before them do not fall. Blocks of equal value, merged while they
  // do.
  struct Block {
    double sum = 0;
    std::size_t count = 0;
    [[nodiscard]] double mean() const { return sum / static_cast<double>(count); }
  };
  std::vector<double> before(wanted.size());
  std::vector<Block> blocks;
  double along = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    before[i] = along;
    blocks.push_back({wanted[i] - widths[i] / 2 - along, 1});
    along += widths[i] + gap;
    while (blocks.size() > 1 && blocks[blocks.size() - 2].mean() > blocks.back().mean()) {
      const Block last = blocks.back();
      blocks.pop_back();
      blocks.back().sum += last.sum;
      blocks.back().count += last.count;
    }
  }
  const double most = to - (along - gap);  // of the value of the last block
  std::vector<double> lefts;
  for (const Block& block : blocks)
    for (std::size_t k = 0; k < block.count; ++k)
      lefts.push_back(std::clamp(block.mean(), from, std::max(from, most)) + before[lefts.size()]);
  return lefts;
}

QString utility_letter(const Scene& scene, UtilityKind kind) {
  for (const UtilityKindRow& row : scene.tables.utilities)
    if (row.kind == kind) return text_from(row.letter_code);
  return QStringLiteral("?");
}

ChipRow place_utility_chips(const Scene& scene) {
  ChipRow row;
  const QRectF lane = scene.frame.names.adjusted(gap_px, 0, -gap_px, 0);
  if (lane.isEmpty()) return row;
  std::vector<Candidate> all = candidates_of(scene);
  row.left_out = shorten(all, lane.width(), static_cast<int>(scene.assessment.findings.size()) + 1);
  std::vector<double> wanted, widths;
  for (const Candidate& one : all) {
    wanted.push_back(one.chip.mark.x());
    widths.push_back(one.wide());
  }
  const std::vector<double> lefts = in_order(wanted, widths, gap_px, lane.left(), lane.right());
  const double high = scene.style.text * chip_texts;
  for (std::size_t i = 0; i < all.size(); ++i) {
    UtilityChip chip = all[i].chip;
    if (!all[i].whole) chip.text.clear();
    chip.box = QRectF(lefts[i], lane.bottom() - high - 4, widths[i], high);
    row.chips.push_back(std::move(chip));
  }
  return row;
}

namespace {

const Utility* utility_of(const Scene& scene, const std::string& id) {
  const auto& all = scene.crossing.site.utilities;
  const auto at = std::find_if(all.begin(), all.end(), [&](const Utility& u) { return u.id == id; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace

void paint_letter_ring(QPainter& painter, const Scene& scene, const QRectF& box, UtilityKind kind,
                       const QString& letter) {
  QColor colour = scene.style.theme.ink;
  for (const UtilityKindRow& row : scene.tables.utilities)
    if (row.kind == kind) colour = colour_of_row(row, scene.style.theme);
  painter.setPen(QPen(colour, scene.style.hair * 2));
  painter.setBrush(scene.style.theme.field);
  painter.drawEllipse(box.adjusted(1, 1, -1, -1));
  painter.setPen(scene.style.theme.ink);
  painter.drawText(box, Qt::AlignCenter, letter);
}

void paint_chip_leaders(QPainter& painter, const Scene& scene) {
  const double elbow = scene.frame.elevation.bottom();
  for (const UtilityChip& chip : scene.labels->utilities.chips) {
    const Utility* utility = utility_of(scene, chip.id);
    if (!utility) continue;
    QColor colour = utility_colour(scene, utility->kind);
    colour.setAlphaF(0.6F);
    painter.setPen(QPen(colour, scene.style.hair));
    painter.drawPolyline(QPolygonF(
        QList<QPointF>{chip.mark, QPointF(chip.mark.x(), elbow), QPointF(chip.box.center().x(), chip.box.top())}));
  }
}

void paint_utility_chips(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const QFont plain = drawing_font(text * 0.92), bold = drawing_font(text * 0.82, QFont::Bold);
  for (const UtilityChip& chip : scene.labels->utilities.chips) {
    const Utility* utility = utility_of(scene, chip.id);
    if (!utility) continue;
    const auto is = [&](const ItemRef& part) { return part.kind == ItemKind::utility && part.id == chip.id; };
    const bool chosen = is(scene.focus.picked) || is(scene.focus.hovered);
    const double ring = text * ring_texts, inset = (chip.box.height() - ring) / 2;
    if (!chip.text.isEmpty() || chosen) {
      painter.setPen(
          QPen(chosen ? theme.focus : utility_colour(scene, utility->kind), scene.style.hair * (chosen ? 2.2 : 1.2)));
      painter.setBrush(theme.field);
      painter.drawRoundedRect(chip.box, chip.box.height() / 2, chip.box.height() / 2);
    }
    painter.setFont(bold);
    paint_letter_ring(painter, scene, QRectF(chip.box.left() + inset, chip.box.top() + inset, ring, ring),
                      utility->kind, chip.letter);
    painter.setFont(plain);
    painter.setPen(theme.ink);
    painter.drawText(chip.box.adjusted(inset + ring + text * 0.3, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     chip.text);
  }
  if (const int n = scene.labels->utilities.left_out; n > 0) {
    painter.setFont(drawing_font(text * 0.8));
    painter.setPen(theme.ink_soft);
    painter.drawText(scene.frame.names.adjusted(0, 1, -6, 0), Qt::AlignRight | Qt::AlignTop,
                     QObject::tr("%n more", nullptr, n));
  }
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
