#pragma once
/// What a person types about compressor, air line, oil and hose marks.

#include "burrow/check/assessment.h"
#include "burrow/document/fields.h"

namespace burrow {

inline const ItemRef air_part{ItemKind::air, {}, -1};

/// Evidence: AirFields.*
std::vector<Field> compressor_fields(const Crossing& crossing);
/// Height, temperature and humidity of the air drawn in.
std::vector<Field> site_air_fields(const Crossing& crossing);
/// One part of the line; empty where there is none.
std::vector<Field> air_part_fields(const Crossing& crossing, std::size_t part);
/// First fill and consumption; `answer` tells the rate that stands where none is typed.
std::vector<Field> oil_fields(const Crossing& crossing, const AirAnswer& answer);
std::vector<Field> hose_mark_fields(const Crossing& crossing);

/// A part as it is usually entered, to begin with: a hose as the one before it, couplings and lubricators bare.
AirPart new_air_part(const Air& air, AirPartKind kind);

}  // namespace burrow
