#include "as_built.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/crossing/day_record.h"
#include "burrow/document/reading_forms.h"
#include "burrow/document/text.h"
#include "burrow/words/after_text.h"
#include "burrow/words/day_text.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

constexpr double strip_height = 46;
const TextStyle small{2.2}, body{2.5}, head{2.8, QFont::DemiBold};
const BuiltStyle colours;

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

class AsBuiltPages {
 public:
  explicit AsBuiltPages(const AsBuilt& built)
      : built_(built), sheet_(built.sheet), day_(built.day), measured_(measured_places(built)) {}

  Result<std::vector<Page>> all() {
    new_text_page(pages_, sheet_, tr("As-built record"));
    const QRectF in = pages_.front().frame_mm;
    const Result<double> scale = draw_as_built(pages_.front(), built_, in.adjusted(2, 9, -3, -(strip_height + 7)));
    if (!scale) return tl::unexpected(scale.error());
    const QRectF strip(in.left() + 3, in.bottom() - strip_height - 5, in.width() - 6, strip_height);
    Paper paper(pages_.front());
    paper.line({in.left(), strip.top() - 1}, {in.right(), strip.top() - 1}, {0.25});
    const double legend = std::min(62.0, strip.width() * 0.25), sign = std::min(120.0, strip.width() * 0.36);
    draw_legend(paper, QRectF(strip.left(), strip.top(), legend, strip.height()));
    facts(paper, QRectF(strip.left() + legend + 3, strip.top(), strip.width() - legend - sign - 7, strip.height()),
          *scale);
    signatures(paper, QRectF(strip.right() - sign, strip.top(), sign, strip.height()));
    tables();
    number_pages(pages_, sheet_);
    return std::move(pages_);
  }

 private:
  [[nodiscard]] QString translated(const std::optional<double>& v, Dimension d = Dimension::length) const {
    return shown(v, d, sheet_.units);
  }
  [[nodiscard]] QString aside(double m, const QString& plus, const QString& minus) const {
    if (std::abs(m) < 0.0005) return tr("as planned");
    return QStringLiteral("%1 %2").arg(translated(std::abs(m)), m > 0 ? plus : minus);
  }

  void draw_legend(Paper& paper, const QRectF& box) {
    paper.text({box.left(), box.top() + 3.6}, tr("What is drawn"), head);
    double y = box.top() + 7.6;
    const auto line = [&](const Stroke& stroke, const QString& words) {
      paper.line({box.left(), y - 0.8}, {box.left() + 8, y - 0.8}, stroke);
      paper.short_text({box.left() + 10, y}, words, small, box.width() - 10);
      y += 3.6;
    };
    line({0.5, colours.path},
         measured_.any() ? tr("as built, by all readings") : tr("as predicted: nothing was measured"));
    paper.rect(QRectF(box.left(), y - 2, 8, 2.2), colours.band);
    paper.short_text({box.left() + 10, y}, tr("nine in ten, half of all"), small, box.width() - 10);
    y += 3.6;
    line({0.3, colours.planned, {2, 1}}, tr("as planned, the mean"));
    line({0.3, Qt::black, {2, 0.8}}, tr("edge of a pit"));
    const std::pair<ReadingKind, QString> signs[] = {{ReadingKind::mark, tr("hose mark")},
                                                     {ReadingKind::grade, tr("grade or heading read")},
                                                     {ReadingKind::fix, tr("place found from above")},
                                                     {ReadingKind::peg, tr("peg over the nose")},
                                                     {ReadingKind::stop, tr("stop")},
                                                     {ReadingKind::back, tr("driven back")},
                                                     {ReadingKind::arrival, tr("arrival, end")}};
    for (const auto& [kind, words] : signs) {
      draw_reading_sign(paper, kind, {box.left() + 4, y - 0.8});
      paper.short_text({box.left() + 10, y}, words, small, box.width() - 10);
      y += 3.6;
    }
  }

  void facts(Paper& paper, const QRectF& box, double scale) {
    paper.short_text({box.left(), box.top() + 3.6}, tr("What was built"), head, box.width());
    double y = box.top() + 5;
    for (const auto& [what, value] : fact_lines(scale)) {
      const double words = std::min(30.0, box.width() * 0.36);
      const QStringList lines = wrapped(value, body, box.width() - words - 1);
      if (y + static_cast<double>(lines.size()) * line_height_mm(body) > box.bottom()) break;
      paper.short_text({box.left(), y + body.size_mm}, what, {2.2, QFont::Normal, QColor(0x50, 0x50, 0x50)}, words);
      y += paper.paragraph(QRectF(box.left() + words + 1, y, box.width() - words - 1, 30), value, body) + 0.25;
    }
  }

  [[nodiscard]] std::vector<std::pair<QString, QString>> fact_lines(double scale) const {
    const DayRecord& record = built_.record;
    const Crossing& c = sheet_.crossing;
    std::vector<std::pair<QString, QString>> all;
    const QString begun = text_from(record.started.value_or(""));
    all.emplace_back(tr("started"),
                     begun.isEmpty() ? tr("not entered") : QString(begun).replace(QLatin1Char('T'), QLatin1Char(' ')));
    all.emplace_back(tr("crew"), record.crew.empty() ? tr("not entered") : text_from(record.crew));
    if (record.alternative) all.emplace_back(tr("layout"), text_from(*record.alternative));
    const QString after = translated(day_.time_s, Dimension::duration);
    all.emplace_back(tr("end"), day_.how ? tr("%1, after %2").arg(how_words(*day_.how), after)
                                         : tr("not entered; last reading after %1").arg(after));
    all.emplace_back(tr("furthest nose"), translated(day_.furthest_m));
    if (record.taken_on)
      all.emplace_back(tr("taken on"),
                       tr("%1: %2").arg(text_from(record.taken_on->by), text_from(record.taken_on->why)));
    const Statement& released = record.aftermath.released;
    if (!released.by.empty())
      all.emplace_back(
          tr("released"),
          tr("%1, %2: %3").arg(text_from(released.by), text_from(released.date.value_or("")), text_from(released.how)));
    const Arrival &planned = sheet_.assessment.arrival, &now = day_.arrival;
    if (day_.how == EndHow::arrived) all.emplace_back(tr("came out"), came_out());
    const bool seen_out = measured_.out_aside && measured_.out_height;
    if (day_.how == EndHow::arrived && seen_out && now.offset_m && now.elevation_m) {
      if (planned.offset_m && planned.elevation_m) {
        all.emplace_back(tr("off the plan"),
                         tr("%1, %2").arg(aside(*now.offset_m - *planned.offset_m, tr("left"), tr("right")),
                                          aside(*now.elevation_m - *planned.elevation_m, tr("higher"), tr("lower"))));
        const bool within =
            std::abs(*now.offset_m - *planned.offset_m) <= 1.645 * planned.sd_lateral_m.value_or(0) &&
            std::abs(*now.elevation_m - *planned.elevation_m) <= 1.645 * planned.sd_vertical_m.value_or(0);
        all.emplace_back(tr("planned band"), within ? tr("inside nine in ten") : tr("outside nine in ten"));
      }
    }
    all.emplace_back(
        tr("pipe"), c.pipe ? (c.pipe->material.empty() ? tr("not entered") : text_from(c.pipe->material)) : tr("none"));
    all.emplace_back(tr("scale"), scale_words(scale, sheet_.units));
    const double times = std::max(1.0, c.sheet.vertical_exaggeration->v);
    if (times > 1) all.emplace_back(tr("heights"), tr("× %1").arg(times));
    return all;
  }

  /// Only what was measured of it.
  [[nodiscard]] QString came_out() const {
    const Arrival& now = day_.arrival;
    if (arrival_doubted(sheet_.crossing, built_.record)) return tr("half way by its marks, nobody has confirmed it");
    const auto with = [&](const QString& words, const std::optional<double>& value, const std::optional<double>& sd) {
      return words.arg(translated(value, Dimension::station), translated(1.645 * sd.value_or(0)));
    };
    QStringList parts;
    if (measured_.out_aside && now.offset_m) parts << with(tr("offset %1 ± %2"), now.offset_m, now.sd_lateral_m);
    if (measured_.out_height && now.elevation_m) parts << with(tr("level %1 ± %2"), now.elevation_m, now.sd_vertical_m);
    return parts.isEmpty() ? tr("not measured") : parts.join(QStringLiteral(", "));
  }

  static QString how_words(EndHow how) {
    switch (how) {
      case EndHow::arrived:
        return tr("arrived");
      case EndHow::backed_out:
        return tr("backed out");
      case EndHow::stuck:
        return tr("stuck");
      case EndHow::daylight:
        return tr("came up in between");
      case EndHow::struck:
        return tr("struck something");
      case EndHow::lost:
        break;
    }
    return tr("lost");
  }

  void signatures(Paper& paper, const QRectF& box) {
    paper.short_text({box.left(), box.top() + 3.6}, tr("Signed"), head, box.width());
    const QString who[] = {tr("crew"), tr("inspector"), tr("owner of road or track"), tr("client")};
    const double height = (box.height() - 6) / 4, name = box.width() * 0.58, date = box.width() * 0.8;
    for (std::size_t i = 0; i < 4; ++i) {
      const double base = box.top() + 5.5 + height * static_cast<double>(i + 1) - 3.4;
      paper.line({box.left(), base}, {box.left() + name - 2, base}, {0.2});
      paper.line({box.left() + name, base}, {box.left() + date - 2, base}, {0.2});
      paper.line({box.left() + date, base}, {box.right(), base}, {0.2});
      const TextStyle style{2, QFont::Normal, QColor(0x50, 0x50, 0x50)};
      paper.short_text({box.left(), base + 2.4}, tr("%1: name, signature").arg(who[i]), style, name - 2);
      paper.short_text({box.left() + name, base + 2.4}, tr("date"), style, date - name - 2);
      paper.short_text({box.left() + date, base + 2.4}, tr("time"), style, box.right() - box.left() - date);
    }
  }

  void tables() {
    // The flow keeps places of pages, so none may move: they are put on the list one by one, which has room.
    pages_.reserve(512);
    Flow flow([this] { return new_text_page(pages_, sheet_, tr("As-built record: readings")); });
    flow.heading(tr("Readings as they were taken"));
    readings(flow);
    flow.heading(measured_.any() ? tr("The line as built") : tr("The line as predicted: nothing was measured"));
    flow.paragraph(tr(
        "Place of the axis by all readings, with its nine in ten each way; beside it how far it lies off the mean "
        "path that was planned. Depth: ground line to axis. Predicted, not measured: further than two marks (3 m) from "
        "a reading of the place itself, for grade and heading read no place."));
    line_table(flow);
    flow.heading(tr("Utilities passed"));
    utilities(flow);
    after(flow);
  }

  /// Pull-in, what was closed up, levels, photos: only what somebody entered counts as done.
  void after(Flow& flow) {
    if (!ended(built_.record)) return;
    flow.heading(tr("After the bore"));
    std::vector<TableRow> rows;
    for (const AfterLine& line : after_lines(sheet_.crossing, built_.record, sheet_.units))
      rows.push_back({line.done ? tr("done") : tr("OPEN"), text_from(line.what), text_from(line.found)});
    for (const RecordPhoto& photo : built_.record.aftermath.photos)
      rows.push_back({tr("photo"), text_from(photo.what), text_from(photo.path)});
    flow.table({{tr("state"), 1}, {tr("what is asked for"), 3.2}, {tr("what was entered"), 4}}, rows);
  }

  void readings(Flow& flow) {
    const std::vector<std::optional<double>> noses = noses_of(built_);
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < built_.record.readings.size(); ++i) {
      const Reading& reading = built_.record.readings[i];
      // "8 min · mark · nose 3.00 m": the time has a column of its own.
      const QString line = text_from(reading_line(reading, sheet_.units));
      const QString sep = QStringLiteral(" · ");
      const QString rest = line.contains(sep) ? line.section(sep, 1) : line;
      TableRow row{QString::number(i + 1), translated(reading.time.s, Dimension::duration), rest};
      const bool placed = noses[i].has_value() && !day_.smoothed.points.empty();
      const PathPoint at = placed ? built_at(day_.smoothed, *noses[i]) : PathPoint{};
      row << (placed ? translated(at.x_m, Dimension::station) : QStringLiteral("–"))
          << (placed && measured_.aside(*noses[i]) ? translated(at.y_m, Dimension::station) : QStringLiteral("–"))
          << (placed && measured_.height(*noses[i]) ? translated(at.z_m, Dimension::station) : QStringLiteral("–"))
          << remark(i);
      rows.push_back(row);
    }
    if (rows.empty()) {
      flow.paragraph(tr("None."));
      return;
    }
    flow.table({{tr("no."), 0.7},
                {tr("after"), 1.2},
                {tr("reading"), 4.2},
                {tr("station"), 1.4},
                {tr("offset"), 1.4},
                {tr("level"), 1.5},
                {tr("remark"), 2.2}},
               rows);
  }

  [[nodiscard]] QString remark(std::size_t reading) const {
    const Reading& one = built_.record.readings[reading];
    if (!counts(one)) return tr("struck through");
    for (const ReadingQuery& query : day_.queried)
      if (query.reading == reading) return tr("doubtful, not used");
    for (const ReadingLeftOut& out : day_.left_out)
      if (out.reading == reading) return text_from(left_out_text(out, built_.record));
    for (const OddReading& odd : day_.odd)
      if (odd.reading == reading) return tr("odd: off by %1 times its usual spread").arg(decimals(odd.in_sd, 1));
    return QString();
  }

  void line_table(Flow& flow) {
    const std::vector<PathPoint> points = built_points(built_);
    if (points.size() < 2) {
      flow.paragraph(tr("Nothing was bored."));
      return;
    }
    const double step = sheet_.units == UnitSystem::us ? 3 * 0.3048 : 1.0;
    std::vector<TableRow> rows;
    const double last = points.back().s_m;
    for (int i = 0;; ++i) {
      const double s = std::min(i * step, last);
      const PathPoint p = built_at(day_.smoothed, s);
      TableRow row{translated(p.x_m, Dimension::station),
                   translated(p.y_m, Dimension::station),
                   translated(p.z_m, Dimension::station),
                   translated(elevation_at(sheet_.crossing.site.ground, p.x_m) - p.z_m),
                   QStringLiteral("± ") + translated(1.645 * p.sd_lateral_m),
                   QStringLiteral("± ") + translated(1.645 * p.sd_vertical_m)};
      const std::vector<PathPoint>& planned = sheet_.assessment.bore.points;
      const auto beyond =
          std::find_if(planned.begin(), planned.end(), [&](const PathPoint& q) { return q.x_m >= p.x_m - 1e-9; });
      if (beyond != planned.end()) {
        PathPoint q = *beyond;
        if (beyond != planned.begin()) {
          const PathPoint& before = *(beyond - 1);
          const double t = std::clamp((p.x_m - before.x_m) / std::max(beyond->x_m - before.x_m, 1e-12), 0.0, 1.0);
          q.y_m = before.y_m + t * (beyond->y_m - before.y_m);
          q.z_m = before.z_m + t * (beyond->z_m - before.z_m);
        }
        const QString predicted = tr("predicted, not measured");
        row << (measured_.aside(p.s_m) ? aside(p.y_m - q.y_m, tr("left"), tr("right")) : predicted)
            << (measured_.height(p.s_m) ? aside(p.z_m - q.z_m, tr("higher"), tr("lower")) : predicted);
      } else {
        row << QStringLiteral("–") << QStringLiteral("–");
      }
      rows.push_back(row);
      if (s >= last) break;
    }
    flow.table({{tr("station"), 1.2},
                {tr("offset"), 1.2},
                {tr("axis level"), 1.4},
                {tr("deep"), 1.1},
                {tr("across"), 1.3},
                {tr("in height"), 1.3},
                {tr("off the plan, across"), 1.7},
                {tr("off the plan, in height"), 1.7}},
               rows);
  }

  /// What the nose has passed, with its clear gap; what lies beyond the end of the hole was not passed.
  void utilities(Flow& flow) {
    std::vector<TableRow> rows;
    const double last = built_.day.furthest_m;
    for (const UtilityAnswer& u : sheet_.assessment.utilities) {
      if (!u.on_utility || !u.on_bore || !u.separation_m) {
        // Passed in plan; how near nobody knows.
        if (u.station_m && *u.station_m <= built_at(day_.smoothed, last).x_m + 1e-9)
          rows.push_back({text_from(u.name), translated(*u.station_m, Dimension::station), tr("depth not known"),
                          QStringLiteral("–")});
        continue;
      }
      const auto axis_gap = [&](const auto& p) {
        return std::hypot(p.x_m - u.on_utility->x_m, p.y_m - u.on_utility->y_m, p.z_m - u.on_utility->z_m);
      };
      const double radii = axis_gap(*u.on_bore) - *u.separation_m;
      const auto nearest =
          std::min_element(day_.smoothed.points.begin(), day_.smoothed.points.end(),
                           [&](const PathPoint& a, const PathPoint& b) { return axis_gap(a) < axis_gap(b); });
      if (nearest == day_.smoothed.points.end() || nearest->s_m > last + 1e-9) continue;
      const bool read = measured_.aside(nearest->s_m) && measured_.height(nearest->s_m);
      rows.push_back(
          {text_from(u.name), translated(nearest->x_m, Dimension::station),
           read ? tr("%1 ± %2").arg(translated(axis_gap(*nearest) - radii), translated(gap_spread_m(*nearest, u)))
                : tr("predicted, not measured"),
           translated(u.separation_m)});
    }
    if (rows.empty()) {
      flow.paragraph(tr("None."));
      return;
    }
    flow.table({{tr("utility"), 3},
                {tr("passed at station"), 1.6},
                {tr("clear gap, as built"), 2},
                {tr("clear gap, as planned"), 1.6}},
               rows);
  }

  const AsBuilt& built_;
  const Sheet& sheet_;
  const DayAnswer& day_;
  MeasuredPlaces measured_;
  std::vector<Page> pages_;
};

}  // namespace

Result<std::vector<Page>> as_built_pages(const Sheet& sheet) {
  const auto& records = sheet.crossing.record;
  const auto chosen = std::find_if(records.rbegin(), records.rend(), [&](const DayRecord& record) {
    return sheet.record.empty() ? !record.readings.empty() : record.id == sheet.record;
  });
  if (chosen == records.rend() || chosen->readings.empty())
    return fail("record", sheet.record.empty() ? "no readings" : sheet.record,
                "a record of the day with readings: take them on the page Day");
  const DayRecord& record = *chosen;
  const Crossing bored = as_bored(sheet.crossing, record);
  const bool as_it_is = !record.alternative && layout_stands(sheet.crossing, record);
  const Assessment planned = as_it_is ? sheet.assessment : assess(bored, sheet.tables, sheet.assessment.ground_surface);
  Sheet of_layout{bored, planned, sheet.tables};
  of_layout.paper_mm = sheet.paper_mm;
  of_layout.units = sheet.units;
  const DayAnswer day = day_answer(bored, sheet.tables, record, planned);
  const AsBuilt built{of_layout, record, day};
  return AsBuiltPages(built).all();
}

}  // namespace burrow
