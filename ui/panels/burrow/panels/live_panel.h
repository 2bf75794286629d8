#pragma once
/// A panel that follows the crossing: at most twenty times a second, and only while somebody sees it.

#include <QTimer>
#include <QWidget>

#include "burrow/document/document.h"
#include "burrow/drawing/theme.h"

namespace burrow {

class LivePanel : public QWidget {
  Q_OBJECT

 public:
  LivePanel(Document& document, QWidget* parent);
  void set_units(UnitSystem units);
  virtual void set_theme(const Theme& theme);

 protected:
  /// Shows the crossing as it stands.
  virtual void refresh() = 0;
  void showEvent(QShowEvent* event) override;
  /// Soon, with whatever else changes until then.
  void refresh_later();
  [[nodiscard]] Document& document() const { return document_; }
  [[nodiscard]] UnitSystem units() const { return units_; }
  [[nodiscard]] const Theme& theme() const { return theme_; }

 private:
  Document& document_;
  QTimer later_;
  bool stale_ = true;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();
};

}  // namespace burrow
