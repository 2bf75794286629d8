// Words of danger in notes.
#include "burrow/crossing/danger_words.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

TEST(DangerWords, Surely) {
  for (const char* text : {"smell of gas", "Struck gas", "HISSING", "smoke", "Gasgeruch", "es zischt",
                           "Rauch im Schacht", "Kabel getroffen", "a spark", "lights went out", "it smells", "burst",
                           "the water main ruptured", "Wasserrohrbruch"})
    EXPECT_EQ(danger_in(text), DangerWords::surely) << text;
}

// A crew writes in its own language.
TEST(DangerWords, Spanish) {
  for (const char* text : {"humo", "Huele a gas", "olor en el foso", "silba", "hay una fuga", "se fue la luz",
                           "chispas", "reventó el tubo", "el cable está roto", "derrumbe", "fuego"})
    EXPECT_EQ(danger_in(text), DangerWords::surely) << text;
  for (const char* text : {"agua en el foso", "golpe seco", "suena a metálico", "manguera rota", "un hueco"})
    EXPECT_EQ(danger_in(text), DangerWords::maybe) << text;
  for (const char* text : {"llama el dueño a las nueve", "todo bien", "piedra blanca", "despacio aquí"})
    EXPECT_EQ(danger_in(text), DangerWords::none) << text;
}

// What was done to a line is no puddle.
TEST(DangerWords, LineHitOrBroken) {
  for (const char* text : {"hit the gas main", "broke a water pipe", "Leitung beschädigt", "damaged the duct",
                           "Kabel erwischt", "golpe al tubo"})
    EXPECT_EQ(danger_in(text), DangerWords::surely) << text;
}

TEST(DangerWords, Maybe) {
  for (const char* text :
       {"gas main exposed", "hit a stone", "sounds of metal", "water in the pit", "Wasser", "it hit", "broken stone"})
    EXPECT_EQ(danger_in(text), DangerWords::maybe) << text;
}

TEST(DangerWords, None) {
  for (const char* text : {"", "coffee", "neuer Hammer gebraucht", "slow here", "white stone", "listen", "Fleck"})
    EXPECT_EQ(danger_in(text), DangerWords::none) << text;
}

}  // namespace
}  // namespace burrow
