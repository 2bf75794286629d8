// What layers and codes mean: names of many habits, English and German, and what they must never be taken for.

#include <gtest/gtest.h>

#include <map>

#include "burrow/import/meanings.h"
#include "layer_words.h"

namespace burrow::test {
namespace {

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = std::min(text.find('|'), text.size());
    parts.emplace_back(text.substr(0, end));
    if (end == text.size()) return parts;
    text.remove_prefix(end + 1);
  }
}

Meaning meaning_of_lines(const std::string& name) {
  static const MeaningTable table = built_in_meanings();
  Found found;
  found.format = "DXF drawing";
  found.layers = {name, "another"};
  LayerSummary layer;
  layer.name = name;
  layer.lines = layer.vertices = 1;
  return meaning_of(found, layer, table);
}

LayerReading reading_of_points(const std::string& code) {
  static const MeaningTable table = built_in_meanings();
  Found found;
  found.format = "survey points";
  found.layers = {code, "another"};
  LayerSummary layer;
  layer.name = code;
  layer.points = layer.vertices = layer.with_height = 3;
  return reading_of(found, layer, table);
}

// The list is our own: names as drawings of both languages have them (common practice, no source; the groups after a
// discipline letter are those of the national CAD standard of the US, from memory).
const std::map<Meaning, std::string_view>& names() {
  static const std::map<Meaning, std::string_view> all{
      {Meaning::gas,
       "GAS|U-GAS-MP|G-GAS|C-NGAS|C-NGAS-PIPE|C-NGAS-UNDR|V-NGAS|Gas Main|GasMain|GAS1|gas_100_pe|NATURAL GAS|"
       "EX-GAS|EXIST GAS LINE|GASLEITUNG|Gasleitung_HD|Erdgas|ERDGASLEITUNG|Gas-Hausanschluss|HD-GAS|GM|NG|UG_GAS|"
       "GAS-VALVE|Gasrohr|V-UTIL-GAS|LPG|BIOGASLEITUNG|Gasschieber|Gas (abandoned)"},
      {Meaning::oil,
       "OIL|OIL PIPELINE|Oil Line|C-FUEL|C-FUEL-PIPE|FUEL|DIESEL-LINE|PETROLEUM|Mineralölleitung|MINERALOELLEITUNG|"
       "Ölleitung|GAS OIL|CRUDE-24IN|Kerosin"},
      {Meaning::power,
       "ELEC|ELECTRIC|U-ELEC|V-UTIL-ELEC|C-POWR|C-POWR-UNDR|E-POWR|E-UG-HV|LV CABLE|HV CABLE|HV|LV|MV-Cable|11kV|"
       "20 kV|0.4kV|110KV Kabel|Stromkabel|STROMKABEL|Strom|NIEDERSPANNUNG|Niederspannungskabel|MITTELSPANNUNG|"
       "Mittelspannungskabel|Hochspannung|Starkstromkabel|STREET LIGHTING|Strassenbeleuchtung|Straßenbeleuchtung|"
       "UGE|UGElec|LOW VOLTAGE|LowVoltage|HIGH_VOLTAGE|Elektro|E-LITE|ELEKTROLEITUNG|CABLE-ELEC|Power Cable|UG POWER|"
       "TRAFFIC-SIGNAL|Lichtsignal|EHV"},
      {Meaning::water,
       "WATER|WATER MAIN|Watermain|C-WATR|C-WATR-PIPE|C-DOMW|W-MAIN|TRINKWASSER|Trinkwasserleitung|WASSERLEITUNG|"
       "Wasserversorgung|WTR|WL|WM|Potable Water|FIRE MAIN|FireHydrant|Hydrant|C-FIRE|EX WATER 100|Löschwasser|"
       "WATER-SERVICE|V-WATR|U-WATR|Wasser DN100|RAW WATER|C-WATR-HYDR"},
      {Meaning::sewer,
       "SEWER|SANITARY|C-SSWR|C-SSWR-PIPE|C-STRM|C-STRM-PIPE|C-SSWR-MHOL|V-STRM|SAN SEWER|Sanitary Sewer|STORM|"
       "STORM DRAIN|StormWater|WASTEWATER|Waste Water Main|WW-MAIN|FOUL|FW-FOUL|FOUL_SEWER|SURFACE WATER|SW-DRAIN|"
       "COMBINED SEWER|DRAINAGE|SSWR|STM|SS|RISING MAIN|FORCE MAIN|CULVERT|ABWASSER|Abwasserkanal|SCHMUTZWASSER|"
       "Schmutzwasserkanal|REGENWASSER|Regenwasserleitung|MISCHWASSER|Mischwasserkanal|Kanal|KANALISATION|"
       "Niederschlagswasser|ENTWÄSSERUNG|Entwaesserung|Durchlass|Straßenablauf|LAND DRAIN|GULLY|Catch Basin|SSMH|"
       "Drainageleitung|Haltungen|SEWAGE|Kanalschacht"},
      {Meaning::telecom,
       "TELECOM|TELECOM DUCT|U-TELECOM|Telecommunications|TELEKOM|TELEPHONE|C-COMM|C-COMM-UNDR|CATV|CABLE TV|FO|FOC|"
       "FIBRE OPTIC|FIBER|fiber-optic|FibreOptic|LWL|LWL-Kabel|Glasfaser|GLASFASERKABEL|FERNMELDEKABEL|Fernmelde|"
       "Telefonkabel|Fernsprechkabel|Breitband|BROADBAND|COMMS|COMMUNICATION|Datenkabel|UGT|TEL|V-COMM|T-DATA|"
       "Signalkabel|Steuerkabel|Kabelfernsehen"},
      {Meaning::reclaimed,
       "RECLAIMED|RECLAIMED WATER|IRRIGATION|IRRIG-LINE|Recycled Water|C-RWTR|NON-POTABLE "
       "WATER|Bewässerung|SPRINKLERS"},
      {Meaning::steam,
       "STEAM|DISTRICT HEATING|District Heat|FERNWÄRME|Fernwaerme|Fernwärmeleitung|FERNWAERMELEITUNG|Nahwärme|HEATING|"
       "HOT WATER|CHILLED WATER|Dampfleitung|Wärmeleitung|CONDENSATE"},
      {Meaning::unknown_utility,
       "UTILITY|UTILITIES|UG UTILITY|V-UTIL|LEITUNG|Leitungen|Leerrohr|LEERROHRE|Schutzrohr|DUCT|BT DUCT|CONDUIT|"
       "Kabel|CABLE|KABELKANAL|Kabeltrasse|PIPELINE|Rohrleitung|SERVICES|SCHACHT|MANHOLE|Hausanschluss|"
       "Sauerstoffleitung|"
       "HYDROGEN|GAS + WATER|WATER & SEWER|Versorgungsleitung|JUNCTION BOX|pipes PIPES 1"},
      {Meaning::road_edge,
       "KERB|kerb face|Kerb Line|CURB|V-ROAD-CURB|EDGE OF PAVEMENT|EOP|EDGE-OF-ROAD|BORDSTEIN|Bordsteine|Fahrbahnrand|"
       "CURB AND GUTTER|Randstein"},
      {Meaning::building,
       "BUILDING|BUILDINGS|BLDG|A-BLDG|COMMERCIAL-BLDG|BUILDING-ELECTRIC ROOM|GEBÄUDE|Gebaeude|House|Wohnhaus|Garage"},
      {Meaning::boundary,
       "BOUNDARY|PROPERTY LINE|V-PROP|EASEMENT|SEWER EASEMENT|ROW|Right of Way|GRENZE|Flurstücksgrenze|Grundstück|"
       "parcels"},
      {Meaning::ground,
       "GROUND|GROUND LEVEL|EG|EXISTING GROUND|TOPO|C-TOPO|V-TOPO-MAJR|CONTOURS|CONTOUR_MAJOR|SPOT HEIGHTS|DTM|DGM|"
       "GELÄNDE|Gelaende|Höhenlinien|Hoehenpunkte|BREAKLINE|Bruchkante|Top of Slope|GOK"},
      {Meaning::not_used, "FG|PROPOSED GROUND|Design Surface|FINISHED GRADE|Defpoints|FINISHED LEVELS"},
      {Meaning::background,
       "FENCE|TREE|TREES|HEDGE|RETAINING WALL|C-ANNO|TEXT|A-ANNO-DIMS|HATCH|VIEWPORT|TITLE BLOCK|Zaun|Baum|Mauer|"
       "Bemaßung|Beschriftung|Gehweg|WATERCOURSE|River"},
      // Names that hold the letters of a service, and names of nothing known: asked.
      {Meaning::undecided,
       "0|COMMENTS|SELECTED|GROUNDWATER|GRUNDWASSER|GASTHAUS|SANDPIT|EDGE OF DRAIN|MISC|Layer1|XREF-01|HEATHER|"
       "STEAMBOAT ST|MAINLAND|POWERFUL|WATERLOO|CATALOGUE|Grundwassermessstelle|ROOF|BENCH MARK|WELL|DUCTILE|"
       "TELEVISIONARY|PIPER|OILCLOTH|FOREST|COMMITTEE|Storming|Gaststätte|Strombad|UTILIZED|"
       "GROUND FLOOR|CONTOUR TEXT|Pole"}};
  return all;
}

TEST(LayerNames, CommonPractice_ThreeHundredNames) {
  std::size_t count = 0;
  for (const auto& [meaning, list] : names())
    for (const std::string& name : split(list)) {
      ++count;
      EXPECT_EQ(word_of(meaning_of_lines(name)), word_of(meaning)) << name;
    }
  EXPECT_GE(count, 300u);
}

// Whatever stands before or after it, a service stays one: it never becomes something that nobody judges.
TEST(LayerNames, Property_AWordMoreNeverHidesAService) {
  for (const auto& [meaning, list] : names()) {
    if (!utility_kind(meaning)) continue;
    for (const std::string& name : split(list))
      for (const char* more : {"TEXT", "WALL", "OLD", "GROUND", "FENCE", "BLDG", "C-WALK", "DESIGN SURFACE", "RIVER",
                               "alignment", "A-ANNO"}) {
        if (name.size() <= 3) continue;  // a code is the whole name
        for (const std::string& whole : {name + "_" + more, std::string(more) + " " + name}) {
          const Meaning longer = meaning_of_lines(whole);
          EXPECT_TRUE(utility_kind(longer) || longer == Meaning::undecided || longer == Meaning::boundary)
              << whole << " " << word_of(longer);
        }
      }
  }
}

// What nobody judges is so only where nothing else stands in the name, in its minor groups too.
TEST(LayerNames, OurDefault_HarmlessOnlyWhereEachWordIsKnown) {
  EXPECT_EQ(meaning_of_lines("C-WALK-LITE"), Meaning::power);
  EXPECT_EQ(meaning_of_lines("T-RAIL-CABL"), Meaning::telecom);
  EXPECT_EQ(meaning_of_lines("C-TOPO-IRRG"), Meaning::reclaimed);
  EXPECT_EQ(meaning_of_lines("alignment Gas Main"), Meaning::gas);
  for (const char* name : {"RIVER CROSSING HDD 2", "DESIGN SURFACE HDPE 160", "alignment River", "C-WALL-QX",
                           "CONTOURS PE100", "alignment A"})
    EXPECT_EQ(meaning_of_lines(name), Meaning::undecided) << name;
  for (const char* name : {"C-WALL", "FENCE LINES", "EX-FENCE 2", "C-ANNO-TEXT"})
    EXPECT_EQ(meaning_of_lines(name), Meaning::background) << name;
}

TEST(LayerNames, CapitalsDoNotMatter) {
  for (const auto& [meaning, list] : names())
    for (const std::string& name : split(list)) {
      std::string small = name;
      for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
      // Two words grown together are told apart by their capitals alone.
      if (name.find_first_of("abcdefghijklmnopqrstuvwxyz") == std::string::npos) {
        EXPECT_EQ(meaning_of_lines(small), meaning) << small;
      }
    }
}

TEST(PointCodes, OurDefault_OnlyKnownCodesAreGround) {
  for (const char* code : {"GND", "GS", "EG", "NG", "TOPO", "GND12", "GND 3", "gr", "GOK", "TOE", "TOB", "SPOT", "CL"})
    EXPECT_EQ(reading_of_points(code).meaning, Meaning::ground) << code;
  for (const char* code : {"EOP", "EP", "EP2", "EOA"}) {
    EXPECT_EQ(reading_of_points(code).meaning, Meaning::road_edge) << code;
    EXPECT_TRUE(reading_of_points(code).on_ground) << code;
  }
  for (const char* code : {"CULV",
                           "INV",
                           "WALL",
                           "TW",
                           "BW",
                           "POLE",
                           "PP",
                           "MH",
                           "SSMH",
                           "BM",
                           "TBM",
                           "CP",
                           "XQ",
                           "FFL",
                           "ROOF",
                           "CB",
                           "CI",
                           "DI",
                           "JB",
                           "GV",
                           "WV",
                           "FH",
                           "TREE",
                           "KERB",
                           "TC",
                           "",
                           "17",
                           "?",
                           "INVERT",
                           "TOPO-WALL",
                           "GROUND-INVERT",
                           "TOP OF WALL",
                           "Sohle",
                           "FG"}) {
    EXPECT_NE(reading_of_points(code).meaning, Meaning::ground) << code;
    EXPECT_FALSE(reading_of_points(code).on_ground) << code;
  }
  for (const char* code : {"MH", "SSMH", "SDMH", "CB",  "CI", "DI",   "INLET",   "JB",      "JBOX",  "HH",
                           "WV", "GV",   "TMH",  "EMH", "FH", "CULV", "Schacht", "Einlauf", "MH 12", "VAULT"})
    EXPECT_TRUE(utility_kind(reading_of_points(code).meaning)) << code;
}

TEST(PointCodes, OurDefault_AFileWithoutAnyCodeIsGround) {
  Found found;
  found.format = "survey points";
  found.layers = {""};
  LayerSummary layer;
  layer.points = layer.with_height = 5;
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::ground);
  found.layers = {"", "GND"};
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::undecided);
}

TEST(LayerNames, OurDefault_SeveralSurfacesAreAsked) {
  Found found;
  LayerSummary layer;
  layer.name = "Surface 1";
  layer.faces = 10;
  found.layers = {"Surface 1"};
  found.surfaces.resize(1);
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::undecided) << "faces may be those of a pipe";
  found.format = "LandXML";
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::ground);
  found.surfaces.resize(2);
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::undecided);
  layer.name = "EG";
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::ground);
  layer.name = "finished grade";
  EXPECT_EQ(meaning_of(found, layer, built_in_meanings()), Meaning::not_used);
}

// Faces of a drawing: ground where they lie beside each other, asked where they stand or lie over each other.
TEST(LayerNames, OurDefault_FacesThatLieAsGroundDoes) {
  const auto meaning = [](double rise, bool doubled) {
    Found found;
    found.layers = {"X7"};
    for (int i = 0; i < (doubled ? 12 : 6); ++i) {
      const double x = i % 6;
      found.features.push_back({Shape::area, 0, found.vertices.size(), 4, 1, {}, {}, {}, {}, false});
      for (const auto& [dx, y] : {std::pair{0.0, 0.0}, {1.0, 0.0}, {1.0, 1.0}, {0.0, 1.0}})
        found.vertices.push_back({x + dx, y, 100 + rise * y});
    }
    return meaning_of(found, summaries(found).at(0), built_in_meanings());
  };
  EXPECT_EQ(meaning(0.2, false), Meaning::ground);
  EXPECT_EQ(meaning(9, false), Meaning::undecided) << "walls";
  EXPECT_EQ(meaning(0.2, true), Meaning::undecided) << "one over the other";
}

TEST(LayerWords, Cuts) {
  const auto pieces = [](std::string_view name) {
    std::string out;
    const LayerWords words(name);
    for (const LayerWords::Piece& p : words.pieces()) out += (p.soft_before ? "+" : " ") + p.text;
    return out;
  };
  EXPECT_EQ(pieces("C-SSWR_PIPE.x"), " c sswr pipe x");
  EXPECT_EQ(pieces("GasMain12b"), " gas+main+12+b");
  EXPECT_EQ(pieces("GASLeitung"), " gas+leitung");
  EXPECT_EQ(pieces("FERNWÄRME"), " fernwaerme");
  EXPECT_EQ(pieces(" "), "");
  EXPECT_TRUE(LayerWords("0.4kV").find("kv"));
  EXPECT_TRUE(LayerWords("low-voltage").find("low voltage"));
  EXPECT_TRUE(LayerWords("LOWVOLTAGE").find("low voltage"));
  EXPECT_FALSE(LayerWords("S-S").find("ss")) << "a cut between two words";
  EXPECT_FALSE(LayerWords("T-ELECOM").find("telecom"));
  EXPECT_TRUE(LayerWords("sewers").find("sewer"));
  EXPECT_FALSE(LayerWords("telecom").find("elec"));
}

}  // namespace
}  // namespace burrow::test
