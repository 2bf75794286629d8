#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"air.pressure-low", Dimension::air_pressure, translatable("{measured} of air at the tool, {limit} required"),
     translatable(
         "See page Air for what to change, the most telling first: a wider or shorter hose, fewer couplings, more "
         "air.")},
    {"air.pressure-high", Dimension::air_pressure, translatable("{measured} of air at the tool, {limit} at most"),
     translatable("Turn the air down, unless the maker's plate allows more.")},
    {"air.standing", Dimension::air_pressure,
     translatable("{measured} of air stands at the tool when it stalls, {limit} at most"),
     translatable("Set the compressor lower, or enter and set a regulator behind it; more only by the maker's plate.")},
    {"air.rating", Dimension::air_pressure,
     translatable("{name} is rated for {measured} of air, {limit} stands in it when the tool stalls"),
     translatable("Change the part for one that is rated for it, or set the compressor or its regulator lower.")},
    {"air.rating-unknown", Dimension::air_pressure,
     translatable("rating of {name} not entered: {measured} of air stands in it when the tool stalls"),
     translatable("Read the working pressure off each hose and coupling and enter it on page Air line.")},
    {"air.loss", Dimension::air_pressure, translatable("the air line takes {measured}, {limit} at most is usual"),
     translatable("A wider or shorter hose, or fewer couplings, would give it back.")},
    {"air.compressor-small", Dimension::flow,
     translatable("the compressor gives {measured} of free air, the tool would take {limit}"),
     translatable("Its pressure falls until both agree: a larger compressor, or a smaller tool.")},
    {"air.choked", translatable("the air line is choked in its {name}: no more air passes, however high the pressure"),
     translatable("Use a wider hose and fittings of full bore; the pressure computed behind it is a rough one.")},
    {"air.icing", Dimension::temperature,
     translatable("wet air at {measured} is likely to freeze in the exhaust, {limit} or warmer is safer"),
     translatable("Put a water separator in the line, drain it, and use oil made for cold air.")},
    {"air.not-entered", translatable("pressure at the tool is not judged: {name} not entered"),
     translatable("Enter the compressor and the parts of the line on page Air.")},
    {"air.outside-method", translatable("the air line is not judged: its {name} is outside the method"),
     translatable("Check what is entered on page Air.")},
    {"air.mark-spacing", Dimension::length,
     translatable("hose marks every {measured} cannot be told apart, {limit} is taken"),
     translatable("Enter a wider spacing.")},
};

}  // namespace

std::span<const FindingWords> words_of_air() {
  return rows;
}

}  // namespace burrow
