#include "burrow/file/disk.h"
#include "burrow/base/say.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstdio>
#include <system_error>
#include <utility>

namespace burrow {

namespace {

constexpr std::size_t max_file_bytes = 64'000'000;
constexpr int most_links = 40;

/// An open file that is closed when it goes out of use.
class OpenFile {
 public:
  explicit OpenFile(int fd) : fd_(fd) {}
  ~OpenFile() { close_now(); }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  [[nodiscard]] int fd() const { return fd_; }
  [[nodiscard]] bool is_open() const { return fd_ >= 0; }
  bool close_now() {
    const int fd = std::exchange(fd_, -1);
    return fd < 0 || ::close(fd) == 0;
  }

 private:
  int fd_;
};

tl::unexpected<Error> disk_error(const std::string& path, int code, std::string expected) {
  switch (code) {
    case ENOENT:
    case ENOTDIR:
      return fail(path, said("no such file or folder"), std::move(expected));
    case EISDIR:
      return fail(path, said("a folder"), std::move(expected));
    case EACCES:
    case EPERM:
      return fail(path, said("no permission"), std::move(expected));
    case EROFS:
      return fail(path, said("a read-only disk"), std::move(expected));
    case ENOSPC:
    case EDQUOT:
      return fail(path, said("a full disk"), std::move(expected));
    case EFBIG:
      return fail(path, said("a file larger than this system allows"), std::move(expected));
    case ELOOP:
      return fail(path, said("too many symbolic links"), std::move(expected));
    default:
      return fail(path, std::system_category().message(code), std::move(expected));
  }
}

bool write_all(int fd, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(fd, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

/// The path behind symbolic links, also when the last one points to nothing yet. Empty: they run in a circle.
std::string behind_links(std::string path) {
  for (int i = 0; i < most_links; ++i) {
    std::array<char, 4096> target{};
    const ssize_t length = ::readlink(path.c_str(), target.data(), target.size());
    if (length < 0) return path;
    const std::string next(target.data(), static_cast<std::size_t>(length));
    path = next.starts_with('/') ? next : folder_of(path).append("/").append(next);
  }
  return {};
}

/// The new content beside the old; removed again unless it took the old one's place.
class Temporary {
 public:
  explicit Temporary(const std::string& folder) : file_(create(folder)) {}
  ~Temporary() {
    if (created_ && !placed_) ::unlink(path_.c_str());
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  OpenFile& file() { return file_; }
  bool take_place_of(const std::string& path) {
    placed_ = std::rename(path_.c_str(), path.c_str()) == 0;
    return placed_;
  }

 private:
  int create(const std::string& folder) {
    static std::atomic<unsigned> counter{0};
    constexpr int most_tries = 1000;
    for (int i = 0; i < most_tries; ++i) {
      path_ = folder + "/.burrowline-" + std::to_string(::getpid()) + '-' + std::to_string(++counter) + ".tmp";
      const int fd = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      if (fd >= 0 || errno != EEXIST) return fd;
    }
    return -1;
  }
  std::string path_;
  OpenFile file_;
  bool created_ = file_.is_open();
  bool placed_ = false;
};

/// The new file gets the owner, as far as this user may give it away, and the permissions of the old.
bool take_permissions(int fd, const struct stat& old_file) {
  struct stat created {};
  if (::fstat(fd, &created) != 0) return false;
  const bool same_owner = created.st_uid == old_file.st_uid && created.st_gid == old_file.st_gid;
  if (!same_owner && ::fchown(fd, old_file.st_uid, old_file.st_gid) != 0 && errno != EPERM) return false;
  return ::fchmod(fd, old_file.st_mode & 0777U) == 0;
}

/// So that the rename itself survives a power cut; a file system that cannot do it has nothing better to offer.
void flush_folder(const std::string& folder) {
  const OpenFile opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (opened.is_open()) ::fsync(opened.fd());
}

}  // namespace

Result<std::string> read_text_file(const std::string& path) {
  const std::string wanted = said("a file that can be read");
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) return disk_error(path, errno, wanted);
  if (S_ISDIR(status.st_mode)) return disk_error(path, EISDIR, wanted);
  if (!S_ISREG(status.st_mode) && !S_ISFIFO(status.st_mode)) return fail(path, said("not a file"), wanted);
  const OpenFile file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) return disk_error(path, errno, wanted);
  std::string text;
  std::array<char, 65536> piece{};
  for (;;) {
    const ssize_t count = ::read(file.fd(), piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return disk_error(path, errno, wanted);
    if (count == 0) return text;
    text.append(piece.data(), static_cast<std::size_t>(count));
    if (text.size() > max_file_bytes)
      return fail(path, said("more than 64 MB"), said("at most 64 MB (64,000,000 bytes)"));
  }
}

Result<void> save_atomically(const std::string& path, std::string_view text) {
  const std::string wanted = said("a place that can be written");
  const std::string target = behind_links(path);
  if (target.empty()) return disk_error(path, ELOOP, wanted);
  struct stat status {};
  const bool exists = ::stat(target.c_str(), &status) == 0;
  if (!exists && errno != ENOENT) return disk_error(path, errno, wanted);
  if (exists && S_ISDIR(status.st_mode)) return disk_error(path, EISDIR, wanted);
  if (exists && !S_ISREG(status.st_mode)) return fail(path, said("not a file"), wanted);
  if (exists && ::access(target.c_str(), W_OK) != 0) return disk_error(path, errno, wanted);

  Temporary temporary(folder_of(target));
  OpenFile& file = temporary.file();
  if (!file.is_open()) return disk_error(path, errno, wanted);
  if (exists && !take_permissions(file.fd(), status)) return disk_error(path, errno, wanted);
  if (!write_all(file.fd(), text)) return disk_error(path, errno, wanted);
  if (::fsync(file.fd()) != 0) return disk_error(path, errno, wanted);
  if (!file.close_now()) return disk_error(path, errno, wanted);
  if (!temporary.take_place_of(target)) return disk_error(path, errno, wanted);
  flush_folder(folder_of(target));
  return {};
}

}  // namespace burrow
