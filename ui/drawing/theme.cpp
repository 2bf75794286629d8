#include "burrow/drawing/theme.h"

#include <QFontDatabase>
#include <algorithm>
#include <cmath>

/// The resources live in a static library; this makes the linker keep them.
void burrow_keep_resources() {
  Q_INIT_RESOURCE(look);
}

namespace burrow {

Theme Theme::light() {
  Theme t;
  t.dark = false;
  t.paper = QColor(0xfb, 0xfa, 0xf7);
  t.sky = QColor(0xfb, 0xfa, 0xf7);
  t.panel = QColor(0xf1, 0xef, 0xea);
  t.field = QColor(0xff, 0xff, 0xff);
  t.raised = QColor(0xf8, 0xf7, 0xf3);
  t.select = QColor(0xdf, 0xee, 0xf0);
  t.line = QColor(0xdc, 0xd8, 0xcf);
  t.ink = QColor(0x1f, 0x26, 0x2c);
  t.ink_soft = QColor(0x47, 0x4f, 0x56);
  t.grid = QColor(0x1f, 0x26, 0x2c, 22);
  t.ground = QColor(0x4a, 0x3c, 0x2a);
  t.bore = QColor(0x14, 0x1c, 0x2b);
  t.band = QColor(0x3a, 0x4f, 0xb0);
  t.water = QColor(0x16, 0x5f, 0x9c);
  t.road = QColor(0x4b, 0x52, 0x58);
  t.pit = QColor(0xff, 0xff, 0xff);
  t.ghost = QColor(0x5d, 0x64, 0x6b);
  t.focus = QColor(0x00, 0x60, 0x78);
  t.stop = QColor(0xb3, 0x1d, 0x2b);
  t.on_stop = Qt::white;
  t.caution = QColor(0xe9, 0xa1, 0x1b);
  t.caution_line = QColor(0x8f, 0x5c, 0x00);
  t.on_caution = QColor(0x1f, 0x18, 0x04);
  t.note = QColor(0x52, 0x61, 0x6f);
  t.on_note = Qt::white;
  t.fine = QColor(0x1a, 0x63, 0x40);
  t.on_fine = Qt::white;
  return t;
}

Theme Theme::sunlight() {
  Theme t = light();
  t.paper = t.sky = t.panel = t.field = t.raised = Qt::white;
  t.select = QColor(0xdf, 0xee, 0xf0);
  t.line = QColor(0x50, 0x50, 0x50);
  t.ink = t.ink_soft = t.bore = Qt::black;
  t.grid = QColor(0, 0, 0, 60);
  t.ground = QColor(0x2c, 0x22, 0x14);
  t.band = QColor(0x1c, 0x2c, 0x90);
  t.water = QColor(0x00, 0x3c, 0x70);
  t.road = QColor(0x20, 0x24, 0x28);
  t.ghost = QColor(0x38, 0x3c, 0x40);
  t.focus = QColor(0x00, 0x3c, 0x4c);
  t.stop = QColor(0x8c, 0x00, 0x12);
  t.caution = QColor(0xff, 0xc8, 0x20);
  t.caution_line = QColor(0x60, 0x3c, 0x00);
  t.on_caution = Qt::black;
  t.note = QColor(0x30, 0x3a, 0x44);
  t.fine = QColor(0x00, 0x4a, 0x26);
  return t;
}

Theme Theme::night() {
  Theme t;
  t.dark = true;
  t.paper = QColor(0x16, 0x19, 0x1d);
  t.sky = QColor(0x16, 0x19, 0x1d);
  t.panel = QColor(0x1f, 0x23, 0x28);
  t.field = QColor(0x28, 0x2d, 0x33);
  t.raised = QColor(0x24, 0x29, 0x30);
  t.select = QColor(0x1d, 0x3a, 0x42);
  t.line = QColor(0x36, 0x3c, 0x44);
  t.ink = QColor(0xec, 0xe9, 0xe2);
  t.ink_soft = QColor(0xa9, 0xb0, 0xb6);
  t.grid = QColor(0xec, 0xe9, 0xe2, 22);
  t.ground = QColor(0xc9, 0xb3, 0x8d);
  t.bore = QColor(0xf6, 0xf2, 0xe8);
  t.band = QColor(0x8c, 0x9d, 0xf2);
  t.water = QColor(0x5c, 0xb2, 0xee);
  t.road = QColor(0x9a, 0xa1, 0xa8);
  t.pit = QColor(0x0d, 0x0f, 0x12);
  t.ghost = QColor(0x9a, 0xa2, 0xaa);
  t.focus = QColor(0x4c, 0xc3, 0xdd);
  t.stop = QColor(0xff, 0x6b, 0x6b);
  t.on_stop = QColor(0x24, 0x04, 0x06);
  t.caution = QColor(0xf4, 0xb9, 0x42);
  t.caution_line = t.caution;
  t.on_caution = QColor(0x1f, 0x18, 0x04);
  t.note = QColor(0x8d, 0x9b, 0xa8);
  t.on_note = QColor(0x0d, 0x11, 0x14);
  t.fine = QColor(0x58, 0xc4, 0x90);
  t.on_fine = QColor(0x04, 0x1d, 0x10);
  return t;
}

QColor Theme::severity(Severity s) const {
  return s == Severity::stop ? stop : s == Severity::caution ? caution : note;
}
QColor Theme::on_severity(Severity s) const {
  return s == Severity::stop ? on_stop : s == Severity::caution ? on_caution : on_note;
}
QColor Theme::verdict(Verdict v) const {
  switch (v) {
    case Verdict::stop:
      return stop;
    case Verdict::caution:
      return caution;
    case Verdict::incomplete:
      return note;
    case Verdict::within_limits:
      break;
  }
  return fine;
}
QColor Theme::on_verdict(Verdict v) const {
  switch (v) {
    case Verdict::stop:
      return on_stop;
    case Verdict::caution:
      return on_caution;
    case Verdict::incomplete:
      return on_note;
    case Verdict::within_limits:
      break;
  }
  return on_fine;
}

SoilFill soil_fill(std::string_view soil, const Theme& theme) {
  struct Row {
    std::string_view word;
    SoilFill light;
  };
  static const Row rows[] = {
      {"clay", {QColor(0xe6, 0xd9, 0xc8), SoilMark::dashes}},  {"silt", {QColor(0xe2, 0xdb, 0xcf), SoilMark::strokes}},
      {"sand", {QColor(0xf2, 0xe4, 0xbd), SoilMark::dots}},    {"gravel", {QColor(0xe8, 0xdc, 0xb9), SoilMark::rings}},
      {"cobbly", {QColor(0xdf, 0xd6, 0xc2), SoilMark::rings}}, {"peat", {QColor(0xd9, 0xcd, 0xc0), SoilMark::tufts}},
      {"rock", {QColor(0xd3, 0xd1, 0xcd), SoilMark::crosses}}, {"", {QColor(0xe4, 0xdf, 0xd6), SoilMark::crosses}}};
  for (const Row& row : rows) {
    if (soil.find(row.word) == std::string_view::npos) continue;
    SoilFill fill = row.light;
    const bool firm = soil.starts_with("stiff") || soil.starts_with("very-stiff") || soil.starts_with("hard") ||
                      soil.starts_with("dense");
    if (firm) fill.tint = fill.tint.darker(108);
    if (theme.dark)
      fill.tint = QColor::fromHslF(fill.tint.hslHueF(), fill.tint.hslSaturationF() * 0.30F, firm ? 0.17F : 0.20F);
    return fill;
  }
  return rows[0].light;
}

QColor region_colour(int number, const Theme& theme) {
  static const QColor light[region_colours] = {
      QColor(0x1f, 0x6f, 0xb5), QColor(0xd5, 0x6a, 0x1e), QColor(0x8a, 0x58, 0xa8), QColor(0xc8, 0xa4, 0x1c),
      QColor(0x18, 0x8f, 0x83), QColor(0xc2, 0x4d, 0x78), QColor(0x66, 0x8f, 0xd8), QColor(0x86, 0x88, 0x8c)};
  static const QColor dark[region_colours] = {
      QColor(0x5a, 0xa6, 0xe6), QColor(0xf0, 0x93, 0x4c), QColor(0xb9, 0x8e, 0xd6), QColor(0xe4, 0xc8, 0x55),
      QColor(0x45, 0xc2, 0xb4), QColor(0xe8, 0x7f, 0xa6), QColor(0x9a, 0xb9, 0xf4), QColor(0x9d, 0xa1, 0xa6)};
  const int at = std::clamp(number, 0, region_colours - 1);
  return theme.dark ? dark[at] : light[at];
}

QString register_typeface() {
  static const QString family = [] {
    burrow_keep_resources();
    QString name;
    for (const char* file :
         {":/fonts/OpenSans-Regular.ttf", ":/fonts/OpenSans-Semibold.ttf", ":/fonts/OpenSans-Bold.ttf"}) {
      const int id = QFontDatabase::addApplicationFont(QString::fromLatin1(file));
      const QStringList families = QFontDatabase::applicationFontFamilies(id);
      if (name.isEmpty() && !families.isEmpty()) name = families.first();
    }
    return name;
  }();
  return family;
}

QFont drawing_font(double pixels, QFont::Weight weight) {
  QFont font(register_typeface());
  font.setPixelSize(std::max(1, static_cast<int>(std::lround(pixels))));
  font.setWeight(weight);
  return font;
}

namespace {
double luminance(const QColor& c) {
  const auto linear = [](double v) { return v <= 0.03928 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
  return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}
}  // namespace

double contrast(const QColor& a, const QColor& b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

}  // namespace burrow
