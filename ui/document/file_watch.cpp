#include "burrow/document/file_watch.h"

#include <QDir>
#include <QFileInfo>

namespace burrow {

namespace {

/// The folder of a file or, where that is gone too, the nearest one above it that would see it come back.
QString folder_to_watch(const QString& path) {
  QString folder = QFileInfo(path).absolutePath();
  while (!QFileInfo(folder).isDir()) {
    const QString above = QFileInfo(folder).absolutePath();
    if (above == folder) return {};
    folder = above;
  }
  return folder;
}

}  // namespace

FileWatch::FileWatch(Document& document, int together_ms, QObject* parent) : QObject(parent), document_(document) {
  soon_.setSingleShot(true);
  soon_.setInterval(together_ms);
  connect(&soon_, &QTimer::timeout, this, [this] {
    follow();
    if (stamp_of(document_.path()) != seen_) look();
  });
  const auto event = [this] {
    if (!soon_.isActive()) soon_.start();
  };
  connect(&watcher_, &QFileSystemWatcher::fileChanged, this, event);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, event);
  connect(&document_, &Document::file_state_changed, this, [this] {
    follow();
    look();
  });
  follow();
  look();
}

FileWatch::Stamp FileWatch::stamp_of(const QString& path) {
  const QFileInfo file(path);
  if (path.isEmpty() || !file.exists()) return {};
  return {file.size(), file.lastModified(), file.metadataChangeTime()};
}

void FileWatch::follow() {
  const QString path = document_.path();
  QStringList old = watcher_.files() + watcher_.directories();
  QStringList wanted;
  if (!path.isEmpty()) {
    if (QFileInfo::exists(path)) wanted << path;
    if (const QString folder = folder_to_watch(path); !folder.isEmpty()) wanted << folder;
  }
  if (!old.isEmpty()) watcher_.removePaths(old);
  if (!wanted.isEmpty()) watcher_.addPaths(wanted);
}

void FileWatch::look() {
  seen_ = stamp_of(document_.path());
  const OnDisk now = document_.on_disk();
  if (now == state_) return;
  state_ = now;
  document_.note_on_disk(now);
  Q_EMIT noticed(now);
}

}  // namespace burrow
