// What nobody decided never ends in "within limits": whole imports, judged.

#include <gmock/gmock.h>

#include "burrow/check/assess.h"
#include "burrow/import/scale.h"
#include "support/clean_crossing.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

class NothingVanishes : public WithFolder {
 protected:
  ImportFile file(const std::string& name) const {
    return import_file(std::make_shared<const Found>(read(name)), built_in_meanings());
  }
  static Imported cut(const std::vector<ImportFile>& files, const CrossingLine& line = {{0, 0}, {14, 0}}) {
    const Result<Imported> imported = into_crossing(files, line);
    EXPECT_TRUE(imported) << imported.error().english();
    return imported.value_or(Imported{});
  }
  /// A crossing that is within limits, with what was imported beside it.
  static Assessment judged(const Imported& imported) {
    Imported beside = imported;
    beside.ground.clear();  // its own ground stays
    return assess(with_imported(clean_crossing(), beside), tables());
  }
  static bool asks(const Assessment& answer, std::string_view what) {
    return std::any_of(answer.findings.begin(), answer.findings.end(),
                       [&](const Finding& f) { return f.code == "missing." + std::string(what); });
  }
  static bool has_question(const Imported& imported, std::string_view reason) {
    return std::any_of(imported.asked.begin(), imported.asked.end(),
                       [&](const LeftOut& l) { return l.reason.find(reason) != std::string::npos; });
  }
};

TEST_F(NothingVanishes, CleanCrossing_IsWithinLimitsByItself) {
  EXPECT_EQ(judged(Imported{}).verdict, Verdict::within_limits);
}

// A live line on a layer that nobody knows, across the bore.
TEST_F(NothingVanishes, UnknownLayer_IsAskedAndIncomplete) {
  write("a.dxf", drawing("6", drawing_line("QX-17", 5, -5, 0, 5, 5, 0)));
  const Imported imported = cut({file("a.dxf")});
  ASSERT_EQ(imported.utilities.size(), 1u);
  EXPECT_EQ(imported.utilities[0].kind, UtilityKind::unknown);
  EXPECT_TRUE(imported.background.empty());
  EXPECT_TRUE(has_question(imported, "nobody said what they are"));
  const Assessment answer = judged(imported);
  EXPECT_EQ(answer.verdict, Verdict::incomplete);
  EXPECT_TRUE(asks(answer, "utility-depth"));
  EXPECT_TRUE(asks(answer, "utility-diameter"));
}

// Beside the bore, where a line that is only drawn is not asked about.
TEST_F(NothingVanishes, UnknownLayer_BesideTheBoreToo) {
  write("a.dxf", drawing("6", drawing_line("QX-17", -5, 0.4, 0, 20, 0.4, 0)));
  const Assessment answer = judged(cut({file("a.dxf")}));
  EXPECT_NE(answer.verdict, Verdict::within_limits);
  EXPECT_TRUE(asks(answer, "utility-depth"));
}

// Background is a decision; the verdict's own rule then asks where the bore meets it.
TEST_F(NothingVanishes, Background_FollowsTheVerdictsRule) {
  write("a.dxf", drawing("6", drawing_line("QX-17", 5, -5, 0, 5, 5, 0)));
  ImportFile decided = file("a.dxf");
  decided.layers[0].meaning = Meaning::background;
  const Imported imported = cut({decided});
  EXPECT_TRUE(imported.utilities.empty());
  EXPECT_TRUE(imported.asked.empty());
  EXPECT_TRUE(asks(judged(imported), "background-line"));
}

// More lines than anybody can be asked about: drawn, and asked about where the bore meets them.
TEST_F(NothingVanishes, ManyUnknownLines_StayJudged) {
  std::string entities;
  for (int i = 0; i < 200; ++i) entities += drawing_line("HAIR", 5 + i * 0.001, -5, 0, 5 + i * 0.001, 5, 0);
  write("a.dxf", drawing("6", entities + drawing_line("GAS", 8, -5, 0, 8, 5, 0)));
  const Imported imported = cut({file("a.dxf")});
  EXPECT_LE(imported.utilities.size(), 70u);
  EXPECT_TRUE(std::any_of(imported.utilities.begin(), imported.utilities.end(), [](const Utility& u) {
    return u.kind == UtilityKind::gas;
  })) << "what is known takes its place first";
  ASSERT_EQ(imported.background.size(), 1u);
  EXPECT_TRUE(asks(judged(imported), "background-line"));
}

TEST_F(NothingVanishes, Structures_AreServicesNobodyDrew) {
  write("a.csv", "1,2.0,6.0,100.2,SSMH\n2,-3,-3,100,GND\n3,9,20,100,GND\n4,-9,9,100.1,GND\n");
  const Imported imported = cut({file("a.csv")});
  ASSERT_EQ(imported.utilities.size(), 1u);
  EXPECT_EQ(imported.utilities[0].kind, UtilityKind::sewer);
  ASSERT_EQ(imported.utilities[0].path.size(), 1u);
  EXPECT_NEAR(imported.utilities[0].path[0].x_m, 6, 1e-9);
  EXPECT_TRUE(has_question(imported, "a service nobody drew"));
  EXPECT_THAT(imported.asked.at(0).text, HasSubstr("station 6.00 m, offset 2.00 m"));
  EXPECT_EQ(judged(imported).verdict, Verdict::incomplete);
  // With the sewer drawn through it nothing is asked.
  write("b.dxf", drawing("6", drawing_line("SEWER", 6, -9, 0, 6, 9, 0)));
  const Imported drawn = cut({file("a.csv"), file("b.dxf")});
  EXPECT_EQ(drawn.utilities.size(), 1u);
  EXPECT_FALSE(has_question(drawn, "a service nobody drew"));
}

// The trap: inverts of a culvert pulled the ground down by half a metre.
TEST_F(NothingVanishes, UnknownCodes_AreNotGround) {
  std::string text;
  int number = 0;
  for (int x = -12; x <= 26; x += 2)
    for (int y = -8; y <= 8; y += 4)
      text += std::to_string(++number) + "," + std::to_string(y) + "," + std::to_string(x) + ",100,GND\n";
  write("ground.csv", text);
  for (const char* code : {"CULV", "INV", "TW", "POLE", "MH", "BM", "QQ"}) {
    text += std::to_string(++number) + ",0.1,7.0,99.5," + code + "\n";
    text += std::to_string(++number) + ",-0.1,7.1,103," + code + "\n";
  }
  write("all.csv", text);
  const Imported bare = cut({file("ground.csv")}), all = cut({file("all.csv")});
  for (const double s : {0.0, 6.5, 7.0, 7.5, 14.0})
    EXPECT_NEAR(elevation_at(all.ground, s), elevation_at(bare.ground, s), 1e-6) << s;
  EXPECT_EQ(judged(all).verdict, Verdict::incomplete);
  // The person's tick makes ground.
  ImportFile ticked = file("all.csv");
  for (std::size_t i = 0; i < ticked.layers.size(); ++i)
    if (ticked.found->layers[i] == "QQ") ticked.layers[i].meaning = Meaning::ground;
  EXPECT_GT(std::abs(elevation_at(cut({ticked}).ground, 7.05) - 100), 0.1);
}

TEST_F(NothingVanishes, EdgesOfPavement_LieOnTheGround) {
  std::string text;
  int number = 0;
  for (int y = -8; y <= 8; y += 4) {
    text += std::to_string(++number) + "," + std::to_string(y) + ",-5,100,GND\n";
    text += std::to_string(++number) + "," + std::to_string(y) + ",7,101,EOP\n";
    text += std::to_string(++number) + "," + std::to_string(y) + ",20,100,GND\n";
  }
  write("a.csv", text);
  EXPECT_NEAR(elevation_at(cut({file("a.csv")}).ground, 7), 101, 1e-6);
}

// A pipe of which the inside alone is known is never taken for as thin as that.
TEST_F(NothingVanishes, InsideDiameter_IsMissingOrWidened) {
  const auto network = [&](const char* material) {
    write("a.xml", std::string("<LandXML><Units><Metric linearUnit='meter' diameterUnit='millimeter'/></Units>"
                               "<PipeNetworks><PipeNetwork name='storm'><Structs><Struct name='A'><Center>-5 5</Center>"
                               "<Invert refPipe='P' elev='97'/></Struct><Struct name='B'><Center>5 5</Center><Invert "
                               "refPipe='P' elev='97'/></Struct></Structs><Pipes><Pipe name='P' refStart='A' "
                               "refEnd='B'><CircPipe diameter='300' ") +
                       material + "/></Pipe></Pipes></PipeNetwork></PipeNetworks></LandXML>");
    return cut({file("a.xml")});
  };
  const Imported bare = network("");
  ASSERT_EQ(bare.utilities.size(), 1u);
  EXPECT_FALSE(bare.utilities[0].outside_diameter);
  EXPECT_EQ(bare.utilities[0].recorded.diameter, DiameterMeant::inside);
  EXPECT_NEAR(*bare.utilities[0].path[0].z_m, 97.15, 1e-9) << "the invert is the lowest of the inside";
  EXPECT_TRUE(asks(judged(bare), "utility-diameter"));
  const Imported known = network("material='concrete'");
  ASSERT_TRUE(known.utilities.at(0).outside_diameter);
  EXPECT_GE(known.utilities[0].outside_diameter->m, 0.44);
  EXPECT_EQ(known.utilities[0].recorded.diameter, DiameterMeant::inside);
}

// A plan that is a thousand times too large, or too small.
TEST(Scale, OurDefault_ThreeTimesOffMustBeConfirmed) {
  auto found = std::make_shared<Found>();
  found->layers = {"K"};
  found->vertices = {{0, 0, {}}, {40'000, 30'000, {}}};
  found->features = {{Shape::line, 0, 0, 2, 1, {}, {}, {}, {}, false}};
  ImportFile file;
  file.found = found;
  file.layers = {{}};
  const CrossingLine line{{0, 0}, {12'000, 0}};  // 12 m in millimetres
  EXPECT_TRUE(scale_doubt(file, line, std::nullopt));
  found->frame.unit = FileUnit::metre;
  found->frame.unit_is_doubtful = true;
  EXPECT_TRUE(scale_doubt(file, line, std::nullopt)) << "stated, and wrong";
  found->frame.unit = FileUnit::millimetre;
  EXPECT_FALSE(scale_doubt(file, line, std::nullopt));
  EXPECT_TRUE(scale_doubt(file, line, Length{2})) << "the open crossing is 2 m long";
  EXPECT_FALSE(scale_doubt(file, line, Length{14}));
  EXPECT_TRUE(scale_doubt(file, line, Length{40}));
  file.unit = FileUnit::metre;
  EXPECT_FALSE(scale_doubt(file, line, std::nullopt)) << "said by the person";
  file.unit.reset();
  file.unit_is_confirmed = true;
  EXPECT_FALSE(scale_doubt(file, line, Length{2}));
  const ScaleView view = scale_of(file, line);
  EXPECT_EQ(view.unit, FileUnit::millimetre);
  EXPECT_NEAR(view.wide.m, 40, 1e-9);
  EXPECT_NEAR(view.line->m, 12, 1e-9);
}

TEST(Scale, OurDefault_APlanSmallerThanTheCrossing) {
  auto found = std::make_shared<Found>();
  found->layers = {"K"};
  found->vertices = {{8.60, 49.00, {}}, {8.61, 49.01, {}}};
  found->features = {{Shape::line, 0, 0, 2, 1, {}, {}, {}, {}, false}};
  ImportFile file;
  file.found = found;
  file.layers = {{}};
  EXPECT_TRUE(scale_doubt(file, CrossingLine{{8.6, 49}, {18.6, 49}}, std::nullopt)) << "degrees read as metres";
}

}  // namespace
}  // namespace burrow::test
