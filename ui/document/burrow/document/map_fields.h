#pragma once
/// How the site lies in a map: coordinates of station 0 on the line, and where the line points to.

#include "burrow/document/fields.h"

namespace burrow {

/// Easting and northing of station 0 on the line, direction of the line from grid north, clockwise. Typing the first of
/// them makes the reference; it goes when all of it is empty.   Evidence: MapFields.*
std::vector<Field> map_fields(const Crossing& crossing);

/// One of its texts: coordinate system or height system. The same rule.
void set_map_text(Crossing& crossing, std::string Georeference::*member, const std::string& text);

}  // namespace burrow
