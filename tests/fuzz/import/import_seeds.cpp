// Where the fuzzers of foreign files start from, and how a text is changed.

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "import_tries.h"

namespace burrow::test {

namespace {

std::string pairs(std::initializer_list<std::pair<int, const char*>> all) {
  std::string text;
  for (const auto& [code, value] : all) text += std::to_string(code) + "\n" + value + "\n";
  return text;
}

std::vector<std::string> survey_seeds() {
  return {
      "1,5540000.5,500000.25,100.5,GND\n2,5540001,500001,100.25,KERB left\n3,5540011,500001,100.2,GND\nbroken\n",
      "Punktnummer;Rechtswert;Hochwert;H\xc3\xb6he [m];Code\n1;3512345,1;5412340,2;312,45;GOK\n2;3512355,1;5412349,2;"
      "312,65;MH\n",
      "Point,Latitude,Longitude,Elevation (ft)\nA,50.1,9.1,330\nB,50.1001,9.1001,331.5\nC,50.1002,9.1,329\n",
      "288821.0 9120715.0 10.0\n288826.0 9120715.0 10.1\n288831.0 9120715.0 -0\n",
      "# comment\n\"1\",\"5,540,000.5\",500'000.25,0,18\" RCP\n2,5540001,500001,0.4,\n",
      "P\tY\tX\tZ\tD\n7\t5540000,5\t500000,25\t100,5\tWALL\n8\t5540001\t500002\t\t\n"};
}

std::vector<std::string> landxml_seeds() {
  return {
      "<LandXML><Units><Imperial linearUnit='USSurveyFoot' elevationUnit='feet' diameterUnit='inch'/></Units>"
      "<CoordinateSystem epsgCode='2263'/>\n<CgPoints><CgPoint name='1' code='EP'>1 2 3</CgPoint>\n<CgPoint name='2' "
      "pntRef='1'/></CgPoints>\n<Surfaces><Surface name='EG'><Definition><Pnts><P id='1'>0 0 5</P><P id='2'>0 10 "
      "6</P>\n"
      "<P id='3'>10 0 7</P><P id='4'>10 10 7</P></Pnts><Faces><F>1 2 3</F>\n<F i='1'>2 3 4</F><F n='1 0 0'>2 4 3</F>"
      "</Faces></Definition></Surface></Surfaces></LandXML>",
      "<LandXML xmlns='x'><Units><Metric linearUnit='meter' "
      "diameterUnit='millimeter'/></Units>\n<Alignments><Alignment "
      "name='a' staStart='0'><CoordGeom><Line><Start>0 0</Start><End>0 100</End></Line>\n<Curve rot='cw' radius='50'>"
      "<Start>0 100</Start><Center>-50 100</Center><End>-50 150</End></Curve>\n<Spiral length='20' radiusStart='INF' "
      "radiusEnd='50' rot='ccw'><Start>-50 150</Start><PI>-57 150</PI><End>-70 151</End></Spiral></CoordGeom>\n"
      "<Profile><ProfAlign><PVI>0 10</PVI><ParaCurve length='20'>50 12</ParaCurve><PVI>100 11</PVI></ProfAlign>"
      "</Profile></Alignment></Alignments></LandXML>",
      "<LandXML><Units><Metric linearUnit='meter' diameterUnit='meter'/></Units>\n<PipeNetworks><PipeNetwork name='s' "
      "pipeNetType='sanitary'><Structs><Struct name='M1' elevRim='10'><Center>0 0</Center><CircStruct diameter='1'/>\n"
      "<Invert elev='8' flowDir='out' refPipe='P1'/></Struct><Struct name='M2'><Center>0 20</Center><Invert elev='7.9' "
      "flowDir='in' refPipe='P1'/></Struct></Structs>\n<Pipes><Pipe name='P1' refStart='M1' refEnd='M2'><CircPipe "
      "diameter='0.2' material='PVC'/></Pipe></Pipes></PipeNetwork></PipeNetworks>\n<Parcels><Parcel name='p'>"
      "<CoordGeom><Line><Start>0 0</Start><End>5 5</End></Line></CoordGeom></Parcel></Parcels>\n<PlanFeatures>"
      "<PlanFeature name='kerb'><CoordGeom><IrregularLine><PntList3D>0 0 1 5 5 2 9 9 3</PntList3D></IrregularLine>"
      "</CoordGeom></PlanFeature></PlanFeatures></LandXML>"};
}

std::vector<std::string> dxf_seeds() {
  const std::string head = pairs({{0, "SECTION"},
                                  {2, "HEADER"},
                                  {9, "$INSUNITS"},
                                  {70, "4"},
                                  {9, "$DIMSTYLE"},
                                  {2, "STANDARD"},
                                  {9, "$MEASUREMENT"},
                                  {70, "1"},
                                  {9, "$LUNITS"},
                                  {70, "2"},
                                  {0, "ENDSEC"}});
  const std::string blocks = pairs({{0, "SECTION"},
                                    {2, "BLOCKS"},
                                    {0, "BLOCK"},
                                    {2, "A"},
                                    {0, "INSERT"},
                                    {2, "B"},
                                    {0, "CIRCLE"},
                                    {8, "MH"},
                                    {40, "0.5"},
                                    {0, "ENDBLK"},
                                    {0, "BLOCK"},
                                    {2, "B"},
                                    {0, "LINE"},
                                    {8, "GAS"},
                                    {0, "ENDBLK"},
                                    {0, "ENDSEC"}});
  const std::string plan = pairs(
      {{0, "SECTION"}, {2, "ENTITIES"}, {0, "INSERT"}, {8, "0"},        {2, "A"},   {41, "2"},      {0, "LWPOLYLINE"},
       {8, "KERB"},    {10, "0"},       {20, "0"},     {42, "0.4"},     {10, "10"}, {20, "0"},      {0, "ARC"},
       {40, "500"},    {0, "SPLINE"},   {8, "GAS"},    {73, "0"},       {11, "0"},  {21, "0"},      {11, "5"},
       {21, "5"},      {11, "9"},       {21, "0"},     {0, "POLYLINE"}, {70, "16"}, {0, "ELLIPSE"}, {11, "5"},
       {21, "0"},      {0, "3DSOLID"},  {0, "ENDSEC"}});
  const std::string objects = pairs({{0, "SECTION"},
                                     {2, "OBJECTS"},
                                     {0, "GEODATA"},
                                     {70, "2"},
                                     {10, "0"},
                                     {11, "0"},
                                     {12, "0"},
                                     {22, "1"},
                                     {301, "<Alias id=\"25832\" type=\"CoordinateSystem\">"},
                                     {303, "<Namespace>EPSG Code</Namespace></Alias>"},
                                     {0, "ENDSEC"}});
  const std::string end = pairs({{0, "EOF"}});
  return {head + blocks + plan + objects + end, head + end, plan + end};
}

std::vector<std::string> field_seeds() {
  return {
      R"({"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"DIAMETER":"150","MATERIAL":"PVC","STATUS":"Active","OWNER":"x","INSTDATE":"1998"},
"geometry":{"type":"LineString","coordinates":[[0,0,1],[10,5,2]]}},
{"type":"Feature","properties":{"DIAMETER":"8\"","COVER_M":1.2,"STATUS":"abandoned","MATERIAL":"DI"},
"geometry":{"type":"LineString","coordinates":[[0,5],[10,0]]}}]})",
      R"({"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"DN_MM":"DN 100","Tiefe_m":"0,9","Werkstoff":"PE","Baujahr":2004},
"geometry":{"type":"LineString","coordinates":[[0,0],[3,3],[10,5]]}},
{"type":"Feature","properties":{"UPELEV_FT":312.5,"DOWNELEV_FT":311.9,"INSIDE_DIAMETER_IN":12,"NAME":"s1"},
"geometry":{"type":"LineString","coordinates":[[5,-5],[5,5]]}}]})"};
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size() - 1) + 1;
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
  }
  return lines;
}

constexpr std::array numbers{"0",           "-1",     "1e308", "1e999",  "nan",         "-inf",
                             "99999999999", "0.0001", "-0",    "1e-320", "70",          "16",
                             "2",           "",       "1,5",   "1'000",  "1,000,000.5", "4294967295",
                             "18\"",        "INF",    "3.5.1", "+7",     "5 412 340",   "1 2 3 4 5 6"};
constexpr std::array words{
    "\t",           ";",      ",",   " ",      "\"",          "'",      "<",        ">",     "/>",    "\xff",
    "\xef\xbb\xbf", "#",      "\r",  "\r\n",   "H\xc3\xb6he", "north",  "east",     "mm",    "mm in", "ENDSEC",
    "SECTION",      "HEADER", "EOF", "INSERT", "BLOCK",       "ENDBLK", "ENTITIES", "&amp;", "<!--",  "</LandXML>",
    "null",         "{}",     "[]"};

}  // namespace

std::vector<std::string> import_seeds_of(const Try& one) {
  std::vector<std::string> seeds = one.name == "survey"    ? survey_seeds()
                                   : one.name == "landxml" ? landxml_seeds()
                                   : one.name == "dxf"     ? dxf_seeds()
                                                           : field_seeds();
  for (const char* folder : {"tests/fuzz/corpus", "tests/fuzz/found"}) {
    std::vector<std::filesystem::path> files;
    std::error_code none;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(BURROW_SOURCE_DIR) / folder / one.name, none))
      files.push_back(entry.path());
    std::sort(files.begin(), files.end());  // a seed gives the same run everywhere
    for (const auto& file : files) {
      std::ifstream in(file, std::ios::binary);
      seeds.emplace_back(std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>());
    }
  }
  return seeds;
}

std::string LineMutator::mutate(std::string_view text, unsigned seed) const {
  Random random(seed);
  std::vector<std::string> lines = lines_of(text);
  for (auto n = 1 + random() % 4; n > 0; --n) change(lines, random);
  std::string out;
  for (const std::string& line : lines) out += line;
  return out;
}

void LineMutator::change(std::vector<std::string>& lines, Random& random) const {
  if (lines.empty()) lines.emplace_back("1 2 3\n");
  const std::size_t at = random() % lines.size();
  switch (random() % 8) {
    case 0:
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(at));
      return;
    case 1:
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(random() % lines.size()), std::string(lines[at]));
      return;
    case 2:
      std::swap(lines[at], lines[random() % lines.size()]);
      return;
    case 3: {
      const std::vector<std::string> others = lines_of(donors_[random() % donors_.size()]);
      const std::size_t from = random() % others.size(), to = std::min(others.size(), from + 1 + random() % 4);
      lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(at), others.begin() + static_cast<std::ptrdiff_t>(from),
                   others.begin() + static_cast<std::ptrdiff_t>(to));
      return;
    }
    default:
      change_within(lines[at], random);
  }
}

void LineMutator::change_within(std::string& line, Random& random) const {
  constexpr std::string_view of_numbers = "0123456789.-+";
  const std::size_t some = line.empty() ? 0 : random() % line.size();
  switch (random() % 5) {
    case 0: {  // a number becomes another
      const std::size_t from = std::min(line.find_first_of(of_numbers, some), line.size());
      const std::size_t to = std::min(line.find_first_not_of(of_numbers, from), line.size());
      line.replace(from, to - from, numbers[random() % numbers.size()]);
      return;
    }
    case 1:
      line.insert(some, words[random() % words.size()]);
      return;
    case 2:
      line.erase(some, 1 + random() % 6);
      return;
    case 3:
      if (!line.empty())
        line[some] = static_cast<char>(static_cast<unsigned char>(line[some]) ^ (1U << (random() % 8)));
      return;
    default:
      line += line.substr(some);
  }
}

}  // namespace burrow::test
