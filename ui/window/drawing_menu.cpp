/// What the right button, or the Menu key, offers on the drawing.

#include <QClipboard>
#include <QGuiApplication>
#include <QMenu>

#include "burrow/document/several.h"
#include "burrow/document/text.h"
#include "burrow/document/utility_entry.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/window/edit_commands.h"
#include "burrow/window/main_window.h"

namespace burrow {

void MainWindow::show_drawing_menu(const QPoint& at) {
  QMenu menu(this);
  fill_drawing_menu(menu, drawing_->under(at), at);
  menu.exec(drawing_->viewport()->mapToGlobal(at));
}

void MainWindow::fill_drawing_menu(QMenu& menu, const DrawingView::Under& under, const QPoint& at) {
  if (under.finding >= 0) {
    add_finding_entries(menu, under.finding);
  } else if (under.measure) {
    menu.addAction(tr("&Type its value…"), this, [this, measure = *under.measure, at] { type_measure(measure, at); });
    menu.addAction(tr("&Hide the dimensions"), this, [this] { actions_.dimensions->setChecked(false); });
  } else if (!under.part.none()) {
    add_item_entries(menu, under.part, at);
  } else if (under.station_m) {
    menu.addAction(tr("Insert a &utility here"), this, [this, station = *under.station_m] { add_utility_at(station); });
    QAction* across = menu.addAction(tr("&Section across, here"), this, [this] { actions_.across->setChecked(true); });
    across->setEnabled(!actions_.across->isChecked());
    add_drawn_kinds(menu.addMenu(tr("Insert &here")), [this, at] { drawing_->sketch_at(at); });
    menu.addAction(tr("&Paste here"), this, [this, station = *under.station_m] { edits_->paste(station); });
  }
  menu.addSeparator();
  menu.addAction(actions_.fit);
  menu.addAction(actions_.zoom_in);
  menu.addAction(actions_.zoom_out);
}

void MainWindow::add_finding_entries(QMenu& menu, int finding) {
  const auto go = [this, finding] {
    side_->show_page(SideColumn::Page::findings);
    findings().pick(finding);
    drawing_->go_to_finding(finding);
  };
  menu.addAction(tr("Open its &calculation"), this, go);
  if (findings().may_accept(finding))
    menu.addAction(tr("&Accept with reason…"), this, [this, go] {
      go();
      findings().accept_selected();
    });
  menu.addAction(tr("Cop&y"), this, [this, finding] {
    const Finding& f = document_.assessment().findings[static_cast<std::size_t>(finding)];
    QGuiApplication::clipboard()->setText(text_from(finding_text(f, units_)));
  });
  menu.addAction(tr("&Next finding"), this, [this, go] {
    go();
    go_to_next_finding(1);
  });
}

void MainWindow::add_item_entries(QMenu& menu, const ItemRef& part, const QPoint& at) {
  drawing_->pick(part);
  menu.addAction(tr("&Edit values…"), this, [this, at] { type_values(at); });
  menu.addAction(tr("&Show it in its page"), this,
                 [this, page = page_of(part.kind)] { show_page_and_go(static_cast<int>(page)); });
  menu.addAction(tr("Findin&gs about it"), this, [this] {
    side_->show_page(SideColumn::Page::findings);
    findings().show_about_selected();
  });
  if (part.kind == ItemKind::launch || part.kind == ItemKind::grade)
    menu.addAction(tr("&Best launch…"), this, [this] { side_->show_page(SideColumn::Page::launch); });
  add_change_entries(menu, part, at);
}

void MainWindow::add_change_entries(QMenu& menu, const ItemRef& part, const QPoint& at) {
  menu.addSeparator();
  if (edits_->may_rename()) menu.addAction(actions_.rename);
  if (may_be_several(part))
    for (QAction* action : {actions_.copy, actions_.duplicate}) menu.addAction(action);
  if (edits_->may_remove()) menu.addAction(actions_.remove);
  if (edits_->may_lock()) menu.addAction(actions_.lock);
  const Pane pane = drawing_->frame().pane_at(at);
  if (pane != Pane::plan && pane != Pane::elevation) return;
  menu.addAction(tr("Add a &point here"), this, [this, part, at] {
    if (!drawing_->add_point({part.kind, part.id, -1}, at))
      tell_refused(tr("No line runs here that could have a point."));
  });
  add_drawn_kinds(menu.addMenu(tr("Insert &here")), [this, at] { drawing_->sketch_at(at); });
}

/// Across the line there; else as with Ctrl+U.
void MainWindow::add_utility_at(double station_m) {
  Utility utility = new_utility(document_.crossing(), tr("new utility").toStdString());
  if (!utility.path.empty()) {
    const double by = station_m - utility_mark(utility).station_m;
    for (PathVertex& v : utility.path) v.x_m += by;
  }
  if (!document_.change(tr("Add a utility"), [&](Crossing& c) { c.site.utilities.push_back(utility); })) return;
  drawing_->pick({ItemKind::utility, utility.id, -1});
  drawing_->setFocus();
}

}  // namespace burrow
