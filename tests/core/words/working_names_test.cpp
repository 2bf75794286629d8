// What a person reads in the working: headings, symbols and names, none left a code.

#include "burrow/words/working_names.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>

#include "burrow/words/source_text.h"
#include "support/export_for_tests.h"

namespace burrow::test {
namespace {

TEST(WorkingNames, EachStep_HasAHeading) {
  std::set<std::string_view> codes;
  for (const std::string& name : sample_names())
    for (const Working& w : judged_sample(name).answer.working) codes.insert(w.code);
  EXPECT_GT(codes.size(), 40u);
  for (const std::string_view code : codes) {
    const std::string title = working_title(code);
    EXPECT_TRUE(title[0] >= 'A' && title[0] <= 'Z') << code << " is spelt out: " << title;
  }
  EXPECT_EQ(working_title("pit.new-thing"), "new thing");
}

// Every symbol is listed: of the result and of all that is put in.
TEST(WorkingNames, EachSymbol_StandsForSomething) {
  std::set<std::string> missing;
  for (const std::string& name : sample_names())
    for (const Working& w : judged_sample(name).answer.working) {
      if (symbol_meaning(w.code, w.symbol).empty()) missing.insert(std::string(w.code) + " " + std::string(w.symbol));
      for (const WorkingInput& i : w.inputs)
        if (symbol_meaning(w.code, i.symbol).empty()) missing.insert(std::string(w.code) + " " + std::string(i.symbol));
    }
  EXPECT_THAT(missing, ::testing::IsEmpty());
}

TEST(WorkingNames, Symbols_OfTheFormulaToo_EachOnce) {
  Working w;
  w.code = "utility.contact";
  w.formula = "P = Φ((R − δ)/s) − Φ((−R − δ)/s)";
  w.symbol = "P";
  w.inputs = {{"δ", 0.5, "m"}, {"R", 0.1, "m"}, {"R", 0.1, "m"}};
  std::vector<std::string> symbols;
  for (const SymbolMeaning& one : symbols_of(w)) symbols.push_back(one.symbol);
  EXPECT_THAT(symbols, ::testing::UnorderedElementsAre("P", "δ", "R", "s", "Φ"));
  w.formula = "t = 1";
  w.inputs.clear();
  for (const SymbolMeaning& one : symbols_of(w)) EXPECT_NE(one.symbol, "s") << "no part of another word";
}

TEST(WorkingNames, Layers_ShareOneMeaning) {
  EXPECT_EQ(symbol_meaning("pit.set-back", "t_3"), symbol_meaning("pit.set-back", "t"));
  EXPECT_FALSE(symbol_meaning("pit.set-back", "t_3").empty());
  EXPECT_EQ(symbol_meaning("pipe.live", "p_1"), "pressure by the first load model") << "a row of its own comes first";
}

TEST(WorkingNames, Place_IsANameAndNoId) {
  const Crossing& c = judged_sample("house-service").crossing;
  EXPECT_EQ(working_place(c, "launch-pit"), "launch pit");
  for (const Utility& u : c.site.utilities) EXPECT_EQ(working_place(c, u.id), u.name);
  Crossing nameless = c;
  nameless.site.utilities[0].name.clear();
  nameless.site.utilities[0].kind = UtilityKind::gas;
  EXPECT_EQ(working_place(nameless, nameless.site.utilities[0].id), "gas " + nameless.site.utilities[0].id);
}

// Not looked up: no limit to rely on.
TEST(SourceText, UnverifiedLimit_AsksForTheOwner) {
  const Source memory{"some code, clause 4", SourceLabel::from_memory};
  EXPECT_EQ(source_text(memory), "some code, clause 4 [unverified: nobody has looked this up]");
  EXPECT_EQ(limit_source_text(memory), "some code, clause 4 [unverified: confirm with the owner]");
  const Source read{"some code, clause 5", SourceLabel::read};
  EXPECT_EQ(limit_source_text(read), source_text(read));
}

}  // namespace
}  // namespace burrow::test
