#pragma once
/// The column beside the drawing, one page at a time, and the rail that chooses the group of pages: what comes out,
/// what else could be done, what is known of the site, what is chosen for the bore, the day, training, the paper.

#include <QStackedWidget>
#include <QWidget>
#include <functional>
#include <optional>
#include <vector>

#include "burrow/document/launch_search_job.h"
#include "burrow/document/trials_job.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/panels/air_panel.h"
#include "burrow/panels/day_panel.h"
#include "burrow/panels/findings_panel.h"
#include "burrow/panels/launch_panel.h"
#include "burrow/panels/layouts_panel.h"
#include "burrow/panels/limits_panel.h"
#include "burrow/panels/path_panel.h"
#include "burrow/panels/permit_panel.h"
#include "burrow/panels/pipe_panel.h"
#include "burrow/panels/pits_panel.h"
#include "burrow/panels/practice_panel.h"
#include "burrow/panels/run_panel.h"
#include "burrow/panels/setup_panel.h"
#include "burrow/panels/several_panel.h"
#include "burrow/panels/sheet_panel.h"
#include "burrow/panels/soil_panel.h"
#include "burrow/panels/surface_panel.h"
#include "burrow/panels/surroundings_panel.h"
#include "burrow/panels/tool_panel.h"
#include "burrow/panels/trials_panel.h"
#include "burrow/panels/utilities_panel.h"
#include "burrow/panels/verdict_bar.h"
#include "burrow/window/page_bar.h"

namespace burrow {

class SideColumn : public QWidget {
  Q_OBJECT

 public:
  enum class Page {
    findings,
    path,
    trials,
    limits,
    launch,
    layouts,
    ground,
    utilities,
    surface,
    surroundings,
    setup,
    tool,
    pits,
    pipe,
    air,
    permit,
    run,
    day,
    practice,
    sheet
  };

  SideColumn(Document& document, DrawingView& drawing, QWidget* parent = nullptr);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  void show_page(Page page) { setCurrentIndex(static_cast<int>(page)); }
  [[nodiscard]] int count() const { return stack_->count(); }
  [[nodiscard]] int currentIndex() const { return stack_->currentIndex(); }
  void setCurrentIndex(int page) {
    bar_->check(page);
    Q_EMIT page_wanted();
  }
  [[nodiscard]] QWidget* currentWidget() const { return stack_->currentWidget(); }
  [[nodiscard]] QString page_name(int page) const { return bar_->button(page)->text(); }
  [[nodiscard]] int group_of(int page) const { return bar_->group_of(page); }
  [[nodiscard]] const QStringList& group_names() const { return group_names_; }
  /// The page last shown of a group; the same again when it is shown already.
  void show_group(int group);
  /// The same by key: pressed again, the next page of the group.
  void show_next_of(int group);

  PageBar& bar() { return *bar_; }
  /// Stands beside the column, also when that is hidden.
  PageRail& rail() { return *rail_; }
  SeveralPanel& several() { return *several_; }
  FindingsPanel& findings() { return *findings_; }
  PathPanel& path() { return *path_; }
  TrialsPanel& trials() { return *trials_; }
  LimitsPanel& limits() { return *limits_; }
  SetupPanel& setup() { return *setup_; }
  UtilitiesPanel& utilities() { return *utilities_; }
  SurfacePanel& surface() { return *surface_; }
  SurroundingsPanel& surroundings() { return *surroundings_; }
  PitsPanel& pits() { return *pits_; }
  PipePanel& pipe() { return *pipe_; }
  SoilPanel& soil() { return *soil_; }
  ToolPanel& tool() { return *tool_; }
  LaunchPanel& launch() { return *launch_; }
  LayoutsPanel& layouts() { return *layouts_; }
  AirPanel& air() { return *air_; }
  PermitPanel& permit() { return *permit_; }
  RunPanel& run() { return *run_; }
  DayPanel& day() { return *day_; }
  SheetPanel& sheet() { return *sheet_; }
  PracticePanel& practice() { return *practice_; }
  TrialsJob& job() { return job_; }
  LaunchSearchJob& launch_job() { return launch_job_; }

 Q_SIGNALS:
  /// A page is to be seen.
  void page_wanted();
  /// The group that is shown already was asked for again at the rail.
  void group_asked_again();
  /// A lesson is to be opened, by the name of its sample.
  void lesson_wanted(const QString& sample);

 private:
  template <class PageWidget>
  void add_page(PageWidget* page, const QString& name, const QString& hint) {
    stack_->addWidget(page);
    bar_->add(name, hint);
    follow(page);
  }
  /// Units and colours of the window are those of this widget too.
  template <class Follower>
  void follow(Follower* widget) {
    unit_followers_.push_back([widget](UnitSystem units) { widget->set_units(units); });
    theme_followers_.push_back([widget](const Theme& theme) { widget->set_theme(theme); });
  }
  void begin_group(const QString& name, const QString& icon);
  void show_count(const std::vector<Finding>& findings);
  void paint_count();
  void wire(Document& document, DrawingView& drawing);

  std::vector<std::function<void(UnitSystem)>> unit_followers_;
  std::vector<std::function<void(const Theme&)>> theme_followers_;
  TrialsJob job_;
  LaunchSearchJob launch_job_;
  PageBar* bar_;
  PageRail* rail_;
  QStringList group_names_;
  std::optional<FindingCount> shown_count_;  ///< none: nothing was judged yet
  Theme theme_ = Theme::light();
  SeveralPanel* several_;
  QStackedWidget* stack_;
  FindingsPanel* findings_;
  PathPanel* path_;
  TrialsPanel* trials_;
  LimitsPanel* limits_;
  SetupPanel* setup_;
  UtilitiesPanel* utilities_;
  SurfacePanel* surface_;
  SurroundingsPanel* surroundings_;
  PitsPanel* pits_;
  PipePanel* pipe_;
  SoilPanel* soil_;
  ToolPanel* tool_;
  LaunchPanel* launch_;
  LayoutsPanel* layouts_;
  AirPanel* air_;
  PermitPanel* permit_;
  RunPanel* run_;
  DayPanel* day_;
  SheetPanel* sheet_;
  PracticePanel* practice_;
};

}  // namespace burrow
