#include "burrow/sheet/sheet.h"

#include <algorithm>
#include <iterator>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/sheet/page_out.h"
#include "parts.h"

namespace burrow {

QString shown(const std::optional<double>& value, Dimension dimension, UnitSystem units) {
  return value ? text_from(format(*value, dimension, units)) : QStringLiteral("–");
}

QString utility_name(const Utility& utility) {
  return text_from(utility.name.empty() ? utility.id : utility.name);
}

Result<Sheet> sheet_of(const Crossing& crossing, const Assessment& assessment, const Tables& tables, UnitSystem units) {
  Sheet sheet{crossing, assessment, tables};
  const Result<QSizeF> paper = paper_size(text_from(crossing.sheet.paper.value_or("a3")));
  if (!paper) return tl::unexpected(paper.error());
  sheet.paper_mm = *paper;
  sheet.units = units;
  sheet.scale = crossing.sheet.scale.value_or(0);
  return sheet;
}

Result<std::vector<Page>> sheet_pages(const Sheet& sheet, SheetPart part) {
  std::vector<Page> pages;
  const auto add = [&](std::vector<Page> more) {
    pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  if (part == SheetPart::sheet || part == SheetPart::all) {
    Result<std::vector<Page>> drawn = crossing_pages(sheet);
    if (!drawn) return drawn;
    add(std::move(*drawn));
  }
  if (part == SheetPart::working || part == SheetPart::all) add(working_pages(sheet));
  if (part == SheetPart::card || part == SheetPart::all) add(card_pages(sheet));
  if (part == SheetPart::permit || part == SheetPart::all) add(permit_pages(sheet));
  const auto& records = sheet.crossing.record;
  const bool read = std::any_of(records.begin(), records.end(), [](const DayRecord& r) { return !r.readings.empty(); });
  if (part == SheetPart::as_built || (part == SheetPart::all && read)) {
    Result<std::vector<Page>> built = as_built_pages(sheet);
    if (!built) return built;
    add(std::move(*built));
  }
  return pages;
}

QString known_papers() {
  return QStringLiteral("a4, a3, a2, letter, tabloid, ansi-d");
}

Result<QSizeF> paper_size(const QString& name) {
  struct Size {
    const char* name;
    QSizeF size;
  };
  static const Size papers[] = {{"a4", {297, 210}},         {"a3", {420, 297}},          {"a2", {594, 420}},
                                {"letter", {279.4, 215.9}}, {"tabloid", {431.8, 279.4}}, {"ansi-d", {863.6, 558.8}}};
  for (const Size& paper : papers)
    if (name == QLatin1String(paper.name)) return paper.size;
  return fail("paper", name.toStdString(), known_papers().toStdString());
}

Result<void> write_sheet_pdf(const Sheet& sheet, const QString& path, SheetPart part) {
  const Result<std::vector<Page>> pages = sheet_pages(sheet, part);
  if (!pages) return tl::unexpected(pages.error());
  return write_pages_pdf(*pages, text_from(sheet.crossing.name), path);
}

Result<void> write_card_png(const Sheet& sheet, const QString& path) {
  constexpr int phone_px = 1080;
  return write_pages_png(card_pages(sheet), phone_px, path);
}

Result<void> write_sheet_svg(const Sheet& sheet, const QString& path) {
  const Result<std::vector<Page>> pages = crossing_pages(sheet);
  if (!pages) return tl::unexpected(pages.error());
  return save_atomically(path.toStdString(), page_svg(pages->front(), text_from(sheet.crossing.name)).toStdString());
}

}  // namespace burrow
