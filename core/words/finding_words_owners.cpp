#include "burrow/language/say.h"
#include "finding_words.h"

namespace burrow {

namespace {

const FindingWords rows[] = {
    {"surface.pipe-end", Dimension::length,
     translatable("the pipe ends {measured} from {name}, its owner wants {limit}"),
     translatable("Move the pit away, so that the pipe ends further off.")},
    {"surface.pit-edge", Dimension::length,
     translatable("the excavation of a pit begins {measured} from {name}, its owner wants {limit}"),
     translatable("Move the pit away, or shore it upright.")},
    {"surface.near-centre", Dimension::length,
     translatable("{name}: {measured} from the centre of the track, its owner wants {limit}"),
     translatable("Keep pit, heap and machines away from the track.")},
    {"surface.owner-asks", translatable("what the owner asks besides, of {name}"),
     translatable("Nothing here judges it: see to it.")},
    {"bore.head-unlocated",
     translatable("nobody locates the head while it runs, and {name} in service lies in the working area"),
     translatable(
         "Locate the head all the while it runs and enter how, by whom and when; or have the line taken out of "
         "service. Otherwise this rule forbids the method here.")},
    {"missing.agreed-gap", translatable("the gap agreed with the owner of {name} is not entered"),
     translatable("Agree it with the owner; enter the distance, with whom and when.")},
    {"missing.pit-shield", translatable("the rating of the shield in {name} is not entered"),
     translatable("Enter from its plate or tabulated data: rated depth, soil type, and where that stands.")},
    {"pit.shield-depth", Dimension::length, translatable("{name} {measured} deep, its shield is rated to {limit}"),
     translatable("Use a shield rated for that depth, or dig less deep.")},
    {"pit.shield-soil", translatable("the shield in {name} is rated for a better soil type than is there"),
     translatable("Use a shield rated for that soil.")},
};

}  // namespace

std::span<const FindingWords> words_of_owners() {
  return rows;
}

}  // namespace burrow
