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

void short_marks(Paper& paper, const QRectF& box, const Sheet& sheet) {
  const std::vector<Mark>& marks = sheet.assessment.marks;
  if (marks.empty()) return;
  const TextStyle body{small}, bold{small, QFont::DemiBold};
  const std::vector<std::vector<QString>> numbers = numbers_of_marks(sheet);
  const double hose = column_mm(tr("hose at"), numbers[0]), deep = column_mm(tr("deep"), numbers[2]);
  const double words_at = box.left() + hose + deep + 1, words_width = box.right() - words_at;
  double y = box.top();
  paper.rect(QRectF(box.left(), y, box.width(), line_height_mm(bold) + 0.6), QColor(0xec, 0xec, 0xec));
  paper.text({box.left() + 1, y + small}, tr("hose at"), bold);
  paper.text({box.left() + hose + 1, y + small}, tr("deep"), bold);
  paper.text({words_at, y + small}, tr("what comes next"), bold);
  y += line_height_mm(bold) + 1;

  const double line = line_height_mm(body);
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const Mark& mark = marks[i];
    QString words = text_from(mark_in_short(mark, sheet.units));
    if (words.isEmpty() && i + 1 == marks.size()) words = tr("exit pit");
    const bool stops = stops_here(mark);
    const TextStyle style{small, stops ? QFont::Bold : QFont::Normal};
    const QStringList lines = wrapped(words, style, words_width);
    const double height = line * static_cast<double>(std::max<qsizetype>(1, lines.size())) + 0.5;
    const double after = i + 1 < marks.size() ? line : 0;  // for the words that send to the back
    if (y + height + after > box.bottom() + 1e-6) {
      paper.text({box.left() + 1, y + small},
                 tr("The other %n marks are on the back.", nullptr, static_cast<int>(marks.size() - i)), bold);
      return;
    }
    paper.text({box.left() + 1, y + small}, numbers[0][i], style);
    paper.text({box.left() + hose + 1, y + small}, numbers[2][i], style);
    double base = y + small;
    for (const QString& part : lines) {
      if (!part.isEmpty()) paper.text({words_at, base}, part, style);
      base += line;
    }
    y += height;
    paper.line({box.left(), y - 0.15}, {box.right(), y - 0.15}, {0.1, QColor(0xb0, 0xb0, 0xb0)});
  }
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
