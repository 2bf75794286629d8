#include <QCoreApplication>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "parts.h"
#include "views.h"

namespace burrow {

namespace {

constexpr double margin = 10;
constexpr double strip_height = 56;
const QColor soft(0x50, 0x50, 0x50);
const TextStyle small{2.2}, body{2.5};

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
    const Crossing& c = sheet_.crossing;
    const QRectF band(box_.left(), box_.top(), box_.width(), 7);
    paper_.rect(band, verdict_colour(sheet_.assessment.verdict));
    paper_.text({band.left() + 2, band.bottom() - 2.2}, text_from(verdict_title(sheet_.assessment.verdict)).toUpper(),
                {3.6, QFont::Bold, Qt::white});
    double y = band.bottom();
    const QRectF name(box_.left(), y, box_.width(), 7.4);
    paper_.short_text({name.left() + 2, name.bottom() - 2.4}, text_from(c.name), {3.8, QFont::DemiBold},
                      name.width() - 4);
    y = name.bottom();
    paper_.line({box_.left(), y}, {box_.right(), y}, {0.2});
    const auto text = [&](double v, Dimension d) { return text_from(format(v, d, sheet_.units)); };
    const double half = box_.width() / 2, row = 5.2;
    cell(0, y, half, row, tr("scale"), scale_words(scale_, sheet_.units));
    const double times = std::max(1.0, c.sheet.vertical_exaggeration->v);
    cell(half, y, half, row, tr("heights"), times > 1 ? tr("× %1").arg(times) : tr("as lengths, × 1"));
    y += row;
    cell(0, y, half, row, tr("launch axis"), text(c.bore.launch.elevation.m, Dimension::station));
    cell(half, y, half, row, tr("grade"), text(c.bore.launch.grade.v, Dimension::grade));
    y += row;
    cell(0, y, half, row, tr("bore"), text(c.bore.exit.station.m - c.bore.launch.station.m, Dimension::length));
    cell(half, y, half, row, tr("units"), sheet_.units == UnitSystem::us ? tr("feet, inches") : tr("metres"));
    y += row;
    cell(0, y, half, row, tr("sheet"), text_from(c.sheet.number));
    const auto& geo = c.site.georeference;
    cell(half, y, half, row, tr("map system"),
         geo && !geo->crs.empty() ? text_from(name_of_crs(geo->crs)) : tr("local"));
    y += row;
    revisions(y);
    paper_.rect(box_, {}, {0.5});
  }

 private:
  void cell(double x, double y, double w, double h, const QString& what, const QString& value) {
    const QRectF box(box_.left() + x, y, w, h);
    paper_.rect(box, {}, {0.15});
    const QRectF shown_text = paper_.text({box.left() + 1.2, box.bottom() - 1.6}, what, {2, QFont::Normal, soft});
    paper_.short_text({box.left() + 16, box.bottom() - 1.6}, value, body,
                      box.right() - 1 - std::max(box.left() + 16, shown_text.right()));
  }

  /// The revision of the file, and a line to write the next one on.
  void revisions(double y) {
    const SheetSettings& s = sheet_.crossing.sheet;
    const double shares[] = {0.12, 0.22, 0.22, 0.22, 0.22};
    const QString titles[] = {tr("rev."), tr("date"), tr("drawn"), tr("checked"), tr("approved")};
    const QString values[] = {text_from(s.revision), text_from(s.date.value_or("")), text_from(s.drawn_by),
                              text_from(s.checked_by), QString()};
    const double h = (box_.bottom() - y) / 3;
    double x = box_.left();
    for (int c = 0; c < 5; ++c) {
      const double w = box_.width() * shares[c];
      for (int r = 0; r < 3; ++r) paper_.rect(QRectF(x, y + r * h, w, h), {}, {0.15});
      paper_.short_text({x + 1, y + h * 3 - 1.4}, titles[c], {2, QFont::Normal, soft}, w - 2);
      paper_.short_text({x + 1, y + h * 2 - 1.4}, values[c], body, w - 2);
      x += w;
    }
  }

  Paper paper_;
  const Sheet& sheet_;
  QRectF box_;
  double scale_;
};

/// What the lines mean; of the kinds of utility those that are there.
void legend(Paper& paper, const Sheet& sheet, const QRectF& box) {
  paper.text({box.left(), box.top() + 3}, tr("Lines"), {2.8, QFont::DemiBold});
  double y = box.top() + 6.4;
  double x = box.left();
  const double column = box.width() / 2;
  const auto row = [&](const Stroke& stroke, const QString& words) {
    if (y > box.bottom()) {
      if (x > box.left() + 1) return;
      x += column;
      y = box.top() + 6.4;
    }
    paper.line({x, y - 0.8}, {x + 9, y - 0.8}, stroke);
    paper.short_text({x + 10.5, y}, words, small, column - 11.5);
    y += 3.7;
  };
  row({0.4, QColor(0xb0, 0x20, 0x10)}, tr("bore, hole as opened"));
  row({2, QColor(0xd8, 0x4a, 0x2a, 60)}, tr("nine bores in ten"));
  row({0.5, QColor(0x4a, 0x3a, 0x20)}, tr("ground"));
  row({0.2, QColor(0x80, 0x60, 0x30), {2, 1}}, tr("top of a layer"));
  if (sheet.crossing.site.water) row({0.25, QColor(0x18, 0x60, 0xb0), {3, 1, 0.5, 1}}, tr("water table"));
  row({0.3, Qt::black, {2, 0.8}}, tr("edge of a pit"));
  if (!sheet.crossing.site.boundaries.empty()) row({0.35, Qt::black, {5, 1, 0.8, 1, 0.8, 1}}, tr("boundary"));
  for (const UtilityKindRow& kind : sheet.tables.utilities)
    if (std::any_of(sheet.crossing.site.utilities.begin(), sheet.crossing.site.utilities.end(),
                    [&](const Utility& u) { return u.kind == kind.kind; }))
      row(utility_stroke(sheet.tables, kind.kind, 0.45), text_from(kind.name));
  if (!sheet.crossing.site.utilities.empty() && y <= box.bottom())
    paper.short_text({x, y}, tr("numbers: table of utilities"), small, column - 1);
}

void check_bar(Paper& paper, const QPointF& at) {
  paper.line(at, at + QPointF(100, 0), {0.35});
  for (int k = 0; k <= 10; ++k) {
    const double x = at.x() + 10 * k;
    paper.line({x, at.y()}, {x, at.y() - (k % 5 == 0 ? 2.2 : 1.3)}, {0.2});
  }
  paper.text(at + QPointF(0, 3), tr("100 mm when printed at actual size"), small);
}

/// The worst of them; all stand on the pages that follow.
void worst_findings(Paper& paper, const Sheet& sheet, const QRectF& box) {
  paper.short_text({box.left(), box.top() + 3}, tr("Findings, worst first"), {2.8, QFont::DemiBold}, box.width());
  double y = box.top() + 4.6;
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
    const QString severity = f.missing ? tr("missing") : text_from(burrow::translated(burrow::word_of(f.severity)));
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
                   {2.2, QFont::DemiBold}, box.width());
}

}  // namespace

std::vector<Flow::Area> new_text_page(std::vector<Page>& pages, const Sheet& sheet, const QString& title) {
  Page page;
  page.size_mm = sheet.paper_mm;
  page.frame_mm = QRectF(QPointF(0, 0), sheet.paper_mm).adjusted(margin, margin, -margin, -margin);
  pages.push_back(std::move(page));
  Page& last = pages.back();
  Paper paper(last);
  const QRectF in = last.frame_mm;
  const QRectF shown_text = paper.text({in.left() + 3, in.top() + 5}, title, {3.2, QFont::Bold});
  paper.short_text({in.right() - 3, in.top() + 5}, text_from(sheet.crossing.name), {2.8},
                   in.right() - 6 - shown_text.right() - 6, Align::right);
  paper.line({in.left(), in.top() + 7}, {in.right(), in.top() + 7}, {0.25});
  paper.rect(in, {}, {0.35});
  const QRectF room = in.adjusted(4, 10, -4, -8);
  const int columns = std::max(1, static_cast<int>(room.width() / 180));
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
    const QRectF right = paper.text({in.right() - 2, in.bottom() - 1.6}, which, small, Align::right);
    QStringList id{
        text_from(sheet.crossing.sheet.number),
        sheet.crossing.sheet.revision.empty() ? QString() : tr("rev. %1").arg(text_from(sheet.crossing.sheet.revision)),
        text_from(sheet.crossing.sheet.date.value_or(""))};
    id.removeAll(QString());
    paper.short_text({right.left() - 4, in.bottom() - 1.6}, id.join(QStringLiteral(" · ")), small, 70, Align::right);
  }
}

Result<std::vector<Page>> crossing_pages(const Sheet& sheet) {
  std::vector<Page> pages(1);
  Page& page = pages.front();
  page.size_mm = sheet.paper_mm;
  page.frame_mm = QRectF(QPointF(0, 0), sheet.paper_mm).adjusted(margin, margin, -margin, -margin);
  const QRectF in = page.frame_mm;
  const QRectF area = in.adjusted(2, 2, -2, -(strip_height + 5));
  const Result<SheetViews> views = place_views(sheet, area);
  if (!views) return tl::unexpected(views.error());
  draw_side(page, sheet, *views);
  draw_plan(page, sheet, *views);

  Paper paper(page);
  const QRectF strip(in.left() + 3, in.bottom() - strip_height - 2, in.width() - 6, strip_height - 4);
  const double block = std::min(125.0, strip.width() * 0.42);
  TitleBlock(page, sheet, QRectF(strip.right() - block + 1, strip.top(), block, strip.height()), views->scale).draw();
  const double rest = strip.width() - block - 4;
  const double legend_width = std::min(78.0, rest * 0.5);
  const double foot = 13;
  legend(paper, sheet, QRectF(strip.left(), strip.top(), legend_width, strip.height() - foot - 2));
  worst_findings(
      paper, sheet,
      QRectF(strip.left() + legend_width + 3, strip.top(), rest - legend_width - 4, strip.height() - foot - 1));
  check_bar(paper, {strip.left(), strip.bottom() - 4});
  const QString caution =
      tr("Locate before digging; expose before passing; protect the pit; restrain every air coupling and bleed the "
         "line before uncoupling. Local codes and the competent person at the excavation govern.");
  const double beside = rest - 104;
  if (beside > 45)
    paper.paragraph(QRectF(strip.left() + 104, strip.bottom() - foot + 2, beside - 2, foot), caution, small);
  paper.rect(in, {}, {0.35});
  add_tables(pages, sheet);
  number_pages(pages, sheet);
  return pages;
}

}  // namespace burrow
