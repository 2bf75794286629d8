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

QString cause_words(std::string_view cause) {
  if (cause == "level") return QObject::tr("level", "the instrument");
  if (cause == "sight") return QObject::tr("sight");
  if (cause == "start") return QObject::tr("where it started");
  if (cause == "ground") return QObject::tr("ground other than drawn");
  if (cause == "stones") return QObject::tr("stones");
  return QObject::tr("wander, by chance");
}

}  // namespace

void PracticePanel::show_run() {
  const bool on = run_ && !run_->over();
  start_->setEnabled(!on);
  start_->setText(run_ ? tr("Start afresh") : tr("Start boring"));
  const bool sonde = practice_of(document_.crossing(), document_.tables()).sonde;
  const auto now = on ? run_->choices(sonde) : std::vector<PracticeChoice>();
  for (std::size_t i = 0; i < choices_.size(); ++i)
    choices_[i]->setVisible(std::count(now.begin(), now.end(), word_at_row(i)) > 0);
  reveal_->setVisible(run_ && run_->over());
  speed_->setEnabled(run_ && run_->over());
  enter_->setEnabled(debrief_.has_value() && !locked());
  again_->setEnabled(run_ && run_->over());
  if (!run_) {
    state_->setText(
        tr("Lay it out on the drawing, set level and sight, then start. You will see what a crew sees: marks, times, "
           "the sound, and a location where you ask for one."));
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
    lines << tr("The air is on. The first mark is still out.");
  }
  state_->setText(lines.join(QLatin1Char('\n')));
  Q_EMIT read_path_changed(run_->day().smoothed.points, run_->nose_m());
  show_debrief();
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
  if (!run_->truth().struck.empty())
    for (const Utility& utility : run_->layout().site.utilities)
      if (utility.id == run_->truth().struck)
        html += QStringLiteral("<br>") +
                tr("It struck %1.").arg(text_from(utility.name.empty() ? utility.id : utility.name).toHtmlEscaped());
  Facts facts;
  for (const MissShare& share : debrief_->shares)
    facts.emplace_back(cause_words(share.cause), side(share.left_m) + QStringLiteral(", ") + height(share.up_m));
  html += facts_html(facts);
  int right = 0;
  QString wrong;
  for (const PracticeDecision& decision : run_->decisions()) {
    right += decision.right() ? 1 : 0;
    if (!decision.right())
      wrong += QStringLiteral("<br>") + tr("At %1 you chose: %2. The numbers you had said: %3.")
                                            .arg(text_of(decision.nose_m, Dimension::station),
                                                 choice_words(decision.choice).toLower(),
                                                 text_from(advice_title(decision.advised)).toLower());
  }
  html += tr("%1 of %n decisions were what the numbers asked for.", nullptr, static_cast<int>(run_->decisions().size()))
              .arg(right) +
          wrong;
  result_text_->setText(html);
  result_text_->show();
}

void PracticePanel::show_results() {
  const std::vector<PracticeResult> all = practice_of(document_.crossing(), document_.tables()).results;
  results_->setRowCount(static_cast<int>(all.size()));
  for (int row = 0; row < results_->rowCount(); ++row) {
    const PracticeResult& r = all[static_cast<std::size_t>(row)];
    const QStringList cells{text_from(r.name), text_from(r.end), text_of(r.miss_left_m, Dimension::length),
                            text_of(r.miss_up_m, Dimension::length),
                            QStringLiteral("%1/%2").arg(r.right).arg(r.decisions)};
    for (int column = 0; column < cells.size(); ++column)
      results_->setItem(row, column, new QTableWidgetItem(cells[column]));
  }
  results_->resizeColumnsToContents();
  results_->setVisible(!all.empty());
}

}  // namespace burrow
