#include "burrow/window/side_column.h"

#include <QCheckBox>
#include <QVBoxLayout>

#include "burrow/crossing/find.h"
#include "burrow/document/surroundings.h"

namespace burrow {

SideColumn::SideColumn(Document& document, DrawingView& drawing, QWidget* parent)
    : QWidget(parent),
      job_(document),
      launch_job_(document),
      bar_(new PageBar(this)),
      rail_(new PageRail(this)),
      several_(new SeveralPanel(document, this)),
      stack_(new QStackedWidget(this)),
      findings_(new FindingsPanel(document, this)),
      path_(new PathPanel(document, this)),
      trials_(new TrialsPanel(document, job_, this)),
      limits_(new LimitsPanel(document, this)),
      setup_(new SetupPanel(document, this)),
      utilities_(new UtilitiesPanel(document, this)),
      surface_(new SurfacePanel(document, this)),
      surroundings_(new SurroundingsPanel(document, this)),
      pits_(new PitsPanel(document, this)),
      pipe_(new PipePanel(document, this)),
      soil_(new SoilPanel(document, this)),
      tool_(new ToolPanel(document, this)),
      launch_(new LaunchPanel(document, launch_job_, this)),
      layouts_(new LayoutsPanel(document, this)),
      air_(new AirPanel(document, this)),
      permit_(new PermitPanel(document, this)),
      run_(new RunPanel(document, this)),
      day_(new DayPanel(document, this)),
      sheet_(new SheetPanel(document, this)),
      practice_(new PracticePanel(document, this)) {
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->setSpacing(0);
  all->addWidget(bar_);
  all->addWidget(several_);
  constexpr int least_page_px = 200;  // the highest page does not decide how low the window may be
  stack_->setMinimumHeight(least_page_px);
  all->addWidget(stack_, 1);
  follow(several_);
  begin_group(tr("Results"), QStringLiteral("findings"));
  add_page(findings_, tr("Findings"), tr("What is wrong, missing or worth knowing, worst first"));
  add_page(path_, tr("Path"), tr("Where it goes, how it gets on, and the pit for a stuck tool"));
  add_page(trials_, tr("Simulation"), tr("Many bores drawn at random, and what became of them"));
  add_page(limits_, tr("Limits"), tr("Every limit that judges here, its source, and those set for this crossing"));
  begin_group(tr("Options"), QStringLiteral("alternatives"));
  add_page(launch_, tr("Launches"), tr("At which launches everything holds, and what would have to give way"));
  add_page(layouts_, tr("Alternatives"), tr("Other layouts kept in the file, beside the current one"));
  begin_group(tr("Site"), QStringLiteral("site"));
  add_page(soil_, tr("Ground"), tr("Soil of each stratum, and how well it is known"));
  add_page(utilities_, tr("Utilities"), tr("What lies below, how it is known, and what to expose first"));
  add_page(surface_, tr("Above ground"), tr("Roads, tracks, buildings on top, and what their owners ask for"));
  add_page(surroundings_, tr("Surroundings"),
           tr("Boundaries, trees, machines, old trenches; where the site lies in a map"));
  begin_group(tr("Bore"), QStringLiteral("bore"));
  add_page(setup_, tr("Set-up"), tr("What the crew sets at the launch, and what an error there becomes"));
  add_page(tool_, tr("Tool"), tr("The tool: its class or its maker's plate"));
  add_page(pits_, tr("Pits"), tr("Floor, sides, soil type and spoil of both pits, and what is to be done there"));
  add_page(pipe_, tr("Pipe"), tr("The pipe, how it goes in, what presses on it and what it bears"));
  add_page(air_, tr("Air line"), tr("Compressor, air line and oil, and the pressure that reaches the tool"));
  begin_group(tr("On site"), QStringLiteral("site-log"));
  add_page(permit_, tr("Permit"), tr("What a supervisor is asked for before the first blow, and who signed"));
  add_page(run_, tr("Run sheet"), tr("Marks of the hose and what lies ahead, checklist, equipment"));
  add_page(day_, tr("Site log"), tr("Readings as they are taken, where it is now heading, and what to do"));
  begin_group(tr("Training"), QStringLiteral("practice"));
  add_page(practice_, tr("Practice bore"),
           tr("Bores whose course is hidden until the tool arrives, and errors to try"));
  begin_group(tr("Paper"), QStringLiteral("sheet"));
  add_page(sheet_, tr("Sheet"), tr("Name, notes, number, revision, paper and scale"));
  connect(bar_, &PageBar::wanted, this, [this](int page) {
    stack_->setCurrentIndex(page);
    rail_->check(bar_->group_of(page));
  });
  connect(rail_, &PageRail::wanted, this, [this](int group) {
    const bool again = bar_->group_of(currentIndex()) == group && isVisible();
    show_group(group);
    if (again) Q_EMIT group_asked_again();
  });
  connect(&document, &Document::changed, this, [this, &document] { show_count(document.assessment().findings); });
  bar_->check(0);
  wire(document, drawing);
  // A record that is under way shows on the drawing at once, whichever page is open.
  connect(&document, &Document::replaced, day_, [this, &document] {
    if (!document.crossing().record.empty()) day_->refresh_now();
  });
}

void SideColumn::wire(Document& document, DrawingView& drawing) {
  connect(path_, &PathPanel::rescue_changed, &drawing, &DrawingView::set_rescue);
  connect(trials_, &TrialsPanel::cloud_toggled, &drawing, &DrawingView::set_cloud);
  connect(&job_, &TrialsJob::changed, &drawing,
          [this, &drawing] { drawing.set_trials(job_.trials(), job_.current()); });
  connect(utilities_, &UtilitiesPanel::picked, &drawing, [&drawing](const QString& id) {
    drawing.pick({ItemKind::utility, id.toStdString(), -1});
  });
  connect(surface_, &SurfacePanel::picked, &drawing, [&drawing](const QString& id) {
    drawing.pick({ItemKind::surface, id.toStdString(), -1});
  });
  connect(pits_, &PitsPanel::picked, &drawing, [&drawing](WhichPit which) {
    drawing.pick({which == WhichPit::launch ? ItemKind::launch : ItemKind::exit, {}, -1});
  });
  const auto show_read = [&drawing](const std::vector<PathPoint>& points, double nose_m) {
    drawing.set_read_path(points.size() < 2 ? std::nullopt : std::optional<ReadPath>(ReadPath{points, nose_m}));
  };
  connect(day_, &DayPanel::read_path_changed, &drawing, show_read);
  connect(practice_, &PracticePanel::read_path_changed, &drawing, show_read);
  connect(practice_, &PracticePanel::truth_changed, &drawing, &DrawingView::set_truth);
  connect(practice_, &PracticePanel::lesson_wanted, this, &SideColumn::lesson_wanted);
  connect(several_, &SeveralPanel::pick_wanted, &drawing, &DrawingView::pick_several);
  connect(&drawing, &DrawingView::several_typing_wanted, several_, &SeveralPanel::begin_typing);
  connect(layouts_, &LayoutsPanel::ghost_changed, &drawing, &DrawingView::set_ghost_layout);
  connect(&drawing, &DrawingView::picked_changed, this, [this, &drawing, &document] {
    const ItemRef& part = drawing.picked();
    several_->show_parts(drawing.several());
    findings_->set_picked_things(drawing.all_picked());
    if (part.kind == ItemKind::utility) utilities_->pick(part.id);
    if (part.kind == ItemKind::surface) surface_->pick(part.id);
    if (part.kind == ItemKind::stratum) soil_->pick(part.id);
    if (part.kind == ItemKind::test_holes)
      if (const TestHole* hole = find_by_id(document.crossing().site.test_holes, part.id))
        utilities_->pick(hole->utility);
    if (part.kind == ItemKind::around)
      for (const Around& one : burrow::surroundings(document.crossing()))
        if (one.id == part.id) surroundings_->pick(one);
    if (part.kind == ItemKind::launch) pits_->show_pit(WhichPit::launch);
    if (part.kind == ItemKind::exit) pits_->show_pit(WhichPit::exit);
    if (part.kind == ItemKind::pit_edge) pits_->show_pit(part.id == "launch" ? WhichPit::launch : WhichPit::exit);
  });
}

void SideColumn::begin_group(const QString& name, const QString& icon) {
  bar_->begin_group();
  rail_->add_group(name, icon);
  group_names_ << name;
}

void SideColumn::show_group(int group) {
  if (bar_->group_of(currentIndex()) != group) bar_->check(bar_->last_of(group));
  Q_EMIT page_wanted();
}

void SideColumn::show_next_of(int group) {
  if (bar_->group_of(currentIndex()) == group) bar_->check(bar_->after(currentIndex()));
  show_group(group);
  currentWidget()->setFocus();
}

/// On the results: how many of the worst kind there are, of those that count.
void SideColumn::show_count(const std::vector<Finding>& findings) {
  const std::vector<FindingCount> counts = finding_counts(findings);
  FindingCount worst;
  if (!counts.empty() && counts.front().mark != FindingMark::note) worst = counts.front();
  if (shown_count_ && shown_count_->mark == worst.mark && shown_count_->count == worst.count) return;
  shown_count_ = worst;
  paint_count();
}

void SideColumn::paint_count() {
  if (!shown_count_) return;
  const FindingCount& worst = *shown_count_;
  const QColor ink = worst.mark == FindingMark::stop      ? theme_.on_stop
                     : worst.mark == FindingMark::caution ? theme_.on_caution
                                                          : theme_.on_note;
  rail_->button(0)->set_count(worst.count, mark_colour(worst.mark, theme_), ink);
}

void SideColumn::set_units(UnitSystem units) {
  for (const auto& follow : unit_followers_) follow(units);
}

void SideColumn::set_theme(const Theme& theme) {
  theme_ = theme;
  bar_->set_theme(theme);
  rail_->set_theme(theme);
  paint_count();
  for (const auto& follow : theme_followers_) follow(theme);
}

}  // namespace burrow
