#include "burrow/panels/setup_panel.h"

#include <QLabel>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/panels/entry_form.h"
#include "burrow/words/trials_text.h"

namespace burrow {

namespace {
const ItemRef launch_part{ItemKind::launch, {}, -1};
constexpr double sixteenth_in_mm = 25.4 / 16;
constexpr double shown_m = 0.00005;  ///< less than a tenth of a millimetre shows as nothing

}  // namespace

SetupPanel::SetupPanel(Document& document, QWidget* parent) : FormPanel(document, heavy_page_ms, parent) {
  add_heading(tr("Set the tool like this"));
  line_text_ = add_text(tr("Grade and line"));
  line_ = add_entries(tr("default"));
  line_->show_part(launch_part, [this] {
    const std::vector<Field> all = setting_fields(document_.crossing());
    return std::vector<Field>(all.begin(), all.begin() + 3);
  });
  add_gap();
  add_heading(tr("On the cradle"));
  cradle_text_ = add_text(tr("Cradle and start"));
  add_gap();
  add_heading(tr("What an error becomes at the exit"));
  errors_text_ = add_text(tr("Errors at the exit"));
  add_gap();
  add_heading(tr("How well you set it"));
  auto* why = add_text(tr("What the errors are for"), true);
  why->setText(
      tr("Two of three settings are no further off than one standard deviation (sd). The bands on the drawing "
         "follow from these."));
  errors_ = add_entries(tr("default"));
  errors_->show_part(launch_part, [this] {
    const std::vector<Field> all = setting_fields(document_.crossing());
    return std::vector<Field>(all.begin() + 3, all.end());
  });
  add_gap();
  status_ = add_text(tr("Status of the path model"), true);
  add_end();
  refresh_now();
}

QString SetupPanel::line_text() const {
  const GradeReadings& grade = setup_.grade;
  const QString apart = text_of(std::abs(grade.rise.m), Dimension::small_length);
  const bool level = std::abs(grade.rise.m) < shown_m;
  Facts facts{{tr("grade"), level ? tr("level", "a line")
                                  : tr("%1 (%2), %3")
                                        .arg(text_of(grade.grade.v, Dimension::grade),
                                             text_of(grade.inclination.rad, Dimension::angle),
                                             grade.rise.m > 0 ? tr("nose up") : tr("nose down"))},
              {tr("on the level, over %1 of tool").arg(text_of(setup_.tool.length.m, Dimension::length)),
               level              ? tr("nose as high as the tail")
               : grade.rise.m > 0 ? tr("nose %1 higher than the tail").arg(apart)
                                  : tr("nose %1 lower than the tail").arg(apart)}};
  for (const LevelRise& one : setup_.level_rises) {
    // Levels are sold in whole feet or in tenths of a metre.
    const double feet = one.level.m / 0.3048, tenths = one.level.m * 10;
    const double counted = units_ == UnitSystem::us ? feet : tenths;
    if (level || std::abs(counted - std::round(counted)) > 1e-6) continue;
    facts.emplace_back(tr("over a level %1 long").arg(text_of(one.level.m, Dimension::length)),
                       text_of(std::abs(one.rise.m), Dimension::small_length));
  }
  const Launch& launch = document_.crossing().bore.launch;
  if (setup_.stake && launch.sight_base) {
    const QString off = text_of(std::abs(setup_.stake->m), Dimension::small_length);
    const QString where = std::abs(setup_.stake->m) < shown_m ? tr("on the line through the launch point")
                          : setup_.stake->m > 0 ? tr("%1 left of the line through the launch point").arg(off)
                                                : tr("%1 right of the line through the launch point").arg(off);
    facts.emplace_back(tr("sight at the stake, %1 ahead").arg(text_of(launch.sight_base->m, Dimension::length)), where);
  } else {
    facts.emplace_back(tr("sight at the stake"), tr("no stake entered: type the distance to it"));
  }
  return facts_html(facts);
}

QString SetupPanel::cradle_text() const {
  const auto row = [&](const QString& name, const CradlePoint& point) {
    return std::pair{
        name, tr("%1 above the floor\nstation %2\nlevel %3")
                  .arg(text_of(point.above_floor.m, Dimension::length), text_of(point.station.m, Dimension::station),
                       text_of(point.elevation.m, Dimension::station))};
  };
  const LaunchLevels& levels = setup_.levels;
  const QString packing = text_of(std::abs(levels.packing.m), Dimension::small_length);
  Facts facts{
      {tr("axis below the ground at the face"), text_of(levels.axis_depth.m, Dimension::length)},
      {tr("pack under the tool there"), std::abs(levels.packing.m) < shown_m ? tr("nothing: it lies on the bed")
                                        : levels.packing.m > 0               ? packing
                                                               : tr("bed or floor is %1 too high").arg(packing)},
      row(tr("nose, at the face"), setup_.cradle.nose),
      row(tr("front third, held here"), setup_.cradle.front_third),
      row(tr("tail"), setup_.cradle.tail)};
  facts.emplace_back(tr("hold the tool"),
                     setup_.hold_until_m
                         ? tr("until %1 of it is in the ground").arg(text_of(*setup_.hold_until_m, Dimension::length))
                         : tr("all the way: the ground never grips it against its air"));
  return facts_html(facts) + QStringLiteral("<p>%1</p>")
                                 .arg(tr("Levels are those of the underside of the tool, where the cradle bears it."));
}

QString SetupPanel::errors_text() const {
  const ErrorsAtExit& errors = setup_.errors;
  const bool us = units_ == UnitSystem::us;
  const double fine = us ? sixteenth_in_mm : 1;
  const QString step = us ? tr("1/16 in") : tr("1 mm");
  Facts facts;
  const auto row = [&](const QString& what, const ExitShift& at, double times) {
    QStringList shifts;
    const auto add = [&](double v, const QString& plus, const QString& minus) {
      if (std::abs(v) >= shown_m)
        shifts << tr("%1 %2").arg(text_of(std::abs(v), Dimension::small_length), v > 0 ? plus : minus);
    };
    add(at.up_m * times, tr("up"), tr("down"));
    add(at.left_m * times, tr("left"), tr("right"));
    facts.emplace_back(what, shifts.isEmpty() ? tr("nothing that shows") : shifts.join(QLatin1Char('\n')));
  };
  row(tr("nose %1 too high on the level").arg(step), errors.level_1mm, fine);
  row(tr("1 % too steep"), errors.level_1_percent, 1);
  row(tr("1° too steep"), errors.level_1_degree, 1);
  if (errors.stake_1mm) row(tr("%1 too far left at the stake").arg(step), *errors.stake_1mm, fine);
  row(tr("1° too far left"), errors.heading_1_degree, 1);
  const QString run = text_of(errors.straight_run_m, Dimension::length);
  return facts_html(facts) +
         QStringLiteral("<p>%1</p>")
             .arg(errors.reaches
                      ? tr("Over %1 to the exit, with what the ground does to a tool that runs higher.").arg(run)
                      : tr("The predicted path does not reach the exit: these are straight lines over %1.").arg(run));
}

void SetupPanel::refresh() {
  setup_ = crew_setup(document_.crossing(), document_.tables(),
                      SiteSurface(document_.crossing().site, document_.assessment().ground_surface));
  line_text_->setText(line_text());
  line_->catch_up();
  cradle_text_->setText(cradle_text());
  errors_text_->setText(errors_text());
  errors_->catch_up();
  status_->setText(tr("Path and grip: %1.").arg(text_from(model_status(document_.crossing().bore.model))));
}

QString SetupPanel::visible_text() const {
  return plain(line_text_) + plain(cradle_text_) + plain(errors_text_) + plain(status_);
}

}  // namespace burrow
