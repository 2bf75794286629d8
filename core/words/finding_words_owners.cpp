#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"surface.pipe-end",
     [](const FindingPhrases& s) {
       return say("the pipe ends {} from {}, its owner wants {}", s.measured(Dimension::length), s.name(),
                  s.limit(Dimension::length));
     },
     translatable("Move the pit away, so that the pipe ends further off.")},
    {"surface.pit-edge",
     [](const FindingPhrases& s) {
       return say("the excavation of a pit begins {} from {}, its owner wants {}", s.measured(Dimension::length),
                  s.name(), s.limit(Dimension::length));
     },
     translatable("Move the pit away, or shore it upright.")},
    {"surface.near-centre",
     [](const FindingPhrases& s) {
       return say("{}: {} from the centre of the track, its owner wants {}", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Keep pit, heap and machines away from the track.")},
    {"surface.owner-asks", [](const FindingPhrases& s) { return say("what the owner asks besides, of {}", s.name()); },
     translatable("Nothing here judges it: see to it.")},
    {"bore.head-unlocated",
     [](const FindingPhrases& s) {
       return say("nobody locates the head while it runs, and {} in service lies in the working area", s.name());
     },
     translatable(
         "Locate the head all the while it runs and enter how, by whom and when; or have the line taken out of "
         "service. Otherwise this rule forbids the method here.")},
    {"missing.agreed-gap",
     [](const FindingPhrases& s) { return say("the gap agreed with the owner of {} is not entered", s.name()); },
     translatable("Agree it with the owner; enter the distance, with whom and when.")},
    {"missing.pit-shield",
     [](const FindingPhrases& s) { return say("the rating of the shield in {} is not entered", s.name()); },
     translatable("Enter from its plate or tabulated data: rated depth, soil type, and where that stands.")},
    {"pit.shield-depth",
     [](const FindingPhrases& s) {
       return say("{} {} deep, its shield is rated to {}", s.name(), s.measured(Dimension::length),
                  s.limit(Dimension::length));
     },
     translatable("Use a shield rated for that depth, or dig less deep.")},
    {"pit.shield-soil",
     [](const FindingPhrases& s) {
       return say("the shield in {} is rated for a better soil type than is there", s.name());
     },
     translatable("Use a shield rated for that soil.")},
};

}  // namespace

std::span<const FindingWords> words_of_owners() {
  return rows;
}

}  // namespace burrow
