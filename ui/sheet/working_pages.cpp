/// The working on paper: what is worst and a table of contents, then each kind of step once, with its formula, its
/// symbols and its source, and below it every case with the numbers put in.

#include <QCoreApplication>
#include <algorithm>
#include <map>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/source_text.h"
#include "burrow/words/working_names.h"
#include "burrow/words/working_text.h"
#include "parts.h"
#include "working_cases.h"

namespace burrow {

namespace {

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("sheet", text, context, n);
}

constexpr std::size_t most_worst = 10;

/// All steps of one code.
struct Section {
  std::string_view code;
  std::vector<CaseGroup> groups;
  int page = 0;
};

/// What the findings tell of first, worst first; then the others as they were computed.
std::vector<Section> sections_of(const Assessment& answer) {
  std::vector<Section> all;
  const auto section = [&](std::string_view code) -> Section& {
    const auto it = std::find_if(all.begin(), all.end(), [&](const Section& s) { return s.code == code; });
    return it != all.end() ? *it : all.emplace_back(Section{code, {}, 0});
  };
  for (const Finding& f : answer.findings)
    if (const Working* step = working_of(answer, f)) section(step->code);
  for (const Working& w : answer.working) {
    std::vector<CaseGroup>& groups = section(w.code).groups;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const CaseGroup& g) {
      return g.front()->formula == w.formula && g.front()->source == w.source;
    });
    (same != groups.end() ? *same : groups.emplace_back()).push_back(&w);
  }
  return all;
}

class WorkingPages {
 public:
  WorkingPages(const Sheet& sheet, std::vector<Section>& sections)
      : sheet_(sheet),
        sections_(sections),
        flow_([this] { return new_text_page(pages_, sheet_, tr("Calculation"), TextColumns::two); }) {}

  std::vector<Page> all() {
    flow_.paragraph(
        tr("Every number of the checks: the formula in symbols, what was put in, what came out, the limit, and "
           "where both come from. A result comes out again, to its last digit, from the numbers as they are printed."));
    worst();
    contents();
    for (std::size_t i = 0; i < sections_.size(); ++i) section(static_cast<int>(i) + 1, sections_[i]);
    number_pages(pages_, sheet_);
    count_unverified(pages_, sheet_);
    return std::move(pages_);
  }

 private:
  [[nodiscard]] int number_of(std::string_view code) const {
    const auto it = std::find_if(sections_.begin(), sections_.end(), [&](const Section& s) { return s.code == code; });
    return static_cast<int>(it - sections_.begin()) + 1;
  }
  static QString page_words(int page) { return page > 0 ? QString::number(page) : QStringLiteral("–"); }

  void worst() {
    std::vector<TableRow> rows;
    for (const Finding& f : sheet_.assessment.findings) {
      const Working* step = working_of(sheet_.assessment, f);
      if (!step) continue;
      if (rows.size() == most_worst) break;
      const int number = number_of(step->code);
      rows.push_back({text_from(finding_text(f, sheet_.units)), QString::number(number),
                      page_words(sections_[static_cast<std::size_t>(number) - 1].page)});
    }
    if (rows.empty()) return;
    flow_.heading(tr("Worst first"));
    flow_.table({{tr("finding"), 9}, {tr("section"), 1.1, Align::right}, {tr("page"), 0.9, Align::right}}, rows);
  }

  void contents() {
    const std::size_t half = (sections_.size() + 1) / 2;
    std::vector<TableRow> rows(half);
    for (std::size_t i = 0; i < sections_.size(); ++i)
      rows[i % half] << QString::number(i + 1) << text_from(working_title(sections_[i].code))
                     << page_words(sections_[i].page);
    const std::vector<TableColumn> one{{tr("no."), 0.7, Align::right}, {tr("step"), 5}, {tr("page"), 1, Align::right}};
    std::vector<TableColumn> columns = one;
    columns.insert(columns.end(), one.begin(), one.end());
    flow_.heading(tr("Contents"));
    flow_.table(columns, rows);
  }

  void section(int number, Section& section) {
    flow_.heading(QStringLiteral("%1  %2").arg(QString::number(number), text_from(working_title(section.code))));
    section.page = static_cast<int>(pages_.size());
    pages_.back().marks.push_back({text_from(working_title(section.code)), std::max(0.0, flow_.at_mm() - 6)});
    QString symbols;
    for (const CaseGroup& group : section.groups) {
      const Working& first = *group.front();
      flow_.formula(on_paper(working_formula(first)));
      const QString meanings = symbol_words(first), from = text_from(say("from: {}", source_text(first.source)));
      flow_.paragraph(meanings == symbols ? from : meanings + QStringLiteral(";  ") + from);  // never twice
      symbols = meanings;
      cases_of(flow_, sheet_, group);
    }
  }

  static QString symbol_words(const Working& step) {
    QStringList all;
    for (const SymbolMeaning& one : symbols_of(step))
      all << QStringLiteral("%1: %2").arg(on_paper(one.symbol), on_paper(one.meaning));
    return all.join(QStringLiteral(";  "));
  }

  const Sheet& sheet_;
  std::vector<Section>& sections_;
  std::vector<Page> pages_;
  Flow flow_;
};

}  // namespace

std::vector<Page> working_pages(const Sheet& sheet) {
  std::vector<Section> sections = sections_of(sheet.assessment);
  WorkingPages(sheet, sections).all();  // to learn on which page each stands
  return WorkingPages(sheet, sections).all();
}

}  // namespace burrow
