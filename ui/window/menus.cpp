/// The menus of files and of changes, and what they do.

#include <QActionGroup>
#include <QApplication>
#include <QCheckBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <QStandardPaths>
#include <QStatusBar>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/crew_defaults.h"
#include "burrow/document/text.h"
#include "burrow/document/utility_entry.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/sample_text.h"
#include "burrow/import/read_file.h"
#include "burrow/window/guided_crossing.h"
#include "burrow/window/help_window.h"
#include "burrow/window/hints.h"
#include "burrow/window/main_window.h"
#include "samples.h"

namespace burrow {

namespace {

constexpr int most_recent = 8;

}  // namespace

QAction* MainWindow::with_icon(QAction* action, const char* icon) {
  action->setIcon(line_icon(QString::fromLatin1(icon)));
  return action;
}

void MainWindow::make_file_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&File"));
  actions_.new_crossing = with_icon(
      menu->addAction(tr("&New crossing…"), QKeySequence::New, this, &MainWindow::new_guided_crossing), "new");
  menu->addAction(tr("New &blank crossing"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N), this,
                  &MainWindow::new_crossing);
  actions_.open = with_icon(menu->addAction(tr("&Open…"), QKeySequence::Open, this, &MainWindow::ask_and_open), "open");
  recent_ = menu->addMenu(tr("Open &recent"));
  connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fill_recent);
  QMenu* sample_menu = menu->addMenu(tr("Open a sa&mple"));
  for (const Sample& sample : samples_of_the_program())
    sample_menu->addAction(sample.title(), this, [this, file = sample.key()] {
      if (may_leave()) open_sample(file);
    });
  menu->addAction(tr("S&tart page"), this, &MainWindow::show_start);
  menu->addSeparator();
  actions_.save = with_icon(menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save), "save");
  menu->addAction(tr("Sa&ve as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), this, &MainWindow::save_as);
  menu->addSeparator();
  menu->addAction(tr("&Import…"), QKeySequence(Qt::CTRL | Qt::Key_I), this, &MainWindow::ask_and_import);
  menu->addAction(tr("&Ground line from CSV…"), this, [this] {
    const QString path = QFileDialog::getOpenFileName(this, tr("Ground line: station, elevation"), QString(),
                                                      tr("Text (*.csv *.txt);;All files (*)"));
    if (!path.isEmpty()) import_ground(path);
  });
  menu->addSeparator();
  add_paper_entries(menu);
  menu->addSeparator();
  menu->addAction(tr("&Quit"), QKeySequence(Qt::CTRL | Qt::Key_Q), this, &QWidget::close);
}

void MainWindow::ask_and_open() {
  if (!may_leave()) return;
  const QString path =
      QFileDialog::getOpenFileName(this, tr("Open a crossing"), QString(), tr("Crossings (*.crossing);;All files (*)"));
  if (!path.isEmpty()) open_file(path);
}

void MainWindow::ask_and_import() {
  QStringList kinds;
  for (const std::string& ending : readable_endings()) kinds << text_from(ending);
  const QStringList paths =
      QFileDialog::getOpenFileNames(this, tr("Survey, drawing, map or heights"), QString(),
                                    tr("What can be imported (%1);;All files (*)").arg(kinds.join(QLatin1Char(' '))));
  if (!paths.isEmpty()) import_files(paths);
}

CrewDefaults MainWindow::crew_defaults() const {
  // A test has no folder of its own to keep things in, and neither reads nor writes a person's.
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
  return CrewDefaults(recovery_folder_.isEmpty() ? QString() : folder, document_.tables());
}

namespace {

/// Begun in feet, a crossing counts its hose marks in feet too.
Crossing in_units(Crossing crossing, UnitSystem units) {
  if (units == UnitSystem::us && !crossing.sheet.units) crossing.sheet.units = units;
  return crossing;
}

}  // namespace

void MainWindow::new_crossing() {
  if (!may_leave()) return;
  const std::optional<Crossing> own = crew_defaults().kept();
  const Crossing blank = blank_crossing(tr("New crossing").toStdString());
  document_.start_from(in_units(own ? with_own_start(blank, *own) : blank, units_), false);
}

void MainWindow::show_settings() {
  const CrewDefaults own = crew_defaults();
  const QString language = QSettings().value(QStringLiteral("language"), QStringLiteral("as-desktop")).toString();
  SettingsDialog dialog({units_, colours_, shown_fineness(), language}, own, document_.crossing(), this);
  connect(&dialog, &SettingsDialog::units_wanted, this, &MainWindow::set_units);
  connect(&dialog, &SettingsDialog::colours_wanted, this, &MainWindow::set_colours);
  connect(&dialog, &SettingsDialog::fineness_wanted, this, &MainWindow::set_fineness);
  connect(&dialog, &SettingsDialog::language_wanted, this,
          [](const QString& wanted) { QSettings().setValue(QStringLiteral("language"), wanted); });
  connect(&dialog, &SettingsDialog::hints_wanted, this, &MainWindow::show_hints);
  dialog.exec();
}

void MainWindow::set_colours(Colours colours) {
  constexpr int middle = 128;
  // Asked before the program's own colours are laid over the desktop's.
  static const bool desktop_dark = QGuiApplication::palette().color(QPalette::Window).lightness() < middle;
  sunlight_ = colours == Colours::sunlight;
  set_dark(colours == Colours::dark || (colours == Colours::as_desktop && desktop_dark));
  colours_ = colours;
}

void MainWindow::new_guided_crossing() {
  if (!may_leave()) return;
  const std::optional<Crossing> own = crew_defaults().kept();
  GuidedCrossing guide(document_.tables(), theme_now(), units_, own, this);
  if (guide.exec() != QDialog::Accepted) return;
  document_.start_from(in_units(guide.crossing(), units_), true);
  drawing_->zoom_to_fit();
}

/// Three things to try on the crossing that is open.
void MainWindow::show_hints() {
  if (hints_) hints_->close();
  const auto here = [this](const QWidget& widget) { return QRect(widget.mapTo(this, QPoint(0, 0)), widget.size()); };
  const auto launch = [this] {
    const QPoint at = drawing_->viewport()->mapTo(this, drawing_->place_of({ItemKind::launch, {}, -1}).toPoint());
    return QRect(at - QPoint(9, 9), QSize(18, 18));
  };
  std::vector<Hint> hints{
      {tr("Drag this round grip down, slowly. Everything is judged again while you drag; Esc puts it back."), launch},
      {tr("This line says how the crossing stands and what to do first. Select a finding beside the drawing: it "
          "unfolds its formula, numbers and sources."),
       [this, here] { return here(*verdict_); }},
      {tr("The same question the other way round: Launches shows which launches work, and takes the best one with one "
          "click."),
       [this, here] {
         const int page = static_cast<int>(SideColumn::Page::launch);
         const PageButton* tab = side_->bar().button(page);
         return tab->isVisible() ? here(*tab) : here(*side_->rail().button(side_->group_of(page)));
       }}};
  hints_ = new Hints(std::move(hints), theme_now(), this);
}

void MainWindow::show_first_hints() {
  QSettings settings;
  if (settings.value(QStringLiteral("hints-shown")).toBool()) return;
  show_hints();
  connect(hints_, &Hints::ended, this, [] { QSettings().setValue(QStringLiteral("hints-shown"), true); });
}

void MainWindow::open_sample(const QString& name) {
  QFile file(QStringLiteral(":/samples/%1.crossing").arg(name));
  if (!file.open(QIODevice::ReadOnly)) return;
  Result<Crossing> crossing = read_crossing(sample_in_language(file.readAll().toStdString()), document_.tables());
  if (!crossing) {
    complain(tr("The sample could not be read."), crossing.error());
    return;
  }
  document_.start_from(std::move(*crossing), false);
}

void MainWindow::fill_recent() {
  recent_->clear();
  const QStringList paths = QSettings().value(QStringLiteral("recent")).toStringList();
  for (const QString& path : paths)
    recent_->addAction(path, this, [this, path] {
      if (may_leave()) open_file(path);
    });
  if (paths.isEmpty()) recent_->addAction(tr("nothing opened yet"))->setEnabled(false);
}

void MainWindow::remember_recent(const QString& path) {
  QSettings settings;
  QStringList paths = settings.value(QStringLiteral("recent")).toStringList();
  paths.removeAll(path);
  paths.prepend(path);
  settings.setValue(QStringLiteral("recent"), paths.mid(0, most_recent));
}

/// The dialog itself adds the ending, so that it also asks before a file of that name is replaced.
QString MainWindow::ask_where(const QString& title, const QString& at, const QString& kinds, const QString& ending) {
  QFileDialog dialog(this, title, QFileInfo(at).absolutePath(), kinds);
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(ending);
  if (!at.isEmpty()) dialog.selectFile(QFileInfo(at).fileName());
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  return dialog.selectedFiles().front();
}

void MainWindow::add_utility() {
  const Utility utility = new_utility(document_.crossing(), tr("new utility").toStdString());
  if (!document_.change(tr("Add a utility"), [&](Crossing& c) { c.site.utilities.push_back(utility); })) return;
  drawing_->pick({ItemKind::utility, utility.id, -1});
  drawing_->setFocus();
}

}  // namespace burrow
