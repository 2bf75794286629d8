#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <memory>

#include "burrow/crew/crew_setup.h"
#include "burrow/document/text.h"
#include "burrow/words/headline.h"
#include "burrow/words/run_text.h"
#include "card_back.h"
#include "card_marks.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double pt = 25.4 / 72;
constexpr double small = card_text_mm;  // nothing on the card is smaller
constexpr double large = 20 * pt;       // what has to be set
constexpr double margin = 8;

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("card", text, context, n);
}

QSizeF card_size(const QSizeF& paper_mm) {
  for (const char* american : {"letter", "tabloid", "ansi-c", "ansi-d"})
    if (const auto size = paper_size(QString::fromLatin1(american)); size && *size == paper_mm) return {139.7, 215.9};
  return {148, 210};
}

/// A number to be set, with what it is above.
struct Setting {
  QString what, number;
};

QString length(double v, const Sheet& sheet, Dimension dimension = Dimension::length) {
  return text_from(format(v, dimension, sheet.units));
}

/// The size alone is set in large type; which way stands above it.
Setting left_right(const QString& what, double offset_m, const Sheet& sheet, Dimension dimension) {
  if (std::abs(offset_m) < 0.0005) return {what, tr("on line")};
  return {tr("%1: %2").arg(what, offset_m > 0 ? tr("left") : tr("right")),
          length(std::abs(offset_m), sheet, dimension)};
}

Setting up_down(const QString& what, double rise_m, const Sheet& sheet) {
  if (std::abs(rise_m) < 0.00005) return {what, tr("level", "a line")};
  return {tr("%1: %2").arg(what, rise_m > 0 ? tr("nose up") : tr("nose down")),
          length(std::abs(rise_m), sheet, Dimension::small_length)};
}

std::vector<Setting> settings(const Sheet& sheet, const CrewSetup& setup) {
  const bool us = sheet.units == UnitSystem::us;
  const LevelRise& level = setup.level_rises[us ? 3 : 1];
  std::vector<Setting> all;
  all.push_back({tr("Depth to axis"), length(setup.levels.axis_depth.m, sheet)});
  all.push_back({tr("Grade"), length(setup.grade.grade.v, sheet, Dimension::grade)});
  all.push_back(up_down(us ? tr("4 ft level") : tr("1.2 m level"), level.rise.m, sheet));
  if (setup.stake)
    all.push_back(left_right(tr("Aim, stake"), setup.stake->m, sheet, Dimension::small_length));
  else
    all.push_back(left_right(tr("Aim, exit"), setup.sight.at_exit.m, sheet, Dimension::length));
  all.push_back({tr("Depth of floor"), length(setup.levels.ground.m - setup.levels.floor.m, sheet)});
  all.push_back({tr("Packing"), length(setup.levels.packing.m, sheet, Dimension::small_length)});
  return all;
}

/// The largest size from `most` down to 11 pt at which the words go into the width.
TextStyle fitted(const QString& words, double most, QFont::Weight weight, double width_mm) {
  TextStyle style{most, weight};
  while (style.size_mm > small && text_width_mm(words, style) > width_mm) style.size_mm -= 0.1;
  style.size_mm = std::max(style.size_mm, small);
  return style;
}

/// What was muted and loosened, in two lines at most; the back says it in full. Gives its height.
double eased(Paper& paper, const QRectF& in, double top, const Sheet& sheet) {
  const QString words = text_from(eased_in_short(sheet.assessment));
  if (words.isEmpty()) return 0;
  const TextStyle bold{small, QFont::DemiBold};
  const QStringList lines = wrapped(words, bold, in.width());
  if (lines.size() <= 2) return paper.paragraph(QRectF(in.left(), top, in.width(), 20), words, bold) + 0.8;
  double y = top;
  y += paper.paragraph(QRectF(in.left(), y, in.width(), 20), lines.front(), bold);
  paper.short_text({in.left(), y + small}, lines.mid(1).join(QLatin1Char(' ')), bold, in.width());
  return y + line_height_mm(bold) - top + 0.8;
}

/// Head and settings; gives where the rest may begin.
double first_side(Page& page, const Sheet& sheet, const CrewSetup& setup) {
  Paper paper(page);
  const QRectF in = page.frame_mm;
  const Verdict verdict = sheet.assessment.verdict;
  const bool go = verdict == Verdict::within_limits || verdict == Verdict::caution;
  // Black on white or white on black: colours do not last in the rain.
  const QRectF band(in.left(), in.top(), in.width(), 9);
  paper.rect(band, go ? QColor(Qt::white) : QColor(Qt::black), {0.4});
  QString words = text_from(verdict_title(verdict));
  if (!go) words = tr("%1: do not bore. See the sheet.").arg(words);
  if (verdict == Verdict::within_limits) words = text_from(no_permit());
  TextStyle head = fitted(words, 14 * pt, QFont::Bold, band.width() - 4);
  head.colour = go ? Qt::black : Qt::white;
  paper.short_text({band.left() + 2, band.bottom() - 2.7}, words, head, band.width() - 4);
  double y = band.bottom() + 5.6;
  paper.short_text({in.left(), y}, text_from(sheet.crossing.name), {13 * pt, QFont::Bold}, in.width());
  y += 2.2;
  const double cell_width = in.width() / 3, cell_height = 13.6;
  const std::vector<Setting> all = settings(sheet, setup);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::size_t column = i % 3, row = i / 3;
    const QRectF cell(in.left() + static_cast<double>(column) * cell_width, y + static_cast<double>(row) * cell_height,
                      cell_width, cell_height);
    paper.rect(cell, {}, {0.25});
    const double room = cell.width() - 2;
    paper.short_text({cell.left() + 1, cell.top() + 4.6}, all[i].what, {small, QFont::DemiBold}, room);
    // The size is 20 pt; "11 ft 2.6 in" still goes in on a narrow card.
    const TextStyle big = fitted(all[i].number, large, QFont::Bold, room);
    paper.text({cell.left() + 1, cell.top() + 12.0}, all[i].number, big);
  }
  return y + 2 * cell_height + 2;
}

/// Length, tool, pressure, hold, level, cradle and stake, as one text.
QString notes(const Sheet& sheet, const CrewSetup& setup) {
  QStringList all;
  const Bore& bore = sheet.crossing.bore;
  QStringList first{tr("Bore %1").arg(length(bore.exit.station.m - bore.launch.station.m, sheet)),
                    tr("tool %1").arg(length(setup.tool.diameter.m, sheet, Dimension::small_length))};
  if (const auto& pressure = sheet.assessment.air.pressure_worked_with_Pa)
    first << tr("%1 at the tool").arg(length(*pressure, sheet, Dimension::air_pressure));
  all << first.join(QStringLiteral(" · ")) + QLatin1Char('.');
  if (setup.hold_until_m)
    all << tr("Air half open; hold the tool until %1 of it is in.").arg(length(*setup.hold_until_m, sheet));
  all << tr("Axis at level %1.").arg(length(setup.levels.axis.m, sheet, Dimension::station));
  const Pit& pit = sheet.crossing.pits.launch;
  if (pit.cradle_height->m > 0 || pit.slab_thickness->m > 0)
    all << tr("Cradle %1 high on a slab of %2.")
               .arg(length(pit.cradle_height->m, sheet, Dimension::small_length),
                    length(pit.slab_thickness->m, sheet, Dimension::small_length));
  all << tr("Depths of the marks are predicted.");
  if (setup.sight.base) all << tr("Stake %1 from the face.").arg(length(setup.sight.base->m, sheet));
  return all.join(QLatin1Char(' '));
}

/// Which side, and what identifies the card.
void foot_line(Page& side, const Sheet& sheet, std::size_t number, std::size_t count) {
  Paper paper(side);
  const QRectF within = side.frame_mm;
  const QString which = tr("side %1 of %2").arg(number).arg(count);
  paper.text(within.bottomRight(), which, {small}, Align::right);
  const double room = within.width() - text_width_mm(which, {small}) - 4;
  QStringList id{text_from(sheet.crossing.sheet.number), text_from(sheet.crossing.sheet.revision),
                 text_from(sheet.crossing.sheet.date.value_or(""))};
  id.removeAll(QString());
  paper.short_text(within.bottomLeft(), id.isEmpty() ? tr("setup card") : id.join(QStringLiteral(" · ")), {small},
                   room);
  // The frame takes the descenders of the last line.
  side.frame_mm = side.frame_mm.adjusted(-1, -1, 1, 2);
}

}  // namespace

std::vector<Page> card_pages(const Sheet& sheet) {
  const CrewSetup setup =
      crew_setup(sheet.crossing, sheet.tables, SiteSurface(sheet.crossing.site, sheet.assessment.ground_surface));
  const QSizeF size = card_size(sheet.paper_mm);
  std::vector<Page> sides;
  const auto add_side = [&]() -> QRectF {
    Page& side = sides.emplace_back();
    side.size_mm = size;
    side.frame_mm = QRectF(QPointF(0, 0), size).adjusted(margin, margin, -margin, -margin);
    return side.frame_mm.adjusted(0, 0, 0, -6);
  };
  // The front is what is set and where it stops; the back whom to ring and who signs.
  QRectF in = add_side();
  CardMarks marks(sheet, in.width());
  {
    Paper paper(sides.back());
    double y = first_side(sides.back(), sheet, setup);
    y += eased(paper, in, y, sheet);
    y += paper.paragraph(QRectF(in.left(), y, in.width(), 60), notes(sheet, setup), {small}) + 1.4;
    marks.front(paper, QRectF(in.left(), y, in.width(), in.bottom() - y));
  }
  QStringList rest = eased_in_full(sheet);
  in = add_side();
  const double foot = in.bottom() - back_height(sides.back(), in, sheet);
  {
    Paper paper(sides.back());
    const double room = foot - 1.6 - in.top();
    double y = in.top();
    if (marks.height_left() <= room) y = marks.more(paper, QRectF(in.left(), y, in.width(), room)) + 1.6;
    if (marks.done()) rest = fill_with(paper, QRectF(in.left(), y, in.width(), foot - 1.6 - y), rest);
    draw_back(paper, QRectF(in.left(), marks.done() ? foot : in.top(), in.width(), in.bottom() - foot), sheet);
  }
  // A long bore: what is left of its marks, and what was accepted and does not fit, on sides of their own.
  while (!marks.done()) {
    in = add_side();
    Paper paper(sides.back());
    marks.more(paper, in);
  }
  while (!rest.isEmpty()) {
    in = add_side();
    Paper paper(sides.back());
    rest = fill_with(paper, in, rest);
  }
  for (std::size_t i = 0; i < sides.size(); ++i) foot_line(sides[i], sheet, i + 1, sides.size());
  return sides;
}

}  // namespace burrow
