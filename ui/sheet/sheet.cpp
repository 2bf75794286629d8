#include "burrow/sheet/sheet.h"

#include <QCoreApplication>
#include <algorithm>
#include <iterator>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"
#include "burrow/sheet/page_out.h"
#include "parts.h"

namespace burrow {

QString shown(const std::optional<double>& value, Dimension dimension, UnitSystem units) {
  return value ? text_from(format(*value, dimension, units)) : QStringLiteral("–");
}

QString utility_name(const Utility& utility) {
  return utility.name.empty() ? text_from(translated_word(utility.kind)) : text_from(utility.name);
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

namespace {

/// Type grows with the paper: who looks at a large sheet stands further off.
double enlarged_for(const QSizeF& paper_mm) {
  constexpr double a2_mm = 550, a1_mm = 800;
  return paper_mm.width() >= a1_mm ? 1.5 : paper_mm.width() >= a2_mm ? 1.25 : 1;
}

QRectF larger(const QRectF& box, double by) {
  return box.isNull() ? box : QRectF(box.topLeft() * by, box.size() * by);
}

void enlarge(std::vector<Page>& pages, double by) {
  if (by == 1) return;
  for (Page& page : pages) {
    page.size_mm *= by;
    page.frame_mm = larger(page.frame_mm, by);
    for (PageMark& mark : page.marks) mark.y_mm *= by;
    for (PageItem& item : page.items) {
      for (QPointF& p : item.points) p *= by;
      item.stroke.width_mm *= by;
      for (double& length : item.stroke.dash_mm) length *= by;
      item.style.size_mm *= by;
      item.box = larger(item.box, by);
      item.clip = larger(item.clip, by);
    }
  }
}

/// Laid out on the smaller paper, then enlarged.
template <class LayOut>
Result<std::vector<Page>> in_size(const Sheet& sheet, LayOut lay_out) {
  Sheet small = sheet;
  small.enlarged = enlarged_for(sheet.paper_mm);
  small.paper_mm /= small.enlarged;
  Result<std::vector<Page>> pages = lay_out(small);
  if (pages) enlarge(*pages, small.enlarged);
  return pages;
}

}  // namespace

Result<std::vector<Page>> sheet_pages(const Sheet& sheet, SheetPart part) {
  std::vector<Page> pages;
  const auto add = [&](std::vector<Page> more, const char* name) {
    if (!more.empty()) more.front().name = QCoreApplication::translate("sheet", name);
    pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  if (part == SheetPart::sheet || part == SheetPart::all) {
    Result<std::vector<Page>> drawn = in_size(sheet, crossing_pages);
    if (!drawn) return drawn;
    add(std::move(*drawn), QT_TRANSLATE_NOOP("sheet", "Crossing sheet"));
  }
  if (part == SheetPart::working || part == SheetPart::all)
    add(*in_size(sheet, [](const Sheet& small) -> Result<std::vector<Page>> { return working_pages(small); }),
        QT_TRANSLATE_NOOP("sheet", "Calculation"));
  if (part == SheetPart::card || part == SheetPart::all)
    add(card_pages(sheet), QT_TRANSLATE_NOOP("sheet", "Setup card"));
  if (part == SheetPart::permit || part == SheetPart::all)
    add(permit_pages(sheet), QT_TRANSLATE_NOOP("sheet", "Permit to bore"));
  const auto& records = sheet.crossing.record;
  const bool read = std::any_of(records.begin(), records.end(), [](const DayRecord& r) { return !r.readings.empty(); });
  if (part == SheetPart::as_built || (part == SheetPart::all && read)) {
    Result<std::vector<Page>> built = as_built_pages(sheet);
    if (!built) return built;
    add(std::move(*built), QT_TRANSLATE_NOOP("sheet", "As-built record"));
  }
  return pages;
}

QString known_papers() {
  return QStringLiteral("a4, a3, a2, a1, letter, tabloid, ansi-b, ansi-c, ansi-d");
}

Result<QSizeF> paper_size(const QString& name) {
  struct Size {
    const char* name;
    QSizeF size;
  };
  static const Size papers[] = {{"a4", {297, 210}},         {"a3", {420, 297}},         {"a2", {594, 420}},
                                {"a1", {841, 594}},         {"letter", {279.4, 215.9}}, {"tabloid", {431.8, 279.4}},
                                {"ansi-b", {431.8, 279.4}}, {"ansi-c", {558.8, 431.8}}, {"ansi-d", {863.6, 558.8}}};
  for (const Size& paper : papers)
    if (name == QLatin1String(paper.name)) return paper.size;
  return fail("paper", name.toStdString(), known_papers().toStdString());
}

Result<void> write_sheet_pdf(const Sheet& sheet, const QString& path, SheetPart part) {
  const Result<std::vector<Page>> pages = sheet_pages(sheet, part);
  if (!pages) return tl::unexpected(pages.error());
  return write_pages_pdf(*pages, text_from(sheet.crossing.name), path, text_from(sheet.crossing.sheet.drawn_by));
}

Result<void> write_card_png(const Sheet& sheet, const QString& path) {
  constexpr int phone_px = 1080;
  return write_pages_png(card_pages(sheet), phone_px, path);
}

Result<void> write_sheet_svg(const Sheet& sheet, const QString& path) {
  const Result<std::vector<Page>> pages = sheet_pages(sheet, SheetPart::sheet);
  if (!pages) return tl::unexpected(pages.error());
  return save_atomically(path.toStdString(), page_svg(pages->front(), text_from(sheet.crossing.name)).toStdString());
}

}  // namespace burrow
