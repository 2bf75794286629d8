#include "burrow/document/pipe_fields.h"

#include <algorithm>
#include <cmath>

#include "burrow/pipe/section.h"

namespace burrow {

namespace {

using Typed = std::optional<double>;

// Ranges lie within those of the file reader, so that whatever is taken can be opened again.
constexpr double thinnest_m = 1e-4, widest_m = 5;

template <class Set>
Field pipe_field(std::string label, Dimension dimension, Typed value, bool entered, double low, double high,
                 Typed default_value, Set set) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  field.value = value;
  field.entered = entered;
  field.may_be_empty = true;
  field.low = low;
  field.high = high;
  field.default_value = default_value;
  field.apply = [set](const Crossing& c, Typed v) -> ItemValue {
    Pipe pipe = pipe_of(c);
    set(pipe, v);
    return std::optional<Pipe>(std::move(pipe));
  };
  return field;
}

template <class Q>
Field open_field(std::string label, Dimension dimension, const Pipe& pipe, std::optional<Q> Pipe::*member,
                 double Q::*number, double low, double high, Typed default_value = std::nullopt) {
  const std::optional<Q>& now = pipe.*member;
  return pipe_field(std::move(label), dimension, now ? Typed((*now).*number) : std::nullopt, now.has_value(), low, high,
                    default_value, [member, number](Pipe& p, Typed v) {
                      p.*member = std::nullopt;
                      if (v) {
                        Q quantity;
                        quantity.*number = *v;
                        p.*member = quantity;
                      }
                    });
}

template <class Q>
Field given_field(std::string label, Dimension dimension, const Pipe& pipe, Given<Q> Pipe::*member, double Q::*number,
                  double low, double high) {
  const Given<Q>& now = pipe.*member;
  return pipe_field(std::move(label), dimension, (*now).*number, now.entered, low, high, (*(Pipe{}.*member)).*number,
                    [member, number](Pipe& p, Typed v) {
                      p.*member = Pipe{}.*member;
                      if (v) {
                        Q quantity;
                        quantity.*number = *v;
                        (p.*member).set(quantity);
                      }
                    });
}

}  // namespace

Pipe pipe_of(const Crossing& crossing) {
  return crossing.pipe.value_or(Pipe{});
}

std::vector<Field> pipe_size_fields(const Crossing& crossing, const Tables& tables) {
  const Pipe pipe = pipe_of(crossing);
  Pipe untyped = pipe;
  untyped.wall.reset();
  const Result<PipeSection> section = pipe_section(untyped, tables);
  const Typed wall = section ? Typed(section->wall_m) : std::nullopt;
  return {open_field("outside diameter", Dimension::small_length, pipe, &Pipe::outside_diameter, &Length::m, 1e-3,
                     widest_m),
          open_field("diameter over wall (DR, SDR)", Dimension::ratio, pipe, &Pipe::sdr, &Ratio::v, 2.1, 1000),
          open_field("wall", Dimension::small_length, pipe, &Pipe::wall, &Length::m, thinnest_m, 1, wall),
          pipe_field("pipes drawn in together", Dimension::count, static_cast<double>(*pipe.count), pipe.count.entered,
                     1, 100, 1, [](Pipe& p, Typed v) {
                       p.count = Pipe{}.count;
                       if (v) p.count.set(static_cast<std::int64_t>(std::llround(*v)));
                     })};
}

std::vector<Field> pipe_pull_fields(const Crossing& crossing) {
  const Pipe pipe = pipe_of(crossing);
  std::vector<Field> fields{
      open_field("pulling head, across", Dimension::small_length, pipe, &Pipe::head_diameter, &Length::m, 1e-3,
                 widest_m),
      open_field("couplings, across", Dimension::small_length, pipe, &Pipe::coupling_diameter, &Length::m, 1e-3,
                 widest_m),
      open_field("length of a piece", Dimension::length, pipe, &Pipe::piece_length, &Length::m, 0.1, 1e4),
      given_field("the pull lasts", Dimension::duration, pipe, &Pipe::pull_time, &Duration::s, 60, 30 * 86400.0)};
  if (*pipe.pull_by == PullBy::hose)
    fields.push_back(
        open_field("pull the hose is rated for", Dimension::force, pipe, &Pipe::hose_rating, &Force::N, 0, 1e7));
  return fields;
}

std::vector<Field> pipe_use_fields(const Crossing& crossing) {
  return {given_field("pressure inside, in use", Dimension::air_pressure, pipe_of(crossing), &Pipe::operating_pressure,
                      &Pressure::Pa, 0, 1e8)};
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
