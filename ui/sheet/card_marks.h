#pragma once
/// The marks of the hose on the card: in short on its front, in full on its back. What stops stands out by its task,
/// never by its words; the columns are as wide as their numbers in the language and units of the card.

#include "burrow/sheet/sheet.h"
#include "flow.h"

namespace burrow {

inline constexpr double card_text_mm = 11 * 25.4 / 72;  ///< 11 pt; nothing on the card is smaller

/// As many as there is room for.
void short_marks(Paper& paper, const QRectF& box, const Sheet& sheet);
void marks_in_full(Flow& flow, const Sheet& sheet, double width_mm);

}  // namespace burrow
