#include "burrow/drawing/sketch.h"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "sketch_result.h"

namespace burrow {

namespace {

constexpr double least_apart_m = 0.01;
constexpr std::size_t longest_typed = 20;

tl::unexpected<Error> missing(Phrase expected) {
  return fail({}, {}, std::move(expected));
}

bool taken(const LevelLine& line, double station_m) {
  return std::any_of(line.begin(), line.end(),
                     [&](const LevelPoint& p) { return std::abs(p.station_m - station_m) < least_apart_m; });
}

}  // namespace

Sketch::Sketch(SketchKind kind, std::string soil) : kind_(kind), soil_(std::move(soil)) {}

bool Sketch::is_stretch() const {
  return kind_ == SketchKind::road || kind_ == SketchKind::track || kind_ == SketchKind::footway ||
         kind_ == SketchKind::drive || kind_ == SketchKind::ditch;
}

bool Sketch::by_corners() const {
  return kind_ == SketchKind::building || kind_ == SketchKind::machine;
}

bool Sketch::drawn_in(Pane pane) const {
  if (points_.empty() && is_stretch()) return pane == Pane::plan || pane == Pane::elevation;
  if (!points_.empty()) return pane == pane_;
  const bool levels =
      kind_ == SketchKind::ground_point || kind_ == SketchKind::water_point || kind_ == SketchKind::stratum;
  return pane == (levels ? Pane::elevation : Pane::plan);
}

std::size_t Sketch::ends_with() const {
  if (kind_ == SketchKind::test_hole || kind_ == SketchKind::ground_point || kind_ == SketchKind::water_point) return 1;
  if (kind_ == SketchKind::machine) return 0;  // its load is asked
  return is_stretch() || by_corners() || kind_ == SketchKind::tree ? 2 : 0;
}

Result<void> Sketch::add(const Crossing& crossing, Pane pane, SketchPoint point, UnitSystem units) {
  if (!drawn_in(pane))
    return missing(is_stretch() || pane_ != Pane::none ? translatable("a click in the view where it was begun")
                   : kind_ == SketchKind::ground_point || kind_ == SketchKind::water_point ||
                           kind_ == SketchKind::stratum
                       ? translatable("a click in the side elevation")
                       : translatable("a click in the plan"));
  if (!typed_.isEmpty())
    if (const Result<void> taken_over = take_typed(crossing, units); !taken_over)
      return tl::unexpected(taken_over.error());
  if (kind_ == SketchKind::ground_point && taken(crossing.site.ground, point.station_m))
    return missing(translatable("a place where no point is yet"));
  if (kind_ == SketchKind::water_point && crossing.site.water && taken(*crossing.site.water, point.station_m))
    return missing(translatable("a place where no point is yet"));
  if (!points_.empty()) {
    const SketchPoint& last = points_.back();
    const double along = std::abs(point.station_m - last.station_m), up = std::abs(point.up_m - last.up_m);
    if (kind_ == SketchKind::stratum && point.station_m < last.station_m + least_apart_m)
      return missing(translatable("points from left to right"));
    if ((is_stretch() && along < least_apart_m) || (by_corners() && (along < least_apart_m || up < least_apart_m)) ||
        std::hypot(along, up) < least_apart_m)
      return missing(translatable("a place further away"));
    if (kind_ == SketchKind::machine && points_.size() == 2)
      return missing(translatable("its load, typed, for example 40 kN; then Enter"));
  }
  if (number_ && (kind_ == SketchKind::ground_point || kind_ == SketchKind::water_point)) point.up_m = *number_;
  pane_ = pane;
  points_.push_back(point);
  return {};
}

bool Sketch::type(const QString& letter) {
  if (letter.size() != 1 || static_cast<std::size_t>(typed_.size()) >= longest_typed) return false;
  const QChar c = letter[0];
  if (!c.isPrint() ||
      (typed_.isEmpty() && !c.isDigit() && c != QLatin1Char('-') && c != QLatin1Char('.') && c != QLatin1Char(',')))
    return false;
  typed_ += c;
  return true;
}

bool Sketch::back() {
  if (!typed_.isEmpty()) {
    typed_.chop(1);
    return true;
  }
  if (points_.empty()) return false;
  points_.pop_back();
  if (points_.empty()) pane_ = Pane::none;
  return true;
}

Result<void> Sketch::take_typed(const Crossing& crossing, UnitSystem units) {
  const std::string text = typed_.toStdString();
  const auto read = [&](Dimension dimension) { return parse(text, dimension, units); };
  if (is_stretch()) {
    const Result<double> station = read(Dimension::station);
    if (!station) return tl::unexpected(station.error());
    typed_.clear();
    return add(crossing, points_.empty() ? Pane::plan : pane_, {*station, 0}, units);
  }
  if (kind_ == SketchKind::tree || kind_ == SketchKind::machine) {
    const bool tree = kind_ == SketchKind::tree;
    const Result<double> number = read(tree ? Dimension::length : Dimension::force);
    if (!number) return tl::unexpected(number.error());
    if (!(*number > 0)) return missing(translatable("a number over 0"));
    number_ = *number;
    typed_.clear();
    return {};
  }
  if (kind_ == SketchKind::ground_point || kind_ == SketchKind::water_point) {
    const Result<double> level = read(Dimension::station);
    if (!level) return tl::unexpected(level.error());
    number_ = *level;
    typed_.clear();
    return {};
  }
  if (points_.empty()) return missing(translatable("a click first: what is typed belongs to the point before it"));
  if (kind_ != SketchKind::utility && kind_ != SketchKind::stratum)
    return missing(translatable("nothing typed here: it is typed once it is drawn"));
  const Result<double> number = read(kind_ == SketchKind::utility ? Dimension::length : Dimension::station);
  if (!number) return tl::unexpected(number.error());
  points_.back().typed = *number;
  if (kind_ == SketchKind::stratum) points_.back().up_m = *number;
  typed_.clear();
  return {};
}

Result<Drawn> Sketch::finished(const Crossing& crossing) const {
  const bool one = ends_with() == 1 || (kind_ == SketchKind::tree && number_);
  if (points_.size() < (one ? 1u : 2u))
    return missing(one ? translatable("a click where it is") : translatable("two points or more"));
  if (kind_ == SketchKind::machine && !number_)
    return missing(translatable("its load, typed, for example 40 kN; then Enter"));
  return sketch_result(crossing, {kind_, soil_, points_, number_});
}

QString Sketch::typed_meaning() const {
  switch (kind_) {
    case SketchKind::utility:
      return QObject::tr("depth of its axis at the last bend");
    case SketchKind::tree:
      return QObject::tr("radius that is protected");
    case SketchKind::machine:
      return QObject::tr("load");
    case SketchKind::stratum:
      return QObject::tr("level of the last point");
    case SketchKind::ground_point:
    case SketchKind::water_point:
      return QObject::tr("level");
    default:
      return is_stretch() ? QObject::tr("station") : QString();
  }
}

QStringList Sketch::words(UnitSystem units) const {
  QStringList lines;
  const auto n = points_.size();
  switch (kind_) {
    case SketchKind::utility:
      lines << (n == 0 ? QObject::tr("Click the bends of the utility, one after the other")
                       : QObject::tr("Click the next bend, or type the depth of its axis here"));
      break;
    case SketchKind::building:
    case SketchKind::machine:
      lines << (n == 0   ? QObject::tr("Click a corner, or drag from corner to corner")
                : n == 1 ? QObject::tr("Click the corner opposite")
                         : QObject::tr("Type its load, then Enter"));
      break;
    case SketchKind::boundary:
      lines << (n == 0 ? QObject::tr("Click the corners of the boundary, one after the other")
                       : QObject::tr("Click the next corner"));
      break;
    case SketchKind::tree:
      lines << (n == 0 ? QObject::tr("Click the trunk")
                       : QObject::tr("Click how far it is protected, or type the radius"));
      break;
    case SketchKind::test_hole:
      lines << QObject::tr("Click where it is to be dug; near a utility it belongs to it");
      break;
    case SketchKind::ground_point:
    case SketchKind::water_point:
      lines << QObject::tr("Click the place and the level in the side elevation; a level typed before counts");
      break;
    case SketchKind::stratum:
      lines << (n == 0 ? QObject::tr("Click points of its top in the side elevation, from left to right")
                       : QObject::tr("Click the next point, or type the level of the last one"));
      break;
    default:
      lines << (n == 0 ? QObject::tr("Click where it begins, or type its station; or drag over it")
                       : QObject::tr("Click where it ends, or type its station"));
  }
  if (!typed_.isEmpty()) lines << QObject::tr("%1: %2").arg(typed_meaning(), typed_);
  if (kind_ == SketchKind::utility && n > 0 && typed_.isEmpty())
    lines << (points_.back().typed ? QObject::tr("depth at the last bend: %1")
                                         .arg(text_from(format(*points_.back().typed, Dimension::length, units)))
                                   : QObject::tr("depth at the last bend: not known"));
  const bool more = ends_with() == 0 || !typed_.isEmpty();
  lines << (more ? QObject::tr("Enter ends · Backspace takes back · Esc cancels")
                 : QObject::tr("Backspace takes back · Esc cancels"));
  return lines;
}

}  // namespace burrow
