#include "burrow/window/import_texts.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

QString tr(const char* text, const char* disambiguation = nullptr, int n = -1) {
  return QObject::tr(text, disambiguation, n);
}

QString length_text(Length length, UnitSystem units) {
  return text_from(format(length, units, Dimension::station));
}

QString word(FileUnit unit) {
  return QString::fromUtf8(translated_word(unit).data());
}

struct HeightRange {
  double low = 1e300, high = -1e300;
  void take(double z) {
    low = std::min(low, z);
    high = std::max(high, z);
  }
};

HeightRange heights_of_file(const Found& found) {
  HeightRange range;
  for (const FoundVertex& v : found.vertices)
    if (v.z_m) range.take(*v.z_m);
  for (const FoundSurface& s : found.surfaces)
    for (const Point3& p : s.points) range.take(p.z_m);
  for (const FoundRaster& r : found.rasters)
    for (const auto& z : {r.least_z, r.most_z})
      if (z) range.take(*z);
  return range;
}

QString plan_text(const ImportFile& file, const std::optional<CrossingLine>& line, UnitSystem units) {
  // The one kind that is read by the program's own code names itself by a word of ours.
  const QString format_name = file.found->order.empty() ? text_from(file.found->format) : tr("survey points");
  const auto extent = extent_of(*file.found);
  if (!extent) return format_name + QLatin1Char('.');
  if (frame_of(file).geographic)
    return tr("%1: degrees, from %2, %3 to %4, %5.")
        .arg(format_name)
        .arg(extent->low_x)
        .arg(extent->low_y)
        .arg(extent->high_x)
        .arg(extent->high_y);
  const ScaleView view = scale_of(file, line);
  QString text = tr("%1, taken in %2: %3 from west to east, %4 from south to north.")
                     .arg(format_name, word(view.unit), length_text(view.wide, units), length_text(view.high, units));
  if (view.line)
    text += QLatin1Char(' ') + tr("The crossing line is %1 long in it.").arg(length_text(*view.line, units));
  return text;
}

QString heights_text(const ImportFile& file, UnitSystem units) {
  const HeightRange range = heights_of_file(*file.found);
  if (range.low > range.high) return tr("No heights.");
  const FoundFrame& frame = frame_of(file);
  const auto unit = file.height_unit    ? file.height_unit
                    : frame.height_unit ? frame.height_unit
                    : file.unit         ? file.unit
                    : frame.crs.empty() ? frame.unit
                                        : std::nullopt;
  const double metres = metres_in(unit.value_or(FileUnit::metre));
  return tr("Heights from %1 to %2.")
      .arg(length_text(Length{range.low * metres}, units), length_text(Length{range.high * metres}, units));
}

}  // namespace

QString consequence_text(const ImportFile& file, const std::optional<CrossingLine>& line, UnitSystem units) {
  const Found& found = *file.found;
  const FoundFrame& frame = frame_of(file);
  QStringList lines{plan_text(file, line, units), heights_text(file, units)};
  if (!found.order_is_known) lines << tr("The order of the columns is not stated: does the plan look right?");
  const bool said = file.unit || file.unit_is_confirmed;
  if (!said && !frame.unit && !frame.geographic) lines << tr("The unit is not stated: are these lengths right?");
  if (!said && frame.unit && frame.unit_is_doubtful)
    lines << tr("Units in drawings are often wrong: are these lengths right?");
  if (!file.height_unit && !frame.height_unit && !frame.crs.empty() && heights_of_file(found).low < 1e300)
    lines << (heights_in_doubt(file) ? tr("The unit of heights is not stated: it must be said.")
                                     : tr("The unit of heights is not stated: taken as metres."));
  return lines.join(QLatin1Char(' '));
}

QString result_text(const Imported& imported, UnitSystem units) {
  const auto without = std::count_if(imported.utilities.begin(), imported.utilities.end(), [](const Utility& u) {
    return std::none_of(u.path.begin(), u.path.end(), [](const PathVertex& v) { return v.z_m.has_value(); });
  });
  QStringList parts{tr("Crossing line %1").arg(length_text(imported.length, units))};
  const auto size = [](const auto& list) { return static_cast<int>(list.size()); };
  parts << (imported.ground.empty() ? tr("no ground") : tr("ground line of %n points", nullptr, size(imported.ground)));
  const QString utilities = tr("%n utilities", nullptr, size(imported.utilities));
  parts << (without > 0 ? tr("%1, %n without depth", nullptr, static_cast<int>(without)).arg(utilities) : utilities);
  if (!imported.asked.empty()) parts << tr("%n questions open", nullptr, size(imported.asked));
  if (!imported.surface.empty()) parts << tr("%n roads and buildings", nullptr, size(imported.surface));
  if (!imported.background.empty()) parts << tr("background of %n layers", nullptr, size(imported.background));
  return parts.join(QStringLiteral(" · ")) + QLatin1Char('.');
}

std::string crs_in(const QString& text) {
  static const QRegularExpression code(QStringLiteral("^\\s*(?:epsg\\s*:?:?\\s*)?(\\d{3,7})\\s*$"),
                                       QRegularExpression::CaseInsensitiveOption);
  const QRegularExpressionMatch match = code.match(text);
  return match.hasMatch() ? "EPSG:" + match.captured(1).toStdString() : std::string();
}

}  // namespace burrow
