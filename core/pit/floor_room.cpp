#include "burrow/pit/floor_room.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

namespace burrow {

namespace {

constexpr double hair_m = 1e-7;

struct Chord {
  double from = 0, to = 0;
};

/// The floor in the frame of its pit: u from the face into the pit, v to the left of the axis.
class FloorFrame {
 public:
  FloorFrame(const PitShape& pit, double axis_offset_m) {
    const double into = pit.bore_side_high ? -1 : 1;
    for (const PlanPoint& p : pit.floor)
      corners_.push_back({into * (p.x_m - pit.face_station_m), p.y_m - axis_offset_m});
  }
  [[nodiscard]] const PlanLine& corners() const { return corners_; }

  /// Of a line along u at some v: the piece that begins at the face.
  [[nodiscard]] double run_from_face(double v) const {
    for (const Chord& chord : chords(v, [](const PlanPoint& p) { return std::pair{p.y_m, p.x_m}; }))
      if (chord.from <= 10 * hair_m && chord.to > 0) return chord.to;
    return 0;
  }
  /// Of a line across at some u: the piece that holds the axis.
  [[nodiscard]] std::optional<Chord> across(double u) const {
    for (const Chord& chord : chords(u, [](const PlanPoint& p) { return std::pair{p.x_m, p.y_m}; }))
      if (chord.from <= 0 && chord.to >= 0) return chord;
    return std::nullopt;
  }

 private:
  template <class Split>
  [[nodiscard]] std::vector<Chord> chords(double level, Split split) const {
    std::vector<double> cuts;
    for (std::size_t i = 0; i < corners_.size(); ++i) {
      const auto [a, a_along] = split(corners_[i]);
      const auto [b, b_along] = split(corners_[(i + 1) % corners_.size()]);
      if ((a > level) != (b > level)) cuts.push_back(a_along + (level - a) / (b - a) * (b_along - a_along));
    }
    std::sort(cuts.begin(), cuts.end());
    std::vector<Chord> pieces;
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) pieces.push_back({cuts[i], cuts[i + 1]});
    return pieces;
  }

  PlanLine corners_;
};

}  // namespace

FloorRoom floor_room(const PitShape& pit, Length axis_offset, Length tool_length, Length tool_diameter) {
  if (pit.floor.size() < 3) return {};
  const FloorFrame floor(pit, axis_offset.m);
  FloorRoom room;
  room.length_m = std::min(floor.run_from_face(hair_m), floor.run_from_face(-hair_m));
  if (!(room.length_m > 0)) return {};

  // Between two corners the width runs straight, so that it is least beside one of them.
  const double end = std::min(room.length_m, tool_length.m);
  std::vector<double> places{hair_m, end - hair_m};
  for (const PlanPoint& p : floor.corners())
    for (const double u : {p.x_m - hair_m, p.x_m + hair_m})
      if (u > hair_m && u < end - hair_m) places.push_back(u);
  room.width_m = std::numeric_limits<double>::infinity();
  for (const double u : places) {
    const std::optional<Chord> chord = floor.across(u);
    if (!chord) return {room.length_m, 0};
    const double nearer = std::min(-chord->from, chord->to);
    room.width_m = std::min(room.width_m, nearer < tool_diameter.m / 2 - hair_m ? 2 * nearer : chord->to - chord->from);
  }
  return room;
}

}  // namespace burrow
