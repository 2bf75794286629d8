/// The player under the drawing, and what it plays.

#include <QAction>

#include "burrow/check/played_bores.h"
#include "burrow/check/predicted_playback.h"
#include "burrow/day/recorded_playback.h"
#include "burrow/window/main_window.h"
#include "burrow/window/player_bar.h"
#include "burrow/window/what_if_bar.h"

namespace burrow {

namespace {

/// What became of one trial.
QString outcome_words(const TrialOutcome& outcome) {
  switch (outcome.end) {
    case TrialEnd::arrived:
      return outcome.inside_window
                 ? MainWindow::tr("This simulated bore arrives where it is wanted.")
                 : MainWindow::tr("This simulated bore reaches the exit, but not where it is wanted.");
    case TrialEnd::daylight:
      return MainWindow::tr("This simulated bore comes out of the ground before the exit.");
    case TrialEnd::refused:
      return MainWindow::tr("This simulated bore is stopped by a stone or hard ground.");
    case TrialEnd::contact:
      return MainWindow::tr("This simulated bore strikes a line, which lies there within its location error.");
    case TrialEnd::lost:
      return MainWindow::tr("This simulated bore never reaches the exit.");
  }
  return {};
}

PlayerBar::Bore simulated_bore(const Trials& trials, int number, const Playback& predicted) {
  const auto at = static_cast<std::size_t>(number - 1);
  PlayerBar::Bore bore;
  bore.kind = PlayerBar::Kind::simulated;
  bore.name = MainWindow::tr("Simulated bore");
  bore.playback = std::make_shared<const Playback>(trial_playback(trials, at, predicted));
  bore.lines_elsewhere = true;
  if (at < trials.outcomes.size()) bore.outcome = outcome_words(trials.outcomes[at]);
  return bore;
}

/// The last record in which the nose went on, with the tool it was bored with; none: nothing to play.
Playback last_recorded(Document& document) {
  const Crossing& crossing = document.crossing();
  for (auto record = crossing.record.rbegin(); record != crossing.record.rend(); ++record) {
    const DayAnswer answer = day_of_record(crossing, document.tables(), *record, document.assessment());
    const Bore& bored = record->layout.bore ? *record->layout.bore : crossing.bore;
    const Playback bore = recorded_playback(*record, answer, resolve_tool(bored.tool, document.tables()));
    if (!bore.empty()) return bore;
  }
  return {};
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
  connect(&side_->job(), &TrialsJob::changed, this, &MainWindow::fill_player);
  connect(&side_->practice(), &PracticePanel::truth_changed, this, &MainWindow::fill_player, Qt::QueuedConnection);
}

void MainWindow::fill_player() {
  if (player_->isHidden()) return;
  const Tool tool = resolve_tool(document_.crossing().bore.tool, document_.tables());
  std::vector<PlayerBar::Bore> bores;
  const Playback predicted = predicted_playback(document_.assessment(), tool);
  const auto beside_lines = [&](const Playback& bore) {
    return std::make_shared<const std::vector<UtilityAnswer>>(
        lines_beside(bore, document_.crossing(), document_.tables()));
  };
  using Kind = PlayerBar::Kind;
  const auto add = [&](Kind kind, const QString& name, const Playback& bore) -> PlayerBar::Bore& {
    PlayerBar::Bore& one = bores.emplace_back();
    one.kind = kind;
    one.name = name;
    one.playback = std::make_shared<const Playback>(bore);
    return one;
  };
  if (!predicted.empty()) {
    add(Kind::predicted, tr("Predicted bore"), predicted);
    if (const auto tried = what_if_->tried()) {
      const Playback bore = at_pace_of(predicted, *tried);
      if (!bore.empty()) add(Kind::tried, tr("The bore tried"), bore).passed = beside_lines(bore);
    }
    const Trials* trials = side_->job().trials();
    if (trials && side_->job().current() && !trials->paths.empty()) {
      PlayerBar::Bore& one = bores.emplace_back(simulated_bore(*trials, 1, predicted));
      one.many = static_cast<int>(trials->paths.size());
      one.one = [kept = std::make_shared<const Trials>(*trials), predicted](int number) {
        return simulated_bore(*kept, number, predicted);
      };
    }
  }
  if (const Playback recorded = last_recorded(document_); !recorded.empty())
    add(Kind::recorded, tr("Recorded bore"), recorded).passed = beside_lines(recorded);
  if (const auto truth = side_->practice().shown_truth()) {
    add(Kind::truth, tr("The true bore"), *truth).lines_elsewhere = true;
  }
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
  if (side_->practice().shown_truth()) player_->choose(PlayerBar::Kind::truth);
}

}  // namespace burrow
