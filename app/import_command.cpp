/// import: foreign files into a new crossing.

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <ostream>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/import/into_crossing.h"
#include "burrow/import/read_file.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "options.h"

namespace burrow {

namespace {

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = std::min(text.find(at), text.size());
    parts.emplace_back(text.substr(0, end));
    if (end == text.size()) return parts;
    text.remove_prefix(end + 1);
  }
}

std::optional<double> number(std::string_view text) {
  double value = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || stop != text.data() + text.size()) return std::nullopt;
  return value;
}

template <class E>
Result<std::optional<E>> word(const Options& options, const char* name) {
  if (!options.has(name)) return std::optional<E>();
  const std::string text = options.value(name, "");
  const auto value = from_word<E>(text);
  if (!value) return fail(name, text, known_words<E>());
  return std::optional<E>(value);
}

Result<std::optional<CrossingLine>> line_of(const Options& options) {
  if (!options.has("--line")) return std::optional<CrossingLine>();
  const std::string text = options.value("--line", "");
  std::vector<double> values;
  for (const std::string& part : split(text, ','))
    if (const auto value = number(part)) values.push_back(*value);
  if (values.size() != 4 || split(text, ',').size() != 4)
    return fail("--line", text, "X1,Y1,X2,Y2: launch pit and exit pit in the coordinates of the first file");
  return std::optional(CrossingLine{{values[0], values[1]}, {values[2], values[3]}});
}

/// What the options say about layers, laid over what the table and the files say.
class Choices {
 public:
  static Result<Choices> read(const Options& options) {
    Choices choices;
    const auto from = word<DepthFrom>(options, "--heights");
    const auto level = word<LevelMeant>(options, "--level");
    if (!from) return tl::unexpected(from.error());
    if (!level) return tl::unexpected(level.error());
    choices.from_ = *from;
    choices.level_ = *level;
    if (options.has("--join")) choices.join_ = split(options.value("--join", ""), ',');
    for (const auto& [name, pairs] :
         {std::pair{"--meaning", &choices.meanings_}, {"--diameter", &choices.diameters_}}) {
      if (!options.has(name)) continue;
      for (const std::string& pair : split(options.value(name, ""), ',')) {
        const std::size_t at = pair.find_last_of('=');
        if (at == std::string::npos || at == 0) return fail(name, pair, "LAYER=VALUE,… ; * stands for any text");
        pairs->emplace_back(pair.substr(0, at), pair.substr(at + 1));
      }
    }
    for (const auto& [layer, text] : choices.meanings_)
      if (!from_word<Meaning>(text)) return fail("--meaning", text, known_words<Meaning>());
    for (const auto& [layer, text] : choices.diameters_)
      if (const auto d = number(text); !d || !(*d > 0 && *d <= 5))
        return fail("--diameter", text, "an outside diameter in metres, above 0 and up to 5");
    return choices;
  }

  void apply(ImportFile& file) const {
    for (std::size_t i = 0; i < file.layers.size(); ++i) {
      LayerChoice& choice = file.layers[i];
      const std::string& name = file.found->layers[i];
      choice.heights_from = from_;
      choice.level = level_;
      for (const auto& [match, text] : meanings_)
        if (fits(match, name)) choice.meaning = *from_word<Meaning>(text);
      for (const auto& [match, text] : diameters_)
        if (fits(match, name)) choice.diameter = Length{*number(text)};
      for (const std::string& match : join_) choice.join_points = choice.join_points || fits(match, name);
    }
  }

 private:
  std::optional<DepthFrom> from_;
  std::optional<LevelMeant> level_;
  std::vector<std::pair<std::string, std::string>> meanings_, diameters_;
  std::vector<std::string> join_;
};

void say_left_out(const std::vector<LeftOut>& list, std::size_t more, std::ostream& err) {
  for (const LeftOut& l : list)
    err << "  left out: " << l.place << (l.text.empty() ? "" : ": " + l.text) << ": " << l.reason << "\n";
  if (more > 0) err << "  left out: " << more << " more\n";
}

std::string unit_words(const ImportFile& file) {
  const FoundFrame& frame = file.found->frame;
  if (frame.geographic) return "degrees";
  if (file.unit) return std::string(word_of(*file.unit)) + " (as said)";
  if (frame.unit)
    return std::string(word_of(*frame.unit)) +
           (frame.unit_is_doubtful ? " (as the file says, which is often wrong)" : "");
  return "m (not stated: taken as metres; --units says otherwise)";
}

void say_found(const ImportFile& file, std::ostream& err) {
  const Found& found = *file.found;
  err << found.file << ": " << found.format << "\n";
  if (!found.order.empty())
    err << "  order of columns: " << found.order
        << (found.order_is_known ? "" : " (not stated: --order says otherwise)") << "\n";
  err << "  unit of the plan: " << unit_words(file) << "\n";
  if (!found.frame.crs.empty()) err << "  coordinate system: " << found.frame.crs.substr(0, 100) << "\n";
  if (!file.height_unit && !found.frame.height_unit && !file.unit)
    err << "  unit of heights: not stated, taken as "
        << (found.frame.crs.empty() && found.frame.unit ? word_of(*found.frame.unit) : "m")
        << " (--height-units says otherwise)\n";
  if (const auto e = extent_of(found))
    err << fmt::format("  extent: {:.3f}, {:.3f} to {:.3f}, {:.3f}\n", e->low_x, e->low_y, e->high_x, e->high_y);
  const std::vector<LayerSummary> layers = summaries(found);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const LayerSummary& l = layers[i];
    err << "  layer " << (l.name.empty() ? "(none)" : l.name) << " = " << word_of(file.layers[i].meaning) << ":";
    for (const auto& [count, what] : {std::pair{l.points, "points"},
                                      {l.lines, "lines"},
                                      {l.areas, "areas"},
                                      {l.faces, "faces"},
                                      {l.rasters, "grids"}})
      if (count > 0) err << " " << count << " " << what;
    if (l.vertices > 0 && l.with_height == 0) err << ", no heights";
    err << "\n";
  }
  for (const std::string& note : found.notes) err << "  note: " << note << "\n";
  say_left_out(found.left_out, found.left_out_more, err);
}

Result<MeaningTable> meanings(const Options& options) {
  const MeaningTable built_in = built_in_meanings();
  if (!options.has("--meanings")) return built_in;
  const std::string path = options.value("--meanings", "");
  const Result<std::string> text = read_text_file(path);
  if (!text) return tl::unexpected(text.error());
  const Result<MeaningTable> own = read_meanings(*text);
  if (!own) return fail(phrase("{}{}", path, own.error().place), own.error().found, own.error().expected);
  return joined(*own, built_in);
}

void say_imported(const Imported& imported, std::ostream& err) {
  err << fmt::format(
      "crossing line {:.3f} m; ground line of {} points, {} utilities, {} on the surface, {} boundaries, background in "
      "{} layers\n",
      imported.length.m, imported.ground.size(), imported.utilities.size(), imported.surface.size(),
      imported.boundaries.size(), imported.background.size());
  if (imported.ground.empty()) err << "  note: no ground along the crossing line: it counts as missing\n";
  for (const std::string& note : imported.notes) err << "  note: " << note << "\n";
  say_left_out(imported.left_out, 0, err);
}

Result<void> import_all(const CommandArgs& args, std::ostream& err) {
  const Result<Options> options = read_options(args, {{"-o", true},
                                                      {"--order", true},
                                                      {"--units", true},
                                                      {"--height-units", true},
                                                      {"--line", true},
                                                      {"--heights", true},
                                                      {"--level", true},
                                                      {"--meaning", true},
                                                      {"--meanings", true},
                                                      {"--diameter", true},
                                                      {"--join", true}});
  if (!options) return tl::unexpected(options.error());
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.crossing");
  if (options->files.empty()) return fail("", "no file", "survey, drawing or map data, \"survey.csv\"");
  const auto unit = word<FileUnit>(*options, "--units");
  if (!unit) return tl::unexpected(unit.error());
  const auto height_unit = word<FileUnit>(*options, "--height-units");
  if (!height_unit) return tl::unexpected(height_unit.error());
  const auto line = line_of(*options);
  if (!line) return tl::unexpected(line.error());
  const Result<Choices> choices = Choices::read(*options);
  if (!choices) return tl::unexpected(choices.error());
  const Result<MeaningTable> table = meanings(*options);
  if (!table) return tl::unexpected(table.error());
  ReadOptions asked;
  asked.order = options->value("--order", "");
  if (!asked.order.empty())
    if (const auto order = survey_order(asked.order); !order)
      return fail("--order", order.error().found, order.error().expected);

  std::vector<ImportFile> files;
  for (const std::string& path : options->files) {
    Result<Found> found = read_foreign_file(path, asked);
    if (!found) return tl::unexpected(found.error());
    ImportFile file = import_file(std::make_shared<const Found>(std::move(*found)), *table);
    file.unit = *unit;
    file.height_unit = *height_unit;
    choices->apply(file);
    say_found(file, err);
    files.push_back(std::move(file));
  }
  std::optional<CrossingLine> laid = *line;
  if (!laid) {
    laid = proposed_line(files.front());
    if (!laid) return fail("--line", "nothing", "X1,Y1,X2,Y2");
    err << fmt::format("no --line: laid west to east through the middle, {:.6f},{:.6f},{:.6f},{:.6f}\n",
                       laid->launch.x_m, laid->launch.y_m, laid->exit.x_m, laid->exit.y_m);
  }
  const Result<Imported> imported = into_crossing(files, *laid);
  if (!imported) return tl::unexpected(imported.error());
  const Crossing crossing = crossing_from(*imported);
  say_imported(*imported, err);
  const std::string text = write_crossing(crossing);
  // What is written must be readable again; a value beyond the file's ranges is said here, not when it is opened.
  const Result<Crossing> again = read_crossing(text, load_tables(today()));
  if (!again) return fail(phrase("crossing {}", again.error().place), again.error().found, again.error().expected);
  return save_atomically(options->value("-o", ""), text);
}

}  // namespace

int import_command(const CommandArgs& args, Streams streams) {
  const Result<void> done = import_all(args, streams.err);
  if (done) return 0;
  streams.err << "burrowline import: " << translated_error(done.error()) << "\n";
  return 2;
}

}  // namespace burrow
