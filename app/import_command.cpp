/// import: foreign files into a new crossing.

#include <fmt/format.h>

#include <algorithm>
#include <ostream>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/import/read_file.h"
#include "burrow/import/scale.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "import_choices.h"
#include "import_report.h"

namespace burrow {

namespace {

Result<Options> options_of(const CommandArgs& args) {
  Result<Options> options = read_options(args, {{"-o", true},
                                                {"--order", true},
                                                {"--units", true},
                                                {"--height-units", true},
                                                {"--crs", true},
                                                {"--line", true},
                                                {"--heights", true},
                                                {"--level", true},
                                                {"--meaning", true},
                                                {"--meanings", true},
                                                {"--diameter", true},
                                                {"--field", true},
                                                {"--join", true},
                                                {"--json", false},
                                                {"--strict", false}});
  if (!options) return options;
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.crossing");
  if (options->files.empty()) return fail("", "no file", "survey, drawing or map data, \"survey.csv\"");
  return options;
}

Result<std::vector<ImportFile>> read_all(const Options& options, std::ostream& err) {
  const Result<ImportChoices> choices = ImportChoices::read(options);
  if (!choices) return tl::unexpected(choices.error());
  const Result<MeaningTable> table = import_meanings(options);
  if (!table) return tl::unexpected(table.error());
  ReadOptions asked;
  asked.unit = choices->unit();
  asked.order = options.value("--order", "");
  if (!asked.order.empty())
    if (const auto order = survey_order(asked.order); !order)
      return fail("--order", order.error().found, order.error().expected);
  std::vector<ImportFile> files;
  for (const std::string& path : options.files) {
    Result<Found> found = read_foreign_file(path, asked);
    if (!found) return tl::unexpected(found.error());
    Result<ImportFile> file = choices->apply(import_file(std::make_shared<const Found>(std::move(*found)), *table));
    if (!file) return tl::unexpected(file.error());
    files.push_back(std::move(*file));
  }
  if (auto error = choices->of_no_use(files)) return tl::unexpected(std::move(*error));
  for (const std::string& match : choices->idle_patterns(files))
    err << fmt::format("burrowline import: no layer fits {}\n", match);
  return files;
}

Result<CrossingLine> line_on(const std::vector<ImportFile>& files, const Options& options, std::ostream& err) {
  const auto line = import_line_of(options);
  if (!line) return tl::unexpected(line.error());
  if (*line) return **line;
  const auto laid = proposed_line(files.front());
  if (!laid) return fail("--line", "nothing", "X1,Y1,X2,Y2");
  err << fmt::format("no --line: laid west to east through the middle, {:.6f},{:.6f},{:.6f},{:.6f}\n", laid->launch.x_m,
                     laid->launch.y_m, laid->exit.x_m, laid->exit.y_m);
  return *laid;
}

/// Whether something that could matter was left out.
Result<bool> import_all(const Options& options, Streams streams) {
  if (const auto line = import_line_of(options); !line) return tl::unexpected(line.error());
  const Result<std::vector<ImportFile>> files = read_all(options, streams.err);
  if (!files) return tl::unexpected(files.error());
  const Result<CrossingLine> line = line_on(*files, options, streams.err);
  if (!line) return tl::unexpected(line.error());
  for (std::size_t i = 0; i < files->size(); ++i) {
    const auto laid = i == 0 ? std::optional(*line) : std::nullopt;
    say_found((*files)[i], laid, streams.err);
    if (const auto doubt = scale_doubt(*files, i, *line, std::nullopt))
      return fail((*files)[i].found->file, *doubt,
                  "the unit of the plan stated: --units m, ft, us-ft, mm, cm or in; or its coordinate system: --crs");
    if (heights_in_doubt((*files)[i]))
      return fail((*files)[i].found->file, "heights of which nothing says the unit, on a plan that is not in metres",
                  "the unit of the heights stated: --height-units m, ft or us-ft");
  }
  const Result<Imported> imported = into_crossing(*files, *line);
  if (!imported) return tl::unexpected(imported.error());
  const Crossing crossing = crossing_from(*imported);
  say_imported(*imported, streams.err);
  const std::string text = write_crossing(crossing);
  // What is written must be readable again; a value beyond the file's ranges is said here, not when it is opened.
  const Result<Crossing> again = read_crossing(text, load_tables(today()));
  if (!again) return fail(phrase("crossing {}", again.error().place), again.error().found, again.error().expected);
  const std::string path = options.value("-o", "");
  if (const Result<void> saved = save_atomically(path, text); !saved) return tl::unexpected(saved.error());
  if (options.has("--json")) streams.out << import_json(*files, *line, *imported, path) << "\n";
  return lost_something(*files, *imported);
}

}  // namespace

int import_command(const CommandArgs& args, Streams streams) {
  const Result<Options> options = options_of(args);
  const Result<bool> lost = options.and_then([&](const Options& all) { return import_all(all, streams); });
  if (lost) return *lost && options->has("--strict") ? 1 : 0;
  // Where the words themselves are wrong too: who asked for JSON reads nothing else.
  const bool json = options ? options->has("--json") : std::find(args.begin(), args.end(), "--json") != args.end();
  if (json) streams.out << import_error_json(lost.error()) << "\n";
  streams.err << "burrowline import: " << translated_error(lost.error()) << "\n";
  return 2;
}

}  // namespace burrow
