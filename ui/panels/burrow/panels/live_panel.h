#pragma once
/// A panel that follows the crossing: only while somebody sees it, and no more often than its work allows.

#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"

class QTimer;

namespace burrow {

/// Least time between two refreshes of a page while things are dragged, by what one of them costs.
inline constexpr int light_page_ms = 50, usual_page_ms = 60, heavy_page_ms = 120;

class LivePanel : public QWidget {
  Q_OBJECT

 public:
  /// `refresh_ms`: least time between two refreshes while things are dragged.
  LivePanel(Document& document, int refresh_ms, QWidget* parent);
  virtual void set_units(UnitSystem units);
  virtual void set_theme(const Theme& theme);
  /// Brings everything up to date now, seen or not: for pictures and tests.
  virtual void refresh_now();

 protected:
  /// Shows the crossing as it stands.
  virtual void refresh() = 0;
  void showEvent(QShowEvent* event) override;
  /// Soon, with whatever else changes until then.
  void refresh_later();
  /// At once if it is seen, else when it is.
  void refresh_soon();

  Document& document_;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();

 private:
  QTimer* later_;
  bool stale_ = true;
};

}  // namespace burrow
