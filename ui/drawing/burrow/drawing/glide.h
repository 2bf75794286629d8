#pragma once
/// A short smooth way from one view of the drawing to another.

#include "burrow/drawing/frame.h"

namespace burrow {

/// How long a glide takes: long enough to be followed by eye, short enough not to be waited for.
inline constexpr int glide_ms = 200;

/// The view on the way from `from` to `to` at `share` of the time, 0 to 1; panes and exaggeration are those of `to`.
/// The scale goes in equal ratios, eased; a point that both views show at one place stays there all the way, since the
/// edges go linearly in 1/scale.   Evidence: Glide.*
Frame on_the_way(const Frame& from, const Frame& to, double share);

/// Whether two views differ by so little that nobody would see the way.
bool as_good_as_there(const Frame& from, const Frame& to);

/// Whether this desktop asks for stillness: its files of settings switch animations off, or the program runs without
/// a display. Read once, on first use.
bool desktop_wants_stillness();

}  // namespace burrow
