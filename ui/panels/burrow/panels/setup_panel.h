#pragma once
/// What the crew sets at the launch: grade and line, cradle, how long to hold the tool, and what a small error becomes
/// at the exit.

#include "burrow/crew/crew_setup.h"
#include "burrow/panels/form_panel.h"

namespace burrow {

class SetupPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit SetupPanel(Document& document, QWidget* parent = nullptr);
  /// Grade, heading, sight base.
  [[nodiscard]] EntryForm* line() const { return line_; }
  /// The three errors.
  [[nodiscard]] EntryForm* errors() const { return errors_; }
  /// The set-up that is shown.
  [[nodiscard]] const CrewSetup& shown() const { return setup_; }
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  [[nodiscard]] QString line_text() const;
  [[nodiscard]] QString cradle_text() const;
  [[nodiscard]] QString errors_text() const;

  CrewSetup setup_;
  QLabel* line_text_;
  EntryForm* line_;
  QLabel* cradle_text_;
  QLabel* errors_text_;
  EntryForm* errors_;
  QLabel* status_;
};

}  // namespace burrow
