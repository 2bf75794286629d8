#pragma once
/// The column beside the drawing: findings, path, trials, set-up, ground, tool, one page at a time.

#include <QTabWidget>

#include "burrow/document/trials_desk.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/panels/findings_panel.h"
#include "burrow/panels/path_panel.h"
#include "burrow/panels/setup_panel.h"
#include "burrow/panels/soil_panel.h"
#include "burrow/panels/tool_panel.h"
#include "burrow/panels/trials_panel.h"

namespace burrow {

class SideColumn : public QTabWidget {
  Q_OBJECT

 public:
  enum class Page { findings, path, trials, setup, ground, tool };

  SideColumn(Document& document, DrawingView& drawing, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  void show_page(Page page);

  FindingsPanel& findings() { return *findings_; }
  PathPanel& path() { return *path_; }
  TrialsPanel& trials() { return *trials_; }
  SetupPanel& setup() { return *setup_; }
  SoilPanel& soil() { return *soil_; }
  ToolPanel& tool() { return *tool_; }
  TrialsDesk& desk() { return desk_; }

 private:
  TrialsDesk desk_;
  FindingsPanel* findings_;
  PathPanel* path_;
  TrialsPanel* trials_;
  SetupPanel* setup_;
  SoilPanel* soil_;
  ToolPanel* tool_;
};

}  // namespace burrow
