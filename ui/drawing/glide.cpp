#include "burrow/drawing/glide.h"

#include <QFile>
#include <QGuiApplication>
#include <QSettings>
#include <QStandardPaths>
#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// Starts at once and ends gently.
double eased(double share) {
  const double left = 1 - std::clamp(share, 0.0, 1.0);
  return 1 - left * left * left;
}

}  // namespace

Frame on_the_way(const Frame& from, const Frame& to, double share) {
  if (share >= 1 || !(from.px_per_m > 0) || !(to.px_per_m > 0)) return to;
  const double t = eased(share);
  const double ratio = to.px_per_m / from.px_per_m;
  Frame now = to;
  now.px_per_m = from.px_per_m * std::pow(ratio, t);
  // Share of the way of the edges: linear in 1/scale where the scale changes.
  const bool zooms = std::abs(ratio - 1) > 1e-6;
  const double along = zooms ? (1 / now.px_per_m - 1 / from.px_per_m) / (1 / to.px_per_m - 1 / from.px_per_m) : t;
  const auto between = [along](double a, double b) { return a + along * (b - a); };
  now.left_station_m = between(from.left_station_m, to.left_station_m);
  now.top_elevation_m = between(from.top_elevation_m, to.top_elevation_m);
  now.top_offset_m = between(from.top_offset_m, to.top_offset_m);
  return now;
}

bool as_good_as_there(const Frame& from, const Frame& to) {
  const double px = to.px_per_m;
  return std::abs(from.px_per_m / px - 1) * to.elevation.width() < 1 &&
         std::abs(from.left_station_m - to.left_station_m) * px < 1 &&
         std::abs(from.top_elevation_m - to.top_elevation_m) * px * to.exaggeration < 1 &&
         std::abs(from.top_offset_m - to.top_offset_m) * px < 1;
}

bool desktop_wants_stillness() {
  static const bool still = [] {
    const QString platform = QGuiApplication::platformName();
    if (platform == QLatin1String("offscreen") || platform == QLatin1String("minimal")) return true;
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericConfigLocation);
    const auto says = [&](const char* file, const char* key) -> QVariant {
      const QString path = folder + QLatin1Char('/') + QLatin1String(file);
      return QFile::exists(path) ? QSettings(path, QSettings::IniFormat).value(QLatin1String(key)) : QVariant();
    };
    const QVariant times = says("kdeglobals", "KDE/AnimationDurationFactor");
    if (times.isValid() && times.toDouble() <= 0) return true;
    for (const char* file : {"gtk-4.0/settings.ini", "gtk-3.0/settings.ini"})
      if (const QVariant on = says(file, "Settings/gtk-enable-animations"); on.isValid()) return !on.toBool();
    return false;
  }();
  return still;
}

}  // namespace burrow
