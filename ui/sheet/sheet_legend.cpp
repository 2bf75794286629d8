#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <functional>

#include "burrow/drawing/scene.h"
#include "front_page.h"
#include "parts.h"

namespace burrow {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("sheet", text);
}

constexpr double sign_width = 9, row = 3.7, closest = 3.3;

/// A sign in the middle of its place at the left, or a line all along it.
class Legend {
 public:
  Legend(Paper& paper, const QRectF& box, const Sheet& sheet) : paper_(paper), box_(box), sheet_(sheet) {}

  void draw() {
    paper_.text({box_.left(), box_.top() + 3.2}, tr("Lines and signs"), {3.5, QFont::DemiBold});
    bore();
    ground();
    surroundings();
    utilities();
    print();
  }

 private:
  using Sign = std::function<void(const QPointF&)>;
  struct Row {
    Sign sign;
    QString words;
  };

  void line(const Stroke& stroke, const QString& words) {
    rows_.push_back({[this, stroke](const QPointF& at) {
                       paper_.line(at - QPointF(sign_width / 2, 0), at + QPointF(sign_width / 2, 0), stroke);
                     },
                     words});
  }
  void area(const QColor& fill, const Stroke& stroke, const QString& words) {
    rows_.push_back({[this, fill, stroke](const QPointF& at) {
                       paper_.rect(QRectF(at.x() - sign_width / 2, at.y() - 1, sign_width, 2), fill, stroke);
                     },
                     words});
  }

  void bore() {
    line({0.35, bore_red}, tr("bore, hole as opened"));
    line({0.18, bore_red, {4, 1, 0.6, 1}}, tr("axis of the bore"));
    area(band_tint, {0.13, band_edge}, tr("nine bores in ten"));
    line({0.35, Qt::black, {2, 0.8}}, tr("edge of a pit"));
  }

  void ground() {
    const Site& site = sheet_.crossing.site;
    line({0.5, QColor(0x4a, 0x3a, 0x20)}, tr("ground"));
    if (std::any_of(site.strata.begin(), site.strata.end(), [](const Stratum& s) { return s.top.has_value(); }))
      line({0.18, QColor(0x80, 0x60, 0x30), {2, 1}}, tr("top of a layer"));
    if (site.water) line({0.25, QColor(0x18, 0x60, 0xb0), {3, 1, 0.5, 1}}, tr("water table"));
  }

  void surroundings() {
    const Site& site = sheet_.crossing.site;
    const auto any = [&](auto holds) { return std::any_of(site.surface.begin(), site.surface.end(), holds); };
    if (any([](const SurfaceFeature& f) { return !is_built(f.kind); }))
      area(surface_grey, {0.18, line_grey}, tr("road, footway, track"));
    if (any([](const SurfaceFeature& f) { return is_built(f.kind); }))
      area(building_grey, {0.18, line_grey}, tr("building, footing, wall"));
    if (!sheet_.assessment.zones.empty()) line({0.25, zone_red, {1.5, 0.8}}, tr("limit of an owner's rule"));
    if (!site.boundaries.empty()) line({0.35, Qt::black, {5, 1, 0.8, 1, 0.8, 1}}, tr("boundary"));
    if (!site.strips.empty()) line({0.18, line_grey, {0.6, 0.6}}, tr("strip of land"));
    if (!site.background.empty()) line({0.13, line_grey}, tr("map in the background"));
    if (!site.trees.empty())
      rows_.push_back({[this](const QPointF& at) {
                         paper_.circle(at, 1.5, {}, {0.18, tree_green, {1, 0.6}});
                         paper_.circle(at, 0.6, tree_green);
                       },
                       tr("tree and its protected zone")});
    if (!site.plant.empty()) area({}, {0.25}, tr("machine"));
    if (!site.test_holes.empty())
      rows_.push_back({[this](const QPointF& at) { test_hole_sign(paper_, at); }, tr("test hole, dug")});
    const auto& all = sheet_.assessment.utilities;
    if (std::any_of(all.begin(), all.end(), [](const UtilityAnswer& u) { return u.expose && u.hole_station_m; }))
      rows_.push_back({[this](const QPointF& at) { exposure_sign(paper_, at); }, tr("to be exposed by hand")});
  }

  void utilities() {
    const auto& all = sheet_.crossing.site.utilities;
    for (const UtilityKindRow& kind : sheet_.tables.utilities)
      if (std::any_of(all.begin(), all.end(), [&](const Utility& u) { return u.kind == kind.kind; }))
        line(utility_stroke(sheet_.tables, kind.kind, 0.5), text_from(kind.name));
    if (all.empty()) return;
    if (std::any_of(all.begin(), all.end(), [&](const Utility& u) { return !side_place(sheet_, u).elevation_m; }))
      line({0.25, line_grey, {1, 1}}, tr("depth not known"));
    rows_.push_back({[this](const QPointF& at) {
                       paper_.circle(at, 1.7, Qt::white, {0.25});
                       paper_.text(at + QPointF(0, 0.9), QStringLiteral("1"), {2.5, QFont::DemiBold}, Align::centre);
                     },
                     tr("number in the table of utilities")});
  }

  /// In as many columns as it takes.
  void print() {
    const double top = box_.top() + 6.4;
    auto down = static_cast<std::size_t>(std::max(1.0, std::floor((box_.bottom() - top) / row) + 1));
    // A little closer rather than a second column for the last of them.
    const double closer = (box_.bottom() - top) / static_cast<double>(std::max<std::size_t>(1, rows_.size() - 1));
    const double pitch = rows_.size() > down && closer >= closest ? closer : row;
    if (pitch != row) down = rows_.size();
    const std::size_t columns = (rows_.size() + down - 1) / down;
    const double width = box_.width() / static_cast<double>(columns);
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      const double x = box_.left() + width * static_cast<double>(i / down),
                   y = top + pitch * static_cast<double>(i % down);
      rows_[i].sign({x + sign_width / 2, y - 0.8});
      paper_.short_text({x + sign_width + 1.5, y}, rows_[i].words, {2.5}, width - sign_width - 2.5);
    }
  }

  Paper& paper_;
  QRectF box_;
  const Sheet& sheet_;
  std::vector<Row> rows_;
};

}  // namespace

void draw_legend(Paper& paper, const Sheet& sheet, const QRectF& box) {
  Legend(paper, box, sheet).draw();
}

void draw_scale_bar(Paper& paper, const Sheet& sheet, const QPointF& at, double width_mm, double scale) {
  const double unit = shown_unit(Dimension::station, sheet.units), mm_per_unit = 1000 / scale * unit / sheet.enlarged;
  // Five pieces of one, two or five units, or ten times as many.
  double piece = 1e-3;
  for (double power = 1e-3; power < 1e6; power *= 10)
    for (const double step : {1.0, 2.0, 5.0})
      if (5 * step * power * mm_per_unit <= width_mm) piece = step * power;
  const double length = piece * mm_per_unit;
  for (int k = 0; k < 5; ++k)
    paper.rect(QRectF(at.x() + k * length, at.y() - 1.5, length, 1.5),
               k % 2 == 0 ? QColor(Qt::black) : QColor(Qt::white), {0.18});
  constexpr double least_apart = 9;
  for (const int k : {0, 1, 2, 5}) {
    if ((k == 1 || k == 2) && length < least_apart) continue;
    const QString number = text_from(significant_text(k * piece, 6));
    paper.text(
        {at.x() + k * length, at.y() + 3},
        k == 5 ? QStringLiteral("%1 %2").arg(number, text_from(unit_name(Dimension::station, sheet.units))) : number,
        {2.5}, k == 0 ? Align::left : Align::centre);
  }
}

}  // namespace burrow
