#include "burrow/drawing/dimension_lines.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/pit_edges.h"
#include "layout_of_dimensions.h"

namespace burrow {

namespace {

constexpr std::size_t most_covers = 3;

/// The part of an upright or level line that the pane shows.
std::optional<QLineF> within(const QRectF& pane, QPointF a, QPointF b) {
  if (std::abs(a.x() - b.x()) < std::abs(a.y() - b.y())) {
    if (a.x() < pane.left() || a.x() > pane.right()) return std::nullopt;
    a.setY(std::clamp(a.y(), pane.top(), pane.bottom()));
    b.setY(std::clamp(b.y(), pane.top(), pane.bottom()));
  } else {
    if (std::min(a.y(), b.y()) < pane.top() || std::max(a.y(), b.y()) > pane.bottom()) return std::nullopt;
    a.setX(std::clamp(a.x(), pane.left(), pane.right()));
    b.setX(std::clamp(b.x(), pane.left(), pane.right()));
  }
  if (a == b) return std::nullopt;
  return QLineF(a, b);
}

/// The selected one, that of the selected finding, else that of the worst finding about a clear gap.
std::string measured_utility(const Scene& scene) {
  if (scene.focus.picked.kind == ItemKind::utility) return scene.focus.picked.id;
  const std::vector<Finding>& findings = scene.assessment.findings;
  if (scene.focus.finding >= 0 && static_cast<std::size_t>(scene.focus.finding) < findings.size())
    if (const std::string& subject = findings[static_cast<std::size_t>(scene.focus.finding)].subject;
        answer_for(scene, subject))
      return subject;
  const auto worst = std::find_if(findings.begin(), findings.end(),
                                  [](const Finding& f) { return f.code == "utility.separation" && !f.muted; });
  return worst == findings.end() ? std::string() : worst->subject;
}

}  // namespace

DimensionLayout::DimensionLayout(const Scene& scene, TakenPlaces& side, TakenPlaces& plan)
    : picture_(scene),
      f_(scene.frame),
      text_(scene.style.text),
      metrics_(drawing_font(text_ * 0.92)),
      side_(side),
      plan_(plan) {}

bool DimensionLayout::far_away() const {
  const Bore& bore = picture_.crossing.bore;
  return (bore.exit.station.m - bore.launch.station.m) * f_.px_per_m < text_ * 24;
}

void DimensionLayout::add_first() {
  if (!picture_.layers.dimensions || !picture_.style.handles) return;
  separation();  // what is selected comes first
  floor("launch");
  floor("exit");
  bore_length();
  if (far_away()) return;
  depth(true);
  depth(false);
}

/// Adds the line if it is long enough and its label finds room; `words` with %1 for the number, tried before the
/// number alone.
void DimensionLayout::add(DimensionLine line, const QString& words) {
  const Crossing& crossing = picture_.crossing;
  const std::optional<double> value = measure_value(crossing, picture_.assessment, line.measure);
  if (!value) return;
  line.value_m = *value;
  line.lock = measure_lock(crossing, line.measure);
  const QRectF& pane = line.pane == Pane::plan ? f_.plan : f_.elevation;
  TakenPlaces& taken = line.pane == Pane::plan ? plan_ : side_;
  const std::optional<QLineF> seen = within(pane, line.from, line.to);
  if (!seen) return;
  const bool upright = std::abs(line.to.x() - line.from.x()) < std::abs(line.to.y() - line.from.y());
  if (std::hypot(line.to.x() - line.from.x(), line.to.y() - line.from.y()) < text_ * (upright ? 1.7 : 3)) return;
  const QString number = text_from(format(*value, Dimension::length, picture_.style.units));
  // A bare number in a pit would read as what to dig.
  const bool depth = line.measure.kind == MeasureKind::launch_depth || line.measure.kind == MeasureKind::exit_depth;
  for (const QString& shown_text : depth ? QStringList{words.arg(number)} : QStringList{words.arg(number), number}) {
    const QSizeF size(metrics_.of(shown_text) + (line.lock.empty() ? 6 : 6 + text_), metrics_.height());
    if (const std::optional<QRectF> box = room_along(*seen, upright, size, pane, taken)) {
      line.text = shown_text;
      line.label = *box;
      taken.take(*box);
      const double grip = text_ * 0.5;
      taken.take(QRectF(line.to.x() - grip, line.to.y() - grip, 2 * grip, 2 * grip));
      lines_.push_back(line);
      return;
    }
  }
}

/// On the line, then beside it, from its middle outward.
std::optional<QRectF> DimensionLayout::room_along(const QLineF& line, bool upright, const QSizeF& size,
                                                  const QRectF& pane, const TakenPlaces& taken) const {
  const double gap = text_ * 0.25;
  const QPointF aside = upright ? QPointF(size.width() / 2 + gap, 0) : QPointF(0, size.height() / 2 + gap * 0.4);
  const bool on_it = !upright && line.length() > size.width() + text_ * 1.5;
  for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95})
    for (const double side : {0.0, 1.0, -1.0}) {
      if (side == 0.0 && !on_it) continue;
      const QPointF middle = line.pointAt(share) + side * aside;
      const QRectF box(middle.x() - size.width() / 2, middle.y() - size.height() / 2, size.width(), size.height());
      if (!pane.adjusted(2, 2, -2, -2).contains(box)) continue;
      if (taken.free(box.adjusted(-2, -1, 2, 1))) return box;
    }
  return std::nullopt;
}

void DimensionLayout::bore_length() {
  const Crossing& crossing = picture_.crossing;
  const double launch = f_.px_x(crossing.bore.launch.station.m), exit = f_.px_x(crossing.bore.exit.station.m);
  double lowest = std::max(f_.px_z(picture_.assessment.launch_pit.floor_elevation_m),
                           f_.px_z(picture_.assessment.exit_pit.floor_elevation_m));
  for (const PathPoint& p : picture_.assessment.bore.points) lowest = std::max(lowest, f_.px_z(p.z_m));
  const double y = std::min(lowest + text_ * 2.6, f_.elevation.bottom() - text_ * 2.9);
  DimensionLine line;
  line.measure = {MeasureKind::bore_length, {}};
  line.from = {launch, y};
  line.to = {exit, y};
  line.from_foot = {launch, f_.px_z(picture_.assessment.launch_pit.floor_elevation_m)};
  line.to_foot = {exit, f_.px_z(picture_.assessment.exit_pit.floor_elevation_m)};
  line.pull = {f_.px_per_m, 0};
  add(line, QObject::tr("%1 face to face"));
}

/// Beside the pit, away from the bore; inside it where there is no room.
void DimensionLayout::depth(bool launch) {
  const Crossing& crossing = picture_.crossing;
  const PitShape& pit = launch ? picture_.assessment.launch_pit : picture_.assessment.exit_pit;
  const double station = launch ? crossing.bore.launch.station.m : crossing.bore.exit.station.m;
  if (crossing.site.ground.empty() || (!launch && !picture_.assessment.arrival.elevation_m)) return;
  const double ground = f_.px_z(elevation_at(crossing.site.ground, station));
  const double axis = f_.px_z(launch ? crossing.bore.launch.elevation.m : *picture_.assessment.arrival.elevation_m);
  double x = f_.px_x(station) + (launch ? -1 : 1) * text_ * 1.6;
  if (pit.section.size() >= 3)
    x = launch ? f_.px_x(pit.section.front().station_m) - text_ : f_.px_x(pit.section.back().station_m) + text_;
  if (x < f_.elevation.left() + text_ * 0.8 || x > f_.elevation.right() - text_ * 0.8)
    x = f_.px_x(station) + (launch ? -1 : 1) * std::min(text_ * 2.5, 0.35 * pit.floor_length_m * f_.px_per_m);
  DimensionLine line;
  line.measure = {launch ? MeasureKind::launch_depth : MeasureKind::exit_depth, {}};
  line.from = {x, ground};
  line.to = {x, axis};
  line.from_foot = {f_.px_x(station), ground};
  line.to_foot = {f_.px_x(station), axis};
  line.pull = {0, up_px()};
  add(line, QObject::tr("axis %1 deep"));
}

void DimensionLayout::add_covers() {
  if (!picture_.layers.dimensions || !picture_.style.handles || far_away()) return;
  struct Under {
    const SurfaceFeature* feature;
    const PathPoint* least;
  };
  std::vector<Under> all;
  for (const SurfaceFeature& feature : picture_.crossing.site.surface)
    if (feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track)
      if (const PathPoint* least = least_cover_under(picture_.assessment, feature)) all.push_back({&feature, least});
  std::stable_sort(all.begin(), all.end(),
                   [](const Under& a, const Under& b) { return a.least->cover_m < b.least->cover_m; });
  if (all.size() > most_covers) all.resize(most_covers);
  for (const Under& under : all) {
    const double x = f_.px_x(under.least->x_m);
    const double ground = elevation_at(picture_.crossing.site.ground, under.least->x_m);
    DimensionLine line;
    line.measure = {MeasureKind::surface_cover, under.feature->id};
    line.from = line.from_foot = {x, f_.px_z(ground)};
    line.to = line.to_foot = {x, f_.px_z(ground - under.least->cover_m)};
    line.pull = {0, up_px()};
    add(line, QObject::tr("%1 cover"));
  }
}

void DimensionLayout::separation() {
  const std::string measured = measured_utility(picture_);
  if (picture_.layers.tried) return;  // the distance is the layout's, the bore that is drawn another
  const UtilityAnswer* answer = answer_for(picture_, measured);
  if (!answer || !answer->separation_m || !answer->on_bore || !answer->on_utility) return;
  const Point3 &bore = *answer->on_bore, &utility = *answer->on_utility;
  const double up = bore.z_m - utility.z_m;
  const double apart = std::hypot(bore.x_m - utility.x_m, bore.y_m - utility.y_m, up);
  DimensionLine line;
  line.measure = {MeasureKind::separation, answer->id};
  line.from = line.from_foot = f_.side(utility.x_m, utility.z_m);
  line.to = line.to_foot = f_.side(bore.x_m, bore.z_m);
  line.broken = answer->required_m && *answer->separation_m < *answer->required_m;
  if (std::abs(up) > 0.2 * apart) line.pull = {0, -up_px() * apart / up};
  add(line, QObject::tr("%1 clear"));
}

void DimensionLayout::floor(const std::string& pit) {
  if (!pit_picked(picture_, pit)) return;
  const PitShape& shape = pit == "launch" ? picture_.assessment.launch_pit : picture_.assessment.exit_pit;
  if (shape.section.size() < 3) return;
  const double back = shape.bore_side_high ? shape.floor_from_m : shape.floor_to_m;
  const double face = shape.bore_side_high ? shape.floor_to_m : shape.floor_from_m;
  const double outward = shape.bore_side_high ? -1 : 1;
  const double floor = f_.px_z(shape.floor_elevation_m);
  DimensionLine along;
  along.measure = {MeasureKind::floor_length, pit};
  along.from = {f_.px_x(face), floor + text_ * 1.3};
  along.to = {f_.px_x(back), floor + text_ * 1.3};
  along.from_foot = {f_.px_x(face), floor};
  along.to_foot = {f_.px_x(back), floor};
  along.pull = {outward * f_.px_per_m, 0};
  add(along, QObject::tr("%1 floor"));
  double x = f_.px_x(back);
  for (const PlanPoint& p : shape.footprint)
    x = outward < 0 ? std::min(x, f_.px_x(p.x_m)) : std::max(x, f_.px_x(p.x_m));
  x += outward * text_;
  if (x < f_.plan.left() + text_ || x > f_.plan.right() - text_) x = f_.px_x((back + 3 * face) / 4);
  DimensionLine across;
  across.measure = {MeasureKind::floor_width, pit};
  across.pane = Pane::plan;
  across.from = {x, f_.px_y(shape.floor_right_m)};
  across.to = {x, f_.px_y(shape.floor_left_m)};
  across.from_foot = {f_.px_x(back), across.from.y()};
  across.to_foot = {f_.px_x(back), across.to.y()};
  across.pull = {0, -0.5 * f_.px_per_m};  // both edges move, the middle stays
  add(across, QObject::tr("%1 floor"));
}

std::vector<DimensionLine> dimension_lines(const Scene& scene) {
  return scene.labels ? scene.labels->dimensions : place_labels(scene).dimensions;
}

const DimensionLine* dimension_at(const std::vector<DimensionLine>& lines, const QPointF& at, double reach) {
  for (const DimensionLine& line : lines)
    if (std::hypot(line.to.x() - at.x(), line.to.y() - at.y()) <= reach || line.label.contains(at)) return &line;
  return nullptr;
}

double pulled(const DimensionLine& line, const QPointF& by) {
  const double length2 = QPointF::dotProduct(line.pull, line.pull);
  return length2 > 0 ? line.value_m + QPointF::dotProduct(by, line.pull) / length2 : line.value_m;
}

QString why_held(const DimensionLine& line) {
  if (!line.lock.empty())
    return QObject::tr("locked in the file (%1): not dragged; a double-click types it").arg(text_from(line.lock));
  if (line.pull.isNull())
    return QObject::tr("the bore passes beside it: raising it hardly changes the gap; move the line in the plan");
  return {};
}

}  // namespace burrow
