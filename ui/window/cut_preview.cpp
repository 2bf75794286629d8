#include <QPainter>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/window/import_preview.h"

namespace burrow {

CutPreview::CutPreview(const Tables& tables, QWidget* parent) : QWidget(parent), tables_(tables) {
  setMinimumHeight(110);
  setAccessibleName(tr("Ground along the crossing line"));
}

void CutPreview::set_imported(std::optional<Imported> imported) {
  imported_ = std::move(imported);
  update();
}

void CutPreview::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

void CutPreview::set_units(UnitSystem units) {
  units_ = units;
  update();
}

void CutPreview::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.paper);
  painter.setFont(drawing_font(12));
  painter.setPen(theme_.ink_soft);
  if (!imported_ || imported_->ground.empty()) {
    painter.drawText(rect().adjusted(10, 6, -10, -6), Qt::AlignCenter | Qt::TextWordWrap,
                     imported_ ? tr("No ground along the crossing line: it will count as missing.")
                               : tr("The ground along the crossing line appears here."));
    return;
  }
  const LevelLine& ground = imported_->ground;
  struct Met {
    double station_m;
    std::optional<double> z_m;
    UtilityKind kind;
  };
  std::vector<Met> met;
  double low = ground[0].elevation_m, high = low;
  for (const LevelPoint& p : ground) {
    low = std::min(low, p.elevation_m);
    high = std::max(high, p.elevation_m);
  }
  for (const Utility& u : imported_->utilities)
    for (std::size_t i = 1; i < u.path.size(); ++i) {
      const PathVertex &a = u.path[i - 1], &b = u.path[i];
      if ((a.y_m >= 0) == (b.y_m >= 0)) continue;
      const double t = a.y_m / (a.y_m - b.y_m);
      met.push_back({a.x_m + t * (b.x_m - a.x_m), std::nullopt, u.kind});
      if (a.z_m && b.z_m) met.back().z_m = *a.z_m + t * (*b.z_m - *a.z_m);
      low = std::min(low, met.back().z_m.value_or(low));
    }
  low = std::min(low, high - 0.5);
  const double from = ground.front().station_m, to = ground.back().station_m;
  const QRectF box = QRectF(rect()).adjusted(76, 14, -14, -26);
  const auto at = [&](double station, double z) {
    return QPointF(box.left() + (station - from) / (to - from) * box.width(),
                   box.bottom() - (z - low) / (high - low) * box.height());
  };
  for (const double pit : {0.0, imported_->length.m}) {
    painter.setPen(QPen(theme_.grid, 1, Qt::DashLine));
    painter.drawLine(QPointF(at(pit, 0).x(), box.top() - 6), QPointF(at(pit, 0).x(), box.bottom() + 4));
    painter.setPen(theme_.ink_soft);
    painter.drawText(QRectF(at(pit, 0).x() - 80, box.bottom() + 5, 160, 18), Qt::AlignCenter,
                     pit == 0.0 ? tr("launch")
                                : tr("exit %1").arg(text_from(format(imported_->length, units_, Dimension::station))));
  }
  painter.setRenderHint(QPainter::Antialiasing);
  QPolygonF line;
  for (const LevelPoint& p : ground) line << at(p.station_m, p.elevation_m);
  painter.setPen(QPen(theme_.ground, 2));
  painter.drawPolyline(line);
  painter.setFont(drawing_font(11, QFont::DemiBold));
  for (const Met& m : met) {
    const UtilityKindRow& row = row_of(tables_, m.kind);
    const QColor colour(text_from(theme_.dark ? row.colour_dark : row.colour));
    // Without a depth it stands on the ground line, with a question mark.
    const QPointF p = at(m.station_m, m.z_m.value_or(elevation_at(ground, m.station_m)));
    if (!box.adjusted(-4, -4, 4, 4).contains(p)) continue;
    painter.setPen(QPen(colour, 2));
    painter.setBrush(Qt::NoBrush);
    if (m.z_m)
      painter.drawEllipse(p, 4, 4);
    else
      painter.drawLine(p - QPointF(0, 6), p + QPointF(0, 6));
    painter.setPen(theme_.ink);
    painter.drawText(p + (m.z_m ? QPointF(7, 4) : QPointF(5, 16)),
                     text_from(row.letter_code) + (m.z_m ? QString() : QStringLiteral("?")));
  }
  painter.setFont(drawing_font(12));
  painter.setPen(theme_.ink_soft);
  for (const double z : {low, high})
    painter.drawText(QRectF(4, at(0, z).y() - 9, 66, 18), Qt::AlignRight | Qt::AlignVCenter,
                     text_from(format(z, Dimension::station, units_)));
}

}  // namespace burrow
