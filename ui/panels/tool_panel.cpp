#include "burrow/panels/tool_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>

#include "burrow/bore/tool.h"
#include "burrow/check/limits.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/entry_form.h"
#include "burrow/words/working_text.h"

namespace burrow {

namespace {
const ItemRef tool_part{ItemKind::tool, {}, -1};

}  // namespace

ToolPanel::ToolPanel(Document& document, QWidget* parent) : FormPanel(document, light_page_ms, parent) {
  add_heading(tr("Tool"));
  classes_ = add_combo(tr("class of the tool"));
  source_ = add_text(tr("Where the values of the class come from"), true);
  add_gap();
  add_heading(tr("Maker's plate"));
  plate_ = add_entries(tr("class"));
  plate_->show_part(tool_part, [this] { return plate_fields(document_.crossing(), document_.tables()); });
  back_ = new QPushButton(tr("Back to the class values"), this);
  back_->setToolTip(tr("Takes out all that was typed from the plate; one undo step."));
  add_widget(back_);
  add_gap();
  add_heading(tr("What follows"));
  blow_ = add_text(tr("Blow and grip of the tool"));
  add_end();
  connect(classes_, &QComboBox::activated, this, &ToolPanel::choose);
  connect(back_, &QPushButton::clicked, this, &ToolPanel::take_typed_values_out);
  refresh_now();
}

void ToolPanel::fill_classes() {
  const auto& tools = document_.tables().tools;
  const auto rows = static_cast<int>(tools.size()) + 1;
  if (classes_->count() != rows) {
    classes_->clear();
    for (int i = 0; i < rows; ++i) classes_->addItem(QString());
  }
  for (int i = 0; i < rows - 1; ++i) {
    const ToolClass& row = tools[static_cast<std::size_t>(i)];
    const QString metric = text_from(format(row.diameter, UnitSystem::metric, Dimension::small_length));
    classes_->setItemText(i, units_ == UnitSystem::us
                                 ? tr("%1 class (%2)").arg(metric, text_of(row.diameter.m, Dimension::small_length))
                                 : tr("%1 class").arg(metric));
  }
  classes_->setItemText(rows - 1, tr("by its maker's plate"));
  int now = rows - 1;
  for (int i = 0; i < rows - 1; ++i)
    if (tools[static_cast<std::size_t>(i)].id == document_.crossing().bore.tool.tool_class) now = i;
  classes_->setCurrentIndex(now);
  classes_->setEnabled(!locked());
}

void ToolPanel::choose(int row) {
  const ToolChoice& now = document_.crossing().bore.tool;
  const auto& tools = document_.tables().tools;
  ToolChoice chosen = now;
  if (row >= 0 && static_cast<std::size_t>(row) < tools.size()) {
    const ToolClass& wanted = tools[static_cast<std::size_t>(row)];
    if (wanted.id == now.tool_class) return;
    // A plate belongs to one tool: what was typed from it does not hold for another. Undo brings it back.
    chosen = ToolChoice{};
    chosen.extra = now.extra;
    chosen.tool_class = wanted.id;
  } else if (!now.tool_class.empty()) {
    chosen.tool_class.clear();
    if (!chosen.diameter) chosen.diameter = resolve_tool(now, document_.tables()).diameter;
  } else {
    return;
  }
  change(tr("Choose tool: %1").arg(classes_->itemText(row)), [&](Crossing& c) { c.bore.tool = chosen; });
}

void ToolPanel::take_typed_values_out() {
  change(tr("Back to the class values of the tool"), [this](Crossing& c) {
    for (const Field& field : plate_fields(c, document_.tables()))
      if (field.may_be_empty) field.apply(c, std::nullopt);
  });
}

void ToolPanel::show_source() {
  const ToolClass* row = find_tool(document_.tables(), document_.crossing().bore.tool.tool_class);
  const QString plain = tr("Generic trend, not a product: take the maker's plate.");
  source_->setText(row ? tr("%1\nSource: %2 [%3]")
                             .arg(plain, text_from(row->source.text), text_from(burrow::label_text(row->source.label)))
                       : tr("Typed from the plate. What is left empty follows from the diameter. %1\nSource: generic "
                            "trend with the diameter [%2]")
                             .arg(plain, text_from(burrow::translated(burrow::word_of(SourceLabel::our_model)))));
}

void ToolPanel::show_blow() {
  const Assessment& assessment = document_.assessment();
  const Tool tool = resolve_tool(document_.crossing().bore.tool, document_.tables());
  const Advance& advance = assessment.advance;
  Facts facts{{tr("weight"), tr("%1, %2").arg(text_of(tool.mass.kg, Dimension::mass),
                                              text_of(tool.mass.kg * gravity_m_s2, Dimension::force))}};
  if (advance.points.empty()) {
    facts.emplace_back(tr("blow and grip"), tr("not known: there is no path"));
  } else {
    const auto limit = [&](const char* id) { return limit_of(document_.crossing(), document_.tables(), id).value; };
    const auto times = [](double v) { return decimals(v, 2); };
    const double stop = limit("grip_stop"), caution = limit("grip_caution"), grip = advance.least_grip;
    facts.emplace_back(tr("blow energy"), text_from(working_number(advance.blow.energy_J, "J", units_)));
    facts.emplace_back(tr("push of the air, backwards"), text_of(advance.blow.reaction_N, Dimension::force));
    facts.emplace_back(tr("least grip of the ground, in times that push"),
                       (grip < stop      ? tr("%1: stop, at least %2 required").arg(times(grip), times(stop))
                        : grip < caution ? tr("%1: caution, %2 required").arg(times(grip), times(caution))
                                         : tr("%1: enough, %2 required").arg(times(grip), times(caution))) +
                           QLatin1Char('\n') +
                           tr("at station %1").arg(text_of(advance.least_grip_station_m, Dimension::station)));
    facts.emplace_back(
        tr("hold the tool"),
        advance.held_until_m
            ? tr("until %1 of it is in the ground").arg(text_of(*advance.held_until_m, Dimension::length))
            : tr("all the way: the ground never grips it against its air"));
  }
  blow_->setText(facts_html(facts) +
                 QStringLiteral("<p>%1</p>").arg(tr("Blow and grip: our model, the spread of grounds is not in it.")));
}

void ToolPanel::refresh() {
  fill_classes();
  const ToolChoice& choice = document_.crossing().bore.tool;
  plate_->set_standing_word(choice.tool_class.empty() ? tr("by diameter") : tr("class"));
  plate_->catch_up();
  ToolChoice bare;
  bare.tool_class = choice.tool_class;
  bare.extra = choice.extra;
  if (choice.tool_class.empty()) bare.diameter = choice.diameter;
  back_->setEnabled(!locked() && !(choice == bare));
  back_->setText(choice.tool_class.empty() ? tr("Keep the diameter alone") : tr("Back to the class values"));
  show_source();
  show_blow();
}

QString ToolPanel::visible_text() const {
  return plain(source_) + plain(blow_);
}

}  // namespace burrow
