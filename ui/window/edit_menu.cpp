/// The menus of changes and of what is inserted.

#include <QLabel>
#include <QMenuBar>
#include <QStandardPaths>
#include <QStatusBar>

#include "burrow/document/several.h"
#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/window/edit_commands.h"
#include "burrow/window/main_window.h"
#include "burrow/window/own_tools.h"

namespace burrow {

void MainWindow::add_undo_entries(QMenu* menu) {
  // Own actions: nothing is undone in the middle of a drag.
  QUndoStack& stack = document_.undo_stack();
  QAction* undo = actions_.undo = with_icon(menu->addAction(tr("&Undo"), QKeySequence::Undo, this,
                                                            [this] {
                                                              if (document_.in_session()) return;
                                                              // A danger is taken back only with a reason.
                                                              if (side_->day().holds_back_undo())
                                                                side_->show_page(SideColumn::Page::day);
                                                              else
                                                                document_.undo_stack().undo();
                                                            }),
                                            "undo");
  QAction* redo = actions_.redo = with_icon(menu->addAction(tr("&Redo"), this,
                                                            [this] {
                                                              if (!document_.in_session())
                                                                document_.undo_stack().redo();
                                                            }),
                                            "redo");
  redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Y), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z)});
  undo->setEnabled(false);
  redo->setEnabled(false);
  connect(&stack, &QUndoStack::canUndoChanged, undo, &QAction::setEnabled);
  connect(&stack, &QUndoStack::canRedoChanged, redo, &QAction::setEnabled);
  connect(&stack, &QUndoStack::undoTextChanged, undo,
          [undo](const QString& step) { undo->setText(step.isEmpty() ? tr("&Undo") : tr("&Undo: %1").arg(step)); });
  connect(&stack, &QUndoStack::redoTextChanged, redo,
          [redo](const QString& step) { redo->setText(step.isEmpty() ? tr("&Redo") : tr("&Redo: %1").arg(step)); });
}

void MainWindow::add_clipboard_entries(QMenu* menu) {
  actions_.cut = menu->addAction(tr("Cu&t"), QKeySequence::Cut, edits_, &EditCommands::cut);
  actions_.copy = menu->addAction(tr("&Copy", "of what is selected"), QKeySequence::Copy, edits_, &EditCommands::copy);
  actions_.paste = menu->addAction(tr("&Paste"), QKeySequence::Paste, this, [this] { edits_->paste(); });
}

void MainWindow::add_select_entries(QMenu* menu) {
  menu->addAction(tr("Select &all"), QKeySequence::SelectAll, edits_, &EditCommands::select_all);
  actions_.select_same =
      menu->addAction(tr("Select all of the &same kind"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_A), edits_,
                      &EditCommands::select_same_kind);
  QMenu* kinds = menu->addMenu(tr("Select b&y kind"));
  const auto kind = [&](const QString& name, ItemKind wanted) {
    kinds->addAction(name, this, [this, wanted] { edits_->select_kind(wanted); });
  };
  kind(tr("&Utilities"), ItemKind::utility);
  kind(tr("&Test holes"), ItemKind::test_holes);
  kind(tr("What lies on t&op"), ItemKind::surface);
  kind(tr("&Strata"), ItemKind::stratum);
  kind(tr("&Boundaries, trees, machines, old trenches"), ItemKind::around);
}

void MainWindow::add_lock_entries(QMenu* menu) {
  actions_.lock = with_icon(menu->addAction(tr("Loc&k against dragging"), QKeySequence(Qt::CTRL | Qt::Key_L)), "lock");
  actions_.lock->setCheckable(true);
  connect(actions_.lock, &QAction::triggered, edits_, &EditCommands::set_locked);
  QMenu* kinds = menu->addMenu(tr("Lock all of a k&ind"));
  const auto kind = [&](const QString& lock, const QString& unlock, const std::vector<ItemKind>& which) {
    kinds->addAction(lock, this, [this, which] { edits_->lock_kinds(which, true); });
    kinds->addAction(unlock, this, [this, which] { edits_->lock_kinds(which, false); });
  };
  kind(tr("Lock the &ground: its line, strata, water"), tr("Unlock the g&round"),
       {ItemKind::ground, ItemKind::stratum, ItemKind::water});
  kind(tr("Lock the &utilities and test holes"), tr("Unlock the utilities and test &holes"),
       {ItemKind::utility, ItemKind::test_holes});
  kind(tr("Lock what lies on &top and beside"), tr("Unlock what lies on top and &beside"),
       {ItemKind::surface, ItemKind::around});
}

void MainWindow::make_edit_menu() {
  edits_ = new EditCommands(document_, *drawing_, this);
  connect(edits_, &EditCommands::refused, this, &MainWindow::tell_refused);
  connect(drawing_, &DrawingView::refused, this, &MainWindow::tell_refused);
  QMenu* menu = menuBar()->addMenu(tr("&Edit"));
  add_undo_entries(menu);
  menu->addSeparator();
  add_clipboard_entries(menu);
  menu->addSeparator();
  actions_.edit_values =
      with_icon(menu->addAction(tr("&Edit values of the selected item…"), QKeySequence(Qt::CTRL | Qt::Key_T), this,
                                &MainWindow::edit_selected),
                "edit");
  actions_.rename =
      menu->addAction(tr("Re&name…"), QKeySequence(Qt::SHIFT | Qt::Key_F2), this, [this] { edits_->rename(); });
  actions_.duplicate =
      with_icon(menu->addAction(tr("&Duplicate"), QKeySequence(Qt::CTRL | Qt::Key_D), edits_, &EditCommands::duplicate),
                "duplicate");
  actions_.remove =
      with_icon(menu->addAction(tr("De&lete"), QKeySequence::Delete, edits_, &EditCommands::remove), "delete");
  menu->addSeparator();
  add_select_entries(menu);
  menu->addSeparator();
  add_lock_entries(menu);
  menu->addAction(tr("Re&verse the bore"), edits_, &EditCommands::reverse);
  menu->addSeparator();
  menu->addAction(tr("&Own tools and compressors…"), this, [this] {
    const QString folder =
        recovery_folder_.isEmpty() ? QString() : QStandardPaths::writableLocation(QStandardPaths::AppConfigLocation);
    OwnToolsDialog(document_, OwnTools(folder, document_.tables()), this).exec();
  });
  menu->addSeparator();
  actions_.find = with_icon(menu->addAction(tr("&Find a command or a thing…"), QKeySequence(Qt::CTRL | Qt::Key_K), this,
                                            &MainWindow::show_find),
                            "search");
  make_insert_menu();
}

void MainWindow::tell_refused(const QString& why) {
  constexpr int long_enough_ms = 8000;
  statusBar()->showMessage(why, long_enough_ms);
}

void MainWindow::add_drawn_kinds(QMenu* menu, const std::function<void()>& then) {
  const auto draw = [this, then](SketchKind kind, const std::string& soil = {}) {
    return [this, kind, soil, then] {
      drawing_->begin_sketch(kind, soil);
      if (then) then();
    };
  };
  menu->addAction(tr("Utility by its &bends"), this, draw(SketchKind::utility));
  menu->addSeparator();
  with_icon(menu->addAction(tr("&Road"), this, draw(SketchKind::road)), "road");
  menu->addAction(tr("&Track"), this, draw(SketchKind::track));
  menu->addAction(tr("&Footway"), this, draw(SketchKind::footway));
  menu->addAction(tr("Dri&ve"), this, draw(SketchKind::drive));
  menu->addAction(tr("&Ditch"), this, draw(SketchKind::ditch));
  menu->addAction(tr("Buildin&g"), this, draw(SketchKind::building));
  menu->addSeparator();
  menu->addAction(tr("Bou&ndary"), this, draw(SketchKind::boundary));
  menu->addAction(tr("Tr&ee"), this, draw(SketchKind::tree));
  menu->addAction(tr("&Machine"), this, draw(SketchKind::machine));
  menu->addSeparator();
  with_icon(menu->addAction(tr("Test &hole"), this, draw(SketchKind::test_hole)), "test-hole");
  menu->addAction(tr("Ground &point"), this, draw(SketchKind::ground_point));
  menu->addAction(tr("Point of the &water level"), this, draw(SketchKind::water_point));
  QMenu* strata = menu->addMenu(tr("&Stratum"));
  for (const SoilClass& soil : document_.tables().soils)
    strata->addAction(text_from(soil.name), this, draw(SketchKind::stratum, soil.id));
}

void MainWindow::make_insert_menu() {
  insert_menu_ = menuBar()->addMenu(tr("&Insert"));
  with_icon(insert_menu_->addAction(tr("&Utility"), QKeySequence(Qt::CTRL | Qt::Key_U), this, &MainWindow::add_utility),
            "utility");
  add_drawn_kinds(insert_menu_, {});
  insert_menu_->actions().at(1)->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_U));
  connect(drawing_, &DrawingView::sketch_done, this, [this](const ItemRef& part) {
    side_->show_page(page_of(part.kind));
    drawing_->setFocus();
  });
  connect(drawing_, &DrawingView::rename_wanted, this, [this] { edits_->rename(); });
}

SideColumn::Page MainWindow::page_of(ItemKind kind) {
  switch (kind) {
    case ItemKind::utility:
    case ItemKind::test_holes:
      return SideColumn::Page::utilities;
    case ItemKind::surface:
      return SideColumn::Page::surface;
    case ItemKind::around:
      return SideColumn::Page::surroundings;
    case ItemKind::grade:
    case ItemKind::bore:
      return SideColumn::Page::setup;
    case ItemKind::ground:
    case ItemKind::stratum:
    case ItemKind::water:
      return SideColumn::Page::ground;
    default:
      return SideColumn::Page::pits;
  }
}

void MainWindow::show_selected() {
  const std::vector<ItemRef> all = drawing_->all_picked();
  for (QAction* action : {actions_.cut, actions_.copy, actions_.duplicate, actions_.select_same})
    action->setEnabled(edits_->may_copy());
  actions_.remove->setEnabled(edits_->may_remove());
  actions_.rename->setEnabled(edits_->may_rename());
  actions_.lock->setEnabled(edits_->may_lock());
  actions_.lock->setChecked(edits_->locked());
  actions_.edit_values->setEnabled(!drawing_->picked().none());
  state_->setText(all.empty() ? tr("Nothing selected")
                  : all.size() > 1
                      ? tr("Selected: %1").arg(text_from(several_name(document_.crossing(), all)))
                      : tr("Selected: %1").arg(text_from(part_name(document_.crossing(), drawing_->picked()))));
}

void MainWindow::edit_selected() {
  if (!drawing_->picked().none()) type_values(drawing_->place_of(drawing_->picked()).toPoint());
}

}  // namespace burrow
