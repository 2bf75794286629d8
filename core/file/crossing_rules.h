#pragma once
/// Rules of the file that tie several of its members together. Each names the member to mend as a JSON pointer.

#include "burrow/crossing/crossing.h"
#include "crossing_reader.h"

namespace burrow {

/// The exit lies beyond the launch, a tool is a class or a typed diameter, the floors of the pits are
/// simple outlines (in every alternative too), references name
/// what is there, locks are JSON pointers. Runs after the ids are settled; refuses through the reader.
void check_rules(Reader& reader, const Crossing& crossing);

}  // namespace burrow
