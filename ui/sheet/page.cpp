#include "burrow/sheet/page.h"

#include <QFontMetricsF>
#include <QTransform>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/theme.h"

namespace burrow {

namespace {
constexpr double em = 100;
constexpr double above_base = 0.78, below_base = 0.24;

const QFontMetricsF& metrics_of(QFont::Weight weight) {
  static const QFontMetricsF normal(paper_font(QFont::Normal)), demi(paper_font(QFont::DemiBold)),
      bold(paper_font(QFont::Bold));
  return weight >= QFont::Bold ? bold : weight >= QFont::DemiBold ? demi : normal;
}

/// On white: PDF/A-1 knows no transparency, and a print in grey should look as the screen does.
QColor opaque(const QColor& colour) {
  if (!colour.isValid() || colour.alpha() == 255) return colour;
  const double share = colour.alphaF();
  const auto mixed = [&](int channel) { return static_cast<int>(std::lround(255 - share * (255 - channel))); };
  return {mixed(colour.red()), mixed(colour.green()), mixed(colour.blue())};
}

QPointF left_end(const QPointF& at, double width, Align align, double rotated_deg) {
  const double back = align == Align::left ? 0 : align == Align::centre ? width / 2 : width;
  const double turn = rotated_deg * 3.14159265358979323846 / 180;
  return at - QPointF(back * std::cos(turn), -back * std::sin(turn));
}

}  // namespace

QFont paper_font(QFont::Weight weight) {
  QFont font = drawing_font(em, weight);
  font.setHintingPreference(QFont::PreferNoHinting);
  font.setKerning(true);
  return font;
}

double text_width_mm(const QString& words, const TextStyle& style) {
  return metrics_of(style.weight).horizontalAdvance(words) * style.size_mm / em;
}

QRectF text_box(const QPointF& at, const QString& words, const TextStyle& style, Align align, double rotated_deg) {
  const double width = text_width_mm(words, style);
  const QPointF left = left_end(at, width, align, rotated_deg);
  const QRectF flat(0, -above_base * style.size_mm, width, (above_base + below_base) * style.size_mm);
  return QTransform().translate(left.x(), left.y()).rotate(-rotated_deg).mapRect(flat);
}

QString cut_to(const QString& words, const TextStyle& style, double width_mm) {
  if (text_width_mm(words, style) <= width_mm) return words;
  QString cut = words;
  while (!cut.isEmpty() && text_width_mm(cut + QChar(0x2026), style) > width_mm) cut.chop(1);
  return cut.trimmed() + QChar(0x2026);
}

QStringList wrapped(const QString& words, const TextStyle& style, double width_mm) {
  QStringList lines;
  for (const QString& given : words.split(QLatin1Char('\n'))) {
    QString line;
    for (QString word : given.split(QLatin1Char(' '))) {
      const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
      if (text_width_mm(longer, style) <= width_mm) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) lines << line;
      while (word.size() > 1 && text_width_mm(word, style) > width_mm) {
        qsizetype keep = word.size() - 1;
        while (keep > 1 && text_width_mm(word.left(keep), style) > width_mm) --keep;
        lines << word.left(keep);
        word = word.mid(keep);
      }
      line = word;
    }
    lines << line;
  }
  return lines;
}

void Paper::line(const QPolygonF& points, const Stroke& stroke) {
  if (points.size() < 2) return;
  PageItem item;
  item.points = points;
  item.stroke = stroke;
  item.stroke.colour = opaque(stroke.colour);
  item.clip = clip_;
  page_.items.push_back(std::move(item));
}

void Paper::area(const QPolygonF& points, const QColor& fill, const Stroke& stroke) {
  if (points.size() < 3) return;
  PageItem item;
  item.kind = PageItemKind::area;
  item.points = points;
  item.fill = opaque(fill);
  item.stroke = stroke;
  item.stroke.colour = opaque(stroke.colour);
  item.clip = clip_;
  page_.items.push_back(std::move(item));
}

void Paper::rect(const QRectF& r, const QColor& fill, const Stroke& stroke) {
  area(QPolygonF{r.topLeft(), r.topRight(), r.bottomRight(), r.bottomLeft()}, fill, stroke);
}

void Paper::circle(const QPointF& middle, double radius_mm, const QColor& fill, const Stroke& stroke) {
  constexpr int corners = 48;
  QPolygonF ring;
  for (int i = 0; i < corners; ++i) {
    const double turn = 2 * 3.14159265358979323846 * i / corners;
    ring << middle + radius_mm * QPointF(std::cos(turn), std::sin(turn));
  }
  area(ring, fill, stroke);
}

QRectF Paper::text(const QPointF& at, const QString& words, const TextStyle& style, Align align, double rotated_deg) {
  if (words.trimmed().isEmpty()) return {};
  PageItem item;
  item.kind = PageItemKind::text;
  item.points = QPolygonF{left_end(at, text_width_mm(words, style), align, rotated_deg)};
  item.text = words;
  item.style = style;
  item.style.colour = opaque(style.colour);
  item.rotated_deg = rotated_deg;
  item.box = text_box(at, words, style, align, rotated_deg);
  item.clip = clip_;
  page_.items.push_back(item);
  return item.box;
}

QRectF Paper::short_text(const QPointF& at, const QString& words, const TextStyle& style, double width_mm,
                         Align align) {
  return text(at, cut_to(words, style, width_mm), style, align);
}

double Paper::paragraph(const QRectF& box, const QString& words, const TextStyle& style) {
  double y = box.top();
  for (const QString& line : wrapped(words, style, box.width())) {
    text({box.left(), y + style.size_mm}, line, style);
    y += line_height_mm(style);
  }
  return y - box.top();
}

bool Places::free(const QRectF& box) const {
  return within_.contains(box) &&
         std::none_of(taken_.begin(), taken_.end(), [&](const QRectF& other) { return other.intersects(box); });
}

bool Places::label(Paper& paper, const std::vector<QPointF>& candidates, const QString& words, const TextStyle& style,
                   Align align, bool halo) {
  for (const QPointF& at : candidates) {
    const QRectF box = text_box(at, words, style, align);
    const QRectF room = box.adjusted(-0.4, -0.2, 0.4, 0.2);
    if (!free(room)) continue;
    if (halo) paper.rect(room, QColor(255, 255, 255, 215));
    paper.text(at, words, style, align);
    take(room);
    return true;
  }
  return false;
}

}  // namespace burrow
