#include "burrow/window/import_preview.h"
#include "burrow/document/text.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <cmath>

namespace burrow {

QColor meaning_colour(Meaning meaning, const Theme& theme, const Tables& tables) {
  if (const auto kind = utility_kind(meaning)) {
    const UtilityKindRow& row = row_of(tables, *kind);
    return QColor(text_from(theme.dark ? row.colour_dark : row.colour));
  }
  switch (meaning) {
    case Meaning::ground:
      return theme.ground;
    case Meaning::road_edge:
      return theme.ink;
    case Meaning::building:
      return theme.pit;
    case Meaning::boundary:
      return theme.note;
    case Meaning::undecided:
      return theme.stop;
    default:
      return theme.ink_soft;
  }
}

const Found& drawn_of(const ImportFile& file) {
  return file.seen ? *file.seen : *file.found;
}

ImportPreview::ImportPreview(const Tables& tables, QWidget* parent) : QWidget(parent), tables_(tables) {
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setMinimumSize(320, 220);
  setAccessibleName(tr("Plan of the imported files"));
  setToolTip(
      tr("Click the launch pit, then the exit pit. Double click: the nearest piece of a line. Wheel: closer. "
         "Drag: move. Home: all."));
}

void ImportPreview::set_files(const std::vector<ImportFile>* files, bool all) {
  files_ = files;
  if (all) show_all();
  refresh();
}

void ImportPreview::refresh() {
  kept_ = {};
  update();
}

void ImportPreview::set_line(const std::optional<CrossingLine>& line) {
  line_ = line;
  first_.reset();
  update();
}

void ImportPreview::set_units(UnitSystem units) {
  units_ = units;
  refresh();
}

void ImportPreview::set_theme(const Theme& theme) {
  theme_ = theme;
  refresh();
}

double ImportPreview::stretch() const {
  if (!files_ || files_->empty() || !frame_of(files_->front()).geographic) return 1;
  return 1 / std::max(0.05, std::cos(middle_.y_m * pi / 180));
}

QPointF ImportPreview::to_screen(const PlanPoint& p) const {
  return {width() / 2.0 + (p.x_m - middle_.x_m) * pixels_per_unit_,
          height() / 2.0 - (p.y_m - middle_.y_m) * pixels_per_unit_ * stretch()};
}

PlanPoint ImportPreview::to_plan(const QPointF& at) const {
  return {middle_.x_m + (at.x() - width() / 2.0) / pixels_per_unit_,
          middle_.y_m - (at.y() - height() / 2.0) / pixels_per_unit_ / stretch()};
}

void ImportPreview::show_all() {
  std::optional<PlanExtent> extent;
  if (files_ && !files_->empty()) extent = extent_of(*files_->front().found);
  if (!extent) return;
  middle_ = {(extent->low_x + extent->high_x) / 2, (extent->low_y + extent->high_y) / 2};
  const double wide = std::max(extent->high_x - extent->low_x, 1e-9);
  const double high = std::max((extent->high_y - extent->low_y) * stretch(), 1e-9);
  pixels_per_unit_ = 0.92 * std::min(width() / wide, height() / high);
  refresh();
}

void ImportPreview::draw_file(QPainter& painter, const ImportFile& file) const {
  const Found& found = drawn_of(file);
  const double units = units_of_first(file);
  const auto to_screen = [&](const PlanPoint& p) { return this->to_screen({p.x_m * units, p.y_m * units}); };
  const QRectF view = QRectF(rect()).adjusted(-4, -4, 4, 4);
  const auto pen_of = [&](std::uint32_t layer) {
    const Meaning meaning = file.layers[layer].meaning;
    QPen pen(meaning_colour(meaning, theme_, tables_), utility_kind(meaning)           ? 2.0
                                                       : meaning == Meaning::road_edge ? 1.6
                                                                                       : 1.0);
    if (const auto kind = utility_kind(meaning)) {
      QList<qreal> dash;
      for (const double d : row_of(tables_, *kind).dash) dash << d;
      if (!dash.isEmpty() && dash.size() % 2 == 0) pen.setDashPattern(dash);
    }
    if (meaning == Meaning::boundary) pen.setStyle(Qt::DashDotLine);
    return pen;
  };
  const auto drawn = [&](std::uint32_t layer) { return file.layers[layer].meaning != Meaning::not_used; };
  for (const FoundRaster& raster : found.rasters) {
    if (!drawn(raster.layer)) continue;
    const auto& t = raster.to_plan;
    const auto corner = [&](double c, double r) {
      return to_screen({t[0] + c * t[1] + r * t[2], t[3] + c * t[4] + r * t[5]});
    };
    const QPolygonF outline{
        {corner(0, 0), corner(raster.columns, 0), corner(raster.columns, raster.rows), corner(0, raster.rows)}};
    painter.setPen(pen_of(raster.layer));
    painter.setBrush(QBrush(theme_.grid, Qt::Dense6Pattern));
    painter.drawPolygon(outline);
  }
  painter.setBrush(Qt::NoBrush);
  for (const FoundSurface& surface : found.surfaces) {
    if (!drawn(surface.layer)) continue;
    QColor soft = theme_.ground;
    soft.setAlpha(90);
    painter.setPen(QPen(soft, 0));
    QPainterPath path;
    for (const auto& face : surface.faces) {
      const auto at = [&](std::size_t k) {
        return to_screen({surface.points[face[k]].x_m, surface.points[face[k]].y_m});
      };
      const QPolygonF triangle{{at(0), at(1), at(2), at(0)}};
      // A face smaller than a dot adds nothing to what is seen.
      if (triangle.boundingRect().intersects(view) &&
          triangle.boundingRect().width() + triangle.boundingRect().height() > 3)
        path.addPolygon(triangle);
    }
    painter.drawPath(path);
  }
  draw_joined(painter, file);
  // Points that fall on one pixel are drawn once.
  std::vector<bool> taken(static_cast<std::size_t>(width() + 1) * static_cast<std::size_t>(height() + 1));
  for (const FoundFeature& f : found.features) {
    if (!drawn(f.layer)) continue;
    if (f.shape == Shape::point) {
      const QPointF at = to_screen({found.vertices[f.first].x_m, found.vertices[f.first].y_m});
      if (!QRectF(rect()).contains(at)) continue;
      const std::size_t cell =
          static_cast<std::size_t>(at.y()) * static_cast<std::size_t>(width() + 1) + static_cast<std::size_t>(at.x());
      if (taken[cell]) continue;
      taken[cell] = true;
      painter.fillRect(QRectF(at.x() - 1.2, at.y() - 1.2, 2.4, 2.4),
                       meaning_colour(file.layers[f.layer].meaning, theme_, tables_));
      continue;
    }
    QPolygonF line;
    QRectF box;
    for (std::size_t i = f.first; i < f.first + f.count; ++i) {
      const QPointF at = to_screen({found.vertices[i].x_m, found.vertices[i].y_m});
      // Vertices closer together than a pixel cannot be told apart; ends stay.
      if (line.isEmpty() || i + 1 == f.first + f.count || (at - line.back()).manhattanLength() > 1) line << at;
    }
    if (f.shape == Shape::area) line << line.front();
    box = line.boundingRect().adjusted(-1, -1, 1, 1);
    if (!box.intersects(view)) continue;
    painter.setPen(pen_of(f.layer));
    painter.drawPolyline(line);
  }
}

/// Single points that become lines: as they will be joined.
void ImportPreview::draw_joined(QPainter& painter, const ImportFile& file) const {
  const Found& found = drawn_of(file);
  const double units = units_of_first(file);
  constexpr double longest_step_m = 30;
  const double longest = longest_step_m / metres_per_unit();
  std::vector<std::optional<PlanPoint>> last(found.layers.size());
  for (const FoundFeature& f : found.features) {
    const LayerChoice& choice = file.layers[f.layer];
    if (f.shape != Shape::point || !choice.join_points || choice.meaning == Meaning::not_used) continue;
    const PlanPoint at{found.vertices[f.first].x_m * units, found.vertices[f.first].y_m * units};
    const auto before = std::exchange(last[f.layer], at);
    if (!before || std::hypot(at.x_m - before->x_m, (at.y_m - before->y_m) * stretch()) > longest) continue;
    painter.setPen(QPen(meaning_colour(choice.meaning, theme_, tables_), utility_kind(choice.meaning) ? 2.0 : 1.4));
    painter.drawLine(to_screen(*before), to_screen(at));
  }
}

double ImportPreview::metres_per_unit() const {
  if (!files_ || files_->empty()) return 1;
  const ImportFile& file = files_->front();
  constexpr double degree_m = 111'320;
  if (frame_of(file).geographic) return degree_m / stretch();
  return metres_in(plan_unit(file));
}

/// As the import places it: without a coordinate system by the units said of each file, else as they are.
double ImportPreview::units_of_first(const ImportFile& file) const {
  const ImportFile& first = files_->front();
  if (!frame_of(first).crs.empty())
    return (file.seen || &file == &first ? 1 : units_of_system(file)) / units_of_system(first);
  return metres_in(plan_unit(file)) / metres_in(plan_unit(first));
}

void ImportPreview::draw(QPainter& painter) const {
  painter.fillRect(rect(), theme_.paper);
  painter.setRenderHint(QPainter::Antialiasing);
  if (!files_ || files_->empty()) {
    painter.setFont(drawing_font(13));
    painter.setPen(theme_.ink_soft);
    painter.drawText(rect().adjusted(20, 20, -20, -20), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("Add a file: its plan appears here. Then click the launch pit and the exit pit."));
    return;
  }
  const std::string& first = frame_of(files_->front()).crs;
  for (const ImportFile& file : *files_) {
    const std::string& crs = file.seen ? file.seen->frame.crs : frame_of(file).crs;
    if (first.empty() || crs.empty() || crs == first) draw_file(painter, file);
  }
  draw_highlight(painter);
  draw_scale(painter);
  draw_legend(painter);
}

void ImportPreview::paintEvent(QPaintEvent*) {
  if (kept_.isNull()) {
    const double ratio = devicePixelRatioF();
    kept_ = QPixmap((QSizeF(size()) * ratio).toSize());
    kept_.setDevicePixelRatio(ratio);
    QPainter painter(&kept_);
    draw(painter);
  }
  QPainter painter(this);
  painter.drawPixmap(0, 0, kept_);
  draw_line(painter);
  if (hasFocus()) {
    painter.setPen(QPen(theme_.focus, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
  }
}

void ImportPreview::resizeEvent(QResizeEvent* event) {
  if (event->oldSize().isEmpty()) show_all();
  refresh();
}

void ImportPreview::mousePressEvent(QMouseEvent* event) {
  pressed_ = event->position();
  dragging_ = false;
}

void ImportPreview::mouseMoveEvent(QMouseEvent* event) {
  const QPointF at = event->position();
  if (event->buttons() & Qt::LeftButton) {
    if (!dragging_ && (at - pressed_).manhattanLength() > 5) dragging_ = true;
    if (dragging_) {
      middle_.x_m -= (at.x() - pointer_.x()) / pixels_per_unit_;
      middle_.y_m += (at.y() - pointer_.y()) / pixels_per_unit_ / stretch();
      kept_ = {};
    }
  }
  pointer_ = at;
  update();
}

void ImportPreview::mouseReleaseEvent(QMouseEvent* event) {
  if (std::exchange(skip_release_, false) || dragging_ || event->button() != Qt::LeftButton) return;
  pointer_ = event->position();
  const PlanPoint at = to_plan(pointer_);
  if (!first_) {
    first_ = at;
    update();
    return;
  }
  const CrossingLine line{*first_, at};
  first_.reset();
  if (line.launch != line.exit) Q_EMIT line_drawn(line);
  update();
}

void ImportPreview::mouseDoubleClickEvent(QMouseEvent* event) {
  skip_release_ = true;
  first_.reset();
  if (const auto piece = nearest_piece(event->position())) Q_EMIT line_drawn(*piece);
}

std::optional<CrossingLine> ImportPreview::nearest_piece(const QPointF& at) const {
  std::optional<CrossingLine> nearest;
  double least = 12;  // pixels
  if (!files_ || files_->empty()) return nearest;
  const Found& found = *files_->front().found;
  for (const FoundFeature& f : found.features) {
    if (f.shape == Shape::point) continue;
    for (std::size_t i = f.first + 1; i < f.first + f.count; ++i) {
      const PlanPoint from{found.vertices[i - 1].x_m, found.vertices[i - 1].y_m},
          to{found.vertices[i].x_m, found.vertices[i].y_m};
      const QPointF a = to_screen(from), d = to_screen(to) - a, p = at - a;
      const double length2 = QPointF::dotProduct(d, d);
      const double t = length2 > 0 ? std::clamp(QPointF::dotProduct(p, d) / length2, 0.0, 1.0) : 0;
      const QPointF off = p - t * d;
      const double away = std::hypot(off.x(), off.y());
      if (away >= least || length2 == 0) continue;
      least = away;
      nearest = CrossingLine{from, to};
    }
  }
  return nearest;
}

void ImportPreview::wheelEvent(QWheelEvent* event) {
  const PlanPoint before = to_plan(event->position());
  pixels_per_unit_ = std::clamp(pixels_per_unit_ * std::pow(1.0015, event->angleDelta().y()), 1e-9, 1e9);
  const PlanPoint after = to_plan(event->position());
  middle_.x_m += before.x_m - after.x_m;
  middle_.y_m += before.y_m - after.y_m;
  event->accept();
  refresh();
}

void ImportPreview::keyPressEvent(QKeyEvent* event) {
  const double step = 40 / pixels_per_unit_;
  switch (event->key()) {
    case Qt::Key_Home:
      return show_all();
    case Qt::Key_Plus:
      pixels_per_unit_ *= 1.25;
      break;
    case Qt::Key_Minus:
      pixels_per_unit_ /= 1.25;
      break;
    case Qt::Key_Left:
      middle_.x_m -= step;
      break;
    case Qt::Key_Right:
      middle_.x_m += step;
      break;
    case Qt::Key_Up:
      middle_.y_m += step / stretch();
      break;
    case Qt::Key_Down:
      middle_.y_m -= step / stretch();
      break;
    case Qt::Key_Escape:
      if (first_) {
        first_.reset();
        return update();
      }
      [[fallthrough]];
    default:
      return QWidget::keyPressEvent(event);
  }
  refresh();
}

}  // namespace burrow
