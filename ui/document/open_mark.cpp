#include "burrow/document/open_mark.h"

#include <unistd.h>

#include <QFile>
#include <QFileInfo>
#include <QStringList>
#include <QSysInfo>
#include <cerrno>
#include <csignal>

namespace burrow {

namespace {

constexpr int stale_after_days = 7;

std::optional<Holder> read_mark(const QString& mark) {
  QFile file(mark);
  if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
  const QStringList lines = QString::fromUtf8(file.read(4096)).split(QLatin1Char('\n'));
  if (lines.size() < 4) return std::nullopt;
  return Holder{lines[0], lines[1], lines[2].toLongLong(), QDateTime::fromString(lines[3], Qt::ISODate)};
}

bool alive(const Holder& holder) {
  if (holder.host != QSysInfo::machineHostName())
    return holder.since.isValid() && holder.since.daysTo(QDateTime::currentDateTime()) < stale_after_days;
  if (holder.pid <= 0) return false;
  return ::kill(static_cast<pid_t>(holder.pid), 0) == 0 || errno == EPERM;
}

}  // namespace

QString OpenMark::mark_of(const QString& path) {
  const QFileInfo file(path);
  return file.absolutePath() + QStringLiteral("/.") + file.fileName() + QStringLiteral(".open");
}

std::optional<Holder> OpenMark::take(const QString& path) {
  const QString mark = mark_of(path);
  if (mark == mark_) return std::nullopt;
  leave();
  const std::optional<Holder> holder = read_mark(mark);
  if (holder && holder->pid != ::getpid() && alive(*holder)) return holder;
  QFile file(mark);
  if (!file.open(QIODevice::WriteOnly | QIODevice::Truncate)) return std::nullopt;
  const QString user = qEnvironmentVariable("USER", qEnvironmentVariable("LOGNAME"));
  const QStringList lines{user, QSysInfo::machineHostName(), QString::number(::getpid()),
                          QDateTime::currentDateTime().toString(Qt::ISODate)};
  file.write(lines.join(QLatin1Char('\n')).toUtf8());
  mark_ = mark;
  return std::nullopt;
}

void OpenMark::leave() {
  if (!mark_.isEmpty()) QFile::remove(mark_);
  mark_.clear();
}

}  // namespace burrow
