#pragma once
/// The drawing as a picture file, drawn as the workbench does.

#include <QByteArray>
#include <QImage>
#include <QString>
#include <optional>

#include "burrow/base/result.h"
#include "burrow/drawing/scene.h"

namespace burrow {

struct ImageOptions {
  QSize size{1600, 900};
  double ratio = 1;  ///< pixels for each of these units, for high-resolution screens
  bool dark = false;
  UnitSystem units = UnitSystem::metric;
};

/// `played`: with the bore as it happens, and its time in the bar. `kept`: what stays from one frame to the next.
QImage render_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const ImageOptions& options, const std::optional<Played>& played = {}, LayerCache* kept = nullptr);

Result<void> fit_for_a_picture(const ImageOptions& options);
/// The bytes of a PNG.   Errors: no memory.
Result<QByteArray> png_of(const QImage& image);

/// Renders and writes a PNG.   Errors: size outside 200 … 16,000 px a side; the file could not be written.
Result<void> write_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const ImageOptions& options, const QString& path);

}  // namespace burrow
