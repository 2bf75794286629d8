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
  QString began;      ///< when its process did, as the system counts it; empty: not told
  QDateTime renewed;  ///< it is renewed every day
};

/// A mark only warns: nothing is locked. One whose program has ended, or that nobody on another machine has renewed for
/// a week, is stale and taken over; where the folder may not be written there is none. Links and pipes of its name are
/// neither followed nor waited for.   Evidence: OpenMark.*
class OpenMark {
 public:
  OpenMark() = default;
  ~OpenMark() { leave(); }
  OpenMark(const OpenMark&) = delete;
  OpenMark& operator=(const OpenMark&) = delete;

  /// Marks this file in place of the one before. Who holds it already, if somebody does: that mark stays. Asked again
  /// now and then it renews the mark, and takes it once the other has gone.
  std::optional<Holder> take(const QString& path);
  void leave();
  [[nodiscard]] static QString mark_of(const QString& path);

 private:
  QString mark_;
  QByteArray content_;
};

}  // namespace burrow
