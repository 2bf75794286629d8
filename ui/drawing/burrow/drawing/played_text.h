#pragma once
/// The time of a bore in words.

#include <QString>

#include "burrow/drawing/scene.h"

namespace burrow {

/// "4:07".
QString minutes(double seconds);
/// "4:07 of 17:18 · nose 3.20 m".
QString played_text(const Playback& bore, double time_s, UnitSystem units);

/// How far beside, without a sign: whole millimetres, tenths of an inch. Finer is nobody's setting.
QString miss_text(double miss_m, UnitSystem units);
/// Too little to be told.
bool hardly_any_miss(double miss_m);

}  // namespace burrow
