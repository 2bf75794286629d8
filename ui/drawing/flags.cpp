#include "burrow/drawing/flags.h"

#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "overlaps.h"

#include <QRegularExpression>
#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr int most_flags = 9;

QPointF anchor_of(const Scene& scene, const Finding& finding) {
  const double station = *finding.station_m;
  const LevelLine& ground = scene.crossing.site.ground;
  const double elevation = finding.elevation_m ? *finding.elevation_m
                           : ground.empty()    ? 0
                                               : elevation_at(ground, station);
  return scene.frame.side(station, elevation);
}

/// A number and its unit stay on one line.
QString with_units_kept(QString text) {
  static const QRegularExpression number_then_unit(QStringLiteral("(\\d) (?=\\S)"));
  return text.replace(number_then_unit, QStringLiteral("\\1\u00a0"));
}

/// Findings about one subject at one place share a flag. The clear gap speaks for a utility: a length is easier to
/// picture than a chance; otherwise the worst does.
struct Group {
  std::size_t speaks = 0;
  std::vector<int> others;
};

std::vector<Group> groups_of(const std::vector<Finding>& findings) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& f = findings[i];
    if (!flag_wanted(f)) continue;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& g) {
      const Finding& first = findings[g.speaks];
      return first.subject == f.subject &&
             first.code.substr(0, first.code.find('.')) == f.code.substr(0, f.code.find('.')) &&
             std::abs(*first.station_m - *f.station_m) < 0.5;
    });
    if (same == groups.end()) {
      groups.push_back({i, {}});
    } else if (f.code == "utility.separation") {
      same->others.insert(same->others.begin(), static_cast<int>(same->speaks));
      same->speaks = i;
    } else {
      same->others.push_back(static_cast<int>(i));
    }
  }
  return groups;
}

bool fits(const std::vector<Flag>& placed, const QRectF& box) {
  const QRectF around = box.adjusted(-4, -4, 4, 4);
  return std::none_of(placed.begin(), placed.end(), [&](const Flag& f) { return lie_over(f.box, around); });
}

}  // namespace

bool flag_wanted(const Finding& finding) {
  if (!finding.station_m || finding.severity == Severity::note) return false;
  return !finding.muted || counts_in_verdict(finding);
}

double marks_row_height(const Style& style) {
  return style.text * 1.1;
}

std::vector<Flag> place_flags(const Scene& scene, int* left_out) {
  const Frame& f = scene.frame;
  const double text = scene.style.text;
  const double width = std::min(text * 17.0, f.elevation.width() * 0.4);
  const QFont font = drawing_font(text);
  const QFontMetricsF metrics(font);
  const double badge = text * 1.7;
  std::vector<Flag> placed;
  int lost = 0;
  const std::vector<Finding>& findings = scene.assessment.findings;
  for (const Group& group : groups_of(findings)) {
    const std::size_t i = group.speaks;
    const Finding& finding = findings[i];
    const QPointF anchor = anchor_of(scene, finding);
    if (anchor.x() < f.elevation.left() || anchor.x() > f.elevation.right()) continue;
    if (placed.size() >= most_flags) {
      ++lost;
      continue;
    }
    QString words = with_units_kept(text_from(finding_text(finding, scene.style.units)));
    QStringList others;
    for (const int other : group.others) others << QString::number(other + 1);
    if (!others.isEmpty())
      words += QStringLiteral(" · ") + QObject::tr("also %1").arg(others.join(QStringLiteral(", ")));
    const QRectF area = metrics.boundingRect(QRectF(0, 0, width - badge - text * 0.5, 1000), Qt::TextWordWrap, words);
    const double w = std::ceil(area.width() + badge + text * 1.3);
    const double h = std::ceil(std::max(area.height(), badge - text * 0.4) + text * 0.5);
    // Nearest free place to straight above the anchor: sideways costs as much as upward.
    const double top = f.elevation.top() + text * 0.5;
    const double lowest = std::min(anchor.y() - text * 1.5, f.elevation.top() + f.elevation.height() * 0.55) - h;
    double best_cost = 1e300;
    QRectF best;
    for (double y = top; y <= std::max(top, lowest) && 0.8 * (y - top) < best_cost; y += text * 0.5) {
      for (int side = -14; side <= 14; ++side) {
        const double x = std::clamp(anchor.x() - w / 2 + side * text * 1.5, f.elevation.left() + text * 0.5,
                                    std::max(f.elevation.left() + text * 0.5, f.elevation.right() - w - text * 0.5));
        const QRectF box(x, y, w, h);
        const double cost = std::abs(box.center().x() - anchor.x()) + 0.8 * (y - top);
        if (cost < best_cost && fits(placed, box)) {
          best_cost = cost;
          best = box;
        }
      }
    }
    const bool found = best.isValid();
    if (found) placed.push_back({static_cast<int>(i), group.others, best, anchor, words});
    if (!found) ++lost;
  }
  if (left_out) *left_out = lost;
  return placed;
}

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

void paint_flags(QPainter& painter, const Scene& scene) {
  const Theme& theme = scene.style.theme;
  const double text = scene.style.text;
  int left_out = 0;
  const std::vector<Flag> flags = place_flags(scene, &left_out);
  for (const Flag& flag : flags) {
    const QColor colour =
        mark_line_colour(mark_of(scene.assessment.findings[static_cast<std::size_t>(flag.finding)]), theme);
    painter.setPen(QPen(colour, scene.style.hair * 1.3));
    const double x = std::clamp(flag.anchor.x(), flag.box.left() + text, flag.box.right() - text);
    painter.drawLine(QPointF(x, flag.box.bottom()), flag.anchor);
    painter.setBrush(colour);
    painter.drawEllipse(flag.anchor, scene.style.hair * 2.6, scene.style.hair * 2.6);
  }
  for (const Flag& flag : flags) {
    const Finding& finding = scene.assessment.findings[static_cast<std::size_t>(flag.finding)];
    const bool picked = scene.focus.finding == flag.finding;
    painter.setPen(QPen(picked ? theme.focus : mark_line_colour(mark_of(finding), theme),
                        scene.style.hair * (picked ? 2.6 : 1.3)));
    painter.setBrush(theme.field);
    painter.drawRoundedRect(flag.box, text * 0.3, text * 0.3);
    const double badge = text * 1.5;
    painter.setFont(drawing_font(text * 0.85, QFont::Bold));
    const QRectF mark(flag.box.left() + text * 0.3, flag.box.center().y() - badge / 2, badge, badge);
    paint_finding_mark(painter, mark, mark_of(finding), theme, QString::number(flag.finding + 1));
    painter.setFont(drawing_font(text));
    painter.setPen(theme.ink);
    painter.drawText(flag.box.adjusted(text * 0.3 + badge + text * 0.4, 0, -text * 0.2, 0),
                     Qt::AlignVCenter | Qt::TextWordWrap, flag.text);
  }
  if (left_out > 0) {
    painter.setFont(drawing_font(text * 0.9));
    const QString more = QObject::tr("+ %n more in the list", nullptr, left_out);
    const QFontMetricsF metrics(painter.font());
    const QRectF& pane = scene.frame.elevation;
    const double w = metrics.horizontalAdvance(more);
    QRectF box(pane.right() - w - 10, pane.top() + text * 0.4, w + 4, metrics.height());
    while (!fits(flags, box) && box.bottom() < pane.bottom() - text * 4) box.translate(0, text * 0.5);
    halo_text(painter, QPointF(box.left() + 2, box.top() + metrics.ascent()), more, theme.ink_soft, theme.sky);
  }
  painter.setFont(drawing_font(text));
}

}  // namespace burrow
