/// Menus of the window and what they do.

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
#include "burrow/file/crossing_file.h"
#include "burrow/import/read_file.h"
#include "burrow/window/guided_crossing.h"
#include "burrow/window/help_window.h"
#include "burrow/window/hints.h"
#include "burrow/window/main_window.h"

namespace burrow {

namespace {
/// Ctrl+1 to Ctrl+9, then with Alt too (Ctrl+0 shows the whole bore).
QKeySequence page_keys(int page) {
  const auto digit = static_cast<Qt::Key>(Qt::Key_1 + page % 9);
  return page > 8 ? QKeySequence(Qt::CTRL | Qt::ALT | digit) : QKeySequence(Qt::CTRL | digit);
}
}  // namespace

namespace {

constexpr int most_recent = 8;

struct Sample {
  const char* file;
  const char* name;
};
constexpr Sample samples[] = {{"house-service", QT_TRANSLATE_NOOP("samples", "House service under a two-lane road")},
                              {"rail-siding", QT_TRANSLATE_NOOP("samples", "Under a rail siding")},
                              {"car-park-duct", QT_TRANSLATE_NOOP("samples", "Duct under a car park")},
                              {"four-faults", QT_TRANSLATE_NOOP("samples", "Four faults")},
                              {"first-lesson", QT_TRANSLATE_NOOP("samples", "A first lesson")},
                              {"sixty-utilities", QT_TRANSLATE_NOOP("samples", "Sixty utilities")},
                              {"lesson-level", QT_TRANSLATE_NOOP("samples", "Lesson: the level lies")},
                              {"lesson-sight", QT_TRANSLATE_NOOP("samples", "Lesson: aimed past the stake")},
                              {"lesson-sag", QT_TRANSLATE_NOOP("samples", "Lesson: sag in soft clay")},
                              {"lesson-shallow", QT_TRANSLATE_NOOP("samples", "Lesson: too shallow in sand")},
                              {"lesson-mark", QT_TRANSLATE_NOOP("samples", "Lesson: the mark that was wrong")}};

}  // namespace

void MainWindow::make_file_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&File"));
  menu->addAction(tr("&New crossing, step by step…"), QKeySequence::New, this, &MainWindow::new_guided_crossing);
  menu->addAction(tr("New &blank crossing"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N), this,
                  &MainWindow::new_crossing);
  menu->addAction(tr("&Open…"), QKeySequence::Open, this, [this] {
    if (!may_leave()) return;
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a crossing"), QString(),
                                                      tr("Crossings (*.crossing);;All files (*)"));
    if (!path.isEmpty()) open_file(path);
  });
  recent_ = menu->addMenu(tr("Open &again"));
  connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fill_recent);
  QMenu* sample_menu = menu->addMenu(tr("Open a sa&mple"));
  for (const Sample& sample : samples) {
    const QString file = QString::fromLatin1(sample.file);
    sample_menu->addAction(QCoreApplication::translate("samples", sample.name), this, [this, file] {
      if (may_leave()) open_sample(file);
    });
  }
  menu->addSeparator();
  menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
  menu->addAction(tr("Sa&ve as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), this, &MainWindow::save_as);
  menu->addSeparator();
  menu->addAction(tr("&Import…"), QKeySequence(Qt::CTRL | Qt::Key_I), this, [this] {
    QStringList kinds;
    for (const std::string& ending : readable_endings()) kinds << text_from(ending);
    const QStringList paths =
        QFileDialog::getOpenFileNames(this, tr("Survey, drawing, map or heights"), QString(),
                                      tr("What can be imported (%1);;All files (*)").arg(kinds.join(QLatin1Char(' '))));
    if (!paths.isEmpty()) import_files(paths);
  });
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

void MainWindow::make_edit_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&Edit"));
  // Own actions: nothing is undone in the middle of a drag.
  QUndoStack& stack = document_.undo_stack();
  QAction* undo = menu->addAction(tr("&Undo"), QKeySequence::Undo, this, [this] {
    if (!document_.in_session()) document_.undo_stack().undo();
  });
  QAction* redo = menu->addAction(tr("&Redo"), this, [this] {
    if (!document_.in_session()) document_.undo_stack().redo();
  });
  redo->setShortcuts({QKeySequence(tr("Ctrl+Y")), QKeySequence(tr("Ctrl+Shift+Z"))});
  undo->setEnabled(false);
  redo->setEnabled(false);
  connect(&stack, &QUndoStack::canUndoChanged, undo, &QAction::setEnabled);
  connect(&stack, &QUndoStack::canRedoChanged, redo, &QAction::setEnabled);
  connect(&stack, &QUndoStack::undoTextChanged, undo,
          [undo](const QString& step) { undo->setText(step.isEmpty() ? tr("&Undo") : tr("&Undo: %1").arg(step)); });
  connect(&stack, &QUndoStack::redoTextChanged, redo,
          [redo](const QString& step) { redo->setText(step.isEmpty() ? tr("&Redo") : tr("&Redo: %1").arg(step)); });
  menu->addSeparator();
  menu->addAction(tr("&Type values of the picked thing…"), QKeySequence(Qt::CTRL | Qt::Key_T), this, [this] {
    if (drawing_->picked().none())
      statusBar()->showMessage(tr("Pick a thing on the drawing first."), 5000);
    else
      type_values(drawing_->place_of(drawing_->picked()).toPoint());
  });
  menu->addSeparator();
  menu->addAction(tr("&Add a utility"), QKeySequence(Qt::CTRL | Qt::Key_U), this, &MainWindow::add_utility);
  remove_action_ =
      menu->addAction(tr("Re&move what is picked"), QKeySequence::Delete, this, &MainWindow::remove_picked);
  remove_action_->setEnabled(false);
  duplicate_action_ = menu->addAction(tr("&Duplicate what is picked"), QKeySequence(Qt::CTRL | Qt::Key_D), this,
                                      &MainWindow::duplicate_picked);
  duplicate_action_->setEnabled(false);
}

void MainWindow::make_view_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&View"));
  menu->addAction(tr("&Whole bore"), QKeySequence(Qt::CTRL | Qt::Key_0), this, [this] { drawing_->glide_to_fit(); });
  menu->addAction(tr("&Closer"), QKeySequence::ZoomIn, this, [this] { drawing_->zoom_by(1.25); });
  menu->addAction(tr("&Further"), QKeySequence::ZoomOut, this, [this] { drawing_->zoom_by(0.8); });
  menu->addAction(overview_->shown_action());
  column_action_ = menu->addAction(tr("Pa&ges beside the drawing"), QKeySequence(Qt::Key_F9), this, [this](bool on) {
    if (!on && side_->isAncestorOf(focusWidget())) drawing_->setFocus();
  });
  column_action_->setCheckable(true);
  column_action_->setChecked(true);
  connect(column_action_, &QAction::toggled, side_, &QWidget::setVisible);
  QMenu* heights = menu->addMenu(tr("&Heights"));
  auto* times_group = new QActionGroup(this);
  for (const int times : {1, 2, 3, 5}) {
    QAction* action = heights->addAction(times == 1 ? tr("true to scale") : tr("×%1").arg(times), this,
                                         [this, times] { drawing_->set_exaggeration(times); });
    action->setCheckable(true);
    action->setChecked(times == 1);
    times_group->addAction(action);
  }
  menu->addSeparator();
  QAction* turning = menu->addAction(tr("Wh&y it turns"), QKeySequence(Qt::CTRL | Qt::Key_R), this,
                                     [this](bool on) { drawing_->set_turning_strip(on); });
  turning->setCheckable(true);
  QAction* neutral = menu->addAction(tr("&Neutral cover"), this, [this](bool on) { drawing_->set_neutral_line(on); });
  neutral->setCheckable(true);
  neutral->setChecked(true);
  QAction* dimensions =
      menu->addAction(tr("Dimension &lines"), this, [this](bool on) { drawing_->set_dimensions(on); });
  dimensions->setCheckable(true);
  dimensions->setChecked(true);
  QAction* zones =
      menu->addAction(tr("&Zones of the owners' rules"), this, [this](bool on) { drawing_->set_zones(on); });
  zones->setCheckable(true);
  zones->setChecked(true);
  QAction* rise = menu->addAction(tr("&Rise of the surface"), this, [this](bool on) { drawing_->set_rise(on); });
  rise->setCheckable(true);
  QAction* across = menu->addAction(tr("&Section across, at the pointer"), QKeySequence(Qt::CTRL | Qt::Key_E), this,
                                    [this](bool on) { drawing_->set_across(on); });
  across->setCheckable(true);
  cloud_action_ = menu->addAction(tr("&Paths of the trials"), this,
                                  [this](bool on) { side_->trials().cloud_wanted()->setChecked(on); });
  cloud_action_->setCheckable(true);
  connect(&side_->trials(), &TrialsPanel::cloud_toggled, cloud_action_, &QAction::setChecked);
  connect(side_, &SideColumn::lesson_wanted, this, [this](const QString& sample) {
    if (!may_leave()) return;
    open_sample(sample);
    side_->show_page(SideColumn::Page::practice);
  });
  menu->addSeparator();
  for (int page = 0; page < side_->count(); ++page)
    menu->addAction(side_->page_name(page), page_keys(page), this, [this, page] {
      side_->setCurrentIndex(page);
      side_->currentWidget()->setFocus();
    });
  menu->addSeparator();
  QMenu* units = menu->addMenu(tr("&Units"));
  unit_actions_ = new QActionGroup(this);
  for (const auto& [system, name] :
       {std::pair{UnitSystem::metric, tr("metric")}, std::pair{UnitSystem::us, tr("US customary")}}) {
    const UnitSystem wanted = system;
    QAction* action = units->addAction(name, this, [this, wanted] { set_units(wanted); });
    action->setCheckable(true);
    action->setData(static_cast<int>(system));
    unit_actions_->addAction(action);
  }
  dark_action_ = menu->addAction(tr("&Dark colours"), this, [this](bool on) { set_dark(on); });
  dark_action_->setCheckable(true);
  menu->addAction(tr("S&ettings…"), QKeySequence(Qt::CTRL | Qt::Key_Comma), this, &MainWindow::show_settings);
}

void MainWindow::make_help_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&Help"));
  menu->addAction(tr("&Help"), QKeySequence(Qt::Key_F1), this, &MainWindow::show_help);
  menu->addAction(tr("&Three hints"), this, &MainWindow::show_hints);
  menu->addAction(tr("&About"), this, [this] {
    QMessageBox::about(this, tr("Burrowline"),
                       tr("Burrowline %1\n\nPredicts where an unsteered piercing tool will come out and what it may "
                          "hit. It does not replace the locating "
                          "service, the competent person at the excavation, or a licensed engineer.")
                           .arg(QCoreApplication::applicationVersion()));
  });
}

void MainWindow::show_help() {
  if (!help_) {
    help_ = new HelpWindow(this);
    help_->setAttribute(Qt::WA_DeleteOnClose);
  }
  if (side_->isAncestorOf(QApplication::focusWidget())) help_->show_heading(side_->page_name(side_->currentIndex()));
  help_->show();
  help_->raise();
  help_->activateWindow();
}

CrewDefaults MainWindow::crew_defaults() const {
  // A test has no folder of its own to keep things in, and neither reads nor writes a person's.
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
  return CrewDefaults(recovery_folder_.isEmpty() ? QString() : folder, document_.tables());
}

void MainWindow::new_crossing() {
  if (!may_leave()) return;
  const std::optional<Crossing> own = crew_defaults().kept();
  const Crossing blank = blank_crossing(tr("New crossing").toStdString());
  document_.start_from(own ? with_own_start(blank, *own) : blank, false);
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
  set_dark(colours == Colours::dark || (colours == Colours::as_desktop && desktop_dark));
  colours_ = colours;
}

void MainWindow::new_guided_crossing() {
  if (!may_leave()) return;
  const std::optional<Crossing> own = crew_defaults().kept();
  GuidedCrossing guide(document_.tables(), dark_ ? Theme::night() : Theme::light(), units_, own, this);
  if (guide.exec() != QDialog::Accepted) return;
  document_.start_from(guide.crossing(), true);
  drawing_->zoom_to_fit();
}

/// Three things to try on the crossing that is open.
void MainWindow::show_hints() {
  if (hints_) hints_->close();
  const auto here = [this](QWidget& widget) { return QRect(widget.mapTo(this, QPoint(0, 0)), widget.size()); };
  const auto launch = [this] {
    const QPoint at = drawing_->viewport()->mapTo(this, drawing_->place_of({ItemKind::launch, {}, -1}).toPoint());
    return QRect(at - QPoint(9, 9), QSize(18, 18));
  };
  std::vector<Hint> hints{
      {tr("Drag this round grip down, slowly. Everything is judged again while you drag; Esc puts it back."), launch},
      {tr("This line says how the crossing stands and what to do first. Pick one of the findings beside the drawing: "
          "its "
          "working shows the formula, the numbers and where they come from."),
       [this, here] { return here(*verdict_); }},
      {tr("The same question the other way round: Launches shows which launches work, and takes the best one with one "
          "click."),
       [this, here] { return here(*side_->bar().button(static_cast<int>(SideColumn::Page::launch))); }}};
  hints_ = new Hints(std::move(hints), dark_ ? Theme::night() : Theme::light(), this);
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
  Result<Crossing> crossing = read_crossing(file.readAll().toStdString(), document_.tables());
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

void MainWindow::remove_picked() {
  const std::vector<ItemRef> parts = drawing_->all_picked();
  if (parts.empty() || !std::all_of(parts.begin(), parts.end(), may_be_several)) return;
  const QString name = text_from(parts.size() == 1 ? part_name(document_.crossing(), parts.front())
                                                   : several_name(document_.crossing(), parts));
  drawing_->pick({});
  document_.change(tr("Remove %1").arg(name), [&](Crossing& c) { c.site = site_without(c, parts); });
}

void MainWindow::duplicate_picked() {
  const std::vector<ItemRef> parts = drawing_->all_picked();
  if (parts.empty() || !std::all_of(parts.begin(), parts.end(), may_be_several)) return;
  const QString name = text_from(parts.size() == 1 ? part_name(document_.crossing(), parts.front())
                                                   : several_name(document_.crossing(), parts));
  Copies copies = site_with_copies(document_.crossing(), parts);
  if (document_.change(tr("Duplicate %1").arg(name), [&](Crossing& c) { c.site = std::move(copies.site); }))
    drawing_->pick_several(copies.parts);
}

}  // namespace burrow
