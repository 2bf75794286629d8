/// Saving: never over what somebody else wrote meanwhile, and never to nowhere in silence.

#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QStatusBar>

#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/widgets/typing.h"
#include "burrow/window/main_window.h"
#include "differences_text.h"

namespace burrow {

bool MainWindow::save() {
  const bool all = take_typing_in(*this);
  if (!save_taken()) return false;
  if (!all) statusBar()->showMessage(tr("Saved, without the entry that is not taken"), 8000);
  return true;
}

bool MainWindow::take_typing_for_paper() {
  if (take_typing_in(*this)) return true;
  tell_refused(tr("An entry is not taken: mend it, or press Esc in it. The paper would show another value."));
  return false;
}

bool MainWindow::save_taken() {
  if (document_.path().isEmpty() || !document_.read_only_because().isEmpty()) return save_as();
  switch (document_.on_disk()) {
    case OnDisk::as_known:
      return write_to(document_.path());
    case OnDisk::changed:
      return ask_about_theirs();
    case OnDisk::gone:
      break;
  }
  return ask_about_gone();
}

bool MainWindow::ask_about_gone() {
  QMessageBox box(QMessageBox::Question, tr("Burrowline"),
                  tr("“%1” is no longer there: somebody moved or removed it.").arg(document_.path()),
                  QMessageBox::Cancel, this);
  const QPushButton* again = box.addButton(tr("Write it again"), QMessageBox::AcceptRole);
  const QPushButton* elsewhere = box.addButton(tr("Save as…"), QMessageBox::ActionRole);
  box.exec();
  if (box.clickedButton() == elsewhere) return save_as();
  if (box.clickedButton() != again) return false;
  // It may have come back while the question stood there.
  return document_.on_disk() == OnDisk::gone ? write_to(document_.path()) : save_taken();
}

bool MainWindow::ask_about_theirs() {
  QMessageBox box(QMessageBox::Question, tr("Burrowline"),
                  tr("“%1” was changed by somebody else since it was opened here.").arg(document_.title()),
                  QMessageBox::Cancel, this);
  box.setInformativeText(
      tr("Changed at %1. Saving now would overwrite that.")
          .arg(QLocale().toString(QFileInfo(document_.path()).lastModified(), QLocale::ShortFormat)));
  const QPushButton* elsewhere = box.addButton(tr("Save as…"), QMessageBox::AcceptRole);
  const QPushButton* mine = box.addButton(tr("Keep mine"), QMessageBox::DestructiveRole);
  const QPushButton* theirs = box.addButton(tr("Take theirs"), QMessageBox::DestructiveRole);
  const QByteArray seen = Document::hash_on_disk(document_.path());
  if (const Result<std::string> there = read_regular_file(document_.path().toStdString()))
    box.setDetailedText(differences_text(write_crossing(document_.crossing()), *there, tr("mine"), tr("theirs")));
  box.exec();
  if (box.clickedButton() == elsewhere) return save_as();
  if (box.clickedButton() == mine) {
    // What was shown is what is written over, and nothing that came meanwhile.
    if (Document::hash_on_disk(document_.path()) != seen) return save_taken();
    return write_to(document_.path());
  }
  if (box.clickedButton() == theirs) return open_file(document_.path());
  return false;
}

bool MainWindow::save_as() {
  take_typing_in(*this);
  const QString path =
      ask_where(tr("Save the crossing"), document_.path(), tr("Crossings (*.crossing)"), QStringLiteral("crossing"));
  if (path.isEmpty()) return false;
  // Under the name it has: that is saving, with the same question about what somebody else wrote.
  const bool same = !document_.path().isEmpty() && QFileInfo(path).absoluteFilePath() == document_.path();
  if (same && document_.on_disk() == OnDisk::changed) return ask_about_theirs();
  return write_to(path);
}

bool MainWindow::write_to(const QString& path) {
  const Result<Written> saved = document_.save_as(path);
  if (!saved)
    return offer_elsewhere(tr("Not saved. Your work is still on the screen; what was on the disk is as it was."),
                           text_from(translated_error(saved.error())));
  remember_recent(document_.path());
  mark_open();
  if (*saved == Written::unconfirmed)
    return offer_elsewhere(
        tr("Written, but the disk did not confirm it: after a power cut the old content may stand there again."),
        tr("Your work counts as unsaved. Save it again, or somewhere else."));
  statusBar()->showMessage(tr("Saved"), 3000);
  return true;
}

bool MainWindow::offer_elsewhere(const QString& what, const QString& why) {
  QMessageBox box(QMessageBox::Warning, tr("Burrowline"), what, QMessageBox::Cancel, this);
  box.setInformativeText(why);
  const QPushButton* elsewhere = box.addButton(tr("Save as…"), QMessageBox::AcceptRole);
  box.exec();
  return box.clickedButton() == elsewhere && save_as();
}

void MainWindow::mark_open() {
  const std::optional<Holder> holder = open_mark_.take(document_.path());
  also_open_->setVisible(holder.has_value());
  if (!holder) return;
  also_open_->setText(tr("Also open: %1 on %2, since %3")
                          .arg(holder->user, holder->host, QLocale().toString(holder->since, QLocale::ShortFormat)));
}

}  // namespace burrow
