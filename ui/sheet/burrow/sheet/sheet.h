#pragma once
/// The crossing on paper: the sheet with plan and side elevation to scale and its tables, the card for the pit, the
/// permit to bore, the working of every check, the record of what was built.

#include <QSizeF>
#include <QString>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/sheet/page.h"
#include "burrow/tables/tables.h"

namespace burrow {

enum class SheetPart { sheet, card, permit, working, as_built, all };
template <>
struct EnumNames<SheetPart> {
  static constexpr std::pair<SheetPart, std::string_view> list[] = {
      {SheetPart::sheet, "sheet"},     {SheetPart::card, "card"},         {SheetPart::permit, "permit"},
      {SheetPart::working, "working"}, {SheetPart::as_built, "as-built"}, {SheetPart::all, "all"}};
};

struct Sheet {
  const Crossing& crossing;
  const Assessment& assessment;
  const Tables& tables;
  QSizeF paper_mm{420, 297};
  UnitSystem units = UnitSystem::metric;
  double scale = 0;      ///< 1:scale; 0: the largest standard scale that fits
  double enlarged = 1;   ///< a large paper is laid out as a smaller one and enlarged, type and lines with it
  std::string record{};  ///< of the day, for the as-built record; empty: the newest with readings
};

/// With the paper and scale that the crossing's file names.   Errors: a paper that nobody knows.
Result<Sheet> sheet_of(const Crossing& crossing, const Assessment& assessment, const Tables& tables, UnitSystem units);

/// All pages of a part, laid out; the as-built record is in all of them where there are readings. Errors: no readings
/// for the as-built record; a scale at which the drawing does not fit (names the largest that does).
/// Evidence: SheetPages.*
Result<std::vector<Page>> sheet_pages(const Sheet& sheet, SheetPart part);

/// Paper sizes by name ("a3", "a4", "letter", …; "ansi-b" is "tabloid"), landscape, in millimetres.
Result<QSizeF> paper_size(const QString& name);
QString known_papers();

/// Writes the pages as PDF, true to scale when printed at actual size.   Evidence: PaperOut.Pdf_*
Result<void> write_sheet_pdf(const Sheet& sheet, const QString& path, SheetPart part = SheetPart::sheet);

/// Writes the sides of the card one below the other as PNG, as wide as a phone's screen.   Evidence: PaperOut.Png_*
Result<void> write_card_png(const Sheet& sheet, const QString& path);

/// Writes the drawing page as SVG in millimetres.
Result<void> write_sheet_svg(const Sheet& sheet, const QString& path);

}  // namespace burrow
