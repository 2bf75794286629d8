/// Texts within the side elevation, each where it finds room: what the zones want, the names of strata, water and
/// neutral cover at the right edge, marks of what lies out of view, notes of the layers on demand.

#include <QFontMetricsF>
#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/along.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "burrow/language/say.h"
#include "taken_places.h"

namespace burrow {

namespace {

QRectF at_top_left(double x, double y, const QSizeF& size) {
  return {QPointF(x, y), size};
}

/// Where a text may stand across the pane: at the right edge first, then beside the pits, then at the left.
std::vector<double> places_across(const Scene& scene, double wide) {
  const Frame& f = scene.frame;
  std::vector<double> all{f.elevation.right() - wide - text_edge_px};
  const PitShape &launch = scene.assessment.launch_pit, &exit = scene.assessment.exit_pit;
  if (exit.section.size() >= 3) all.push_back(f.px_x(exit.face_station_m) - wide - 2 * text_edge_px);
  if (launch.section.size() >= 3) all.push_back(f.px_x(launch.face_station_m) + 2 * text_edge_px);
  all.push_back(f.elevation.left() + text_edge_px);
  return all;
}

double top_of(const Crossing& crossing, std::size_t stratum, double station) {
  const double ground = elevation_at(crossing.site.ground, station);
  const Stratum& s = crossing.site.strata[stratum];
  return stratum == 0 || !s.top || s.top->empty() ? ground : std::min(ground, elevation_at(*s.top, station));
}

/// Inside its own layer, from its top down.
QRectF place_in_layer(const Scene& scene, const TakenPlaces& taken, std::size_t stratum, const QSizeF& size) {
  const Frame& f = scene.frame;
  const auto& strata = scene.crossing.site.strata;
  const QRectF area = f.elevation.adjusted(text_edge_px / 2, 3, -text_edge_px / 2, -3);
  for (const double x : places_across(scene, size.width())) {
    double top = area.top(), bottom = area.bottom();
    for (const double px : {x, x + size.width()}) {
      const double station = f.station_m(px);
      top = std::max(top, f.px_z(top_of(scene.crossing, stratum, station)));
      if (stratum + 1 < strata.size()) bottom = std::min(bottom, f.px_z(top_of(scene.crossing, stratum + 1, station)));
    }
    for (double y = top + 3; y + size.height() + 2 <= bottom; y += scene.style.text * 0.5) {
      const QRectF box = at_top_left(x, y, size);
      if (area.contains(box) && taken.free(box)) return box;
    }
  }
  return {};
}

QString stratum_words(const Scene& scene, const Stratum& stratum) {
  const QString how = stratum.known.value == StratumEvidence::seen       ? QObject::tr("seen")
                      : stratum.known.value == StratumEvidence::borehole ? QObject::tr("borehole")
                                                                         : QObject::tr("a guess");
  const SoilClass* soil = find_soil(scene.tables, stratum.soil);
  return (soil ? text_from(soil->name) : text_from(stratum.soil)) + QStringLiteral(" · ") + how;
}

/// Beside a line that crosses the pane: over it, else under it, from the right.
QRectF place_along(const Scene& scene, const TakenPlaces& taken, const QPolygonF& line, const QSizeF& size) {
  if (line.size() < 2) return {};
  const QRectF area = scene.frame.elevation.adjusted(3, 3, -3, -3);
  const double first = std::max(line.first().x(), area.left());
  const double last = std::min(line.last().x(), area.right()) - size.width();
  const auto reach = [&](double from, double to) {
    double top = 1e300, bottom = -1e300;
    for (qsizetype i = 1; i < line.size(); ++i) {
      const QPointF &a = line[i - 1], &b = line[i];
      if (b.x() < from || a.x() > to || !(b.x() > a.x())) continue;
      for (const double x : {std::max(from, a.x()), std::min(to, b.x())}) {
        const double y = a.y() + (x - a.x()) / (b.x() - a.x()) * (b.y() - a.y());
        top = std::min(top, y);
        bottom = std::max(bottom, y);
      }
    }
    return std::pair(top, bottom);
  };
  for (const bool over : {true, false})
    for (double x = last; x >= first; x -= scene.style.text) {
      const auto [top, bottom] = reach(x, x + size.width());
      if (top > bottom) continue;
      const QRectF box = at_top_left(x, over ? top - size.height() - 2 : bottom + 2, size);
      if (area.contains(box) && taken.free(box)) return box;
    }
  return {};
}

QPolygonF water_line(const Scene& scene) {
  QPolygonF line;
  const auto& water = scene.crossing.site.water;
  if (!water || water->empty()) return line;
  const Frame& f = scene.frame;
  line << f.side(f.left_station_m, elevation_at(*water, f.left_station_m));
  for (const LevelPoint& p : *water)
    if (p.station_m > f.left_station_m && p.station_m < f.right_station_m()) line << f.side(p.station_m, p.elevation_m);
  return line << f.side(f.right_station_m(), elevation_at(*water, f.right_station_m()));
}

/// The longest piece of the neutral line that has a level.
QPolygonF neutral_piece(const Scene& scene) {
  QPolygonF longest, piece;
  const auto take = [&] {
    if (piece.size() > longest.size()) longest = piece;
    piece.clear();
  };
  for (const NeutralPoint& p : scene.assessment.neutral_line) {
    if (p.elevation_m)
      piece << scene.frame.side(p.station_m, *p.elevation_m);
    else
      take();
  }
  take();
  return longest;
}

/// The lower edge of a zone: the ground line, that much deeper.
QPolygonF lower_edge(const Scene& scene, const RuleZone& zone) {
  const LevelLine& ground = scene.crossing.site.ground;
  QPolygonF line;
  const auto add = [&](double x) { line << scene.frame.side(x, elevation_at(ground, x) - *zone.cover_m); };
  add(zone.from_m);
  for (const LevelPoint& p : ground)
    if (p.station_m > zone.from_m && p.station_m < zone.to_m) add(p.station_m);
  add(zone.to_m);
  return line;
}

/// Inside its own hatch, over its lower edge, as near to the middle as it finds room.
QRectF place_in_zone(const Scene& scene, const TakenPlaces& taken, const QPolygonF& lower, const QSizeF& size) {
  const QRectF& pane = scene.frame.elevation;
  const double first = std::max(lower.first().x(), pane.left()) + 2;
  const double last = std::min(lower.last().x(), pane.right()) - size.width() - 2;
  if (last < first) return {};
  double y = 1e300;
  for (const QPointF& p : lower) y = std::min(y, p.y());
  std::vector<QRectF> places;
  const double middle = (first + last) / 2;
  for (double away = 0; away <= (last - first) / 2; away += scene.style.text)
    for (const double x : {middle + away, middle - away}) places.push_back(at_top_left(x, y - size.height() - 2, size));
  return taken.first_free(places, pane);
}

/// What to dig, inside the pit; the depth of the axis stands beside it.
PlacedText place_dig(const Scene& scene, const TakenPlaces& taken, const PitShape& pit) {
  if (pit.section.size() < 3 || !(pit.depth_m > 0)) return {};
  QPolygonF cut;
  for (const LevelPoint& p : pit.section) cut << scene.frame.side(p.station_m, p.elevation_m);
  const QString words = QObject::tr("dig %1").arg(text_from(format(pit.depth_m, Dimension::length, scene.style.units)));
  const QSizeF size = size_of(TextRole::pit, words, scene.style);
  const QRectF box = cut.boundingRect();
  std::vector<QRectF> places;
  for (const double share : {0.5, 0.3, 0.7})
    for (double y = box.top() + 4; y + size.height() < box.bottom(); y += scene.style.text * 0.5)
      places.push_back(at_top_left(box.left() + share * box.width() - size.width() / 2, y, size));
  return {TextRole::pit, words, taken.first_free(places, scene.frame.elevation), {}, {}};
}

}  // namespace

std::vector<PlacedText> place_zone_texts(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  if (!scene.layers.zones || scene.crossing.site.ground.empty()) return all;
  for (const RuleZone& zone : scene.assessment.zones) {
    if (!zone.cover_m) continue;
    const QPolygonF lower = lower_edge(scene, zone);
    const QString number = text_from(format(*zone.cover_m, Dimension::length, scene.style.units));
    for (const QString& words : {QObject::tr("%1 cover required").arg(number), number}) {
      const QRectF box = place_in_zone(scene, taken, lower, size_of(TextRole::zone, words, scene.style));
      if (box.isEmpty()) continue;
      keep_text(all, taken, {TextRole::zone, words, box, {}, zone.id});
      break;
    }
  }
  return all;
}

std::vector<PlacedText> place_edge_names(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  if (scene.crossing.site.ground.empty()) return all;
  for (std::size_t i = 0; i < scene.crossing.site.strata.size(); ++i) {
    const Stratum& stratum = scene.crossing.site.strata[i];
    const QString words = stratum_words(scene, stratum);
    const QRectF box = place_in_layer(scene, taken, i, size_of(TextRole::stratum, words, scene.style));
    keep_text(all, taken, {TextRole::stratum, words, box, {}, stratum.id});
  }
  if (scene.layers.neutral_line) {
    const QString words = QObject::tr("neutral cover");
    keep_text(all, taken,
              {TextRole::neutral,
               words,
               place_along(scene, taken, neutral_piece(scene), size_of(TextRole::neutral, words, scene.style)),
               {},
               {}});
  }
  const QString water = QObject::tr("water table");
  keep_text(all, taken,
            {TextRole::water,
             water,
             place_along(scene, taken, water_line(scene), size_of(TextRole::water, water, scene.style)),
             {},
             {}});
  return all;
}

/// Utilities whose mark lies over or under what is shown: an arrow at the edge, with letter and level.
std::vector<PlacedText> place_away_marks(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  const Frame& f = scene.frame;
  for (const Utility& utility : scene.crossing.site.utilities) {
    const UtilityMark mark = utility_mark(utility);
    if (utility.path.empty() || !mark.depth_known) continue;
    const QPointF at = f.side(mark.station_m, mark.elevation_m);
    if (at.x() < f.elevation.left() || at.x() > f.elevation.right() || f.elevation.contains(at)) continue;
    const bool below = at.y() > f.elevation.center().y();
    const QString words =
        QStringLiteral("%1 %2 %3")
            .arg(utility_letter(scene, utility.kind), below ? QStringLiteral("↓") : QStringLiteral("↑"),
                 text_from(format(mark.elevation_m, Dimension::station, scene.style.units)));
    const QSizeF size = size_of(TextRole::away, words, scene.style);
    const double y = below ? f.elevation.bottom() - size.height() - 3 : f.elevation.top() + 3;
    std::vector<QRectF> places;
    for (const double aside : {0.0, 0.6, -0.6, 1.2, -1.2})
      places.push_back(at_top_left(at.x() - size.width() / 2 + aside * size.width(), y, size));
    keep_text(all, taken, {TextRole::away, words, taken.first_free(places, f.elevation), {}, utility.id});
  }
  return all;
}

std::vector<PlacedText> place_digs(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  for (const PitShape* pit : {&scene.assessment.launch_pit, &scene.assessment.exit_pit})
    keep_text(all, taken, place_dig(scene, taken, *pit));
  return all;
}

/// The shares of the bands at the exit, and where the tool would stop.
std::vector<PlacedText> place_side_notes(const Scene& scene, TakenPlaces& taken) {
  std::vector<PlacedText> all;
  const Frame& f = scene.frame;
  const double text = scene.style.text;
  if (const auto stop = scene.assessment.refusal_station_m)
    if (const auto at = path_point_at(scene.assessment, *stop)) {
      const QString words = QObject::tr("the tool would stop here");
      const QSizeF size = size_of(TextRole::stop, words, scene.style);
      const QPointF end = f.side(at->x_m, at->z_m);
      const std::array<QRectF, 4> places{at_top_left(end.x() + text * 0.6, end.y() + text * 0.5, size),
                                         at_top_left(end.x() - size.width() - text * 0.6, end.y() + text * 0.5, size),
                                         at_top_left(end.x() + text * 0.6, end.y() - text * 0.5 - size.height(), size),
                                         at_top_left(end.x() - size.width() / 2, end.y() + text * 1.4, size)};
      keep_text(all, taken, {TextRole::stop, words, taken.first_free(places, f.elevation), {}, {}});
    }
  const auto& points = scene.assessment.bore.points;
  if (points.size() < 2) return all;
  const PathPoint& end = points.back();
  const double between = band_step_sds * end.sd_vertical_m * f.px_per_m * f.exaggeration;
  if (between < text * 1.1 || scene.layers.tried) return all;  // the miss is told there
  for (const BandShare& band : band_shares) {
    const QString words = QString::fromLatin1(band.name);
    const QSizeF size = size_of(TextRole::band, words, scene.style);
    const QPointF foot = f.side(end.x_m, end.z_m - band.sds * end.sd_vertical_m);
    const QRectF box = at_top_left(foot.x() + text * 0.7, foot.y() - size.height() / 2, size);
    if (f.elevation.contains(box) && taken.free(box)) keep_text(all, taken, {TextRole::band, words, box, foot, {}});
  }
  return all;
}

}  // namespace burrow
