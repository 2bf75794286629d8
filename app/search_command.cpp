/// search: the launches at which everything holds.

#include <algorithm>
#include <optional>
#include <ostream>
#include <thread>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/search_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "burrow/words/launch_text.h"
#include "commands.h"
#include "options.h"
#include "texts_in.h"
#include "workers.h"

namespace burrow {

namespace {

void add_lines(std::string& text, const std::string& title, const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  text += title + "\n";
  for (const std::string& line : lines) text += "  " + line + "\n";
}

std::vector<std::string> lines_of(const std::vector<Finding>& findings, UnitSystem units) {
  std::vector<std::string> lines;
  for (const Finding& finding : findings) lines.push_back(finding_text(finding, units));
  return lines;
}

std::string launch_line(const LaunchMap& map, const LaunchCell& cell, UnitSystem units) {
  std::string line = place_text(map.over, cell.place, units) + ": " + verdict_text(cell);
  if (const std::string binds = binding_text(map, cell, units); !binds.empty())
    line += ", " + margin_text(cell) + ": " + binds;
  if (cell.chance_clean) line += "; " + say("clean bore {}", format(*cell.chance_clean, Dimension::chance, units));
  return line;
}

/// How much of the map each limit decides.
std::vector<std::string> shares(const LaunchMap& map) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < map.limits.size(); ++i) {
    const auto cells = std::count_if(map.cells.begin(), map.cells.end(),
                                     [&](const LaunchCell& cell) { return cell.binds == static_cast<int>(i); });
    const double percent = 100.0 * static_cast<double>(cells) / static_cast<double>(map.cells.size());
    if (percent < 0.5) continue;
    lines.push_back(std::to_string(static_cast<int>(percent + 0.5)) + " % " + limit_title(map.limits[i]) + " (" +
                    translated(word_of(map.limits[i].severity)) + ")");
  }
  return lines;
}

std::string as_text(const std::string& file, const SearchAnswer& answer, UnitSystem units) {
  const LaunchMap& map = answer.map;
  std::string text = file + ": " + search_headline(map, units) + "\n";
  if (map.best) add_lines(text, translated("best"), {launch_line(map, *map.best, units)});
  if (map.best_by_limits)
    add_lines(text, translated("best by the limits alone"), {launch_line(map, *map.best_by_limits, units)});
  if (map.widened > 0)
    add_lines(text, translated("the map was made wider"), {translated("the best launch lay on its edge")});
  add_lines(text, translated("as it stands"), {launch_line(map, map.here, units)});
  add_lines(text, translated("what binds, of all launches judged"), shares(map));
  add_lines(text, translated("broken at every launch"), lines_of(map.everywhere, units));
  add_lines(text, translated("not known, and so not in the map"), lines_of(map.missing, units));
  if (const std::string conflict = conflict_text(map); !conflict.empty())
    add_lines(text, translated("limits that stand against one another"), {conflict});
  for (const Relaxation& relaxation : map.relaxations)
    add_lines(text, say("would do, {}, if this were allowed", place_text(map.over, relaxation.place, units)),
              relaxation_lines(relaxation, units));
  std::vector<std::string> exposures;
  for (const Exposure& exposure : answer.exposures) exposures.push_back(exposure_text(exposure, map.over, units));
  add_lines(text, translated("digging first"), exposures);
  std::vector<std::string> tools;
  for (const ToolRow& row : answer.tools)
    tools.push_back(row.tool + ", " + insertion_words(row.insertion) + ": " +
                    (row.works ? verdict_text(*row.best) : std::string(translated("no launch"))) + ", " +
                    tool_text(row, units));
  add_lines(text, translated("other tools"), tools);
  return text;
}

struct SearchAsked {
  UnitSystem units = UnitSystem::metric;
  bool json = false;
  bool tools = false;
  MapOver over = MapOver::depth_and_grade;
  int grid = 64;
  unsigned threads = 1;
  std::string alternative;
};

Answer not_searched(const std::string& name, const Error& error, const SearchAsked& asked) {
  return {asked.json ? write_search_failure(name, error) + "\n" : "", name + ": " + translated_error(error) + "\n", 2};
}

Answer searched(const std::string& name, const std::string& text, const Tables& tables, const SearchAsked& asked) {
  const Result<Crossing> read = read_crossing(text, tables);
  if (!read) return not_searched(name, read.error(), asked);
  const std::string& wanted = asked.alternative;
  if (!wanted.empty() && std::none_of(read->alternatives.begin(), read->alternatives.end(),
                                      [&](const Alternative& a) { return a.id == wanted; }))
    return not_searched(name, Error{"--alternative", wanted, "an alternative of the file"}, asked);
  const Crossing crossing = wanted.empty() ? *read : with_alternative(*read, wanted);
  SearchAnswer answer;
  answer.map = search_launches(crossing, tables, {asked.over, asked.grid, true, asked.threads});
  if (!answer.map.works) answer.exposures = exposures(crossing, tables, answer.map, {16, asked.threads});
  if (asked.tools) answer.tools = choose_tool(crossing, tables, {16, asked.threads});
  const std::string out = asked.json ? write_search(crossing, answer, name, {asked.units, asked.tools}) + "\n"
                                     : as_text(name, answer, asked.units);
  return {out, "", answer.map.works ? 0 : 1};
}

/// Crossings on standard input, each answered before the next is read. One that kills its worker is one failure.
int search_stream(const SearchAsked& asked, Streams streams) {
  const Tables tables = load_tables(today());
  std::string name;
  WorkerLimits limits;
  limits.seconds = 600;  // a map of 512 by 512 with all tools
  // The name goes to the worker in front of the text.
  const auto search = [&](const std::string& named) {
    const std::size_t end = named.find('\n');
    return searched(named.substr(0, end), named.substr(end + 1), tables, asked);
  };
  TextWorker worker(limits, search, [&](const Error& error) { return not_searched(name, error, asked); });
  TextsIn texts(streams.in);
  int worst = 0;
  while (std::optional<TextIn> one = texts.next()) {
    name = one->name;
    const Answer answer = one->error ? not_searched(name, *one->error, asked) : worker.answer(name + "\n" + one->text);
    streams.out << answer.out << std::flush;
    streams.err << answer.err << std::flush;
    worst = std::max(worst, answer.code);
  }
  return worst;
}

int search_file(const std::string& file, const SearchAsked& asked, Streams streams) {
  const Result<std::string> text = read_text_file(file);
  const Answer answer =
      text ? searched(file, *text, load_tables(today()), asked) : not_searched(file, text.error(), asked);
  streams.out << answer.out;
  streams.err << answer.err;
  return answer.code;
}

}  // namespace

int search_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline search: " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {{"--json", false},
                                                      {"--units", true},
                                                      {"--grid", true},
                                                      {"--over", true},
                                                      {"--tools", false},
                                                      {"--alternative", true},
                                                      {"--jobs", true}});
  if (!options) return refuse(options.error());
  if (options->files.size() != 1)
    return refuse(
        Error{"", options->files.empty() ? "no file" : std::to_string(options->files.size()) + " files", "one FILE"});
  const Result<UnitSystem> units = units_of(*options);
  if (!units) return refuse(units.error());
  const Result<long> grid = whole_number(*options, "--grid", 64, 2, 512);
  if (!grid) return refuse(grid.error());
  const long cores = std::max(1L, static_cast<long>(std::thread::hardware_concurrency()));
  const Result<long> jobs = whole_number(*options, "--jobs", cores, 1, 1024);
  if (!jobs) return refuse(jobs.error());
  const std::string over = options->value("--over", std::string(word_of(MapOver::depth_and_grade)));
  if (!from_word<MapOver>(over)) return refuse(Error{"--over", over, known_words<MapOver>()});

  SearchAsked asked;
  asked.units = *units;
  asked.json = options->has("--json") || options->reads_standard_input();
  asked.tools = options->has("--tools");
  asked.over = *from_word<MapOver>(over);
  asked.grid = static_cast<int>(*grid);
  asked.threads = static_cast<unsigned>(*jobs);
  asked.alternative = options->value("--alternative", "");
  return options->reads_standard_input() ? search_stream(asked, streams)
                                         : search_file(options->files.front(), asked, streams);
}

}  // namespace burrow
