#include "disk_parts.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <system_error>

#include "burrow/file/disk.h"

namespace burrow {

namespace {

constexpr int most_links = 40;
constexpr std::string_view begin_of_name = ".burrowline-";
constexpr std::string_view end_of_name = ".tmp";

/// Still in the folder: nobody cleaned it away before it was locked.
bool still_there(int fd) {
  struct stat status {};
  return ::fstat(fd, &status) == 0 && status.st_nlink > 0;
}

/// Nobody writes it. A file system without locks leaves only the age to go by.
bool left_behind(const std::string& path) {
  constexpr std::time_t an_hour_s = 3600;  // no save takes so long
  const OpenFile file(::open(path.c_str(), O_RDWR | O_CLOEXEC | O_NOFOLLOW));
  if (!file.is_open()) return false;
  if (::flock(file.fd(), LOCK_EX | LOCK_NB) == 0) return true;
  if (errno == EWOULDBLOCK) return false;
  struct stat status {};
  return ::fstat(file.fd(), &status) == 0 && status.st_mtime + an_hour_s < std::time(nullptr);
}

}  // namespace

void OpenFile::close_now() {
  const int fd = std::exchange(fd_, -1);
  if (fd >= 0) ::close(fd);
}

Phrase disk_words(int code) {
  switch (code) {
    case ENOENT:
    case ENOTDIR:
      return translatable("no such file or folder");
    case EISDIR:
      return translatable("a folder");
    case EACCES:
    case EPERM:
      return translatable("no permission");
    case EROFS:
      return translatable("a read-only disk");
    case ENOSPC:
    case EDQUOT:
      return translatable("a full disk");
    case EFBIG:
      return translatable("a file larger than this system allows");
    case ELOOP:
      return translatable("too many symbolic links");
    case EIO:
      return translatable("a fault of the disk");
    default:
      return std::system_category().message(code);
  }
}

tl::unexpected<Error> disk_error(const std::string& path, int code, Phrase expected) {
  return fail(path, disk_words(code), std::move(expected));
}

bool take_permissions(int fd, const struct stat& old_file) {
  struct stat created {};
  if (::fstat(fd, &created) != 0) return false;
  if (created.st_uid != old_file.st_uid && ::fchown(fd, old_file.st_uid, static_cast<gid_t>(-1)) != 0 && errno != EPERM)
    return false;
  mode_t mode = old_file.st_mode & 0777U;
  if (created.st_gid != old_file.st_gid && ::fchown(fd, static_cast<uid_t>(-1), old_file.st_gid) != 0) {
    if (errno != EPERM) return false;
    mode = (mode & ~mode_t{070}) | ((mode & mode_t{07}) << 3U);  // another group may do no more than everybody
  }
  return ::fchmod(fd, mode) == 0;
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

std::string name_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

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

Temporary::Temporary(const std::string& folder) : file_(create(folder)), created_(file_.is_open()) {}

Temporary::~Temporary() {
  if (created_ && !placed_) ::unlink(path_.c_str());
}

bool Temporary::take_place_of(const std::string& path) {
  placed_ = std::rename(path_.c_str(), path.c_str()) == 0;
  return placed_;
}

int Temporary::create(const std::string& folder) {
  static std::atomic<unsigned> counter{0};
  constexpr int most_tries = 1000;
  for (int i = 0; i < most_tries; ++i) {
    path_ = folder + '/' + std::string(begin_of_name) + std::to_string(::getpid()) + '-' + std::to_string(++counter) +
            std::string(end_of_name);
    const int fd = ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (fd < 0 && errno != EEXIST) return fd;
    if (fd < 0) continue;
    ::flock(fd, LOCK_EX | LOCK_NB);
    if (still_there(fd)) return fd;
    ::close(fd);
  }
  return -1;
}

int flush_folder(const std::string& folder) {
  const OpenFile opened(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!opened.is_open() || ::fsync(opened.fd()) == 0) return 0;
  switch (errno) {
    case EINVAL:
    case EROFS:
    case ENOSYS:
    case EOPNOTSUPP:
    case EBADF:
      return 0;
    default:
      return errno;
  }
}

void clean_leftovers(const std::string& folder) {
  std::error_code none;  // a folder that cannot be listed keeps what it has
  for (std::filesystem::directory_iterator entry(folder, none), end; !none && entry != end; entry.increment(none)) {
    const std::string path = entry->path().string();
    const std::string name = name_of(path);
    if (name.starts_with(begin_of_name) && name.ends_with(end_of_name) && left_behind(path)) ::unlink(path.c_str());
  }
}

}  // namespace burrow
