/// schema: what the files look like, for other programs.

#include <ostream>

#include "burrow/file/schema_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "options.h"

namespace burrow {

int schema_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline schema: " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {});
  if (!options) return refuse(options.error());
  const std::string what = options->files.empty() ? "crossing" : options->files.front();
  if (options->files.size() > 1 || (what != "crossing" && what != "assessment"))
    return refuse(Error{"", options->files.back(), "crossing, assessment"});
  streams.out << (what == "crossing" ? crossing_schema(load_tables()) : assessment_schema());
  return 0;
}

}  // namespace burrow
