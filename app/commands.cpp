#include "commands.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

#include "burrow/document/language.h"
#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"
#include "command_table.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

/// A folder of our own, gone when the command has ended.
class OwnFolder {
 public:
  OwnFolder() {
    std::error_code failed;
    std::string name = (fs::temp_directory_path(failed) / "burrowline-XXXXXX").string();
    if (!failed && ::mkdtemp(name.data())) path_ = name;
  }
  ~OwnFolder() {
    std::error_code ignored;
    if (!path_.empty()) fs::remove_all(path_, ignored);
  }
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

/// "-o -": what the command would write to a file, on standard output.
int to_standard_output(const Command& command, CommandArgs args, CommandArgs::difference_type out, Streams streams) {
  const OwnFolder folder;
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline " << command.name << ": " << translated_error(error) << "\n";
    return 2;
  };
  if (folder.path().empty())
    return refuse(Error{"-o", "-", translatable("a folder for temporary files that may be written")});
  const std::string file = folder.path() + "/out";
  args[static_cast<std::size_t>(out)] = file;
  const int code = command.run(args, streams);
  if (code != 0) return code;
  const Result<std::string> text = read_text_file(file);
  if (!text) return refuse(text.error());
  streams.out << *text;
  return 0;
}

}  // namespace

Result<std::string> take_language(CommandArgs& args) {
  const auto one_of = [] { return Phrase(languages().join(QStringLiteral(", ")).toStdString()); };
  const auto end = std::find(args.begin(), args.end(), "--");
  const auto at = std::find(args.begin(), end, "--language");
  if (at == end) return std::string();
  if (at + 1 == end) return fail("--language", "nothing after it", one_of());
  const std::string language = *(at + 1);
  if (!languages().contains(text_from(language))) return fail("--language", language, one_of());
  args.erase(at, at + 2);
  return language;
}

bool is_command(const std::string& word) {
  return find_command(word) != nullptr;
}

bool command_draws(const std::string& name) {
  const Command* command = find_command(name);
  return command && command->draws;
}

int run_command(const std::string& name, const CommandArgs& args, Streams streams) {
  const Command* command = find_command(name);
  if (!command) {
    streams.err << usage();
    return 2;
  }
  const auto end = std::find(args.begin(), args.end(), "--");
  if (std::find(args.begin(), end, "--help") != end || std::find(args.begin(), end, "-h") != end) {
    streams.out << help_text(*command);
    return 0;
  }
  const auto out = std::find(args.begin(), end, "-o");
  const bool piped = name == "import" && out != end && out + 1 != end && *(out + 1) == "-";
  return piped ? to_standard_output(*command, args, out + 1 - args.begin(), streams) : command->run(args, streams);
}

}  // namespace burrow
