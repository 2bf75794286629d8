#include "burrow/drawing/kept_layers.h"

#include <algorithm>

namespace burrow {

namespace {

/// Equal but for one element, which is painted alone.
bool same_but(const std::vector<Utility>& kept, const std::vector<Utility>& now, const std::string& left_out) {
  if (kept.size() != now.size()) return false;
  for (std::size_t i = 0; i < now.size(); ++i)
    if (now[i].id != left_out && !(kept[i] == now[i])) return false;
  return true;
}

}  // namespace

KeptLayers::View KeptLayers::view_of(const QPainter& painter, const Picture& picture) {
  return {picture.frame, picture.look.theme.dark, picture.look.units, picture.look.text,
          painter.device()->devicePixelRatioF()};
}

void KeptLayers::keep(Layer& layer, const View& view, const QRectF& area, const QColor& fill, const QPainter& like,
                      const std::function<void(QPainter&)>& paint) {
  QPixmap pixels((area.size() * view.ratio).toSize());
  pixels.setDevicePixelRatio(view.ratio);
  pixels.fill(fill);
  QPainter onto(&pixels);
  onto.setRenderHint(QPainter::Antialiasing, true);
  onto.translate(-area.topLeft());
  onto.setFont(like.font());
  paint(onto);
  onto.end();
  layer.view = view;
  layer.pixels = pixels;
}

void KeptLayers::ground(QPainter& painter, const Picture& picture) {
  const Site& site = picture.crossing.site;
  const View view = view_of(painter, picture);
  const bool holds = ground_.view == view && ground_site_.ground == site.ground && ground_site_.water == site.water &&
                     ground_site_.strata == site.strata && ground_site_.strips == site.strips &&
                     ground_site_.surface == site.surface;
  if (!holds) {
    keep(ground_, view, picture.frame.elevation, picture.look.theme.sky, painter, [&](QPainter& onto) {
      paint_ground(onto, picture);
      paint_surface(onto, picture);
      paint_grid(onto, picture, picture.frame.elevation);
    });
    ground_site_.ground = site.ground;
    ground_site_.water = site.water;
    ground_site_.strata = site.strata;
    ground_site_.strips = site.strips;
    ground_site_.surface = site.surface;
  }
  painter.drawPixmap(picture.frame.elevation.topLeft(), ground_.pixels);
}

void KeptLayers::plan_base(QPainter& painter, const Picture& picture) {
  const Site& site = picture.crossing.site;
  const View view = view_of(painter, picture);
  const bool holds = plan_base_.view == view && plan_site_.surface == site.surface &&
                     plan_site_.background == site.background && plan_site_.boundaries == site.boundaries &&
                     plan_site_.trees == site.trees && plan_site_.strips == site.strips;
  if (!holds) {
    keep(plan_base_, view, picture.frame.plan, picture.look.theme.paper, painter, [&](QPainter& onto) {
      paint_plan_base(onto, picture);
      paint_grid(onto, picture, picture.frame.plan);
    });
    plan_site_.surface = site.surface;
    plan_site_.background = site.background;
    plan_site_.boundaries = site.boundaries;
    plan_site_.trees = site.trees;
    plan_site_.strips = site.strips;
  }
  painter.drawPixmap(picture.frame.plan.topLeft(), plan_base_.pixels);
}

void KeptLayers::utilities_plan(QPainter& painter, const Picture& picture) {
  const std::string picked = picture.focus.picked.kind == PartKind::utility ? picture.focus.picked.id : std::string();
  const std::string hovered =
      picture.focus.hovered.kind == PartKind::utility ? picture.focus.hovered.id : std::string();
  const View view = view_of(painter, picture);
  const std::vector<Utility>& now = picture.crossing.site.utilities;
  if (!(utilities_.view == view && picked_ == picked && hovered_ == hovered && same_but(utilities_kept_, now, picked) &&
        holes_kept_ == picture.crossing.site.test_holes)) {
    keep(utilities_, view, picture.frame.plan, Qt::transparent, painter,
         [&](QPainter& onto) { paint_utilities_plan(onto, picture); });
    picked_ = picked;
    hovered_ = hovered;
    utilities_kept_ = now;
    holes_kept_ = picture.crossing.site.test_holes;
  }
  painter.drawPixmap(picture.frame.plan.topLeft(), utilities_.pixels);
}

void KeptLayers::cloud(QPainter& painter, const Picture& picture, Pane pane) {
  if (!picture.shown.cloud || !picture.shown.trials) return;
  CloudLayer& cloud = pane == Pane::plan ? cloud_plan_ : cloud_side_;
  const View view = view_of(painter, picture);
  const Shown& shown = picture.shown;
  if (!(cloud.layer.view == view && cloud.trials == shown.trials && cloud.current == shown.trials_current)) {
    cloud.area = cloud_area(picture, pane);
    cloud.layer.view = view;
    cloud.trials = shown.trials;
    cloud.current = shown.trials_current;
    if (!cloud.area.isEmpty())
      keep(cloud.layer, view, cloud.area, Qt::transparent, painter,
           [&](QPainter& onto) { paint_cloud(onto, picture, pane); });
  }
  if (!cloud.area.isEmpty()) painter.drawPixmap(cloud.area.topLeft(), cloud.layer.pixels);
}

void KeptLayers::forget_trials() {
  cloud_side_ = {};
  cloud_plan_ = {};
}

void KeptLayers::axes(QPainter& painter, const Picture& picture) {
  const View view = view_of(painter, picture);
  const Frame& f = picture.frame;
  const double gutter = gutter_width(picture.look);
  const QRectF area(f.elevation.left() - gutter, f.elevation.top(), gutter, f.plan.bottom() - f.elevation.top());
  if (!(axes_.view == view))
    keep(axes_, view, area, picture.look.theme.panel, painter, [&](QPainter& onto) { paint_axes(onto, picture); });
  painter.drawPixmap(area.topLeft(), axes_.pixels);
}

}  // namespace burrow
