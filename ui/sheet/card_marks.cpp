#include "card_marks.h"

#include <QCoreApplication>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/words/run_text.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double small = card_text_mm;

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("card", text, context, n);
}

bool stops_here(const Mark& mark) {
  return std::find(mark.tasks.begin(), mark.tasks.end(), MarkTask::stop_until_exposed) != mark.tasks.end();
}

QString hose_text(const Mark& mark, const Sheet& sheet) {
  return mark.hose_m ? shown(mark.hose_m, Dimension::length, sheet.units) : tr("tool in");
}

/// As wide as the widest of its words in bold, so that nothing runs into the next column in any language.
double column_mm(const QString& title, const std::vector<QString>& words) {
  constexpr double apart = 2.4;
  const TextStyle bold{small, QFont::Bold};
  double width = text_width_mm(title, bold);
  for (const QString& one : words) width = std::max(width, text_width_mm(one, bold));
  return width + apart;
}

/// Hose, nose and depth of each mark, as they stand on the card.
std::vector<std::vector<QString>> numbers_of_marks(const Sheet& sheet) {
  std::vector<std::vector<QString>> columns(3);
  for (const Mark& mark : sheet.assessment.marks) {
    columns[0].push_back(hose_text(mark, sheet));
    columns[1].push_back(shown(mark.nose_m, Dimension::length, sheet.units));
    columns[2].push_back(shown(mark.depth_m, Dimension::length, sheet.units));
  }
  return columns;
}

/// What to do on the first line, what is near on those below.
QString near_and_to_do(const Mark& mark, const Sheet& sheet) {
  QString task = text_from(task_words(mark, sheet.crossing));
  if (!task.isEmpty()) task[0] = task[0].toUpper();
  if (stops_here(mark)) task = tr("STOP.") + QLatin1Char(' ') + task;
  QStringList all;
  if (!task.isEmpty()) all << task;
  for (const MarkNear& near : mark.near) all << QStringLiteral("• ") + text_from(near_words(near, sheet.units));
  return all.join(QLatin1Char('\n'));
}

}  // namespace

namespace {

struct ShortMark {
  QStringList lines;
  TextStyle style;
  double height_mm = 0;
  bool stops = false, shown = false;
};

std::vector<ShortMark> in_short(const Sheet& sheet, double width_mm) {
  const std::vector<Mark>& marks = sheet.assessment.marks;
  std::vector<ShortMark> all;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    QString words = text_from(mark_in_short(marks[i], sheet.units));
    if (words.isEmpty() && i + 1 == marks.size()) words = tr("exit pit");
    ShortMark one;
    one.stops = stops_here(marks[i]);
    one.style = {small, one.stops ? QFont::Bold : QFont::Normal};
    one.lines = wrapped(words, one.style, width_mm);
    one.height_mm = line_height_mm({small}) * static_cast<double>(std::max<qsizetype>(1, one.lines.size())) + 0.5;
    all.push_back(std::move(one));
  }
  return all;
}

/// First the marks at which the tool has to stop, then the others from the launch on, as far as there is room; what is
/// left over needs two lines, which say so.
void choose_shown(std::vector<ShortMark>& marks, double room_mm) {
  double whole = 0;
  for (const ShortMark& one : marks) whole += one.height_mm;
  if (whole > room_mm) room_mm -= 2 * line_height_mm({small});
  for (const bool stops : {true, false})
    for (ShortMark& one : marks) {
      if (one.stops != stops) continue;
      if (one.height_mm > room_mm) break;
      one.shown = true;
      room_mm -= one.height_mm;
    }
}

/// What stands on the back alone: where to stop first.
QString left_over(const std::vector<ShortMark>& marks, const std::vector<QString>& hose) {
  QStringList stops;
  int others = 0;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    if (marks[i].shown) continue;
    if (marks[i].stops)
      stops << hose[i];
    else
      ++others;
  }
  QStringList all;
  if (!stops.isEmpty()) all << tr("STOP also at %1, see the back.").arg(stops.join(QStringLiteral(", ")));
  if (others > 0) all << tr("The other %n marks are on the back.", nullptr, others);
  return all.join(QLatin1Char(' '));
}

}  // namespace

void short_marks(Paper& paper, const QRectF& box, const Sheet& sheet) {
  if (sheet.assessment.marks.empty()) return;
  const TextStyle bold{small, QFont::DemiBold};
  const std::vector<std::vector<QString>> numbers = numbers_of_marks(sheet);
  const double hose = column_mm(tr("hose at"), numbers[0]), deep = column_mm(tr("deep"), numbers[2]);
  const double words_at = box.left() + hose + deep + 1;
  double y = box.top();
  paper.rect(QRectF(box.left(), y, box.width(), line_height_mm(bold) + 0.6), QColor(0xec, 0xec, 0xec));
  paper.text({box.left() + 1, y + small}, tr("hose at"), bold);
  paper.text({box.left() + hose + 1, y + small}, tr("deep"), bold);
  paper.text({words_at, y + small}, tr("what comes next"), bold);
  y += line_height_mm(bold) + 1;

  std::vector<ShortMark> marks = in_short(sheet, box.right() - words_at);
  choose_shown(marks, box.bottom() - y + 1e-6);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const ShortMark& one = marks[i];
    if (!one.shown) continue;
    paper.text({box.left() + 1, y + small}, numbers[0][i], one.style);
    paper.text({box.left() + hose + 1, y + small}, numbers[2][i], one.style);
    double base = y + small;
    for (const QString& part : one.lines) {
      if (!part.isEmpty()) paper.text({words_at, base}, part, one.style);
      base += line_height_mm({small});
    }
    y += one.height_mm;
    paper.line({box.left(), y - 0.15}, {box.right(), y - 0.15}, {0.1, QColor(0xb0, 0xb0, 0xb0)});
  }
  paper.paragraph(QRectF(box.left() + 1, y, box.width() - 1, 30), left_over(marks, numbers[0]), {small, QFont::Bold});
}

void marks_in_full(Flow& flow, const Sheet& sheet, double width_mm) {
  if (sheet.assessment.marks.empty()) return;
  flow.heading(tr("Marks of the hose"));
  std::vector<TableRow> rows;
  std::vector<bool> bold;
  const std::vector<std::vector<QString>> numbers = numbers_of_marks(sheet);
  for (std::size_t i = 0; i < sheet.assessment.marks.size(); ++i) {
    const Mark& mark = sheet.assessment.marks[i];
    rows.push_back({numbers[0][i], numbers[1][i], numbers[2][i], near_and_to_do(mark, sheet)});
    bold.push_back(stops_here(mark));
  }
  const double hose = column_mm(tr("hose"), numbers[0]), nose = column_mm(tr("nose"), numbers[1]),
               deep = column_mm(tr("deep"), numbers[2]);
  flow.table({{tr("hose"), hose},
              {tr("nose"), nose},
              {tr("deep"), deep},
              {tr("to do; what is near"), width_mm - hose - nose - deep}},
             rows, bold);
}

}  // namespace burrow
