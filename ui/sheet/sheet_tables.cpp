#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/crew/equipment.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "burrow/words/pipe_text.h"
#include "burrow/words/run_text.h"
#include "burrow/words/source_text.h"
#include "burrow/words/working_text.h"
#include "front_page.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("sheet", text, context, n);
}

class SheetTables {
 public:
  SheetTables(Flow& flow, const Sheet& sheet, bool levels) : flow_(flow), sheet_(sheet), levels_(levels) {}

  void all() {
    findings();
    utilities();
    if (levels_) add_levels(flow_, sheet_);
    pits();
    pipe();
    loads();
    air();
    marks();
    add_limits(flow_, sheet_);
    cautions();
  }

 private:
  QString text(const std::optional<double>& v, Dimension d = Dimension::length) const {
    return shown(v, d, sheet_.units);
  }
  static QString dashed(const std::string& words) { return words.empty() ? QStringLiteral("–") : text_from(words); }

  void findings() {
    flow_.heading(tr("Findings, worst first"));
    flow_.paragraph(text_from(verdict_title(sheet_.assessment.verdict)) + QStringLiteral(". ") +
                    text_from(headline(sheet_.assessment, sheet_.units)));
    loosened();
    std::vector<TableRow> open, muted;
    int count = 0;
    for (const Finding& f : sheet_.assessment.findings) {
      const QString source = f.source.text.empty() && !f.limit
                                 ? QString()
                                 : text_from(f.limit ? limit_source_text(f.source) : source_text(f.source));
      const QString severity = f.missing ? tr("missing") : text_from(burrow::translated(burrow::word_of(f.severity)));
      ++count;
      if (f.muted)
        muted.push_back({QString::number(count), severity, text_from(finding_text(f, sheet_.units)),
                         text_from(f.muted->reason),
                         text_from(f.muted->by) + QLatin1Char(' ') + text_from(f.muted->date)});
      else
        open.push_back({QString::number(count), severity, text_from(finding_text(f, sheet_.units)),
                        text(f.station_m, Dimension::station), source});
    }
    if (open.empty() && muted.empty()) {
      flow_.paragraph(tr("None."));
      return;
    }
    if (!open.empty())
      flow_.table({{tr("no."), 0.45, Align::right},
                   {tr("weight"), 1},
                   {tr("finding"), 5},
                   {tr("station"), 1, Align::right},
                   {tr("limit from"), 3.2}},
                  open);
    if (!muted.empty()) {
      flow_.heading(tr("Accepted findings"));
      flow_.table({{tr("no."), 0.45, Align::right},
                   {tr("weight"), 1},
                   {tr("finding"), 4.2},
                   {tr("reason"), 3.5},
                   {tr("by, date"), 1.5}},
                  muted);
    }
  }

  void loosened() {
    if (sheet_.assessment.loosened.empty()) return;
    flow_.heading(tr("Loosened limits"));
    std::vector<TableRow> rows;
    for (const LoosenedLimit& l : sheet_.assessment.loosened)
      rows.push_back({text_from(l.name), text_from(limit_number(l.value, l.unit, sheet_.units)),
                      text_from(limit_number(l.table_value, l.unit, sheet_.units)), text_from(l.why)});
    flow_.table({{tr("limit"), 3.5},
                 {tr("current"), 1.2, Align::right},
                 {tr("table or rule"), 1.2, Align::right},
                 {tr("reason"), 4}},
                rows);
  }

  void utilities() {
    const auto& all = sheet_.crossing.site.utilities;
    if (all.empty()) return;
    flow_.heading(tr("Utilities"));
    std::vector<TableRow> rows;
    int count = 0;
    for (const Utility& u : all) {
      const auto found = std::find_if(sheet_.assessment.utilities.begin(), sheet_.assessment.utilities.end(),
                                      [&](const UtilityAnswer& a) { return a.id == u.id; });
      const UtilityAnswer none;
      const UtilityAnswer& a = found == sheet_.assessment.utilities.end() ? none : *found;
      QString name = utility_name(u);
      if (!u.owner.empty()) name += QStringLiteral(", ") + text_from(u.owner);
      QString what = choice_words(u.kind) + QStringLiteral(", ") + choice_words(*u.status);
      if (u.outside_diameter) what += QStringLiteral(", ") + text(u.outside_diameter->m, Dimension::small_length);
      rows.push_back({QString::number(++count), name, what, text(a.station_m, Dimension::station),
                      text(a.elevation_m, Dimension::station), text(a.separation_m), text(a.required_m),
                      text(a.contact_chance, Dimension::chance), choice_words(*u.located.how),
                      !a.expose       ? tr("no")
                      : a.expose_rank ? tr("yes, %1").arg(static_cast<int>(*a.expose_rank))
                                      : tr("yes")});
    }
    flow_.table({{tr("no."), 0.5, Align::right},
                 {tr("name, owner"), 2.0},
                 {tr("kind, state, size"), 2.0},
                 {tr("station"), 1.15, Align::right},
                 {tr("level"), 1.2, Align::right},
                 {tr("clear gap"), 1.25, Align::right},
                 {tr("required"), 1.1, Align::right},
                 {tr("chance of contact"), 1.5, Align::right},
                 {tr("located"), 1.4},
                 {tr("expose"), 0.85}},
                rows);
  }

  [[nodiscard]] QString corners(const Pit& pit) const {
    QStringList all;
    for (const PlanPoint& p : pit.floor_outline) all << tr("%1, %2").arg(text(p.x_m), text(p.y_m, Dimension::station));
    return all.isEmpty() ? tr("rectangle") : all.join(QStringLiteral("; "));
  }

  void pits() {
    flow_.heading(tr("Pits"));
    const Assessment& a = sheet_.assessment;
    const PitShape& l = a.launch_pit;
    const PitShape& e = a.exit_pit;
    const PitAnswer& lw = a.launch_pit_work;
    const PitAnswer& ew = a.exit_pit_work;
    std::vector<TableRow> rows;
    const auto row = [&](const QString& what, const QString& launch, const QString& exit) {
      rows.push_back({what, launch, exit});
    };
    const auto by = [&](double length, double width) { return text(length) + QStringLiteral(" × ") + text(width); };
    row(tr("floor, length × width"), by(l.floor_length_m, l.floor_width_m), by(e.floor_length_m, e.floor_width_m));
    if (l.outlined || e.outlined)
      row(tr("corners of the floor: from the face, left of its middle"), corners(sheet_.crossing.pits.launch),
          corners(sheet_.crossing.pits.exit));
    if (a.ground_surface.surveyed()) {
      const auto ground = [](const PitShape& pit) {
        return pit.ground.surveyed() ? tr("surveyed points and ground line") : tr("ground line, level across");
      };
      row(tr("cut out of"), ground(l), ground(e));
    }
    row(tr("at the surface"), by(l.top_length_m, l.top_width_m), by(e.top_length_m, e.top_width_m));
    row(tr("depth, deepest"), text(l.depth_m), text(e.depth_m));
    row(tr("level of the floor"), text(l.floor_elevation_m, Dimension::station),
        text(e.floor_elevation_m, Dimension::station));
    row(tr("level of the axis"), text(l.axis_elevation_m, Dimension::station),
        text(e.axis_elevation_m, Dimension::station));
    row(tr("sides: bore, back, left, right"), sides(sheet_.crossing.pits.launch.sides),
        sides(sheet_.crossing.pits.exit.sides));
    row(tr("soil type"), soil(l, lw), soil(e, ew));
    row(tr("dug, in the bank"), text(l.volume_m3, Dimension::volume), text(e.volume_m3, Dimension::volume));
    row(tr("dug, loose"), text(lw.loose_m3, Dimension::volume), text(ew.loose_m3, Dimension::volume));
    row(tr("water above the floor (− below)"), text(lw.water_head_m), text(ew.water_head_m));
    row(tr("needed"), duties(lw), duties(ew));
    flow_.table({{QString(), 1.3}, {tr("launch pit"), 2}, {tr("exit pit"), 2}}, rows);
    if (l.footprint.empty() || e.footprint.empty()) return;  // no ground line: nothing is cut
    const Flow::Area area = flow_.room(52);
    draw_pits(*area.page, area.box, sheet_, 2.5, true);
  }
  static QString sides(const PitSides& s) {
    QStringList all;
    for (const PitSide* side : {&s.bore, &s.back, &s.left, &s.right}) all << choice_words(*side->kind);
    return all.join(QStringLiteral(", "));
  }
  static QString soil(const PitShape& shape, const PitAnswer& work) {
    return (work.confirmed ? tr("%1, confirmed") : tr("%1, not confirmed on site")).arg(choice_words(shape.soil_type));
  }
  static QString duties(const PitAnswer& work) {
    QStringList all;
    for (const PitDuty& duty : work.duties)
      if (duty.applies) all << text_from(duty.code).replace(QLatin1Char('-'), QLatin1Char(' '));
    return all.isEmpty() ? QStringLiteral("–") : all.join(QStringLiteral(", "));
  }

  void pipe() {
    flow_.heading(tr("Pipe"));
    const auto& pipe = sheet_.crossing.pipe;
    if (!pipe) {
      flow_.paragraph(tr("No pipe is entered."));
      return;
    }
    flow_.paragraph(pipe_words(sheet_));
    std::vector<TableRow> rows;
    for (const PipeCheck& check : sheet_.assessment.pipe_checks)
      rows.push_back({text_from(translated(std::string_view(check.name))), dashed(value_text(check, sheet_.units)),
                      dashed(limit_text(check, sheet_.units)), dashed(utilisation_text(check)),
                      text(check.station_m, Dimension::station),
                      text_from(check.limit ? limit_source_text(check.source) : source_text(check.source))});
    if (!rows.empty())
      flow_.table({{tr("check"), 2.4},
                   {tr("value"), 1.1, Align::right},
                   {tr("limit"), 1.6, Align::right},
                   {tr("used"), 0.8, Align::right},
                   {tr("station"), 1, Align::right},
                   {tr("from"), 3}},
                  rows);
  }

  void loads() {
    const auto& all = sheet_.assessment.loads;
    if (all.empty()) return;
    flow_.heading(tr("Loads on the crown of the pipe"));
    // A dozen places are enough to read; the worst is always one of them.
    std::vector<std::size_t> places;
    const std::size_t most = 12;
    for (std::size_t k = 0; k < std::min(most, all.size()); ++k)
      places.push_back(all.size() <= most ? k : k * (all.size() - 1) / (most - 1));
    const auto worst = std::max_element(all.begin(), all.end(), [](const LoadPoint& a, const LoadPoint& b) {
      return a.earth_Pa + a.live_Pa < b.earth_Pa + b.live_Pa;
    });
    places.push_back(static_cast<std::size_t>(worst - all.begin()));
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    std::vector<TableRow> rows;
    for (const std::size_t i : places) {
      const LoadPoint& p = all[i];
      rows.push_back({text(p.station_m, Dimension::station), text(p.depth_m), text(p.earth_Pa, Dimension::pressure),
                      text(p.earth_arched_Pa, Dimension::pressure), text(p.live_Pa, Dimension::pressure),
                      text(p.water_Pa, Dimension::pressure), surface_name(p.live)});
    }
    flow_.table({{tr("station"), 1, Align::right},
                 {tr("depth of crown"), 1.1, Align::right},
                 {tr("earth, whole"), 1, Align::right},
                 {tr("earth, arched"), 1, Align::right},
                 {tr("traffic, machines"), 1.1, Align::right},
                 {tr("water"), 1, Align::right},
                 {tr("what stands above"), 1.8}},
                rows);
  }
  QString surface_name(const std::string& id) const {
    for (const SurfaceFeature& f : sheet_.crossing.site.surface)
      if (f.id == id) return f.name.empty() ? choice_words(f.kind) : text_from(f.name);
    return text_from(id);
  }

  void air() {
    flow_.heading(tr("Air"));
    flow_.paragraph(text_from(air_words(sheet_.assessment.air, sheet_.units)) + QLatin1Char('.'));
  }

  void marks() {
    if (sheet_.assessment.marks.empty()) return;
    flow_.heading(tr("Run sheet"));
    std::vector<TableRow> rows;
    for (const Mark& m : sheet_.assessment.marks) {
      QStringList near;
      for (const MarkNear& n : m.near) near << text_from(near_words(n, sheet_.units));
      rows.push_back({text(m.hose_m), text(m.nose_m), text(m.depth_m), text(m.time_s.p50, Dimension::duration),
                      near.join(QStringLiteral("; ")), text_from(task_words(m, sheet_.crossing))});
    }
    flow_.table({{tr("hose"), 1, Align::right},
                 {tr("nose"), 1, Align::right},
                 {tr("deep"), 1, Align::right},
                 {tr("time, half of all"), 1.1, Align::right},
                 {tr("what is near"), 4},
                 {tr("to do"), 2.4}},
                rows);
  }

  void cautions() {
    flow_.heading(tr("Cautions"));
    flow_.paragraph(
        tr("Locate before digging; expose before passing; protect the pit; restrain every air coupling and bleed the "
           "line before uncoupling. Local codes and the competent person at the excavation govern. The path is a "
           "prediction with a spread: the tool cannot be steered. Print at actual size and measure the 100 mm bar "
           "before anything is taken off this sheet with a scale."));
  }

  Flow& flow_;
  const Sheet& sheet_;
  bool levels_;
};

}  // namespace

void add_tables(std::vector<Page>& pages, const Sheet& sheet, bool levels) {
  Flow flow([&] { return new_text_page(pages, sheet, tr("Crossing sheet, tables")); });
  SheetTables(flow, sheet, levels).all();
}

}  // namespace burrow
