#include "working_cases.h"

#include <QCoreApplication>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/source_text.h"
#include "burrow/words/working_names.h"
#include "burrow/words/working_text.h"

namespace burrow {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

struct Cell {
  std::string_view symbol;
  QString text;
};

/// The numbers put in; what comes more than once is one cell with all its values.
std::vector<Cell> cells_of(const Working& step, UnitSystem units) {
  std::vector<Cell> all;
  for (const WorkingInput& input : step.inputs) {
    const QString value = text_from(working_input(input, units)).replace(QLatin1Char(' '), QChar::Nbsp);
    const auto same = std::find_if(all.begin(), all.end(), [&](const Cell& c) { return c.symbol == input.symbol; });
    if (same == all.end())
      all.push_back({input.symbol, value});
    else
      same->text += QStringLiteral(" | ") + value;
  }
  return all;
}

QString equals(std::string_view symbol, const QString& value) {
  const bool bound = value.startsWith(QLatin1Char('<')) || value.startsWith(QLatin1Char('>'));
  return (bound ? QStringLiteral("%1\u00a0%2") : QStringLiteral("%1\u00a0=\u00a0%2"))
      .arg(on_paper(std::string(symbol)), value);
}

/// Of these there is one: their name says no more than the heading.
bool says_its_place(const std::string& subject) {
  return subject != "bore" && subject != "pipe" && subject != "air" && subject != "site";
}

class Cases {
 public:
  Cases(Flow& flow, const Sheet& sheet, const CaseGroup& group) : flow_(flow), sheet_(sheet), group_(group) {
    for (const Working* step : group_) cells_.push_back(cells_of(*step, sheet_.units));
    find_common();
    find_limits();
  }

  void print() {
    if (!common_.isEmpty()) flow_.paragraph(tr("the same for all: %1").arg(common_.join(QStringLiteral(";  "))));
    if (group_.size() == 1) return one();
    if (!table()) lines();
    limit_sources();
  }

 private:
  /// With two cases or more: what all of them put in alike.
  void find_common() {
    if (group_.size() < 2) return;
    const std::vector<Cell> first = cells_.front();
    for (const Cell& cell : first) {
      const auto has = [&](const std::vector<Cell>& one) {
        return std::any_of(one.begin(), one.end(),
                           [&](const Cell& c) { return c.symbol == cell.symbol && c.text == cell.text; });
      };
      if (!std::all_of(cells_.begin(), cells_.end(), has)) continue;
      common_ << equals(cell.symbol, cell.text);
      for (std::vector<Cell>& one : cells_)
        one.erase(std::find_if(one.begin(), one.end(), [&](const Cell& c) { return c.symbol == cell.symbol; }));
    }
  }

  /// Where limits come from: each source once, by a letter where there are several.
  void find_limits() {
    for (const Working* step : group_) {
      if (!step->limit || !step->limit_source) continue;
      const QString words = text_from(limit_source_text(*step->limit_source));
      if (!sources_.contains(words)) sources_ << words;
    }
  }
  [[nodiscard]] QString limit_of(const Working& step) const {
    if (!step.limit) return QStringLiteral("–");
    QString words = text_from(working_number(*step.limit, step.unit, sheet_.units, step.symbol));
    if (sources_.size() > 1 && step.limit_source) {
      const qsizetype which = sources_.indexOf(text_from(limit_source_text(*step.limit_source)));
      words += QStringLiteral(" (%1)").arg(letter(which));
    }
    return words.replace(QLatin1Char(' '), QChar::Nbsp);
  }
  static QString letter(qsizetype which) {
    const QString last(QChar('a' + static_cast<char>(which % 26)));
    return which < 26 ? last : letter(which / 26 - 1) + last;
  }
  void limit_sources() {
    if (sources_.size() == 1) flow_.paragraph(tr("limit from: %1").arg(sources_.front()));
    if (sources_.size() < 2) return;
    QStringList all;
    for (qsizetype i = 0; i < sources_.size(); ++i) all << QStringLiteral("(%1) %2").arg(letter(i), sources_[i]);
    flow_.paragraph(tr("limits from: %1").arg(all.join(QStringLiteral(";  "))));
  }

  [[nodiscard]] QString place(const Working& step) const {
    return on_paper(working_place(sheet_.crossing, step.subject));
  }
  [[nodiscard]] QString result(const Working& step) const {
    return text_from(working_number(step.value, step.unit, sheet_.units, step.symbol))
        .replace(QLatin1Char(' '), QChar::Nbsp);
  }

  [[nodiscard]] bool alike() const {
    const std::vector<Cell>& first = cells_.front();
    return group_.size() > 1 && std::all_of(cells_.begin(), cells_.end(), [&](const std::vector<Cell>& one) {
             return std::equal(one.begin(), one.end(), first.begin(), first.end(),
                               [](const Cell& a, const Cell& b) { return a.symbol == b.symbol; });
           });
  }

  /// Where one line a case has room for all.
  bool table() {
    if (!alike()) return false;
    std::vector<TableColumn> columns{{tr("place"), 0}};
    for (const Cell& cell : cells_.front()) columns.push_back({on_paper(std::string(cell.symbol)), 0, Align::right});
    columns.push_back({on_paper(std::string(group_.front()->symbol)), 0, Align::right});
    const bool limited =
        std::any_of(group_.begin(), group_.end(), [](const Working* w) { return w->limit.has_value(); });
    if (limited) columns.push_back({tr("limit"), 0, Align::right});
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < group_.size(); ++i) {
      TableRow row{place(*group_[i])};
      for (const Cell& cell : cells_[i]) row << cell.text;
      row << result(*group_[i]);
      if (limited) row << limit_of(*group_[i]);
      rows.push_back(row);
    }
    if (!fit(columns, rows)) return false;
    flow_.table(columns, rows);
    return true;
  }

  /// As wide as what stands in them; the names may be broken.
  bool fit(std::vector<TableColumn>& columns, const std::vector<TableRow>& rows) const {
    const FlowStyle style = flow_.style();
    constexpr double least_name = 26, most_name = 60;
    double all = 0;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      double widest = text_width_mm(columns[c].title, style.titles);
      for (const TableRow& row : rows)
        widest = std::max(widest, text_width_mm(row[static_cast<qsizetype>(c)], style.body));
      if (c == 0) widest = std::clamp(widest, least_name, most_name);
      columns[c].share = widest + Flow::cell_gap + 0.2;
      all += columns[c].share;
    }
    const double room = flow_.width_mm();
    const double shrinkable = columns.front().share - (least_name + Flow::cell_gap);
    if (all - std::max(0.0, shrinkable) > room) return false;
    if (all > room) columns.front().share -= all - room;
    const double rest = std::max(0.0, room - all) / static_cast<double>(columns.size());
    for (TableColumn& column : columns) column.share += rest;
    return true;
  }

  void one() {
    const Working& step = *group_.front();
    QStringList words;
    for (const Cell& cell : cells_.front()) words << equals(cell.symbol, cell.text);
    words << equals(step.symbol, result(step));
    if (step.limit && step.limit_source)
      words << text_from(
          say("limit {}, from: {}", limit_of(step).toStdString(), limit_source_text(*step.limit_source)));
    else if (step.limit)
      words << tr("limit %1").arg(limit_of(step));
    const QString all = words.join(QStringLiteral(";  "));
    flow_.paragraph(says_its_place(step.subject) ? QStringLiteral("%1:  %2").arg(place(step), all) : all);
  }

  void lines() {
    for (std::size_t i = 0; i < group_.size(); ++i) {
      const Working& step = *group_[i];
      QStringList parts;
      for (const Cell& cell : cells_[i]) parts << equals(cell.symbol, cell.text);
      QString outcome = equals(step.symbol, result(step));
      if (step.limit) outcome += QStringLiteral(",  ") + tr("limit %1").arg(limit_of(step));
      QStringList words;
      if (!parts.isEmpty()) words << parts.join(QStringLiteral(";  "));
      words << outcome;
      flow_.paragraph(QStringLiteral("%1:  %2").arg(place(step), words.join(QStringLiteral(";  "))));
    }
  }

  Flow& flow_;
  const Sheet& sheet_;
  const CaseGroup& group_;
  std::vector<std::vector<Cell>> cells_;
  QStringList common_, sources_;
};

}  // namespace

QString on_paper(const std::string& text) {
  return text_from(text).replace(QChar(0x2154), QStringLiteral("2/3"));  // the typeface lacks this sign
}

void cases_of(Flow& flow, const Sheet& sheet, const CaseGroup& group) {
  Cases(flow, sheet, group).print();
}

}  // namespace burrow
