#include "command_table.h"

#include <algorithm>

#include "burrow/base/phrase.h"

namespace burrow {

namespace {

constexpr const char* file_out = translatable("the file to write; it is replaced");
constexpr const char* units_of_words = translatable("units of the words; files and JSON are always SI");
constexpr const char* alternative_of_file = translatable("that alternative of the file in place of its own layout");
constexpr const char* or_two = translatable("0, or 2 when a file cannot be read or a word is wrong");

const Command all_commands[] = {
    {"check",
     "FILE|FOLDER…|-",
     translatable("Judges crossings: verdict and findings, worst first. A folder means its *.crossing by name. \"-\" "
                  "reads a crossing, or one on each line, from standard input and writes a line of JSON for each."),
     {{"--json", "", translatable("a line of JSON for each file")},
      {"--csv", "", translatable("a table: a line for each file, for an overview of many")},
      {"--units", "metric|us", units_of_words},
      {"--working", "", translatable("adds the working of every check")},
      {"--trials", "", translatable("adds what random trials counted")},
      {"--on", "DATE", translatable("judges for that day in place of today, as 2026-03-02")},
      {"--alternative", "ID", alternative_of_file},
      {"--jobs", "N", translatable("files judged at the same time; all cores unless said")},
      {"--part", "K/N", translatable("the K-th of N shares of the files, for a scheduler's array job")}},
     translatable("0 within limits or caution, 1 stop or incomplete, 2 not judged; the largest of all files"),
     check_command},
    {"search",
     "FILE|-",
     translatable("The launches at which all limits hold, the best of them, and where there is none what would have to "
                  "give way. \"-\" reads crossings from standard input, as check does."),
     {{"--json", "", translatable("a line of JSON")},
      {"--units", "metric|us", units_of_words},
      {"--grid", "N", translatable("launches along each side of the map, 2 to 512; 64 unless said")},
      {"--over", "depth-and-grade|station-and-offset", translatable("what the map is over")},
      {"--tools", "", translatable("the same for each class of tool and each way of putting the pipe in")},
      {"--alternative", "ID", alternative_of_file},
      {"--jobs", "N", translatable("threads; the answer does not depend on it")}},
     translatable("0 a launch works, 1 none does, 2 not searched"),
     search_command},
    {"set",
     "FILE /POINTER=VALUE… -o OUT.crossing",
     translatable("Changes values of a crossing by their JSON pointer and writes it to another file: "
                  "/bore/launch/elevation_m=100.8. A bare number is in the unit of its name; with a unit it is read "
                  "as in a field of the workbench. \"null\" says not known."),
     {{"-o", "OUT.crossing", translatable("the file to write; \"-\" is standard output")}},
     or_two,
     set_command},
    {"make",
     "TABLE.csv TEMPLATE.crossing -o FOLDER",
     translatable("A crossing for each line of a table. The first line names JSON pointers, and \"file\" for the names "
                  "of the files. An empty cell means not known. What was established at the place of the template, its "
                  "search, permissions and test holes among them, is not taken over."),
     {{"-o", "FOLDER", translatable("where the crossings go; it is made when it is not there")},
      {"--force", "", translatable("replaces files that are there")}},
     translatable("0 a crossing for each line, 2 a line without one or no line at all"),
     make_command},
    {"sheet",
     "FILE -o OUT.pdf",
     translatable("The crossing on paper, to scale, with its tables."),
     {{"-o", "OUT.pdf", file_out},
      {"--paper", "a3", translatable("a4, a3, a2, a1, letter, tabloid or ansi-b, ansi-c or ansi-d")},
      {"--scale", "100", translatable("1:100; left out, the file's or the largest that fits")},
      {"--units", "metric|us", translatable("units of the paper")},
      {"--part", "sheet|card|permit|working|as-built|all", translatable("which pages")},
      {"--record", "ID", translatable("which day the as-built record is of")}},
     or_two,
     sheet_command,
     true},
    {"picture",
     "FILE -o OUT.png",
     translatable("The drawing as the workbench shows it."),
     {{"-o", "OUT.png", file_out},
      {"--size", "1600x900", translatable("in pixels")},
      {"--theme", "light|dark", translatable("colours")},
      {"--units", "metric|us", translatable("units of the drawing")},
      {"--ratio", "2", translatable("so many times as many pixels for the same drawing")}},
     or_two,
     picture_command,
     true},
    {"movie",
     "FILE -o OUT.mp4|OUT.gif|FOLDER",
     translatable("The predicted bore as it happens. A folder gets a picture for each frame; a movie wants ffmpeg, "
                  "where that is installed."),
     {{"-o", "OUT", translatable("OUT.mp4 or OUT.gif, which is replaced, or a new folder")},
      {"--size", "1280x720", translatable("in pixels")},
      {"--theme", "light|dark", translatable("colours")},
      {"--units", "metric|us", translatable("units of the drawing")},
      {"--ratio", "2", translatable("so many times as many pixels for the same drawing")},
      {"--speed", "60", translatable("times as fast as on site, 1 to 1000")},
      {"--rate", "25", translatable("frames a second, 1 to 60")}},
     or_two,
     movie_command,
     true},
    {"export",
     "FILE -o OUT.dxf|csv|geojson|gpkg|svg",
     translatable("Files for other programs; the ending decides."),
     {{"-o", "OUT", file_out},
      {"--what", "path|marks|findings|working|both|plan|profile",
       translatable("which table, of .csv; which drawing, of .dxf")},
      {"--place", "local|survey", translatable("of .dxf: the local frame, or the survey's coordinates for the plan")},
      {"--lengths", "m|us-ft", translatable("of .dxf: metres or US survey feet")},
      {"--bom", "", translatable("before a .csv the byte order mark that some spreadsheets want")},
      {"--map", "", translatable("of .dxf: the plan in the coordinates of the map")},
      {"--units", "metric|us", units_of_words}},
     or_two,
     export_command,
     true},
    {"import",
     "IN… -o OUT.crossing",
     translatable("Surveys, drawings and map data into a new crossing. What was read, what it was taken for and what "
                  "was left out stands on the error stream."),
     {{"-o", "OUT.crossing", translatable("the file to write; \"-\" is standard output")},
      {"--order", "pnezd", translatable("columns of survey points: p point, n north, e east, z height, d description")},
      {"--units", "m|ft|us-ft", translatable("of the plan, where the file has no map projection")},
      {"--height-units", "m|ft|us-ft", translatable("of heights")},
      {"--line", "X1,Y1,X2,Y2", translatable("launch pit and exit pit in the coordinates of the first file")},
      {"--heights", "datum|ground", translatable("heights of utilities are elevations, or depths below the ground")},
      {"--level", "crown|centre|invert", translatable("which level of a utility the heights are")},
      {"--meaning", "LAYER=WORD,…", translatable("what a layer is: gas, power, water, ground, boundary …")},
      {"--meanings", "FILE.json", translatable("the same, as a table of your own")},
      {"--diameter", "LAYER=METRES,…", translatable("outside diameter of the utilities of a layer")},
      {"--join", "LAYER,…", translatable("single points become a line in the order of the file")},
      {"--crs", "EPSG:25832", translatable("coordinate system of files that state none")},
      {"--field", "WHAT=COLUMN:UNIT,…", translatable("which attribute holds diameter, depth, level, kind …")},
      {"--json", "", translatable("what was read, left out and why, as JSON")},
      {"--strict", "", translatable("exit code 1 where something was left out that could matter")}},
     translatable(
         "0, 1 with --strict where something was left out that could matter, or 2 when a file cannot be read or a "
         "word is wrong"),
     import_command},
    {"learn",
     "FILE…",
     translatable("The constants of the model by soil class, from the records of many bores."),
     {{"--json", "", translatable("the library in place of the words")},
      {"-o", "LIBRARY", translatable("writes the library")},
      {"--backed-out", "", translatable("learns from bores that were given up, too")}},
     or_two,
     learn_command},
    {"schema",
     "[crossing|assessment]",
     translatable("JSON Schema (draft 2020-12) of crossings, or of what check --json writes."),
     {},
     translatable("0, or 2 for a wrong word"),
     schema_command},
    {"help",
     "[COMMAND]",
     translatable("What a command takes and does."),
     {},
     translatable("0, or 2 for a wrong word"),
     help_command}};

}  // namespace

std::span<const Command> commands() {
  return all_commands;
}

const Command* find_command(std::string_view name) {
  const auto it = std::find_if(std::begin(all_commands), std::end(all_commands),
                               [&](const Command& command) { return std::string_view(command.name) == name; });
  return it == std::end(all_commands) ? nullptr : it;
}

}  // namespace burrow
