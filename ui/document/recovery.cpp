#include "burrow/document/recovery.h"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QUuid>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
QString origin_of(const QString& copy) {
  return copy + QStringLiteral(".origin");
}
QString lock_of(const QString& copy) {
  return copy + QStringLiteral(".lock");
}

/// Asked by taking its lock for a moment; one that a killed program left goes with that.
bool held_by_nobody(const QString& copy) {
  QLockFile lock(lock_of(copy));
  lock.setStaleLockTime(0);
  return lock.tryLock(0);
}

/// Path of the file, and below it the hash of what it held as far as the run knew.
QByteArray origin_text(const Document& document) {
  return document.path().toUtf8() + '\n' + document.known_hash().toHex();
}

void read_origin(LeftWork& work) {
  const Result<std::string> text = read_regular_file(origin_of(work.copy).toStdString());
  if (!text) return;
  const auto line = text->rfind('\n');
  work.original = text_from(text->substr(0, line));
  if (line != std::string::npos) work.known = QByteArray::fromHex(QByteArray::fromStdString(text->substr(line + 1)));
}

bool same_as_its_file(const LeftWork& work) {
  if (work.original.isEmpty()) return false;
  const Result<std::string> copy = read_regular_file(work.copy.toStdString());
  const Result<std::string> file = read_regular_file(work.original.toStdString());
  return copy && file && *copy == *file;
}
}  // namespace

Recovery::Recovery(Document& document, const QString& folder, int after_ms, QObject* parent)
    : QObject(parent), document_(document) {
  QDir().mkpath(folder);
  clean(folder);
  copy_ =
      QDir(folder).absoluteFilePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + QStringLiteral(".crossing"));
  hold();
  later_.setSingleShot(true);
  again_.setSingleShot(true);
  set_pause(after_ms);
  connect(&later_, &QTimer::timeout, this, &Recovery::keep_now);
  connect(&again_, &QTimer::timeout, this, &Recovery::keep_now);
  const auto soon = [this] {
    if (!later_.isActive()) later_.start();
  };
  connect(&document_, &Document::changed, this, soon);
  connect(&document_, &Document::file_state_changed, this,
          [this, soon] { document_.modified() ? soon() : static_cast<void>(keep_now()); });
}

void Recovery::set_pause(int after_ms) {
  later_.setInterval(after_ms);
  again_.setInterval(5 * after_ms);
}

/// Somebody may have removed the folder meanwhile, and the lock with it.
void Recovery::hold() {
  QDir().mkpath(QFileInfo(copy_).absolutePath());
  if (lock_ && lock_->isLocked() && QFile::exists(lock_of(copy_))) return;
  lock_ = std::make_unique<QLockFile>(lock_of(copy_));
  lock_->setStaleLockTime(0);
  lock_->tryLock(0);
}

Recovery::~Recovery() {
  if (!left_) remove_copy();
}

void Recovery::remove_copy() const {
  QFile::remove(copy_);
  QFile::remove(origin_of(copy_));
}

bool Recovery::keep_now() {
  if (!document_.modified()) {
    remove_copy();
    tell({});
    return true;
  }
  if (document_.in_session()) {  // not in the middle of a drag
    later_.start();
    return false;
  }
  return write_copy();
}

/// A failure here (a full disk) does not disturb the work: it is told, and tried again. Where the copy belongs is
/// written first: a copy alone would pass for a crossing that was never saved.
bool Recovery::write_copy() {
  hold();
  Result<void> written = save_atomically(origin_of(copy_).toStdString(), origin_text(document_).toStdString());
  if (written) written = save_atomically(copy_.toStdString(), write_crossing(document_.crossing()));
  tell(written ? QString() : text_from(written.error().found));
  if (!written) again_.start();
  return written.has_value();
}

void Recovery::tell(const QString& why) {
  if (why == told_) return;
  told_ = why;
  Q_EMIT trouble(why);
}

bool Recovery::keep_at_once() {
  if (!document_.modified() && !document_.in_session()) return true;
  return write_copy();
}

bool Recovery::keep_for_later() {
  later_.stop();
  if (!document_.modified() && !document_.in_session()) return true;
  left_ = write_copy();
  return left_;
}

QString Recovery::keep_elsewhere(const QString& folder) {
  const QString file =
      QDir(folder).absoluteFilePath(QStringLiteral("burrowline-unsaved-") + QFileInfo(copy_).fileName());
  return save_atomically(file.toStdString(), write_crossing(document_.crossing())) ? file : QString();
}

void Recovery::clean(const QString& folder) {
  const QDir dir(folder);
  for (const QString& ending : {QStringLiteral(".lock"), QStringLiteral(".origin")})
    for (const QFileInfo& beside : dir.entryInfoList({QStringLiteral("*.crossing") + ending}, QDir::Files)) {
      const QString copy = beside.absoluteFilePath().chopped(ending.size());
      if (!QFile::exists(copy) && held_by_nobody(copy)) QFile::remove(origin_of(copy));
    }
  clean_leftovers(folder.toStdString());
}

std::vector<LeftWork> Recovery::left_work(const QString& folder) {
  std::vector<LeftWork> all;
  const QDir dir(folder);
  for (const QFileInfo& copy : dir.entryInfoList({QStringLiteral("*.crossing")}, QDir::Files)) {
    LeftWork work;
    work.copy = copy.absoluteFilePath();
    if (!held_by_nobody(work.copy)) continue;
    work.when = copy.lastModified();
    read_origin(work);
    same_as_its_file(work) ? discard(work) : all.push_back(work);
  }
  std::sort(all.begin(), all.end(), [](const LeftWork& a, const LeftWork& b) { return a.when > b.when; });
  return all;
}

Result<void> Recovery::take_back(Document& document, const LeftWork& work) {
  Result<std::string> text = read_regular_file(work.copy.toStdString());
  if (!text) return tl::unexpected(std::move(text).error());
  Result<Crossing> crossing = read_crossing(*text, document.tables());
  if (!crossing) return tl::unexpected(std::move(crossing).error());
  document.start_from(std::move(*crossing), true);
  document.remember_path(work.original, work.known);
  return {};
}

void Recovery::discard(const LeftWork& work) {
  QFile::remove(work.copy);
  QFile::remove(origin_of(work.copy));
  QFile::remove(lock_of(work.copy));
}

}  // namespace burrow
