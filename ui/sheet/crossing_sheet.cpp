#include <QCoreApplication>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "front_page.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

constexpr double margin = 10;
const TextStyle body{2.5}, heads{3.5, QFont::DemiBold};

QString tr(const char* text, const char* context = nullptr, int n = -1) {
  return QCoreApplication::translate("sheet", text, context, n);
}

void check_bar(Paper& paper, const QPointF& at, double enlarged) {
  const double mm = 1 / enlarged;
  paper.line(at, at + QPointF(100 * mm, 0), {0.35});
  for (int k = 0; k <= 10; ++k) {
    const double x = at.x() + 10 * k * mm;
    paper.line({x, at.y()}, {x, at.y() - (k % 5 == 0 ? 2.2 : 1.3)}, {0.18});
  }
  paper.short_text(at + QPointF(0, 3.2), tr("100 mm when printed at actual size"), body, 100 * mm);
}

/// The worst of them; all stand on the pages that follow.
void worst_findings(Paper& paper, const Sheet& sheet, const QRectF& box) {
  paper.short_text({box.left(), box.top() + 3}, tr("Findings, worst first"), heads, box.width());
  double y = box.top() + 5;
  const QString standing = text_from(headline(sheet.assessment, sheet.units));
  const QStringList lines = wrapped(standing, body, box.width());
  constexpr qsizetype most = 4;  // the next page has the whole of it
  for (qsizetype i = 0; i < std::min(lines.size(), most); ++i, y += line_height_mm(body))
    paper.short_text({box.left(), y + body.size_mm}, i + 1 < most ? lines[i] : lines.mid(i).join(QLatin1Char(' ')),
                     body, box.width());
  y += 0.6;
  std::size_t shown = 0;
  const double last = box.bottom() - 3.4;
  for (const Finding& f : sheet.assessment.findings) {
    const QString severity = f.missing ? tr("missing") : text_from(burrow::translated_word(f.severity));
    const QString text = text_from(finding_text(f, sheet.units));
    const QString words = (f.muted ? tr("%1. %2: %3 (accepted)") : QStringLiteral("%1. %2: %3"))
                              .arg(QString::number(shown + 1), severity, text);
    const double height = static_cast<double>(wrapped(words, body, box.width()).size()) * line_height_mm(body);
    if (y + height > last) break;
    y += paper.paragraph(QRectF(box.left(), y, box.width(), height), words, body) + 0.3;
    ++shown;
  }
  const std::size_t all = sheet.assessment.findings.size();
  paper.short_text({box.left(), box.bottom() - 0.8},
                   all == 0 ? tr("None.")
                   : shown == all
                       ? tr("Limits and sources: next page.")
                       : tr("%n more, limits and sources: next page.", nullptr, static_cast<int>(all - shown)),
                   {2.5, QFont::DemiBold}, box.width());
}

QString caution_words() {
  return tr(
      "Locate before digging; expose before passing; protect the pit; restrain every air coupling and bleed the "
      "line before uncoupling. Local codes and the competent person at the excavation govern.");
}

}  // namespace

std::vector<Flow::Area> new_text_page(std::vector<Page>& pages, const Sheet& sheet, const QString& title,
                                      TextColumns wanted) {
  Page page;
  page.size_mm = sheet.paper_mm;
  page.frame_mm = QRectF(QPointF(0, 0), sheet.paper_mm).adjusted(margin, margin, -margin, -margin);
  pages.push_back(std::move(page));
  Page& last = pages.back();
  Paper paper(last);
  const QRectF in = last.frame_mm;
  const QRectF shown_text = paper.text({in.left() + 3, in.top() + 5}, title, {3.5, QFont::Bold});
  paper.short_text({in.right() - 3, in.top() + 5}, text_from(sheet.crossing.name), {2.8},
                   in.right() - 6 - shown_text.right() - 6, Align::right);
  paper.line({in.left(), in.top() + 7}, {in.right(), in.top() + 7}, {0.25});
  paper.rect(in, {}, {0.35});
  const QRectF room = in.adjusted(4, 10, -4, -8);
  const int columns = std::max(wanted == TextColumns::two ? 2 : 1, static_cast<int>(room.width() / 180));
  const double between = 8, width = (room.width() - between * (columns - 1)) / columns;
  std::vector<Flow::Area> areas;
  areas.reserve(static_cast<std::size_t>(columns));
  for (int c = 0; c < columns; ++c)
    areas.push_back({&last, QRectF(room.left() + c * (width + between), room.top(), width, room.height())});
  return areas;
}

void number_pages(std::vector<Page>& pages, const Sheet& sheet) {
  int number = 0;
  for (Page& page : pages) {
    Paper paper(page);
    const QRectF in = page.frame_mm;
    const QString which = tr("page %1 of %2").arg(++number).arg(pages.size());
    const QRectF right = paper.text({in.right() - 2, in.bottom() - 1.6}, which, body, Align::right);
    QStringList id{
        text_from(sheet.crossing.sheet.number),
        sheet.crossing.sheet.revision.empty() ? QString() : tr("rev. %1").arg(text_from(sheet.crossing.sheet.revision)),
        text_from(sheet.crossing.sheet.date.value_or(""))};
    id.removeAll(QString());
    paper.short_text({right.left() - 4, in.bottom() - 1.6}, id.join(QStringLiteral(" · ")), body, 70, Align::right);
  }
}

Result<std::vector<Page>> crossing_pages(const Sheet& sheet) {
  std::vector<Page> pages(1);
  Page& page = pages.front();
  page.size_mm = sheet.paper_mm;
  page.frame_mm = QRectF(QPointF(0, 0), sheet.paper_mm).adjusted(margin, margin, -margin, -margin);
  const QRectF in = page.frame_mm;
  const double strip_height = title_block_height() + 4;
  const QRectF area = in.adjusted(2, 2, -2, -(strip_height + 5));
  const Result<SheetViews> views = place_views(sheet, area);
  if (!views) return tl::unexpected(views.error());
  draw_side(page, sheet, *views);
  draw_band(page, sheet, *views);
  draw_plan(page, sheet, *views);

  Paper paper(page);
  const QRectF strip(in.left() + 3, in.bottom() - strip_height - 2, in.width() - 6, strip_height - 4);
  const double block = std::min(125.0, strip.width() * 0.42);
  draw_title_block(page, sheet, QRectF(strip.right() - block + 1, strip.top(), block, strip.height()), views->scale);
  const double rest = strip.width() - block - 4, foot = 13;
  const double legend_width = std::min(112.0, rest * 0.5);
  draw_legend(paper, sheet, QRectF(strip.left(), strip.top(), legend_width, strip.height() - foot - 2));
  worst_findings(
      paper, sheet,
      QRectF(strip.left() + legend_width + 3, strip.top(), rest - legend_width - 4, strip.height() - foot - 1));
  // The bar that tells whether the print is true, and the one to measure the ground with.
  const double check = 100 / sheet.enlarged, beside = rest - check - 10;
  check_bar(paper, {strip.left(), strip.bottom() - 4}, sheet.enlarged);
  const double ground = beside < 80 ? beside - 8 : std::min(60.0, beside * 0.6);
  draw_scale_bar(paper, sheet, {strip.left() + check + 6, strip.bottom() - 4}, ground, views->scale);
  const double left = beside - ground - 14;
  if (left > 60)
    paper.paragraph(QRectF(strip.left() + check + ground + 20, strip.bottom() - foot + 1, left, foot), caution_words(),
                    body);
  paper.rect(in, {}, {0.35});
  add_tables(pages, sheet, views->band.isNull());
  number_pages(pages, sheet);
  count_unverified(pages, sheet);
  return pages;
}

}  // namespace burrow
