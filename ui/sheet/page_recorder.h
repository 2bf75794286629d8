#pragma once
/// Takes down what a painter draws as the items of a page: pictures of the screen go on paper by the code that paints
/// them, as lines, areas and texts.

#include <QPaintDevice>
#include <memory>

#include "burrow/sheet/page.h"

namespace burrow {

/// Paint on it in units of `mm_per_unit` from the upper left corner of `box`; nothing outside the box is seen. Pictures
/// made of dots and gradients are not taken down.   Evidence: PageRecorder.*
class PageRecorder : public QPaintDevice {
 public:
  PageRecorder(Page& page, const QRectF& box_mm, double mm_per_unit);
  ~PageRecorder() override;
  [[nodiscard]] QPaintEngine* paintEngine() const override;
  /// The box, in units of the painter.
  [[nodiscard]] QRectF room() const;

 protected:
  int metric(PaintDeviceMetric what) const override;

 private:
  class Engine;
  std::unique_ptr<Engine> engine_;
  QRectF box_mm_;
  double mm_per_unit_ = 1;
};

}  // namespace burrow
