#include "burrow/panels/run_panel.h"

#include <QLabel>

#include "burrow/crew/checklist.h"
#include "burrow/crew/equipment.h"
#include "burrow/words/run_text.h"
#include "burrow/words/trials_text.h"
#include "choice_words.h"

namespace burrow {

namespace {

template <class Text>
QString escaped(const Text& text) {
  return text_from(text).toHtmlEscaped();
}

/// A line with its reason below, small: the column is narrow.
QString with_reason(const QString& what, const QString& reason) {
  return reason.isEmpty() ? QStringLiteral("<p>• %1</p>").arg(what)
                          : QStringLiteral("<p>• %1<br><i>%2</i></p>").arg(what, reason);
}

QString title_html(const QString& title) {
  return QStringLiteral("<p><b>%1</b></p>").arg(title.toHtmlEscaped());
}

}  // namespace

RunPanel::RunPanel(Document& document, QWidget* parent) : FormPanel(document, heavy_page_ms, parent) {
  add_heading(tr("Marks on the hose, at the launch face"));
  marks_ = add_text(tr("Run sheet"));
  add_gap();
  add_heading(tr("Shut the air at once when"));
  signs_ = add_text(tr("Stop signs"));
  add_gap();
  add_heading(tr("When a line is struck"));
  emergency_ = add_text(tr("When a line is struck"));
  add_gap();
  add_heading(tr("Checklist, and what each protects from"));
  checklist_ = add_text(tr("Checklist"));
  add_gap();
  add_heading(tr("Equipment"));
  equipment_ = add_text(tr("Equipment"));
  add_end();
  refresh_now();
}

/// Two lines in a row of the table: numbers above, what is near and to be done below over the whole width.
QString RunPanel::mark_html(const Mark& mark) const {
  const auto cell = [](const QString& text) { return QStringLiteral("<td valign='top'>%1</td>").arg(text); };
  const auto number = [&](const std::optional<double>& v, Dimension dimension) {
    return v ? text_of(*v, dimension).toHtmlEscaped() : QStringLiteral("–");
  };
  const auto minutes = [](double seconds) { return decimals(seconds / 60, seconds < 600 ? 1 : 0); };
  const bool moves = mark.time_s.p10 && mark.time_s.p50 && mark.time_s.p90;
  const QString time = moves ? tr("%1<br>%2–%3")
                                   .arg(number(mark.time_s.p50, Dimension::duration), minutes(*mark.time_s.p10),
                                        minutes(*mark.time_s.p90))
                             : tr("would have stopped");
  const QString band = mark.depth_m && mark.depth_high_m
                           ? text_of(*mark.depth_high_m - *mark.depth_m, Dimension::small_length)
                           : QStringLiteral("–");
  QString html = QStringLiteral("<tr>");
  html += cell(mark.hose_m ? QStringLiteral("<b>%1</b>").arg(number(mark.hose_m, Dimension::length)) : tr("none yet"));
  html += cell(number(mark.nose_m, Dimension::length));
  html += cell(tr("%1<br>±&nbsp;%2").arg(number(mark.depth_m, Dimension::length), band));
  html += cell(time) + QStringLiteral("</tr>");
  QStringList shown_text;
  for (const MarkNear& near : mark.near) shown_text << escaped(near_words(near, units_));
  if (!mark.tasks.empty())
    shown_text << QStringLiteral("<b>%1</b>").arg(escaped(task_words(mark, document_.crossing())));
  if (!shown_text.isEmpty())
    html += QStringLiteral("<tr><td colspan='4'>%1</td></tr>").arg(shown_text.join(QStringLiteral("<br>")));
  return html + QStringLiteral("<tr><td colspan='4'><hr></td></tr>");
}

QString RunPanel::marks_html() const {
  const Assessment& now = document_.assessment();
  if (now.marks.empty()) return tr("No path, and so no marks.").toHtmlEscaped();
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='2' width='100%'><tr>");
  for (const QString& head : {tr("hose"), tr("nose"), tr("depth"), tr("time")})
    html += QStringLiteral("<th align='left'>%1</th>").arg(head.toHtmlEscaped());
  html += QStringLiteral("</tr>");
  for (const Mark& mark : now.marks) html += mark_html(mark);
  html += QStringLiteral("</table>");
  html += QStringLiteral("<p>%1</p>")
              .arg(tr("Hose: the mark that stands at the launch face. Nose: how far it has bored. Depth: of the axis "
                      "below the ground, predicted and not measured, nine bores in ten within the number below it. "
                      "Time: half of all bores, below it "
                      "the minutes that a tenth and nine tenths take. %1.")
                       .arg(text_from(model_status(document_.crossing().bore.model)))
                       .toHtmlEscaped());
  return html;
}

QString RunPanel::equipment_html() const {
  QString html;
  std::optional<EquipmentGroup> group;
  for (const EquipmentItem& item :
       equipment_list(document_.crossing(), document_.tables(), document_.assessment(), units_)) {
    if (group != item.group) html += title_html(text_from(title_of(item.group)));
    group = item.group;
    html += with_reason(escaped(item.what), escaped(item.detail));
  }
  return html;
}

QString RunPanel::checklist_html() const {
  QString html;
  std::optional<ChecklistPhase> phase;
  for (const ChecklistItem& item : checklist(document_.crossing(), document_.assessment(), units_)) {
    if (phase != item.phase)
      html += title_html(item.phase == ChecklistPhase::before   ? tr("Before")
                         : item.phase == ChecklistPhase::during ? tr("While it runs")
                                                                : tr("After"));
    phase = item.phase;
    html += with_reason(escaped(item.what), tr("against %1").arg(text_from(item.protects)).toHtmlEscaped());
  }
  return html;
}

QString RunPanel::signs_html() const {
  QString html;
  for (const Phrase& sign : stop_signs(document_.crossing(), document_.assessment(), units_))
    html += with_reason(escaped(sign), QString());
  return html;
}

QString RunPanel::emergency_html() const {
  QString html;
  for (const EmergencySteps& steps : emergency_steps(document_.crossing())) {
    html += title_html(text_from(steps.title));
    int number = 0;
    for (const Phrase& step : steps.steps) html += QStringLiteral("<p>%1. %2</p>").arg(++number).arg(escaped(step));
    for (const std::string& owner : steps.owners)
      html += QStringLiteral("<p>%1</p>").arg(tr("Owner: %1").arg(text_from(owner)).toHtmlEscaped());
  }
  return html;
}

void RunPanel::refresh() {
  marks_->setText(marks_html());
  signs_->setText(signs_html());
  emergency_->setText(emergency_html());
  checklist_->setText(checklist_html());
  equipment_->setText(equipment_html());
}

QString RunPanel::visible_text() const {
  return plain(marks_) + plain(signs_) + plain(emergency_) + plain(checklist_) + plain(equipment_);
}

}  // namespace burrow
