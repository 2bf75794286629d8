/// Levels along the bore, as a profile carries them: chainage, ground, axis, depth to the crown and grade at the faces,
/// at every utility, mark and change of the ground.

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

constexpr double row_height = 10.2;
constexpr double least_apart = 3.5;  // of two columns of upright numbers
constexpr double tall_area = 175;

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

struct LevelPlace {
  double station_m = 0;
  int weight = 0;  ///< which of two goes where there is room for one: the greater stays
  QString what;
};

struct PathHere {
  double axis_m = 0, cover_m = 0, grade_rad = 0;
};

/// Between the points of the path; none beyond its ends.
std::optional<PathHere> path_here(const Sheet& sheet, double station_m) {
  const std::vector<PathPoint>& all = sheet.assessment.bore.points;
  for (std::size_t i = 1; i < all.size(); ++i) {
    const PathPoint &a = all[i - 1], &b = all[i];
    if (station_m < a.x_m - 1e-6 || station_m > b.x_m + 1e-6 || !(b.x_m > a.x_m)) continue;
    const double share = std::clamp((station_m - a.x_m) / (b.x_m - a.x_m), 0.0, 1.0);
    const auto at = [&](double from, double to) { return from + share * (to - from); };
    return PathHere{at(a.z_m, b.z_m), at(a.cover_m, b.cover_m), at(a.grade_rad, b.grade_rad)};
  }
  return std::nullopt;
}

/// From left to right, each station once.
std::vector<LevelPlace> places_of(const Sheet& sheet) {
  const Crossing& c = sheet.crossing;
  std::vector<LevelPlace> all{{c.bore.launch.station.m, 4, tr("launch")}, {c.bore.exit.station.m, 4, tr("exit")}};
  int number = 0;
  for (const Utility& u : c.site.utilities) {
    ++number;
    if (!u.path.empty()) all.push_back({side_place(sheet, u).station_m, 3, tr("utility %1").arg(number)});
  }
  for (const Mark& m : sheet.assessment.marks)
    if (m.station_m && m.hose_m)
      all.push_back({*m.station_m, 2, tr("mark %1").arg(text_from(format(*m.hose_m, Dimension::length, sheet.units)))});
  for (const LevelPoint& p : c.site.ground) all.push_back({p.station_m, 1, tr("ground changes")});
  const double from = c.bore.launch.station.m, to = c.bore.exit.station.m;
  std::erase_if(all, [&](const LevelPlace& p) { return p.station_m < from - 1e-6 || p.station_m > to + 1e-6; });
  std::stable_sort(all.begin(), all.end(), [](const LevelPlace& a, const LevelPlace& b) {
    return a.station_m != b.station_m ? a.station_m < b.station_m : a.weight > b.weight;
  });
  std::vector<LevelPlace> each;
  for (const LevelPlace& p : all) {
    if (!each.empty() && std::abs(each.back().station_m - p.station_m) < 0.005)
      each.back().what += QStringLiteral(", ") + p.what;
    else
      each.push_back(p);
  }
  return each;
}

/// Those that have room beside what matters more.
std::vector<LevelPlace> with_room(std::vector<LevelPlace> all, double mm_per_m) {
  std::vector<LevelPlace> chosen;
  for (int weight = 4; weight > 0; --weight)
    for (const LevelPlace& p : all)
      if (p.weight == weight && std::none_of(chosen.begin(), chosen.end(), [&](const LevelPlace& other) {
            return std::abs(other.station_m - p.station_m) * mm_per_m < least_apart;
          }))
        chosen.push_back(p);
  return chosen;
}

/// Chainage, ground, axis, depth to the crown, grade.
QStringList numbers_at(const Sheet& sheet, double station_m) {
  const double unit = shown_unit(Dimension::station, sheet.units);
  const auto level = [&](double m) { return text_from(fixed_text(m / unit, 2)); };
  const LevelLine& ground = sheet.crossing.site.ground;
  QStringList all{station_words(station_m, sheet.units),
                  ground.empty() ? QStringLiteral("–") : level(elevation_at(ground, station_m))};
  const std::optional<PathHere> path = path_here(sheet, station_m);
  if (!path) return all << QStringLiteral("–") << QStringLiteral("–") << QStringLiteral("–");
  // Two places behind the mark: more find no room in a row, and no level sets them.
  return all << level(path->axis_m) << level(path->cover_m)
             << QStringLiteral("%1 %").arg(text_from(fixed_text(100 * std::tan(path->grade_rad), 2)));
}

QStringList names_of_rows(const Sheet& sheet) {
  const QString unit = text_from(unit_name(Dimension::station, sheet.units));
  return {tr("station, %1").arg(unit), tr("ground, %1").arg(unit), tr("axis, %1").arg(unit),
          tr("crown deep, %1").arg(unit), tr("grade")};
}

}  // namespace

QString station_words(double station_m, UnitSystem units) {
  if (units == UnitSystem::metric) return text_from(fixed_text(station_m, 2));
  const double feet = station_m / shown_unit(Dimension::station, units);
  const double hundredths = std::round(std::abs(feet) * 100);
  const int hundreds = static_cast<int>(hundredths / 10000);
  QString rest = text_from(fixed_text((hundredths - hundreds * 10000.0) / 100, 2));
  if (rest.size() < 5) rest.prepend(QLatin1Char('0'));
  const QString sign = feet < 0 && hundredths > 0 ? QStringLiteral("−") : QString();
  return QStringLiteral("%1%2+%3").arg(sign, QString::number(hundreds), rest);
}

double band_height(double area_height_mm) {
  return area_height_mm >= tall_area ? 5 * row_height : 0;
}

void draw_band(Page& page, const Sheet& sheet, const SheetViews& views) {
  if (views.band.isNull()) return;
  Paper paper(page);
  const QStringList rows = names_of_rows(sheet);
  const QRectF& band = views.band;
  for (qsizetype r = 0; r < rows.size(); ++r) {
    const double top = band.top() + static_cast<double>(r) * row_height;
    paper.rect(QRectF(band.left(), top, band.width(), row_height), {}, {0.18});
    const QStringList words = wrapped(rows[r], label_style, band.left() - views.area.left() - 1);
    double base = top + row_height / 2 + 0.9 - static_cast<double>(words.size() - 1) * line_height_mm(label_style) / 2;
    for (const QString& line : words) {
      paper.text({band.left() - 1, base}, line, label_style, Align::right);
      base += line_height_mm(label_style);
    }
  }
  for (const LevelPlace& place : with_room(places_of(sheet), views.frame.px_per_m)) {
    const double x = views.frame.px_x(place.station_m);
    if (x < band.left() + 2 || x > band.right() - 2) continue;
    paper.line({x, band.top() - 1.2}, {x, band.top()}, {0.18});
    const QStringList numbers = numbers_at(sheet, place.station_m);
    for (qsizetype r = 0; r < numbers.size(); ++r)
      paper.text({x + 0.9, band.top() + static_cast<double>(r + 1) * row_height - 0.8}, numbers[r], label_style,
                 Align::left, 90);
  }
}

void add_levels(Flow& flow, const Sheet& sheet) {
  const std::vector<LevelPlace> places = places_of(sheet);
  flow.heading(tr("Levels along the bore"));
  std::vector<TableRow> rows;
  for (const LevelPlace& place : places) rows.push_back(numbers_at(sheet, place.station_m) << place.what);
  const QStringList names = names_of_rows(sheet);
  std::vector<TableColumn> columns;
  for (const QString& name : names) columns.push_back({name, 1, Align::right});
  columns.push_back({tr("what is there"), 3});
  flow.table(columns, rows);
}

}  // namespace burrow
