/// What lies over the imported plan: the scale with north, the legend, the layer that is chosen, the crossing line.

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "burrow/window/import_preview.h"
#include "burrow/window/layer_choices.h"

namespace burrow {

/// A round length, so that a wrong unit shows at once.
void ImportPreview::draw_scale(QPainter& painter) const {
  if (!files_ || files_->empty()) return;
  const double pixels_per_shown = pixels_per_unit_ / metres_per_unit() * (units_ == UnitSystem::us ? 0.3048 : 1.0);
  const double wanted = 110 / pixels_per_shown;
  const double power = std::pow(10, std::floor(std::log10(wanted)));
  const double round = wanted >= 5 * power ? 5 * power : wanted >= 2 * power ? 2 * power : power;
  const QPointF from(14, height() - 14), to = from + QPointF(round * pixels_per_shown, 0);
  painter.setPen(QPen(theme_.ink, 2));
  painter.drawPolyline(QPolygonF{{from - QPointF(0, 6), from, to, to - QPointF(0, 6)}});
  painter.setFont(drawing_font(12));
  const QString unit = units_ == UnitSystem::us ? QStringLiteral("ft") : QStringLiteral("m");
  painter.drawText(from + QPointF(4, -8), QStringLiteral("%1 %2").arg(round).arg(unit));
  painter.drawText(QPointF(width() - 24, 20), tr("N"));
  const QPointF tip(width() - 19, 26);
  painter.drawLine(tip, tip + QPointF(0, 22));
  painter.drawPolyline(QPolygonF{{tip + QPointF(-4, 7), tip, tip + QPointF(4, 7)}});
}

std::vector<ImportPreview::LegendRow> ImportPreview::legend() const {
  std::vector<LegendRow> rows;
  for (const auto& [meaning, word] : EnumNames<Meaning>::list)
    if (meaning != Meaning::not_used) rows.push_back({meaning, 0});
  const auto add = [&](Meaning meaning, std::size_t count) {
    for (LegendRow& row : rows)
      if (row.meaning == meaning) row.count += count;
  };
  if (files_)
    for (const ImportFile& file : *files_) {
      const std::vector<LayerSummary> layers = summaries(*file.found);
      for (std::size_t i = 0; i < layers.size(); ++i) {
        const LayerSummary& layer = layers[i];
        add(file.layers[i].meaning,
            layer.points - layer.texts + layer.lines + layer.areas + layer.faces + layer.rasters);
      }
    }
  std::erase_if(rows, [](const LegendRow& row) { return row.count == 0; });
  return rows;
}

void ImportPreview::draw_legend(QPainter& painter) const {
  const std::vector<LegendRow> rows = legend();
  if (rows.empty()) return;
  painter.setFont(drawing_font(12));
  QStringList texts;
  int wide = 0;
  for (const LegendRow& row : rows) {
    texts << meaning_name(row.meaning, tables_) + QStringLiteral(" · %1").arg(row.count);
    wide = std::max(wide, painter.fontMetrics().horizontalAdvance(texts.back()));
  }
  const int line = painter.fontMetrics().height() + 2;
  const QRect box(10, 10, wide + 34, line * static_cast<int>(rows.size()) + 8);
  QColor paper = theme_.paper;
  paper.setAlpha(220);
  painter.fillRect(box, paper);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const int top = box.top() + 4 + line * static_cast<int>(i);
    painter.fillRect(box.left() + 6, top + line / 2 - 4, 14, 7, meaning_colour(rows[i].meaning, theme_, tables_));
    painter.setPen(theme_.ink);
    painter.drawText(QRect(box.left() + 26, top, wide + 4, line), Qt::AlignVCenter | Qt::AlignLeft,
                     texts[static_cast<qsizetype>(i)]);
  }
}

void ImportPreview::set_highlight(const std::optional<std::pair<std::size_t, std::uint32_t>>& layer) {
  if (highlight_ == layer) return;
  highlight_ = layer;
  refresh();
}

/// The layer that is chosen in the table, where it lies.
void ImportPreview::draw_highlight(QPainter& painter) const {
  if (!highlight_ || !files_ || highlight_->first >= files_->size()) return;
  const ImportFile& file = (*files_)[highlight_->first];
  const Found& found = drawn_of(file);
  const double units = units_of_first(file);
  const QRectF view = QRectF(rect()).adjusted(-8, -8, 8, 8);
  QColor soft = theme_.focus;
  soft.setAlpha(150);
  painter.setPen(QPen(soft, 5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  const auto on_screen = [&](double x, double y) { return to_screen({x * units, y * units}); };
  for (const FoundFeature& f : found.features) {
    if (f.layer != highlight_->second) continue;
    QPolygonF line;
    for (std::size_t i = f.first; i < f.first + f.count; ++i) {
      const QPointF at = on_screen(found.vertices[i].x_m, found.vertices[i].y_m);
      if (line.isEmpty() || i + 1 == f.first + f.count || (at - line.back()).manhattanLength() > 1) line << at;
    }
    if (!line.boundingRect().adjusted(-1, -1, 1, 1).intersects(view)) continue;
    if (f.shape == Shape::area) line << line.front();
    if (f.shape == Shape::point)
      painter.drawEllipse(line.front(), 4, 4);
    else
      painter.drawPolyline(line);
  }
  for (const FoundSurface& surface : found.surfaces) {
    if (surface.layer != highlight_->second) continue;
    QRectF box;
    for (const Point3& p : surface.points) {
      const QPointF at = on_screen(p.x_m, p.y_m);
      box = box.isNull() ? QRectF(at, QSizeF(1e-6, 1e-6)) : box.united(QRectF(at, QSizeF(1e-6, 1e-6)));
    }
    painter.drawRect(box);
  }
}

void ImportPreview::draw_line(QPainter& painter) const {
  std::optional<CrossingLine> line = line_;
  if (first_) line = CrossingLine{*first_, to_plan(pointer_)};
  if (!line) return;
  const QPointF a = to_screen(line->launch), b = to_screen(line->exit);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme_.paper, 6));
  painter.drawLine(a, b);
  painter.setPen(QPen(theme_.focus, 3, first_ ? Qt::DashLine : Qt::SolidLine));
  painter.drawLine(a, b);
  painter.setBrush(theme_.paper);
  painter.drawEllipse(a, 5, 5);
  painter.setBrush(theme_.focus);
  painter.drawEllipse(b, 5, 5);
  painter.setFont(drawing_font(12, QFont::DemiBold));
  const auto label = [&](const QPointF& at, const QString& text) {
    const QRectF box = painter.fontMetrics().boundingRect(text).translated((at + QPointF(9, -8)).toPoint());
    painter.fillRect(box.adjusted(-3, -1, 3, 1), theme_.paper);
    painter.setPen(theme_.ink);
    painter.drawText(at + QPointF(9, -8), text);
  };
  label(a, tr("launch"));
  if (!first_) label(b, tr("exit"));
}

}  // namespace burrow
