#include "burrow/window/side_column.h"

#include <QCheckBox>
#include <QVBoxLayout>

namespace burrow {

SideColumn::SideColumn(Document& document, DrawingView& drawing, QWidget* parent)
    : QWidget(parent),
      job_(document),
      launch_job_(document),
      bar_(new PageBar(this)),
      several_(new SeveralPanel(document, this)),
      stack_(new QStackedWidget(this)),
      findings_(new FindingsPanel(document, this)),
      path_(new PathPanel(document, this)),
      trials_(new TrialsPanel(document, job_, this)),
      setup_(new SetupPanel(document, this)),
      utilities_(new UtilitiesPanel(document, this)),
      surface_(new SurfacePanel(document, this)),
      pits_(new PitsPanel(document, this)),
      pipe_(new PipePanel(document, this)),
      soil_(new SoilPanel(document, this)),
      tool_(new ToolPanel(document, this)),
      launch_(new LaunchPanel(document, launch_job_, this)),
      layouts_(new LayoutsPanel(document, this)),
      air_(new AirPanel(document, this)),
      run_(new RunPanel(document, this)),
      day_(new DayPanel(document, this)),
      practice_(new PracticePanel(document, this)) {
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->setSpacing(0);
  all->addWidget(bar_);
  all->addWidget(several_);
  all->addWidget(stack_, 1);
  follow(several_);
  bar_->begin_row(tr("Answer"));
  add_page(findings_, tr("Findings"), tr("What is wrong, missing or worth knowing, worst first"));
  add_page(path_, tr("Path"), tr("Where it goes, how it gets on, and the pit for a stuck tool"));
  add_page(trials_, tr("Trials"), tr("Many bores drawn at random, and what became of them"));
  add_page(launch_, tr("Launches"), tr("At which launches everything holds, and what would have to give way"));
  add_page(layouts_, tr("Layouts"), tr("Other layouts kept in the file, beside the one in force"));
  bar_->begin_row(tr("Site"));
  add_page(soil_, tr("Ground"), tr("Soil of each stratum, and how well it is known"));
  add_page(utilities_, tr("Utilities"), tr("What lies below, how it is known, and what to expose first"));
  add_page(surface_, tr("Surface"), tr("Roads, tracks, buildings on top, and what their owners ask for"));
  bar_->begin_row(tr("Bore"));
  add_page(setup_, tr("Set-up"), tr("What the crew sets at the launch, and what an error there becomes"));
  add_page(tool_, tr("Tool"), tr("The tool: its class or its maker's plate"));
  add_page(pits_, tr("Pits"), tr("Floor, sides, soil type and spoil of both pits, and what is to be done there"));
  add_page(pipe_, tr("Pipe"), tr("The pipe, how it goes in, what presses on it and what it bears"));
  add_page(air_, tr("Air"), tr("Compressor, air line and oil, and the pressure that reaches the tool"));
  bar_->begin_row(tr("Day"));
  add_page(run_, tr("Run sheet"), tr("Marks of the hose and what lies ahead, checklist, equipment"));
  add_page(day_, tr("Day"), tr("Readings as they are taken, where it is now heading, and what to do"));
  add_page(practice_, tr("Practice"), tr("Bores whose truth is hidden until the tool arrives, and errors to try"));
  connect(bar_, &PageBar::wanted, stack_, &QStackedWidget::setCurrentIndex);
  bar_->check(0);
  wire(drawing);
  // A record that is under way shows on the drawing at once, whichever page is open.
  connect(&document, &Document::replaced, day_, [this, &document] {
    if (!document.crossing().record.empty()) day_->refresh_now();
  });
}

void SideColumn::wire(DrawingView& drawing) {
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
  connect(&drawing, &DrawingView::picked_changed, this, [this, &drawing] {
    const ItemRef& part = drawing.picked();
    several_->show_parts(drawing.several());
    findings_->set_picked_things(drawing.all_picked());
    if (part.kind == ItemKind::utility) utilities_->pick(part.id);
    if (part.kind == ItemKind::surface) surface_->pick(part.id);
    if (part.kind == ItemKind::launch) pits_->show_pit(WhichPit::launch);
    if (part.kind == ItemKind::exit) pits_->show_pit(WhichPit::exit);
    if (part.kind == ItemKind::pit_edge) pits_->show_pit(part.id == "launch" ? WhichPit::launch : WhichPit::exit);
  });
}

void SideColumn::set_units(UnitSystem units) {
  for (const auto& follow : unit_followers_) follow(units);
}

void SideColumn::set_theme(const Theme& theme) {
  bar_->set_theme(theme);
  for (const auto& follow : theme_followers_) follow(theme);
}

}  // namespace burrow
