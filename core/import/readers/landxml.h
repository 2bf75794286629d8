#pragma once
/// LandXML by pugixml, elements matched by their local name: dialects put them into namespaces of their own. Private to
/// the importer library.

#include "../found_builder.h"

namespace burrow {

/// Points (CgPoints), surfaces of triangles, alignments with their profile, parcels and plan features, pipe networks
/// with manholes. Coordinates are "north east height"; a face marked i="1" is hidden and left out; a diameter counts
/// only where its own unit is stated. A circular vertical curve is read as a parabola (our model; millimetres apart at
/// road grades).   Errors: not XML, cut short, no LandXML, nothing in it.   Evidence: LandXml.*
Result<Found> read_landxml(const std::string& path, const ReadOptions& options);

/// The same of a text.
Result<Found> read_landxml_text(std::string_view text, const ReadOptions& options);

}  // namespace burrow
