/// The player under the drawing, and what it plays.

#include <QAction>

#include "burrow/check/predicted_playback.h"
#include "burrow/window/main_window.h"
#include "burrow/window/player_bar.h"
#include "burrow/window/what_if_bar.h"

namespace burrow {

namespace {

/// Another path at the pace of the one predicted: the same time at the same share of its length.
Playback as_fast(const Playback& predicted, const BorePath& path) {
  Playback other = predicted;
  other.path = path;
  other.time_s.clear();
  const double share = predicted.path.points.back().s_m / path.points.back().s_m;
  for (const PathPoint& p : path.points) other.time_s.push_back(time_at(predicted, p.s_m * share));
  return other;
}

}  // namespace

void MainWindow::make_player() {
  connect(player_, &PlayerBar::played_changed, drawing_, &DrawingView::set_played);
  connect(player_, &PlayerBar::closed, this, [this] {
    actions_.play->setChecked(false);
    drawing_->setFocus();
  });
  connect(drawing_, &DrawingView::play_wanted, this, [this] {
    if (actions_.play->isChecked()) return player_->toggle();
    actions_.play->setChecked(true);
    player_->toggle();
  });
  connect(drawing_, &DrawingView::step_wanted, this, [this](int marks) {
    actions_.play->setChecked(true);
    player_->step(marks);
  });
  // What is dragged is played as it is now; a lesson's truth is offered once it has been shown.
  connect(&document_, &Document::changed, this, &MainWindow::fill_player);
  connect(
      &document_, &Document::replaced, this,
      [this] {
        player_->pause();
        player_->set_time(0);
        fill_player();
      },
      Qt::QueuedConnection);  // after the drawing has let go of the old crossing
  connect(&side_->practice(), &PracticePanel::truth_changed, this, &MainWindow::fill_player, Qt::QueuedConnection);
}

void MainWindow::fill_player() {
  if (player_->isHidden()) return;
  const Tool tool = resolve_tool(document_.crossing().bore.tool, document_.tables());
  std::vector<PlayerBar::Bore> bores;
  const Playback predicted = predicted_playback(document_.assessment(), tool);
  if (!predicted.empty()) bores.push_back({tr("Predicted bore"), std::make_shared<const Playback>(predicted), false});
  if (const auto tried = what_if_->tried(); tried && !predicted.empty())
    bores.push_back({tr("The bore tried"), std::make_shared<const Playback>(as_fast(predicted, *tried)), false});
  if (const auto truth = side_->practice().shown_truth()) bores.push_back({tr("The true bore"), truth, true});
  player_->set_tasks(&document_.crossing(), &document_.assessment(), units_);
  player_->set_bores(std::move(bores));
}

void MainWindow::make_what_if() {
  connect(what_if_, &WhatIfBar::closed, this, [this] {
    actions_.what_if->setChecked(false);
    drawing_->setFocus();
  });
  connect(what_if_, &WhatIfBar::tried_changed, this, [this] {
    drawing_->set_tried(what_if_->tried());
    fill_player();
  });
  connect(&document_, &Document::changed, what_if_, &WhatIfBar::catch_up);
  connect(&document_, &Document::replaced, what_if_, &WhatIfBar::start_again, Qt::QueuedConnection);
  connect(&side_->practice(), &PracticePanel::try_wanted, this, [this] {
    actions_.what_if->setChecked(true);
    show_what_if(true);
  });
}

/// With the first value at hand for typing.
void MainWindow::show_what_if(bool on) {
  what_if_->setVisible(on);
  if (!on) return;
  what_if_->entry(WhatIfBar::level)->setFocus();
  what_if_->entry(WhatIfBar::level)->selectAll();
}

void MainWindow::show_player(bool on) {
  player_->setVisible(on);
  if (!on) return;
  fill_player();
  if (side_->practice().shown_truth()) player_->choose(true);
}

}  // namespace burrow
