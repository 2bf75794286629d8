#pragma once
/// Collects what a reader meets: layers once, coordinates checked, a bound on memory, progress. Private to this room.

#include <array>
#include <map>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// Farther than anything on the globe in millimetres.
inline constexpr double largest_coordinate = 1e11;

/// The same bytes if they are UTF-8, else read as Latin-1 (ISO 8859-1).
std::string as_utf8(std::string_view bytes);
/// In place; nearly all texts are plain and stay as they are.
void make_utf8(std::string& text);

class FoundBuilder {
 public:
  FoundBuilder(const ReadOptions& options, std::string format) : options_(options) { found.format = std::move(format); }

  Found found;

  /// Its index; beyond the most that are wanted all others share one, and that is said.
  std::uint32_t layer(std::string_view name);

  /// The column of that name.
  std::uint32_t field(std::string_view name);
  [[nodiscard]] bool has_field(std::string_view name) const { return fields_.contains(name); }
  /// Attributes of the features that are added from now on: column and text; an empty text is none.
  void set_attributes(std::vector<std::pair<std::uint32_t, std::string>> row) { row_ = std::move(row); }

  /// Adds a feature; one with a coordinate that is not finite or too large, or with too few vertices for its shape, is
  /// left out with its place.
  void add(FoundFeature feature, const std::vector<FoundVertex>& vertices, const std::string& place);

  /// Likewise of one point, whose place is wanted only where it is left out.
  void add_point(FoundFeature feature, const FoundVertex& vertex, const std::function<std::string()>& place);

  void leave_out(std::string place, std::string_view text, const std::string& reason, bool matters = true);

  /// Error: too many vertices, or stopped. To be asked now and then; `share` of the work, 0 … 1.
  std::optional<Error> check_cancelled(double share);

  /// Heights that are zero throughout, layer by layer, and single zeros among true heights are taken as not given;
  /// `mixed` tells that the file holds vertices without height among those with.
  Found finish(bool mixed = false);

 private:
  void leave_out_coordinate(const FoundFeature& feature, const FoundVertex& v, const std::string& place);
  void take_attributes(std::uint32_t number);
  void forget_zero_heights(bool mixed);
  void forget_zero_of_survey();
  /// Those without a height are areas of the plan: what is drawn so may be a utility.
  void drop_flat_surfaces();
  void fill_table();

  const ReadOptions& options_;
  std::map<std::string, std::uint32_t, std::less<>> layers_, fields_, texts_;
  std::vector<std::pair<std::uint32_t, std::string>> row_;
  std::vector<std::array<std::uint32_t, 3>> cells_;  ///< feature, field, text
  std::size_t cells_left_out_ = 0;
  std::size_t layers_shared_ = 0;
};

}  // namespace burrow
