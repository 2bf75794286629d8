#pragma once
/// Files in different coordinate systems seen in one picture.

#include <functional>
#include <optional>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// What `found` holds, at its place in the coordinates of `frame`, for a picture near `near` (in that frame); heights
/// and texts stay. Empty: it is drawn as it is, because both are in one system or one of the two does not say its own.
/// What has no place there, such as the other side of the globe, is left out. Errors: a system PROJ does not know.
/// Evidence: SeenIn.*
Result<std::optional<Found>> found_in_frame(const Found& found, const FoundFrame& frame, PlanPoint near);

/// Likewise of a file in the system that a person stated of it; `units` of that system in one of the file's numbers.
/// `go_on` is asked every 100,000 points. Error also: stopped.   Evidence: SeenIn.Stopped_AnswersSoon
Result<std::optional<Found>> found_in_frame(const Found& found, const FoundFrame& own, double units,
                                            const FoundFrame& frame, PlanPoint near,
                                            const std::function<bool()>& go_on = {});

}  // namespace burrow
