/// Coordinate systems on the import screen: said of a file, guessed from another, and where the files then lie.

#include <QFileInfo>
#include <QPushButton>

#include "burrow/document/text.h"
#include "burrow/import/likely_system.h"
#include "burrow/language/say.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/import_texts.h"

namespace burrow {

void ImportScreen::state_system(const QString& typed) {
  ImportFile* file = current();
  if (!file || filling_) return;
  if (typed.trimmed().isEmpty()) {
    if (!file->said_frame) return;
    file->said_frame.reset();
  } else {
    const std::string crs = crs_in(typed);
    if (file->said_frame && file->said_frame->crs == crs) return;
    Result<ImportFile> placed = in_system(*file, crs.empty() ? typed.trimmed().toStdString() : crs);
    if (!placed) {
      say(text_from(translated_error(placed.error())), true);
      return;
    }
    *file = std::move(*placed);
  }
  say({}, false);
  see_in_place();
  show_file();
  cut_soon();
}

/// Where the files lie to the first one in the systems that are now taken for them.
void ImportScreen::see_in_place() {
  for (std::size_t i = 1; i < files_.size(); ++i) files_[i].seen.reset();
  if (files_.size() > 1) job_.see(files_);
  preview_->refresh();
}

void ImportScreen::take_seen(
    const std::vector<std::pair<std::shared_ptr<const Found>, std::shared_ptr<const Found>>>& seen) {
  for (const auto& [whole, moved] : seen)
    for (ImportFile& file : files_)
      if (file.found.get() == whole.get()) file.seen = moved;  // one that was read again meanwhile is another
  preview_->refresh();
}

/// Files that state no system beside one that does, and whose numbers lie beside its own.
void ImportScreen::show_likely_system() {
  const auto likely = likely_system(files_);
  same_system_->setVisible(likely.has_value());
  if (!likely) return;
  const auto name = [&](std::size_t i) { return QFileInfo(text_from(files_[i].found->file)).fileName(); };
  QStringList silent;
  for (const std::size_t i : likely->files) silent << name(i);
  same_system_->setText(
      tr("%1 for %2 too, as for %3?")
          .arg(text_from(name_of_crs(likely->crs)), silent.join(QStringLiteral(", ")), name(likely->stated_by)));
}

void ImportScreen::take_likely_system() {
  const auto likely = likely_system(files_);
  if (!likely) return;
  for (const std::size_t i : likely->files)
    if (Result<ImportFile> placed = in_system(files_[i], likely->crs))
      files_[i] = std::move(*placed);
    else
      say(text_from(translated_error(placed.error())), true);
  see_in_place();
  show_file();
  cut_soon();
}

}  // namespace burrow
