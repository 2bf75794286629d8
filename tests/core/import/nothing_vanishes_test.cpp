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

// The trap: hatching farther off used up the questions, and the line beside the bore was only drawn.
TEST_F(NothingVanishes, NearestOfManyUnknownLines_IsAsked) {
  std::string entities;
  for (int i = 0; i < 60; ++i) entities += drawing_line("HATCHX", -5, 10 + i * 0.01, 0, 20, 10 + i * 0.01, 0);
  write("a.dxf", drawing("6", entities + drawing_line("QX-17", -5, 1.2, 0, 20, 1.2, 0)));
  const Imported imported = cut({file("a.dxf")});
  EXPECT_EQ(imported.utilities.size(), 60u);
  EXPECT_TRUE(std::any_of(imported.utilities.begin(), imported.utilities.end(),
                          [](const Utility& u) { return std::abs(u.path.front().y_m - 1.2) < 1e-9; }));
  EXPECT_TRUE(has_question(imported, "others lie nearer")) << "what is only drawn is said";
  EXPECT_TRUE(asks(judged(imported), "utility-depth"));
}

// In a dense place the nearest come in whatever the order; what lies near and finds no room stops the import.
TEST_F(NothingVanishes, MoreUtilitiesThanAreTaken_TheNearestComeIn) {
  std::string far, near;
  for (int i = 0; i < 510; ++i) far += drawing_line("WATER", -5, 30 + i * 0.01, 0, 20, 30 + i * 0.01, 0);
  for (int i = 0; i < 510; ++i) near += drawing_line("WATER", -5, 3 + i * 0.01, 0, 20, 3 + i * 0.01, 0);
  write("far.dxf", drawing("6", far + drawing_line("GAS", 8, -5, 0, 8, 5, 0)));
  const Imported imported = cut({file("far.dxf")});
  EXPECT_EQ(imported.utilities.size(), 500u);
  EXPECT_EQ(imported.utilities.back().kind, UtilityKind::gas);
  write("near.dxf", drawing("6", near));
  const auto refused = into_crossing({file("near.dxf")}, {{0, 0}, {14, 0}});
  ASSERT_FALSE(refused);
  EXPECT_THAT(refused.error().found.english(), HasSubstr("more than 500 lines"));
  // A valve at the bore takes the place of the farthest line.
  write("valve.csv", "1,2.0,6.0,100.2,GV\n2,-3,-3,100,GND\n3,9,20,100,GND\n");
  const Imported valve = cut({file("valve.csv"), file("far.dxf")});
  EXPECT_EQ(valve.utilities.size(), 500u);
  EXPECT_EQ(valve.utilities.back().path.size(), 1u);
}

std::string polyface(const std::string& layer, const std::vector<Point3>& corners,
                     const std::vector<std::array<int, 4>>& faces) {
  std::string text = pair(0, "POLYLINE") + pair(8, layer) + pair(66, "1") + pair(70, "64") + pair(10, "0") +
                     pair(20, "0") + pair(30, "0") + pair(71, std::to_string(corners.size())) +
                     pair(72, std::to_string(faces.size()));
  for (const Point3& p : corners)
    text += pair(0, "VERTEX") + pair(8, layer) + pair(70, "192") + pair(10, std::to_string(p.x_m)) +
            pair(20, std::to_string(p.y_m)) + pair(30, std::to_string(p.z_m));
  for (const auto& face : faces) {
    text += pair(0, "VERTEX") + pair(8, layer) + pair(70, "128") + pair(10, "0") + pair(20, "0") + pair(30, "0");
    for (std::size_t k = 0; k < face.size(); ++k) text += pair(71 + static_cast<int>(k), std::to_string(face[k]));
  }
  return text + pair(0, "SEQEND") + pair(8, layer);
}

/// A square pipe across the bore, of four faces.
std::string square_pipe(const std::string& layer) {
  const auto corners = [](double y) {
    return std::vector<Point3>{{5, y, 98}, {5.2, y, 98}, {5.2, y, 98.2}, {5, y, 98.2}};
  };
  std::vector<Point3> all = corners(-5), end = corners(5);
  all.insert(all.end(), end.begin(), end.end());
  return polyface(layer, all, {{1, 2, 6, 5}, {2, 3, 7, 6}, {3, 4, 8, 7}, {4, 1, 5, 8}});
}

// A utility drawn as faces vanished; one on a layer that nobody knows became the ground.
TEST_F(NothingVanishes, UtilitiesDrawnAsFaces_AreJudged) {
  for (const char* layer : {"GAS", "QX"}) {
    write("a.dxf", drawing("6", square_pipe(layer)));
    const ImportFile read_file = file("a.dxf");
    ASSERT_FALSE(read_file.found->surfaces.empty()) << "as GDAL reads it";
    const Imported imported = cut({read_file});
    EXPECT_TRUE(imported.ground.empty()) << layer;
    ASSERT_FALSE(imported.utilities.empty()) << layer;
    EXPECT_EQ(imported.utilities[0].kind, layer[0] == 'G' ? UtilityKind::gas : UtilityKind::unknown);
    EXPECT_FALSE(imported.asked.empty()) << layer;
    const Assessment answer = judged(imported);
    EXPECT_EQ(answer.verdict, Verdict::incomplete) << layer;
    EXPECT_TRUE(asks(answer, "utility-depth")) << layer;
  }
}

// Two surfaces of LandXML of which nobody knows which is today's ground are no utilities.
TEST_F(NothingVanishes, SurfacesOfLandXml_AreAskedAndNotUsed) {
  const auto surface = [](const char* name, const char* z) {
    std::string points;
    int id = 0;
    for (const char* place : {"-20 -20 ", "20 -20 ", "20 40 ", "-20 40 "})
      points += "<P id='" + std::to_string(++id) + "'>" + place + z + "</P>";
    return std::string("<Surface name='") + name + "'><Definition surfType='TIN'><Pnts>" + points +
           "</Pnts><Faces><F>1 2 3</F><F>1 3 4</F></Faces></Definition></Surface>";
  };
  write("a.xml", "<LandXML><Units><Metric linearUnit='meter'/></Units><Surfaces>" + surface("QA", "100") +
                     surface("QB", "101") + "</Surfaces></LandXML>");
  const Imported imported = cut({file("a.xml")});
  EXPECT_TRUE(imported.ground.empty());
  EXPECT_TRUE(imported.utilities.empty());
  EXPECT_TRUE(has_question(imported, "ground of today"));
}

// Drawn flat, faces without a height are areas of the plan.
TEST_F(NothingVanishes, FlatFacesStayInThePlan) {
  write("a.dxf", drawing("6", polyface("GAS", {{5, -5, 0}, {5.2, -5, 0}, {5.2, 5, 0}, {5, 5, 0}}, {{1, 2, 3, 4}})));
  const Imported imported = cut({file("a.dxf")});
  ASSERT_FALSE(imported.utilities.empty());
  EXPECT_EQ(imported.utilities[0].kind, UtilityKind::gas);
  EXPECT_EQ(judged(imported).verdict, Verdict::incomplete);
}

// Points that were to be joined and stand too far apart are services all the same.
TEST_F(NothingVanishes, PointsTooFarApartToBeJoined) {
  write("a.csv", "1,-20,6.0,99,GV\n2,2.0,40.0,99,GV\n3,20,6.0,99,GV\n4,2,6,99.1,GV\n5,-3,-3,100,GND\n");
  ImportFile joined = file("a.csv");
  for (std::size_t i = 0; i < joined.layers.size(); ++i) joined.layers[i].join_points = joined.found->layers[i] == "GV";
  const Imported imported = cut({joined});
  EXPECT_TRUE(has_question(imported, "were not joined")) << "a gap that passes the bore";
  EXPECT_TRUE(std::any_of(imported.left_out.begin(), imported.left_out.end(), [](const LeftOut& l) {
    return l.matters && l.reason.find("not joined") != std::string::npos;
  }));
  write("b.csv", "1,2.0,6.0,99,GV\n2,42.0,6.0,99,GV\n3,-3,-3,100,GND\n");
  ImportFile apart = file("b.csv");
  for (std::size_t i = 0; i < apart.layers.size(); ++i) apart.layers[i].join_points = apart.found->layers[i] == "GV";
  const Imported alone = cut({apart});
  ASSERT_EQ(alone.utilities.size(), 1u);
  EXPECT_EQ(alone.utilities[0].path.size(), 1u);
  EXPECT_TRUE(has_question(alone, "a service nobody drew"));
  EXPECT_EQ(judged(alone).verdict, Verdict::incomplete);
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

ImportFile plan_of(double low, double wide, std::optional<FileUnit> unit = {}) {
  auto found = std::make_shared<Found>();
  found->layers = {"K"};
  found->vertices = {{low, low, {}}, {low + wide, low, {}}, {low, low + wide, {}}, {low + wide, low + wide, {}}};
  for (std::size_t i = 0; i < 4; i += 2) found->features.push_back({Shape::line, 0, i, 2, 1, {}, {}, {}, {}, false});
  found->features.push_back({Shape::point, 0, 0, 1, 1, {}, {}, {}, {}, false});
  found->frame.unit = unit;
  ImportFile file;
  file.found = found;
  file.layers = {{}};
  return file;
}

// A second drawing in another unit, of which nothing says so.
TEST(Scale, SecondFile_MustFitTheFirst) {
  const CrossingLine line{{0, 0}, {12, 0}};
  const auto doubt = [&](const ImportFile& second) {
    return scale_doubt({plan_of(0, 40, FileUnit::metre), second}, 1, line, std::nullopt);
  };
  EXPECT_FALSE(doubt(plan_of(0, 40)));
  EXPECT_FALSE(doubt(plan_of(0, 300)));
  EXPECT_TRUE(doubt(plan_of(0, 40'000))) << "millimetres";
  EXPECT_TRUE(doubt(plan_of(0, 1575))) << "inches";
  EXPECT_TRUE(doubt(plan_of(0, 3))) << "smaller than a third of the crossing";
  EXPECT_TRUE(doubt(plan_of(8.6, 0.001))) << "degrees";
  EXPECT_FALSE(doubt(plan_of(0, 40'000, FileUnit::millimetre)));
  ImportFile yards = plan_of(0, 40);
  auto found = std::make_shared<Found>(*yards.found);
  found->frame.unit_is_foreign = true;
  yards.found = found;
  EXPECT_TRUE(doubt(yards));
  yards.unit = FileUnit::foot;
  EXPECT_FALSE(doubt(yards)) << "said by the person";
  // A system that a person says of a plan tells nothing of its size.
  ImportFile placed = plan_of(0, 3);
  placed.said_frame = FoundFrame{"EPSG:25832", false, FileUnit::metre, {}, {}, false, false};
  EXPECT_TRUE(doubt(placed));
}

TEST(Scale, HeightsOfAPlanInFeet_MustBeSaid) {
  ImportFile file = plan_of(1e6, 40);
  file.layers[0].meaning = Meaning::ground;
  file.said_frame = FoundFrame{"EPSG:2263", false, FileUnit::us_survey_foot, {}, {}, false, false};
  EXPECT_FALSE(heights_in_doubt(file)) << "it has none";
  auto found = std::make_shared<Found>(*file.found);
  for (FoundVertex& v : found->vertices) v.z_m = 30;
  file.found = found;
  EXPECT_TRUE(heights_in_doubt(file));
  file.layers[0].meaning = Meaning::background;
  EXPECT_FALSE(heights_in_doubt(file)) << "nobody uses them";
  file.layers[0].meaning = Meaning::undecided;
  EXPECT_TRUE(heights_in_doubt(file));
  file.height_unit = FileUnit::us_survey_foot;
  EXPECT_FALSE(heights_in_doubt(file));
  file.height_unit.reset();
  file.said_frame->unit = FileUnit::metre;
  EXPECT_FALSE(heights_in_doubt(file));
}

}  // namespace
}  // namespace burrow::test
