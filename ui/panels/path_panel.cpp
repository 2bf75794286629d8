#include "burrow/panels/path_panel.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QVBoxLayout>

#include "burrow/charts/bore_charts.h"
#include "burrow/check/utilities_in_pit.h"
#include "burrow/clearance/course.h"
#include "burrow/crew/crew_setup.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/pit/rescue.h"
#include "burrow/words/trials_text.h"

namespace burrow {

namespace {
QLabel* wrapped(QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}
}  // namespace

PathPanel::PathPanel(Document& document, QWidget* parent)
    : LivePanel(document, light_page_ms, parent),
      up_(new DeviationChart(Across::up, this)),
      sideways_(new DeviationChart(Across::sideways, this)),
      advance_(new AdvanceChart(this)),
      summary_(wrapped(this)),
      pressures_(wrapped(this)),
      rescue_(new QCheckBox(tr("Draw the pit for a stuck tool"), this)),
      nose_(new QLineEdit(this)),
      rescue_said_(wrapped(this)) {
  rescue_->setToolTip(tr("Shows what would have to be dug to get the tool out with its nose at this place"));
  nose_->setAccessibleName(tr("Length of bore to the nose of the stuck tool"));
  nose_->setEnabled(false);
  auto* row = new QHBoxLayout;
  auto* nose_label = new QLabel(tr("nose this far in:"), this);
  nose_label->setBuddy(nose_);
  row->addWidget(nose_label);
  row->addWidget(nose_, 1);

  auto* page = new QWidget(this);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(10, 8, 8, 8);
  column->setSpacing(8);
  column->addWidget(summary_);
  column->addWidget(up_);
  column->addWidget(sideways_);
  column->addWidget(advance_);
  column->addWidget(pressures_);
  column->addWidget(rescue_);
  column->addLayout(row);
  column->addWidget(rescue_said_);
  column->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidget(page);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(scroll);

  connect(rescue_, &QCheckBox::toggled, this, [this](bool on) {
    nose_->setEnabled(on);
    show_rescue();
  });
  connect(nose_, &QLineEdit::editingFinished, this, &PathPanel::show_rescue);
  connect(&document, &Document::replaced, this, [this] { rescue_->setChecked(false); });
}

void PathPanel::set_theme(const Theme& theme) {
  LivePanel::set_theme(theme);
  up_->set_theme(theme);
  sideways_->set_theme(theme);
  advance_->set_theme(theme);
}

QString PathPanel::summary() const {
  return summary_->text();
}

void PathPanel::refresh() {
  const Crossing& crossing = document_.crossing();
  const Assessment& answer = document_.assessment();
  up_->show_path(crossing, answer, units_);
  sideways_->show_path(crossing, answer, units_);
  advance_->show_advance(answer, units_);

  const auto shown_text = [&](double value, Dimension dimension) {
    return text_from(format(value, dimension, units_));
  };
  QStringList lines;
  if (answer.arrival.elevation_m && answer.bore.ends == PathEnd::exit)
    lines << tr("Comes out at level %1, offset %2.")
                 .arg(shown_text(*answer.arrival.elevation_m, Dimension::station),
                      shown_text(*answer.arrival.offset_m, Dimension::station));
  else if (answer.bore.ends == PathEnd::daylight)
    lines << tr("Comes out of the ground after %1.").arg(shown_text(answer.bore.length_m, Dimension::length));
  if (answer.neutral_cover_m)
    lines
        << tr("Neutral cover at station %1, where the bore is closest to it: %2. Less and the tool climbs, more and it "
              "sags.")
               .arg(shown_text(*answer.neutral_station_m, Dimension::station),
                    shown_text(*answer.neutral_cover_m, Dimension::length));
  if (answer.advance_time_s.p50)
    lines << tr("Takes %1; between %2 and %3 in eight of ten bores.")
                 .arg(shown_text(*answer.advance_time_s.p50, Dimension::duration),
                      shown_text(*answer.advance_time_s.p10, Dimension::duration),
                      shown_text(*answer.advance_time_s.p90, Dimension::duration));
  if (answer.refusal_station_m)
    lines << tr("Would stop at station %1: a blow no longer moves it.")
                 .arg(shown_text(*answer.refusal_station_m, Dimension::station));
  if (!answer.advance.points.empty())
    lines << tr("The ground holds it with %1 times the push of its air.").arg(decimals(answer.advance.least_grip, 2));
  if (answer.chance_of_refusal)
    lines << (answer.refusal_calibrated
                  ? tr("Chance that a stone or hard ground stops it on the way: %1.")
                  : tr("Chance that a stone or hard ground stops it on the way: %1, not calibrated from records."))
                 .arg(shown_text(*answer.chance_of_refusal, Dimension::chance));
  constexpr double least_shown_chance = 1e-9;  // reads "< 0.01 %"
  if (answer.chance_of_daylight)
    lines << tr("Chance that it comes out of the ground before the exit: %1.")
                 .arg(shown_text(std::max(*answer.chance_of_daylight, least_shown_chance), Dimension::chance));
  if (!lines.empty())
    lines << tr("Status: %1.").arg(text_from(model_status(crossing.bore.model)));
  else
    lines << tr("There is no path yet: set launch and exit.");
  summary_->setText(lines.join(QLatin1Char('\n')));
  show_pressures();
  show_rescue();
}

void PathPanel::show_pressures() {
  const auto cell = [](const QString& text) {
    return QStringLiteral("<td style='padding-right:10px'>%1</td>").arg(text.toHtmlEscaped());
  };
  QString rows;
  for (const PressureEffect& effect :
       pressure_choices(document_.crossing(), document_.tables(), document_.assessment())) {
    const QString time =
        effect.stop_station_m
            ? tr("stops at %1").arg(text_from(format(*effect.stop_station_m, Dimension::station, units_)))
        : effect.time_p50_s ? text_from(format(*effect.time_p50_s, Dimension::duration, units_))
                            : QStringLiteral("–");
    rows += QStringLiteral("<tr>%1%2%3</tr>")
                .arg(cell(text_from(format(effect.gauge.Pa, Dimension::air_pressure, units_))), cell(time),
                     cell(decimals(effect.least_grip, 2)));
  }
  pressures_->setText(rows.isEmpty()
                          ? QString()
                          : QStringLiteral("<table><tr>%1%2%3</tr>%4</table>")
                                .arg(cell(tr("air at the tool")), cell(tr("time, middle")), cell(tr("grip")), rows));
}

void PathPanel::show_rescue() {
  rescue_said_->setVisible(rescue_->isChecked());
  const Assessment& answer = document_.assessment();
  if (!rescue_->isChecked() || answer.bore.points.size() < 2) {
    rescue_said_->clear();
    Q_EMIT rescue_changed(std::nullopt);
    return;
  }
  const double longest = answer.bore.length_m;
  if (nose_->text().trimmed().isEmpty()) nose_->setText(text_from(format(longest / 2, Dimension::length, units_)));
  const Result<double> typed = parse(nose_->text().toStdString(), Dimension::length, units_);
  if (!typed || !(*typed >= 0) || !(*typed <= longest)) {
    rescue_said_->setText(tr("Type a length from 0 to %1.").arg(text_from(format(longest, Dimension::length, units_))));
    Q_EMIT rescue_changed(std::nullopt);
    return;
  }
  const Crossing& crossing = document_.crossing();
  const Tool tool = resolve_tool(crossing.bore.tool, document_.tables());
  const PitShape pit = rescue_pit_shape(crossing, tool, document_.tables(), answer.bore, Length{*typed},
                                        SiteSurface(crossing.site, answer.ground_surface));
  QString text = tr("%1 deep, %2 by %3 at the surface with sloped sides, %4 of ground.")
                     .arg(text_from(format(pit.depth_m, Dimension::length, units_)),
                          text_from(format(pit.top_length_m, Dimension::length, units_)),
                          text_from(format(pit.top_width_m, Dimension::length, units_)),
                          text_from(format(pit.volume_m3, Dimension::volume, units_)));
  for (const StopStretch& stretch : answer.stops) {
    if (stretch.above == AboveBore::diggable || stretch.to_m < pit.floor_from_m || stretch.from_m > pit.floor_to_m)
      continue;
    QString name = text_from(stretch.id);
    for (const SurfaceFeature& feature : crossing.site.surface)
      if (feature.id == stretch.id && !feature.name.empty()) name = text_from(feature.name);
    text += QLatin1Char('\n') + tr("It would go through %1: not without its owner.").arg(name);
  }
  for (const Utility& utility : crossing.site.utilities) {
    Utility judged = utility;
    judged.path = judged_line(utility, crossing.site.ground, document_.tables());
    if (!enters_pit(judged, pit)) continue;
    const QString name = text_from(utility.name.empty() ? translated_word(utility.kind) : utility.name);
    text += QLatin1Char('\n') +
            (*utility.located.how == LocatedHow::exposed
                 ? tr("It would lay bare %1: support it.").arg(name)
                 : tr("It would lay bare %1, which nobody has exposed: by hand, and call its owner.").arg(name));
  }
  rescue_said_->setText(text);
  Q_EMIT rescue_changed(pit);
}

}  // namespace burrow
