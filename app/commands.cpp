#include "commands.h"

#include <algorithm>
#include <ostream>

#include "burrow/document/language.h"
#include "burrow/document/text.h"

namespace burrow {

std::string usage() {
  return "burrowline [FILE]                       opens the workbench\n"
         "burrowline check FILE|FOLDER… [--json] [--units metric|us] [--working] [--on DATE] [--alternative ID] "
         "[--jobs N] [--part "
         "K/N]\n"
         "burrowline search FILE [--json] [--units metric|us] [--grid 64] [--over depth-and-grade|station-and-offset] "
         "[--tools] "
         "[--alternative ID] [--jobs N]\n"
         "burrowline sheet FILE -o OUT.pdf [--paper a3] [--scale 100] [--units metric|us]\n"
         "    [--part sheet|card|working|as-built|all] [--record ID]\n"
         "burrowline picture FILE -o OUT.png [--size 1600x900] [--theme light|dark] [--units metric|us] [--ratio 2]\n"
         "burrowline export FILE -o OUT.dxf|csv|geojson|svg [--what path|marks|findings] [--units metric|us]\n"
         "burrowline import IN… -o OUT.crossing [--order pnezd] [--units m|ft|us-ft] [--line X1,Y1,X2,Y2]\n"
         "    [--height-units m|ft|us-ft] [--heights datum|ground] [--level crown|centre|invert] [--meaning "
         "LAYER=gas,…]\n"
         "    [--diameter LAYER=0.125,…] [--join LAYER,…] [--meanings FILE.json]\n"
         "    [--crs EPSG:25832] [--field diameter=DIAMETER:mm,…] [--json] [--strict]\n"
         "burrowline learn FILE… [--json] [-o LIBRARY]\n"
         "burrowline --help | --version\n"
         "with every command: --language en|de\n"
         "exit code of check: 0, 1 stop or incomplete, 2 not readable or a wrong word\n"
         "exit code of search: 0, 1 no launch works, 2 not readable or a wrong word\n";
}

Result<std::string> take_language(CommandArgs& args) {
  const auto end = std::find(args.begin(), args.end(), "--");
  const auto at = std::find(args.begin(), end, "--language");
  if (at == end) return std::string();
  if (at + 1 == end) return fail("--language", "nothing after it", "en or de");
  const std::string language = *(at + 1);
  if (!languages().contains(text_from(language))) return fail("--language", language, "en or de");
  args.erase(at, at + 2);
  return language;
}

bool is_command(const std::string& word) {
  return word == "check" || word == "search" || word == "sheet" || word == "picture" || word == "export" ||
         word == "import" || word == "learn";
}

int run_command(const std::string& name, const CommandArgs& args, Streams streams) {
  if (name == "check") return check_command(args, streams);
  if (name == "search") return search_command(args, streams);
  if (name == "sheet") return sheet_command(args, streams);
  if (name == "picture") return picture_command(args, streams);
  if (name == "export") return export_command(args, streams);
  if (name == "import") return import_command(args, streams);
  if (name == "learn") return learn_command(args, streams);
  streams.err << usage();
  return 2;
}

}  // namespace burrow
