/// help, --help and the usage: all from the table of commands.

#include <algorithm>
#include <ostream>

#include "burrow/document/language.h"
#include "burrow/language/say.h"
#include "command_table.h"
#include "options.h"
#include "version.h"

namespace burrow {

namespace {

constexpr std::size_t width = 100;

/// Letters as they stand on a screen: bytes that begin a character of UTF-8.
std::size_t columns(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

/// Broken at blanks; every line but the first begins with so many.
std::string wrapped(std::string_view text, std::size_t margin, std::size_t at) {
  std::string out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    if (!out.empty() && at + 1 + columns(word) > width) {
      out += "\n" + std::string(margin, ' ');
      at = margin;
    } else if (!out.empty()) {
      out += ' ';
      ++at;
    }
    out += word;
    at += columns(word);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return out;
}

std::string typed(const CommandOption& option) {
  return std::string(option.name) + (*option.value ? " " : "") + option.value;
}

std::string line_of(const std::string& what, const std::string& does, std::size_t margin) {
  std::string line = "  " + what;
  const std::size_t at = columns(line);
  line += at + 2 > margin ? "\n" + std::string(margin, ' ') : std::string(margin - at, ' ');
  return line + wrapped(does, margin, margin) + "\n";
}

/// "en|de|es"
std::string language_choices() {
  return languages().join(QLatin1Char('|')).toStdString();
}

}  // namespace

std::string help_text(const Command& command) {
  constexpr std::size_t margin = 26;
  std::string text = "burrowline " + std::string(command.name) + " " + command.takes +
                     (command.options.empty() ? "" : std::string(" ") + translated("[options]")) + "\n\n" +
                     wrapped(translated(command.does), 0, 0) + "\n\n";
  for (const CommandOption& option : command.options) text += line_of(typed(option), translated(option.does), margin);
  text += line_of("--language " + language_choices(), translated("the language of the words"), margin);
  return text + "\n" + wrapped(say("Exit code: {}.", translated(command.exit)), 0, 0) + "\n";
}

std::string usage() {
  constexpr std::size_t margin = 14;
  std::string text = "burrowline [FILE]\n" + line_of("", translated("opens the workbench"), margin);
  for (const Command& command : commands()) {
    std::string call = "burrowline " + std::string(command.name) + " " + command.takes;
    for (const CommandOption& option : command.options)
      if (std::string_view(command.takes).find(typed(option)) == std::string_view::npos)
        call += " [" + typed(option) + "]";
    text += wrapped(call, margin, 0) + "\n";
  }
  text += "burrowline --version\n";
  text += wrapped(say("With every command: --language {}. What one does: burrowline help COMMAND.", language_choices()),
                  0, 0) +
          "\n";
  return text;
}

int help_command(const CommandArgs& args, Streams streams) {
  const Result<Options> options = read_options(args, {});
  const std::string name = options && !options->files.empty() ? options->files.front() : std::string();
  const Command* command = find_command(name);
  std::string known;
  for (const Command& one : commands()) known += (known.empty() ? "" : ", ") + std::string(one.name);
  if (!options || options->files.size() > 1 || (!name.empty() && !command)) {
    const Error error =
        options ? Error{"", name, phrase(translatable("one of the commands: {}"), known)} : options.error();
    streams.err << "burrowline help: " << translated_error(error) << "\n";
    return 2;
  }
  streams.out << (command ? help_text(*command) : usage());
  return 0;
}

}  // namespace burrow
