/// The menus of what is seen, of where to go, and of help; the tool bar.

#include <QActionGroup>
#include <QApplication>
#include <QCheckBox>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QSplitter>
#include <QToolButton>

#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/drawing/overview.h"
#include "burrow/panels/verdict_bar.h"
#include "burrow/window/help_window.h"
#include "burrow/window/main_window.h"
#include "burrow/window/notice_line.h"
#include "burrow/window/player_bar.h"
#include "burrow/window/presentation.h"
#include "burrow/window/tool_strip.h"
#include "burrow/window/what_if_bar.h"

namespace burrow {

namespace {

/// What was on Ctrl+8, Ctrl+9 and Ctrl+Alt+1 on before there were groups stays there; the first seven are the groups.
/// Pages that came later have the key of their group alone.
QKeySequence page_keys(int page) {
  int later = 0;
  for (const SideColumn::Page late :
       {SideColumn::Page::limits, SideColumn::Page::surroundings, SideColumn::Page::permit, SideColumn::Page::sheet}) {
    if (page == static_cast<int>(late)) return {};
    later += page > static_cast<int>(late);
  }
  page -= later;
  constexpr int in_a_row = 9, groups = 7;
  const auto digit = static_cast<Qt::Key>(Qt::Key_1 + page % in_a_row);
  if (page >= in_a_row) return QKeySequence(Qt::CTRL | Qt::ALT | digit);
  return page < groups ? QKeySequence() : QKeySequence(Qt::CTRL | digit);
}

QString times_words(double times) {
  return times == 1 ? QObject::tr("true to scale") : QStringLiteral("×%1").arg(times_text(times));
}

}  // namespace

QAction* MainWindow::add_layer(QMenu* menu, const QString& name, const char* icon, bool on,
                               const std::function<void(bool)>& show) {
  QAction* action = menu->addAction(name);
  if (*icon) with_icon(action, icon);
  action->setCheckable(true);
  action->setChecked(on);
  connect(action, &QAction::toggled, this, show);
  return action;
}

void MainWindow::make_layers_menu(QMenu* menu) {
  layers_menu_ = menu->addMenu(tr("&Layers"));
  actions_.dimensions =
      add_layer(layers_menu_, tr("&Dimensions"), "dimension", true, [this](bool on) { drawing_->set_dimensions(on); });
  add_layer(layers_menu_, tr("No-go &zones"), "no-go", true, [this](bool on) { drawing_->set_zones(on); });
  add_layer(layers_menu_, tr("&Neutral cover"), "", true, [this](bool on) { drawing_->set_neutral_line(on); });
  add_layer(layers_menu_, tr("&Surface heave"), "heave", false, [this](bool on) { drawing_->set_rise(on); });
  cloud_action_ = add_layer(layers_menu_, tr("Simulated &paths"), "", false,
                            [this](bool on) { side_->trials().cloud_wanted()->setChecked(on); });
  layers_menu_->addAction(overview_->shown_action());
}

void MainWindow::make_heights_menu(QMenu* menu) {
  heights_menu_ = menu->addMenu(tr("&Heights (vertical exaggeration)"));
  heights_group_ = new QActionGroup(this);
  const auto add = [this](const QString& name, double times, const std::function<void()>& choose) {
    QAction* action = heights_menu_->addAction(name, this, choose);
    action->setCheckable(true);
    action->setData(times);
    heights_group_->addAction(action);
  };
  add(tr("automatic: what fits"), 0, [this] { drawing_->set_automatic_heights(); });
  for (const double times : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0})
    add(times_words(times), times, [this, times] { drawing_->set_exaggeration(times); });
  connect(drawing_, &DrawingView::view_changed, this, &MainWindow::show_heights);
  connect(drawing_, &DrawingView::heights_wanted, this,
          [this](const QPoint& at) { heights_menu_->popup(drawing_->viewport()->mapToGlobal(at)); });
}

void MainWindow::show_heights() {
  const double times = drawing_->exaggeration();
  const bool automatic = drawing_->automatic_heights();
  for (QAction* action : heights_group_->actions())
    if (action->data().toDouble() == (automatic ? 0 : times)) action->setChecked(true);
  if (!heights_button_) return;
  const QString factor = QStringLiteral("×%1").arg(times_text(times));
  const QString text = automatic ? tr("%1 auto").arg(factor) : factor;
  if (heights_button_->text() != text) heights_button_->setText(text);
}

void MainWindow::make_presentation(QMenu* menu) {
  const auto dress = [this, before = Colours::light](bool on) mutable {
    if (on) before = colours_;
    if (before == Colours::dark) return;  // which is bright enough in a dark room
    set_colours(on ? Colours::sunlight : before);
  };
  presentation_ = new Presentation(*this, *drawing_, *player_,
                                   {tools_, verdict_, notice_, side_, &side_->rail(), overview_, what_if_}, dress);
  QAction* present =
      menu->addAction(tr("To a &room: drawing and player alone"), QKeySequence(Qt::Key_F5), this, [this](bool on) {
        if (on) sizes_before_ = splitter_->sizes();
        presentation_->set_on(on);
      });
  present->setCheckable(true);
  connect(presentation_, &Presentation::changed, this, [this, present](bool on) {
    present->setChecked(on);
    if (on) {
      player_was_shown_ = actions_.play->isChecked();
      actions_.play->setChecked(true);
    } else {
      actions_.play->setChecked(player_was_shown_);
      fold_column();
      place_column();
      fold_overview();
    }
  });
}

void MainWindow::make_view_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&View"));
  actions_.fit = with_icon(
      menu->addAction(tr("&Fit bore"), QKeySequence(Qt::CTRL | Qt::Key_0), this, [this] { drawing_->glide_to_fit(); }),
      "fit");
  actions_.zoom_in = with_icon(
      menu->addAction(tr("Zoom &in"), QKeySequence::ZoomIn, this, [this] { drawing_->zoom_by(1.25); }), "zoom-in");
  actions_.zoom_out = with_icon(
      menu->addAction(tr("Zoom &out"), QKeySequence::ZoomOut, this, [this] { drawing_->zoom_by(0.8); }), "zoom-out");
  make_heights_menu(menu);
  menu->addSeparator();
  make_layers_menu(menu);
  actions_.across = add_layer(menu, tr("&Section across, at the pointer"), "section", false,
                              [this](bool on) { drawing_->set_across(on); });
  actions_.across->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_E));
  actions_.turning =
      add_layer(menu, tr("Steering &balance"), "steering", false, [this](bool on) { drawing_->set_turning_strip(on); });
  actions_.turning->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_R));
  actions_.play = add_layer(menu, tr("Pla&y the bore"), "play", false, [this](bool on) { show_player(on); });
  actions_.what_if =
      add_layer(menu, tr("&What if something is set wrong"), "level", false, [this](bool on) { show_what_if(on); });
  for (const auto& [action, name] : {std::pair{actions_.play, "play"}, std::pair{actions_.what_if, "what-if"}})
    action->setObjectName(QLatin1String(name));
  actions_.what_if->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_J));
  menu->addSeparator();
  column_action_ = menu->addAction(tr("&Pages beside the drawing"), QKeySequence(Qt::Key_F9), this, [this](bool on) {
    if (!on && side_->isAncestorOf(focusWidget())) drawing_->setFocus();
  });
  column_action_->setCheckable(true);
  column_action_->setChecked(true);
  connect(column_action_, &QAction::toggled, this, [this](bool on) {
    side_->setVisible(on);
    place_column();
  });
  actions_.other_view =
      with_icon(menu->addAction(tr("Other &view: plan or side elevation"),
                                QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_E), drawing_, &DrawingView::swap_views),
                "other-view");
  actions_.other_view->setIconText(tr("Other view: plan or side elevation"));
  QAction* full = menu->addAction(tr("Full s&creen"), QKeySequence(Qt::Key_F11), this,
                                  [this] { setWindowState(windowState() ^ Qt::WindowFullScreen); });
  full->setCheckable(true);
  make_presentation(menu);
  connect(menu, &QMenu::aboutToShow, full, [this, full] { full->setChecked(isFullScreen()); });
  menu->addSeparator();
  make_units_menu(menu);
  dark_action_ = menu->addAction(tr("&Dark colours"), this, [this](bool on) { set_dark(on); });
  dark_action_->setCheckable(true);
  sunlight_action_ = menu->addAction(tr("Hi&gh contrast, for sunlight"), this,
                                     [this](bool on) { set_colours(on ? Colours::sunlight : Colours::light); });
  sunlight_action_->setCheckable(true);
  actions_.settings = with_icon(
      menu->addAction(tr("S&ettings…"), QKeySequence(Qt::CTRL | Qt::Key_Comma), this, &MainWindow::show_settings),
      "settings");
  connect(&side_->trials(), &TrialsPanel::cloud_toggled, cloud_action_, &QAction::setChecked);
  connect(side_, &SideColumn::lesson_wanted, this, [this](const QString& sample) {
    if (!may_leave()) return;
    open_sample(sample);
    side_->show_page(SideColumn::Page::practice);
  });
}

void MainWindow::make_units_menu(QMenu* menu) {
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
}

void MainWindow::make_go_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&Go"));
  menu->addAction(tr("&Next finding"), QKeySequence(Qt::Key_F8), this, [this] { go_to_next_finding(1); });
  menu->addAction(tr("Pre&vious finding"), QKeySequence(Qt::SHIFT | Qt::Key_F8), this,
                  [this] { go_to_next_finding(-1); });
  menu->addAction(tr("Ne&xt part of the window"), QKeySequence(Qt::Key_F6), this, [this] { go_to_next_region(1); });
  menu->addAction(tr("&Drawing"), this, [this] { drawing_->setFocus(); });
  menu->addSeparator();
  for (int group = 0; group < side_->rail().count(); ++group)
    menu->addAction(side_->group_names().at(group), QKeySequence(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + group)),
                    this, [this, group] { side_->show_next_of(group); });
  menu->addSeparator();
  QMenu* pages = menu->addMenu(tr("&Page"));
  for (int page = 0; page < side_->count(); ++page) {
    if (page > 0 && side_->group_of(page) != side_->group_of(page - 1)) pages->addSeparator();
    pages->addAction(side_->page_name(page), page_keys(page), this, [this, page] { show_page_and_go(page); });
  }
}

void MainWindow::show_page_and_go(int page) {
  side_->setCurrentIndex(page);
  side_->currentWidget()->setFocus();
}

void MainWindow::go_to_next_finding(int step) {
  const int all = static_cast<int>(document_.assessment().findings.size());
  if (all == 0) return;
  const int now = findings().picked_row();
  const int next = now < 0 ? (step > 0 ? 0 : all - 1) : ((now + step) % all + all) % all;
  side_->show_page(SideColumn::Page::findings);
  findings().pick(next);
  drawing_->go_to_finding(next);
}

/// Tool bar, verdict, drawing, overview, page, rail: the focus goes from one to the next that is there.
void MainWindow::go_to_next_region(int step) {
  const std::vector<QWidget*> regions{tools_, verdict_, drawing_, what_if_, player_, overview_, side_, &side_->rail()};
  const auto has_focus = [](const QWidget* region) {
    const QWidget* at = QApplication::focusWidget();
    return at && (region == at || region->isAncestorOf(at));
  };
  const auto here = std::find_if(regions.begin(), regions.end(), has_focus);
  const auto n = static_cast<int>(regions.size());
  int at = here == regions.end() ? 1 : static_cast<int>(here - regions.begin());
  for (int tried = 0; tried < n; ++tried) {
    at = ((at + step) % n + n) % n;
    if (focus_first_in(*regions[static_cast<std::size_t>(at)])) return;
  }
}

bool MainWindow::focus_first_in(QWidget& region) {
  if (!region.isVisible()) return false;
  if (region.focusPolicy() & Qt::TabFocus) {
    region.setFocus(Qt::TabFocusReason);
    return true;
  }
  for (QWidget* child : region.findChildren<QWidget*>())
    if (child->isVisible() && child->isEnabled() && (child->focusPolicy() & Qt::TabFocus)) {
      child->setFocus(Qt::TabFocusReason);
      return true;
    }
  return false;
}

void MainWindow::make_help_menu() {
  QMenu* menu = menuBar()->addMenu(tr("&Help"));
  actions_.help =
      with_icon(menu->addAction(tr("&Help"), QKeySequence(Qt::Key_F1), this, &MainWindow::show_help), "help");
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

void MainWindow::make_tool_row() {
  for (QAction* action : {actions_.new_crossing, actions_.open, actions_.save}) tools_->add(action);
  tools_->add_gap();
  for (QAction* action : {actions_.undo, actions_.redo}) tools_->add(action);
  tools_->add_gap();
  tools_->add_menu(insert_menu_, QStringLiteral("add"), tr("Insert something into the crossing"), tr("Insert"));
  for (QAction* action : {actions_.edit_values, actions_.duplicate, actions_.remove}) tools_->add(action);
  tools_->add_gap();
  for (QAction* action : {actions_.fit, actions_.zoom_out, actions_.zoom_in}) tools_->add(action);
  tools_->add(actions_.other_view);
  heights_button_ = tools_->add_menu(heights_menu_, QStringLiteral("exaggeration"),
                                     tr("Heights: how much they are exaggerated"), QStringLiteral("×1"));
  tools_->add_menu(layers_menu_, QStringLiteral("layers"), tr("What the drawing shows"), QString());
  tools_->add(actions_.play);
  tools_->add(actions_.what_if, ToolStrip::Yields::early);
  for (QAction* action : {actions_.across, actions_.turning, actions_.dimensions})
    tools_->add(action, ToolStrip::Yields::early);
  tools_->add_gap();
  tools_->add(actions_.sheet);
  tools_->set_find(actions_.find);
  // At the foot of the rail, what is not a page.
  for (const auto& [action, icon] : {std::pair{actions_.settings, "settings"}, std::pair{actions_.help, "help"}})
    connect(side_->rail().add_foot(action->iconText(), QString::fromLatin1(icon)), &QAbstractButton::clicked, action,
            &QAction::trigger);
}

}  // namespace burrow
