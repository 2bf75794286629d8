#include "burrow/charts/launch_map_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/words/launch_text.h"

namespace burrow {

namespace {
constexpr double grip_px = 12;
}  // namespace

LaunchMapView::LaunchMapView(QWidget* parent) : QWidget(parent) {
  setLayoutDirection(Qt::LeftToRight);
  setMouseTracking(true);
  setFocusPolicy(Qt::StrongFocus);
  setAccessibleName(tr("Map of launches"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize LaunchMapView::sizeHint() const {
  return {300, fontMetrics().height() * 20};
}

void LaunchMapView::show_map(std::shared_ptr<const LaunchMap> map, bool current, const MapPlace& here) {
  const bool another = map != map_;
  if (another || current != current_) kept_ = {};
  map_ = std::move(map);
  current_ = current;
  here_ = here;
  if (another) {
    sort_regions();
    lay_out();
  }
  if (!map_) end_drag(false);
  update();
}

void LaunchMapView::set_units(UnitSystem units) {
  units_ = units;
  kept_ = {};
  lay_out();
  update();
}

void LaunchMapView::set_theme(const Theme& theme) {
  theme_ = theme;
  sort_regions();
  kept_ = {};
  update();
}

/// Limits of one title are one region; the seven largest have a colour of their own.
void LaunchMapView::sort_regions() {
  regions_.clear();
  region_of_limit_.clear();
  if (!map_) return;
  std::vector<std::pair<QString, int>> titles;
  std::vector<std::size_t> title_of_limit;
  for (const Finding& limit : map_->limits) {
    const QString title = text_from(limit_title(limit));
    auto at = std::find_if(titles.begin(), titles.end(), [&](const auto& one) { return one.first == title; });
    if (at == titles.end()) at = titles.insert(titles.end(), {title, 0});
    title_of_limit.push_back(static_cast<std::size_t>(at - titles.begin()));
  }
  for (const LaunchCell& cell : map_->cells)
    if (cell.binds >= 0) ++titles[title_of_limit[static_cast<std::size_t>(cell.binds)]].second;
  std::vector<std::size_t> order(titles.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return titles[a].second > titles[b].second; });
  std::vector<int> region_of_title(titles.size(), region_colours - 1);
  int others = 0;
  for (const std::size_t title : order) {
    if (titles[title].second == 0) continue;
    if (static_cast<int>(regions_.size()) == region_colours - 1) {
      others += titles[title].second;
      continue;
    }
    region_of_title[title] = static_cast<int>(regions_.size());
    const QChar letter(u'A' + static_cast<char16_t>(regions_.size()));
    regions_.push_back({titles[title].first, QString(letter), region_colour(static_cast<int>(regions_.size()), theme_),
                        static_cast<double>(titles[title].second) / static_cast<double>(map_->cells.size())});
  }
  if (others > 0)
    regions_.push_back({tr("other limits"), QStringLiteral("·"), region_colour(region_colours - 1, theme_),
                        static_cast<double>(others) / static_cast<double>(map_->cells.size())});
  for (const std::size_t title : title_of_limit) region_of_limit_.push_back(region_of_title[title]);
}

int LaunchMapView::region_of(const LaunchCell& cell) const {
  return cell.binds < 0 ? -1 : region_of_limit_[static_cast<std::size_t>(cell.binds)];
}

void LaunchMapView::lay_out() {
  const QFontMetrics metrics = fontMetrics();
  int labels = metrics.horizontalAdvance(QStringLiteral("0.00 m"));
  if (map_) {
    const Dimension down = upward() ? Dimension::station : Dimension::length;
    for (const Tick& tick : ticks(map_->down, down, 200, metrics.height()))
      labels = std::max(labels, metrics.horizontalAdvance(tick.text));
  }
  const double left = labels + metrics.height() * 1.1 + 8, bottom = metrics.height() * 2.2 + 4;
  plot_ = QRectF(left, 6, std::max(40.0, width() - left - 8), std::max(40.0, height() - bottom - 8));
}

QPointF LaunchMapView::at(const MapPlace& place) const {
  const auto share = [](const MapAxis& axis, double value) {
    return axis.to > axis.from ? (value - axis.from) / (axis.to - axis.from) : 0.5;
  };
  const double down = share(map_->down, place.down);
  return {plot_.left() + share(map_->across, place.across) * plot_.width(),
          plot_.top() + (upward() ? 1 - down : down) * plot_.height()};
}

MapPlace LaunchMapView::place_at(const QPointF& at) const {
  const auto value = [](const MapAxis& axis, double share) {
    return std::clamp(axis.from + share * (axis.to - axis.from), axis.from, axis.to);
  };
  const double down = (at.y() - plot_.top()) / plot_.height();
  return {value(map_->across, (at.x() - plot_.left()) / plot_.width()), value(map_->down, upward() ? 1 - down : down)};
}

/// Places lie in the middle of their cells; those at the rim are cut in half.
QRectF LaunchMapView::cell_rect(int column, int row) const {
  const auto edges = [](const MapAxis& axis, int i) {
    const double n = std::max(axis.count - 1, 1);
    if (axis.count < 2) return std::pair{0.0, 1.0};
    return std::pair{std::clamp((i - 0.5) / n, 0.0, 1.0), std::clamp((i + 0.5) / n, 0.0, 1.0)};
  };
  const auto [left, right] = edges(map_->across, column);
  auto [top, bottom] = edges(map_->down, row);
  if (upward()) std::tie(top, bottom) = std::pair{1 - bottom, 1 - top};
  return {plot_.left() + left * plot_.width(), plot_.top() + top * plot_.height(), (right - left) * plot_.width(),
          (bottom - top) * plot_.height()};
}

int LaunchMapView::cell_at(const QPointF& at) const {
  if (!map_ || map_->cells.empty() || !plot_.contains(at)) return -1;
  const MapPlace place = place_at(at);
  const auto nearest = [](const MapAxis& axis, double value) {
    return axis.count < 2
               ? 0
               : std::clamp(static_cast<int>(std::lround((value - axis.from) / axis.step())), 0, axis.count - 1);
  };
  return nearest(map_->down, place.down) * map_->across.count + nearest(map_->across, place.across);
}

void LaunchMapView::resizeEvent(QResizeEvent*) {
  kept_ = {};
  lay_out();
}

void LaunchMapView::changeEvent(QEvent* event) {
  if (event->type() == QEvent::FontChange) {
    kept_ = {};
    lay_out();
    updateGeometry();
  }
  QWidget::changeEvent(event);
}

void LaunchMapView::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton || !map_ || map_->cells.empty()) return;
  const QPointF dot = at(here_), away = event->position() - dot;
  if (std::hypot(away.x(), away.y()) > grip_px) return;
  dragging_ = true;
  grip_ = away;
  setCursor(Qt::ClosedHandCursor);
  Q_EMIT drag_started();
}

void LaunchMapView::mouseMoveEvent(QMouseEvent* event) {
  if (!map_ || map_->cells.empty()) return;
  if (event->buttons() == Qt::NoButton) end_drag(true);  // the release went to another window
  if (dragging_) {
    Q_EMIT dragged(place_at(event->position() - grip_));
  } else {
    const QPointF away = event->position() - at(here_);
    setCursor(std::hypot(away.x(), away.y()) <= grip_px ? Qt::OpenHandCursor : Qt::CrossCursor);
  }
  const int cell = cell_at(event->position());
  if (cell == hovered_) return;
  hovered_ = cell;
  Q_EMIT hovered(cell);
}

void LaunchMapView::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton) end_drag(true);
}

void LaunchMapView::end_drag(bool keep) {
  if (!dragging_) return;
  dragging_ = false;
  unsetCursor();
  Q_EMIT drag_ended(keep);
}

void LaunchMapView::keyPressEvent(QKeyEvent* event) {
  const int times = event->modifiers() & Qt::ShiftModifier ? 10 : 1;
  const auto nudge = [&](int right, int down) {
    if (map_ && !dragging_) Q_EMIT nudged(right * times, (upward() ? -down : down) * times);
  };
  switch (event->key()) {
    case Qt::Key_Escape:
      if (!dragging_) break;
      end_drag(false);
      return;
    case Qt::Key_Left:
      return nudge(-1, 0);
    case Qt::Key_Right:
      return nudge(1, 0);
    case Qt::Key_Up:
      return nudge(0, -1);
    case Qt::Key_Down:
      return nudge(0, 1);
    default:
      break;
  }
  QWidget::keyPressEvent(event);
}

void LaunchMapView::leaveEvent(QEvent*) {
  if (hovered_ < 0) return;
  hovered_ = -1;
  Q_EMIT hovered(-1);
}

void LaunchMapView::focusOutEvent(QFocusEvent* event) {
  end_drag(false);
  QWidget::focusOutEvent(event);
}

}  // namespace burrow
