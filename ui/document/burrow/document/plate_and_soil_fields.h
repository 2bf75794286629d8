#pragma once
/// Values that stand by a class of the tables or by the model until a person types their own: the plate of the tool,
/// the properties of a stratum, the constants of the path model.

#include "burrow/document/fields.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The nine values of the maker's plate. `default_value` is that of the class; without a class that of
/// a generic tool of this diameter, and the diameter itself may not be empty.   Evidence: PlateFields.*
std::vector<Field> plate_fields(const Crossing& crossing, const Tables& tables);

/// The values of a stratum that matter most; strength or friction, as the soil drains.
/// Empty for an id that is not there.   Evidence: PlateFields.EndsOfEveryRange_*
std::vector<Field> soil_fields(const Crossing& crossing, const std::string& stratum, const Tables& tables);
/// The same of the soil in an old trench.
std::vector<Field> trench_soil_fields(const Crossing& crossing, const std::string& trench, const Tables& tables);

/// Level of the ground water at the launch: the line follows; empty means not known.
std::vector<Field> water_fields(const Crossing& crossing);

/// Constants of the path model.
std::vector<Field> model_fields(const Crossing& crossing);

}  // namespace burrow
