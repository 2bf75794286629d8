#pragma once
/// Pages onto devices: PDF, printer, SVG, PNG.

#include <QPagedPaintDevice>
#include <QPainter>
#include <functional>

#include "burrow/base/result.h"
#include "burrow/sheet/page.h"

class QPrinter;

namespace burrow {

/// One painter for every device. The painter's units are millimetres on paper, its origin the corner of the page.
void paint_page(QPainter& painter, const Page& page);

/// True to scale when printed at actual size: 1200 dpi, no margins, the typeface embedded, written by Qt as PDF/A-1b
/// (nobody has validated it), with title, author and bookmarks.
/// Errors: no page; the file cannot be written: what stood there is as it was.   Evidence: PaperOut.Pdf_*,
/// PlacesThatFail.*
Result<void> write_pages_pdf(const std::vector<Page>& pages, const QString& title, const QString& path,
                             const QString& author = {});

/// One page, in millimetres; texts as outlines, so that they look the same without the typeface; each carries its words
/// as a label.   Evidence: PaperOut.Svg_*
QByteArray page_svg(const Page& page, const QString& title);

/// Pages one below the other on white, as a picture that many pixels wide.
/// Errors: no page; the file cannot be written.   Evidence: PaperOut.Png_*
Result<void> write_pages_png(const std::vector<Page>& pages, int width_px, const QString& path);

/// On a printer, at actual size, as much of each page as its paper takes.
/// Errors: no page; nothing or not all could be written, where the printing system tells.   Evidence:
/// PlacesThatFail.Print_*
Result<void> print_pages(QPrinter& printer, const std::vector<Page>& pages);

}  // namespace burrow
