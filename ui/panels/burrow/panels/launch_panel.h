#pragma once
/// Which launch works: the map of launches, the best one, what stands against it where none does, other tools.

#include <memory>

#include "burrow/document/launch_search_job.h"
#include "burrow/panels/form_panel.h"

class QProgressBar;

namespace burrow {

class LaunchMapView;

class LaunchPanel : public FormPanel {
  Q_OBJECT

 public:
  LaunchPanel(Document& document, LaunchSearchJob& job, QWidget* parent = nullptr);
  ~LaunchPanel() override;
  void set_units(UnitSystem units) override;
  void set_theme(const Theme& theme) override;

  [[nodiscard]] LaunchMapView* view() const { return view_; }
  [[nodiscard]] QPushButton* take_best() const { return take_best_; }
  [[nodiscard]] QPushButton* search_button() const { return search_; }
  [[nodiscard]] QPushButton* tools_button() const { return ask_tools_; }
  [[nodiscard]] QLabel* pointed() const { return pointed_; }
  /// Everything said on the page, as plain text.
  [[nodiscard]] QString visible_text() const;

 protected:
  void refresh() override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;

 private:
  void wire();
  void make_tools();
  void show_state();
  void show_pointed();
  void show_words();
  void show_tools();
  void begin_drag();
  void drag_to(const MapPlace& place);
  void end_drag(bool keep);
  void nudge(int right, int down);
  void take();
  [[nodiscard]] MapPlace rounded(const MapPlace& place) const;
  [[nodiscard]] QString cell_words(const LaunchCell& cell) const;
  [[nodiscard]] QString key_html() const;
  [[nodiscard]] QString way_out_html() const;

  LaunchSearchJob& job_;
  LaunchMapView* view_ = nullptr;
  QLabel *state_ = nullptr, *pointed_ = nullptr, *key_ = nullptr, *answer_ = nullptr, *way_out_ = nullptr,
         *tools_state_ = nullptr, *tools_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QPushButton *take_best_ = nullptr, *search_ = nullptr, *ask_tools_ = nullptr;
  int hovered_ = -1;
  std::unique_ptr<EditSession> session_;
};

}  // namespace burrow
