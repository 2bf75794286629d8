/// What the page of the pipe says: sources, checks, working.

#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "burrow/check/limits.h"
#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/check_list.h"
#include "burrow/panels/pipe_panel.h"
#include "burrow/pipe/section.h"
#include "burrow/words/headline.h"
#include "burrow/words/pipe_text.h"
#include "burrow/words/working_text.h"
#include "choice_words.h"

namespace burrow {

namespace {

const Finding* finding_of(const Assessment& assessment, const std::string& code) {
  const auto it = std::find_if(assessment.findings.begin(), assessment.findings.end(),
                               [&](const Finding& f) { return f.code == code && f.subject == "pipe"; });
  return it == assessment.findings.end() ? nullptr : &*it;
}

const Working* step_of(const Assessment& assessment, const std::string& code) {
  const auto it = std::find_if(assessment.working.begin(), assessment.working.end(),
                               [&](const Working& w) { return w.code == code && w.subject == "pipe"; });
  return it == assessment.working.end() ? nullptr : &*it;
}

}  // namespace

QString PipePanel::source_words() const {
  const Pipe pipe = pipe_of(document_.crossing());
  if (!document_.crossing().pipe) return tr("No pipe is entered. Select its material first.");
  const auto cited = [](const Source& source) {
    return tr("%1 [%2]").arg(text_from(source.text), text_from(burrow::label_text(source.label)));
  };
  QStringList lines;
  const PipeMaterial* material = find_pipe(document_.tables(), pipe.material);
  if (pipe.outside_diameter)
    for (const OfferedSize& one : offered_sizes(document_.tables(), pipe.material))
      if (one.size == find_size(document_.tables(), pipe.material, *pipe.outside_diameter))
        lines << tr("Size: %1").arg(cited(one.series->source));
  if (material && material->strength)
    lines << tr("Material: %1").arg(cited(material->strength->source));
  else if (material)
    lines << tr("How this material bears is not known here: only size, hole and loads are judged.");
  return lines.join(QLatin1Char('\n'));
}

void PipePanel::show_checks() {
  const Assessment& now = document_.assessment();
  std::vector<CheckRow> rows;
  const double near_share = limit_of(document_.crossing(), document_.tables(), "pipe_near").value;
  int over = 0, near = 0, open = 0;
  for (const PipeCheck& check : now.pipe_checks) {
    CheckRow row;
    row.code = check.code;
    row.name = text_from(burrow::translated(std::string_view(check.name)));
    const QString value = text_from(value_text(check, units_)), limit = text_from(limit_text(check, units_));
    row.numbers = value.isEmpty() ? text_from(check.text) : limit.isEmpty() ? value : tr("%1, %2").arg(value, limit);
    row.used = text_from(utilisation_text(check));
    row.share = check.utilisation.value_or(0);
    if (const Finding* finding = finding_of(now, check.code)) {
      row.broken = finding->margin.value_or(0) < 0;
      row.severity = finding->severity;
    }
    row.near = !row.broken && row.share > near_share && !check.at_least;
    over += row.broken ? 1 : 0;
    near += row.near ? 1 : 0;
    open += check.value ? 0 : 1;
    rows.push_back(std::move(row));
  }
  QStringList shown_text;
  if (rows.empty()) shown_text << tr("Nothing is judged without a pipe.");
  if (!rows.empty()) shown_text << (over == 0 ? tr("No limit is broken.") : tr("%n limits are broken.", nullptr, over));
  if (near) shown_text << tr("%n near the limit.", nullptr, near);
  if (open) shown_text << tr("%n could not be done.", nullptr, open);
  if (!rows.empty()) shown_text << tr("Select a check below for its calculation.");
  summary_->setText(shown_text.join(QLatin1Char(' ')));
  if (std::none_of(rows.begin(), rows.end(), [this](const CheckRow& r) { return r.code == picked_; })) picked_.clear();
  checks_->setVisible(!rows.empty());
  checks_->show_checks(std::move(rows), picked_);
  show_working();
}

void PipePanel::show_working() {
  const Assessment& now = document_.assessment();
  const auto check = std::find_if(now.pipe_checks.begin(), now.pipe_checks.end(),
                                  [this](const PipeCheck& c) { return !picked_.empty() && c.code == picked_; });
  const bool shown = check != now.pipe_checks.end();
  working_->setVisible(shown);
  copy_->setVisible(shown);
  plain_.clear();
  if (!shown) return;
  QStringList lines{text_from(burrow::translated(std::string_view(check->name)))};
  if (check->station_m && check->value)
    lines << tr("at station %1").arg(text_of(*check->station_m, Dimension::station));
  if (!check->text.empty()) lines << text_from(check->text);
  if (const Finding* finding = finding_of(now, check->code))
    if (const std::string_view what = advice(*finding); !what.empty()) lines << tr("To do: %1").arg(text_from(what));
  if (const Working* step = step_of(now, check->code)) lines << text_from(working_text(*step, units_));
  plain_ = lines.join(QLatin1Char('\n')).replace(QChar(QChar::Nbsp), QLatin1Char(' '));
  working_->setText(plain_.toHtmlEscaped()
                        .replace(QLatin1Char('\n'), QStringLiteral("<br>"))
                        .prepend(QStringLiteral("<p>"))
                        .append(QStringLiteral("</p>")));
}

QString PipePanel::working() const {
  return plain_;
}

}  // namespace burrow
