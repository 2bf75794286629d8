#include "burrow/panels/live_panel.h"

#include <QTimer>

namespace burrow {

LivePanel::LivePanel(Document& document, int refresh_ms, QWidget* parent)
    : QWidget(parent), document_(document), later_(new QTimer(this)) {
  setAutoFillBackground(true);
  later_->setSingleShot(true);
  later_->setInterval(refresh_ms);
  connect(later_, &QTimer::timeout, this, [this] {
    if (isVisible()) refresh_now();  // else when it is shown
  });
  connect(&document_, &Document::changed, this, &LivePanel::refresh_later);
  connect(&document_, &Document::replaced, this, &LivePanel::refresh_soon);
}

void LivePanel::refresh_later() {
  stale_ = true;
  if (isVisible() && !later_->isActive()) later_->start();
}

void LivePanel::refresh_soon() {
  stale_ = true;
  if (isVisible()) refresh_now();
}

void LivePanel::refresh_now() {
  stale_ = false;
  later_->stop();
  refresh();
}

void LivePanel::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (stale_) refresh_now();
}

void LivePanel::set_units(UnitSystem units) {
  units_ = units;
  refresh_soon();
}

void LivePanel::set_theme(const Theme& theme) {
  theme_ = theme;
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  colours.setColor(QPalette::Button, theme.panel);
  colours.setColor(QPalette::ButtonText, theme.ink);
  colours.setColor(QPalette::PlaceholderText, theme.ink_soft);
  colours.setColor(QPalette::Highlight, theme.focus);
  colours.setColor(QPalette::HighlightedText, theme.dark ? theme.paper : QColor(Qt::white));
  colours.setColor(QPalette::Highlight, theme.focus);
  colours.setColor(QPalette::HighlightedText, theme.dark ? theme.paper : QColor(Qt::white));
  QColor weak = theme.ink_soft;
  weak.setAlpha(150);
  for (const QPalette::ColorRole role : {QPalette::Text, QPalette::ButtonText})
    colours.setColor(QPalette::Disabled, role, weak);
  setPalette(colours);
  refresh_soon();
}

}  // namespace burrow
