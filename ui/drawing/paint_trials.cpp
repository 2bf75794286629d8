/// The paths of the random trials, thin in both views, and where those ended that did not arrive.

#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/drawing/scene.h"
#include "burrow/trials/trials.h"

namespace burrow {

namespace {

/// Points nearer than this to the last one drawn are left out: 200 paths are many lines.
constexpr double least_px = 3;

bool shows_cloud(const Scene& scene) {
  return scene.layers.cloud && scene.layers.trials && !scene.layers.trials->paths.empty();
}

QPointF place(const Frame& f, const Point3& p, Pane pane) {
  return pane == Pane::plan ? f.above(p.x_m, p.y_m) : f.side(p.x_m, p.z_m);
}

const QRectF& pane_of(const Frame& f, Pane pane) {
  return pane == Pane::plan ? f.plan : f.elevation;
}

bool is_marked(TrialEnd end) {
  return end == TrialEnd::contact || end == TrialEnd::daylight || end == TrialEnd::refused;
}

/// A cross where it touches something, a triangle where it comes out, a square where it stops.
void paint_end(QPainter& painter, const Scene& scene, TrialEnd end, const QPointF& at) {
  const Style& style = scene.style;
  const Theme& theme = style.theme;
  const bool current = scene.layers.trials_current;
  const double r = style.text * 0.32;
  painter.setBrush(current ? theme.field : theme.paper);
  switch (end) {
    case TrialEnd::contact:
      for (const bool under : {true, false}) {
        painter.setPen(QPen(under     ? theme.field
                            : current ? theme.stop
                                      : theme.ghost,
                            style.hair * (under ? 3.4 : 1.8)));
        painter.drawLine(at + QPointF(-r, -r), at + QPointF(r, r));
        painter.drawLine(at + QPointF(-r, r), at + QPointF(r, -r));
      }
      break;
    case TrialEnd::daylight:
      painter.setPen(QPen(current ? theme.ground : theme.ghost, style.hair * 1.5));
      painter.drawPolygon(
          QPolygonF(QList<QPointF>{at + QPointF(0, -1.3 * r), at + QPointF(1.2 * r, r), at + QPointF(-1.2 * r, r)}));
      break;
    case TrialEnd::refused:
      painter.setPen(QPen(current ? theme.ink : theme.ghost, style.hair * 1.5));
      painter.drawRect(QRectF(at.x() - 0.85 * r, at.y() - 0.85 * r, 1.7 * r, 1.7 * r));
      break;
    case TrialEnd::arrived:
    case TrialEnd::lost:
      break;
  }
}

/// How often one end is among the paths drawn.
std::size_t shown_ends(const Trials& trials, TrialEnd end) {
  const std::size_t n = std::min(trials.paths.size(), trials.outcomes.size());
  return static_cast<std::size_t>(std::count_if(trials.outcomes.begin(),
                                                trials.outcomes.begin() + static_cast<std::ptrdiff_t>(n),
                                                [&](const TrialOutcome& o) { return o.end == end; }));
}

/// What the key says: how many paths are drawn, then each kind of end that is among them.
struct Entry {
  TrialEnd end;
  QString text;
};
std::vector<Entry> entries_of(const Scene& scene) {
  const Trials& trials = *scene.layers.trials;
  const int all = static_cast<int>(trials.count);
  const QString shown_text = scene.layers.trials_current
                                 ? QObject::tr("%1 of %n runs", nullptr, all)
                                 : QObject::tr("runs of an earlier layout, %1 of %n", nullptr, all);
  std::vector<Entry> entries{{TrialEnd::arrived, shown_text.arg(trials.paths.size())}};
  const std::array<std::pair<TrialEnd, QString>, 3> known{std::pair{TrialEnd::contact, QObject::tr("touches")},
                                                          std::pair{TrialEnd::daylight, QObject::tr("comes out")},
                                                          std::pair{TrialEnd::refused, QObject::tr("is stopped")}};
  for (const auto& [end, name] : known)
    if (const std::size_t n = shown_ends(trials, end); n > 0)
      entries.push_back({end, name + QStringLiteral(" ") + QString::number(n)});
  return entries;
}

constexpr double mark_room = 1.2;  ///< in text heights

double after(const Entry& entry, double text) {
  return text * (is_marked(entry.end) ? mark_room + 0.8 : 0.8);
}

}  // namespace

QRectF cloud_area(const Scene& scene, Pane pane) {
  if (!shows_cloud(scene)) return {};
  double left = 1e300, right = -1e300, top = 1e300, bottom = -1e300;
  for (const auto& path : scene.layers.trials->paths)
    for (const Point3& p : path) {
      const QPointF at = place(scene.frame, p, pane);
      left = std::min(left, at.x());
      right = std::max(right, at.x());
      top = std::min(top, at.y());
      bottom = std::max(bottom, at.y());
    }
  if (!(left <= right)) return {};
  const double edge = scene.style.text;
  const QRectF area = QRectF(QPointF(left, top), QPointF(right, bottom)).adjusted(-edge, -edge, edge, edge);
  // Whole pixels, so that what is kept as pixels is copied without blurring.
  return QRectF(area.intersected(pane_of(scene.frame, pane)).toAlignedRect());
}

void paint_cloud(QPainter& painter, const Scene& scene, Pane pane) {
  if (!shows_cloud(scene)) return;
  const Trials& trials = *scene.layers.trials;
  const Theme& theme = scene.style.theme;
  QColor colour = scene.layers.trials_current ? theme.band : theme.ghost;
  colour.setAlpha(scene.layers.trials_current ? 40 : 20);
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(colour, scene.style.hair));
  QPolygonF line;
  for (const auto& path : trials.paths) {
    line.clear();
    for (std::size_t i = 0; i < path.size(); ++i) {
      const QPointF at = place(scene.frame, path[i], pane);
      if (line.isEmpty() || i + 1 == path.size() || at.x() - line.last().x() >= least_px) line << at;
    }
    painter.drawPolyline(line);
  }
  for (std::size_t i = 0; i < std::min(trials.paths.size(), trials.outcomes.size()); ++i) {
    const TrialOutcome& o = trials.outcomes[i];
    if (is_marked(o.end))
      paint_end(painter, scene, o.end, place(scene.frame, {o.station_m, o.offset_m, o.elevation_m}, pane));
  }
}

QRectF cloud_key_box(const Scene& scene) {
  if (!shows_cloud(scene)) return {};
  const double text = scene.style.text;
  const QFontMetricsF metrics(drawing_font(text * 0.92));
  double width = text * 0.4;
  for (const Entry& e : entries_of(scene)) width += metrics.horizontalAdvance(e.text) + after(e, text);
  const QRectF& pane = scene.frame.elevation;
  const double left = std::max(pane.left() + text * 0.4, pane.right() - width - text * 0.4);
  // Above the chips at the corner.
  return {left, pane.bottom() - text * 2.9 - metrics.ascent(), width, metrics.height()};
}

void paint_cloud_key(QPainter& painter, const Scene& scene) {
  if (!shows_cloud(scene)) return;
  const Style& style = scene.style;
  const double text = style.text;
  painter.setFont(drawing_font(text * 0.92));
  const QFontMetricsF metrics(painter.font());
  const QRectF box = cloud_key_box(scene);
  QColor ground = style.theme.field;
  ground.setAlpha(225);
  painter.fillRect(box, ground);
  double x = box.left() + text * 0.4;
  const double y = box.top() + metrics.ascent();
  for (const Entry& e : entries_of(scene)) {
    if (is_marked(e.end)) {
      paint_end(painter, scene, e.end, QPointF(x + text * 0.5, y - metrics.ascent() * 0.36));
      x += mark_room * text;
    }
    painter.setPen(style.theme.ink_soft);
    painter.drawText(QPointF(x, y), e.text);
    x += metrics.horizontalAdvance(e.text) + text * 0.8;
  }
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
