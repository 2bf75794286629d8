#pragma once
/// What a PDF has besides its pages: the author, and bookmarks to jump by.

#include <QByteArray>
#include <vector>

#include "burrow/sheet/page.h"

namespace burrow {

/// `pdf` as Qt writes it (a table of references, one list of pages), with what is added behind it as an incremental
/// update: ISO 32000-1 (2008) 7.5.6 (update), 12.3.3 (outline), 14.3.3 (information); from memory. A PDF of another
/// shape comes back as it is: without bookmarks it is as good on paper.   Evidence: PaperOut.Pdf_Bookmarks*,
/// PaperOut.Pdf_TitleAndAuthor*
QByteArray finished_pdf(QByteArray pdf, const std::vector<Page>& pages, const QString& author);

}  // namespace burrow
