#include "burrow/sheet/sheet.h"

#include <QFile>
#include <QPageLayout>
#include <QPageSize>
#include <QPdfWriter>
#include <array>
#include <cmath>

#include "burrow/check/headline.h"
#include "burrow/drawing/flags.h"
#include "burrow/drawing/picture.h"

namespace burrow {

namespace {

constexpr double mm = 10;  // painter units in a millimetre
constexpr double margin = 10 * mm;
constexpr double foot = 58 * mm;
constexpr std::array<double, 11> standard_scales{10, 20, 25, 50, 75, 100, 125, 200, 250, 500, 1000};

QString qs(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}

Look paper_look(UnitSystem units) {
  Look look;
  look.theme = Theme::light();
  look.theme.paper = look.theme.sky = Qt::white;
  look.units = units;
  look.text = 2.9 * mm;
  look.hair = 0.2 * mm;
  look.handles = false;
  look.textures = false;
  return look;
}

/// Largest horizontal and vertical extent that the drawing has to show, in metres.
QSizeF extent_m(const Sheet& sheet) {
  Frame probe;
  lay_out(probe, QRectF(0, 0, 10000, 6000), 0.6, 0, 100);
  fit(probe, sheet.crossing, sheet.assessment, 0);
  const PitShape& launch = sheet.assessment.launch_pit;
  const PitShape& exit = sheet.assessment.exit_pit;
  double from = launch.floor_from_m;
  double to = exit.floor_to_m;
  for (const PitShape* pit : {&launch, &exit})
    for (const PlanPoint& p : pit->footprint) {
      from = std::min(from, p.x_m);
      to = std::max(to, p.x_m);
    }
  double top = -1e300;
  for (const LevelPoint& p : sheet.crossing.site.ground) top = std::max(top, p.elevation_m);
  const double bottom = std::min(launch.floor_elevation_m, exit.floor_elevation_m);
  return {(to - from) * 1.08 + 1.0, top - bottom + 1.0};
}

void paint_check_bar(QPainter& painter, const QPointF& at) {
  painter.setPen(QPen(Qt::black, 0.35 * mm, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(at, at + QPointF(100 * mm, 0));
  for (int k = 0; k <= 10; ++k) {
    const double x = at.x() + k * 10 * mm;
    painter.drawLine(QPointF(x, at.y()), QPointF(x, at.y() - (k % 5 == 0 ? 2.2 : 1.3) * mm));
  }
  painter.setFont(drawing_font(2.3 * mm));
  painter.drawText(at + QPointF(0, 3.2 * mm), QObject::tr("this bar is 100 mm when printed at actual size"));
}

void paint_findings(QPainter& painter, const Sheet& sheet, const QRectF& area, const Theme& theme) {
  painter.setPen(Qt::black);
  painter.setFont(drawing_font(3.2 * mm, QFont::Bold));
  painter.drawText(area.topLeft() + QPointF(0, 3.4 * mm), QObject::tr("Findings, worst first"));
  const int columns = area.width() > 180 * mm ? 2 : 1;
  const double width = area.width() / columns - 4 * mm;
  double x = area.left();
  double y = area.top() + 6 * mm;
  std::size_t shown = 0;
  for (const Finding& f : sheet.assessment.findings) {
    QString words = QString::fromStdString(finding_text(f, sheet.units));
    if (f.muted) words += QObject::tr(" (muted: %1)").arg(qs(f.muted->reason));
    painter.setFont(drawing_font(2.6 * mm));
    const QRectF room(0, 0, width - 6 * mm, 40 * mm);
    const double h = std::max(4.6 * mm, painter.boundingRect(room, Qt::TextWordWrap, words).height() + 1.0 * mm);
    if (y + h > area.bottom()) {
      if (x > area.left() || columns == 1) break;
      x += width + 6 * mm;
      y = area.top() + 6 * mm;
    }
    painter.setFont(drawing_font(2.1 * mm, QFont::Bold));
    paint_finding_mark(painter, QRectF(x, y, 4.2 * mm, 4.2 * mm), mark_of(f), theme, QString::number(shown + 1));
    painter.setFont(drawing_font(2.6 * mm));
    painter.setPen(Qt::black);
    painter.drawText(room.translated(x + 6 * mm, y), Qt::TextWordWrap, words);
    y += h;
    ++shown;
  }
  if (shown < sheet.assessment.findings.size()) {
    painter.setFont(drawing_font(2.6 * mm, QFont::DemiBold));
    painter.drawText(
        QPointF(x + 6 * mm, area.bottom() + 2.6 * mm),
        QObject::tr("and %1 more: see the list on the screen").arg(sheet.assessment.findings.size() - shown));
  }
}

void paint_title_block(QPainter& painter, const Sheet& sheet, const QRectF& box, double scale, const Theme& theme) {
  const Crossing& c = sheet.crossing;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(Qt::black, 0.35 * mm));
  painter.drawRect(box);
  const QRectF band(box.left(), box.top(), box.width(), 9 * mm);
  painter.fillRect(band, theme.verdict(sheet.assessment.verdict));
  painter.setPen(theme.on_verdict(sheet.assessment.verdict));
  painter.setFont(drawing_font(4.2 * mm, QFont::Bold));
  painter.drawText(band.adjusted(3 * mm, 0, -3 * mm, 0), Qt::AlignVCenter | Qt::AlignLeft,
                   qs(verdict_title(sheet.assessment.verdict)));
  painter.setPen(Qt::black);
  painter.setFont(drawing_font(4 * mm, QFont::DemiBold));
  const QRectF name(box.left() + 3 * mm, band.bottom() + 1 * mm, box.width() - 6 * mm, 7 * mm);
  painter.drawText(name, Qt::AlignVCenter | Qt::AlignLeft,
                   QFontMetricsF(painter.font()).elidedText(qs(c.name), Qt::ElideRight, name.width()));
  const auto row = [&](int line, const QString& what, const QString& value) {
    const double y = name.bottom() + 1 * mm + line * 4.6 * mm;
    painter.setFont(drawing_font(2.5 * mm));
    painter.setPen(QColor(0x50, 0x50, 0x50));
    painter.drawText(QRectF(box.left() + 3 * mm, y, 30 * mm, 4.6 * mm), Qt::AlignVCenter | Qt::AlignLeft, what);
    painter.setPen(Qt::black);
    painter.drawText(QRectF(box.left() + 33 * mm, y, box.width() - 36 * mm, 4.6 * mm), Qt::AlignVCenter | Qt::AlignLeft,
                     QFontMetricsF(painter.font()).elidedText(value, Qt::ElideRight, box.width() - 36 * mm));
  };
  const auto text = [&](double v, Dimension d) { return QString::fromStdString(format(v, d, sheet.units)); };
  row(0, QObject::tr("scale"),
      QObject::tr("1 : %1").arg(scale, 0, 'g', 6) +
          (c.sheet.vertical_exaggeration->v > 1 ? QObject::tr(", heights ×%1").arg(c.sheet.vertical_exaggeration->v)
                                                : QString()));
  row(1, QObject::tr("launch"),
      QObject::tr("level %1, grade %2")
          .arg(text(c.bore.launch.elevation.m, Dimension::station), text(c.bore.launch.grade.v, Dimension::grade)));
  row(2, QObject::tr("length"), text(c.bore.exit.station.m - c.bore.launch.station.m, Dimension::length));
  row(3, QObject::tr("number, revision"), qs(c.sheet.number) + QStringLiteral("  ") + qs(c.sheet.revision));
  row(4, QObject::tr("drawn, checked"), qs(c.sheet.drawn_by) + QStringLiteral("  /  ") + qs(c.sheet.checked_by));
  row(5, QObject::tr("date"), c.sheet.date ? qs(*c.sheet.date) : QString());
}

}  // namespace

double standard_scale(const Sheet& sheet, const QSizeF& area_mm) {
  const QSizeF need = extent_m(sheet);
  const double exaggeration = sheet.crossing.sheet.vertical_exaggeration->v;
  for (const double n : standard_scales)
    if (need.width() * 1000 / n <= area_mm.width() &&
        need.height() * 1000 * exaggeration / n <= area_mm.height() * 0.62)
      return n;
  return standard_scales.back();
}

void paint_sheet(QPainter& painter, const Sheet& sheet) {
  const QRectF paper(0, 0, sheet.paper_mm.width() * mm, sheet.paper_mm.height() * mm);
  const QRectF inside = paper.adjusted(margin, margin, -margin, -margin);
  const Look look = paper_look(sheet.units);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.fillRect(paper, Qt::white);

  const QRectF drawing(inside.left(), inside.top(), inside.width(), inside.height() - foot);
  Frame frame;
  frame.exaggeration = std::max(1.0, sheet.crossing.sheet.vertical_exaggeration->v);
  lay_out(frame, drawing, 0.6, gutter_width(look), ruler_height(look));
  const QSizeF room(frame.elevation.width() / mm, drawing.height() / mm);
  const double scale = sheet.scale > 0 ? sheet.scale : standard_scale(sheet, room);
  fit(frame, sheet.crossing, sheet.assessment, look.text * 6);
  const double centre_station = frame.station_m(frame.elevation.center().x());
  const double centre_level = frame.elevation_m(frame.elevation.center().y());
  frame.px_per_m = 1000.0 * mm / scale;
  frame.left_station_m = centre_station - frame.elevation.width() / frame.px_per_m / 2;
  frame.top_elevation_m = centre_level + frame.elevation.height() / 2 / (frame.px_per_m * frame.exaggeration);
  frame.top_offset_m = (sheet.crossing.bore.launch.offset->m + sheet.crossing.bore.exit.offset->m) / 2 +
                       frame.plan.height() / frame.px_per_m / 2;
  paint_picture(painter, Picture{sheet.crossing, sheet.assessment, sheet.tables, frame, look, Focus{}});
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(Qt::black, 0.25 * mm));
  painter.drawRect(drawing);

  const QRectF strip(inside.left(), drawing.bottom() + 3 * mm, inside.width(), foot - 3 * mm);
  const double block = std::min(118 * mm, strip.width() * 0.4);
  paint_title_block(painter, sheet, QRectF(strip.right() - block, strip.top(), block, 46 * mm), scale, look.theme);
  paint_findings(painter, sheet, QRectF(strip.left(), strip.top(), strip.width() - block - 6 * mm, 38 * mm),
                 look.theme);
  paint_check_bar(painter, QPointF(strip.left(), strip.bottom() - 5 * mm));
  painter.setFont(drawing_font(2.3 * mm));
  painter.setPen(Qt::black);
  painter.drawText(QRectF(strip.left() + 106 * mm, strip.bottom() - 8 * mm, strip.width() - 106 * mm, 8 * mm),
                   Qt::TextWordWrap | Qt::AlignRight,
                   QObject::tr("Locate before digging; expose before passing; protect the pit; restrain every air "
                               "coupling and bleed the line before "
                               "uncoupling. Local codes and the competent person at the excavation govern."));
}

QString known_papers() {
  return QStringLiteral("a4, a3, a2, letter, tabloid, ansi-d");
}

Result<QSizeF> paper_size(const QString& name) {
  struct Paper {
    const char* name;
    QSizeF size;
  };
  static const Paper papers[] = {{"a4", {297, 210}},         {"a3", {420, 297}},          {"a2", {594, 420}},
                                 {"letter", {279.4, 215.9}}, {"tabloid", {431.8, 279.4}}, {"ansi-d", {863.6, 558.8}}};
  for (const Paper& paper : papers)
    if (name == QLatin1String(paper.name)) return paper.size;
  return fail("paper", name.toStdString(), known_papers().toStdString());
}

Result<void> write_sheet_pdf(const Sheet& sheet, const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly))
    return fail(path.toStdString(), file.errorString().toStdString(), "a folder that may be written");
  {
    QPdfWriter writer(&file);
    writer.setResolution(1200);
    writer.setTitle(QString::fromStdString(sheet.crossing.name));
    writer.setCreator(QStringLiteral("Burrowline"));
    writer.setPageLayout(QPageLayout(QPageSize(sheet.paper_mm, QPageSize::Millimeter, QString(), QPageSize::ExactMatch),
                                     QPageLayout::Portrait, QMarginsF(0, 0, 0, 0)));
    QPainter painter;
    if (!painter.begin(&writer)) return fail(path.toStdString(), "the page could not be started", "room on the disk");
    painter.scale(writer.resolution() / 254.0, writer.resolution() / 254.0);
    paint_sheet(painter, sheet);
    if (!painter.end()) return fail(path.toStdString(), "the page could not be finished", "room on the disk");
  }
  if (!file.flush() || file.error() != QFileDevice::NoError) {
    const std::string why = file.errorString().toStdString();
    file.remove();
    return fail(path.toStdString(), why, "room on the disk");
  }
  return {};
}

}  // namespace burrow
