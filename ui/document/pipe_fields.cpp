#include "burrow/document/pipe_fields.h"

#include <algorithm>
#include <cmath>

#include "burrow/pipe/section.h"
#include "number_field.h"

namespace burrow {

namespace {

// Ranges lie within those of the file reader, so that whatever is taken can be opened again.
constexpr double thinnest_m = 1e-4, widest_m = 5;

/// The pipe, or one with nothing entered: whatever is typed first makes it.
struct PipeLens {
  const Pipe* operator()(const Crossing& c) const {
    static const Pipe none;
    return c.pipe ? &*c.pipe : &none;
  }
  Pipe* operator()(Crossing& c) const { return c.pipe ? &*c.pipe : &c.pipe.emplace(); }
};

template <class V>
Field pipe_field(const Crossing& crossing, const char* label, Dimension dimension, FieldRange range, V Pipe::*member,
                 Typed stands = std::nullopt) {
  return number_field(crossing, label, dimension, range, PipeLens(), member, stands);
}

}  // namespace

Pipe pipe_of(const Crossing& crossing) {
  return crossing.pipe.value_or(Pipe{});
}

std::vector<Field> pipe_size_fields(const Crossing& crossing, const Tables& tables) {
  Pipe untyped = pipe_of(crossing);
  untyped.wall.reset();
  const Result<PipeSection> section = pipe_section(untyped, tables);
  const Typed wall = section ? Typed(section->wall_m) : std::nullopt;
  return {pipe_field(crossing, "outside diameter", Dimension::small_length, {1e-3, widest_m}, &Pipe::outside_diameter),
          pipe_field(crossing, "diameter over wall (DR, SDR)", Dimension::ratio, {2.1, 1000}, &Pipe::sdr),
          pipe_field(crossing, "wall", Dimension::small_length, {thinnest_m, 1}, &Pipe::wall, wall),
          pipe_field(crossing, "pipes drawn in together", Dimension::count, {1, 100}, &Pipe::count)};
}

std::vector<Field> pipe_pull_fields(const Crossing& crossing) {
  const FieldRange across{1e-3, widest_m};
  std::vector<Field> fields{
      pipe_field(crossing, "pulling head, across", Dimension::small_length, across, &Pipe::head_diameter),
      pipe_field(crossing, "couplings, across", Dimension::small_length, across, &Pipe::coupling_diameter),
      pipe_field(crossing, "length of a piece", Dimension::length, {0.1, 1e4}, &Pipe::piece_length),
      pipe_field(crossing, "the pull lasts", Dimension::duration, {60, 30 * 86400.0}, &Pipe::pull_time)};
  if (*pipe_of(crossing).pull_by == PullBy::hose)
    fields.push_back(
        pipe_field(crossing, "pull the hose is rated for", Dimension::force, {0, 1e7}, &Pipe::hose_rating));
  return fields;
}

std::vector<Field> pipe_use_fields(const Crossing& crossing) {
  return {
      pipe_field(crossing, "pressure inside, in use", Dimension::air_pressure, {0, 1e8}, &Pipe::operating_pressure)};
}

std::vector<OfferedSize> offered_sizes(const Tables& tables, std::string_view material) {
  std::vector<OfferedSize> sizes;
  for (const PipeSeries& series : tables.pipe_sizes) {
    if (std::find(series.materials.begin(), series.materials.end(), material) == series.materials.end()) continue;
    for (const PipeSize& size : series.sizes) sizes.push_back({&series, &size});
  }
  return sizes;
}

Pipe with_size(Pipe pipe, const PipeSize& size) {
  pipe.outside_diameter = size.outside_diameter;
  pipe.wall.reset();
  const auto has = [&](double ratio) {
    return std::any_of(size.walls.begin(), size.walls.end(),
                       [&](const PipeWall& w) { return w.sdr && std::abs(w.sdr->v - ratio) < 0.05; });
  };
  if (pipe.sdr && has(pipe.sdr->v)) return pipe;
  pipe.sdr = has(11) ? std::optional(Ratio{11}) : size.walls.front().sdr;
  return pipe;
}

}  // namespace burrow
