#include <QCoreApplication>

#include "burrow/day/permit_lines.h"
#include "burrow/document/text.h"
#include "burrow/words/headline.h"
#include "parts.h"

namespace burrow {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

QString state_word(PermitState state) {
  switch (state) {
    case PermitState::holds:
      return tr("holds");
    case PermitState::open:
      return tr("OPEN");
    case PermitState::blocks:
      break;
  }
  return tr("STOP");
}

}  // namespace

std::vector<Page> permit_pages(const Sheet& sheet) {
  // The flow keeps places of pages, so none may move.
  std::vector<Page> pages;
  pages.reserve(64);
  Flow flow([&] { return new_text_page(pages, sheet, tr("Permit to bore")); });
  const std::optional<Date>& day = sheet.tables.judged_on;
  flow.paragraph(tr("Day: %1").arg(day ? text_from(text_of(*day)) : tr("not known")));
  flow.paragraph(text_from(headline(sheet.assessment, sheet.units)));
  flow.paragraph(
      tr("Once the ticket has run out, and while a line is not exposed that has to be, nobody can take the bore on: "
         "what is done all the same is only recorded. Who fills in an open line by hand signs beside it."));
  std::vector<TableRow> rows;
  std::vector<bool> bold;
  for (const PermitLine& line : permit_lines(sheet.crossing, sheet.assessment, day)) {
    QString found = text_from(line.found);
    if (line.level_m) found = tr("%1; level %2").arg(found, shown(line.level_m, Dimension::station, sheet.units));
    rows.push_back({state_word(line.state), text_from(line.what), found});
    bold.push_back(line.state == PermitState::blocks);
  }
  flow.table({{tr("state"), 1}, {tr("what is asked for"), 3.2}, {tr("what was entered"), 4}}, rows, bold);
  flow.heading(tr("Go or no-go"));
  flow.to_fill_in({tr("Supervisor: go / no-go, name, signature, time"), tr("Crew: go / no-go, name, signature, time"),
                   tr("Competent person for the pits: name, signature"), tr("Watcher at the exit: name, radio tried")});
  number_pages(pages, sheet);
  return pages;
}

}  // namespace burrow
