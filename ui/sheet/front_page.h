#pragma once
/// What stands around the views on the drawing page.

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/sheet/sheet.h"
#include "views.h"

namespace burrow {

double title_block_height();
void draw_title_block(Page& page, const Sheet& sheet, const QRectF& box, double scale);

/// Of all that is drawn, and of nothing else.   Evidence: SheetLegend.*
void draw_legend(Paper& paper, const Sheet& sheet, const QRectF& box);

/// Lengths on the ground, in metres or in feet; another than the bar that tells whether the print is true to size.
void draw_scale_bar(Paper& paper, const Sheet& sheet, const QPointF& at, double width_mm, double scale);

/// Material, size, count and how it goes in.
QString pipe_words(const Sheet& sheet);

/// A word of a choice as people read it: "traced twice", never "traced-twice".
template <class E>
QString choice_words(E value) {
  const QString word = text_from(word_of(value)), shown = text_from(translated_word(value));
  return shown == word ? QString(shown).replace(QLatin1Char('-'), QLatin1Char(' ')) : shown;
}

}  // namespace burrow
