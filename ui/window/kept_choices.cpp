#include "burrow/window/kept_choices.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

QString beside(const QString& table) {
  return QFileInfo(table).absoluteDir().filePath(QStringLiteral("attributes.json"));
}

std::string text_of(const QString& path) {
  QFile file(path);
  return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string();
}

}  // namespace

std::optional<QString> KeptChoices::read(const QString& table) {
  std::optional<QString> why;
  if (const std::string text = text_of(table); !text.empty()) {
    auto own = read_meanings(text);
    if (own)
      meanings = std::move(*own);
    else
      why = QObject::tr("The own table of meanings was not read: %1").arg(text_from(translated_error(own.error())));
  }
  if (const std::string text = text_of(beside(table)); !text.empty()) {
    auto kept = read_field_shapes(text);
    if (kept)
      shapes = std::move(*kept);
    else
      why = QObject::tr("What the attributes are was not read: %1").arg(text_from(translated_error(kept.error())));
  }
  return why;
}

std::optional<QString> KeptChoices::write(const QString& table) const {
  QDir().mkpath(QFileInfo(table).absolutePath());
  if (const auto saved = save_atomically(table.toStdString(), write_meanings(meanings)); !saved)
    return QObject::tr("The own table of meanings was not written: %1").arg(text_from(translated_error(saved.error())));
  if (shapes.empty()) return std::nullopt;
  if (const auto saved = save_atomically(beside(table).toStdString(), write_field_shapes(shapes)); !saved)
    return QObject::tr("What the attributes are was not kept: %1").arg(text_from(translated_error(saved.error())));
  return std::nullopt;
}

}  // namespace burrow
