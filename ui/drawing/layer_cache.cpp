#include "burrow/drawing/layer_cache.h"

#include <algorithm>

namespace burrow {

namespace {

/// Equal but for one element, which is painted alone.
bool same_but(const std::vector<Utility>& layer_cache, const std::vector<Utility>& now, const std::string& left_out) {
  if (layer_cache.size() != now.size()) return false;
  for (std::size_t i = 0; i < now.size(); ++i)
    if (now[i].id != left_out && !(layer_cache[i] == now[i])) return false;
  return true;
}

}  // namespace

LayerCache::View LayerCache::view_of(const QPainter& painter, const Scene& scene) {
  return {scene.frame, scene.style.theme.dark, scene.style.units, scene.style.text,
          painter.device()->devicePixelRatioF()};
}

void LayerCache::keep(Layer& layer, const View& view, const QRectF& area, const QColor& fill, const QPainter& like,
                      const std::function<void(QPainter&)>& paint) {
  const auto format = fill.alpha() == 255 ? QImage::Format_RGB32 : QImage::Format_ARGB32_Premultiplied;
  QImage pixels((area.size() * view.ratio).toSize(), format);
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

void LayerCache::ground(QPainter& painter, const Scene& scene) {
  const Site& site = scene.crossing.site;
  const View view = view_of(painter, scene);
  const bool still_good = ground_.view == view && ground_site_.ground == site.ground &&
                          ground_site_.water == site.water && ground_site_.strata == site.strata &&
                          ground_site_.strips == site.strips && ground_site_.surface == site.surface;
  if (!still_good) {
    keep(ground_, view, scene.frame.elevation, scene.style.theme.sky, painter, [&](QPainter& onto) {
      paint_ground(onto, scene);
      paint_surface(onto, scene);
      paint_grid(onto, scene, scene.frame.elevation);
    });
    ground_site_.ground = site.ground;
    ground_site_.water = site.water;
    ground_site_.strata = site.strata;
    ground_site_.strips = site.strips;
    ground_site_.surface = site.surface;
  }
  painter.drawImage(scene.frame.elevation.topLeft(), ground_.pixels);
}

void LayerCache::plan_base(QPainter& painter, const Scene& scene) {
  const Site& site = scene.crossing.site;
  const View view = view_of(painter, scene);
  const bool still_good = plan_base_.view == view && plan_site_.surface == site.surface &&
                          plan_site_.ground_points == site.ground_points && plan_site_.background == site.background &&
                          plan_site_.boundaries == site.boundaries && plan_site_.trees == site.trees &&
                          plan_site_.strips == site.strips && plan_site_.plant == site.plant;
  if (!still_good) {
    keep(plan_base_, view, scene.frame.plan, scene.style.theme.paper, painter, [&](QPainter& onto) {
      paint_plan_base(onto, scene);
      paint_grid(onto, scene, scene.frame.plan);
    });
    plan_site_.surface = site.surface;
    plan_site_.ground_points = site.ground_points;
    plan_site_.background = site.background;
    plan_site_.boundaries = site.boundaries;
    plan_site_.trees = site.trees;
    plan_site_.strips = site.strips;
    plan_site_.plant = site.plant;
  }
  painter.drawImage(scene.frame.plan.topLeft(), plan_base_.pixels);
}

void LayerCache::utilities_plan(QPainter& painter, const Scene& scene) {
  const std::string picked = scene.focus.picked.kind == ItemKind::utility ? scene.focus.picked.id : std::string();
  const std::string hovered = scene.focus.hovered.kind == ItemKind::utility ? scene.focus.hovered.id : std::string();
  const View view = view_of(painter, scene);
  const std::vector<Utility>& now = scene.crossing.site.utilities;
  std::vector<PlacedText> letters;
  for (const PlacedText& text : scene.labels->plan)
    if (text.role == TextRole::letter && text.id != picked) letters.push_back(text);
  if (!(utilities_.view == view && letters_kept_ == letters && picked_ == picked && hovered_ == hovered &&
        same_but(utilities_kept_, now, picked) && holes_kept_ == scene.crossing.site.test_holes)) {
    keep(utilities_, view, scene.frame.plan, Qt::transparent, painter,
         [&](QPainter& onto) { paint_utilities_plan(onto, scene); });
    picked_ = picked;
    hovered_ = hovered;
    utilities_kept_ = now;
    letters_kept_ = std::move(letters);
    holes_kept_ = scene.crossing.site.test_holes;
  }
  painter.drawImage(scene.frame.plan.topLeft(), utilities_.pixels);
}

void LayerCache::cloud(QPainter& painter, const Scene& scene, Pane pane) {
  if (!scene.layers.cloud || !scene.layers.trials) return;
  CloudLayer& cloud = pane == Pane::plan ? cloud_plan_ : cloud_side_;
  const View view = view_of(painter, scene);
  const VisibleLayers& layers = scene.layers;
  if (!(cloud.layer.view == view && cloud.trials == layers.trials && cloud.current == layers.trials_current)) {
    cloud.area = cloud_area(scene, pane);
    cloud.layer.view = view;
    cloud.trials = layers.trials;
    cloud.current = layers.trials_current;
    if (!cloud.area.isEmpty())
      keep(cloud.layer, view, cloud.area, Qt::transparent, painter,
           [&](QPainter& onto) { paint_cloud(onto, scene, pane); });
  }
  if (!cloud.area.isEmpty()) painter.drawImage(cloud.area.topLeft(), cloud.layer.pixels);
}

void LayerCache::forget_trials() {
  cloud_side_ = {};
  cloud_plan_ = {};
}

void LayerCache::axes(QPainter& painter, const Scene& scene) {
  const View view = view_of(painter, scene);
  const Frame& f = scene.frame;
  const double gutter = gutter_width(scene.style);
  const double top = f.flags.isEmpty() ? f.elevation.top() : f.flags.top();
  const QRectF area(f.elevation.left() - gutter, top, gutter, f.plan.bottom() - top);
  if (!(axes_.view == view))
    keep(axes_, view, area, scene.style.theme.panel, painter, [&](QPainter& onto) { paint_axes(onto, scene); });
  painter.drawImage(area.topLeft(), axes_.pixels);
}

}  // namespace burrow
