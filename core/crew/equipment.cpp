#include "burrow/crew/equipment.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"

namespace burrow {

namespace {

class List {
 public:
  List(const Crossing& crossing, const Tables& tables, const Assessment& answer, UnitSystem units)
      : crossing_(crossing), answer_(answer), units_(units), tool_(resolve_tool(crossing.bore.tool, tables)) {}

  std::vector<EquipmentItem> all() {
    boring();
    air();
    setting_out();
    pit(translatable("launch pit"), answer_.launch_pit, answer_.launch_pit_work);
    pit(translatable("exit pit"), answer_.exit_pit, answer_.exit_pit_work);
    watching();
    people();
    return std::move(items_);
  }

 private:
  void add(EquipmentGroup group, Phrase what, Phrase detail = {}) {
    items_.push_back({group, std::move(what), std::move(detail)});
  }
  [[nodiscard]] std::string text(double value, Dimension dimension) const { return format(value, dimension, units_); }
  [[nodiscard]] std::string text(const std::optional<double>& value, Dimension dimension) const {
    return value ? text(*value, dimension) : "–";
  }

  void boring() {
    add(EquipmentGroup::boring,
        phrase(translatable("piercing tool, {} across, {} long"), text(tool_.diameter.m, Dimension::small_length),
               text(tool_.length.m, Dimension::length)),
        phrase(translatable("{}; two people or a hoist to lower it"), text(tool_.mass.kg, Dimension::mass)));
    add(EquipmentGroup::boring,
        translatable("a way to turn the tool to reverse from the launch pit, tried before it goes in"));
    if (const auto& pipe = crossing_.pipe) {
      Phrase what = translatable("pipe");
      const auto also = [&](const Phrase& more) { what = phrase("{}, {}", what, more); };
      if (!pipe->material.empty()) also(pipe->material);
      if (pipe->outside_diameter) also(text(pipe->outside_diameter->m, Dimension::small_length));
      if (*pipe->count > 1) also(phrase_count("{} of them", "{} of them", *pipe->count));
      add(EquipmentGroup::boring, what,
          answer_.bore.length_m > 0 ? phrase(translatable("the bore is {} long; add both pits"),
                                             text(answer_.bore.length_m, Dimension::length))
                                    : Phrase());
      if (pipe->insertion.value != Insertion::pushed)
        add(EquipmentGroup::boring,
            phrase(translatable("{} to pull it, with swivel and pulling head"), phrase_of_word(pipe->pull_by.value)));
      add(EquipmentGroup::boring, translatable("end caps for the pipe"), translatable("so that no soil is drawn in"));
    }
    if (const auto& grout = answer_.surface.grout_hole_m3)
      add(EquipmentGroup::boring, translatable("fill for a hole that is given up"),
          phrase(translatable("up to {}"), text(*grout, Dimension::volume)));
  }

  void air() {
    const Air& entered = crossing_.air;
    const auto& supply = answer_.air.supply;
    Phrase compressor = entered.compressor.name.empty()
                            ? Phrase(translatable("compressor"))
                            : phrase(translatable("compressor {}"), entered.compressor.name);
    if (entered.compressor.free_air)
      compressor = phrase("{}, {}", compressor, text(entered.compressor.free_air->m3_s, Dimension::flow));
    if (entered.compressor.pressure)
      compressor =
          phrase(translatable("{} at {}"), compressor, text(entered.compressor.pressure->Pa, Dimension::air_pressure));
    add(EquipmentGroup::air, compressor,
        phrase(translatable("the tool takes {} of free air at {}"),
               text(supply ? supply->wanted.m3_s : tool_.free_air.m3_s, Dimension::flow),
               text(tool_.pressure.Pa, Dimension::air_pressure)));
    std::int64_t couplings = 0;
    for (const AirPart& part : entered.line) {
      if (part.kind == AirPartKind::hose && part.length && part.bore)
        add(EquipmentGroup::air, phrase(translatable("hose, {} of {} bore"), text(part.length->m, Dimension::length),
                                        text(part.bore->m, Dimension::small_length)));
      if (part.kind == AirPartKind::coupling) couplings += std::min<std::int64_t>(*part.count, 1000);
      if (part.kind == AirPartKind::lubricator)
        add(EquipmentGroup::air, translatable("lubricator in the line, within reach"));
    }
    add(EquipmentGroup::air, translatable("a restraint on every coupling, its pin or lock in place"),
        couplings > 0 ? phrase_count("{} coupling entered, and both ends of the line",
                                     "{} couplings entered, and both ends of the line", couplings)
                      : Phrase());
    add(EquipmentGroup::air, translatable("a valve at the launch pit that shuts the air and bleeds the line"));
    add(EquipmentGroup::air, translatable("a pressure gauge at the tool's end of the line"));
    const OilPlan& oil = answer_.air.oil;
    const std::string fill = text(oil.first_fill.m3, Dimension::small_volume);
    add(EquipmentGroup::air, translatable("oil for the tool, made for the temperature of the day"),
        oil.for_nine_in_ten ? phrase(translatable("first fill {}, then up to {}"), fill,
                                     text(oil.for_nine_in_ten->m3, Dimension::small_volume))
                            : phrase(translatable("first fill {}"), fill));
    if (answer_.air.water && answer_.air.water->icing != Icing::none)
      add(EquipmentGroup::air, translatable("a water separator in the line, with a drain"),
          phrase(translatable("about {} of water comes out"),
                 text(answer_.air.water->comes_out_kg_s / 1000, Dimension::small_flow)));
  }

  void setting_out() {
    add(EquipmentGroup::setting_out,
        translatable("a level or grade gauge that lies on the tool, checked both ways round"));
    const Launch& launch = crossing_.bore.launch;
    add(EquipmentGroup::setting_out, translatable("sighting stake, line and plumb"),
        launch.sight_base
            ? phrase(translatable("stake {} ahead of the launch face"), text(launch.sight_base->m, Dimension::length))
            : Phrase(translatable("no distance to the aiming stake is entered")));
    add(EquipmentGroup::setting_out, translatable("measuring tape, marker and watch"));
    const auto marks = std::count_if(answer_.marks.begin(), answer_.marks.end(),
                                     [](const Mark& mark) { return mark.hose_m.has_value(); });
    if (marks > 0)
      add(EquipmentGroup::setting_out,
          phrase_count("tape for {} mark on the hose", "tape for {} marks on the hose", marks));
    add(EquipmentGroup::setting_out, translatable("cradle or bearers, and wedges"),
        crossing_.pits.launch.cradle_height->m > 0
            ? phrase(translatable("{} high"), text(crossing_.pits.launch.cradle_height->m, Dimension::small_length))
            : Phrase());
    if (crossing_.pits.launch.slab_thickness->m > 0)
      add(EquipmentGroup::setting_out, translatable("slab or bedding for the launch pit"),
          phrase(translatable("{} thick"), text(crossing_.pits.launch.slab_thickness->m, Dimension::small_length)));
  }

  void pit(const Phrase& name, const PitShape& shape, const PitAnswer& work) {
    int shored = 0, shielded = 0;
    for (const SideKind held : {shape.held.bore, shape.held.back, shape.held.left, shape.held.right}) {
      shored += held == SideKind::shored;
      shielded += held == SideKind::shielded;
    }
    if (shored > 0)
      add(EquipmentGroup::pits, phrase_count("{1}: shoring for {0} side", "{1}: shoring for {0} sides", shored, name));
    if (shielded > 0)
      add(EquipmentGroup::pits,
          phrase_count("{1}: a shield for {0} side", "{1}: a shield for {0} sides", shielded, name));
    for (const PitDuty& duty : work.duties) {
      if (!duty.applies) continue;
      if (duty.code == "ladder") add(EquipmentGroup::pits, phrase(translatable("{}: ladder"), name));
      if (duty.code == "air-test")
        add(EquipmentGroup::pits, phrase(translatable("{}: a tester for the air in the pit"), name));
      if (duty.code == "guard") add(EquipmentGroup::pits, phrase(translatable("{}: guard rail"), name));
    }
    if (work.water_head_m && *work.water_head_m > 0)
      add(EquipmentGroup::pits, phrase(translatable("{}: pump and sump"), name),
          phrase(translatable("water {} above the floor"), text(*work.water_head_m, Dimension::length)));
    if (work.loose_m3)
      add(EquipmentGroup::pits,
          phrase(translatable("{}: room for {} of loose soil"), name, text(*work.loose_m3, Dimension::volume)));
  }

  void watching() {
    std::string expose;
    for (const UtilityAnswer& u : answer_.utilities)
      if (u.expose) expose += (expose.empty() ? "" : ", ") + (u.name.empty() ? u.id : u.name);
    if (!expose.empty())
      add(EquipmentGroup::watching, translatable("hand tools or suction to expose utilities"), expose);
    const bool heave =
        std::any_of(answer_.marks.begin(), answer_.marks.end(), [](const Mark& mark) { return !mark.under.empty(); });
    if (heave) add(EquipmentGroup::watching, translatable("levelling instrument, staff and pegs above the bore"));
    const auto has = [&](UtilityKind kind) {
      return std::any_of(crossing_.site.utilities.begin(), crossing_.site.utilities.end(),
                         [&](const Utility& u) { return u.kind == kind; });
    };
    if (has(UtilityKind::gas)) add(EquipmentGroup::watching, translatable("gas detector, tried on the day"));
    add(EquipmentGroup::watching,
        translatable("something to hear the tool with: a rod on the ground or a sonde receiver"));
    add(EquipmentGroup::watching,
        translatable("a way for launch pit, exit pit and compressor to speak with one another"));
  }

  void people() {
    add(EquipmentGroup::people, translatable("eye and ear protection, helmet, boots and gloves for everybody"));
    add(EquipmentGroup::people, translatable("barriers and signs around both pits and the compressor"));
    add(EquipmentGroup::people, translatable("phone numbers of the owners and of the emergency services, on paper"));
    add(EquipmentGroup::people, translatable("first-aid kit and fire extinguisher"));
  }

  const Crossing& crossing_;
  const Assessment& answer_;
  UnitSystem units_;
  Tool tool_;
  std::vector<EquipmentItem> items_;
};

}  // namespace

Phrase title_of(EquipmentGroup group) {
  switch (group) {
    case EquipmentGroup::boring:
      return translatable("Boring and pipe");
    case EquipmentGroup::air:
      return translatable("Compressor and air line");
    case EquipmentGroup::setting_out:
      return translatable("Setting out");
    case EquipmentGroup::pits:
      return translatable("Pits");
    case EquipmentGroup::watching:
      return translatable("Exposing and watching");
    case EquipmentGroup::people:
      break;
  }
  return translatable("People");
}

std::vector<EquipmentItem> equipment_list(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                          UnitSystem units) {
  return List(crossing, tables, assessment, units).all();
}

}  // namespace burrow
