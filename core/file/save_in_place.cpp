#include "save_in_place.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <charconv>
#include <limits>
#include <optional>

#include "disk_parts.h"

namespace burrow {

namespace {

constexpr std::string_view first_line = "burrowline saving 1\n";
constexpr std::size_t no_bound = std::numeric_limits<std::size_t>::max();

/// No link to something else and no pipe, for which reading would wait.
bool is_regular(const std::string& path) {
  struct stat status {};
  return ::lstat(path.c_str(), &status) == 0 && S_ISREG(status.st_mode);
}

struct Both {
  unsigned long long inode = 0;  ///< of the file they belong to: one put in its place since is none of ours
  std::string before, after;
};

/// Whole by itself: it took its name only after the disk had confirmed it.
std::string safety_text(unsigned long long inode, const std::string& before, std::string_view after) {
  std::string text(first_line);
  text += std::to_string(inode) + ' ' + std::to_string(before.size()) + ' ' + std::to_string(after.size()) + '\n';
  return (text += before).append(after);
}

std::optional<Both> read_safety(const std::string& target) {
  std::string text;
  if (!is_regular(safety_of(target))) return std::nullopt;
  if (!read_all(safety_of(target), no_bound, text) || !text.starts_with(first_line)) return std::nullopt;
  std::array<unsigned long long, 3> numbers{};
  const char* at = text.data() + first_line.size();
  const char* end = text.data() + text.size();
  for (unsigned long long& number : numbers) {
    const auto [stopped, bad] = std::from_chars(at, end, number);
    if (bad != std::errc() || stopped == end) return std::nullopt;
    at = stopped + 1;
  }
  const auto begin = static_cast<std::size_t>(at - text.data());
  const std::size_t rest = text.size() - begin;
  if (numbers[1] > rest || numbers[2] != rest - numbers[1]) return std::nullopt;
  struct stat status {};
  if (::stat(target.c_str(), &status) != 0 || status.st_ino != numbers[0]) return std::nullopt;
  return Both{numbers[0], text.substr(begin, numbers[1]), text.substr(begin + numbers[1])};
}

std::size_t alike_at_the_start(std::string_view a, std::string_view b) {
  const std::size_t most = std::min(a.size(), b.size());
  std::size_t i = 0;
  while (i < most && a[i] == b[i]) ++i;
  return i;
}

/// New up to some byte, old from there: a process that was killed.
bool cut_short(std::string_view text, const Both& both) {
  const std::size_t fresh = alike_at_the_start(text, both.after);
  return text.substr(fresh) == (fresh < both.before.size() ? std::string_view(both.before).substr(fresh) : "");
}

/// Each block from the one or the other, or never written: a power cut, which keeps no order.
bool blocks_of_both(std::string_view text, const Both& both) {
  constexpr std::size_t block = 512;
  const auto is_of = [&](std::string_view whole, std::size_t at) {
    return at < whole.size() && text.substr(at, block).starts_with(whole.substr(at, std::min(block, text.size() - at)));
  };
  for (std::size_t at = 0; at < text.size(); at += block)
    if (!is_of(both.before, at) && !is_of(both.after, at) &&
        text.substr(at, block).find_first_not_of('\0') != std::string_view::npos)
      return false;
  return true;
}

/// Neither of both, but made of them: nobody else's content.
bool half_written(std::string_view text, const Both& both) {
  if (text == both.before || text == both.after) return false;
  const auto [least, most] = std::minmax({both.before.size(), both.after.size()});
  if (text.size() < least || text.size() > most) return false;
  return cut_short(text, both) || blocks_of_both(text, both);
}

bool write_over(int fd, std::string_view text) {
  std::string_view rest = text;
  while (!rest.empty()) {
    const auto at = static_cast<off_t>(text.size() - rest.size());
    const ssize_t written = ::pwrite(fd, rest.data(), rest.size(), at);
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    rest.remove_prefix(static_cast<std::size_t>(written));
  }
  return ::ftruncate(fd, static_cast<off_t>(text.size())) == 0 && ::fsync(fd) == 0;
}

/// Puts old and new content beside the file, and answers when the disk has confirmed them: 0, or the error number.
int put_safety(const std::string& target, const std::string& before, std::string_view after) {
  struct stat status {};
  if (::stat(target.c_str(), &status) != 0) return errno;
  Temporary temporary(folder_of(target));
  const OpenFile& file = temporary.file();
  if (!file.is_open() || !take_permissions(file.fd(), status)) return errno;
  if (!write_all(file.fd(), safety_text(status.st_ino, before, after)) || ::fsync(file.fd()) != 0) return errno;
  if (!temporary.take_place_of(safety_of(target))) return errno;
  const int code = flush_folder(folder_of(target));
  if (code != 0) ::unlink(safety_of(target).c_str());
  return code;
}

/// Confirmed too: come back after a power cut, it would be taken for one that is needed.
void drop_safety(const std::string& target) {
  if (::unlink(safety_of(target).c_str()) == 0) flush_folder(folder_of(target));
}

/// False: what is half written could not be mended now.
bool mend(int fd, const std::string& target) {
  const std::optional<Both> both = read_safety(target);
  if (!both) return true;
  std::string text;
  if (!read_all(target, no_bound, text)) return false;
  if (half_written(text, *both) && !write_over(fd, both->after)) return false;
  drop_safety(target);
  return true;
}

}  // namespace

std::string safety_of(const std::string& target) {
  return folder_of(target) + "/." + name_of(target) + ".saving";
}

bool read_all(const std::string& path, std::size_t at_most, std::string& text) {
  const OpenFile file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) return false;
  std::array<char, 65536> piece{};
  while (text.size() <= at_most) {
    const ssize_t count = ::read(file.fd(), piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    if (count == 0) return true;
    text.append(piece.data(), static_cast<std::size_t>(count));
  }
  return true;
}

std::string settled(const std::string& target, std::string text) {
  if (::access(safety_of(target).c_str(), F_OK) != 0) return text;
  const std::optional<Both> both = read_safety(target);
  return both && half_written(text, *both) ? both->after : text;
}

Result<Written> save_in_place(const std::string& path, const std::string& target, std::string_view text) {
  const Phrase wanted = translatable("a place that can be written");
  const OpenFile file(::open(target.c_str(), O_RDWR | O_CLOEXEC));
  if (!file.is_open()) return disk_error(path, errno, wanted);
  if (::flock(file.fd(), LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
    return fail(path, translatable("another program that is saving it"), translatable("a file that nobody is saving"));
  if (!mend(file.fd(), target)) return disk_error(path, errno, wanted);
  std::string before;
  if (!read_all(target, no_bound, before)) return disk_error(path, errno, wanted);
  if (const int code = put_safety(target, before, text); code != 0) return disk_error(path, code, wanted);
  if (write_over(file.fd(), text)) {
    drop_safety(target);
    return Written::surely;
  }
  const int code = errno;
  if (!write_over(file.fd(), before))
    return fail(
        path, disk_words(code),
        phrase(translatable("a disk that works; the file may be half written, the old and the new content wait in {}"),
               safety_of(target)));
  drop_safety(target);
  return disk_error(path, code, wanted);
}

void mend_killed_save(const std::string& path) {
  const std::string target = behind_links(path);
  if (target.empty() || ::access(safety_of(target).c_str(), F_OK) != 0) return;
  const OpenFile file(::open(target.c_str(), O_RDWR | O_CLOEXEC));
  if (!file.is_open() || (::flock(file.fd(), LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)) return;
  mend(file.fd(), target);
}

}  // namespace burrow
