#pragma once
/// The workbench's window. It only wires parts: document, drawing, panels, menus.

#include <QMainWindow>
#include <QPointer>

#include "burrow/base/display_precision.h"
#include "burrow/document/document.h"
#include "burrow/document/open_mark.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/drawing/overview.h"
#include "burrow/import/into_crossing.h"
#include "burrow/panels/verdict_bar.h"
#include "burrow/widgets/value_card.h"
#include "burrow/window/find_dialog.h"
#include "burrow/window/hints.h"
#include "burrow/window/settings_dialog.h"
#include "burrow/window/side_column.h"

class QFrame;
class QLabel;
class QMenu;
class QActionGroup;
class QSplitter;
class QStackedWidget;
class QToolButton;

namespace burrow {

class EditCommands;
class HelpWindow;
class NoticeLine;
class PlayerBar;
class Presentation;
class WhatIfBar;
class Recovery;
class StartPage;
class ToolStrip;

enum class SheetPart;

class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  /// `recovery_folder` empty: no recovery copies (tests).
  MainWindow(Tables tables, const QString& recovery_folder, QWidget* parent = nullptr);
  ~MainWindow() override;

  Document& document() { return document_; }
  DrawingView& drawing() { return *drawing_; }
  OverviewStrip& overview() { return *overview_; }
  FindingsPanel& findings() { return side_->findings(); }
  SideColumn& side() { return *side_; }
  ToolStrip& tools() { return *tools_; }
  PlayerBar& player() { return *player_; }
  WhatIfBar& what_if() { return *what_if_; }
  VerdictBar& verdict() { return *verdict_; }
  Presentation& presentation() { return *presentation_; }
  ValueCard& value_card() { return *card_; }
  EditCommands& edits() { return *edits_; }

  /// Opens a file; a wrong one is told and leaves everything as it was.
  bool open_file(const QString& path);
  /// Within the screen it is on, where it stood last time; remembered when it closes.
  void place_on_screen();
  bool save();
  /// Takes the ground line from a CSV file; asks for the unit where the file does not say it.
  bool import_ground(const QString& path);
  /// Opens the import screen on these files.
  void import_files(const QStringList& paths);
  /// Takes over what came out of the import screen: a new crossing, or one step of undo.
  void take_import(const Imported& imported, bool as_new);
  void set_units(UnitSystem units);
  void set_fineness(DisplayPrecision fineness);
  void set_dark(bool dark);
  void set_colours(Colours colours);
  /// Shows what a crash left behind, to be looked at, taken back, kept for later or thrown away.
  void offer_left_work();
  /// From now on a signal that ends the program, and a logout, keep unsaved work for the next start.
  void keep_through_ends();
  void open_sample(const QString& name);
  /// In place of the drawing: new, open, samples, lessons; goes when a crossing is opened or begun.
  void show_start();
  [[nodiscard]] bool starting() const;
  StartPage& start_page() { return *start_; }
  void show_hints();
  /// What the menu of the drawing holds for what lies there.
  void fill_drawing_menu(QMenu& menu, const DrawingView::Under& under, const QPoint& at);
  /// The help, at what has the focus; one window of it.
  void show_help();
  /// Once in the life of an installation.
  void show_first_hints();
  [[nodiscard]] Hints* hints() const { return hints_; }

 protected:
  void closeEvent(QCloseEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void make_file_menu();
  void make_edit_menu();
  void make_view_menu();
  void make_heights_menu(QMenu* menu);
  void make_layers_menu(QMenu* menu);
  void make_units_menu(QMenu* menu);
  void make_go_menu();
  void make_help_menu();
  void make_tool_row();
  static QAction* with_icon(QAction* action, const char* icon);
  QAction* add_layer(QMenu* menu, const QString& name, const char* icon, bool on,
                     const std::function<void(bool)>& show);
  void show_heights();
  void fold_overview();
  /// Narrow: the column of pages lies over the drawing when it is asked for.
  void fold_column();
  void place_column();
  void offer_other_view();
  void show_selected();
  void ask_and_open();
  void ask_and_import();
  void hide_start();
  void make_start_page();
  void edit_selected();
  void show_page_and_go(int page);
  void show_drawing_menu(const QPoint& at);
  void add_finding_entries(QMenu& menu, int finding);
  void add_item_entries(QMenu& menu, const ItemRef& part, const QPoint& at);
  void add_utility_at(double station_m);
  void type_measure(const MeasureRef& measure, const QPoint& at);
  void go_to_next_finding(int step);
  void go_to_next_region(int step);
  static bool focus_first_in(QWidget& region);
  void show_find();
  /// Commands, pages, things, findings, help: what the find dialog offers.
  [[nodiscard]] std::vector<Findable> findables();
  void fill_recent();
  void remember_recent(const QString& path);
  void show_title();
  [[nodiscard]] Theme theme_now() const;
  void apply_theme();
  void type_values(const QPoint& at);
  void add_utility();
  void add_undo_entries(QMenu* menu);
  void add_clipboard_entries(QMenu* menu);
  void add_select_entries(QMenu* menu);
  void add_lock_entries(QMenu* menu);
  void make_insert_menu();
  /// Everything that is drawn by clicks; `then` once it has begun.
  void add_drawn_kinds(QMenu* menu, const std::function<void()>& then);
  void add_change_entries(QMenu& menu, const ItemRef& part, const QPoint& at);
  [[nodiscard]] static SideColumn::Page page_of(ItemKind kind);
  void tell_refused(const QString& why);
  bool save_as();
  /// Takes over what is being typed before it goes to paper or into another file. False: an entry was refused, and that
  /// is said; the paper would show what is in force in its place.
  bool take_typing_for_paper();
  bool save_taken();
  /// What is to become of a file that somebody else changed meanwhile.
  bool ask_about_theirs();
  bool ask_about_gone();
  bool write_to(const QString& path);
  /// Says why it is not (surely) saved and offers another place; true: it is saved there.
  bool offer_elsewhere(const QString& what, const QString& why);
  void keep_copies();
  /// Says in a line when the file changes or vanishes on the disk.
  void watch_file();
  /// Says in the status line who else has the file open.
  void mark_open();
  QString ask_where(const QString& title, const QString& at, const QString& kinds, const QString& ending);
  bool may_leave();  ///< asks to save unsaved work
  void complain(const QString& what, const Error& error);
  void add_paper_entries(QMenu* menu);
  void print_part(SheetPart part, const std::string& record = {});
  void write_pdf(SheetPart part, const std::string& record = {});
  void write_png();
  void add_export_entries(QMenu* menu);
  void write_file(const QString& kinds, const QString& ending,
                  const std::function<Result<void>(const QString& path)>& write);
  void make_presentation(QMenu* menu);
  void make_player();
  void fill_player();
  void show_player(bool on);
  void make_what_if();
  void show_what_if(bool on);
  void new_crossing();
  void new_guided_crossing();
  void show_settings();
  [[nodiscard]] CrewDefaults crew_defaults() const;

  Document document_;
  /// What menus, tool bar and find dialog share.
  struct Actions {
    QAction *new_crossing = nullptr, *open = nullptr, *save = nullptr, *sheet = nullptr;
    QAction *undo = nullptr, *redo = nullptr, *edit_values = nullptr, *duplicate = nullptr, *remove = nullptr;
    QAction *cut = nullptr, *copy = nullptr, *paste = nullptr, *select_same = nullptr;
    QAction *rename = nullptr, *lock = nullptr;
    QAction *fit = nullptr, *zoom_in = nullptr, *zoom_out = nullptr;
    QAction* other_view = nullptr;
    QAction *across = nullptr, *turning = nullptr, *dimensions = nullptr, *play = nullptr, *what_if = nullptr;
    QAction *find = nullptr, *settings = nullptr, *help = nullptr;
  };

  Actions actions_;
  ToolStrip* tools_;
  VerdictBar* verdict_;
  DrawingView* drawing_;
  OverviewStrip* overview_;
  PlayerBar* player_;
  WhatIfBar* what_if_;
  SideColumn* side_;
  ValueCard* card_;
  EditCommands* edits_ = nullptr;
  NoticeLine* notice_;
  QLabel* name_;  ///< in the corner of the menu bar: the crossing, and whether it is saved
  QLabel* where_;
  QLabel* state_;
  QLabel* unit_state_;
  QMenu* recent_ = nullptr;
  QSplitter* splitter_ = nullptr;
  QFrame* column_edge_ = nullptr;  ///< of the column where it lies over the drawing
  bool column_was_shown_ = true;   ///< beside the drawing, and how wide
  int column_width_ = 0;
  QStackedWidget* pages_ = nullptr;  ///< the workbench; the start page, once it was shown
  StartPage* start_ = nullptr;
  bool placed_ = false;
  QString recovery_folder_;
  std::unique_ptr<Recovery> recovery_;
  OpenMark open_mark_;
  QLabel* also_open_ = nullptr;
  UnitSystem units_ = UnitSystem::metric;
  bool dark_ = false, sunlight_ = false;
  Colours colours_ = Colours::light;
  QActionGroup* unit_actions_ = nullptr;
  QAction* dark_action_ = nullptr;
  QAction* sunlight_action_ = nullptr;
  QAction* cloud_action_ = nullptr;
  QAction* column_action_ = nullptr;
  QPointer<HelpWindow> help_;
  Presentation* presentation_ = nullptr;
  bool player_was_shown_ = false;  ///< before the presentation
  QList<int> sizes_before_;        ///< of drawing and column
  QMenu* insert_menu_ = nullptr;
  QMenu* layers_menu_ = nullptr;
  QMenu* heights_menu_ = nullptr;
  QActionGroup* heights_group_ = nullptr;
  QToolButton* heights_button_ = nullptr;
  QPointer<Hints> hints_;
};

}  // namespace burrow
