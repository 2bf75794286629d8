#pragma once
/// The crossing on paper: one page with plan and side elevation to scale, findings, title block, cautions.

#include <QPainter>
#include <QSizeF>
#include <QString>

#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/crossing/tables.h"

namespace burrow {

struct Sheet {
  const Crossing& crossing;
  const Assessment& assessment;
  const Tables& tables;
  QSizeF paper_mm{420, 297};
  UnitSystem units = UnitSystem::metric;
  double scale = 0;  ///< 1:scale; 0: the largest standard scale that fits
};

/// Standard scale 1:n that shows the whole bore in an area, or the next larger n if none does.
double standard_scale(const Sheet& sheet, const QSizeF& area_mm);

/// Paints one page. The painter's units are tenths of a millimetre on paper, the origin at the paper's corner.
void paint_sheet(QPainter& painter, const Sheet& sheet);

/// Paper sizes by name ("a3", "a4", "a2", "letter", "tabloid", "ansi-d"), landscape, in millimetres.
Result<QSizeF> paper_size(const QString& name);
QString known_papers();

/// Writes the page as PDF at 1200 dpi: true to scale when printed at actual size.
Result<void> write_sheet_pdf(const Sheet& sheet, const QString& path);

}  // namespace burrow
