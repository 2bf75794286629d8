#pragma once
/// The drawing for those who do not see it: a list of the items on it, each with its name, its numbers, its place, and
/// whether it is selected.

namespace burrow {

/// Once for the program; safe to call often.   Evidence: AccessibleDrawing.*
void make_drawing_accessible();

}  // namespace burrow
