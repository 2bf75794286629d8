#pragma once
/// Who else has a file open: a small file beside it, for as long as it is open here.

#include <QDateTime>
#include <QString>
#include <optional>

namespace burrow {

struct Holder {
  QString user, host;
  qint64 pid = 0;
  QDateTime since;
};

/// A mark only warns: nothing is locked. One whose program has ended, or that is a week old on another machine, is
/// stale and taken over; where the folder may not be written there is none.   Evidence: OpenMark.*
class OpenMark {
 public:
  OpenMark() = default;
  ~OpenMark() { leave(); }
  OpenMark(const OpenMark&) = delete;
  OpenMark& operator=(const OpenMark&) = delete;

  /// Marks this file in place of the one before. Who holds it already, if somebody does: that mark stays.
  std::optional<Holder> take(const QString& path);
  void leave();
  [[nodiscard]] static QString mark_of(const QString& path);

 private:
  QString mark_;
};

}  // namespace burrow
