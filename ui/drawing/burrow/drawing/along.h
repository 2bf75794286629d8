#pragma once
/// What the drawing says in words of a place along the bore: why the tool turns there, whether the ground may stop it.

#include <QStringList>
#include <optional>

#include "burrow/drawing/scene.h"

namespace burrow {

/// The path at a station, straight between its points; empty beyond its ends.
std::optional<PathPoint> path_point_at(const Assessment& assessment, double station_m);

/// "station 7.25 m", "resists 269 kPa above, 271 kPa below", "sags: grade −0.30 % in 10 m", "by its weight alone −0.32
/// % in 10 m". Empty beyond the path.
QStringList turning_numbers(const Assessment& assessment, double station_m, UnitSystem units);

/// The row of the ruler in which the stretches stand.
QRectF stops_row(const Frame& frame, const Style& style);

/// The stretch under a point of that row.
std::optional<std::size_t> stop_at(const Scene& scene, const QPointF& at);

/// "under Larkfold Rise: 0.71 % chance that the ground stops the tool; not to be dug out". No chance is told of rates
/// that are not from records.
QString stop_text(const Crossing& crossing, const StopStretch& stretch, bool calibrated, UnitSystem units);

/// What the pointer is told in the strip and in that row; empty elsewhere.
QStringList pointer_words(const Scene& scene, const QPointF& at);

}  // namespace burrow
