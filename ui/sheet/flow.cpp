#include "flow.h"

#include <algorithm>

namespace burrow {

void Flow::next() {
  if (waiting_.empty()) waiting_ = more_();
  area_ = waiting_.front();
  waiting_.erase(waiting_.begin());
  y_ = area_.box.top();
}

void Flow::keep(double height_mm) {
  if (!area_.page) next();
  if (left() >= height_mm) return;
  if (y_ > area_.box.top() + 1e-6) next();
}

void Flow::heading(const QString& words) {
  const TextStyle& heads = style_.heads;
  keep(22);  // with the beginning of what follows
  if (y_ > area_.box.top() + 1e-6) y_ += 2;
  Paper paper(*area_.page);
  for (const QString& line : wrapped(words, heads, area_.box.width())) {
    paper.text({area_.box.left(), y_ + heads.size_mm}, line, heads);
    y_ += line_height_mm(heads);
  }
  y_ += 1;
}

double Flow::width_mm() {
  if (!area_.page) next();
  return area_.box.width();
}

void Flow::lines_of(const QString& words, const TextStyle& style, double indent_mm) {
  if (!area_.page) next();
  for (const QString& line : wrapped(words, style, area_.box.width() - indent_mm)) {
    keep(line_height_mm(style));
    Paper(*area_.page).text({area_.box.left() + indent_mm, y_ + style.size_mm}, line, style);
    y_ += line_height_mm(style);
  }
  y_ += 0.8;
}

void Flow::paragraph(const QString& words) {
  lines_of(words, style_.body, 0);
}

void Flow::formula(const QString& words) {
  TextStyle style = style_.body;
  style.weight = QFont::DemiBold;
  keep(4 * line_height_mm(style));
  lines_of(words, style, 3);
}

void Flow::table_titles(const std::vector<TableColumn>& columns, const std::vector<double>& widths) {
  const TextStyle& titles = style_.titles;
  Paper paper(*area_.page);
  std::size_t tall = 1;
  for (std::size_t c = 0; c < columns.size(); ++c)
    tall = std::max(tall, static_cast<std::size_t>(wrapped(columns[c].title, titles, widths[c] - cell_gap).size()));
  const double height = static_cast<double>(tall) * line_height_mm(titles) + 1;
  paper.rect(QRectF(area_.box.left(), y_, area_.box.width(), height), QColor(0xec, 0xec, 0xec));
  double x = area_.box.left();
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double y = y_ + 0.3 + titles.size_mm;
    const double at = columns[c].align == Align::right ? x + widths[c] - cell_gap / 2 : x + cell_gap / 2;
    for (const QString& line : wrapped(columns[c].title, titles, widths[c] - cell_gap)) {
      paper.text({at, y}, line, titles, columns[c].align);
      y += line_height_mm(titles);
    }
    x += widths[c];
  }
  y_ += height + 0.4;
}

void Flow::table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows,
                 const std::vector<bool>& bold) {
  const TextStyle plain = style_.body;
  TextStyle strong = plain;
  strong.weight = QFont::Bold;
  const auto style_of = [&](std::size_t row) { return row < bold.size() && bold[row] ? strong : plain; };
  if (!area_.page) next();
  double shares = 0;
  for (const TableColumn& c : columns) shares += c.share;
  const auto widths_here = [&] {
    std::vector<double> widths;
    for (const TableColumn& c : columns) widths.push_back(area_.box.width() * c.share / shares);
    return widths;
  };
  // Titles alone at the foot of an area would head nothing.
  double least = 14;
  if (!rows.empty()) {
    const std::vector<double> widths = widths_here();
    qsizetype titles = 1, first = 1;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      const double width = widths[c] - cell_gap;
      titles = std::max(titles, wrapped(columns[c].title, style_.titles, width).size());
      if (static_cast<qsizetype>(c) < rows.front().size())
        first = std::max(first, wrapped(rows.front()[static_cast<qsizetype>(c)], style_of(0), width).size());
    }
    least = static_cast<double>(titles) * line_height_mm(style_.titles) +
            static_cast<double>(first) * line_height_mm(plain) + 3;
  }
  keep(std::min(std::max(least, 14.0), area_.box.height() / 2));
  table_titles(columns, widths_here());
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const TableRow& row = rows[r];
    const TextStyle body = style_of(r);
    std::vector<double> widths = widths_here();
    std::vector<QStringList> cells;
    qsizetype tall = 1;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      const QString words = c < static_cast<std::size_t>(row.size()) ? row[static_cast<qsizetype>(c)] : QString();
      cells.push_back(wrapped(words, body, widths[c] - cell_gap));
      tall = std::max(tall, cells.back().size());
    }
    const double height = static_cast<double>(tall) * line_height_mm(body) + 0.8;
    if (left() < std::min(height, area_.box.height() / 2)) {
      next();
      table_titles(columns, widths_here());
    }
    for (qsizetype k = 0; k < tall; ++k) {
      if (left() < line_height_mm(body)) {
        next();
        table_titles(columns, widths_here());
      }
      Paper paper(*area_.page);
      double x = area_.box.left();
      for (std::size_t c = 0; c < columns.size(); ++c) {
        const double at = columns[c].align == Align::right ? x + widths[c] - cell_gap / 2 : x + cell_gap / 2;
        if (k < cells[c].size()) paper.text({at, y_ + body.size_mm}, cells[c][k], body, columns[c].align);
        x += widths[c];
      }
      y_ += line_height_mm(body);
    }
    y_ += 0.5;
    Paper(*area_.page).line({area_.box.left(), y_}, {area_.box.right(), y_}, {0.1, QColor(0xb0, 0xb0, 0xb0)});
    y_ += 0.3;
  }
  y_ += 2;
}

void Flow::block(const QString& title, const QStringList& lines) {
  if (!area_.page) next();
  const TextStyle& first = style_.block;
  const TextStyle& body = style_.body;
  QStringList all;
  for (const QString& line : lines) all << wrapped(line, body, area_.box.width() - 3);
  const QStringList top = wrapped(title, first, area_.box.width());
  const double height =
      static_cast<double>(top.size()) * line_height_mm(first) + static_cast<double>(all.size()) * line_height_mm(body);
  keep(std::min(height, area_.box.height() / 2));
  for (const QString& line : top) {
    keep(line_height_mm(first));
    Paper(*area_.page).text({area_.box.left(), y_ + first.size_mm}, line, first);
    y_ += line_height_mm(first);
  }
  for (const QString& line : all) {
    keep(line_height_mm(body));
    Paper(*area_.page).text({area_.box.left() + 3, y_ + body.size_mm}, line, body);
    y_ += line_height_mm(body);
  }
  y_ += 1.6;
}

Flow::Area Flow::room(double height_mm) {
  keep(height_mm);
  const QRectF box(area_.box.left(), y_, area_.box.width(), height_mm);
  y_ += height_mm + 1;
  return {area_.page, box};
}

void Flow::to_fill_in(const QStringList& words) {
  const TextStyle& body = style_.body;
  const double height = 1.7 * line_height_mm(body);
  for (const QString& line : words) {
    keep(height);
    Paper paper(*area_.page);
    const double base = y_ + height - 1;
    const QRectF box = paper.text({area_.box.left(), base}, line, body);
    paper.line({box.right() + 1.5, base + 0.5}, {area_.box.right(), base + 0.5}, {0.2});
    y_ += height;
  }
  y_ += 1;
}

}  // namespace burrow
