#include "burrow/sheet/page_out.h"

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QPageLayout>
#include <QPageSize>
#include <QPainterPath>
#include <QPdfWriter>
#include <QPrinter>
#include <QXmlStreamWriter>
#include <cmath>

#include "burrow/file/disk.h"
#include "burrow/language/say.h"
#include "pdf_finish.h"

namespace burrow {

namespace {

constexpr double em = 100;

QPen pen_of(const Stroke& stroke) {
  if (!(stroke.width_mm > 0)) return QPen(Qt::NoPen);
  QPen pen(stroke.colour, stroke.width_mm, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
  if (!stroke.dash_mm.isEmpty()) {
    QList<qreal> pattern;
    for (const double length : stroke.dash_mm) pattern << length / stroke.width_mm;
    pen.setDashPattern(pattern);
  }
  return pen;
}

void paint_item(QPainter& painter, const PageItem& item) {
  switch (item.kind) {
    case PageItemKind::line:
      painter.setPen(pen_of(item.stroke));
      painter.drawPolyline(item.points);
      return;
    case PageItemKind::area:
      painter.setPen(pen_of(item.stroke));
      painter.setBrush(item.fill.isValid() ? QBrush(item.fill) : QBrush(Qt::NoBrush));
      painter.drawPolygon(item.points);
      painter.setBrush(Qt::NoBrush);
      return;
    case PageItemKind::text:
      break;
  }
  painter.save();
  painter.translate(item.points.front());
  painter.rotate(-item.rotated_deg);
  painter.scale(item.style.size_mm / em, item.style.size_mm / em);
  painter.setFont(paper_font(item.style.weight));
  painter.setPen(item.style.colour);
  painter.drawText(QPointF(0, 0), item.text);
  painter.restore();
}

QPageLayout layout_of(const QSizeF& size_mm) {
  return QPageLayout(QPageSize(size_mm, QPageSize::Millimeter, QString(), QPageSize::ExactMatch), QPageLayout::Portrait,
                     QMarginsF(0, 0, 0, 0));
}

QString mm(double value) {
  return QString::number(value, 'f', 5);
}

QString path_text(const QPainterPath& path) {
  QString d;
  for (int i = 0; i < path.elementCount(); ++i) {
    const QPainterPath::Element& e = path.elementAt(i);
    if (e.type == QPainterPath::MoveToElement)
      d += QLatin1Char('M');
    else if (e.type == QPainterPath::LineToElement)
      d += QLatin1Char('L');
    else if (e.type == QPainterPath::CurveToElement)
      d += QLatin1Char('C');
    d += mm(e.x) + QLatin1Char(' ') + mm(e.y) + QLatin1Char(' ');
  }
  return d;
}

QPainterPath outline_of(const PageItem& item) {
  QPainterPath path;
  if (item.kind == PageItemKind::text) {
    path.addText(QPointF(0, 0), paper_font(item.style.weight), item.text);
    QTransform at;
    at.translate(item.points.front().x(), item.points.front().y());
    at.rotate(-item.rotated_deg);
    at.scale(item.style.size_mm / em, item.style.size_mm / em);
    return at.map(path);
  }
  path.addPolygon(item.points);
  return path;
}

void colour_attribute(QXmlStreamWriter& out, const QString& name, const QColor& colour) {
  out.writeAttribute(name, colour.name());
  if (colour.alpha() < 255)
    out.writeAttribute(name + QStringLiteral("-opacity"), QString::number(colour.alphaF(), 'f', 3));
}

void write_item(QXmlStreamWriter& out, const PageItem& item, int clip) {
  out.writeStartElement(QStringLiteral("path"));
  QString d = path_text(outline_of(item));
  if (item.kind == PageItemKind::area) d += QLatin1Char('Z');
  out.writeAttribute(QStringLiteral("d"), d);
  if (clip >= 0) out.writeAttribute(QStringLiteral("clip-path"), QStringLiteral("url(#c%1)").arg(clip));
  if (item.kind == PageItemKind::text) {
    colour_attribute(out, QStringLiteral("fill"), item.style.colour);
    out.writeAttribute(QStringLiteral("aria-label"), item.text);
  } else {
    if (item.kind == PageItemKind::area && item.fill.isValid())
      colour_attribute(out, QStringLiteral("fill"), item.fill);
    else
      out.writeAttribute(QStringLiteral("fill"), QStringLiteral("none"));
    if (item.stroke.width_mm > 0) {
      colour_attribute(out, QStringLiteral("stroke"), item.stroke.colour);
      out.writeAttribute(QStringLiteral("stroke-width"), mm(item.stroke.width_mm));
      QStringList dashes;
      for (const double length : item.stroke.dash_mm) dashes << mm(length);
      if (!dashes.isEmpty()) out.writeAttribute(QStringLiteral("stroke-dasharray"), dashes.join(QLatin1Char(' ')));
    }
  }
  out.writeEndElement();
}

}  // namespace

void paint_page(QPainter& painter, const Page& page) {
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setRenderHint(QPainter::TextAntialiasing);
  QRectF clip;
  for (const PageItem& item : page.items) {
    if (item.clip != clip) {
      clip = item.clip;
      painter.setClipping(false);
      if (!clip.isNull()) painter.setClipRect(clip);
    }
    paint_item(painter, item);
  }
  painter.setClipping(false);
}

Result<void> write_pages_pdf(const std::vector<Page>& pages, const QString& title, const QString& path,
                             const QString& author) {
  if (pages.empty()) return fail(path.toStdString(), "no page", "at least one");
  QByteArray bytes;  // whole before the file is touched: an old one stays where a disk is full
  {
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(1200);
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Burrowline"));
    writer.setPageLayout(layout_of(pages.front().size_mm));
    QPainter painter;
    if (!painter.begin(&writer)) return fail(path.toStdString(), "the page could not be started", "more memory");
    for (std::size_t i = 0; i < pages.size(); ++i) {
      if (i > 0) {
        writer.setPageLayout(layout_of(pages[i].size_mm));
        writer.newPage();
      }
      painter.resetTransform();
      painter.scale(writer.resolution() / 25.4, writer.resolution() / 25.4);
      paint_page(painter, pages[i]);
    }
    if (!painter.end()) return fail(path.toStdString(), "the page could not be finished", "more memory");
  }
  bytes = finished_pdf(bytes, pages, author);
  return save_atomically(path.toStdString(),
                         std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

Result<void> write_pages_png(const std::vector<Page>& pages, int width_px, const QString& path) {
  if (pages.empty()) return fail(path.toStdString(), "no page", "at least one");
  constexpr int apart_px = 12;
  int height = -apart_px;
  for (const Page& page : pages)
    height += apart_px + static_cast<int>(std::lround(page.size_mm.height() / page.size_mm.width() * width_px));
  QImage image(width_px, height, QImage::Format_RGB32);
  if (image.isNull()) return fail(path.toStdString(), "the picture could not be started", "more memory");
  image.fill(QColor(0xb0, 0xb0, 0xb0));
  QPainter painter(&image);
  double top = 0;
  for (const Page& page : pages) {
    const double scale = width_px / page.size_mm.width();
    painter.resetTransform();
    painter.translate(0, top);
    painter.fillRect(QRectF(0, 0, width_px, page.size_mm.height() * scale), Qt::white);
    painter.scale(scale, scale);
    paint_page(painter, page);
    top += std::round(page.size_mm.height() * scale) + apart_px;
  }
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG")) return fail(path.toStdString(), "the picture could not be written", "more memory");
  return save_atomically(path.toStdString(),
                         std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

QByteArray page_svg(const Page& page, const QString& title) {
  QByteArray bytes;
  QXmlStreamWriter out(&bytes);
  out.setAutoFormatting(true);
  out.writeStartDocument();
  out.writeStartElement(QStringLiteral("svg"));
  out.writeDefaultNamespace(QStringLiteral("http://www.w3.org/2000/svg"));
  const QString w = mm(page.size_mm.width()), h = mm(page.size_mm.height());
  out.writeAttribute(QStringLiteral("width"), w + QStringLiteral("mm"));
  out.writeAttribute(QStringLiteral("height"), h + QStringLiteral("mm"));
  out.writeAttribute(QStringLiteral("viewBox"), QStringLiteral("0 0 %1 %2").arg(w, h));
  out.writeTextElement(QStringLiteral("title"), title);
  QList<QRectF> clips;
  out.writeStartElement(QStringLiteral("defs"));
  for (const PageItem& item : page.items) {
    if (item.clip.isNull() || clips.contains(item.clip)) continue;
    out.writeStartElement(QStringLiteral("clipPath"));
    out.writeAttribute(QStringLiteral("id"), QStringLiteral("c%1").arg(clips.size()));
    out.writeEmptyElement(QStringLiteral("rect"));
    out.writeAttribute(QStringLiteral("x"), mm(item.clip.x()));
    out.writeAttribute(QStringLiteral("y"), mm(item.clip.y()));
    out.writeAttribute(QStringLiteral("width"), mm(item.clip.width()));
    out.writeAttribute(QStringLiteral("height"), mm(item.clip.height()));
    out.writeEndElement();
    clips << item.clip;
  }
  out.writeEndElement();
  out.writeEmptyElement(QStringLiteral("rect"));
  out.writeAttribute(QStringLiteral("width"), w);
  out.writeAttribute(QStringLiteral("height"), h);
  out.writeAttribute(QStringLiteral("fill"), QStringLiteral("#ffffff"));
  for (const PageItem& item : page.items)
    write_item(out, item, item.clip.isNull() ? -1 : static_cast<int>(clips.indexOf(item.clip)));
  out.writeEndElement();
  out.writeEndDocument();
  return bytes;
}

namespace {

QSizeF largest_of(const std::vector<Page>& pages) {
  QSizeF largest;
  for (const Page& page : pages) largest = largest.expandedTo(page.size_mm);
  return largest;
}

/// The printing system does not tell of a disk that was full; the end of the file does.
bool whole_pdf(const QString& path) {
  QFile file(path);
  constexpr qint64 end = 16;
  return file.open(QIODevice::ReadOnly) && file.seek(std::max<qint64>(0, file.size() - end)) &&
         file.readAll().contains("%%EOF");
}

}  // namespace

Result<void> print_pages(QPrinter& printer, const std::vector<Page>& pages) {
  if (pages.empty()) return fail("pages", "no page", "at least one");
  printer.setFullPage(true);
  // Paper may be changed within a job where the job becomes a PDF, as on the way to a printer. A preview has one paper
  // for all of it: the largest, with the edge of each page drawn upon it.
  const bool changes_paper = printer.paintEngine()->type() == QPaintEngine::Pdf;
  const auto set_size = [&](const QSizeF& size_mm) { printer.setPageLayout(layout_of(size_mm)); };
  const QSizeF paper = changes_paper ? pages.front().size_mm : largest_of(pages);
  set_size(paper);
  QPainter painter;
  const std::string to =
      printer.outputFileName().isEmpty() ? printer.printerName().toStdString() : printer.outputFileName().toStdString();
  if (!painter.begin(&printer))
    return fail(to, translated("nothing could be written there"), translated("a place that can be written"));
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0) {
      if (changes_paper) set_size(pages[i].size_mm);
      printer.newPage();
    }
    painter.resetTransform();
    painter.scale(printer.resolution() / 25.4, printer.resolution() / 25.4);
    if (!changes_paper && pages[i].size_mm != paper) {
      painter.setPen(QPen(Qt::lightGray, 0.2));
      painter.drawRect(QRectF({0, 0}, pages[i].size_mm));
    }
    paint_page(painter, pages[i]);
  }
  const bool ended = painter.end() && printer.printerState() != QPrinter::Error;
  if (!ended || (changes_paper && !printer.outputFileName().isEmpty() && !whole_pdf(printer.outputFileName())))
    return fail(to, translated("only a part of it could be written"), translated("room on the disk"));
  return {};
}

}  // namespace burrow
