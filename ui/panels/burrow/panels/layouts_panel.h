#pragma once
/// Layouts of one crossing beside one another: keep the one in force, take another, draw one as a ghost.

#include <memory>

#include "burrow/drawing/drawing_view.h"
#include "burrow/panels/form_panel.h"
#include "burrow/search/layouts.h"

class QLineEdit;

namespace burrow {

class LayoutsPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit LayoutsPanel(Document& document, QWidget* parent = nullptr);

  [[nodiscard]] QComboBox* other() const { return other_; }
  [[nodiscard]] QLineEdit* name() const { return name_; }
  [[nodiscard]] QPushButton* keep() const { return keep_; }
  [[nodiscard]] QPushButton* take() const { return take_; }
  [[nodiscard]] QPushButton* rename() const { return rename_; }
  [[nodiscard]] QPushButton* remove() const { return remove_; }
  [[nodiscard]] QPushButton* ghost() const { return ghost_; }
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// The layout to be drawn dashed; none takes it away.
  void ghost_changed(const std::shared_ptr<const GhostLayout>& ghost);

 protected:
  void refresh() override;

 private:
  [[nodiscard]] std::string picked_id() const;
  [[nodiscard]] QString table_html(const std::vector<LayoutSummary>& all) const;
  void put(const QString& step_name, const Edit& edit);
  void say_ghost();

  QLabel* table_ = nullptr;
  QComboBox* other_ = nullptr;
  QLineEdit* name_ = nullptr;
  QPushButton *keep_ = nullptr, *take_ = nullptr, *rename_ = nullptr, *remove_ = nullptr, *ghost_ = nullptr;
  QLabel* empty_ = nullptr;
};

}  // namespace burrow
