#pragma once
/// Collects what a reader meets: layers once, coordinates checked, a bound on memory, progress. Private to this room.

#include <map>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// Farther than anything on the globe in millimetres.
inline constexpr double largest_coordinate = 1e11;

/// The same bytes if they are UTF-8, else read as Latin-1 (ISO 8859-1).
std::string as_utf8(std::string_view bytes);

class FoundBuilder {
 public:
  FoundBuilder(const ReadOptions& options, std::string format) : options_(options) { found.format = std::move(format); }

  Found found;

  std::uint32_t layer(std::string_view name);

  /// Adds a feature; one with a coordinate that is not finite or too large, or with too few vertices for its shape, is
  /// left out with its place.
  void add(FoundFeature feature, const std::vector<FoundVertex>& vertices, const std::string& place);

  void leave_out(std::string place, std::string_view text, const std::string& reason);

  /// Error: too many vertices, or stopped. To be asked now and then; `share` of the work, 0 … 1.
  std::optional<Error> check_cancelled(double share);

  /// Heights that are zero throughout, layer by layer, and single zeros among true heights are taken as not given;
  /// `mixed` tells that the file holds vertices without height among those with.
  Found finish(bool mixed = false);

 private:
  void forget_zero_heights(bool mixed);
  void drop_flat_surfaces();

  const ReadOptions& options_;
  std::map<std::string, std::uint32_t, std::less<>> layers_;
};

}  // namespace burrow
