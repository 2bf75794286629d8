#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"surface.levels-rose", Dimension::small_length,
     translatable("{name} rose {measured} by the levels taken, {limit} at most"),
     translatable("Tell its owner at once and do what the permit says; take the levels again.")},
    {"surface.levels-sank", Dimension::small_length,
     translatable("{name} sank {measured} by the levels taken, {limit} at most"),
     translatable("Tell its owner at once and do what the permit says; look for a void and have it filled.")},
    {"surface.levels-above-estimate", Dimension::small_length,
     translatable("{name} rose {measured} by the levels taken, more than the {limit} that was thought possible"),
     translatable("The ground is not what was entered: look at it again before the next bore here.")},
    {"site.camera-before", translatable("no camera survey of the sewers and drains nearby is entered"),
     translatable(
         "Survey them by camera before and after: a house connection struck unseen may show only months later.")},
    {"site.camera-after", translatable("sewers and drains to be surveyed by camera again after the bore"),
     translatable("Enter what it showed: a house connection struck unseen may show only months later.")},
    {"site.camera-before-found", translatable("the camera found something in a sewer or drain before the bore"),
     translatable("Keep the film, tell the owner, and make sure that it is not in the way of the bore.")},
    {"site.camera-after-found", translatable("the camera found something in a sewer or drain after the bore"),
     translatable(
         "Shut it off, tell its owner and every house on it that gas may be near, and dig it out: never clear it by "
         "machine.")},
};

}  // namespace

std::span<const FindingWords> words_of_records() {
  return rows;
}

}  // namespace burrow
