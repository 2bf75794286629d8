/// learn: the constants of the model by soil class, from the records of many crossings.

#include <ostream>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/library_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "burrow/words/learn_text.h"
#include "commands.h"
#include "options.h"

namespace burrow {

namespace {

std::string as_text(const LearnLibrary& library, const Tables& tables) {
  if (library.soils.empty())
    return std::string(translated("no record of these files says anything about the constants of the model")) + "\n";
  std::string text = std::string(translated("soil, constant: learnt (nine in ten), default before, from")) + "\n";
  for (const LearnRow& row : learn_rows(library, tables))
    text += row.soil + ", " + row.what + ": " + row.learnt + ", " + row.before + ", " + row.from + "\n";
  return text;
}

}  // namespace

int learn_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const std::string& file, const Error& error) {
    streams.err << (file.empty() ? "burrowline learn" : file) << ": " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {{"--json", false}, {"-o", true}, {"--backed-out", false}});
  if (!options) return refuse({}, options.error());
  if (options->files.empty()) return refuse({}, Error{"", "no file", "FILE…, crossings with records"});
  const Tables tables = load_tables(today());
  Evidence all;
  for (const std::string& file : options->files) {
    const Result<std::string> text = read_text_file(file);
    if (!text) return refuse(file, text.error());
    const Result<Crossing> crossing = read_crossing(*text, tables);
    if (!crossing) return refuse(file, crossing.error());
    Evidence evidence = evidence_of(*crossing, tables, {}, {options->has("--backed-out")});
    for (BoreEvidence& bore : evidence.bores) all.bores.push_back(std::move(bore));
    for (StopEvidence& stop : evidence.stops) all.stops.push_back(std::move(stop));
    for (const NotLearnt& not_learnt : evidence.not_learnt)
      streams.err << file << ": " << say("record {} not used: {}", not_learnt.record, translated_phrase(not_learnt.why))
                  << "\n";
  }
  const LearnLibrary library = learn(all);
  const std::string json = write_library(library);
  if (options->has("-o"))
    if (const Result<void> saved = save_atomically(options->value("-o", ""), json); !saved)
      return refuse({}, saved.error());
  streams.out << (options->has("--json") ? json : as_text(library, tables));
  return 0;
}

}  // namespace burrow
