#include "card_back.h"

#include <QCoreApplication>
#include <algorithm>

#include "burrow/crew/checklist.h"
#include "burrow/crossing/statement.h"
#include "burrow/day/permit_lines.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "card_marks.h"

namespace burrow {

namespace {

constexpr double small = card_text_mm;
constexpr double gap = 4;
constexpr std::size_t most_owners = 4;  ///< the others stand on the permit

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("card", text, context, n);
}

/// Steps one below the other, each with its number; gives where they end.
double steps_below(Paper& paper, const QRectF& column, const EmergencySteps& steps) {
  constexpr double hanging = 4.6;
  const TextStyle head{small, QFont::Bold}, body{small};
  double y = column.top();
  y +=
      paper.paragraph(QRectF(column.left(), y, column.width(), 30), tr("Struck: %1").arg(text_from(steps.title)), head);
  int number = 0;
  for (const Phrase& step : steps.in_short) {
    paper.text({column.left(), y + small}, QString::number(++number), head);
    y += paper.paragraph(QRectF(column.left() + hanging, y, column.width() - hanging, 60), text_from(step), body);
  }
  return y;
}

/// Words beside bold ones that say what they are about; gives their height.
double led_by(Paper& paper, const QRectF& in, double top, const QString& lead, const QString& words) {
  const TextStyle bold{small, QFont::Bold};
  paper.text({in.left(), top + small}, lead, bold);
  const double indent = text_width_mm(lead, bold) + 1.6;
  return paper.paragraph(QRectF(in.left() + indent, top, in.width() - indent, 60), words, {small});
}

double rule(Paper& paper, const QRectF& in, double y) {
  paper.line({in.left(), y}, {in.right(), y}, {0.25});
  return y + 1;
}

/// Gas and power side by side, and what holds for anything else.
double when_struck(Paper& paper, const QRectF& in, double y, const Sheet& sheet) {
  const double half = (in.width() - gap) / 2;
  const std::vector<EmergencySteps> all = emergency_steps(sheet.crossing);
  double end = y;
  for (const EmergencySteps& steps : all) {
    if (steps.kind != UtilityKind::gas && steps.kind != UtilityKind::power) continue;
    const double left = in.left() + (steps.kind == UtilityKind::gas ? 0 : half + gap);
    end = std::max(end, steps_below(paper, QRectF(left, y, half, 100), steps));
  }
  y = end + 0.6;
  for (const EmergencySteps& steps : all) {
    if (steps.kind != UtilityKind::unknown) continue;
    QStringList words;
    for (const Phrase& step : steps.in_short) words << text_from(step);
    y += led_by(paper, in, y, tr("Anything else:"), words.join(QLatin1Char(' ')));
  }
  return y + 0.6;
}

struct Line {
  QString label;
  QString entered;  ///< empty: to be written by hand
};

/// Two in a row; what was not entered has a rule to write on.
double lines_to_ring(Paper& paper, const QRectF& in, double y, const std::vector<Line>& lines) {
  constexpr double row = 7.2;  // a hand writes in it
  const double half = (in.width() - gap) / 2;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double left = in.left() + (i % 2 == 0 ? 0 : half + gap);
    const double base = y + row * (1 + static_cast<double>(i / 2)) - 1.2;
    const TextStyle label{small, QFont::Normal}, number{small, QFont::Bold};
    const double for_number =
        lines[i].entered.isEmpty() ? 14 : std::min(half * 0.6, text_width_mm(lines[i].entered, number));
    const QRectF box = paper.short_text({left, base}, lines[i].label, label, half - for_number - 1.6);
    const double at = box.right() + 1.4;
    if (lines[i].entered.isEmpty())
      paper.line({at, base + 0.5}, {left + half, base + 0.5}, {0.2});
    else
      paper.short_text({at, base}, lines[i].entered, number, left + half - at);
  }
  return y + row * static_cast<double>((lines.size() + 1) / 2);
}

std::vector<Line> numbers(const Sheet& sheet) {
  const Permit& permit = sheet.crossing.permit;
  std::vector<Line> all{{tr("Emergency"), text_from(permit.emergency_phone)},
                        {tr("Locating service"), text_from(permit.locating_phone)}};
  const std::vector<std::string> owners = owners_here(sheet.crossing);
  for (std::size_t i = 0; i < std::min(owners.size(), most_owners); ++i)
    all.push_back({text_from(owners[i]), text_from(contact_of(permit, owners[i]).phone)});
  if (owners.empty()) all.push_back({tr("Owner"), {}});
  all.push_back({tr("Competent person"), text_from(permit.pits_inspected.by)});
  return all;
}

QString ticket_words(const Sheet& sheet) {
  const UtilitySearch& search = sheet.crossing.site.utility_search;
  const std::string& reference = search.reference;
  if (!says_something(reference) || !search.valid_to) return tr("not entered: record only, no advice");
  return tr("%1, valid to %2; once it has run out: record only").arg(text_from(reference), text_from(*search.valid_to));
}

std::vector<Line> signatures(const Sheet& sheet) {
  const Permit& permit = sheet.crossing.permit;
  const auto sign = [&](const QString& who, const GoSigned& entered) {
    const bool today =
        entered.decision && entered.date && sheet.tables.judged_on && date_of(*entered.date) == *sheet.tables.judged_on;
    if (entered.decision == GoDecision::no_go) return Line{who, tr("NO-GO")};
    return Line{who, today ? text_from(entered.by) : QString()};
  };
  return {sign(tr("Go: supervisor"), permit.supervisor),
          sign(tr("Go: crew"), permit.crew),
          {tr("At the air valve"), text_from(permit.at_air_valve)},
          {tr("Watcher at the exit"), text_from(permit.at_exit)}};
}

double draw(Paper& paper, const QRectF& in, const Sheet& sheet) {
  double y = rule(paper, in, in.top());
  QStringList signs;
  for (const Phrase& sign : stop_signs_in_short(sheet.crossing, sheet.assessment, sheet.units))
    signs << text_from(sign);
  y += led_by(paper, in, y, tr("Air off at once:"), signs.join(QStringLiteral(" · "))) + 1;
  y = when_struck(paper, in, rule(paper, in, y), sheet);
  y = lines_to_ring(paper, in, rule(paper, in, y), numbers(sheet));
  const std::size_t owners = owners_here(sheet.crossing).size();
  if (owners > most_owners)
    y += paper.paragraph(QRectF(in.left(), y, in.width(), 20),
                         text_from(say_count("{} more owner stands on the permit.",
                                             "{} more owners stand on the permit.", owners - most_owners)),
                         {small});
  y = rule(paper, in, y + 1);
  y += led_by(paper, in, y, tr("Ticket:"), ticket_words(sheet));
  return lines_to_ring(paper, in, y, signatures(sheet));
}

}  // namespace

double back_height(const Page& page, const QRectF& in, const Sheet& sheet) {
  Page tried = page;
  Paper scratch(tried);
  return draw(scratch, in, sheet) - in.top();
}

void draw_back(Paper& paper, const QRectF& box, const Sheet& sheet) {
  draw(paper, box, sheet);
}

QStringList eased_in_full(const Sheet& sheet) {
  QStringList lines;
  if (eased_in_short(sheet.assessment).empty()) return lines;
  lines << tr("Accepted and loosened") << text_from(headline(sheet.assessment, sheet.units));
  for (const Finding& f : sheet.assessment.findings)
    if (f.muted && f.severity != Severity::note)
      lines << QStringLiteral("• ") + tr("accepted: %1 (%2; %3, %4)")
                                          .arg(text_from(finding_text(f, sheet.units)), text_from(f.muted->reason),
                                               text_from(f.muted->by), text_from(f.muted->date));
  return lines;
}

QStringList fill_with(Paper& paper, const QRectF& box, const QStringList& lines) {
  const TextStyle plain{small}, strong{small, QFont::DemiBold};
  QStringList all;
  for (const QString& line : lines) all << wrapped(line, plain, box.width());
  double y = box.top();
  for (qsizetype i = 0; i < all.size(); ++i) {
    const bool heads = all[i] == tr("Accepted and loosened");
    // A heading alone would head nothing.
    if (y + (heads ? 3 : 1) * line_height_mm(plain) > box.bottom()) return all.mid(i);
    paper.text({box.left(), y + small}, all[i], heads ? strong : plain);
    y += line_height_mm(plain);
  }
  return {};
}

}  // namespace burrow
