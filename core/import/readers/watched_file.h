#pragma once
/// Some drivers read a whole file while they open it: for these the file itself tells how far they are, and ends early
/// when the person has had enough.

#include <string>

#include "burrow/import/found.h"

namespace burrow::gdal {

/// While it lives, `path()` is `path` as a file that asks `options` for leave to go on. One at a time in a thread,
/// which is also the one that reads. Errors: none; a file that cannot be opened fails as the plain one would. Evidence:
/// HostileFiles.Stop_WhileADriverOpens
class WatchedFile {
 public:
  WatchedFile(const std::string& path, const ReadOptions& options);
  ~WatchedFile();
  WatchedFile(const WatchedFile&) = delete;
  WatchedFile& operator=(const WatchedFile&) = delete;

  [[nodiscard]] std::string path() const;
  /// Somebody said stop; the file seemed to end where it was told.
  [[nodiscard]] bool stopped() const { return stopped_; }
  /// Asked at each piece that is read; `share` of the file.
  [[nodiscard]] bool may_go_on(double share);

 private:
  const std::string& path_;
  const ReadOptions& options_;
  bool stopped_ = false;
};

}  // namespace burrow::gdal
