// Words of danger in notes.
#include "danger_words.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

TEST(DangerWords, Surely) {
  for (const char* text : {"smell of gas", "Struck gas", "HISSING", "smoke", "Gasgeruch", "es zischt",
                           "Rauch im Schacht", "Kabel getroffen", "a spark", "lights went out", "it smells"})
    EXPECT_EQ(danger_in(text), DangerWords::surely) << text;
}

TEST(DangerWords, Maybe) {
  for (const char* text :
       {"gas main exposed", "hit a stone", "sounds of metal", "water in the pit", "Wasser", "it hit"})
    EXPECT_EQ(danger_in(text), DangerWords::maybe) << text;
}

TEST(DangerWords, None) {
  for (const char* text : {"", "coffee", "neuer Hammer gebraucht", "slow here", "white stone", "listen", "Fleck"})
    EXPECT_EQ(danger_in(text), DangerWords::none) << text;
}

}  // namespace
}  // namespace burrow
