/// Flags, and the marks that stand for findings.

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"

namespace burrow {

FindingMark mark_of(const Finding& finding) {
  if (finding.severity == Severity::stop) return FindingMark::stop;
  if (finding.missing) return FindingMark::missing;
  return finding.severity == Severity::caution ? FindingMark::caution : FindingMark::note;
}

QColor mark_colour(FindingMark mark, const Theme& theme) {
  switch (mark) {
    case FindingMark::stop:
      return theme.stop;
    case FindingMark::caution:
      return theme.caution;
    case FindingMark::missing:
    case FindingMark::note:
      break;
  }
  return theme.note;
}

QColor mark_line_colour(FindingMark mark, const Theme& theme) {
  return mark == FindingMark::caution ? theme.caution_line : mark_colour(mark, theme);
}

void paint_finding_mark(QPainter& painter, const QRectF& box, FindingMark mark, const Theme& theme,
                        const QString& number) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  // Amber shows on dark ground only; a dark rim carries it on light.
  painter.setPen(mark == FindingMark::caution ? QPen(theme.caution_line, 1) : QPen(Qt::NoPen));
  painter.setBrush(mark_colour(mark, theme));
  const QPointF c = box.center();
  const double r = std::min(box.width(), box.height()) / 2;
  QColor on = theme.on_note;
  double down = 0;
  switch (mark) {
    case FindingMark::stop: {
      QPolygonF octagon;
      for (int k = 0; k < 8; ++k) {
        const double a = pi / 8 + k * pi / 4;
        octagon << c + QPointF(r * std::cos(a), r * std::sin(a));
      }
      painter.drawPolygon(octagon);
      on = theme.on_stop;
      break;
    }
    case FindingMark::caution:
      painter.drawPolygon(QPolygonF(
          QList<QPointF>{c + QPointF(0, -r * 1.05), c + QPointF(r * 1.1, r * 0.85), c + QPointF(-r * 1.1, r * 0.85)}));
      on = theme.on_caution;
      down = r * 0.22;
      break;
    case FindingMark::missing:
      painter.drawRoundedRect(QRectF(c.x() - r * 0.88, c.y() - r * 0.88, r * 1.76, r * 1.76), r * 0.25, r * 0.25);
      break;
    case FindingMark::note:
      painter.drawEllipse(c, r * 0.92, r * 0.92);
      break;
  }
  QFont font = painter.font();
  font.setBold(true);
  painter.setFont(font);
  painter.setPen(on);
  painter.drawText(box.translated(0, down), Qt::AlignCenter, number);
  painter.restore();
}

void paint_flag_stems(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double hair = scene.style.hair;
  const auto colour_for = [&](int finding) {
    return mark_line_colour(mark_of(scene.assessment.findings[static_cast<std::size_t>(finding)]), theme);
  };
  const Frame& f = scene.frame;
  for (const Flag& flag : scene.labels->flags.flags) {
    const QColor colour = colour_for(flag.finding);
    painter.setPen(QPen(colour, hair * 1.3));
    const double x = flag.stem_x;
    const QPointF foot = f.elevation.isEmpty() ? QPointF(flag.anchor.x(), f.on_top.bottom()) : flag.anchor;
    if (x < flag.box.left() + 3 || x > flag.box.right() - 3) {  // an elbow under the flag
      const double y = flag.box.bottom() + scene.style.text * 0.25;
      const double near_x = std::clamp(x, flag.box.left() + scene.style.text, flag.box.right() - scene.style.text);
      painter.drawPolyline(QPolygonF(QList<QPointF>{{near_x, flag.box.bottom()}, {near_x, y}, {x, y}}));
      painter.drawLine(QPointF(x, y), foot);
    } else {
      painter.drawLine(QPointF(x, flag.box.bottom()), foot);
    }
    if (!f.elevation.contains(flag.anchor)) continue;
    painter.setBrush(colour);
    painter.drawEllipse(flag.anchor, hair * 2.6, hair * 2.6);
  }
  for (const FlagDot& dot : scene.labels->flags.dots) {
    painter.setPen(QPen(colour_for(dot.findings.front()), hair));
    painter.drawLine(QPointF(dot.box.center().x(), dot.box.bottom()),
                     QPointF(dot.anchor.x(), scene.frame.flags.bottom()));
  }
}

void paint_flags(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  const std::vector<Finding>& findings = scene.assessment.findings;
  for (const Flag& flag : scene.labels->flags.flags) {
    const Finding& finding = findings[static_cast<std::size_t>(flag.finding)];
    const bool picked = scene.focus.finding == flag.finding;
    painter.setPen(QPen(picked ? theme.focus : mark_line_colour(mark_of(finding), theme),
                        scene.style.hair * (picked ? 2.6 : 1.5)));
    painter.setBrush(theme.field);
    painter.drawRoundedRect(flag.box, text * 0.35, text * 0.35);
    const double badge = text * 1.45;
    painter.setFont(drawing_font(text * 0.82, QFont::Bold));
    paint_finding_mark(painter, QRectF(flag.box.left() + text * 0.35, flag.box.center().y() - badge / 2, badge, badge),
                       mark_of(finding), theme, QString::number(flag.finding + 1));
    const QRectF words = flag.box.adjusted(text * 0.35 + badge + text * 0.35, 0, 0, 0);
    painter.setFont(drawing_font(text * 0.95, QFont::DemiBold));
    painter.setPen(theme.ink);
    if (flag.rest.isEmpty()) {
      painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, flag.head);
      continue;
    }
    const QRectF upper(words.left(), words.top(), words.width(), words.height() / 2);
    painter.drawText(upper.translated(0, text * 0.08), Qt::AlignVCenter | Qt::AlignLeft, flag.head);
    painter.setFont(drawing_font(text * 0.92));
    painter.setPen(theme.ink_soft);
    painter.drawText(upper.translated(0, words.height() / 2 - text * 0.08), Qt::AlignVCenter | Qt::AlignLeft,
                     flag.rest);
  }
  painter.setFont(drawing_font(text * 0.8, QFont::Bold));
  for (const FlagDot& dot : scene.labels->flags.dots)
    paint_finding_mark(painter, dot.box, mark_of(findings[static_cast<std::size_t>(dot.findings.front())]), theme,
                       dot.text);
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
