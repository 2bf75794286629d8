#pragma once
/// What stands or runs beside the bore and is neither a utility nor on top of it: boundaries, trees, machines, trenches
/// of other soil. Each can be added, typed and taken out.

#include <string>
#include <vector>

#include "burrow/document/fields.h"
#include "burrow/document/lens.h"

namespace burrow {

enum class AroundKind { boundary, tree, machine, trench };
template <>
struct EnumNames<AroundKind> {
  static constexpr std::pair<AroundKind, std::string_view> list[] = {{AroundKind::boundary, "boundary"},
                                                                     {AroundKind::tree, "tree"},
                                                                     {AroundKind::machine, "machine"},
                                                                     {AroundKind::trench, "trench"}};
};

struct Around {
  AroundKind kind = AroundKind::boundary;
  std::string id;
  bool operator==(const Around&) const = default;
};

/// All of them, kind by kind, in the order of the file.   Evidence: Surroundings.*
std::vector<Around> surroundings(const Crossing& crossing);

/// Where its name stands; null if it is not there.
Lens<std::string> around_name(const Around& which);

/// Its numbers but the corners.   Evidence: Surroundings.*
std::vector<Field> around_fields(const Crossing& crossing, const Around& which);

/// Its corners in plan; null for what has none.
Lens<PlanLine> around_line(const Around& which);
/// The corners in plan of a thing on top; null where it is not there.
Lens<PlanLine> outline_of(const std::string& surface);

/// Adds one where it disturbs most, on the line in the middle of the bore, so that what nobody has typed yet does not
/// look harmless; its id.   Evidence: Surroundings.*
std::string add_around(Crossing& crossing, AroundKind kind);
void remove_around(Crossing& crossing, const Around& which);

/// Station and offset of one corner of a line in plan.   Evidence: Surroundings.*
std::vector<Field> corner_fields(const Crossing& crossing, const Lens<PlanLine>& line, std::size_t corner);
/// A corner halfway to the next, behind the last one as far as the one before it.
void add_corner(PlanLine& line, std::size_t after);

}  // namespace burrow
