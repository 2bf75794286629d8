// Attributes of features: guessed, decided, used, and said where they were not.

#include "burrow/import/fields.h"

#include <gmock/gmock.h>

#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

FoundTable table_of(const std::vector<std::string>& columns, const std::vector<std::vector<std::string>>& rows) {
  FoundTable table;
  for (const std::string& name : columns) table.fields.push_back({name});
  for (const auto& row : rows)
    for (const std::string& text : row) {
      table.texts.push_back(text);
      table.cells.push_back(text.empty() ? 0 : static_cast<std::uint32_t>(table.texts.size()));
    }
  return table;
}

TEST(Fields, Guess_ByNameAndValues) {
  const auto of = [](const char* name, std::vector<std::string> values) {
    std::vector<std::vector<std::string>> rows;
    for (std::string& v : values) rows.push_back({std::move(v)});
    return guessed_fields(table_of({name}, rows)).at(0);
  };
  EXPECT_EQ(of("DIAMETER", {"4", "6", "8"}).use, FieldUse::diameter);
  EXPECT_EQ(of("DIAMETER", {"4", "6", "8"}).unit, FileUnit::inch);
  EXPECT_EQ(of("DIAMETER", {"100", "150"}).unit, FileUnit::millimetre);
  EXPECT_FALSE(of("DIAMETER", {"4", "7.3"}).unit) << "nothing tells";
  EXPECT_FALSE(of("DIAMETER", {"4", "6"}).is_decided) << "a guess by values is a guess";
  EXPECT_TRUE(of("diam_mm", {"4"}).is_decided);
  EXPECT_EQ(of("diam_mm", {"4"}).unit, FileUnit::millimetre);
  EXPECT_EQ(of("Nennweite", {"300"}).use, FieldUse::diameter);
  EXPECT_EQ(of("OutsideDiameterMM", {"110"}).diameter, DiameterMeant::outside);
  EXPECT_EQ(of("inside_diameter_in", {"8"}).diameter, DiameterMeant::inside);
  EXPECT_EQ(of("MATERIAL", {"PE"}).use, FieldUse::material);
  EXPECT_EQ(of("Werkstoff", {"PE"}).use, FieldUse::material);
  EXPECT_EQ(of("COVER_M", {"1.1"}).level, LevelMeant::crown);
  EXPECT_EQ(of("Tiefe", {"1.1"}).use, FieldUse::depth);
  EXPECT_EQ(of("US_INVERT", {"101"}).use, FieldUse::invert_start);
  EXPECT_EQ(of("downstream_invert_elev", {"101"}).use, FieldUse::invert_end);
  EXPECT_EQ(of("LIFECYCLESTATUS", {"x"}).use, FieldUse::status);
  EXPECT_EQ(of("OWNER", {"x"}).use, FieldUse::owner);
  EXPECT_EQ(of("OBJECTID", {"17"}).use, FieldUse::not_used);
  EXPECT_EQ(of("SHAPE_Length", {"17"}).use, FieldUse::not_used);
}

TEST(Fields, Cell_NumbersWithTheirUnit) {
  const auto unit = [](const char* text) { return number_in_cell(text)->unit; };
  EXPECT_EQ(number_in_cell("150"), (CellNumber{150, {}}));
  EXPECT_EQ(unit("6\""), FileUnit::inch);
  EXPECT_EQ(unit("6 in"), FileUnit::inch);
  EXPECT_EQ(unit("0,1 m"), FileUnit::metre);
  EXPECT_EQ(number_in_cell("0,1 m")->value, 0.1);
  EXPECT_EQ(number_in_cell("DN 100"), (CellNumber{100, {}}));
  for (const char* text : {"", "unknown", "2x100", "100/110", "4-6", "about 3", "100 or so", "1e999", "nan"})
    EXPECT_FALSE(number_in_cell(text)) << text;
}

TEST(Fields, Status_OnlyKnownWords) {
  EXPECT_EQ(status_in("Abandoned in place"), UtilityStatus::abandoned);
  EXPECT_EQ(status_in("ACTIVE"), UtilityStatus::live);
  EXPECT_EQ(status_in("außer Betrieb"), UtilityStatus::abandoned);
  EXPECT_EQ(status_in("in Betrieb"), UtilityStatus::live);
  EXPECT_EQ(status_in("proposed"), UtilityStatus::proposed);
  for (const char* text : {"", "7", "not abandoned", "live/abandoned", "INACTIVATED?", "unknown"})
    EXPECT_FALSE(status_in(text)) << text;
}

TEST(Fields, CommandLine_Words) {
  const FoundTable table = table_of({"DIAMETER", "COVER", "DN"}, {{"4", "1.1", "100"}});
  const auto good = with_fields(table, guessed_fields(table), {"diameter=dn:mm:inside", "depth=COVER:m:crown"});
  ASSERT_TRUE(good);
  EXPECT_EQ(good->at(0).use, FieldUse::not_used) << "one column for one thing";
  EXPECT_EQ(good->at(2), (FieldChoice{FieldUse::diameter, FileUnit::millimetre, DiameterMeant::inside, {}, true}));
  EXPECT_EQ(good->at(1), (FieldChoice{FieldUse::depth, FileUnit::metre, {}, LevelMeant::crown, true}));
  for (const char* word : {"diameter", "girth=DN:mm", "diameter=DN", "diameter=DN:ell", "depth=COVER:m:top"})
    EXPECT_FALSE(with_fields(table, {}, {word})) << word;
}

TEST(Fields, Remembered_ForTheNextFileOfThatShape) {
  const FoundTable table = table_of({"A", "B"}, {{"4", "x"}}), other = table_of({"A", "C"}, {{"4", "x"}});
  const std::vector<FieldChoice> choices{{FieldUse::diameter, FileUnit::inch, DiameterMeant::outside, {}, true}, {}};
  std::vector<FieldShape> shapes = remembered({}, table, choices);
  const auto back = read_field_shapes(write_field_shapes(shapes));
  ASSERT_TRUE(back) << back.error().english();
  EXPECT_EQ(*back, shapes);
  EXPECT_EQ(fields_for(table, shapes).at(0), choices[0]);
  EXPECT_EQ(fields_for(other, shapes), guessed_fields(other));
  for (const char* text :
       {"", "{}", "[1]", R"([{"columns":["A"],"choices":[]}])", R"([{"columns":["A"],"choices":[{"use":"gold"}]}])"})
    EXPECT_FALSE(read_field_shapes(text)) << text;
}

class FieldsOfFiles : public WithFolder {
 protected:
  Imported cut(const std::vector<std::string>& fields) {
    write(
        "a.geojson",
        R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":{"layer":"gas","DIAMETER":4,"MATERIAL":"PE",
          "DEPTH":1.1,"status":"abandoned","OWNER":"the district"},"geometry":{"type":"LineString","coordinates":[[9,49.9999],[9,50.0001]]}}]})");
    write("g.csv",
          "Longitude,Latitude,Height,Code\n8.9999,49.9999,100,GND\n8.9999,50.0001,100,GND\n9.0002,50.0001,100,GND\n"
          "9.0002,49.9999,100,GND\n");
    ImportFile mains = import_file(std::make_shared<const Found>(read("a.geojson")), built_in_meanings());
    auto chosen = with_fields(mains.found->table, mains.fields, fields);
    EXPECT_TRUE(chosen);
    mains.fields = *chosen;
    const ImportFile ground = import_file(std::make_shared<const Found>(read("g.csv")), built_in_meanings());
    const auto imported = into_crossing({mains, ground}, {{8.99995, 50}, {9.0001, 50}});
    EXPECT_TRUE(imported) << imported.error().english();
    return imported.value_or(Imported{});
  }
};

TEST_F(FieldsOfFiles, Guesses_AreSaidAndNotUsed) {
  const Imported imported = cut({});
  ASSERT_EQ(imported.utilities.size(), 1u);
  const Utility& u = imported.utilities[0];
  EXPECT_FALSE(u.outside_diameter) << "4 of what nobody said";
  EXPECT_FALSE(u.path[0].z_m);
  EXPECT_EQ(u.material, "PE");
  EXPECT_EQ(u.owner, "the district");
  EXPECT_EQ(*u.status, UtilityStatus::abandoned);
  EXPECT_TRUE(std::any_of(imported.left_out.begin(), imported.left_out.end(), [](const LeftOut& l) {
    return l.text.find("diameter 4") != std::string::npos && l.reason.find("nobody said") != std::string::npos;
  }));
}

TEST_F(FieldsOfFiles, Decided_AreUsed) {
  const Imported imported = cut({"diameter=DIAMETER:in", "depth=DEPTH:m:crown"});
  ASSERT_EQ(imported.utilities.size(), 1u);
  const Utility& u = imported.utilities[0];
  ASSERT_TRUE(u.outside_diameter);
  EXPECT_GE(u.outside_diameter->m, 4.5 * 0.0254) << "4 in nominal is 4.5 in outside, IPS (from memory)";
  ASSERT_TRUE(u.path[0].z_m);
  EXPECT_NEAR(*u.path[0].z_m, 100 - 1.1 - u.outside_diameter->m / 2, 1e-6);
  EXPECT_EQ(u.recorded.diameter, DiameterMeant::nominal);
  const Imported no_level = cut({"depth=DEPTH:m"});
  EXPECT_FALSE(no_level.utilities.at(0).path[0].z_m) << "of the crown or the invert, nobody said";
}

// A sewer whose inverts nobody knows lay 8 m below the ground, far from the bore.
TEST_F(FieldsOfFiles, Inverts_OfZeroAreNotGiven) {
  const auto sewer = [&](const char* start, const char* end, const char* more) {
    write("a.geojson", std::string(R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":)"
                                   R"({"layer":"sewer","MATERIAL":"PE","OD_MM":200,"UPELEV_FT":)") +
                           start + R"(,"DOWNELEV_FT":)" + end +
                           R"(},"geometry":{"type":"LineString","coordinates":[[9,49.9999],[9,50.0001]]}})" + more +
                           "]}");
    const ImportFile mains = import_file(std::make_shared<const Found>(read("a.geojson")), built_in_meanings());
    const auto imported = into_crossing({mains}, {{8.99995, 50}, {9.0001, 50}});
    EXPECT_TRUE(imported) << imported.error().english();
    return imported.value_or(Imported{});
  };
  const Imported unknown = sewer("0", "0", "");
  ASSERT_EQ(unknown.utilities.size(), 1u);
  for (const PathVertex& v : unknown.utilities[0].path) EXPECT_FALSE(v.z_m);
  EXPECT_TRUE(std::any_of(unknown.left_out.begin(), unknown.left_out.end(), [](const LeftOut& l) {
    return l.reason.find("a 0 says that nobody knows") != std::string::npos;
  }));
  const Imported known = sewer("20", "21", "");
  EXPECT_TRUE(known.utilities.at(0).path.at(0).z_m);
  const Imported near_datum =
      sewer("0", "0",
            R"(,{"type":"Feature","properties":{"layer":"sewer","UPELEV_FT":0.5,"DOWNELEV_FT":-0.5},)"
            R"("geometry":{"type":"LineString","coordinates":[[9,49.9999],[9.001,49.9999]]}})");
  EXPECT_TRUE(near_datum.utilities.at(0).path.at(0).z_m) << "a place near the datum";
}

// "Future" in a column of that name is not known of a line that lies in the road.
TEST_F(FieldsOfFiles, ProposedStaysUnknown) {
  write("a.geojson", R"({"type":"Feature","properties":{"layer":"gas","STATUS":"Future"},"geometry":)"
                     R"({"type":"LineString","coordinates":[[9,49.9999],[9,50.0001]]}})");
  const ImportFile mains = import_file(std::make_shared<const Found>(read("a.geojson")), built_in_meanings());
  const auto imported = into_crossing({mains}, {{8.99995, 50}, {9.0001, 50}});
  ASSERT_TRUE(imported);
  EXPECT_EQ(*imported->utilities.at(0).status, UtilityStatus::unknown);
  EXPECT_TRUE(std::any_of(imported->left_out.begin(), imported->left_out.end(),
                          [](const LeftOut& l) { return l.reason.find("not built yet") != std::string::npos; }));
}

// A line of two points that is cut at both ends is not whole, though it has two points again.
TEST_F(FieldsOfFiles, Inverts_OfACutLineAreNotThoseOfItsEnds) {
  write(
      "a.geojson",
      R"({"type":"Feature","properties":{"layer":"sewer","OD_MM":200,"MATERIAL":"PE","UPELEV_FT":300,"DOWNELEV_FT":20},)"
      R"("geometry":{"type":"LineString","coordinates":[[9,49.9],[9,50.1]]}})");
  const ImportFile mains = import_file(std::make_shared<const Found>(read("a.geojson")), built_in_meanings());
  const auto imported = into_crossing({mains}, {{8.99995, 50}, {9.0001, 50}});
  ASSERT_TRUE(imported);
  EXPECT_FALSE(imported->utilities.at(0).path.at(0).z_m);
}

TEST_F(FieldsOfFiles, EveryKind_HasItsTable) {
  write_lines("GPKG", path("c.gpkg"), 25832, {{{500010, 5540020, 1}, {500020, 5540030, 1}}});
  write_lines("ESRI Shapefile", path("b.shp"), 25832, {{{500010, 5540020, 1}, {500020, 5540030, 1}}});
  write_lines("LIBKML", path("d.kml"), 4326, {{{9, 50, 1}, {9.1, 50, 1}}});
  for (const char* name : {"c.gpkg", "b.shp", "d.kml"}) {
    const Found found = read(name);
    const auto kind = std::find(found.table.fields.begin(), found.table.fields.end(), FoundField{"kind"});
    ASSERT_NE(kind, found.table.fields.end()) << name;
    EXPECT_EQ(found.table.text(0, static_cast<std::size_t>(kind - found.table.fields.begin())), "gas main") << name;
  }
}

// Altitudes of KML: on the ground, above it, above the sea.
TEST_F(FieldsOfFiles, Altitudes_AsTheFileSays) {
  const auto line = [](const char* mode, double z) {
    return std::string("<Placemark><LineString><altitudeMode>") + mode + "</altitudeMode><coordinates>9,49.9999," +
           std::to_string(z) + " 9,50.0001," + std::to_string(z) + "</coordinates></LineString></Placemark>";
  };
  write("a.kml",
        "<?xml version=\"1.0\"?><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Folder><name>gas</name>" +
            line("clampToGround", 7) + line("relativeToGround", -1.2) + line("absolute", 118.5) +
            "</Folder></Document></kml>");
  const Found found = read("a.kml");
  ASSERT_EQ(found.features.size(), 3u);
  EXPECT_FALSE(found.vertices[found.features[0].first].z_m);
  EXPECT_EQ(found.features[1].from, DepthFrom::ground);
  EXPECT_EQ(found.features[2].from, DepthFrom::datum);
  EXPECT_TRUE(std::any_of(found.left_out.begin(), found.left_out.end(),
                          [](const LeftOut& l) { return l.reason.find("on the ground") != std::string::npos; }));
}

}  // namespace
}  // namespace burrow::test
