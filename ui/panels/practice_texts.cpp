/// What the practice page says: the bore as the crew sees it, the debrief, the class table.

#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QTimer>
#include <algorithm>
#include <cmath>

#include "burrow/document/practice_fields.h"
#include "burrow/document/text.h"
#include "burrow/panels/practice_panel.h"
#include "burrow/words/day_text.h"
#include "practice_words.h"

namespace burrow {

namespace {

QString end_words(const PracticeRun& run) {
  switch (*run.end()) {
    case PracticeEnd::arrived:
      return QObject::tr("The tool has come through the exit face.");
    case PracticeEnd::daylight:
      return QObject::tr("The tool has come out of the ground before the exit.");
    case PracticeEnd::struck:
      return QObject::tr("The hose jerks and stands: the tool has struck something.");
    case PracticeEnd::stuck:
      return QObject::tr("The blows go on and nothing moves: the tool is stuck.");
    case PracticeEnd::lost:
      return QObject::tr("The hose is all in and the tool has not come: it is lost.");
    case PracticeEnd::stopped:
      break;
  }
  return QObject::tr("You have ended it here.");
}

/// For a cell of the table.
QString end_label(PracticeEnd end) {
  switch (end) {
    case PracticeEnd::arrived:
      return QObject::tr("arrived", "a practice bore");
    case PracticeEnd::daylight:
      return QObject::tr("came out early", "a practice bore");
    case PracticeEnd::struck:
      return QObject::tr("struck a line", "a practice bore");
    case PracticeEnd::stuck:
      return QObject::tr("stuck", "a practice bore");
    case PracticeEnd::lost:
      return QObject::tr("lost", "a practice bore");
    case PracticeEnd::stopped:
      break;
  }
  return QObject::tr("ended by choice", "a practice bore");
}

QString cause_words(std::string_view cause) {
  if (cause == "level") return QObject::tr("level", "the instrument");
  if (cause == "sight") return QObject::tr("sight");
  if (cause == "start") return QObject::tr("where it started");
  if (cause == "ground") return QObject::tr("ground other than drawn");
  if (cause == "stones") return QObject::tr("stones");
  return QObject::tr("wander, by chance");
}

}  // namespace

/// They stand where they stood: what cannot be chosen now is grey.
void PracticePanel::show_choices() {
  const bool on = run_ && !run_->over();
  const bool sonde = practice_of(document_.crossing(), document_.tables()).sonde;
  const auto now = on ? run_->choices(sonde) : std::vector<PracticeChoice>();
  for (std::size_t i = 0; i < choices_.size(); ++i) {
    const PracticeChoice choice = word_at_row(i);
    choices_[i]->setVisible(run_ && (sonde || choice != PracticeChoice::fix));
    choices_[i]->setEnabled(std::count(now.begin(), now.end(), choice) > 0);
    choices_[i]->setText(asked_twice_ == choice && on && choice != PracticeChoice::go_on
                             ? tr("%1: press again to end the bore").arg(choice_words(choice))
                             : choice_words(choice));
  }
}

/// What each stretch took against what was expected.
void PracticePanel::show_log() {
  Facts facts;
  if (run_)
    for (const RatePiece& piece : run_->day().rate.pieces)
      facts.emplace_back(
          tr("to %1").arg(text_of(piece.to_m, Dimension::station)),
          tr("%1, %2 expected: %3 times")
              .arg(text_of(piece.taken_s, Dimension::duration), text_of(piece.expected_s, Dimension::duration),
                   decimals(piece.expected_s > 0 ? piece.taken_s / piece.expected_s : 0, 2)));
  log_->setText(facts.empty() ? QString() : facts_html(facts));
  log_->setVisible(!facts.empty());
}

void PracticePanel::show_run() {
  const bool on = run_ && !run_->over();
  const bool asked = asked_twice_ == PracticeChoice::go_on;
  start_->setEnabled(!on);
  start_->setText(asked  ? tr("Start boring all the same, for training")
                  : run_ ? tr("Start afresh")
                         : tr("Start boring"));
  show_choices();
  show_log();
  reveal_->setVisible(run_ && run_->over());
  speed_->setEnabled(run_ && run_->over());
  enter_->setEnabled(debrief_.has_value() && !entered_ && !locked());
  again_->setEnabled(run_ && run_->over());
  if (!run_) {
    state_->setText(
        asked
            ? tr("The verdict is Stop: on site nobody starts this bore. Mend the layout, or press again to bore it in "
                 "training.")
            : tr("Lay it out on the drawing, set level and sight, then start. You will see what a crew sees: stops, "
                 "times, the sound, and a location where you ask for one."));
    show_debrief();
    return;
  }
  QStringList lines;
  if (run_->over()) {
    lines << end_words(*run_);
  } else if (run_->nose_m() > 0) {
    lines << tr("Nose %1 in after %2. You hear %3.")
                 .arg(text_of(run_->nose_m(), Dimension::station), text_of(run_->time_s(), Dimension::duration),
                      text_from(run_->sound()));
    for (const Reading& reading : run_->record().readings)
      if (reading.kind == ReadingKind::fix && reading.nose && std::abs(reading.nose->m - run_->nose_m()) < 1e-6)
        lines << tr("The location here: offset %1, depth %2.")
                     .arg(text_of(reading.offset->m, Dimension::station),
                          text_of(reading.depth->m, Dimension::station));
      else if (reading.kind == ReadingKind::grade && reading.nose && std::abs(reading.nose->m - run_->nose_m()) < 1e-6)
        lines << tr("The level on the tail reads %1.").arg(text_of(reading.grade->v, Dimension::grade));
  } else {
    lines << tr("The tool lies on its cradle, level and sight are set. The air is still off.");
    if (const auto shown = run_->level_shown_rad())
      lines << tr("Turned end for end, the bubble moves by %1: the level is out by half of that. The tool is packed by "
                  "as much.")
                   .arg(text_of(std::tan(*shown), Dimension::grade));
  }
  state_->setText(lines.join(QLatin1Char('\n')));
  Q_EMIT read_path_changed(run_->day().smoothed.points, run_->nose_m());
  show_debrief();
}

/// How many were right, and for each that was not what was asked for and by what.
QString PracticePanel::decisions_html() const {
  int right = 0;
  QString wrong;
  for (const PracticeDecision& decision : run_->decisions()) {
    right += decision.right() ? 1 : 0;
    if (!decision.right())
      wrong += QStringLiteral("<br>") + tr("At %1 you chose: %2. Asked for: %3, since %4.")
                                            .arg(text_of(decision.nose_m, Dimension::station),
                                                 choice_words(decision.choice).toLower(),
                                                 decision.reason == PracticeReason::level_not_turned
                                                     ? choice_words(PracticeChoice::turn_level).toLower()
                                                     : text_from(advice_title(decision.advised)).toLower(),
                                                 reason_words(decision.reason));
  }
  return tr("%1 of %n decisions were what was asked for.", nullptr, static_cast<int>(run_->decisions().size()))
             .arg(right) +
         wrong;
}

void PracticePanel::show_debrief() {
  if (!run_ || !run_->over() || !debrief_ || slow_->isActive()) {
    result_text_->clear();
    result_text_->hide();
    return;
  }
  const auto side = [this](double left) {
    return (left < 0 ? tr("%1 right") : tr("%1 left")).arg(text_of(std::abs(left), Dimension::length));
  };
  const auto height = [this](double up) {
    return (up < 0 ? tr("%1 low") : tr("%1 high")).arg(text_of(std::abs(up), Dimension::length));
  };
  const bool arrived = run_->end() == PracticeEnd::arrived;
  const QString missed =
      debrief_->prolonged
          ? (arrived ? tr("Missed the predicted arrival by %1 and %2, carried on straight to the exit face.")
                     : tr("Left to itself it would have missed the predicted arrival by %1 and %2, carried on straight "
                          "to the exit face."))
          : (arrived ? tr("Missed the predicted arrival by %1 and %2.")
                     : tr("Left to itself it would have missed the predicted arrival by %1 and %2."));
  QString html = missed.arg(side(debrief_->miss_left_m), height(debrief_->miss_up_m));
  if (run_->end() == PracticeEnd::struck)
    for (const Utility& utility : run_->layout().site.utilities)
      if (utility.id == run_->truth().struck)
        html += QStringLiteral("<br>") +
                tr("It struck %1.").arg(text_from(utility.name.empty() ? utility.id : utility.name).toHtmlEscaped());
  Facts facts;
  constexpr double nothing_m = 0.0005;
  for (const MissShare& share : debrief_->shares)
    if (std::hypot(share.left_m, share.up_m) > nothing_m)
      facts.emplace_back(cause_words(share.cause), side(share.left_m) + QStringLiteral(", ") + height(share.up_m));
  html += facts_html(facts);
  html += decisions_html();
  if (const std::string rule = practice_of(document_.crossing(), document_.tables()).rule; !rule.empty())
    html += QStringLiteral("<p><b>%1</b></p>").arg(text_from(rule).toHtmlEscaped());
  result_text_->setText(html);
  result_text_->show();
}

void PracticePanel::show_results() {
  const std::vector<PracticeResult> all = practice_of(document_.crossing(), document_.tables()).results;
  results_->setRowCount(static_cast<int>(all.size()));
  for (int row = 0; row < results_->rowCount(); ++row) {
    const PracticeResult& r = all[static_cast<std::size_t>(row)];
    const auto end = from_word<PracticeEnd>(r.end);
    const bool arrived = end == PracticeEnd::arrived;  // else there is no place at the exit
    const auto missed = [&](double miss, const QString& low, const QString& high) {
      return arrived ? (miss < 0 ? low : high).arg(text_of(std::abs(miss), Dimension::length)) : QStringLiteral("–");
    };
    const QStringList cells{text_from(r.name), end ? end_label(*end) : text_from(r.end),
                            missed(r.miss_left_m, tr("%1 right"), tr("%1 left")),
                            missed(r.miss_up_m, tr("%1 low"), tr("%1 high")),
                            QStringLiteral("%1/%2").arg(r.right).arg(r.decisions)};
    for (int column = 0; column < cells.size(); ++column)
      results_->setItem(row, column, new QTableWidgetItem(cells[column]));
  }
  results_->resizeColumnsToContents();
  results_->setVisible(!all.empty());
}

}  // namespace burrow
