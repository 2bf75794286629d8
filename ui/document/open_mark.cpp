#include "burrow/document/open_mark.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <QStringList>
#include <QSysInfo>
#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdio>

namespace burrow {

namespace {

constexpr int stale_after_days = 7;
constexpr qint64 longest_mark = 4096;

/// When a process began, as the system counts it: a number given anew belongs to another program. Empty: not told.
QString began(qint64 pid) {
  QFile stat(QStringLiteral("/proc/%1/stat").arg(pid));
  if (!stat.open(QIODevice::ReadOnly)) return {};
  const QByteArray line = stat.readAll();
  const QList<QByteArray> fields = line.mid(line.lastIndexOf(')') + 2).split(' ');
  constexpr int start_time = 19;  // the 22nd of proc(5), counted behind the name
  return fields.size() > start_time ? QString::fromLatin1(fields[start_time]) : QString();
}

/// Only what is a file itself: no link to another, no pipe that would be waited for.
QByteArray content_of(const QString& mark) {
  const int fd = ::open(QFile::encodeName(mark).constData(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
  if (fd < 0) return {};
  QFile file;
  if (!file.open(fd, QIODevice::ReadOnly, QFileDevice::AutoCloseHandle)) return {};
  struct stat status {};
  return ::fstat(fd, &status) == 0 && S_ISREG(status.st_mode) ? file.read(longest_mark) : QByteArray();
}

std::optional<Holder> read_mark(const QString& mark) {
  const QStringList lines = QString::fromUtf8(content_of(mark)).split(QLatin1Char('\n'));
  if (lines.size() < 4) return std::nullopt;
  return Holder{lines[0],
                lines[1],
                lines[2].toLongLong(),
                QDateTime::fromString(lines[3], Qt::ISODate),
                lines.value(4),
                QDateTime::fromString(lines.value(5, lines[3]), Qt::ISODate)};
}

bool alive(const Holder& holder) {
  if (holder.host != QSysInfo::machineHostName())
    return holder.renewed.isValid() && holder.renewed.daysTo(QDateTime::currentDateTime()) < stale_after_days;
  if (holder.pid <= 0) return false;
  if (::kill(static_cast<pid_t>(holder.pid), 0) != 0 && errno != EPERM) return false;
  return holder.began.isEmpty() || holder.began == began(holder.pid);
}

/// Made beside it and moved there: a link of that name is replaced and not followed.
bool write_mark(const QString& mark, const QByteArray& content) {
  const QByteArray beside = QFile::encodeName(mark + QStringLiteral(".%1").arg(::getpid()));
  const int fd = ::open(beside.constData(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0644);
  if (fd < 0) return false;
  const bool written = ::write(fd, content.constData(), static_cast<std::size_t>(content.size())) == content.size();
  ::close(fd);
  if (written && std::rename(beside.constData(), QFile::encodeName(mark).constData()) == 0) return true;
  ::unlink(beside.constData());
  return false;
}

}  // namespace

QString OpenMark::mark_of(const QString& path) {
  const QFileInfo named(path);
  const QString canonical = named.canonicalFilePath();  // empty where there is no such file yet
  const QFileInfo file(canonical.isEmpty() ? named.absoluteFilePath() : canonical);
  return file.absolutePath() + QStringLiteral("/.") + file.fileName() + QStringLiteral(".open");
}

std::optional<Holder> OpenMark::take(const QString& path) {
  const QString mark = mark_of(path);
  if (mark != mark_) leave();
  const std::optional<Holder> holder = read_mark(mark);
  if (holder && holder->pid != ::getpid() && alive(*holder)) {
    mark_.clear();  // somebody took it over: it is no longer ours
    return holder;
  }
  const QDateTime now = QDateTime::currentDateTime();
  const bool ours = mark == mark_ && content_of(mark) == content_;
  if (ours && holder && holder->renewed.daysTo(now) < 1) return std::nullopt;
  const QString user = qEnvironmentVariable("USER", qEnvironmentVariable("LOGNAME"));
  const QString since = (ours && holder ? holder->since : now).toString(Qt::ISODate);
  const QStringList lines{user,  QSysInfo::machineHostName(), QString::number(::getpid()),
                          since, began(::getpid()),           now.toString(Qt::ISODate)};
  content_ = lines.join(QLatin1Char('\n')).toUtf8();
  if (write_mark(mark, content_)) mark_ = mark;
  return std::nullopt;
}

void OpenMark::leave() {
  if (!mark_.isEmpty() && content_of(mark_) == content_) QFile::remove(mark_);
  mark_.clear();
}

}  // namespace burrow
