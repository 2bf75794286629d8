#pragma once
/// The commands of the program. Each writes to the two streams and gives the exit code: 0, 1 (stop or incomplete), 2
/// (could not be read, or a wrong word).

#include <iosfwd>
#include <string>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct Streams {
  std::ostream& out;
  std::ostream& err;
};

using CommandArgs = std::vector<std::string>;

int check_command(const CommandArgs& args, Streams streams);
int search_command(const CommandArgs& args, Streams streams);
int sheet_command(const CommandArgs& args, Streams streams);
int picture_command(const CommandArgs& args, Streams streams);
int export_command(const CommandArgs& args, Streams streams);
int import_command(const CommandArgs& args, Streams streams);
int learn_command(const CommandArgs& args, Streams streams);

/// Takes "--language de" out of the words, wherever it stands before "--"; empty: none was there. A command line speaks
/// English unless told so. Error: a language the program does not speak.   Evidence: Process.Language_*
Result<std::string> take_language(CommandArgs& args);

/// How to call the program.
std::string usage();

/// Whether the first word names a command rather than a file to open.
bool is_command(const std::string& word);
int run_command(const std::string& name, const CommandArgs& args, Streams streams);

}  // namespace burrow
