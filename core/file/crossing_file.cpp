#include "burrow/file/crossing_file.h"

#include "crossing_reader.h"
#include "crossing_rules.h"
#include "crossing_writer.h"
#include "json_tree.h"

namespace burrow {

Result<Crossing> read_crossing(std::string_view json_text, const Tables& tables) {
  const Result<Json> json = parse_json(json_text);
  if (!json) return tl::unexpected<Error>(json.error());
  if (!json->object()) return fail("", shown_json(*json), "a JSON object");
  Crossing crossing;
  Reader reader(tables);
  reader.read(*json, crossing);
  reader.settle_ids();
  check_rules(reader, crossing);
  if (reader.error()) return tl::unexpected<Error>(*reader.error());
  return crossing;
}

std::string write_crossing(const Crossing& crossing) {
  return pretty_json(Writer().write(crossing));
}

}  // namespace burrow
