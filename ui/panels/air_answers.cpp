/// What follows for the air line, in words and bars.

#include <QLabel>
#include <algorithm>

#include "burrow/air/changes.h"
#include "burrow/check/limits.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/language/say.h"
#include "burrow/panels/air_panel.h"
#include "burrow/panels/air_view.h"
#include "burrow/panels/card_list.h"
#include "choice_words.h"

namespace burrow {

namespace {

double caution_pressure(const Document& document) {
  const Tool tool = resolve_tool(document.crossing().bore.tool, document.tables());
  return limit_of(document.crossing(), document.tables(), "air_pressure_share_caution").value * tool.pressure.Pa;
}

/// With a digit more than elsewhere: what one part takes is small beside the whole.
QString fine_pressure(double gauge_Pa, UnitSystem units) {
  constexpr double psi_Pa = 6894.757293168361;
  const QString text = units == UnitSystem::us ? QObject::tr("%1 psi").arg(decimals(gauge_Pa / psi_Pa, 1))
                                               : QObject::tr("%1 bar").arg(decimals(gauge_Pa / 1e5, 2));
  return QString(text).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
}

}  // namespace

QString AirPanel::part_words(const AirPart& part) const {
  const auto length = [&](const std::optional<Length>& v, Dimension dimension) {
    return v ? text_of(v->m, dimension) : tr("–");
  };
  switch (part.kind) {
    case AirPartKind::hose:
      return tr("hose, %1 of %2 bore")
          .arg(length(part.length, Dimension::length), length(part.bore, Dimension::small_length));
    case AirPartKind::coupling:
      return tr("%n couplings", nullptr, static_cast<int>(*part.count));
    case AirPartKind::lubricator:
      break;
  }
  return tr("%n lubricators", nullptr, static_cast<int>(*part.count));
}

Card AirPanel::card(std::size_t part) const {
  const AirPart& entered = document_.crossing().air.line[part];
  Card row;
  row.id = std::to_string(part);
  row.title = part_words(entered);
  row.badge = QString::number(part + 1);
  row.badge_colour = theme_.water;
  const auto& supply = document_.assessment().air.supply;
  if (supply && part < supply->along.size()) {
    const PartFlow& flow = supply->along[part];
    row.facts = tr("takes %1, air leaves it at %2")
                    .arg(fine_pressure(flow.inlet_Pa - flow.outlet_Pa, units_),
                         units_ == UnitSystem::us ? tr("%1 ft/s").arg(flow.speed_m_s / 0.3048, 0, 'f', 0)
                                                  : tr("%1 m/s").arg(flow.speed_m_s, 0, 'f', 0));
    if (flow.choked) row.tag = tr("choked");
  } else if (entered.kind == AirPartKind::hose && (!entered.length || !entered.bore)) {
    row.facts = tr("length or bore not entered");
  } else {
    row.facts = tr("not worked out");
  }
  return row;
}

std::vector<AirBar> AirPanel::bars() const {
  const auto& supply = document_.assessment().air.supply;
  if (!supply) return {};
  const double most =
      std::max({supply->compressor_most.Pa, supply->at_compressor.Pa, caution_pressure(document_), 1.0});
  const double least = caution_pressure(document_);
  std::vector<AirBar> all;
  const auto add = [&](const QString& name, double gauge_Pa, bool alarm) {
    all.push_back({name, fine_pressure(gauge_Pa, units_), std::max(gauge_Pa, 0.0) / most, alarm});
  };
  add(tr("compressor"), supply->at_compressor.Pa, false);
  for (const PartFlow& part : supply->along) {
    if (part.entered >= document_.crossing().air.line.size()) continue;
    const AirPart& entered = document_.crossing().air.line[part.entered];
    // Short, so that it stands beside its number in a narrow column.
    const QString name = entered.kind == AirPartKind::hose && entered.bore
                             ? tr("hose, %1").arg(text_of(entered.bore->m, Dimension::small_length))
                             : part_words(entered);
    add(tr("behind %1").arg(name), part.outlet_Pa - supply->ambient.Pa, part.choked);
  }
  add(tr("at the tool"), supply->at_tool.Pa, supply->at_tool.Pa < least);
  return all;
}

void AirPanel::show_bars() {
  const std::vector<AirBar> all = bars();
  std::optional<double> wanted;
  const double least = caution_pressure(document_);
  if (const auto& supply = document_.assessment().air.supply)
    wanted = least / std::max({supply->compressor_most.Pa, supply->at_compressor.Pa, least, 1.0});
  view_->show_bars(all, wanted, tr("%1 required at the tool").arg(text_of(least, Dimension::air_pressure)), theme_);
}

QString AirPanel::not_judged_words() const {
  const AirAnswer& air = document_.assessment().air;
  if (air.not_entered == "no-compressor") return tr("Not worked out: enter free air and pressure of the compressor.");
  if (air.not_entered == "no-hose") return tr("Not worked out: enter a hose with its length and bore.");
  return tr("Not worked out: %1 lies outside the method.").arg(text_from(air.not_judged));
}

QString AirPanel::pressure_words() const {
  const AirAnswer& air = document_.assessment().air;
  const auto pressure = [&](double v) { return fine_pressure(v, units_); };
  Facts facts;
  QString why;
  if (air.supply) {
    const AirSupply& supply = *air.supply;
    facts.emplace_back(tr("at the tool"), pressure(supply.at_tool.Pa));
    if (air.standing_Pa) facts.emplace_back(tr("standing at the tool when it stalls"), pressure(*air.standing_Pa));
    facts.emplace_back(tr("lost on the way"), tr("%1 (%2 by the older formula for iron pipe)")
                                                  .arg(pressure(supply.at_compressor.Pa - supply.at_tool.Pa),
                                                       air.loss_harris_Pa ? pressure(*air.loss_harris_Pa) : tr("–")));
    facts.emplace_back(tr("free air that flows"), text_of(supply.free_air.m3_s, Dimension::flow));
    facts.emplace_back(tr("free air the tool would take at its own pressure"),
                       text_of(supply.wanted.m3_s, Dimension::flow));
    if (supply.compressor_most.Pa < document_.crossing().air.compressor.pressure->Pa - 1)
      facts.emplace_back(tr("the compressor holds up here"), pressure(supply.compressor_most.Pa));
    why = supply.held_by == AirHeldBy::line ? tr("The compressor stands at its full pressure; the line takes the rest.")
          : supply.held_by == AirHeldBy::compressor
              ? tr("The compressor is too small: its pressure falls until the tool takes no more than it gives.")
              : tr("The line is choked: no more air passes, however high the pressure.");
  } else {
    why = not_judged_words();
  }
  if (air.pressure_worked_with_Pa)
    facts.emplace_back(
        tr("advance and blows are computed with"),
        tr("%1, %2").arg(pressure(*air.pressure_worked_with_Pa), air.pressure_typed ? tr("as typed for the tool")
                                                                 : air.supply       ? tr("as it stands at the tool")
                                                                              : tr("of the tool's class or plate")));
  return facts_html(facts) + QStringLiteral("<p>%1</p>").arg(why.toHtmlEscaped());
}

QString AirPanel::change_words() const {
  const Crossing& crossing = document_.crossing();
  const double most = limit_of(crossing, document_.tables(), "air_pressure_most_pa").value;
  const auto changes = air_changes(crossing.air, rated_tool(crossing.bore.tool, document_.tables()), Pressure{most});
  if (!changes) return tr("Nothing to compare as long as the line is not worked out.");
  if (changes->empty()) return tr("Nothing on the list would raise the pressure so that it shows.");
  Facts facts;
  for (const AirChange& change : *changes) {
    const auto from_to = [&](const QString& words, Dimension dimension) {
      return words.arg(text_of(change.from, dimension), text_of(change.to, dimension));
    };
    QString what;
    switch (change.kind) {
      case AirChangeKind::wider_hose:
        what = from_to(tr("wider hose: %2 instead of %1"), Dimension::small_length);
        break;
      case AirChangeKind::shorter_hose:
        what = from_to(tr("shorter: %2 of the longest hose instead of %1"), Dimension::length);
        break;
      case AirChangeKind::fewer_couplings:
        what = from_to(tr("fewer couplings: %2 instead of %1"), Dimension::count);
        break;
      case AirChangeKind::larger_compressor:
        what = from_to(tr("larger compressor: %2 of free air instead of %1"), Dimension::flow);
        break;
      case AirChangeKind::more_pressure:
        what = from_to(tr("compressor turned up: %2 instead of %1"), Dimension::air_pressure);
        break;
    }
    const QString warn = change.at_tool.Pa > most + 1
                             ? QLatin1Char('\n') + tr("more than %1 at the tool: not without its maker's word")
                                                       .arg(text_of(most, Dimension::air_pressure))
                             : QString();
    facts.emplace_back(what,
                       tr("%1 at the tool, %2 more")
                               .arg(fine_pressure(change.at_tool.Pa, units_), fine_pressure(change.gain.Pa, units_)) +
                           warn);
  }
  const auto& at_tool = document_.assessment().air.pressure_at_tool_Pa;
  const QString first = at_tool && *at_tool >= caution_pressure(document_)
                            ? tr("Enough stands at the tool. What each change would give, by itself:")
                            : tr("Each by itself:");
  return QStringLiteral("<p>%1</p>").arg(first.toHtmlEscaped()) + facts_html(facts);
}

QString AirPanel::oil_words() const {
  const AirAnswer& air = document_.assessment().air;
  const auto volume = [&](double v) { return text_of(v, Dimension::small_volume); };
  Facts facts;
  if (air.oil.for_half && air.oil.for_nine_in_ten)
    facts.emplace_back(tr("oil used on this bore"),
                       tr("%1 (half of all bores), up to %2 (nine in ten)")
                           .arg(volume(air.oil.for_half->m3), volume(air.oil.for_nine_in_ten->m3)));
  if (air.oil.fill_lasts)
    facts.emplace_back(tr("the first fill lasts"), text_of(air.oil.fill_lasts->s, Dimension::duration));
  if (air.oil.look_every)
    facts.emplace_back(tr("look at it every"), text_of(air.oil.look_every->s, Dimension::duration));
  if (air.water) {
    facts.emplace_back(
        tr("water that comes out in the line"),
        (air.water->humidity_known ? tr("%1, air %2 humid") : tr("%1, air %2 humid (not known: the worst)"))
            .arg(text_of(air.water->comes_out_kg_s / 1000, Dimension::small_flow),
                 text_of(air.water->humidity, Dimension::chance)));
    facts.emplace_back(tr("ice in the exhaust"), air.water->icing == Icing::none       ? tr("none: no water comes out")
                                                 : air.water->icing == Icing::possible ? tr("possible: drain the water")
                                                                                       : tr("likely: cold and wet"));
  }
  return facts.empty() ? tr("Not worked out.") : facts_html(facts);
}

}  // namespace burrow
