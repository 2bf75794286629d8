#include "burrow/base/quantity_apart.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

// The case that was found: a launch at 100.86 said "0.70 m clear, 0.70 m required", and stop.
TEST(QuantityApart, WhatDiffersReadsDifferently) {
  const auto text = [](double a, double b) { return format_apart(a, b, Dimension::length, UnitSystem::metric); };
  EXPECT_EQ(text(0.6994, 0.7006), "0.699 m");
  EXPECT_EQ(text(0.7006, 0.6994), "0.701 m");
  EXPECT_EQ(text(0.69996, 0.70004), "0.69996 m");
  EXPECT_EQ(text(0.61, 0.70), "0.61 m") << "no more digits than needed";
  EXPECT_EQ(text(0.7, 0.7), "0.70 m") << "what is equal may read so";
  EXPECT_EQ(text(0.7, 0.7 + 1e-9), "0.70 m") << "beyond five digits nobody measures";
  EXPECT_EQ(format(0.6994, Dimension::length, UnitSystem::metric), "0.70 m") << "others stay as they are";
}

TEST(QuantityApart, InFeetAndInchesToo) {
  const std::string a = format_apart(0.6994, 0.7002, Dimension::length, UnitSystem::us);
  const std::string b = format_apart(0.7002, 0.6994, Dimension::length, UnitSystem::us);
  EXPECT_NE(a, b);
}

}  // namespace
}  // namespace burrow
