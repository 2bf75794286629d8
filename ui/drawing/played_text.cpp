#include "burrow/drawing/played_text.h"

#include <QObject>
#include <cmath>

#include "burrow/document/text.h"

namespace burrow {

QString minutes(double seconds) {
  constexpr double at_end_s = 1e-6;
  const int whole = static_cast<int>(std::floor(seconds + at_end_s));
  return QStringLiteral("%1:%2").arg(whole / 60).arg(whole % 60, 2, 10, QLatin1Char('0'));
}

QString played_text(const Playback& bore, double time_s, UnitSystem units) {
  return QObject::tr("%1 of %2 · nose %3")
      .arg(minutes(time_s), minutes(bore.end_s()), text_from(format(nose_at(bore, time_s), Dimension::station, units)));
}

QString miss_text(double miss_m, UnitSystem units) {
  const double size = std::abs(miss_m), told = units == UnitSystem::metric ? std::round(size * 1000) / 1000 : size;
  return text_from(format(told, Dimension::small_length, units));
}

bool hardly_any_miss(double miss_m) {
  return !(std::abs(miss_m) >= 0.0005);
}

}  // namespace burrow
