#pragma once
/// What a person types or picks about the pipe.

#include "burrow/document/fields.h"
#include "burrow/tables/tables.h"

namespace burrow {

inline const ItemRef pipe_part{ItemKind::pipe, {}, -1};

/// The pipe as it stands, else one with nothing entered: whatever is typed first makes it.
Pipe pipe_of(const Crossing& crossing);

/// Diameter, ratio, wall, number. What the size table knows stands where nothing is typed.   Evidence: PipeFields.*
std::vector<Field> pipe_size_fields(const Crossing& crossing, const Tables& tables);
/// Couplings, head, pieces, time of the pull, what the hose is rated for.
std::vector<Field> pipe_pull_fields(const Crossing& crossing);
/// Pressure inside.
std::vector<Field> pipe_use_fields(const Crossing& crossing);

/// A size of the tables with one of its walls, as offered for a material.
struct OfferedSize {
  const PipeSeries* series = nullptr;
  const PipeSize* size = nullptr;
};
std::vector<OfferedSize> offered_sizes(const Tables& tables, std::string_view material);

/// The pipe with this size: diameter of the table; the ratio entered if the size has it, else 11 or the first; what was
/// typed as wall goes.
Pipe with_size(Pipe pipe, const PipeSize& size);

}  // namespace burrow
