#include "burrow/window/main_window.h"
#include "burrow/window/edit_commands.h"

#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QMenuBar>
#include <QMessageBox>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/document/recovery.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/language/say.h"
#include "burrow/widgets/field_undo.h"
#include "burrow/widgets/glossary.h"
#include "burrow/widgets/tab_order.h"
#include "burrow/widgets/typing.h"
#include "burrow/widgets/wheel_guard.h"
#include "burrow/window/notice_line.h"
#include "burrow/window/player_bar.h"
#include "burrow/window/presentation.h"
#include "burrow/window/start_page.h"
#include "burrow/window/tool_strip.h"
#include "burrow/window/what_if_bar.h"
#include "burrow/window/window_place.h"

namespace burrow {

MainWindow::MainWindow(Tables tables, const QString& recovery_folder, QWidget* parent)
    : QMainWindow(parent),
      document_(std::move(tables)),
      tools_(new ToolStrip(this)),
      verdict_(new VerdictBar(document_, this)),
      drawing_(new DrawingView(document_, this)),
      overview_(new OverviewStrip(document_, *drawing_, this)),
      player_(new PlayerBar(this)),
      what_if_(new WhatIfBar(document_, this)),
      side_(new SideColumn(document_, *drawing_, this)),
      card_(new ValueCard(document_, drawing_)),
      notice_(new NoticeLine(this)),
      name_(new QLabel(this)),
      where_(new QLabel(this)),
      state_(new QLabel(this)),
      unit_state_(new QLabel(this)),
      recovery_folder_(recovery_folder) {
  QCoreApplication::setAttribute(Qt::AA_DontShowIconsInMenus);  // they are the tools'
  tab_by_place();
  explain_words();
  qApp->installEventFilter(new FieldUndo(this));
  qApp->installEventFilter(new WheelGuard(this));
  setAcceptDrops(true);
  drawing_->setAcceptDrops(false);
  auto* middle = new QWidget;
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(tools_);
  column->addWidget(verdict_);
  column->addWidget(notice_);
  auto* splitter = splitter_ = new QSplitter(Qt::Horizontal, middle);
  auto* views = new QWidget(splitter);
  auto* views_column = new QVBoxLayout(views);
  views_column->setContentsMargins(0, 0, 0, 0);
  views_column->setSpacing(0);
  views_column->addWidget(drawing_, 1);
  views_column->addWidget(what_if_);
  views_column->addWidget(player_);
  views_column->addWidget(overview_);
  splitter->addWidget(views);
  splitter->addWidget(side_);
  splitter->setStretchFactor(0, 1);
  splitter->setStretchFactor(1, 0);
  splitter->setChildrenCollapsible(false);
  splitter->setSizes({1130, 392});
  splitter->setHandleWidth(5);
  side_->setMinimumWidth(320);
  auto* across = new QHBoxLayout;
  across->setSpacing(0);
  across->addWidget(splitter, 1);
  across->addWidget(&side_->rail());
  column->addLayout(across, 1);
  splitter->installEventFilter(this);
  column_edge_ = new QFrame(middle);
  column_edge_->hide();
  pages_ = new QStackedWidget(this);
  pages_->addWidget(middle);
  setCentralWidget(pages_);
  statusBar()->addWidget(where_, 1);
  statusBar()->addPermanentWidget(state_);
  statusBar()->addPermanentWidget(unit_state_);
  name_->setContentsMargins(12, 0, 14, 0);
  menuBar()->setCornerWidget(name_, Qt::TopRightCorner);

  make_file_menu();
  make_edit_menu();
  make_view_menu();
  make_go_menu();
  make_help_menu();
  make_player();
  make_what_if();
  make_tool_row();

  connect(drawing_, &DrawingView::pointer_moved, where_, &QLabel::setText);
  connect(drawing_, &DrawingView::finding_picked, this, [this](int finding) {
    side_->show_page(SideColumn::Page::findings);
    findings().pick(finding);
  });
  connect(drawing_, &DrawingView::typing_wanted, this, &MainWindow::type_values);
  connect(drawing_, &DrawingView::measure_typing_wanted, this, &MainWindow::type_measure);
  connect(drawing_, &DrawingView::menu_wanted, this, &MainWindow::show_drawing_menu);
  connect(drawing_, &DrawingView::picked_changed, this, &MainWindow::show_selected);
  connect(drawing_, &DrawingView::view_changed, this, &MainWindow::fold_overview, Qt::QueuedConnection);
  connect(drawing_, &DrawingView::view_changed, this, &MainWindow::offer_other_view, Qt::QueuedConnection);
  connect(overview_->shown_action(), &QAction::toggled, this, &MainWindow::fold_overview);
  connect(drawing_, &DrawingView::readout_changed, tools_, &ToolStrip::show_readout);
  connect(drawing_, &DrawingView::readout_ended, tools_, &ToolStrip::end_readout);
  connect(&findings(), &FindingsPanel::picked, drawing_, &DrawingView::go_to_finding);
  connect(&findings(), &FindingsPanel::jump_wanted, this, [this](int finding) {
    drawing_->go_to_finding(finding);
    drawing_->setFocus();
  });
  connect(&findings(), &FindingsPanel::preview_changed, drawing_, &DrawingView::set_ghost_layout);
  connect(&findings(), &FindingsPanel::hole_wanted, this, [this](const QString& utility) {
    side_->show_page(SideColumn::Page::utilities);
    drawing_->pick({ItemKind::utility, utility.toStdString(), -1});
  });
  connect(&findings(), &FindingsPanel::refused, this,
          [this](const QString& why) { statusBar()->showMessage(why, 8000); });
  connect(overview_, &OverviewStrip::finding_wanted, this, [this](int finding) {
    side_->show_page(SideColumn::Page::findings);
    findings().pick(finding);
    drawing_->go_to_finding(finding);
  });
  connect(verdict_, &VerdictBar::first_wanted, this, [this] {
    side_->show_page(SideColumn::Page::findings);
    findings().pick(0);
    drawing_->go_to_finding(0);
  });
  connect(verdict_, &VerdictBar::next_wanted, this, [this] { go_to_next_finding(1); });
  connect(side_, &SideColumn::page_wanted, this, [this] { column_action_->setChecked(true); });
  connect(side_, &SideColumn::group_asked_again, this, [this] {
    if (splitter_->count() == 1) column_action_->setChecked(false);
  });
  connect(card_, &ValueCard::closed, drawing_, qOverload<>(&QWidget::setFocus));
  connect(&document_, &Document::file_state_changed, this, &MainWindow::show_title);
  connect(&document_, &Document::replaced, this, &MainWindow::hide_start);
  connect(&document_, &Document::changed, this, [this] {
    if (isWindowModified() != document_.modified()) show_title();
    actions_.lock->setChecked(edits_->locked());
  });

  also_open_ = new QLabel(this);
  also_open_->hide();
  statusBar()->addPermanentWidget(also_open_);
  if (!recovery_folder_.isEmpty()) keep_copies();
  watch_file();
  QSettings settings;
  set_display_precision(from_word<DisplayPrecision>(settings.value(QStringLiteral("fineness")).toString().toStdString())
                            .value_or(DisplayPrecision::usual));
  set_units(settings.value(QStringLiteral("units")).toString() == QLatin1String("us") ? UnitSystem::us
                                                                                      : UnitSystem::metric);
  set_colours(
      from_word<Colours>(settings.value(QStringLiteral("colours")).toString().toStdString()).value_or(Colours::light));
  show_title();
  show_selected();
  drawing_->setFocus();
  resize(1500, 900);
}

void MainWindow::type_measure(const MeasureRef& measure, const QPoint& at) {
  const auto entry = [this, measure](const Crossing& c) {
    return std::vector<Field>{measure_field(c, assess(c, document_.tables(), document_.assessment().ground_surface),
                                            document_.tables(), measure)};
  };
  card_->open_fields(text_from(measure_name(document_.crossing(), measure)), measure_part(measure), entry,
                     drawing_->viewport()->mapTo(drawing_, at), units_);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  constexpr int names_fit_px = 1024, seven_names_fit_px = 690;
  side_->rail().set_with_names(width() >= names_fit_px && height() >= seven_names_fit_px);
  fold_column();
  fold_overview();
}

void MainWindow::place_on_screen() {
  place_window(*this, *splitter_);
  placed_ = true;
}

MainWindow::~MainWindow() {
  delete takeCentralWidget();  // the drawing goes before the document it looks at
  // A stack of undo that is destroyed says that it is clean: nobody may look at the document then.
  document_.disconnect();
}

void MainWindow::complain(const QString& what, const Error& error) {
  QMessageBox box(QMessageBox::Warning, tr("Burrowline"), what, QMessageBox::Ok, this);
  QStringList detail{text_from(error.place)};
  if (!error.found.empty()) detail << tr("found: %1").arg(text_from(error.found));
  if (!error.expected.empty()) detail << tr("expected: %1").arg(text_from(error.expected));
  box.setInformativeText(detail.join(QLatin1Char('\n')));
  box.exec();
}

bool MainWindow::open_file(const QString& path) {
  const Result<void> opened = document_.open(path);
  if (!opened) {
    complain(tr("%1 was not opened. The crossing on the screen is as it was.").arg(QFileInfo(path).fileName()),
             opened.error());
    return false;
  }
  remember_recent(document_.path());
  mark_open();
  if (!document_.read_only_because().isEmpty())
    statusBar()->showMessage(tr("Read-only: %1").arg(document_.read_only_because()), 15000);
  return true;
}

void MainWindow::type_values(const QPoint& at) {
  card_->open_for(drawing_->picked(), drawing_->viewport()->mapTo(drawing_, at), units_);
}

void MainWindow::set_units(UnitSystem units) {
  units_ = units;
  drawing_->set_units(units);
  side_->set_units(units);
  verdict_->set_units(units);
  what_if_->set_units(units);
  fill_player();
  for (QAction* action : unit_actions_->actions())
    if (action->data().toInt() == static_cast<int>(units)) {
      action->setChecked(true);
      unit_state_->setText(action->text());
    }
  if (starting()) show_start();
}

void MainWindow::set_fineness(DisplayPrecision fineness) {
  set_display_precision(fineness);
  set_units(units_);  // every text anew
}

Theme MainWindow::theme_now() const {
  return dark_ ? Theme::night() : sunlight_ ? Theme::sunlight() : Theme::light();
}

void MainWindow::set_dark(bool dark) {
  dark_ = dark;
  sunlight_ = sunlight_ && !dark;
  colours_ = dark ? Colours::dark : sunlight_ ? Colours::sunlight : Colours::light;
  dark_action_->setChecked(dark);
  apply_theme();
}

void MainWindow::apply_theme() {
  const Theme theme = theme_now();
  sunlight_action_->setChecked(sunlight_);
  QPalette colours;
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::AlternateBase, theme.panel);
  colours.setColor(QPalette::Text, theme.ink);
  colours.setColor(QPalette::PlaceholderText, theme.ink_soft);
  colours.setColor(QPalette::Button, theme.panel);
  colours.setColor(QPalette::ButtonText, theme.ink);
  colours.setColor(QPalette::ToolTipBase, theme.field);
  colours.setColor(QPalette::ToolTipText, theme.ink);
  colours.setColor(QPalette::Highlight, theme.focus);
  colours.setColor(QPalette::HighlightedText, theme.dark ? theme.paper : QColor(Qt::white));
  colours.setColor(QPalette::Link, theme.focus);
  for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    QColor weak = theme.ink_soft;
    weak.setAlpha(150);
    colours.setColor(QPalette::Disabled, role, weak);
  }
  QApplication::setPalette(colours);
  drawing_->set_theme(theme);
  side_->set_theme(theme);
  verdict_->set_theme(theme);
  tools_->set_theme(theme);
  player_->set_theme(theme);
  what_if_->set_theme(theme);
  if (start_) start_->set_theme(theme);
  notice_->set_theme(theme);
  column_edge_->setStyleSheet(QStringLiteral("background: %1;").arg(theme.note.name()));
  card_->setStyleSheet(
      QStringLiteral(
          "#valueCard { border: 1.5px solid %1; border-radius: 4px; background: %2; } #wrongEntry { color: %3; }")
          .arg(theme.focus.name(), theme.panel.name(), theme.stop.name()));
}

void MainWindow::show_title() {
  setWindowTitle(tr("%1[*] – Burrowline").arg(document_.title()));
  setWindowModified(document_.modified());
  setWindowFilePath(document_.path());
  const QString saved = !document_.read_only_because().isEmpty() ? tr("read-only")
                        : document_.modified()                   ? tr("not saved")
                        : document_.path().isEmpty()             ? tr("no file yet")
                                                                 : tr("saved");
  name_->setText(QStringLiteral("<b>%1</b> · %2").arg(document_.title().toHtmlEscaped(), saved));
  if (!name_->isHidden()) {  // the corner of the menus has the width of what is shown in it
    name_->hide();
    name_->show();
  }
}

bool MainWindow::may_leave() {
  take_typing_in(*this);
  if (!document_.modified()) return true;
  QMessageBox box(QMessageBox::Question, tr("Burrowline"),
                  tr("“%1” has changes that are not saved.").arg(document_.title()),
                  QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, this);
  box.setDefaultButton(QMessageBox::Save);
  const int answer = box.exec();
  return answer == QMessageBox::Save ? save() : answer == QMessageBox::Discard;
}

void MainWindow::closeEvent(QCloseEvent* event) {
  drawing_->settle();
  presentation_->set_on(false);
  if (!may_leave()) {
    event->ignore();
    return;
  }
  QSettings settings;
  settings.setValue(QStringLiteral("units"),
                    units_ == UnitSystem::us ? QStringLiteral("us") : QStringLiteral("metric"));
  settings.setValue(QStringLiteral("colours"), text_from(std::string(word_of(colours_))));
  settings.setValue(QStringLiteral("fineness"), text_from(std::string(word_of(shown_fineness()))));
  if (placed_) remember_window(*this, *splitter_);
  recovery_.reset();
  event->accept();
}

}  // namespace burrow
