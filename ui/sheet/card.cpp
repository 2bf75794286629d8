#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <memory>

#include "burrow/check/crew_setup.h"
#include "burrow/check/headline.h"
#include "burrow/plan/checklist.h"
#include "burrow/plan/run_text.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double pt = 25.4 / 72;
constexpr double small = 11 * pt;  // nothing on the card is smaller
constexpr double large = 20 * pt;  // what has to be set
constexpr double margin = 8;

QString tr(const char* text) {
  return QCoreApplication::translate("card", text);
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

/// A number to be set, with what it is above and what goes with it below.
struct Setting {
  QString what, number, detail;
};

QString length(double v, const Sheet& sheet, Dimension dimension = Dimension::length) {
  return QString::fromStdString(format(v, dimension, sheet.units));
}

/// The size alone is set in large type; which way stands below it.
Setting left_right(const QString& what, double offset_m, const Sheet& sheet, Dimension dimension) {
  if (std::abs(offset_m) < 0.0005) return {what, tr("on line"), tr("straight ahead")};
  return {what, length(std::abs(offset_m), sheet, dimension),
          offset_m > 0 ? tr("left of the line") : tr("right of the line")};
}

Setting up_down(const QString& what, double rise_m, const Sheet& sheet) {
  if (std::abs(rise_m) < 0.00005) return {what, tr("level"), tr("nose and tail")};
  return {what, length(std::abs(rise_m), sheet, Dimension::small_length),
          rise_m > 0 ? tr("nose higher") : tr("nose lower")};
}

std::vector<Setting> settings(const Sheet& sheet, const CrewSetup& setup) {
  const bool us = sheet.units == UnitSystem::us;
  const LevelRise& level = setup.level_rises[us ? 3 : 1];
  std::vector<Setting> all;
  all.push_back({tr("Depth to set"), length(setup.levels.axis_depth.m, sheet), tr("ground to axis")});
  all.push_back({tr("Grade"), length(setup.grade.grade.v, sheet, Dimension::grade),
                 tr("axis level %1").arg(length(setup.levels.axis.m, sheet, Dimension::station))});
  all.push_back(up_down(tr("Level, %1 long").arg(us ? tr("4 ft") : tr("1.2 m")), level.rise.m, sheet));
  if (setup.stake)
    all.push_back(left_right(tr("Aim at the stake"), setup.stake->m, sheet, Dimension::small_length));
  else
    all.push_back(left_right(tr("Aim at the exit"), setup.sight.at_exit.m, sheet, Dimension::length));
  all.push_back({tr("Pit floor"), length(setup.levels.ground.m - setup.levels.floor.m, sheet), tr("below the ground")});
  all.push_back(
      {tr("Packing under tool"), length(setup.levels.packing.m, sheet, Dimension::small_length), tr("cradle to body")});
  return all;
}

/// The largest size from `most` down to 11 pt at which the words go into the width.
TextStyle fitted(const QString& words, double most, QFont::Weight weight, double width_mm) {
  TextStyle style{most, weight};
  while (style.size_mm > small && text_width_mm(words, style) > width_mm) style.size_mm -= 0.1;
  style.size_mm = std::max(style.size_mm, small);
  return style;
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
  const TextStyle head{14 * pt, QFont::Bold, go ? Qt::black : Qt::white};
  QString words = qs(verdict_title(verdict));
  if (!go) words = tr("%1: do not bore. See the sheet.").arg(words);
  paper.short_text({band.left() + 2, band.bottom() - 2.7}, words, head, band.width() - 4);
  double y = band.bottom() + 5.6;
  paper.short_text({in.left(), y}, qs(sheet.crossing.name), {13 * pt, QFont::Bold}, in.width());
  y += 2.2;
  const double cell_width = in.width() / 3, cell_height = 20.5;
  const std::vector<Setting> all = settings(sheet, setup);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const QRectF cell(in.left() + static_cast<double>(i % 3) * cell_width, y + static_cast<double>(i / 3) * cell_height,
                      cell_width, cell_height);
    paper.rect(cell, {}, {0.25});
    const double room = cell.width() - 2;
    paper.short_text({cell.left() + 1, cell.top() + 4.6}, all[i].what, {small, QFont::DemiBold}, room);
    // The size is 20 pt; "11 ft 2.6 in" still goes in on a narrow card.
    const TextStyle big = fitted(all[i].number, large, QFont::Bold, room);
    paper.text({cell.left() + 1, cell.top() + 12.6}, all[i].number, big);
    paper.short_text({cell.left() + 1, cell.top() + 18.6}, all[i].detail, {small}, room);
  }
  return y + 2 * cell_height + 2;
}

/// What to do on the first line, what is near on those below.
QString near_and_to_do(const Mark& mark, const Sheet& sheet) {
  QString task = QString::fromStdString(task_words(mark, sheet.crossing));
  if (!task.isEmpty()) task[0] = task[0].toUpper();
  if (std::find(mark.tasks.begin(), mark.tasks.end(), MarkTask::stop_until_exposed) != mark.tasks.end())
    task = tr("STOP. ") + task;
  QStringList all;
  if (!task.isEmpty()) all << task;
  for (const MarkNear& near : mark.near)
    all << QStringLiteral("• ") + QString::fromStdString(near_words(near, sheet.units));
  return all.join(QLatin1Char('\n'));
}

void stops_and_steps(Flow& flow, const Sheet& sheet) {
  flow.heading(tr("Air off at once when"));
  for (const std::string& sign : stop_signs(sheet.crossing, sheet.assessment, sheet.units))
    flow.paragraph(QStringLiteral("• ") + QString::fromStdString(sign));
  for (const EmergencySteps& steps : emergency_steps(sheet.crossing)) {
    if (steps.kind != UtilityKind::gas && steps.kind != UtilityKind::power && steps.kind != UtilityKind::unknown)
      continue;
    QStringList lines;
    int number = 0;
    for (const std::string& step : steps.steps)
      lines << QStringLiteral("%1. %2").arg(++number).arg(QString::fromStdString(step));
    flow.block(tr("Struck: %1").arg(qs(steps.title)), lines);
  }
}

void phones(Flow& flow, const Sheet& sheet) {
  flow.heading(tr("Phone"));
  QStringList lines{tr("Emergency"), tr("Locating service"), tr("Competent person")};
  QStringList owners;
  for (const EmergencySteps& steps : emergency_steps(sheet.crossing))
    for (const std::string& owner : steps.owners) owners << QString::fromStdString(owner);
  owners.removeDuplicates();
  // More owners than one can ring belong on the sheet's table of utilities.
  for (const QString& owner : owners.mid(0, 4)) lines << tr("Owner: %1").arg(owner);
  if (owners.isEmpty()) lines << tr("Owner, gas") << tr("Owner, power");
  flow.to_fill_in(lines);
}

void marks(Flow& flow, const Sheet& sheet) {
  if (sheet.assessment.marks.empty()) return;
  flow.heading(tr("Marks of the hose"));
  std::vector<TableRow> rows;
  const auto number = [&](const std::optional<double>& v) { return shown(v, Dimension::length, sheet.units); };
  for (const Mark& mark : sheet.assessment.marks)
    rows.push_back({mark.hose_m ? number(mark.hose_m) : tr("none"), number(mark.nose_m), number(mark.depth_m),
                    near_and_to_do(mark, sheet)});
  const double narrow = sheet.units == UnitSystem::us ? 2.1 : 1;  // "11 ft 1.7 in"
  flow.table({{tr("hose"), narrow}, {tr("nose"), narrow}, {tr("deep"), narrow}, {tr("to do; what is near"), 4.4}},
             rows);
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
  Page& front = add_side();
  const double from = first_side(front, sheet, setup);
  bool first = true;
  Flow flow(
      [&]() -> std::vector<Flow::Area> {
        Page& page = first ? front : add_side();
        const QRectF in = page.frame_mm;
        const double top = first ? from : in.top();
        first = false;
        return {{&page, QRectF(in.left(), top, in.width(), in.bottom() - 6 - top)}};
      },
      card_style());
  if (setup.hold_until_m)
    flow.paragraph(tr("Start with the air half open; hold the tool until %1 of it is in.")
                       .arg(length(*setup.hold_until_m, sheet)));
  const Pit& pit = sheet.crossing.pits.launch;
  flow.paragraph(tr("Cradle %1 high on a slab of %2.")
                     .arg(length(pit.cradle_height->m, sheet, Dimension::small_length),
                          length(pit.slab_thickness->m, sheet, Dimension::small_length)));
  if (setup.sight.base) flow.paragraph(tr("Stake %1 from the face.").arg(length(setup.sight.base->m, sheet)));
  stops_and_steps(flow, sheet);
  phones(flow, sheet);
  marks(flow, sheet);
  std::vector<Page> pages;
  int number = 0;
  for (const auto& side : sides) {
    Paper paper(*side);
    const QRectF in = side->frame_mm;
    const QString which = tr("side %1 of %2").arg(++number).arg(sides.size());
    paper.text(in.bottomRight(), which, {small}, Align::right);
    const double room = in.width() - text_width_mm(which, {small}) - 4;
    QStringList id{qs(sheet.crossing.sheet.number), qs(sheet.crossing.sheet.revision),
                   qs(sheet.crossing.sheet.date.value_or(""))};
    id.removeAll(QString());
    paper.short_text(in.bottomLeft(), id.isEmpty() ? tr("setup card") : id.join(QStringLiteral(" · ")), {small}, room);
    // The frame takes the descenders of the last line.
    side->frame_mm = side->frame_mm.adjusted(-1, -1, 1, 2);
    pages.push_back(std::move(*side));
  }
  return pages;
}

}  // namespace burrow
