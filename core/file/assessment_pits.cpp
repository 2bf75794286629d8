#include "assessment_pits.h"

#include "json_answers.h"

namespace burrow {

namespace {

Json step_json(const TypeStep& step) {
  return object({{"why", Json(step.why)},
                 {"best", Json(word_of(step.best))},
                 {"worst", Json(word_of(step.worst))},
                 {"source", Json(step.clause)},
                 {"source_label", Json(word_of(step.label))}});
}

Json layer_json(const PitLayerAnswer& layer) {
  return object({{"stratum", Json(layer.stratum)},
                 {"soil", Json(layer.soil.english())},
                 {"top_m", Json(layer.top_m)},
                 {"bottom_m", Json(layer.bottom_m)},
                 {"soil_type", Json(word_of(layer.type))},
                 {"proposed_best", Json(word_of(layer.proposed.best))},
                 {"proposed_worst", Json(word_of(layer.proposed.worst))},
                 {"reasons", list_of(layer.proposed.steps, step_json)},
                 {"run_per_rise", Json(layer.run_per_rise)},
                 {"bank_m3", Json(layer.bank_m3)},
                 {"loose_m3", Json(layer.loose_m3)}});
}

Json heap_json(const SpoilHeap& heap) {
  const bool known = !heap.outline.empty();
  const auto of_heap = [known](double value) { return known ? Json(value) : Json(); };
  return object({{"side", known ? Json(word_of(heap.side)) : Json()},
                 {"setback_m", of_heap(heap.setback_m)},
                 {"length_m", of_heap(heap.length_m)},
                 {"width_m", of_heap(heap.width_m)},
                 {"height_m", of_heap(heap.height_m)},
                 {"volume_m3", of_heap(heap.volume_m3)}});
}

Json duty_json(const PitDuty& duty) {
  return object({{"code", Json(duty.code)},
                 {"applies", Json(duty.applies)},
                 {"measured_m", number(duty.measured_m)},
                 {"limit_m", number(duty.limit_m)},
                 {"source", Json(duty.source.text.english())},
                 {"source_label", Json(word_of(duty.source.label))}});
}

Json proposal_json(const PitProposal& proposal) {
  const bool made = proposal.made;
  return object({{"made", Json(made)},
                 {"kind", made ? Json(word_of(proposal.kind)) : Json()},
                 {"upright_allowed", made ? Json(proposal.upright_allowed) : Json()},
                 {"straight_m3", made ? Json(proposal.straight_m3) : Json()},
                 {"sloped_m3", number(proposal.sloped_m3)}});
}

Json surface_json(const SurfaceCut& cut) {
  return object({{"id", cut.id.empty() ? Json() : Json(cut.id)},
                 {"name", Json(cut.name.english())},
                 {"area_m2", Json(cut.area_m2)}});
}

}  // namespace

Json pit_json(const PitShape& pit, const PitAnswer& work) {
  const bool known = pit.floor_length_m > 0;
  const auto of_pit = [known](double value) { return known ? Json(value) : Json(); };
  const bool proposed = !work.layers.empty();
  return object({{"depth_m", of_pit(pit.depth_m)},
                 {"floor_length_m", of_pit(pit.floor_length_m)},
                 {"floor_width_m", of_pit(pit.floor_width_m)},
                 {"floor_corners", known ? Json(static_cast<double>(pit.floor.size())) : Json()},
                 {"top_length_m", of_pit(pit.top_length_m)},
                 {"top_width_m", of_pit(pit.top_width_m)},
                 {"volume_m3", of_pit(pit.volume_m3)},
                 {"ground", known ? Json(pit.ground.surveyed() ? "points" : "line") : Json()},
                 {"soil_type", known ? Json(word_of(pit.soil_type)) : Json()},
                 {"proposed_best", proposed ? Json(word_of(work.proposed_best)) : Json()},
                 {"proposed_worst", proposed ? Json(word_of(work.proposed_worst)) : Json()},
                 {"confirmed", Json(work.confirmed)},
                 {"proposal", proposal_json(work.proposal)},
                 {"layers", list_of(work.layers, layer_json)},
                 {"roof_missing_m", number(work.roof_missing_m)},
                 {"loose_m3", number(work.loose_m3)},
                 {"compacted_m3", number(work.compacted_m3)},
                 {"refill_m3", number(work.refill_m3)},
                 {"truck_loads", number(work.truck_loads)},
                 {"surface", list_of(work.cuts, surface_json)},
                 {"heap", heap_json(work.heap)},
                 {"duties", list_of(work.duties, duty_json)},
                 {"ladder_travel_m", number(work.ladder_travel_m)},
                 {"shoring", list_of(work.shoring, [](const std::string& id) { return Json(id); })},
                 {"shoring_width_m", number(work.shoring_width_m)},
                 {"edge_load_gap_m", number(work.edge_load_gap_m)},
                 {"water_head_m", number(work.water_head_m)},
                 {"base_heave_safety", number(work.base_heave_safety)},
                 {"uplift_safety", number(work.uplift_safety)}});
}

}  // namespace burrow
