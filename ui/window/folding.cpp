/// What gives way where the window is small: the strip of the whole bore, the column of pages, one of the two views.

#include <QEvent>
#include <QFrame>
#include <QKeyEvent>
#include <QSplitter>
#include <algorithm>
#include <numeric>
#include <utility>

#include "burrow/window/main_window.h"
#include "burrow/window/presentation.h"
#include "burrow/window/tool_strip.h"

namespace burrow {

namespace {
constexpr int beside_px = 1180;                      ///< the column stands beside the drawing from here on
constexpr int column_px = 392, least_seen_px = 120;  ///< of the drawing, left of the column that lies over it
constexpr int short_px = 800;                        ///< the strip of the whole bore goes below
}  // namespace

/// Where height is short, the strip of the whole bore goes while the drawing shows all of it.
void MainWindow::fold_overview() {
  if (presentation_ && presentation_->on()) return;
  const Frame& f = drawing_->frame();
  const OverviewScale whole = overview_scale(QRectF(0, 0, 100, 100), document_.crossing(), document_.assessment());
  const double slack = 0.1 * (whole.to_m - whole.from_m);
  const bool all_seen = f.left_station_m <= whole.from_m + slack && f.right_station_m() >= whole.to_m - slack;
  overview_->setVisible(overview_->shown_action()->isChecked() && !(height() < short_px && all_seen));
}

void MainWindow::fold_column() {
  if (presentation_ && presentation_->on()) return;
  const bool over = width() < beside_px;
  const bool was_over = splitter_->count() == 1;
  if (over == was_over) return;
  if (over) {
    column_width_ = splitter_->sizes().last();
    column_was_shown_ = column_action_->isChecked();
    side_->setParent(column_edge_->parentWidget());
    column_action_->setChecked(false);
  } else {
    column_edge_->hide();
    splitter_->addWidget(side_);
    splitter_->setStretchFactor(1, 0);
    const int wide = column_width_ > 0 ? column_width_ : column_px;
    splitter_->setSizes({std::max(1, splitter_->width() - wide), wide});
    column_action_->setChecked(column_was_shown_);
    side_->setVisible(column_was_shown_);
  }
  place_column();
}

void MainWindow::place_column() {
  // Drawing and column as wide as before a presentation, once there is as much room again.
  const auto room_of = [this](const QList<int>& sizes) {
    return std::accumulate(sizes.begin(), sizes.end(), splitter_->handleWidth());
  };
  if (sizes_before_.size() == splitter_->count() && !(presentation_ && presentation_->on()) &&
      room_of(sizes_before_) == splitter_->width())
    splitter_->setSizes(std::exchange(sizes_before_, {}));
  if (splitter_->count() > 1 || (presentation_ && presentation_->on())) return;
  const QRect room = splitter_->geometry();
  const int wide = std::min(std::max(column_px, side_->minimumWidth()), room.width() - least_seen_px);
  side_->setGeometry(room.right() + 1 - wide, room.top(), wide, room.height());
  column_edge_->setGeometry(side_->x() - column_edge_->frameWidth() - 1, room.top(), 2, room.height());
  side_->setVisible(column_action_->isChecked());
  column_edge_->setVisible(column_action_->isChecked());
  column_edge_->raise();
  side_->raise();
}

/// Side elevation and plan take turns where there is no height for both.
void MainWindow::offer_other_view() {
  actions_.other_view->setEnabled(drawing_->one_at_a_time());
  tools_->offer(actions_.other_view, drawing_->one_at_a_time());
}

bool MainWindow::eventFilter(QObject* watched, QEvent* event) {
  if (watched == splitter_ && (event->type() == QEvent::Resize || event->type() == QEvent::Move)) place_column();
  return QMainWindow::eventFilter(watched, event);
}

/// Esc that nothing else wants takes the column off the drawing.
void MainWindow::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && splitter_->count() == 1 && column_action_->isChecked()) {
    column_action_->setChecked(false);
    drawing_->setFocus();
    return;
  }
  QMainWindow::keyPressEvent(event);
}

}  // namespace burrow
