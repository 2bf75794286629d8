#include "burrow/drawing/flags.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr int most_flags = 9;

QPointF anchor_of(const Picture& picture, const Finding& finding) {
  const double station = *finding.station_m;
  const LevelLine& ground = picture.crossing.site.ground;
  const double elevation = finding.elevation_m ? *finding.elevation_m
                           : ground.empty()    ? 0
                                               : elevation_at(ground, station);
  return picture.frame.side(station, elevation);
}

bool fits(const std::vector<Flag>& placed, const QRectF& box) {
  return std::none_of(placed.begin(), placed.end(),
                      [&](const Flag& f) { return f.box.adjusted(-4, -4, 4, 4).intersects(box); });
}

}  // namespace

std::vector<Flag> place_flags(const Picture& picture, int* left_out) {
  const Frame& f = picture.frame;
  const double text = picture.look.text;
  const double width = std::min(text * 17.0, f.elevation.width() * 0.4);
  const QFont font = drawing_font(text);
  const QFontMetricsF metrics(font);
  const double badge = text * 1.7;
  std::vector<Flag> placed;
  int lost = 0;
  for (std::size_t i = 0; i < picture.assessment.findings.size(); ++i) {
    const Finding& finding = picture.assessment.findings[i];
    if (!finding.station_m || finding.severity == Severity::note || finding.muted) continue;
    const QPointF anchor = anchor_of(picture, finding);
    if (anchor.x() < f.elevation.left() || anchor.x() > f.elevation.right()) continue;
    if (placed.size() >= most_flags) {
      ++lost;
      continue;
    }
    const QString words = QString::fromStdString(finding_text(finding, picture.look.units));
    const QRectF area = metrics.boundingRect(QRectF(0, 0, width - badge - text * 0.5, 1000), Qt::TextWordWrap, words);
    const double w = std::ceil(area.width() + badge + text * 0.7);
    const double h = std::ceil(std::max(area.height(), badge - text * 0.4) + text * 0.5);
    bool found = false;
    for (int row = 0; row < 12 && !found; ++row) {
      for (const double lean : {0.0, -0.5, 0.5, -1.0, 1.0, -1.6, 1.6}) {
        const double x = std::clamp(anchor.x() - w / 2 + lean * w, f.elevation.left() + 6,
                                    std::max(f.elevation.left() + 6, f.elevation.right() - w - 6));
        const double y = f.elevation.top() + 6 + row * (text * 0.9);
        const QRectF box(x, y, w, h);
        if (box.bottom() > std::min(anchor.y() - text, f.elevation.top() + f.elevation.height() * 0.62)) continue;
        if (!fits(placed, box)) continue;
        placed.push_back({static_cast<int>(i), box, anchor, words});
        found = true;
        break;
      }
    }
    if (!found) ++lost;
  }
  if (left_out) *left_out = lost;
  return placed;
}

void paint_severity_mark(QPainter& painter, const QRectF& box, Severity severity, const Theme& theme,
                         const QString& number) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme.severity(severity));
  const QPointF c = box.center();
  const double r = std::min(box.width(), box.height()) / 2;
  if (severity == Severity::stop) {
    QPolygonF octagon;
    for (int k = 0; k < 8; ++k) {
      const double a = pi / 8 + k * pi / 4;
      octagon << c + QPointF(r * std::cos(a), r * std::sin(a));
    }
    painter.drawPolygon(octagon);
  } else if (severity == Severity::caution) {
    painter.drawPolygon(QPolygonF(
        QList<QPointF>{c + QPointF(0, -r * 1.05), c + QPointF(r * 1.1, r * 0.85), c + QPointF(-r * 1.1, r * 0.85)}));
  } else {
    painter.drawEllipse(c, r * 0.92, r * 0.92);
  }
  QFont font = painter.font();
  font.setBold(true);
  painter.setFont(font);
  painter.setPen(theme.on_severity(severity));
  painter.drawText(box.translated(0, severity == Severity::caution ? r * 0.22 : 0), Qt::AlignCenter, number);
  painter.restore();
}

void paint_flags(QPainter& painter, const Picture& picture) {
  const Theme& theme = picture.look.theme;
  const double text = picture.look.text;
  int left_out = 0;
  const std::vector<Flag> flags = place_flags(picture, &left_out);
  for (const Flag& flag : flags) {
    const Severity severity = picture.assessment.findings[static_cast<std::size_t>(flag.finding)].severity;
    const QColor colour = theme.severity(severity);
    painter.setPen(QPen(colour, picture.look.hair * 1.3));
    const double x = std::clamp(flag.anchor.x(), flag.box.left() + text, flag.box.right() - text);
    painter.drawLine(QPointF(x, flag.box.bottom()), flag.anchor);
    painter.setBrush(colour);
    painter.drawEllipse(flag.anchor, picture.look.hair * 2.6, picture.look.hair * 2.6);
  }
  for (const Flag& flag : flags) {
    const Finding& finding = picture.assessment.findings[static_cast<std::size_t>(flag.finding)];
    const bool picked = picture.focus.finding == flag.finding;
    painter.setPen(
        QPen(picked ? theme.focus : theme.severity(finding.severity), picture.look.hair * (picked ? 2.6 : 1.3)));
    painter.setBrush(theme.field);
    painter.drawRoundedRect(flag.box, text * 0.3, text * 0.3);
    const double badge = text * 1.5;
    painter.setFont(drawing_font(text * 0.85, QFont::Bold));
    const QRectF mark(flag.box.left() + text * 0.3, flag.box.center().y() - badge / 2, badge, badge);
    paint_severity_mark(painter, mark, finding.severity, theme, QString::number(flag.finding + 1));
    painter.setFont(drawing_font(text));
    painter.setPen(theme.ink);
    painter.drawText(flag.box.adjusted(text * 0.3 + badge + text * 0.4, 0, -text * 0.2, 0),
                     Qt::AlignVCenter | Qt::TextWordWrap, flag.text);
  }
  if (left_out > 0) {
    painter.setFont(drawing_font(text * 0.9));
    const QString more = QObject::tr("+ %n more in the list", nullptr, left_out);
    const double w = QFontMetricsF(painter.font()).horizontalAdvance(more);
    halo_text(painter, QPointF(picture.frame.elevation.right() - w - 8, picture.frame.elevation.top() + text * 1.4),
              more, theme.ink_soft, theme.sky);
  }
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
