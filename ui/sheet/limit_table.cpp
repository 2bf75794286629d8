/// Every limit in force, with the document and clause it stands in, so that whoever permits the bore can look each up.

#include <QCoreApplication>
#include <algorithm>
#include <set>

#include "burrow/check/limits.h"
#include "burrow/document/limit_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/source_text.h"
#include "burrow/words/working_names.h"
#include "burrow/words/working_text.h"
#include "parts.h"

namespace burrow {

namespace {

/// A short name is not broken over two lines.
QString kept_together(QString name) {
  constexpr qsizetype short_name = 24;
  return name.size() <= short_name ? name.replace(QLatin1Char(' '), QChar(QChar::Nbsp)) : name;
}

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("sheet", text, context, n);
}

struct LimitLine {
  QString name, value, from;
  bool unverified = false;
};

QString number_of(double value, const LimitRow& row, UnitSystem units) {
  if (row.unit == "m/s") return text_from(limit_number(value, row.unit, units));
  return text_from(format(value, limit_dimension(row), units));
}

std::vector<LimitLine> limits_of_table(const Sheet& sheet) {
  std::vector<LimitLine> all;
  for (const LimitRow& row : sheet.tables.limits) {
    const Limit limit = limit_of(sheet.crossing, sheet.tables, row.id);
    all.push_back(
        {text_from(translated_phrase(row.name)),
         (limit.at_least ? tr("at least %1") : tr("at most %1")).arg(number_of(limit.value, row, sheet.units)),
         text_from(limit_source_text(limit.source)), limit.source.label == SourceLabel::from_memory});
  }
  return all;
}

/// Of owners' rules, rules of excavation, materials: what the steps of the working were held against besides.
std::vector<LimitLine> limits_of_rules(const Sheet& sheet) {
  std::set<std::string> of_table;
  for (const LimitRow& row : sheet.tables.limits)
    of_table.insert(source_text(limit_of(sheet.crossing, sheet.tables, row.id).source));
  std::vector<LimitLine> all;
  for (const Working& w : sheet.assessment.working) {
    if (!w.limit || !w.limit_source || of_table.contains(source_text(*w.limit_source))) continue;
    LimitLine line{QStringLiteral("%1, %2").arg(text_from(working_title(w.code)),
                                                kept_together(text_from(working_place(sheet.crossing, w.subject)))),
                   text_from(working_number(*w.limit, w.unit, sheet.units, w.symbol)),
                   text_from(limit_source_text(*w.limit_source)), w.limit_source->label == SourceLabel::from_memory};
    const bool there = std::any_of(all.begin(), all.end(), [&](const LimitLine& l) {
      return l.name == line.name && l.value == line.value && l.from == line.from;
    });
    if (!there) all.push_back(std::move(line));
  }
  return all;
}

}  // namespace

void add_limits(Flow& flow, const Sheet& sheet) {
  flow.heading(tr("Limits in force"));
  flow.paragraph(
      tr("Each with the document and clause it stands in. Whoever owns the road, track or utility may ask for others: "
         "those that nobody looked up are to be confirmed."));
  std::vector<TableRow> rows;
  std::vector<bool> bold;
  for (const std::vector<LimitLine>& lines : {limits_of_table(sheet), limits_of_rules(sheet)})
    for (const LimitLine& line : lines) {
      rows.push_back({line.name, line.value, line.from});
      bold.push_back(line.unverified);
    }
  flow.table({{tr("limit"), 4}, {tr("value"), 1.7, Align::right}, {tr("from"), 4.6}}, rows, bold);
}

int unverified_limits(const Sheet& sheet) {
  int count = 0;
  for (const std::vector<LimitLine>& lines : {limits_of_table(sheet), limits_of_rules(sheet)})
    count +=
        static_cast<int>(std::count_if(lines.begin(), lines.end(), [](const LimitLine& l) { return l.unverified; }));
  return count;
}

void count_unverified(std::vector<Page>& pages, const Sheet& sheet) {
  const int count = unverified_limits(sheet);
  if (count == 0) return;
  const QString words = tr("%n limits unverified: confirm with the owner", nullptr, count);
  for (Page& page : pages) {
    const QRectF in = page.frame_mm;
    Paper(page).short_text({in.left() + 3, in.bottom() - 1.6}, words, {2.5, QFont::DemiBold}, in.width() / 2);
  }
}

}  // namespace burrow
