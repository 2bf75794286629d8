#include "burrow/drawing/snap.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "burrow/search/just_clear.h"

namespace burrow {

namespace {

constexpr std::size_t most_clear_lines = 4;  // the nearest to their limit: each takes a few assessments

QString name_of(const std::string& name, std::string_view otherwise) {
  return text_from(name.empty() ? otherwise : std::string_view(name));
}

class Lines {
 public:
  void add(Pane pane, bool upright, double value, const QString& reason, const std::string& clear_of = {}) {
    all.push_back({pane, upright, value, reason, clear_of});
  }
  /// A station means the same in both views.
  void add_station(double value, const QString& reason) {
    for (const Pane pane : {Pane::elevation, Pane::plan}) add(pane, true, value, reason);
  }
  std::vector<SnapLine> all;
};

void add_edges(Lines& lines, const Crossing& crossing) {
  for (const SurfaceFeature& feature : crossing.site.surface) {
    const QString reason = QObject::tr("edge of %1").arg(name_of(feature.name, translated_word(feature.kind)));
    if (feature.from) lines.add_station(feature.from->m, reason);
    if (feature.to) lines.add_station(feature.to->m, reason);
  }
  for (const Boundary& boundary : crossing.site.boundaries) {
    for (std::size_t i = 1; i < boundary.line.size(); ++i) {
      const PlanPoint &a = boundary.line[i - 1], &b = boundary.line[i];
      if ((a.y_m > 0) == (b.y_m > 0)) continue;
      lines.add_station(a.x_m + a.y_m / (a.y_m - b.y_m) * (b.x_m - a.x_m),
                        QObject::tr("boundary %1").arg(name_of(boundary.name, boundary.id)));
    }
  }
}

/// The utilities whose gap is nearest to the gap wanted.
std::vector<const UtilityAnswer*> nearest_to_limit(const Assessment& assessment) {
  std::vector<const UtilityAnswer*> near;
  for (const UtilityAnswer& u : assessment.utilities)
    if (u.separation_m && u.required_m) near.push_back(&u);
  std::sort(near.begin(), near.end(), [](const UtilityAnswer* a, const UtilityAnswer* b) {
    return std::abs(*a->separation_m - *a->required_m) < std::abs(*b->separation_m - *b->required_m);
  });
  if (near.size() > most_clear_lines) near.resize(most_clear_lines);
  return near;
}

/// "gas main: 0.76 m clear, the gap required is kept".
QString clear_words(const QString& name, const ClearPlace& place, UnitSystem units) {
  return QObject::tr("%1: %2 clear, the gap required is kept")
      .arg(name, text_from(format(place.gap_m, Dimension::length, units)));
}

const char* pointer_of(const ItemRef& part, bool upright, Pane pane) {
  if (part.kind == ItemKind::exit) return upright ? "/bore/exit/station_m" : "/bore/exit/offset_m";
  if (upright) return "/bore/launch/station_m";
  return pane == Pane::plan ? "/bore/launch/offset_m" : "/bore/launch/elevation_m";
}

double* station_of(Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::launch) return &crossing.bore.launch.station.m;
  return part.kind == ItemKind::exit ? &crossing.bore.exit.station.m : nullptr;
}

/// Height of the part that the view shows, and how to set it.
std::optional<double> up_of(const Crossing& crossing, const ItemRef& part, Pane pane) {
  const Launch& launch = crossing.bore.launch;
  if (part.kind == ItemKind::launch) return pane == Pane::plan ? launch.offset->m : launch.elevation.m;
  if (part.kind == ItemKind::exit)
    return pane == Pane::plan ? std::optional(crossing.bore.exit.offset->m) : std::nullopt;
  const Utility* utility = part.kind == ItemKind::utility ? find_by_id(crossing.site.utilities, part.id) : nullptr;
  if (utility && pane == Pane::elevation)
    if (const UtilityMark mark = utility_mark(*utility); mark.depth_known) return mark.elevation_m;
  return std::nullopt;
}

void set_up(Crossing& crossing, const ItemRef& part, Pane pane, double to) {
  if (part.kind == ItemKind::exit) {
    crossing.bore.exit.offset.set(Length{to});
  } else if (part.kind != ItemKind::utility) {
    if (pane == Pane::plan)
      crossing.bore.launch.offset.set(Length{to});
    else
      crossing.bore.launch.elevation.m = to;
  } else if (Utility* utility = find_by_id(crossing.site.utilities, part.id)) {
    const double by = to - utility_mark(*utility).elevation_m;
    for (PathVertex& v : utility->path)
      if (v.z_m) *v.z_m += by;
  }
}

const SnapLine* nearest(const std::vector<SnapLine>& lines, Pane pane, bool upright, double at, double reach) {
  const SnapLine* best = nullptr;
  for (const SnapLine& line : lines) {
    if (line.pane != pane || line.upright != upright || !(std::abs(line.value - at) <= reach)) continue;
    if (!best || std::abs(line.value - at) < std::abs(best->value - at)) best = &line;
  }
  return best;
}

}  // namespace

std::vector<SnapLine> snap_lines(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                 const ItemRef& part, UnitSystem units) {
  Lines lines;
  const Launch& launch = crossing.bore.launch;
  const Exit& exit = crossing.bore.exit;
  if (part.kind == ItemKind::launch) {
    add_edges(lines, crossing);
    lines.add(Pane::plan, false, 0, QObject::tr("on the line"));
    lines.add(Pane::plan, false, exit.offset->m, QObject::tr("straight across from the exit"));
    for (const UtilityAnswer* u : nearest_to_limit(assessment))
      if (const auto place = shift_limits_kept(crossing, tables, assessment, u->id, Shifted::launch))
        lines.add(Pane::elevation, false, launch.elevation.m + place->shift_m,
                  clear_words(name_of(u->name, u->id), *place, units), u->id);
  } else if (part.kind == ItemKind::exit) {
    add_edges(lines, crossing);
    lines.add(Pane::plan, false, 0, QObject::tr("on the line"));
    lines.add(Pane::plan, false, launch.offset->m, QObject::tr("straight across from the launch"));
  } else if (part.kind == ItemKind::utility && part.index < 0) {
    for (const Utility& u : crossing.site.utilities) {
      const UtilityMark mark = utility_mark(u);
      if (!mark.depth_known) continue;
      if (u.id != part.id) {
        lines.add(Pane::elevation, false, mark.elevation_m, QObject::tr("level with %1").arg(name_of(u.name, u.id)));
        continue;
      }
      for (const UtilityAnswer& answer : assessment.utilities)
        if (answer.id == u.id && answer.required_m)
          if (const auto place = shift_limits_kept(crossing, tables, assessment, u.id, Shifted::utility))
            lines.add(Pane::elevation, false, mark.elevation_m + place->shift_m,
                      clear_words(name_of(u.name, u.id), *place, units), u.id);
    }
  }
  return std::move(lines.all);
}

std::vector<SnapLine> snap(Crossing& moved, const std::vector<SnapLine>& lines, const ItemRef& part, Pane pane,
                           double reach_along_m, double reach_up_m) {
  std::vector<SnapLine> holding;
  const bool utility = part.kind == ItemKind::utility;
  if (double* station = station_of(moved, part); station && !member_locked(moved, pointer_of(part, true, pane))) {
    const double low = part.kind == ItemKind::exit ? moved.bore.launch.station.m + 0.5 : -1e5;
    const double high = part.kind == ItemKind::launch ? moved.bore.exit.station.m - 0.5 : 1e5;
    if (const SnapLine* line = nearest(lines, pane, true, *station, reach_along_m);
        line && line->value >= low && line->value <= high) {
      *station = line->value;
      holding.push_back(*line);
    }
  }
  if (!utility && member_locked(moved, pointer_of(part, false, pane))) return holding;
  if (const std::optional<double> up = up_of(moved, part, pane))
    if (const SnapLine* line = nearest(lines, pane, false, *up, reach_up_m)) {
      set_up(moved, part, pane, line->value);
      holding.push_back(*line);
    }
  return holding;
}

void paint_snaps(QPainter& painter, const Scene& scene) {
  const Frame& f = scene.frame;
  const Style& style = scene.style;
  painter.save();
  for (const SnapLine& line : scene.focus.snaps) {
    const QRectF& pane = line.pane == Pane::plan ? f.plan : f.elevation;
    painter.setClipRect(pane);
    painter.setPen(QPen(style.theme.focus, style.hair, Qt::DotLine));
    if (line.upright) {
      const double x = f.px_x(line.value);
      painter.drawLine(QPointF(x, pane.top()), QPointF(x, pane.bottom()));
    } else {
      const double y = line.pane == Pane::plan ? f.px_y(line.value) : f.px_z(line.value);
      painter.drawLine(QPointF(pane.left(), y), QPointF(pane.right(), y));
    }
  }
  painter.restore();
}

}  // namespace burrow
