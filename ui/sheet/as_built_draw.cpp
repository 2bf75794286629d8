#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "as_built.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/day_record.h"
#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

constexpr double gutter = 14, ruler = 6.5, row = 5.2, sky = 3;
constexpr int most_rows = 5;
const QColor grey(0xc4, 0xc4, 0xc4), soft(0x55, 0x55, 0x55);
const BuiltStyle colours;

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

struct Extent {
  double from, to, bottom, top, right, left;
};

/// A reading that has a place on the path.
struct VisibleLayers {
  int number = 0;  ///< in the table
  ReadingKind kind = ReadingKind::note;
  PathPoint at;
};

class Drawing {
 public:
  Drawing(Page& page, const AsBuilt& built, const QRectF& area)
      : paper_(page), built_(built), sheet_(built.sheet), area_(area), points_(built_points(built)) {
    const std::vector<std::optional<double>> noses = noses_of(built);
    for (std::size_t i = 0; i < noses.size(); ++i) {
      const ReadingKind kind = built.record.readings[i].kind;
      const bool placed = kind != ReadingKind::go && kind != ReadingKind::note && kind != ReadingKind::pressure &&
                          kind != ReadingKind::done;
      if (!noses[i] || !placed || !counts(built.record.readings[i])) continue;
      shown_.push_back({static_cast<int>(i) + 1, kind, built_at(built.day.smoothed, *noses[i])});
    }
  }

  Result<double> draw() {
    const Result<double> scale = place();
    if (!scale) return scale;
    grid();
    paper_.clip(f_.elevation);
    side();
    paper_.clip(f_.plan);
    plan();
    paper_.clip({});
    signs(Pane::elevation);
    signs(Pane::plan);
    numbers();
    names();
    paper_.rect(f_.elevation, {}, {0.25});
    paper_.rect(f_.plan, {}, {0.25});
    return scale;
  }

 private:
  [[nodiscard]] Extent extent() const {
    const Assessment& a = sheet_.assessment;
    const Bore& bore = sheet_.crossing.bore;
    Extent e{bore.launch.station.m,   bore.exit.station.m,   bore.launch.elevation.m,
             bore.launch.elevation.m, bore.launch.offset->m, bore.launch.offset->m};
    for (const PitShape* pit : {&a.launch_pit, &a.exit_pit}) {
      for (const PlanLine* line : {&pit->floor, &pit->footprint})
        for (const PlanPoint& p : *line) {
          e.from = std::min(e.from, p.x_m);
          e.to = std::max(e.to, p.x_m);
          e.right = std::min(e.right, p.y_m);
          e.left = std::max(e.left, p.y_m);
        }
      if (!pit->section.empty()) e.bottom = std::min(e.bottom, pit->floor_elevation_m);
    }
    const auto take = [&](const std::vector<PathPoint>& points) {
      for (const PathPoint& p : points) {
        e.from = std::min(e.from, p.x_m);
        e.to = std::max(e.to, p.x_m);
        e.bottom = std::min(e.bottom, p.z_m - 1.645 * p.sd_vertical_m);
        e.top = std::max(e.top, p.z_m + 1.645 * p.sd_vertical_m);
        e.right = std::min(e.right, p.y_m - 1.645 * p.sd_lateral_m);
        e.left = std::max(e.left, p.y_m + 1.645 * p.sd_lateral_m);
      }
    };
    take(points_);
    std::vector<PathPoint> planned = a.bore.points;
    std::erase_if(planned, [&](const PathPoint& p) { return p.x_m > bore.exit.station.m + 1e-9; });
    take(planned);
    e.from -= 0.5;
    e.to += 0.5;
    e.right -= 0.5;
    e.left += 0.5;
    e.bottom -= 0.4;
    const LevelLine& ground = sheet_.crossing.site.ground;
    for (const double x : {e.from, e.to}) e.top = std::max(e.top, elevation_at(ground, x));
    for (const LevelPoint& p : ground)
      if (p.station_m > e.from && p.station_m < e.to) e.top = std::max(e.top, p.elevation_m);
    return e;
  }

  /// The numbers of the readings stand above the ground in so many rows.
  [[nodiscard]] int rows_at(double px_per_m) const {
    double first = 1e300, last = -1e300;
    for (const VisibleLayers& s : shown_) {
      first = std::min(first, s.at.x_m);
      last = std::max(last, s.at.x_m);
    }
    const double width = std::max(area_.width() * 0.4, (last - first) * px_per_m + 20);
    return std::clamp(static_cast<int>(std::ceil(static_cast<double>(shown_.size()) * row / width)) + 1, 1, most_rows);
  }

  Result<double> place() {
    const Extent e = extent();
    const double times = std::max(1.0, sheet_.crossing.sheet.vertical_exaggeration->v), width = area_.width() - gutter;
    for (const double scale : standard_scales(sheet_.units)) {
      const double px = 1000 / scale;
      const double head = sky + row * rows_at(px), side = head + (e.top - e.bottom) * px * times;
      const double plan = (e.left - e.right) * px + 5;
      if ((e.to - e.from) * px > width || side + ruler + plan > area_.height()) continue;
      const double spare = area_.height() - side - ruler - plan, to_side = std::min(spare, 1.5 * px * times);
      f_.exaggeration = times;
      f_.px_per_m = px;
      f_.elevation = QRectF(area_.left() + gutter, area_.top(), width, side + to_side);
      f_.ruler = QRectF(area_.left() + gutter, f_.elevation.bottom(), width, ruler);
      f_.plan = QRectF(area_.left() + gutter, f_.ruler.bottom(), width, plan + spare - to_side);
      f_.left_station_m = (e.from + e.to) / 2 - width / px / 2;
      f_.top_elevation_m = e.top + head / (px * times);
      f_.top_offset_m = (e.left + e.right) / 2 + f_.plan.height() / px / 2;
      head_ = head;
      return scale;
    }
    return fail("paper", "too small for the heights shown", "a larger paper, or less exaggeration");
  }

  void grid() {
    const double unit = shown_unit(Dimension::station, sheet_.units);
    const double up = tick_step(f_.px_per_m * f_.exaggeration, 8, unit);
    const double top = f_.top_elevation_m - head_ / (f_.px_per_m * f_.exaggeration);
    for (const double z : ticks(f_.elevation_m(f_.elevation.bottom()), top + 0.001, up)) {
      const double y = f_.px_z(z);
      paper_.line({f_.elevation.left(), y}, {f_.elevation.right(), y}, {0.1, grey});
      if (y < f_.elevation.bottom() - 1.5)
        paper_.text({f_.elevation.left() - 1, y + 0.75}, tick_text(z, up, unit), label_style, Align::right);
    }
    const QString units = text_from(unit_name(Dimension::station, sheet_.units));
    paper_.text({area_.left() + 2.4, f_.elevation.center().y()}, tr("elevation, %1").arg(units), label_style,
                Align::centre, 90);
    paper_.text({area_.left() + 2.4, f_.plan.center().y()}, tr("offset, %1").arg(units), label_style, Align::centre,
                90);
    const double across = tick_step(f_.px_per_m, 8, unit);
    for (const double y : ticks(f_.offset_m(f_.plan.bottom()), f_.offset_m(f_.plan.top()), across)) {
      const double py = f_.above(0, y).y();
      if (py < f_.plan.top() + 2 || py > f_.plan.bottom() - 1.5) continue;
      paper_.line({f_.plan.left(), py}, {f_.plan.right(), py}, {0.1, grey});
      paper_.text({f_.plan.left() - 1, py + 0.75}, tick_text(y, across, unit), label_style, Align::right);
    }
    const double along = tick_step(f_.px_per_m, 12, unit);
    for (const double x : ticks(f_.left_station_m, f_.right_station_m(), along)) {
      const double px = f_.px_x(x);
      paper_.line({px, f_.px_z(top)}, {px, f_.elevation.bottom()}, {0.1, grey});
      paper_.line({px, f_.plan.top()}, {px, f_.plan.bottom()}, {0.1, grey});
      const QString words = tick_text(x, along, unit);
      const double half = text_width_mm(words, label_style) / 2;
      if (px - half < f_.ruler.left() || px + half > f_.ruler.right()) continue;
      paper_.text({px, f_.ruler.top() + 4.2}, words, label_style, Align::centre);
    }
    paper_.text({f_.ruler.left() - 1, f_.ruler.top() + 4.2}, tr("station, %1").arg(units), {1.9}, Align::right);
  }

  [[nodiscard]] QPointF at(const PathPoint& p, Pane pane, double sds = 0) const {
    return pane == Pane::plan ? f_.above(p.x_m, p.y_m + sds * p.sd_lateral_m)
                              : f_.side(p.x_m, p.z_m + sds * p.sd_vertical_m);
  }

  void paths(Pane pane) {
    QPolygonF planned;
    for (const PathPoint& p : sheet_.assessment.bore.points) planned << at(p, pane);
    if (points_.size() > 1) {
      for (const double sds : {1.645, 0.674}) {
        QPolygonF band;
        for (const PathPoint& p : points_) band << at(p, pane, sds);
        for (auto p = points_.rbegin(); p != points_.rend(); ++p) band << at(*p, pane, -sds);
        paper_.area(band, colours.band);
      }
    }
    if (planned.size() > 1) paper_.line(planned, {0.3, colours.planned, {2, 1}});
    if (points_.size() < 2) return;
    QPolygonF line;
    for (const PathPoint& p : points_) line << at(p, pane);
    paper_.line(line, {0.5, colours.path});
  }

  void side() {
    const LevelLine& ground = sheet_.crossing.site.ground;
    QPolygonF surface;
    const double from = f_.left_station_m, to = f_.right_station_m();
    surface << f_.side(from, elevation_at(ground, from));
    for (const LevelPoint& p : ground)
      if (p.station_m > from && p.station_m < to) surface << f_.side(p.station_m, p.elevation_m);
    surface << f_.side(to, elevation_at(ground, to));
    paper_.line(surface, {0.5, QColor(0x4a, 0x3a, 0x20)});
    for (const PitShape* pit : {&sheet_.assessment.launch_pit, &sheet_.assessment.exit_pit}) {
      QPolygonF cut;
      for (const LevelPoint& p : pit->section) cut << f_.side(p.station_m, p.elevation_m);
      if (cut.size() > 1) paper_.line(cut, {0.3, Qt::black, {2, 0.8}});
    }
    for (const Utility& u : sheet_.crossing.site.utilities) {
      const SidePlace place = side_place(sheet_, u);
      if (!place.elevation_m || u.path.empty()) continue;
      const double r = std::max(0.7, u.outside_diameter.value_or(Length{0}).m / 2 * f_.px_per_m);
      Stroke stroke = utility_stroke(sheet_.tables, u.kind, 0.4);
      stroke.dash_mm.clear();  // a small circle would fall apart
      paper_.circle(f_.side(place.station_m, *place.elevation_m), r, Qt::white, stroke);
    }
    paths(Pane::elevation);
  }

  void plan() {
    for (const PitShape* pit : {&sheet_.assessment.launch_pit, &sheet_.assessment.exit_pit})
      for (const PlanLine* outline : {&pit->footprint, &pit->floor}) {
        QPolygonF line;
        for (const PlanPoint& p : *outline) line << f_.above(p.x_m, p.y_m);
        if (line.size() < 3) continue;
        line << line.front();
        paper_.line(line, {0.3, Qt::black, outline == &pit->floor ? QList<double>{} : QList<double>{2, 0.8}});
      }
    for (const Utility& u : sheet_.crossing.site.utilities) {
      QPolygonF line;
      for (const PathVertex& v : u.path) line << f_.above(v.x_m, v.y_m);
      if (line.size() > 1) paper_.line(line, utility_stroke(sheet_.tables, u.kind, 0.4));
    }
    paths(Pane::plan);
  }

  void signs(Pane pane) {
    const QRectF& view = pane == Pane::plan ? f_.plan : f_.elevation;
    for (const VisibleLayers& s : shown_) {
      const QPointF place = at(s.at, pane);
      if (view.adjusted(1.5, 1.5, -1.5, -1.5).contains(place)) draw_reading_sign(paper_, s.kind, place);
    }
  }

  /// Number of each reading over the ground, a thin line down to its place.
  void numbers() {
    std::vector<VisibleLayers> order = shown_;
    std::stable_sort(order.begin(), order.end(),
                     [](const VisibleLayers& a, const VisibleLayers& b) { return a.at.x_m < b.at.x_m; });
    const TextStyle style{2, QFont::DemiBold};
    const int rows = static_cast<int>((head_ - sky + 1e-9) / row);
    std::vector<double> taken(static_cast<std::size_t>(rows), f_.elevation.left());
    for (const VisibleLayers& s : order) {
      const double half = text_width_mm(QString::number(s.number), style) / 2 + 0.8, x = f_.px_x(s.at.x_m);
      const double left = f_.elevation.left() + half + 0.5, right = f_.elevation.right() - half - 0.5;
      // The row in which it stands nearest to its place.
      const auto free = std::min_element(taken.begin(), taken.end());
      const double middle = std::clamp(std::max(x, *free + half), left, right);
      if (middle - half < *free - 1e-9 || middle - x > 12) continue;  // no room: the table has it
      const double y = f_.elevation.top() + 1 + row * static_cast<double>(free - taken.begin());
      *free = middle + half;
      places_.take(QRectF(middle - half, y, 2 * half, row));
      paper_.line(QPolygonF{{middle, y + 3.4}, {x, y + row - 0.3}, {x, at(s.at, Pane::elevation).y() - 1}},
                  {0.08, soft});
      paper_.text({middle, y + 2.8}, QString::number(s.number), style, Align::centre);
    }
  }

  void names() {
    const auto write = [&](const QPointF& place, const QString& words, const QRectF& view) {
      if (!view.adjusted(1, 1, -1, -1).contains(place)) return;
      const double w = text_width_mm(words, label_style);
      std::vector<QPointF> candidates;
      for (const double dy : {-1.4, 3.2, -4.6, 6.4})
        for (const double dx : {1.2, -w - 1.2}) candidates.push_back(place + QPointF(dx, dy));
      std::erase_if(candidates, [&](const QPointF& c) {
        return !view.adjusted(0.6, 0.6, -0.6, -0.6).contains(text_box(c, words, label_style));
      });
      places_.label(paper_, candidates, words, label_style);
    };
    if (!points_.empty()) {
      const PathPoint& nose = points_.back();
      const bool out = built_.day.how == EndHow::arrived && !arrival_doubted(sheet_.crossing, built_.record);
      const QString what = out ? tr("came out") : tr("furthest");
      write(at(nose, Pane::elevation), what, f_.elevation);
      write(at(nose, Pane::plan), what, f_.plan);
    }
    for (const Utility& u : sheet_.crossing.site.utilities) {
      if (u.path.empty()) continue;
      const SidePlace place = side_place(sheet_, u);
      if (place.elevation_m) write(f_.side(place.station_m, *place.elevation_m), utility_name(u), f_.elevation);
      for (const PathVertex& v : {u.path.back(), u.path.front()}) {
        const QPointF end = f_.above(v.x_m, v.y_m);
        const QPointF held(end.x(), std::clamp(end.y(), f_.plan.top() + 5.0, f_.plan.bottom() - 3.0));
        if (end.y() != held.y() && u.path.size() == 2 && std::abs(u.path[0].x_m - u.path[1].x_m) > 0.5) continue;
        write(held, utility_name(u), f_.plan);
        break;
      }
    }
  }

  Paper paper_;
  const AsBuilt& built_;
  const Sheet& sheet_;
  QRectF area_;
  std::vector<PathPoint> points_;
  std::vector<VisibleLayers> shown_;
  Frame f_;
  double head_ = 0;
  Places places_{area_};
};

}  // namespace

Result<double> draw_as_built(Page& page, const AsBuilt& built, const QRectF& area) {
  return Drawing(page, built, area).draw();
}

bool draw_reading_sign(Paper& paper, ReadingKind kind, const QPointF& at) {
  const auto polygon = [&](std::initializer_list<QPointF> corners, const QColor& fill, const QColor& line) {
    QPolygonF shape;
    for (const QPointF& c : corners) shape << at + c;
    paper.area(shape, fill, {0.2, line});
  };
  switch (kind) {
    case ReadingKind::start:
    case ReadingKind::mark:
      paper.line(at - QPointF(0, 0.9), at + QPointF(0, 0.9), {0.25, colours.path});
      return true;
    case ReadingKind::grade:
    case ReadingKind::heading:
      polygon({{0, -1}, {0.9, 0.7}, {-0.9, 0.7}}, Qt::white, colours.path);
      return true;
    case ReadingKind::fix:
      paper.circle(at, 0.9, colours.path, {0.2, Qt::white});
      return true;
    case ReadingKind::peg:
      polygon({{-0.8, -0.8}, {0.8, -0.8}, {0.8, 0.8}, {-0.8, 0.8}}, Qt::white, colours.path);
      return true;
    case ReadingKind::danger:
    case ReadingKind::stop:
      paper.line(at + QPointF(-0.9, -0.9), at + QPointF(0.9, 0.9), {0.35, colours.stop});
      paper.line(at + QPointF(-0.9, 0.9), at + QPointF(0.9, -0.9), {0.35, colours.stop});
      return true;
    case ReadingKind::back:
      polygon({{-1.3, 0}, {0.6, -0.9}, {0.6, 0.9}}, colours.stop, colours.stop);
      return true;
    case ReadingKind::arrival:
    case ReadingKind::end:
      paper.circle(at, 1.3, {}, {0.35, colours.path});
      return true;
    case ReadingKind::go:
    case ReadingKind::pressure:
    case ReadingKind::done:
    case ReadingKind::note:
      break;
  }
  return false;
}

}  // namespace burrow
