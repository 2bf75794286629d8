#pragma once
/// The tool in use: its class with the maker's plate laid over it.

#include "burrow/crossing/bore.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Every member known. `diameter` D, `length` L_t, `mass` with weight W = mass · g.
struct Tool {
  Length diameter;
  Length length;
  Mass mass;
  Length piston_diameter;
  Length stroke;
  Mass striker_mass;
  Frequency blow_rate;
  Pressure pressure;
  VolumeFlow free_air;
  bool operator==(const Tool&) const = default;
};

/// Source: `resources/tables/tools.json` (our model), plate values win. Without a class, what the plate lacks follows
/// from the diameter by the class formulas.
/// Range: a known class or a typed diameter (the file reader refuses anything else; otherwise a bug).
Tool resolve_tool(const ToolChoice& choice, const Tables& tables);

}  // namespace burrow
