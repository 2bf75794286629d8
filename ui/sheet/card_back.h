#pragma once
/// The back of the setup card: when to shut the air, what to do when a line is struck, whom to ring, the ticket, who
/// signs.

#include "burrow/sheet/page.h"
#include "burrow/sheet/sheet.h"

namespace burrow {

/// What it takes, drawn on a copy of the page.
double back_height(const Page& page, const QRectF& in, const Sheet& sheet);
/// From the top of the box on.
void draw_back(Paper& paper, const QRectF& box, const Sheet& sheet);

/// What was accepted and loosened, line by line; empty: nothing.
QStringList eased_in_full(const Sheet& sheet);
/// As many of the lines as there is room for; gives those that are left.
QStringList fill_with(Paper& paper, const QRectF& box, const QStringList& lines);

}  // namespace burrow
