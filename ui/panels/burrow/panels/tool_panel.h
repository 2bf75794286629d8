#pragma once
/// The tool: its class or its maker's plate, and what follows from it for the blow and the grip.

#include "burrow/panels/form_panel.h"

class QPushButton;

namespace burrow {

class ToolPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit ToolPanel(Document& document, QWidget* parent = nullptr);
  [[nodiscard]] QComboBox* classes() const { return classes_; }
  [[nodiscard]] EntryForm* plate() const { return plate_; }
  [[nodiscard]] QPushButton* back_to_class() const { return back_; }
  /// What is said about source, blow and grip, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;

 private:
  void fill_classes();
  void choose(int row);
  void take_typed_values_out();
  void show_source();
  void show_blow();

  QComboBox* classes_;
  QLabel* source_;
  EntryForm* plate_;
  QPushButton* back_;
  QLabel* blow_;
};

}  // namespace burrow
