#pragma once
/// What the commands are called, take and do: the one list that help, usage and the start of the program read by. That
/// each command takes exactly these options, and that man page and completion know them: Commands.Table_*

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "commands.h"

namespace burrow {

/// Texts marked `translatable`; what is typed is not translated.
struct CommandOption {
  const char* name;   ///< "--units"
  const char* value;  ///< "metric|us"; empty: none follows
  const char* does;
};

struct Command {
  const char* name;
  const char* takes;  ///< what must follow: "FILE -o OUT.pdf"
  const char* does;
  std::vector<CommandOption> options;
  const char* exit;  ///< what the exit code says
  int (*run)(const CommandArgs& args, Streams streams);
  bool draws = false;  ///< wants Qt's drawing, though no display
};

std::span<const Command> commands();
/// Null: there is no such command.
const Command* find_command(std::string_view name);

/// What `burrowline check --help` and `burrowline help check` print, in the language spoken.
std::string help_text(const Command& command);

}  // namespace burrow
