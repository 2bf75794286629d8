#pragma once
/// The commands of the program. Each writes to the two streams and gives the exit code: 0, 1 (stop or incomplete), 2
/// (could not be read, or a wrong word).

#include <iostream>
#include <string>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct Streams {
  std::ostream& out;
  std::ostream& err;
  std::istream& in = std::cin;
};

using CommandArgs = std::vector<std::string>;

int check_command(const CommandArgs& args, Streams streams);
int search_command(const CommandArgs& args, Streams streams);
int sheet_command(const CommandArgs& args, Streams streams);
int picture_command(const CommandArgs& args, Streams streams);
int movie_command(const CommandArgs& args, Streams streams);
int export_command(const CommandArgs& args, Streams streams);
int import_command(const CommandArgs& args, Streams streams);
int learn_command(const CommandArgs& args, Streams streams);
int set_command(const CommandArgs& args, Streams streams);
int make_command(const CommandArgs& args, Streams streams);
int schema_command(const CommandArgs& args, Streams streams);
int help_command(const CommandArgs& args, Streams streams);

/// Takes "--language de" out of the words, wherever it stands before "--"; empty: none was there. A command line speaks
/// English unless told so. Error: a language the program does not speak.   Evidence: Process.Language_*
Result<std::string> take_language(CommandArgs& args);

/// How to call the program, in the language spoken.
std::string usage();

/// Whether the first word names a command rather than a file to open.
bool is_command(const std::string& word);
/// Whether it wants an application to draw with.
bool command_draws(const std::string& name);
/// Runs it; with "--help" among its words it says what it takes instead. `import -o -` writes to `streams.out`.
/// Evidence: Commands.*
int run_command(const std::string& name, const CommandArgs& args, Streams streams);

}  // namespace burrow
