#pragma once
/// Notices at once when the open file changes, vanishes or comes back on the disk.

#include <QDateTime>
#include <QFileSystemWatcher>
#include <QObject>
#include <QString>
#include <QTimer>

#include "burrow/document/document.h"

namespace burrow {

/// Watches the file and its folder: a file that is renamed over is another one to the system, so both are followed anew
/// after every event. Events of one moment are looked at once. What this program saves itself is no event, nor is the
/// same content written again. A network folder that says nothing is still asked about at saving, by the content.
/// Evidence: FileWatchTest.*
class FileWatch : public QObject {
  Q_OBJECT

 public:
  explicit FileWatch(Document& document, int together_ms = 200, QObject* parent = nullptr);
  [[nodiscard]] OnDisk state() const { return state_; }

 Q_SIGNALS:
  void noticed(OnDisk state);

 private:
  /// What tells without reading that nothing happened to a file.
  struct Stamp {
    qint64 size = -1;
    QDateTime written, changed;
    bool operator==(const Stamp&) const = default;
  };
  [[nodiscard]] static Stamp stamp_of(const QString& path);
  void follow();
  void look();

  Document& document_;
  QFileSystemWatcher watcher_;
  QTimer soon_{this};
  Stamp seen_;
  OnDisk state_ = OnDisk::as_known;
};

}  // namespace burrow
