#include "card_marks.h"

#include <QCoreApplication>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/words/run_text.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double small = card_text_mm, large = 14 * 25.4 / 72;
const TextStyle titles_style{small, QFont::DemiBold}, left_style{large, QFont::Bold}, rest_style{small, QFont::Bold};

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("card", text, context, n);
}

bool has(const Mark& mark, MarkTask task) {
  return std::find(mark.tasks.begin(), mark.tasks.end(), task) != mark.tasks.end();
}

/// Where the tool stops until something is exposed, or somebody looks into a test hole.
bool stops_here(const Mark& mark) {
  return has(mark, MarkTask::stop_until_exposed) || has(mark, MarkTask::look);
}

/// As wide as the widest of its words in bold, so that nothing runs into the next column in any language.
double column_mm(const QString& title, double widest) {
  constexpr double apart = 2.4;
  return std::max(widest, text_width_mm(title, {small, QFont::Bold})) + apart;
}

double title_height() {
  return line_height_mm(titles_style) + 1;
}

}  // namespace

CardMarks::CardMarks(const Sheet& sheet, double width_mm) {
  const std::vector<Mark>& marks = sheet.assessment.marks;
  const TextStyle bold{small, QFont::Bold};
  double hose = 0, deep = 0;
  for (const Mark& mark : marks) {
    Row row;
    row.hose = mark.hose_m ? shown(mark.hose_m, Dimension::length, sheet.units) : tr("tool in");
    row.deep = shown(mark.depth_m, Dimension::length, sheet.units);
    row.stops = stops_here(mark);
    hose = std::max(hose, text_width_mm(row.hose, bold));
    deep = std::max(deep, text_width_mm(row.deep, bold));
    rows_.push_back(std::move(row));
  }
  hose_mm_ = column_mm(tr("hose at"), hose);
  deep_mm_ = column_mm(tr("deep"), deep);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    Row& row = rows_[i];
    QString words = text_from(mark_in_short(marks[i], sheet.units));
    if (words.isEmpty() && i + 1 == marks.size()) words = tr("exit pit");
    row.style = {small, has(marks[i], MarkTask::stop_until_exposed) ? QFont::Bold : QFont::Normal};
    row.lines = wrapped(words, row.style, width_mm - hose_mm_ - deep_mm_ - 1);
    row.height_mm = line_height_mm({small}) * static_cast<double>(std::max<qsizetype>(1, row.lines.size())) + 0.5;
  }
}

bool CardMarks::done() const {
  return std::all_of(rows_.begin(), rows_.end(), [](const Row& row) { return row.drawn; });
}

double CardMarks::height_left() const {
  double height = 0;
  for (const Row& row : rows_)
    if (!row.drawn) height += row.height_mm;
  return height > 0 ? height + title_height() : 0;
}

double CardMarks::titles(Paper& paper, const QRectF& box) const {
  const double y = box.top();
  paper.rect(QRectF(box.left(), y, box.width(), line_height_mm(titles_style) + 0.6), QColor(0xec, 0xec, 0xec));
  paper.text({box.left() + 1, y + small}, tr("hose at"), titles_style);
  paper.text({box.left() + hose_mm_ + 1, y + small}, tr("deep"), titles_style);
  paper.text({box.left() + hose_mm_ + deep_mm_ + 1, y + small}, tr("what comes next"), titles_style);
  return y + title_height();
}

double CardMarks::draw(Paper& paper, const QRectF& box, double y, Row& row) const {
  row.drawn = true;
  paper.text({box.left() + 1, y + small}, row.hose, row.style);
  paper.text({box.left() + hose_mm_ + 1, y + small}, row.deep, row.style);
  double base = y + small;
  for (const QString& line : row.lines) {
    if (!line.isEmpty()) paper.text({box.left() + hose_mm_ + deep_mm_ + 1, base}, line, row.style);
    base += line_height_mm({small});
  }
  y += row.height_mm;
  paper.line({box.left(), y - 0.15}, {box.right(), y - 0.15}, {0.1, QColor(0xb0, 0xb0, 0xb0)});
  return y;
}

QString CardMarks::stops_left() const {
  QStringList stops;
  for (const Row& row : rows_)
    if (!row.drawn && row.stops) stops << row.hose;
  return stops.isEmpty() ? QString() : tr("STOP also at %1: see the back.").arg(stops.join(QStringLiteral(", ")));
}

int CardMarks::others_left() const {
  return static_cast<int>(
      std::count_if(rows_.begin(), rows_.end(), [](const Row& row) { return !row.drawn && !row.stops; }));
}

double CardMarks::front(Paper& paper, const QRectF& box) {
  if (rows_.empty()) return box.top();
  const double top = box.top() + title_height();
  double whole = 0;
  for (const Row& row : rows_) whole += row.height_mm;
  double room = box.bottom() - top + 1e-6;
  const bool all = whole <= room;
  // What is left over is named in large type; its lines are reckoned with all stops, the most that they can be.
  if (!all)
    room -=
        static_cast<double>(wrapped(stops_left(), left_style, box.width() - 1).size()) * line_height_mm(left_style) +
        line_height_mm(rest_style);
  std::vector<bool> chosen(rows_.size(), all);
  for (const bool stops : {true, false})
    for (std::size_t i = 0; i < rows_.size() && !all; ++i) {
      if (rows_[i].stops != stops) continue;
      if (rows_[i].height_mm > room) break;
      chosen[i] = true;
      room -= rows_[i].height_mm;
    }
  double y = titles(paper, box);
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (chosen[i]) y = draw(paper, box, y, rows_[i]);
  if (const QString left = stops_left(); !left.isEmpty())
    y += paper.paragraph(QRectF(box.left() + 1, y, box.width() - 1, 60), left, left_style);
  if (const int others = others_left(); others > 0)
    y += paper.paragraph(QRectF(box.left() + 1, y, box.width() - 1, 30),
                         tr("The other %n marks are on the back.", nullptr, others), rest_style);
  return y;
}

double CardMarks::more(Paper& paper, const QRectF& box) {
  if (done()) return box.top();
  double y = titles(paper, box);
  for (Row& row : rows_) {
    if (row.drawn) continue;
    // A row of a hundred names is longer than a side; it is drawn all the same, as the first of one.
    if (y + row.height_mm > box.bottom() + 1e-6 && y > box.top() + title_height() + 1e-6) break;
    y = draw(paper, box, y, row);
  }
  return y;
}

}  // namespace burrow
