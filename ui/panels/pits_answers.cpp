/// What follows for the pit that is shown, in words.

#include <QLabel>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/pits_panel.h"
#include "choice_words.h"

namespace burrow {

namespace {

QString type_word(ExcavationType type) {
  return type == ExcavationType::stable_rock ? QObject::tr("stable rock") : text_from(translated_word(type));
}

QString side_word(SideKind kind) {
  switch (kind) {
    case SideKind::upright:
      return QObject::tr("upright, bare");
    case SideKind::sloped:
      return QObject::tr("sloped");
    case SideKind::benched:
      return QObject::tr("benched");
    case SideKind::shored:
      return QObject::tr("shored");
    case SideKind::shielded:
      return QObject::tr("shielded");
  }
  return {};
}

const char* duty_text(std::string_view code) {
  static constexpr std::pair<std::string_view, const char*> texts[] = {
      {"ladder",
       QT_TRANSLATE_NOOP("burrow::PitsPanel", "A ladder, stair or ramp, not further off than the rules allow.")},
      {"air-test",
       QT_TRANSLATE_NOOP("burrow::PitsPanel", "Test the air before anybody goes in, and while they are in.")},
      {"guard", QT_TRANSLATE_NOOP("burrow::PitsPanel", "A guard rail where people cross or walk beside it.")},
      {"inspection",
       QT_TRANSLATE_NOOP(
           "burrow::PitsPanel",
           "The competent person looks at it each day before work, after rain and after anything that adds "
           "to the danger.")}};
  for (const auto& [known, text] : texts)
    if (known == code) return text;
  return nullptr;
}

}  // namespace

QString PitsPanel::type_words(ExcavationType best, ExcavationType worst) const {
  return best == worst ? type_word(best) : tr("%1 to %2").arg(type_word(best), type_word(worst));
}

QString PitsPanel::earth_words() const {
  const PitShape& pit = shape();
  const PitAnswer& answer = work();
  Facts facts;
  const auto length = [&](double value) { return text_of(value, Dimension::length); };
  facts.emplace_back(tr("deep"), length(pit.depth_m));
  facts.emplace_back(pit.outlined ? tr("round the floor, long × wide") : tr("floor, long × wide"),
                     tr("%1 × %2").arg(length(pit.floor_length_m), length(pit.floor_width_m)));
  if (document_.assessment().ground_surface.surveyed())
    facts.emplace_back(tr("cut out of"),
                       pit.ground.surveyed() ? tr("the surveyed ground") : tr("the ground line, level across"));
  facts.emplace_back(tr("at the surface"), tr("%1 × %2").arg(length(pit.top_length_m), length(pit.top_width_m)));
  facts.emplace_back(tr("earth, as it lies"), text_of(pit.volume_m3, Dimension::volume));
  if (const PitProposal& proposal = answer.proposal; proposal.made) {
    facts.emplace_back(tr("proposed, as least earth"), side_word(proposal.kind) + QStringLiteral(", ") +
                                                           text_of(proposal.straight_m3, Dimension::volume));
    facts.emplace_back(tr("sloped by the rules"), proposal.sloped_m3 ? text_of(*proposal.sloped_m3, Dimension::volume)
                                                                     : tr("not allowed at this depth"));
    facts.emplace_back(tr("upright, bare"),
                       proposal.upright_allowed ? tr("allowed") : tr("not allowed, or nobody has looked"));
  }
  const auto add = [&](const QString& name, const std::optional<double>& value) {
    if (value) facts.emplace_back(name, text_of(*value, Dimension::volume));
  };
  add(tr("the same, dug out"), answer.loose_m3);
  add(tr("loose soil to fill it again"), answer.refill_m3);
  if (answer.truck_loads) facts.emplace_back(tr("truck loads, all of it"), decimals(*answer.truck_loads, 1));
  for (const SurfaceCut& cut : answer.cuts) {
    const QString name = cut.id.empty() ? tr("verge") : cut.name.empty() ? text_from(cut.id) : text_from(cut.name);
    const bool us = units_ == UnitSystem::us;
    const double area = us ? cut.area_m2 / (0.3048 * 0.3048) : cut.area_m2;
    facts.emplace_back(tr("opened: %1").arg(name),
                       us ? tr("%1 ft²").arg(area, 0, 'f', 0) : tr("%1 m²").arg(decimals(area, 1)));
  }
  if (answer.heap.volume_m3 > 0)
    facts.emplace_back(
        tr("spoil, long × wide × high"),
        tr("%1 × %2 × %3")
            .arg(length(answer.heap.length_m), length(answer.heap.width_m), length(answer.heap.height_m)));
  if (answer.water_head_m)
    facts.emplace_back(*answer.water_head_m > 0 ? tr("water above the floor") : tr("water below the floor"),
                       length(std::abs(*answer.water_head_m)));
  const auto safety = [&](const QString& name, const std::optional<double>& value) {
    if (value) facts.emplace_back(name, decimals(*value, 1));
  };
  safety(tr("safety against the floor rising"), answer.base_heave_safety);
  safety(tr("safety against water lifting the floor"), answer.uplift_safety);
  return facts_html(facts);
}

QString PitsPanel::soil_words() const {
  const PitAnswer& answer = work();
  QString html;
  for (const PitLayerAnswer& layer : answer.layers) {
    html += QStringLiteral("<p><b>%1</b> ")
                .arg(tr("%1: proposed %2, taken as %3.")
                         .arg(text_from(layer.soil), type_words(layer.proposed.best, layer.proposed.worst),
                              type_word(layer.type))
                         .toHtmlEscaped());
    QStringList steps;
    for (const TypeStep& step : layer.proposed.steps)
      steps << tr("%1: %2 (%3)")
                   .arg(text_from(burrow::translated(step.why)), type_words(step.best, step.worst),
                        text_from(step.clause))
                   .toHtmlEscaped();
    html += steps.join(QStringLiteral("; ")) + QStringLiteral(".</p>");
  }
  html +=
      QStringLiteral("<p>%1</p>")
          .arg((answer.confirmed ? tr("Confirmed by the name below.")
                                 : tr("A proposal: the competent person decides on site, after one look and one test "
                                      "by hand at least."))
                   .toHtmlEscaped());
  return html;
}

QString PitsPanel::duty_words() const {
  QString html;
  for (const PitDuty& duty : work().duties) {
    const char* text = duty.applies ? duty_text(duty.code) : nullptr;
    if (!text) continue;
    html += QStringLiteral("<p>• %1 <span style=\"font-size:small\">%2</span></p>")
                .arg(tr(text).toHtmlEscaped(),
                     tr("%1 [%2]")
                         .arg(text_from(duty.source.text), text_from(burrow::label_text(duty.source.label)))
                         .toHtmlEscaped());
  }
  if (const auto& travel = work().ladder_travel_m; travel && !html.isEmpty())
    html += QStringLiteral("<p>%1</p>")
                .arg(tr("To the ladder from the farthest place: %1.")
                         .arg(text_of(*travel, Dimension::length))
                         .toHtmlEscaped());
  return html.isEmpty() ? tr("Nothing beyond the usual care follows from its size.") : html;
}

QString PitsPanel::support_words() const {
  QString html;
  for (const std::string& id : work().shoring) {
    const auto row = std::find_if(document_.tables().shoring.begin(), document_.tables().shoring.end(),
                                  [&](const ShoringRow& r) { return r.id == id; });
    if (row == document_.tables().shoring.end()) continue;
    QStringList parts;
    parts << tr("braces %1, %2 apart, %3 one above the other")
                 .arg(text_from(row->brace), text_of(row->brace_spacing.m, Dimension::length),
                      text_of(row->brace_rise.m, Dimension::length));
    if (!row->wale.empty() && row->wale_rise)
      parts << tr("wales %1 every %2").arg(text_from(row->wale), text_of(row->wale_rise->m, Dimension::length));
    if (row->upright_spacing)
      parts << (row->upright_spacing->m > 0
                    ? tr("uprights %1, %2 apart")
                          .arg(text_from(row->upright), text_of(row->upright_spacing->m, Dimension::length))
                    : tr("uprights %1, close together").arg(text_from(row->upright)));
    html += QStringLiteral("<p>• %1 <span style=\"font-size:small\">%2</span></p>")
                .arg(parts.join(QStringLiteral("; ")).toHtmlEscaped(),
                     tr("%1 [%2]")
                         .arg(text_from(row->source.text), text_from(burrow::label_text(row->source.label)))
                         .toHtmlEscaped());
  }
  if (html.isEmpty())
    return tr(
        "No row of the published tables fits this pit. Take a shield or a support by its maker's tables, or have it "
        "designed.");
  return html +
         QStringLiteral("<p>%1</p>").arg(tr("Read the notes of the table before you build by it.").toHtmlEscaped());
}

}  // namespace burrow
