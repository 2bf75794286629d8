#include "burrow/window/side_column.h"

#include <QCheckBox>

namespace burrow {

SideColumn::SideColumn(Document& document, DrawingView& drawing, QWidget* parent)
    : QTabWidget(parent),
      desk_(document),
      findings_(new FindingsPanel(document, this)),
      path_(new PathPanel(document, this)),
      trials_(new TrialsPanel(document, desk_, this)),
      setup_(new SetupPanel(document, this)),
      soil_(new SoilPanel(document, this)),
      tool_(new ToolPanel(document, this)) {
  setDocumentMode(true);
  setUsesScrollButtons(true);
  setElideMode(Qt::ElideNone);
  addTab(findings_, tr("Findings"));
  addTab(path_, tr("Path"));
  addTab(trials_, tr("Trials"));
  addTab(setup_, tr("Set-up"));
  addTab(soil_, tr("Ground"));
  addTab(tool_, tr("Tool"));
  const QStringList hints{tr("What is wrong, missing or worth knowing, worst first"),
                          tr("Where it goes, how it gets on, and the pit for a stuck tool"),
                          tr("Many bores drawn at random, and what became of them"),
                          tr("What the crew sets at the launch, and what an error there becomes"),
                          tr("Soil of each stratum, and how well it is known"),
                          tr("The tool: its class or its maker's plate")};
  for (int i = 0; i < count(); ++i) setTabToolTip(i, hints[i]);
  connect(path_, &PathPanel::rescue_changed, &drawing, &DrawingView::set_rescue);
  connect(trials_, &TrialsPanel::cloud_toggled, &drawing, &DrawingView::set_cloud);
  connect(&desk_, &TrialsDesk::changed, &drawing,
          [this, &drawing] { drawing.set_trials(desk_.trials(), desk_.current()); });
}

void SideColumn::set_units(UnitSystem units) {
  findings_->set_units(units);
  path_->set_units(units);
  trials_->set_units(units);
  setup_->set_units(units);
  soil_->set_units(units);
  tool_->set_units(units);
}

void SideColumn::set_theme(const Theme& theme) {
  findings_->set_theme(theme);
  path_->set_theme(theme);
  trials_->set_theme(theme);
  setup_->set_theme(theme);
  soil_->set_theme(theme);
  tool_->set_theme(theme);
}

void SideColumn::show_page(Page page) {
  setCurrentIndex(static_cast<int>(page));
}

}  // namespace burrow
