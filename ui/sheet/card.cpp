#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <memory>

#include "burrow/crew/checklist.h"
#include "burrow/crew/crew_setup.h"
#include "burrow/document/text.h"
#include "burrow/words/headline.h"
#include "burrow/words/run_text.h"
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

FlowStyle card_style() {
  FlowStyle style;
  style.body = {small};
  style.titles = {small, QFont::DemiBold};
  style.block = {small, QFont::Bold};
  style.heads = {13 * pt, QFont::Bold};
  return style;
}

QSizeF card_size(const QSizeF& paper_mm) {
  for (const char* american : {"letter", "tabloid", "ansi-d"})
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

void eased_in_full(Flow& flow, const Sheet& sheet) {
  if (eased_in_short(sheet.assessment).empty()) return;
  flow.heading(tr("Accepted and loosened"));
  flow.paragraph(text_from(headline(sheet.assessment, sheet.units)));
  for (const Finding& f : sheet.assessment.findings)
    if (f.muted && f.severity != Severity::note)
      flow.paragraph(QStringLiteral("• ") + tr("accepted: %1 (%2; %3, %4)")
                                                .arg(text_from(finding_text(f, sheet.units)),
                                                     text_from(f.muted->reason), text_from(f.muted->by),
                                                     text_from(f.muted->date)));
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

/// Hold, level, cradle and stake, as one text.
QString notes(const Sheet& sheet, const CrewSetup& setup) {
  QStringList all;
  if (setup.hold_until_m)
    all << tr("Air half open; hold the tool until %1 of it is in.").arg(length(*setup.hold_until_m, sheet));
  all << tr("Axis at level %1.").arg(length(setup.levels.axis.m, sheet, Dimension::station));
  const Pit& pit = sheet.crossing.pits.launch;
  if (pit.cradle_height->m > 0 || pit.slab_thickness->m > 0)
    all << tr("Cradle %1 high on a slab of %2.")
               .arg(length(pit.cradle_height->m, sheet, Dimension::small_length),
                    length(pit.slab_thickness->m, sheet, Dimension::small_length));
  if (setup.sight.base) all << tr("Stake %1 from the face.").arg(length(setup.sight.base->m, sheet));
  return all.join(QLatin1Char(' '));
}

/// Steps one below the other, each with its number; gives where they end.
double steps_below(Paper& paper, const QRectF& column, const EmergencySteps& steps) {
  constexpr double hanging = 4.6;
  const TextStyle head{small, QFont::Bold}, body{small};
  double y = column.top();
  y +=
      paper.paragraph(QRectF(column.left(), y, column.width(), 30), tr("Struck: %1").arg(text_from(steps.title)), head);
  int number = 0;
  for (const Phrase& step : steps.in_short) {
    paper.text({column.left(), y + small}, QString::number(++number), head);
    y += paper.paragraph(QRectF(column.left() + hanging, y, column.width() - hanging, 60), text_from(step), body);
  }
  return y;
}

/// Words beside bold ones that say what they are about; gives their height.
double led_by(Paper& paper, const QRectF& in, double top, const QString& lead, const QString& words) {
  const TextStyle bold{small, QFont::Bold};
  paper.text({in.left(), top + small}, lead, bold);
  const double indent = text_width_mm(lead, bold) + 1.6;
  return paper.paragraph(QRectF(in.left() + indent, top, in.width() - indent, 60), words, {small});
}

/// When to stop, what to do when a line is struck, whom to ring: the lower part of the front. Gives its lower edge.
double foot_of_front(Paper& paper, const QRectF& in, double top, const Sheet& sheet) {
  const TextStyle body{small};
  constexpr double gap = 4;
  double y = top;
  QStringList signs;
  for (const Phrase& sign : stop_signs_in_short(sheet.crossing, sheet.assessment, sheet.units))
    signs << text_from(sign);
  y += led_by(paper, in, y, tr("Air off at once:"), signs.join(QStringLiteral(" · "))) + 1;
  paper.line({in.left(), y}, {in.right(), y}, {0.25});
  y += 1;

  // Gas and power side by side, and what holds for anything else.
  const double half = (in.width() - gap) / 2;
  const std::vector<EmergencySteps> all = emergency_steps(sheet.crossing);
  double end = y;
  for (const EmergencySteps& steps : all) {
    if (steps.kind != UtilityKind::gas && steps.kind != UtilityKind::power) continue;
    const double left = in.left() + (steps.kind == UtilityKind::gas ? 0 : half + gap);
    end = std::max(end, steps_below(paper, QRectF(left, y, half, 100), steps));
  }
  y = end + 0.6;
  for (const EmergencySteps& steps : all) {
    if (steps.kind != UtilityKind::unknown) continue;
    QStringList words;
    for (const Phrase& step : steps.in_short) words << text_from(step);
    y += led_by(paper, in, y, tr("Anything else:"), words.join(QLatin1Char(' ')));
  }
  y += 0.6;
  paper.line({in.left(), y}, {in.right(), y}, {0.25});

  const QString lines[] = {tr("Emergency"), tr("Locating service"), tr("Competent person"), tr("Owner")};
  constexpr double row = 7.2;  // a hand writes in it
  for (int i = 0; i < 4; ++i) {
    const int across = i % 2, down = i / 2;
    const double left = in.left() + across * (half + gap), base = y + row * (1 + down) - 1.2;
    const QRectF shown_text = paper.text({left, base}, lines[i], body);
    paper.line({shown_text.right() + 1.2, base + 0.5}, {left + half, base + 0.5}, {0.2});
  }
  return y + 2 * row;
}

void stops_and_steps_in_full(Flow& flow, const Sheet& sheet) {
  flow.heading(tr("Air off at once when"));
  for (const Phrase& sign : stop_signs(sheet.crossing, sheet.assessment, sheet.units))
    flow.paragraph(QStringLiteral("• ") + text_from(sign));
  for (const EmergencySteps& steps : emergency_steps(sheet.crossing)) {
    QStringList lines;
    int number = 0;
    for (const Phrase& step : steps.steps) lines << QStringLiteral("%1. %2").arg(++number).arg(text_from(step));
    flow.block(tr("Struck: %1").arg(text_from(steps.title)), lines);
  }
}

void owners_to_ring(Flow& flow, const Sheet& sheet) {
  QStringList owners;
  for (const EmergencySteps& steps : emergency_steps(sheet.crossing))
    for (const std::string& owner : steps.owners) owners << text_from(owner);
  owners.removeDuplicates();
  if (owners.isEmpty()) return;
  flow.heading(tr("Phone"));
  QStringList lines;
  // More owners than one can ring belong on the sheet's table of utilities.
  for (const QString& owner : owners.mid(0, 8)) lines << tr("Owner: %1").arg(owner);
  flow.to_fill_in(lines);
}

}  // namespace

std::vector<Page> card_pages(const Sheet& sheet) {
  const CrewSetup setup = crew_setup(sheet.crossing, sheet.tables);
  const QSizeF size = card_size(sheet.paper_mm);
  // The flow keeps places of pages, so none may move.
  std::vector<std::unique_ptr<Page>> sides;
  const auto add_side = [&]() -> Page& {
    sides.push_back(std::make_unique<Page>());
    sides.back()->size_mm = size;
    sides.back()->frame_mm = QRectF(QPointF(0, 0), size).adjusted(margin, margin, -margin, -margin);
    return *sides.back();
  };
  // The front is all that a foreman needs in the pit; the back says the same at length.
  Page& front = add_side();
  const QRectF in = front.frame_mm.adjusted(0, 0, 0, -6);
  Paper paper(front);
  double y = first_side(front, sheet, setup);
  y += eased(paper, in, y, sheet);
  y += paper.paragraph(QRectF(in.left(), y, in.width(), 60), notes(sheet, setup), {small}) + 1.4;
  Page tried = front;
  Paper scratch(tried);
  const double foot = in.bottom() - foot_of_front(scratch, in, 0, sheet);
  short_marks(paper, QRectF(in.left(), y, in.width(), foot - 1.6 - y), sheet);
  paper.line({in.left(), foot - 0.8}, {in.right(), foot - 0.8}, {0.4});
  foot_of_front(paper, in, foot, sheet);

  Flow flow(
      [&]() -> std::vector<Flow::Area> {
        Page& page = add_side();
        return {{&page, page.frame_mm.adjusted(0, 0, 0, -6)}};
      },
      card_style());
  if (!sheet.assessment.launch_pit.footprint.empty() && !sheet.assessment.exit_pit.footprint.empty()) {
    const Flow::Area area = flow.room(58);
    draw_pits(*area.page, area.box, sheet, small, false);
  }
  eased_in_full(flow, sheet);
  marks_in_full(flow, sheet, size.width() - 2 * margin);
  stops_and_steps_in_full(flow, sheet);
  owners_to_ring(flow, sheet);
  std::vector<Page> pages;
  int number = 0;
  for (const auto& side : sides) {
    Paper foot_line(*side);
    const QRectF within = side->frame_mm;
    const QString which = tr("side %1 of %2").arg(++number).arg(sides.size());
    foot_line.text(within.bottomRight(), which, {small}, Align::right);
    const double room = within.width() - text_width_mm(which, {small}) - 4;
    QStringList id{text_from(sheet.crossing.sheet.number), text_from(sheet.crossing.sheet.revision),
                   text_from(sheet.crossing.sheet.date.value_or(""))};
    id.removeAll(QString());
    foot_line.short_text(within.bottomLeft(), id.isEmpty() ? tr("setup card") : id.join(QStringLiteral(" · ")), {small},
                         room);
    // The frame takes the descenders of the last line.
    side->frame_mm = side->frame_mm.adjusted(-1, -1, 1, 2);
    pages.push_back(std::move(*side));
  }
  return pages;
}

}  // namespace burrow
