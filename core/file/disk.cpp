#include "burrow/file/disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <cerrno>
#include <vector>

#include "disk_parts.h"
#include "save_in_place.h"

namespace burrow {

namespace {

constexpr std::size_t max_file_bytes = 64'000'000;

/// Access lists and what else hangs on a file. What this file system or this user cannot set is left.
void take_attributes(const std::string& from, int to) {
  const OpenFile file(::open(from.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) return;
  const ssize_t size = ::flistxattr(file.fd(), nullptr, 0);
  if (size <= 0) return;
  std::vector<char> names(static_cast<std::size_t>(size));
  const ssize_t listed = ::flistxattr(file.fd(), names.data(), names.size());
  for (ssize_t at = 0; at < listed;) {
    const std::string name(&names[static_cast<std::size_t>(at)]);
    at += static_cast<ssize_t>(name.size()) + 1;
    const ssize_t length = ::fgetxattr(file.fd(), name.c_str(), nullptr, 0);
    if (length < 0) continue;
    std::vector<char> value(static_cast<std::size_t>(length));
    if (::fgetxattr(file.fd(), name.c_str(), value.data(), value.size()) == length)
      ::fsetxattr(to, name.c_str(), value.data(), value.size(), 0);
  }
}

Result<Written> save_by_rename(const std::string& path, const std::string& target, const struct stat* old_file,
                               std::string_view text) {
  const Phrase wanted = translatable("a place that can be written");
  Temporary temporary(folder_of(target));
  const OpenFile& file = temporary.file();
  if (!file.is_open()) return disk_error(path, errno, wanted);
  if (old_file && !take_permissions(file.fd(), *old_file)) return disk_error(path, errno, wanted);
  if (old_file) take_attributes(target, file.fd());
  if (!write_all(file.fd(), text)) return disk_error(path, errno, wanted);
  if (::fsync(file.fd()) != 0)
    return fail(path, phrase(translatable("a disk that did not confirm the new content ({})"), disk_words(errno)),
                translatable("a disk that confirms it; the file there is untouched"));
  if (!temporary.take_place_of(target)) return disk_error(path, errno, wanted);
  return flush_folder(folder_of(target)) == 0 ? Written::surely : Written::unconfirmed;
}

}  // namespace

Result<std::string> read_text_file(const std::string& path) {
  const Phrase wanted = translatable("a file that can be read");
  struct stat status {};
  if (::stat(path.c_str(), &status) != 0) return disk_error(path, errno, wanted);
  if (S_ISDIR(status.st_mode)) return disk_error(path, EISDIR, wanted);
  if (!S_ISREG(status.st_mode) && !S_ISFIFO(status.st_mode)) return fail(path, translatable("not a file"), wanted);
  std::string text;
  if (!read_all(path, max_file_bytes, text)) return disk_error(path, errno, wanted);
  if (text.size() > max_file_bytes)
    return fail(path, translatable("more than 64 MB"), translatable("at most 64 MB (64,000,000 bytes)"));
  return S_ISREG(status.st_mode) ? settled(behind_links(path), std::move(text)) : text;
}

Result<std::string> read_regular_file(const std::string& path) {
  struct stat status {};
  if (::stat(path.c_str(), &status) == 0 && S_ISFIFO(status.st_mode))
    return fail(path, translatable("not a file"), translatable("a file that can be read"));
  return read_text_file(path);
}

Result<Written> replace_file(const std::string& path, std::string_view text) {
  const Phrase wanted = translatable("a place that can be written");
  const std::string target = behind_links(path);
  if (target.empty()) return disk_error(path, ELOOP, wanted);
  struct stat status {};
  const bool exists = ::stat(target.c_str(), &status) == 0;
  if (!exists && errno != ENOENT) return disk_error(path, errno, wanted);
  if (exists && S_ISDIR(status.st_mode)) return disk_error(path, EISDIR, wanted);
  if (exists && !S_ISREG(status.st_mode)) return fail(path, translatable("not a file"), wanted);
  if (exists && ::access(target.c_str(), W_OK) != 0) return disk_error(path, errno, wanted);
  // By a rename another's file would become mine, and other names of it would keep the old content.
  const bool anothers = exists && status.st_uid != ::geteuid() && ::geteuid() != 0;
  if (exists && (status.st_nlink > 1 || anothers)) return save_in_place(path, target, text);
  mend_killed_save(target);  // of a save in place, when there was another name
  return save_by_rename(path, target, exists ? &status : nullptr, text);
}

Result<void> save_atomically(const std::string& path, std::string_view text) {
  const Result<Written> written = replace_file(path, text);
  if (!written) return tl::unexpected(written.error());
  if (*written == Written::unconfirmed)
    return fail(
        path, translatable("a disk that did not confirm the folder"),
        translatable("a disk that confirms it; the new content is there, but a power cut may bring the old one back"));
  return {};
}

}  // namespace burrow
