#include "burrow/drawing/drawing_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTimer>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "accessible_drawing.h"
#include "burrow/crossing/find.h"
#include "burrow/document/several.h"
#include "burrow/document/text.h"
#include "burrow/drawing/flags.h"
#include "burrow/drawing/handles.h"
#include "burrow/drawing/labels.h"

namespace burrow {

DrawingView::DrawingView(Document& document, QWidget* parent)
    : QAbstractScrollArea(parent),
      document_(document),
      nudge_over_(new QTimer(this)),
      glide_ms_(desktop_wants_stillness() ? 0 : glide_ms),
      glide_timer_(new QTimer(this)) {
  nudge_over_->setSingleShot(true);
  connect(nudge_over_, &QTimer::timeout, this, &DrawingView::finish_nudge);
  make_drawing_accessible();
  since_start_.start();
  glide_timer_->setTimerType(Qt::PreciseTimer);
  connect(glide_timer_, &QTimer::timeout, this, &DrawingView::step_glide);
  setFrameShape(QFrame::NoFrame);
  setLayoutDirection(Qt::LeftToRight);  // stations grow to the right whatever way people read
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::StrongFocus);
  viewport()->setMouseTracking(true);
  setAccessibleName(tr("Drawing of the crossing"));
  setAccessibleDescription(
      tr("Side elevation above, plan below. N selects the next item, P the one before, arrow keys move it, Enter types "
         "its value. D selects the next dimension line."));
  setMinimumSize(420, 320);
  connect(&document_, &Document::changed, this, [this] {
    painted_labels_.reset();  // they number findings of before
    forget_gone();
    viewport()->update();
  });
  connect(&document_, &Document::replaced, this, [this] {
    session_.reset();
    gesture_ = Gesture::none;
    group_.clear();
    focus_ = Interaction();
    drop_sketch();
    last_pane_ = Pane::elevation;
    set_trials(nullptr, false);
    set_rescue(std::nullopt);
    layers_.tape.reset();
    ghost_layout_.reset();
    set_read_path(std::nullopt);
    set_truth(std::nullopt);
    set_played(std::nullopt);
    layers_.tried.reset();
    frame_before_tried_.reset();
    zoom_to_fit();
    Q_EMIT picked_changed();
  });
}

/// A drag that the end of the window cuts short goes back; nobody looks at the document any more by then.
DrawingView::~DrawingView() {
  document_.disconnect(this);
  session_.reset();
}

void DrawingView::set_theme(const Theme& theme) {
  style_.theme = theme;
  viewport()->update();
  Q_EMIT view_changed();
}

void DrawingView::set_units(UnitSystem units) {
  style_.units = units;
  viewport()->update();
  Q_EMIT view_changed();
}

void DrawingView::set_exaggeration(double times) {
  stop_glide();
  automatic_heights_ = false;
  const double centre = frame_.elevation_m(frame_.elevation.center().y());
  frame_.exaggeration = std::clamp(times, 1.0, 10.0);
  frame_.top_elevation_m = centre + frame_.elevation.height() / 2 / (frame_.px_per_m * frame_.exaggeration);
  if (fitted_) zoom_to_fit();
  viewport()->update();
}

void DrawingView::set_automatic_heights() {
  automatic_heights_ = true;
  glide_to_fit();
  Q_EMIT view_changed();
}

void DrawingView::lay_out_again() {
  if (gliding_) {  // the panes are about to change: be there
    frame_ = glide_to_;
    stop_glide();
  }
  style_.text = std::max(11.0, QFontMetricsF(font()).height() * 0.70);
  lay_out(frame_, QRectF(viewport()->rect()), split_,
          lane_sizes(style_, viewport()->height(), flag_rows_, layers_.turning), views());
}

bool DrawingView::one_at_a_time() const {
  constexpr double both_fit_texts = 40;
  return viewport()->height() < both_fit_texts * style_.text;
}

Views DrawingView::views() const {
  return !one_at_a_time() ? Views::both : plan_shown_ ? Views::plan : Views::side;
}

void DrawingView::swap_views() {
  if (!one_at_a_time()) return;
  plan_shown_ = !plan_shown_;
  const bool fit_again = fitted_;
  lay_out_again();
  if (fit_again) zoom_to_fit();
  viewport()->update();
}

Scene DrawingView::scene() {
  return {document_.crossing(),
          document_.assessment(),
          document_.tables(),
          frame_,
          style_,
          focus_,
          nullptr,
          layers_,
          told_ == frame_ ? painted_labels_ : nullptr};
}

void DrawingView::pick(const ItemRef& part) {
  if (focus_.picked == part && focus_.several.empty()) return;
  focus_.picked = part;
  focus_.several.clear();
  viewport()->update();
  tell_screen_reader(false);
  Q_EMIT picked_changed();
}

namespace {

/// Of what is seen in the plan, or lies along a line.
QPointF place_elsewhere(const Scene& scene, const ItemRef& part) {
  const Site& site = scene.crossing.site;
  const Frame& f = scene.frame;
  const auto corner = [&](const PlanLine& line) { return f.above(line.front().x_m, line.front().y_m); };
  if (const TestHole* hole = find_by_id(site.test_holes, part.id)) return hole_end(scene, *hole);
  if (const Tree* tree = find_by_id(site.trees, part.id)) return f.above(tree->station.m, tree->offset.m);
  if (const Plant* machine = find_by_id(site.plant, part.id)) return f.above(machine->station.m, machine->offset.m);
  if (const Boundary* one = find_by_id(site.boundaries, part.id); one && !one->line.empty()) return corner(one->line);
  if (const Strip* one = find_by_id(site.strips, part.id); one && !one->outline.empty()) return corner(one->outline);
  if (const SurfaceFeature* one = find_by_id(site.surface, part.id); one && !one->outline.empty())
    return corner(one->outline);
  const Bore& bore = scene.crossing.bore;
  const double middle = (bore.launch.station.m + bore.exit.station.m) / 2;
  if (part.kind == ItemKind::bore) return f.side(middle, bore_level_at(scene.assessment, scene.crossing, middle));
  if (part.kind == ItemKind::water && site.water) return f.side(middle, elevation_at(*site.water, middle));
  if (part.kind == ItemKind::ground) return f.side(middle, elevation_at(site.ground, middle));
  if (const Stratum* stratum = find_by_id(site.strata, part.id); stratum && stratum->top)
    return f.side(middle, elevation_at(*stratum->top, middle));
  return f.elevation.center();
}

}  // namespace

QPointF DrawingView::place_of(const ItemRef& part) {
  const Scene now = scene();
  for (const Handle& handle : handles(now))
    if (handle.part == part && handle.pane == Pane::elevation) return handle.at;
  for (const Handle& handle : handles(now))
    if (handle.part == part && part.index >= 0) return handle.at;  // a bend or corner, seen in the plan
  for (const Utility& u : now.crossing.site.utilities) {
    if (part.kind != ItemKind::utility || u.id != part.id) continue;
    const UtilityMark mark = utility_mark(u);
    return mark.depth_known ? frame_.side(mark.station_m, mark.elevation_m) : frame_.above(mark.station_m, 0);
  }
  for (const SurfaceFeature& s : now.crossing.site.surface)
    if (part.kind == ItemKind::surface && s.id == part.id && s.from && s.to) {
      const double middle = (s.from->m + s.to->m) / 2;
      return frame_.side(middle, elevation_at(now.crossing.site.ground, middle));
    }
  return place_elsewhere(now, part);
}

void DrawingView::paintEvent(QPaintEvent*) {
  if (!(told_ == frame_)) {
    told_ = frame_;
    Q_EMIT view_changed();
  }
  QPainter painter(viewport());
  if (session_) {
    focus_.ghost_crossing = &session_->crossing_before();
    focus_.ghost = &session_->assessment_before();
    focus_.pointer_lines.clear();
    Q_EMIT readout_changed(readout());
  } else {
    focus_.ghost_crossing = ghost_layout_ ? &ghost_layout_->crossing : nullptr;
    focus_.ghost = ghost_layout_ ? &ghost_layout_->assessment : nullptr;
    report_pointer();
    if (told_readout_) Q_EMIT readout_ended();
  }
  told_readout_ = session_ != nullptr;
  focus_.live_level_m = dragged_level();
  if (gesture_ == Gesture::held) {
    focus_.pointer = last_at_;
    const QString why = held_ ? why_held(*held_) : held_words_;
    focus_.pointer_lines = QStringList{why.isEmpty() ? document_.read_only_because() : why};
  }
  if (sketch_) tell_sketch();
  Scene now = scene();
  now.layer_cache = &layer_cache_;
  const bool hold = session_ && last_labels_ && last_frame_ == frame_;
  painted_labels_ = now.labels = std::make_shared<const Labels>(place_labels(now, hold ? last_labels_.get() : nullptr));
  last_labels_ = painted_labels_;
  last_frame_ = frame_;
  paint_pixels(now);
  painter.drawImage(0, 0, pixels_);
  if (hasFocus() && focus_by_key_) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(style_.theme.focus, 2));
    painter.drawRect(QRectF(viewport()->rect()).adjusted(1, 1, -1, -1));
  }
}

void DrawingView::paint_pixels(const Scene& now) {
  const qreal ratio = viewport()->devicePixelRatioF();
  const QSizeF exact = QSizeF(viewport()->size()) * ratio;
  const QSize size(static_cast<int>(std::ceil(exact.width())), static_cast<int>(std::ceil(exact.height())));
  if (pixels_.size() != size) pixels_ = QImage(size, QImage::Format_RGB32);
  pixels_.setDevicePixelRatio(ratio);
  paint_scene(pixels_, now, viewport()->palette().brush(viewport()->backgroundRole()));
}

std::optional<double> DrawingView::dragged_level() {
  if (!session_ || held_) return std::nullopt;
  const ItemRef& part = session_->part();
  for (const Handle& handle : handles(scene()))
    if (handle.part == part && handle.pane == Pane::elevation) return frame_.elevation_m(handle.at.y());
  for (const Utility& u : document_.crossing().site.utilities) {
    if (part.kind != ItemKind::utility || u.id != part.id) continue;
    if (const UtilityMark mark = utility_mark(u); mark.depth_known) return mark.elevation_m;
  }
  return std::nullopt;
}

/// What the drag under way has changed since the press.
Readout DrawingView::readout() const {
  const ItemRef& part = session_->part();
  const Crossing& before = session_->crossing_before();
  const Crossing& now = document_.crossing();
  Readout told;
  told.moves = text_from(group_.empty() ? part_name(now, part) : several_name(now, group_));
  std::vector<LiveNumber> was, is;
  if (held_) {
    const auto add = [&](std::vector<LiveNumber>& to, const Crossing& crossing, const Assessment& assessment) {
      if (const auto value = measure_value(crossing, assessment, held_->measure))
        to.push_back({text_from(measure_name(now, held_->measure)),
                      text_from(format(*value, Dimension::length, style_.units)),
                      {},
                      Kept::not_judged});
    };
    add(was, before, session_->assessment_before());
    add(is, now, document_.assessment());
  }
  // The gap that was tightest at the press, and the one that is now.
  std::vector<std::string> watched{tightest_utility(session_->assessment_before())};
  if (const std::string tightest = tightest_utility(document_.assessment()); tightest != watched.front())
    watched.push_back(tightest);
  for (const LiveNumber& number : live_numbers(before, session_->assessment_before(), part, style_.units, watched))
    was.push_back(number);
  for (const LiveNumber& number : live_numbers(now, document_.assessment(), part, style_.units, watched))
    is.push_back(number);
  told.numbers = beside(was, std::move(is));
  told.snapped = snap_words(focus_.snaps, document_.assessment());
  return told;
}

void DrawingView::resizeEvent(QResizeEvent*) {
  const Frame before = frame_;
  lay_out_again();
  if (fitted_ || before.elevation.isEmpty()) zoom_to_fit();
}

void DrawingView::settle() {
  if (session_ && !nudged_.none()) session_->finish(step_now());
  cancel_gesture();
  drop_sketch();
}

bool DrawingView::event(QEvent* event) {
  if (event->type() == QEvent::FontChange) lay_out_again();
  if (event->type() == QEvent::ShortcutOverride && sketch_) {
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool letters = (key->modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == 0;
    if (letters && key->key() < Qt::Key_F1) event->accept();  // typed into what is being drawn
    return true;
  }
  if (event->type() == QEvent::ShortcutOverride && session_) {
    event->accept();  // no shortcut runs while something is held
    return true;
  }
  return QAbstractScrollArea::event(event);
}

void DrawingView::focusInEvent(QFocusEvent* event) {
  QAbstractScrollArea::focusInEvent(event);
  focus_by_key_ = event->reason() == Qt::TabFocusReason || event->reason() == Qt::BacktabFocusReason ||
                  event->reason() == Qt::ShortcutFocusReason;
  viewport()->update();
}

void DrawingView::focusOutEvent(QFocusEvent* event) {
  space_down_ = false;
  if (nudged_.none()) {
    QAbstractScrollArea::focusOutEvent(event);
  } else {
    finish_nudge();
  }
  viewport()->update();
}

void DrawingView::leaveEvent(QEvent*) {
  pointer_here_ = false;
  if (gesture_ == Gesture::none) {
    focus_.hovered = {};
    viewport()->update();
  }
  Q_EMIT pointer_moved({});
}

}  // namespace burrow
