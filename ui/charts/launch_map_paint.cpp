/// How the map of launches is painted.

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

#include "burrow/charts/launch_map_view.h"
#include "burrow/document/text.h"

namespace burrow {

namespace {

QColor mixed(const QColor& a, const QColor& b, double share_of_a) {
  const auto one = [&](double x, double y) { return static_cast<float>(share_of_a * x + (1 - share_of_a) * y); };
  return QColor::fromRgbF(one(a.redF(), b.redF()), one(a.greenF(), b.greenF()), one(a.blueF(), b.blueF()));
}

/// How strongly the colour of a region is laid on.
double strength(Verdict verdict) {
  return verdict == Verdict::stop ? 0.78 : verdict == Verdict::caution ? 0.42 : 0.16;
}

/// For each cell how many cells it lies from another region or from the rim (city-block distance).
std::vector<int> depths_inside(const std::vector<int>& region, int width, int height) {
  std::vector<int> depth(region.size(), 0);
  const auto i = [width](int x, int y) {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x);
  };
  const auto look = [&](int x, int y, int dx, int dy) {
    const int nx = x + dx, ny = y + dy;
    if (nx < 0 || ny < 0 || nx >= width || ny >= height || region[i(nx, ny)] != region[i(x, y)]) return 0;
    return depth[i(nx, ny)];
  };
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) depth[i(x, y)] = 1 + std::min(look(x, y, -1, 0), look(x, y, 0, -1));
  for (int y = height - 1; y >= 0; --y)
    for (int x = width - 1; x >= 0; --x)
      depth[i(x, y)] = std::min(depth[i(x, y)], 1 + std::min(look(x, y, 1, 0), look(x, y, 0, 1)));
  return depth;
}

void halo_text(QPainter& painter, const QPointF& middle, const QString& text, const QColor& ink, const QColor& halo) {
  QPainterPath path;
  path.addText(0, 0, painter.font(), text);
  path.translate(middle - path.boundingRect().center());
  painter.strokePath(path, QPen(halo, 3.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.fillPath(path, ink);
}

}  // namespace

void LaunchMapView::paint_cells(QPainter& painter) const {
  painter.setRenderHint(QPainter::Antialiasing, false);
  for (int row = 0; row < map_->down.count; ++row)
    for (int column = 0; column < map_->across.count; ++column) {
      const LaunchCell& cell = map_->cell(column, row);
      const int region = region_of(cell);
      const QColor base =
          region < 0
              ? theme_.ink_soft
              : regions_[static_cast<std::size_t>(std::min<int>(region, static_cast<int>(regions_.size()) - 1))].colour;
      const QRect room = cell_rect(column, row).toAlignedRect();
      painter.fillRect(room, mixed(base, theme_.paper, strength(cell.verdict)));
      if (cell.verdict == Verdict::stop) {
        QColor hatch = theme_.paper;
        hatch.setAlpha(90);
        painter.fillRect(room, QBrush(hatch, Qt::BDiagPattern));
      } else if (cell.missing > 0) {
        QColor dots = theme_.ink;
        dots.setAlpha(120);
        painter.fillRect(room, QBrush(dots, Qt::Dense7Pattern));
      }
    }
}

void LaunchMapView::paint_borders(QPainter& painter) const {
  QColor thin = theme_.ink;
  thin.setAlpha(110);
  const QPen region_pen(thin, 1), caution_pen(theme_.ink, 1.6, Qt::SolidLine, Qt::FlatCap),
      works_pen(theme_.ink, 3, Qt::SolidLine, Qt::SquareCap);
  const auto between = [&](const LaunchCell& a, const LaunchCell& b) -> const QPen* {
    if ((a.verdict == Verdict::stop) != (b.verdict == Verdict::stop)) return &works_pen;
    if (a.verdict != b.verdict) return &caution_pen;
    return region_of(a) != region_of(b) ? &region_pen : nullptr;
  };
  for (const QPen* pass : {&region_pen, &caution_pen, &works_pen}) {
    painter.setPen(*pass);
    QPainterPath path;
    for (int row = 0; row < map_->down.count; ++row)
      for (int column = 0; column < map_->across.count; ++column) {
        const QRectF room = cell_rect(column, row);
        const LaunchCell& cell = map_->cell(column, row);
        if (pass == &caution_pen && (column + row) % 2) continue;  // dashed: every other edge
        if (column + 1 < map_->across.count && between(cell, map_->cell(column + 1, row)) == pass) {
          path.moveTo(room.topRight());
          path.lineTo(room.bottomRight());
        }
        if (row + 1 < map_->down.count && between(cell, map_->cell(column, row + 1)) == pass) {
          path.moveTo(upward() ? room.topLeft() : room.bottomLeft());
          path.lineTo(upward() ? room.topRight() : room.bottomRight());
        }
      }
    painter.drawPath(path);
  }
}

void LaunchMapView::paint_letters(QPainter& painter) const {
  std::vector<int> region(map_->cells.size());
  for (std::size_t i = 0; i < region.size(); ++i) region[i] = region_of(map_->cells[i]);
  const int width = map_->across.count;
  const std::vector<int> depth = depths_inside(region, width, map_->down.count);
  QFont bold = font();
  bold.setBold(true);
  painter.setFont(bold);
  for (std::size_t r = 0; r < regions_.size(); ++r) {
    std::size_t deepest = 0;
    int most = 0;
    for (std::size_t i = 0; i < region.size(); ++i)
      if (region[i] == static_cast<int>(r) && depth[i] > most) {
        most = depth[i];
        deepest = i;
      }
    const QRectF room = cell_rect(static_cast<int>(deepest) % width, static_cast<int>(deepest) / width);
    if (most == 0 || most * std::min(room.width(), room.height()) < fontMetrics().height() * 0.5) continue;
    halo_text(painter, room.center(), regions_[r].letter, theme_.ink, theme_.paper);
  }
}

std::vector<LaunchMapView::Tick> LaunchMapView::ticks(const MapAxis& axis, Dimension dimension, double room_px,
                                                      double text_px) const {
  std::vector<Tick> all;
  const auto say = [&](double value) {
    QString text = text_from(format(value, dimension, units_));
    all.push_back({value, text});
  };
  if (!(axis.to > axis.from)) {
    say(axis.from);
    return all;
  }
  const bool feet = units_ == UnitSystem::us && dimension != Dimension::grade;
  const double unit = feet ? 0.3048 : dimension == Dimension::grade ? 0.01 : 1.0;
  const double most = std::max(2.0, room_px / (text_px * 1.1)), low = axis.from / unit, high = axis.to / unit;
  double step = 1;
  for (const double candidate : {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    step = candidate;
    if (std::floor(high / step + 1e-9) - std::ceil(low / step - 1e-9) + 1 <= most) break;
  }
  for (double n = std::ceil(axis.from / unit / step - 1e-9); n * step * unit <= axis.to + 1e-9; ++n)
    say(n * step * unit);
  return all;
}

void LaunchMapView::paint_axes(QPainter& painter) const {
  const QFontMetricsF metrics(font());
  painter.setFont(font());
  painter.setPen(QPen(theme_.ink, 1));
  painter.drawRect(plot_);
  const Dimension down = upward() ? Dimension::station : Dimension::length,
                  across = upward() ? Dimension::station : Dimension::grade;
  for (const Tick& tick : ticks(map_->down, down, plot_.height(), metrics.height())) {
    const double y = at({map_->across.from, tick.value}).y();
    painter.drawLine(QPointF(plot_.left() - 4, y), QPointF(plot_.left(), y));
    painter.drawText(QRectF(0, y - metrics.height(), plot_.left() - 7, 2 * metrics.height()),
                     Qt::AlignRight | Qt::AlignVCenter, tick.text);
  }
  const double widest = metrics.horizontalAdvance(QStringLiteral("−10.00 %"));
  for (const Tick& tick : ticks(map_->across, across, plot_.width(), widest)) {
    const double x = at({tick.value, map_->down.from}).x();
    painter.drawLine(QPointF(x, plot_.bottom()), QPointF(x, plot_.bottom() + 4));
    const double wide = metrics.horizontalAdvance(tick.text);
    const double left = std::clamp(x - wide / 2, 0.0, width() - wide);
    painter.drawText(QRectF(left, plot_.bottom() + 5, wide + 2, metrics.height()), Qt::AlignLeft, tick.text);
  }
  painter.setPen(theme_.ink_soft);
  painter.drawText(QRectF(plot_.left(), plot_.bottom() + 5 + metrics.height(), plot_.width(), metrics.height() + 2),
                   Qt::AlignHCenter | Qt::AlignTop,
                   upward() ? tr("station of the launch face") : tr("grade, rising to the right"));
  painter.save();
  painter.translate(metrics.height() * 0.55, plot_.center().y());
  painter.rotate(-90);
  painter.drawText(QRectF(-plot_.height() / 2, -metrics.height() * 0.6, plot_.height(), metrics.height() * 1.2),
                   Qt::AlignCenter, upward() ? tr("offset, left is up") : tr("depth of the axis at the launch"));
  painter.restore();
}

void LaunchMapView::paint_marks(QPainter& painter) const {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setBrush(Qt::NoBrush);
  if (map_->best) {
    const QPointF best = at(map_->best->place);
    painter.setPen(QPen(theme_.paper, 5));
    painter.drawEllipse(best, 9, 9);
    painter.setPen(QPen(theme_.ink, 2.4));
    painter.drawEllipse(best, 9, 9);
  }
  const QPointF here = at(here_);
  const QRectF room = plot_.adjusted(-1, -1, 1, 1);
  if (room.contains(here)) {
    painter.setPen(QPen(theme_.paper, 2));
    painter.setBrush(theme_.ink);
    painter.drawEllipse(here, 6, 6);
  }
}

void LaunchMapView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.panel);
  if (!map_ || map_->cells.empty()) {
    painter.fillRect(plot_, theme_.paper);
    painter.setPen(theme_.ink_soft);
    painter.drawText(plot_, Qt::AlignCenter | Qt::TextWordWrap, tr("The map comes in a moment."));
    return;
  }
  if (kept_.isNull()) {
    kept_ = QPixmap(size() * devicePixelRatioF());
    kept_.setDevicePixelRatio(devicePixelRatioF());
    kept_.fill(Qt::transparent);
    QPainter cells(&kept_);
    cells.setClipRect(plot_);
    paint_cells(cells);
    cells.setRenderHint(QPainter::Antialiasing);
    paint_borders(cells);
    paint_letters(cells);
    if (!current_) {
      QColor veil = theme_.paper;
      veil.setAlpha(150);
      cells.fillRect(plot_, veil);
    }
    cells.setClipping(false);
    paint_axes(cells);
  }
  painter.drawPixmap(0, 0, kept_);
  paint_marks(painter);
  if (!current_) {
    painter.setPen(theme_.ink);
    QFont bold = font();
    bold.setBold(true);
    painter.setFont(bold);
    painter.drawText(plot_, Qt::AlignCenter | Qt::TextWordWrap, tr("of the crossing as it stood before"));
  }
  if (hasFocus()) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme_.focus, 2));
    painter.drawRect(plot_.adjusted(-2, -2, 2, 2));
  }
}

}  // namespace burrow
