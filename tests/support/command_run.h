#pragma once
/// Runs a command and keeps what it wrote; a folder that is gone when the test ends.

#include <stdlib.h>
#include <sys/wait.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "commands.h"

namespace burrow::test {

struct Ran {
  int code = -1;
  std::string out, err;
};

/// What is judged is judged for one day, whatever the day of the machine is.
inline std::vector<std::string> on_one_day(const std::string& command, std::vector<std::string> words) {
  if (command == "check" && std::find(words.begin(), words.end(), "--on") == words.end())
    words.insert(words.begin(), {"--on", "2026-03-02"});
  return words;
}

inline Ran run(const std::string& command, const std::vector<std::string>& words) {
  std::ostringstream out, err;
  Ran ran;
  ran.code = run_command(command, on_one_day(command, words), {out, err});
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

/// The same with something on standard input.
inline Ran run_with(const std::string& input, const std::string& command, const std::vector<std::string>& words) {
  std::istringstream in(input);
  std::ostringstream out, err;
  Ran ran;
  ran.code = run_command(command, on_one_day(command, words), {out, err, in});
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

/// Runs a line of the shell; standard output and error together.
inline Ran run_shell(const std::string& line) {
  Ran ran;
  std::FILE* pipe = ::popen((line + " 2>&1").c_str(), "r");
  if (!pipe) return ran;
  char some[4096];
  while (const std::size_t n = std::fread(some, 1, sizeof some, pipe)) ran.out.append(some, n);
  const int status = ::pclose(pipe);
  ran.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return ran;
}

inline std::string sample(const std::string& name) {
  return BURROW_SOURCE_DIR "/samples/" + name + ".crossing";
}

class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "burrow-app-XXXXXX").string();
    path_ = ::mkdtemp(name.data()) ? name : std::string();
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] std::string path(const std::string& name = {}) const {
    return name.empty() ? path_ : path_ + "/" + name;
  }
  void write(const std::string& name, const std::string& text) const { std::ofstream(path(name)) << text; }
  void copy_sample(const std::string& from, const std::string& to) const {
    std::filesystem::copy_file(sample(from), path(to));
  }
  [[nodiscard]] std::string read(const std::string& name) const {
    std::ostringstream text;
    text << std::ifstream(path(name), std::ios::binary).rdbuf();
    return text.str();
  }

 private:
  std::string path_;
};

inline std::vector<std::string> lines(const std::string& text) {
  std::vector<std::string> all;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) all.push_back(line);
  return all;
}

}  // namespace burrow::test
