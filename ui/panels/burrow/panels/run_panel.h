#pragma once
/// The run sheet: marks of the hose with what lies ahead, equipment, checklist, stop signs, what to do when a line is
/// struck.

#include "burrow/panels/form_panel.h"

namespace burrow {

class RunPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit RunPanel(Document& document, QWidget* parent = nullptr);
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  [[nodiscard]] QString marks_html() const;
  [[nodiscard]] QString mark_html(const Mark& mark) const;
  [[nodiscard]] QString equipment_html() const;
  [[nodiscard]] QString checklist_html() const;
  [[nodiscard]] QString signs_html() const;
  [[nodiscard]] QString emergency_html() const;

  QLabel *marks_ = nullptr, *equipment_ = nullptr, *checklist_ = nullptr, *signs_ = nullptr, *emergency_ = nullptr;
};

}  // namespace burrow
