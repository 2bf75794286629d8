/// Files of others: dropped on the window or chosen, read and taken over.

#include <QDragEnterEvent>
#include <QFileInfo>
#include <QInputDialog>
#include <QMessageBox>
#include <QMimeData>
#include <QStandardPaths>
#include <QStatusBar>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/import/ground_csv.h"
#include "burrow/language/say.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/main_window.h"

namespace burrow {

namespace {
/// A hundred thousand lines: what is larger is no levelled profile, and the screen would wait for it.
constexpr qint64 largest_ground_line = 4 << 20;

/// Two columns or a header with a station: a levelled ground line rather than survey points.
bool looks_like_ground_line(const QString& path) {
  const QFileInfo file(path);
  if (!file.isFile() || file.size() > largest_ground_line) return false;  // a pipe or a device may never end
  const Result<std::string> text = read_regular_file(path.toStdString());
  return text && read_ground_csv(*text);
}

}  // namespace

bool MainWindow::import_ground(const QString& path) {
  if (QFileInfo::exists(path) && !QFileInfo(path).isFile()) {
    complain(tr("The ground line was not read."),
             Error{path.toStdString(), translated("a pipe or a device"), translated("a file")});
    return false;
  }
  if (QFileInfo(path).size() > largest_ground_line) {
    complain(tr("The ground line was not read."),
             Error{path.toStdString(), translated("a file larger than any levelled profile"),
                   translated("at most 4 MB; points of a survey are imported with File – Import…")});
    return false;
  }
  const Result<std::string> text = read_regular_file(path.toStdString());
  if (!text) {
    complain(tr("The ground line was not read."), text.error());
    return false;
  }
  const Result<GroundCsv> csv = read_ground_csv(*text);
  if (!csv) {
    complain(tr("The ground line was not read; the one on the screen is as it was."), csv.error());
    return false;
  }
  FileUnit unit = csv->unit_hint.value_or(FileUnit::metre);
  if (!csv->unit_hint) {
    const QStringList words{tr("metres"), tr("feet (0.3048 m)"), tr("US survey feet (1200/3937 m)")};
    bool sure = false;
    const QString picked =
        QInputDialog::getItem(this, tr("Unit of the ground line"),
                              tr("%n points, from station %1 to %2. The file does not say its unit:", nullptr,
                                 static_cast<int>(csv->points.size()))
                                  .arg(csv->points.front().station_m)
                                  .arg(csv->points.back().station_m),
                              words, units_ == UnitSystem::us ? 1 : 0, false, &sure);
    if (!sure) return false;
    unit = static_cast<FileUnit>(words.indexOf(picked));
  }
  if (!document_.change(tr("Import ground line"), [&](Crossing& c) { c.site.ground = in_metres(csv->points, unit); })) {
    statusBar()->showMessage(tr("Nothing may be changed: %1").arg(document_.read_only_because()), 8000);
    return false;
  }
  drawing_->zoom_to_fit();
  QString shown_text = tr("Ground line of %n points taken over.", nullptr, static_cast<int>(csv->points.size()));
  if (!csv->left_out.empty() || !csv->notes.empty()) {
    QStringList lines;
    for (const std::string& note : csv->notes) lines << text_from(note);
    for (const LeftOutLine& left : csv->left_out)
      lines << tr("line %1 left out: %2 (%3)").arg(left.line).arg(text_from(left.reason), text_from(left.text));
    QMessageBox box(QMessageBox::Information, tr("Ground line"), shown_text, QMessageBox::Ok, this);
    box.setDetailedText(lines.join(QLatin1Char('\n')));
    box.setInformativeText(tr("%n lines left out; see the details.", nullptr, static_cast<int>(csv->left_out.size())));
    box.exec();
  } else {
    statusBar()->showMessage(shown_text, 8000);
  }
  return true;
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  const QList<QUrl> urls = event->mimeData()->urls();
  if (urls.isEmpty()) return;
  const QString path = urls.front().toLocalFile();
  event->acceptProposedAction();
  if (path.endsWith(QLatin1String(".crossing"), Qt::CaseInsensitive)) {
    if (may_leave()) open_file(path);
  } else if (looks_like_ground_line(path)) {
    import_ground(path);
  } else {
    QStringList paths;
    for (const QUrl& url : urls) paths << url.toLocalFile();
    import_files(paths);
  }
}

void MainWindow::import_files(const QStringList& paths) {
  const QString settings = QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
  // A test has no folder of its own to keep things in, and neither reads nor writes a person's.
  const QString own = recovery_folder_.isEmpty() ? QString() : settings + QStringLiteral("/layer-meanings.json");
  ImportScreen screen(document_.tables(), theme_now(), units_, own, this);
  screen.set_open_crossing(document_.crossing().site.georeference, document_.crossing().bore.exit.station);
  for (const QString& path : paths) screen.add_file(path);
  if (screen.exec() == QDialog::Accepted) take_import(screen.imported(), screen.as_new_crossing());
}

void MainWindow::take_import(const Imported& imported, bool as_new) {
  if (as_new) {
    if (may_leave()) document_.start_from(crossing_from(imported), true);
  } else {
    if (!document_.change(tr("Import %1").arg(text_from(imported.name)),
                          [&](Crossing& c) { c.site = with_imported(c, imported).site; })) {
      statusBar()->showMessage(tr("Nothing may be changed: %1").arg(document_.read_only_because()), 8000);
      return;
    }
  }
  drawing_->zoom_to_fit();
}

}  // namespace burrow
