#include "burrow/panels/live_panel.h"

namespace burrow {

namespace {
constexpr int refresh_ms = 50;
}

LivePanel::LivePanel(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  setAutoFillBackground(true);
  later_.setSingleShot(true);
  later_.setInterval(refresh_ms);
  connect(&later_, &QTimer::timeout, this, [this] {
    if (!isVisible()) return;  // shown later, refreshed then
    stale_ = false;
    refresh();
  });
  connect(&document_, &Document::changed, this, &LivePanel::refresh_later);
}

void LivePanel::refresh_later() {
  stale_ = true;
  if (isVisible() && !later_.isActive()) later_.start();
}

void LivePanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (!stale_) return;
  stale_ = false;
  refresh();
}

void LivePanel::set_units(UnitSystem units) {
  units_ = units;
  refresh_later();
}

void LivePanel::set_theme(const Theme& theme) {
  theme_ = theme;
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  refresh_later();
}

}  // namespace burrow
