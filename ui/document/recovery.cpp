#include "burrow/document/recovery.h"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QUuid>
#include <algorithm>

#include "burrow/base/say.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"

namespace burrow {

namespace {
QString origin_of(const QString& copy) {
  return copy + QStringLiteral(".origin");
}
QString lock_of(const QString& copy) {
  return copy + QStringLiteral(".lock");
}
}  // namespace

Recovery::Recovery(Document& document, const QString& folder, int after_ms, QObject* parent)
    : QObject(parent), document_(document) {
  QDir().mkpath(folder);
  clean(folder);
  copy_ =
      QDir(folder).absoluteFilePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".crossing"));
  lock_ = std::make_unique<QLockFile>(lock_of(copy_));
  lock_->setStaleLockTime(0);
  lock_->tryLock(0);
  later_.setSingleShot(true);
  later_.setInterval(after_ms);
  connect(&later_, &QTimer::timeout, this, &Recovery::keep_now);
  again_.setSingleShot(true);
  again_.setInterval(5 * after_ms);
  connect(&again_, &QTimer::timeout, this, &Recovery::keep_now);
  connect(&document_, &Document::changed, this, [this] {
    if (!later_.isActive()) later_.start();
  });
  connect(&document_, &Document::file_state_changed, this, [this] {
    if (!document_.modified()) keep_now();
  });
}

Recovery::~Recovery() {
  if (left_) return;
  QFile::remove(copy_);
  QFile::remove(origin_of(copy_));
}

bool Recovery::keep_now() {
  if (!document_.modified()) {
    QFile::remove(copy_);
    QFile::remove(origin_of(copy_));
    tell({});
    return true;
  }
  if (document_.in_session()) {  // not in the middle of a drag
    later_.start();
    return false;
  }
  return write_copy();
}

/// A failure here (a full disk) does not disturb the work: it is told, and tried again.
bool Recovery::write_copy() {
  QDir().mkpath(QFileInfo(copy_).absolutePath());  // somebody may have removed it meanwhile
  Result<void> written = save_atomically(copy_.toStdString(), write_crossing(document_.crossing()));
  if (written) written = save_atomically(origin_of(copy_).toStdString(), document_.path().toStdString());
  tell(written ? QString() : QString::fromStdString(said_phrase(written.error().found)));
  if (!written) again_.start();
  return written.has_value();
}

void Recovery::tell(const QString& why) {
  if (why == told_) return;
  told_ = why;
  Q_EMIT trouble(why);
}

bool Recovery::keep_for_later() {
  later_.stop();
  if (!document_.modified() && !document_.in_session()) return true;
  left_ = write_copy();
  return left_;
}

void Recovery::clean(const QString& folder) {
  const QDir dir(folder);
  for (const QFileInfo& lock : dir.entryInfoList({QStringLiteral("*.lock")}, QDir::Files)) {
    const QString copy = lock.absoluteFilePath().chopped(5);
    if (QFile::exists(copy)) continue;
    QLockFile held(lock.absoluteFilePath());
    held.setStaleLockTime(0);
    if (!held.tryLock(0)) continue;  // a running program holds it
    held.unlock();
    QFile::remove(origin_of(copy));
  }
  constexpr int an_hour_s = 3600;  // no copy takes so long to be written
  const QDateTime before = QDateTime::currentDateTime().addSecs(-an_hour_s);
  for (const QFileInfo& half : dir.entryInfoList({QStringLiteral(".burrowline-*.tmp")}, QDir::Files | QDir::Hidden))
    if (half.lastModified() < before) QFile::remove(half.absoluteFilePath());
}

std::vector<LeftWork> Recovery::left_work(const QString& folder) {
  std::vector<LeftWork> all;
  const QDir dir(folder);
  for (const QFileInfo& copy : dir.entryInfoList({QStringLiteral("*.crossing")}, QDir::Files)) {
    QLockFile lock(lock_of(copy.absoluteFilePath()));
    lock.setStaleLockTime(0);
    if (!lock.tryLock(0)) continue;  // a running program holds it
    lock.unlock();
    LeftWork work;
    work.copy = copy.absoluteFilePath();
    work.when = copy.lastModified();
    if (const Result<std::string> origin = read_text_file(origin_of(work.copy).toStdString()))
      work.original = QString::fromStdString(*origin);
    all.push_back(work);
  }
  std::sort(all.begin(), all.end(), [](const LeftWork& a, const LeftWork& b) { return a.when > b.when; });
  return all;
}

Result<void> Recovery::take_back(Document& document, const LeftWork& work) {
  Result<std::string> text = read_text_file(work.copy.toStdString());
  if (!text) return tl::unexpected(std::move(text).error());
  Result<Crossing> crossing = read_crossing(*text, document.tables());
  if (!crossing) return tl::unexpected(std::move(crossing).error());
  document.start_from(std::move(*crossing), true);
  document.remember_path(work.original, work.when);
  return {};
}

void Recovery::discard(const LeftWork& work) {
  QFile::remove(work.copy);
  QFile::remove(origin_of(work.copy));
  QFile::remove(lock_of(work.copy));
}

}  // namespace burrow
