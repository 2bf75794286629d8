#pragma once
/// What reading and saving are made of: open files, names of disk errors, the new content beside the old.

#include <string>
#include <string_view>
#include <utility>

#include "burrow/base/result.h"

struct stat;

namespace burrow {

/// An open file that is closed when it goes out of use.
class OpenFile {
 public:
  explicit OpenFile(int fd) : fd_(fd) {}
  ~OpenFile() { close_now(); }
  OpenFile(OpenFile&& other) noexcept : fd_(std::exchange(other.fd_, -1)) {}
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  OpenFile& operator=(OpenFile&&) = delete;
  [[nodiscard]] int fd() const { return fd_; }
  [[nodiscard]] bool is_open() const { return fd_ >= 0; }
  void close_now();

 private:
  int fd_;
};

/// The words for an error number of the system.
Phrase disk_words(int code);
tl::unexpected<Error> disk_error(const std::string& path, int code, Phrase expected);

/// Owner and group as far as this user may give them away, then the permissions. Group and owner are two wishes: often
/// only the group can be kept.
bool take_permissions(int fd, const struct stat& old_file);

/// All of it at the end of what was written so far. False: `errno` says why.
bool write_all(int fd, std::string_view text);

/// "." for a bare name.
std::string folder_of(const std::string& path);
std::string name_of(const std::string& path);
/// The path behind symbolic links, also when the last one points to nothing yet. Empty: they run in a circle.
std::string behind_links(std::string path);

/// The new content beside the old; removed again unless it took the old one's place. It is locked for as long as it is
/// written, so that cleaning up can tell it from what a killed save left.
class Temporary {
 public:
  explicit Temporary(const std::string& folder);
  ~Temporary();
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  OpenFile& file() { return file_; }
  bool take_place_of(const std::string& path);

 private:
  int create(const std::string& folder);
  std::string path_;
  OpenFile file_;
  bool created_;
  bool placed_ = false;
};

/// So that a rename survives a power cut. 0: confirmed, or a file system that has no such thing; else the error number.
int flush_folder(const std::string& folder);

}  // namespace burrow
