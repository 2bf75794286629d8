/// Saving: never over what somebody else wrote meanwhile, and never to nowhere in silence.

#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>
#include <QSet>
#include <QStatusBar>

#include "burrow/file/crossing_file.h"
#include "burrow/window/main_window.h"

namespace burrow {

namespace {

/// Lines of the one text that the other does not have.
QString only_in(const QStringList& lines, const QStringList& others) {
  constexpr int at_most = 60;
  const QSet<QString> known(others.begin(), others.end());
  QStringList only;
  for (const QString& line : lines)
    if (!known.contains(line) && only.size() < at_most) only << line.trimmed();
  return only.join(QLatin1Char('\n'));
}

}  // namespace

bool MainWindow::save() {
  if (document_.path().isEmpty() || !document_.read_only_because().isEmpty()) return save_as();
  switch (document_.on_disk()) {
    case OnDisk::as_known:
      return write_to(document_.path());
    case OnDisk::changed:
      return ask_about_theirs();
    case OnDisk::gone:
      break;
  }
  QMessageBox box(QMessageBox::Question, tr("Burrowline"),
                  tr("“%1” is no longer there: somebody moved or removed it.").arg(document_.path()),
                  QMessageBox::Cancel, this);
  const QPushButton* again = box.addButton(tr("Write it again"), QMessageBox::AcceptRole);
  const QPushButton* elsewhere = box.addButton(tr("Save as…"), QMessageBox::ActionRole);
  box.exec();
  if (box.clickedButton() == elsewhere) return save_as();
  return box.clickedButton() == again && write_to(document_.path());
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
  QFile file(document_.path());
  if (file.open(QIODevice::ReadOnly)) {
    const QStringList there = QString::fromUtf8(file.readAll()).split(QLatin1Char('\n'));
    const QStringList here = QString::fromStdString(write_crossing(document_.crossing())).split(QLatin1Char('\n'));
    box.setDetailedText(tr("Only in mine:\n%1\n\nOnly in theirs:\n%2").arg(only_in(here, there), only_in(there, here)));
  }
  box.exec();
  if (box.clickedButton() == elsewhere) return save_as();
  if (box.clickedButton() == mine) return write_to(document_.path());
  if (box.clickedButton() == theirs) return open_file(document_.path());
  return false;
}

bool MainWindow::save_as() {
  const QString path =
      ask_where(tr("Save the crossing"), document_.path(), tr("Crossings (*.crossing)"), QStringLiteral("crossing"));
  return !path.isEmpty() && write_to(path);
}

bool MainWindow::write_to(const QString& path) {
  const Result<void> saved = document_.save_as(path);
  if (!saved) {
    QMessageBox box(QMessageBox::Warning, tr("Burrowline"),
                    tr("Not saved. Your work is still on the screen; what was on the disk is as it was."),
                    QMessageBox::Cancel, this);
    box.setInformativeText(QString::fromStdString(saved.error().text()));
    const QPushButton* elsewhere = box.addButton(tr("Save as…"), QMessageBox::AcceptRole);
    box.exec();
    return box.clickedButton() == elsewhere && save_as();
  }
  remember_recent(document_.path());
  mark_open();
  statusBar()->showMessage(tr("Saved"), 3000);
  return true;
}

void MainWindow::mark_open() {
  const std::optional<Holder> holder = open_mark_.take(document_.path());
  also_open_->setVisible(holder.has_value());
  if (!holder) return;
  also_open_->setText(tr("Also open: %1 on %2, since %3")
                          .arg(holder->user, holder->host, QLocale().toString(holder->since, QLocale::ShortFormat)));
}

}  // namespace burrow
