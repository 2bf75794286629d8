#include "burrow/window/main_window.h"

#include <QActionGroup>
#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QInputDialog>
#include <QLabel>
#include <QLocale>
#include <QMessageBox>
#include <QMimeData>
#include <QSettings>
#include <QSplitter>
#include <QStandardPaths>
#include <QStatusBar>
#include <QVBoxLayout>

#include "burrow/document/recovery.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/import/ground_csv.h"
#include "burrow/language/say.h"
#include "burrow/widgets/field_undo.h"
#include "burrow/widgets/glossary.h"
#include "burrow/widgets/tab_order.h"
#include "burrow/widgets/wheel_guard.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/notice_line.h"
#include "burrow/window/window_place.h"

namespace burrow {

namespace {
/// Two columns or a header with a station: a levelled ground line rather than survey points.
bool looks_like_ground_line(const QString& path) {
  const Result<std::string> text = read_text_file(path.toStdString());
  return text && read_ground_csv(*text);
}

}  // namespace

MainWindow::MainWindow(Tables tables, const QString& recovery_folder, QWidget* parent)
    : QMainWindow(parent),
      document_(std::move(tables)),
      verdict_(new VerdictBar(document_, this)),
      drawing_(new DrawingView(document_, this)),
      overview_(new OverviewStrip(document_, *drawing_, this)),
      side_(new SideColumn(document_, *drawing_, this)),
      card_(new ValueCard(document_, drawing_)),
      notice_(new NoticeLine(this)),
      where_(new QLabel(this)),
      state_(new QLabel(this)),
      recovery_folder_(recovery_folder) {
  tab_by_place();
  explain_words();
  qApp->installEventFilter(new FieldUndo(this));
  qApp->installEventFilter(new WheelGuard(this));
  setAcceptDrops(true);
  drawing_->setAcceptDrops(false);
  auto* middle = new QWidget(this);
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(verdict_);
  column->addWidget(notice_);
  auto* splitter = splitter_ = new QSplitter(Qt::Horizontal, middle);
  auto* views = new QWidget(splitter);
  auto* views_column = new QVBoxLayout(views);
  views_column->setContentsMargins(0, 0, 0, 0);
  views_column->setSpacing(0);
  views_column->addWidget(drawing_, 1);
  views_column->addWidget(overview_);
  splitter->addWidget(views);
  splitter->addWidget(side_);
  splitter->setStretchFactor(0, 1);
  splitter->setStretchFactor(1, 0);
  splitter->setChildrenCollapsible(false);
  splitter->setSizes({1130, 370});
  side_->setMinimumWidth(260);
  column->addWidget(splitter, 1);
  setCentralWidget(middle);
  statusBar()->addWidget(where_, 1);
  statusBar()->addPermanentWidget(state_);

  make_file_menu();
  make_edit_menu();
  make_view_menu();
  make_help_menu();

  connect(drawing_, &DrawingView::pointer_moved, where_, &QLabel::setText);
  connect(drawing_, &DrawingView::finding_picked, this, [this](int finding) {
    side_->show_page(SideColumn::Page::findings);
    findings().pick(finding);
  });
  connect(drawing_, &DrawingView::typing_wanted, this, &MainWindow::type_values);
  connect(drawing_, &DrawingView::measure_typing_wanted, this, [this](const MeasureRef& measure, const QPoint& at) {
    const auto entry = [this, measure](const Crossing& c) {
      return std::vector<Field>{measure_field(c, assess(c, document_.tables()), document_.tables(), measure)};
    };
    card_->open_fields(text_from(measure_name(document_.crossing(), measure)), measure_part(measure), entry,
                       drawing_->viewport()->mapTo(drawing_, at), units_);
  });
  connect(drawing_, &DrawingView::picked_changed, this, [this] {
    const ItemRef& part = drawing_->picked();
    const std::vector<ItemRef> all = drawing_->all_picked();
    const bool whole_items = !all.empty() && std::all_of(all.begin(), all.end(), may_be_several);
    remove_action_->setEnabled(whole_items);
    duplicate_action_->setEnabled(whole_items);
    state_->setText(all.empty()      ? QString()
                    : all.size() > 1 ? tr("picked: %1").arg(text_from(several_name(document_.crossing(), all)))
                                     : tr("picked: %1").arg(text_from(part_name(document_.crossing(), part))));
  });
  connect(&findings(), &FindingsPanel::picked, drawing_, &DrawingView::go_to_finding);
  connect(&findings(), &FindingsPanel::jump_wanted, this, [this](int finding) {
    drawing_->go_to_finding(finding);
    drawing_->setFocus();
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
  connect(side_, &SideColumn::page_wanted, this, [this] { column_action_->setChecked(true); });
  connect(card_, &ValueCard::closed, drawing_, qOverload<>(&QWidget::setFocus));
  connect(&document_, &Document::file_state_changed, this, &MainWindow::show_title);
  connect(&document_, &Document::changed, this, [this] { setWindowModified(document_.modified()); });

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
  resize(1500, 900);
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

bool MainWindow::import_ground(const QString& path) {
  const Result<std::string> text = read_text_file(path.toStdString());
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

void MainWindow::type_values(const QPoint& at) {
  card_->open_for(drawing_->picked(), drawing_->viewport()->mapTo(drawing_, at), units_);
}

void MainWindow::set_units(UnitSystem units) {
  units_ = units;
  drawing_->set_units(units);
  side_->set_units(units);
  verdict_->set_units(units);
  for (QAction* action : unit_actions_->actions())
    if (action->data().toInt() == static_cast<int>(units)) action->setChecked(true);
}

void MainWindow::set_fineness(DisplayPrecision fineness) {
  set_display_precision(fineness);
  set_units(units_);  // every text anew
}

void MainWindow::set_dark(bool dark) {
  dark_ = dark;
  colours_ = dark ? Colours::dark : Colours::light;
  dark_action_->setChecked(dark);
  apply_theme();
}

void MainWindow::apply_theme() {
  const Theme theme = dark_ ? Theme::night() : Theme::light();
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
  notice_->set_theme(theme);
  card_->setStyleSheet(
      QStringLiteral(
          "#valueCard { border: 1.5px solid %1; border-radius: 4px; background: %2; } #wrongEntry { color: %3; }")
          .arg(theme.focus.name(), theme.panel.name(), theme.stop.name()));
}

void MainWindow::show_title() {
  setWindowTitle(tr("%1[*] – Burrowline").arg(document_.title()));
  setWindowModified(document_.modified());
  setWindowFilePath(document_.path());
}

bool MainWindow::may_leave() {
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
  ImportScreen screen(document_.tables(), dark_ ? Theme::night() : Theme::light(), units_, own, this);
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
