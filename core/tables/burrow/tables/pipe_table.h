#pragma once
/// The rows of `resources/tables/pipes.json` and `pipe_sizes.json`: what pipes are made of, how it bears, the sizes it
/// is made in. Evidence: TablesFile.*

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity.h"
#include "burrow/base/source.h"

namespace burrow {

/// Modulus under a load that has lasted so long, at the reference temperature.
struct ModulusRow {
  Duration time;
  Pressure modulus;
  Source source;
  bool operator==(const ModulusRow&) const = default;
};

/// What modulus and strength are multiplied by at a temperature.
struct DeratingRow {
  Temperature temperature;
  Ratio ratio;
  Source source;
  bool operator==(const DeratingRow&) const = default;
};

/// Stress in the wall that a pull of this duration may reach.
struct PullStressRow {
  Duration time;
  Pressure stress;
  Source source;
  bool operator==(const PullStressRow&) const = default;
};

/// Least radius of a bend in outside diameters, for pipes to this ratio of diameter to wall.
struct BendRow {
  Ratio to_ratio;
  Ratio diameters;
  Source source;
  bool operator==(const BendRow&) const = default;
};

/// Largest deflection of the ring under pressure, for pipes to this ratio of diameter to wall.
struct DeflectionRow {
  Ratio to_ratio;
  Ratio share;
  Source source;
  bool operator==(const DeflectionRow&) const = default;
};

enum class PipeLaw { polyethylene, pvc, metal };
template <>
struct EnumNames<PipeLaw> {
  static constexpr std::pair<PipeLaw, std::string_view> list[] = {
      {PipeLaw::polyethylene, "polyethylene"}, {PipeLaw::pvc, "pvc"}, {PipeLaw::metal, "metal"}};
};

/// How a material bears. Lists increase in what they go by.
struct PipeStrength {
  PipeLaw law = PipeLaw::polyethylene;
  UnitWeight unit_weight;
  Ratio poisson_ratio;
  double expansion_1_K = 0;
  Ratio deflection_free;                    ///< largest deflection of the ring without pressure
  std::optional<Ratio> fitting_bend;        ///< least radius with a joint in the bend, in outside diameters
  std::optional<Pressure> ring_stress;      ///< long-term compression around the ring
  std::optional<Pressure> pressure_stress;  ///< long-term tension around the ring under inner pressure
  std::optional<Pressure> yield;            ///< tensile, short-term
  Source yield_source;
  std::string strain_limit;  ///< id of a limit
  std::vector<ModulusRow> modulus;
  std::vector<DeratingRow> derating;  ///< empty: temperature does not matter
  std::vector<PullStressRow> pull_stress;
  std::vector<BendRow> bend;
  std::vector<DeflectionRow> deflection;
  Source source;
  bool operator==(const PipeStrength&) const = default;
};

/// A pipe material: what the file may name.
struct PipeMaterial {
  std::string id;  ///< "pe100"
  Phrase name;     ///< "polyethylene PE 100"
  Source source;
  std::optional<PipeStrength> strength{};  ///< empty: nothing is known, as of a bundle
  bool operator==(const PipeMaterial&) const = default;
};

struct PipeWall {
  std::optional<Ratio> sdr;  ///< empty: the series has one wall
  Length wall;
  bool operator==(const PipeWall&) const = default;
};

struct PipeSize {
  std::string name;  ///< "2 in", "63 mm"
  Length outside_diameter;
  std::optional<Length> largest_outside_diameter;  ///< by tolerance
  std::vector<PipeWall> walls;
  bool operator==(const PipeSize&) const = default;
};

/// The sizes a material is made in. Walls are the least ones, stored as printed: they are not diameter over ratio.
struct PipeSeries {
  std::string id;  ///< "pe-metric"
  Phrase name;     ///< "PE, metric"
  std::vector<std::string> materials;
  std::vector<PipeSize> sizes;
  Source source;
  bool operator==(const PipeSeries&) const = default;
};

}  // namespace burrow
