#include "page_recorder.h"

#include <QPaintEngine>
#include <QPainterPath>
#include <cmath>

namespace burrow {

class PageRecorder::Engine : public QPaintEngine {
 public:
  Engine(Page& page, const QRectF& box_mm, double mm_per_unit)
      : QPaintEngine(PrimitiveTransform | PainterPaths | AlphaBlend | Antialiasing), page_(page), box_(box_mm) {
    to_page_.translate(box_mm.left(), box_mm.top());
    to_page_.scale(mm_per_unit, mm_per_unit);
    transform_ = to_page_;  // until the painter says otherwise
  }

  bool begin(QPaintDevice*) override { return true; }
  bool end() override { return true; }
  [[nodiscard]] Type type() const override { return User; }

  void updateState(const QPaintEngineState& now) override {
    if (now.state() & DirtyTransform) transform_ = now.transform() * to_page_;
    if (now.state() & DirtyPen) pen_ = now.pen();
    if (now.state() & DirtyBrush) brush_ = now.brush();
  }

  void drawPath(const QPainterPath& path) override {
    const QPainterPath placed = transform_.map(path);
    if (brush_.style() != Qt::NoBrush)
      for (const QPolygonF& polygon : placed.toFillPolygons()) add_area(polygon);
    if (pen_.style() != Qt::NoPen)
      for (const QPolygonF& polygon : placed.toSubpathPolygons()) add_line(polygon);
  }
  void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
    QPolygonF polygon(QList<QPointF>(points, points + count));
    polygon = transform_.map(polygon);
    if (mode != PolylineMode && brush_.style() != Qt::NoBrush) add_area(polygon);
    if (pen_.style() == Qt::NoPen) return;
    if (mode != PolylineMode && !polygon.isClosed()) polygon << polygon.front();
    add_line(polygon);
  }
  void drawTextItem(const QPointF& at, const QTextItem& item) override {
    const QString words = item.text().trimmed();
    if (words.isEmpty()) return;
    const QPointF one = transform_.map(QPointF(1, 0)) - transform_.map(QPointF(0, 0));
    TextStyle style;
    style.size_mm = item.font().pixelSize() * std::hypot(one.x(), one.y());
    style.weight = static_cast<QFont::Weight>(item.font().weight());
    style.colour = pen_.color();
    Paper paper(page_);
    paper.clip(box_);
    paper.text(transform_.map(at), words, style, Align::left, -std::atan2(one.y(), one.x()) * 180 / M_PI);
  }
  void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}

 private:
  void add_area(const QPolygonF& polygon) {
    Paper paper(page_);
    paper.clip(box_);
    paper.area(polygon, brush_.color());
  }
  void add_line(const QPolygonF& polygon) {
    const QPointF one = transform_.map(QPointF(1, 0)) - transform_.map(QPointF(0, 0));
    const double scale = std::hypot(one.x(), one.y());
    Stroke stroke;
    stroke.width_mm = std::max(pen_.widthF(), 0.5) * scale;
    stroke.colour = pen_.color();
    if (pen_.style() != Qt::SolidLine)
      for (const qreal part : pen_.dashPattern()) stroke.dash_mm << part * stroke.width_mm;
    Paper paper(page_);
    paper.clip(box_);
    paper.line(polygon, stroke);
  }

  Page& page_;
  QRectF box_;
  QTransform to_page_, transform_;
  QPen pen_;
  QBrush brush_;
};

PageRecorder::PageRecorder(Page& page, const QRectF& box_mm, double mm_per_unit)
    : engine_(std::make_unique<Engine>(page, box_mm, mm_per_unit)), box_mm_(box_mm), mm_per_unit_(mm_per_unit) {}

PageRecorder::~PageRecorder() = default;

QPaintEngine* PageRecorder::paintEngine() const {
  return engine_.get();
}

QRectF PageRecorder::room() const {
  return {0, 0, box_mm_.width() / mm_per_unit_, box_mm_.height() / mm_per_unit_};
}

int PageRecorder::metric(PaintDeviceMetric what) const {
  const double dots_per_inch = 25.4 / mm_per_unit_;
  switch (what) {
    case PdmWidth:
      return static_cast<int>(std::ceil(room().width()));
    case PdmHeight:
      return static_cast<int>(std::ceil(room().height()));
    case PdmWidthMM:
      return static_cast<int>(std::ceil(box_mm_.width()));
    case PdmHeightMM:
      return static_cast<int>(std::ceil(box_mm_.height()));
    case PdmDpiX:
    case PdmDpiY:
    case PdmPhysicalDpiX:
    case PdmPhysicalDpiY:
      return static_cast<int>(std::lround(dots_per_inch));
    case PdmDevicePixelRatio:
      return 1;
    case PdmDevicePixelRatioScaled:
      return static_cast<int>(devicePixelRatioFScale());
    case PdmDepth:
      return 32;
    case PdmNumColors:
      return 0;
    default:
      return QPaintDevice::metric(what);
  }
}

}  // namespace burrow
