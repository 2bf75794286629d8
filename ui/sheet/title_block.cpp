/// The title block: how the layout stands, what is built with what, where and by whom.

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "front_page.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

const QColor soft(0x50, 0x50, 0x50);
const TextStyle body{2.5}, titles{2.5, QFont::Normal, soft};
constexpr double row_height = 4.2;
constexpr int most_rows = 9;

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("sheet", text, context, n);
}

QColor verdict_colour(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return QColor(0xb0, 0x18, 0x18);
    case Verdict::incomplete:
      return QColor(0x50, 0x50, 0x50);
    case Verdict::caution:
      return QColor(0xa0, 0x60, 0x00);
    case Verdict::within_limits:
      break;
  }
  return QColor(0x1a, 0x6a, 0x2a);
}

class TitleBlock {
 public:
  TitleBlock(Page& page, const Sheet& sheet, const QRectF& box, double scale)
      : paper_(page), sheet_(sheet), box_(box), scale_(scale) {}

  void draw() {
    const QRectF band(box_.left(), box_.top(), box_.width(), 7);
    paper_.rect(band, verdict_colour(sheet_.assessment.verdict));
    paper_.text({band.left() + 2, band.bottom() - 2.2}, text_from(verdict_title(sheet_.assessment.verdict)).toUpper(),
                {3.6, QFont::Bold, Qt::white});
    const QRectF name(box_.left(), band.bottom(), box_.width(), 6.6);
    paper_.short_text({name.left() + 2, name.bottom() - 2}, text_from(sheet_.crossing.name), {3.8, QFont::DemiBold},
                      name.width() - 4);
    y_ = name.bottom();
    paper_.line({box_.left(), y_}, {box_.right(), y_}, {0.18});
    work();
    drawing();
    place();
    revisions();
    paper_.rect(box_, {}, {0.5});
  }

 private:
  [[nodiscard]] QString text(double v, Dimension d) const { return text_from(format(v, d, sheet_.units)); }

  void work() {
    const Crossing& c = sheet_.crossing;
    pair(tr("client"), {}, tr("project"), {});  // lines to write on
    pair(tr("location"), {}, tr("permit"), permits());
    const Tool tool = resolve_tool(c.bore.tool, sheet_.tables);
    whole(tr("tool"), tr("diameter %1, length %2")
                          .arg(text(tool.diameter.m, Dimension::small_length), text(tool.length.m, Dimension::length)));
    whole(tr("pipe"), pipe_words(sheet_));
    const Assessment& a = sheet_.assessment;
    const QString exit =
        a.exit_pit.section.empty() ? QStringLiteral("–") : text(a.exit_pit.axis_elevation_m, Dimension::station);
    pair(tr("bore"),
         tr("%1 at %2")
             .arg(text(c.bore.exit.station.m - c.bore.launch.station.m, Dimension::length),
                  text(c.bore.launch.grade.v, Dimension::grade)),
         tr("axis levels"), tr("%1 to %2").arg(text(c.bore.launch.elevation.m, Dimension::station), exit));
  }

  void drawing() {
    const Crossing& c = sheet_.crossing;
    const double times = std::max(1.0, c.sheet.vertical_exaggeration->v);
    pair(tr("scale"), scale_words(scale_, sheet_.units), tr("heights"),
         times > 1 ? tr("× %1").arg(times) : tr("as lengths, × 1"));
    pair(tr("sheet"), text_from(c.sheet.number), tr("units"),
         sheet_.units == UnitSystem::us ? tr("feet, inches") : tr("metres"));
  }

  /// Horizontal and vertical datum, and where the faces of the pits stand in them.
  void place() {
    const auto& geo = sheet_.crossing.site.georeference;
    const bool mapped = geo && !geo->crs.empty();
    pair(tr("map system"), mapped ? text_from(name_of_crs(geo->crs)) : tr("local"), tr("height system"),
         geo && !geo->vertical.empty() ? text_from(geo->vertical) : tr("local"));
    if (!mapped || !geo->azimuth.entered) return;
    const Bore& bore = sheet_.crossing.bore;
    whole(tr("pit faces"), tr("launch %1; exit %2")
                               .arg(map_words(*geo, bore.launch.station.m, bore.launch.offset->m),
                                    map_words(*geo, bore.exit.station.m, bore.exit.offset->m)));
  }
  static QString map_words(const Georeference& geo, double x, double y) {
    const double east = geo.origin.x_m + x * std::sin(geo.azimuth->rad) - y * std::cos(geo.azimuth->rad);
    const double north = geo.origin.y_m + x * std::cos(geo.azimuth->rad) + y * std::sin(geo.azimuth->rad);
    return QCoreApplication::translate("sheet", "E %1 N %2")
        .arg(text_from(fixed_text(east, 2)), text_from(fixed_text(north, 2)));
  }

  [[nodiscard]] QString permits() const {
    QStringList all;
    for (const SurfaceFeature& f : sheet_.crossing.site.surface)
      if (!f.permit.empty() && !all.contains(text_from(f.permit))) all << text_from(f.permit);
    return all.join(QStringLiteral("; "));
  }

  void pair(const QString& what, const QString& value, const QString& other, const QString& other_value) {
    const double half = box_.width() / 2;
    cell(0, half, what, value);
    cell(half, half, other, other_value);
    y_ += row_height;
  }
  void whole(const QString& what, const QString& value) {
    cell(0, box_.width(), what, value);
    y_ += row_height;
  }
  void cell(double x, double width, const QString& what, const QString& value) {
    const QRectF box(box_.left() + x, y_, width, row_height);
    paper_.rect(box, {}, {0.18});
    const double base = box.bottom() - 1.1;
    const QRectF words = paper_.short_text({box.left() + 1.2, base}, what, titles, width * 0.5);
    const double from = std::max(box.left() + 17, words.right() + 1.5);
    paper_.short_text({from, base}, value, body, box.right() - 1 - from);
  }

  /// The revision of the file, and lines to write the next ones on.
  void revisions() {
    const SheetSettings& s = sheet_.crossing.sheet;
    const double shares[] = {0.09, 0.19, 0.27, 0.15, 0.15, 0.15};
    const QString names[] = {tr("rev."), tr("date"), tr("description"), tr("drawn"), tr("checked"), tr("approved")};
    const QString values[] = {text_from(s.revision), text_from(s.date.value_or("")), QString(),
                              text_from(s.drawn_by), text_from(s.checked_by),        QString()};
    const double h = (box_.bottom() - y_) / 3;
    double x = box_.left();
    for (int c = 0; c < 6; ++c) {
      const double w = box_.width() * shares[c];
      for (int r = 0; r < 3; ++r) paper_.rect(QRectF(x, y_ + r * h, w, h), {}, {0.18});
      paper_.short_text({x + 1, y_ + h * 3 - 1.2}, names[c], titles, w - 2);
      paper_.short_text({x + 1, y_ + h * 2 - 1.2}, values[c], body, w - 2);
      x += w;
    }
  }

  Paper paper_;
  const Sheet& sheet_;
  QRectF box_;
  double scale_;
  double y_ = 0;
};

}  // namespace

QString pipe_words(const Sheet& sheet) {
  const auto& pipe = sheet.crossing.pipe;
  if (!pipe) return QStringLiteral("–");
  const PipeMaterial* material = find_pipe(sheet.tables, pipe->material);
  QStringList words{material ? text_from(material->name) : text_from(pipe->material)};
  if (pipe->outside_diameter) words << shown(pipe->outside_diameter->m, Dimension::small_length, sheet.units);
  if (pipe->sdr) words << tr("SDR %1").arg(pipe->sdr->v);
  if (*pipe->count > 1) words << tr("%n of them", nullptr, static_cast<int>(*pipe->count));
  words << choice_words(*pipe->insertion);
  return words.join(QStringLiteral(", "));
}

double title_block_height() {
  return 7 + 6.6 + (most_rows + 3) * row_height;
}

void draw_title_block(Page& page, const Sheet& sheet, const QRectF& box, double scale) {
  TitleBlock(page, sheet, box, scale).draw();
}

}  // namespace burrow
