#pragma once
/// The drawing as a picture file, drawn as the workbench does.

#include <QImage>
#include <QString>

#include "burrow/base/result.h"
#include "burrow/drawing/scene.h"

namespace burrow {

struct ImageOptions {
  QSize size{1600, 900};
  double ratio = 1;  ///< pixels for each of these units, for high-resolution screens
  bool dark = false;
  UnitSystem units = UnitSystem::metric;
};

QImage render_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const ImageOptions& options);

/// Renders and writes a PNG.   Errors: size outside 200 … 16,000 px a side; the file could not be written.
Result<void> write_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const ImageOptions& options, const QString& path);

}  // namespace burrow
