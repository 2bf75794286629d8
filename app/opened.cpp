#include "opened.h"

#include "burrow/check/assess.h"
#include "burrow/day/with_day.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"

namespace burrow {

Result<Opened> open_one(const Options& options) {
  if (options.files.size() != 1)
    return fail("", options.files.empty() ? "no file" : std::to_string(options.files.size()) + " files", "one FILE");
  Opened opened;
  opened.tables = load_tables(today());
  Result<std::string> text = read_text_file(options.files.front());
  if (!text) return tl::unexpected(std::move(text).error());
  Result<Crossing> crossing = read_crossing(*text, opened.tables);
  if (!crossing) {
    Error error = std::move(crossing).error();
    error.place = phrase("{}: {}", options.files.front(), error.place);
    return tl::unexpected(std::move(error));
  }
  opened.crossing = std::move(*crossing);
  opened.assessment = with_open_record(opened.crossing, opened.tables, assess(opened.crossing, opened.tables));
  return opened;
}

Result<UnitSystem> sheet_units(const Options& options, const Crossing& crossing) {
  if (!options.has("--units") && crossing.sheet.units) return *crossing.sheet.units;
  return units_of(options);
}

}  // namespace burrow
