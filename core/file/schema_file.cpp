#include "burrow/file/schema_file.h"

#include "burrow/base/ensure.h"
#include "burrow/check/assessment.h"
#include "burrow/day/day.h"
#include "schema_describer.h"

namespace burrow {

namespace {

constexpr std::string_view draft = "https://json-schema.org/draft/2020-12/schema";

/// The members of an assessment. number, text: null where it is not known; text!, truth: always there; a list holds
/// any number of what stands in it; "?" in front of a name: the member is there only when asked for.
constexpr std::string_view shape_of_assessment = R"~({
"crossing":"text!","verdict":"verdict","judged_on":"text",
"program":{"version":"text","commit":"text","tables":"text"},
"bore":{"length_m":"number","ends":"ends",
  "path":[{"s_m":"number","x_m":"number","y_m":"number","z_m":"number","grade":"number","heading_rad":"number",
    "sd_lateral_m":"number","sd_vertical_m":"number","cover_m":"number","resistance_above_pa":"number",
    "resistance_below_pa":"number","curvature_1_m":"number","sag_curvature_1_m":"number","set_m":"number",
    "grip":"number","time_s":"quantiles"}],
  "arrival":"arrival","neutral_cover_m":"number","neutral_station_m":"number",
  "neutral_line":[{"x_m":"number","z_m":"number","cover_m":"number"}],
  "chance_of_refusal":"number","chance_of_daylight":"number","refusal_calibrated":"truth","refusal_station_m":"number",
  "advance_time_s":"quantiles","least_grip":"number","hold_until_m":"number",
  "stops":[{"from_m":"number","to_m":"number","above":"text!","id":"text!","chance":"number"}],
  "guesses":[{"stratum":"text!","shift_low_m":"number","shift_high_m":"number","chance_of_loss":"number"}],
  "calibrated_from":"number"},
"cover":{"least_m":"number","least_low_m":"number","station_m":"number","required_m":"number","chance_below":"number"},
"utilities":[{"id":"text!","name":"text!","separation_m":"number","gap_low_m":"number","station_m":"number",
  "offset_m":"number","elevation_m":"number","angle_rad":"number","required_m":"number","contact_chance":"number",
  "contact_chance_worst":"number","encroachment_chance":"number","by":"text","ground_movement_m":"number",
  "strain":"number","vibration_m_s":"number","lateral_sd_m":"number","vertical_sd_m":"number","expose":"truth",
  "expose_rank":"number","chance_to_go_on":"number","chance_after_hole":"number","required_after_hole_m":"number",
  "hole_station_m":"number","hole_offset_m":"number","hole_depth_low_m":"number","hole_depth_high_m":"number"}],
"services":{"contact_chance_any":"number","chance_unknown_service":"number"},
"surface":{"heave_m":"number","heave_high_m":"number","station_m":"number","limit_m":"number","settlement_m":"number",
  "settlement_abandoned_m":"number","grout_annulus_m3":"number","grout_hole_m3":"number"},
"structures":[{"id":"text!","name":"text!","distance_m":"number","station_m":"number","vibration_m_s":"number",
  "vibration_percussive_m_s":"number","vibration_distance_m_s":"number","vibration_limit_m_s":"number",
  "spread_gap_m":"number","spread_gap_wanted_m":"number"}],
"pits":{"launch":"pit","exit":"pit"},
"pipe":{"checks":[{"name":"text!","value":"number","limit":"number","unit":"text!","station_m":"number",
    "code":"text!","utilisation":"number","at_least":"truth","source":"text","source_label":"text","text":"text!"}],
  "loads":[{"station_m":"number","depth_m":"number","earth_pa":"number","earth_arched_pa":"number",
    "live_pa":"number","water_pa":"number","live":"text!"}]},
"air":{"pressure_at_tool_pa":"number","free_air_m3_s":"number","standing_pressure_pa":"number",
  "pressure_worked_with_pa":"number","pressure_typed":"truth","not_judged":"text","pressure_at_compressor_pa":"number",
  "compressor_pressure_pa":"number","wanted_free_air_m3_s":"number","ambient_pa":"number","held_by":"text",
  "loss_harris_pa":"number","iteration":{"ended":"text","steps":"number","residual":"number"},
  "along":[{"kind":"text","inlet_pa":"number","outlet_pa":"number","speed_m_s":"number","choked":"truth"}],
  "water":{"humidity":"number","humidity_known":"truth?","drawn_in_kg_s":"number","comes_out_kg_s":"number",
    "exhaust_ideal_k":"number","icing":"text"},
  "oil":{"rate_m3_s":"number","rate_entered":"truth","first_fill_m3":"number","for_p50_m3":"number",
    "for_p90_m3":"number","fill_lasts_s":"number","look_every_s":"number"}},
"marks":[{"hose_m":"number","nose_m":"number","station_m":"number","depth_m":"number","depth_low_m":"number",
  "depth_high_m":"number","time_s":"quantiles",
  "near":[{"id":"text!","above_m":"number","clear_m":"number","name":"text!","gap_m":"number","ahead_m":"number",
    "expose":"truth"}],
  "offset_m":"number","elevation_m":"number","tasks":["text!"],"under":["text!"]}],
"day":{"record":"text","nose_m":"number","advice":"advice","arrival":"arrival",
  "utilities":[{"id":"text!","name":"text!","separation_m":"number","gap_low_m":"number","station_m":"number",
    "ahead_m":"number","required_m":"number","contact_chance":"number","contact_chance_worst":"number","by":"text",
    "unexposed":"truth"}],
  "near":[{"id":"text!","name":"text!","gap_m":"number","depth_unknown":"truth","within_band":"truth",
    "can_hurt":"truth","too_near":"truth"}],
  "reasons":[{"code":"text!","subject":"text!","leads_to":"text!","broken":"truth","station_m":"number",
    "offset_m":"number","elevation_m":"number","measured":"number","limit":"number","unit":"text!","source":"text!",
    "source_label":"text!"}],
  "next":[{"kind":"text!","subject":"text!","sd_lateral_m":"number","sd_vertical_m":"number","decides":"text",
    "chance_to_turn":"number"}],
  "time_left_s":"quantiles",
  "rate":[{"from_m":"number","to_m":"number","taken_s":"number","expected_s":"number",
    "odds":[{"what":"text!","chance":"number"}]}],
  "odd":[{"reading":"number","kind":"text","in_sd":"number"}],
  "left_out":[{"reading":"number","kind":"text","why":"text!"}],
  "queried":[{"reading":"number","kind":"text","why":"text!","in_sd":"number"}],
  "tasks":[{"task":"text!","done":"truth"}],"to_expose":["text!"],
  "path":[{"s_m":"number","x_m":"number","y_m":"number","z_m":"number","sd_lateral_m":"number",
    "sd_vertical_m":"number"}],
  "may_back_out":"truth","bands_in_doubt":"truth","with_care":"truth","layout_stands":"truth"},
"loosened":[{"id":"text!","subject":"text!","name":"text!","value":"number","table_value":"number","unit":"text!",
  "why":"text!"}],
"findings":[{"code":"text!","severity":"severity","subject":"text!","station_m":"number","offset_m":"number",
  "elevation_m":"number","measured":"number","limit":"number","unit":"text!","source":"text!","source_label":"text!",
  "muted":"muted","text":"text!"}],
"?trials":{"count":"number","seed":"number","arrived":"number","inside_exit_pit":"number","daylight":"number",
  "refused":"number","contact":"number","lost":"number","mean_offset_m":"number","mean_elevation_m":"number",
  "sd_lateral_m":"number","sd_vertical_m":"number",
  "standard_errors":{"mean_offset_m":"number","mean_elevation_m":"number","sd_lateral_m":"number",
    "sd_vertical_m":"number"},
  "chances":{"arrived":"chance","inside_exit_pit":"chance","daylight":"chance","refused":"chance","contact":"chance"},
  "grounds":"number",
  "utilities":[{"id":"text!","contact":"number","encroachment":"number","contact_chance":"chance",
    "encroachment_chance":"chance","depth_unknown":"truth"}]},
"?working":[{"code":"text!","subject":"text!","formula":"text!",
  "inputs":[{"symbol":"text!","value":"number","unit":"text!"}],"value":"number","unit":"text!","limit":"number",
  "source":"text!","source_label":"text!","limit_source":"text","limit_source_label":"text"}]
})~";

/// What the shape names: parts that stand in several places.
constexpr std::string_view shape_of_parts = R"~({
"quantiles":{"p10":"number","p50":"number","p90":"number"},
"arrival":{"offset_m":"number","elevation_m":"number","sd_lateral_m":"number","sd_vertical_m":"number",
  "chance_inside_exit_pit":"number"},
"chance":{"chance":"number","standard_error":"number","upper_95":"number"},
"pit":{"depth_m":"number","floor_length_m":"number","floor_width_m":"number","floor_corners":"number",
  "top_length_m":"number","top_width_m":"number","volume_m3":"number","ground":"text","soil_type":"text",
  "proposed_best":"text","proposed_worst":"text","confirmed":"truth",
  "proposal":{"made":"truth","kind":"text","upright_allowed":"truth?","straight_m3":"number","sloped_m3":"number"},
  "layers":[{"stratum":"text!","soil":"text!","top_m":"number","bottom_m":"number","soil_type":"text!",
    "proposed_best":"text!","proposed_worst":"text!",
    "reasons":[{"why":"text!","best":"text!","worst":"text!","source":"text!","source_label":"text!"}],
    "run_per_rise":"number","bank_m3":"number","loose_m3":"number"}],
  "roof_missing_m":"number","loose_m3":"number","compacted_m3":"number","refill_m3":"number","truck_loads":"number",
  "surface":[{"id":"text","name":"text!","area_m2":"number"}],
  "heap":{"side":"text","setback_m":"number","length_m":"number","width_m":"number","height_m":"number",
    "volume_m3":"number"},
  "duties":[{"code":"text!","applies":"truth","measured_m":"number","limit_m":"number","source":"text!",
    "source_label":"text!"}],
  "ladder_travel_m":"number","shoring":["text!"],"shoring_width_m":"number","edge_load_gap_m":"number",
  "water_head_m":"number","base_heave_safety":"number","uplift_safety":"number"}
})~";

Json type(std::string_view name, bool nullable) {
  Json just(name);
  return object({{"type", nullable ? Json(Json::Array{std::move(just), Json("null")}) : std::move(just)}});
}

template <class E>
Json words_of(bool nullable) {
  Json::Array words;
  for (const auto& [value, word] : EnumNames<E>::list) words.emplace_back(word);
  if (nullable) words.emplace_back();
  return object({{"enum", Json(std::move(words))}});
}

Json severities() {
  Json::Array words;
  for (const Severity one : {Severity::stop, Severity::caution, Severity::note}) words.emplace_back(word_of(one));
  return object({{"enum", Json(std::move(words))}});
}

Json schema_of(const Json& shape);

Json schema_of_word(const std::string& word) {
  if (word == "number") return type("number", true);
  if (word == "text") return type("string", true);
  if (word == "text!") return type("string", false);
  if (word == "truth") return type("boolean", false);
  if (word == "truth?") return type("boolean", true);
  if (word == "verdict") return words_of<Verdict>(false);
  if (word == "severity") return severities();
  if (word == "ends") return words_of<PathEnd>(true);
  if (word == "advice") return words_of<Advice>(true);
  if (word == "muted") {
    const Json said = schema_of(object({{"reason", Json("text!")}, {"by", Json("text!")}, {"date", Json("text!")}}));
    return object({{"anyOf", Json(Json::Array{said, type("null", false)})}});
  }
  return object({{"$ref", Json("#/$defs/" + word)}});
}

Json schema_of(const Json& shape) {
  if (const std::string* word = shape.text()) return schema_of_word(*word);
  if (const Json::Array* items = shape.array())
    return object({{"type", Json("array")}, {"items", schema_of(items->front())}});
  Json::Object properties;
  Json::Array required;
  for (const JsonMember& member : *shape.object()) {
    const bool when_asked = member.key.starts_with('?');
    const std::string key = when_asked ? member.key.substr(1) : member.key;
    if (!when_asked) required.emplace_back(key);
    properties.push_back({key, schema_of(member.value)});
  }
  return object(
      {{"type", Json("object")}, {"properties", Json(std::move(properties))}, {"required", Json(std::move(required))}});
}

Json shape(std::string_view text) {
  const Result<Json> json = parse_json(text);
  BURROW_ENSURE(json.has_value());
  return *json;
}

/// With the members that every line has in front.
Json line_of(Json schema) {
  auto& members = std::get<Json::Object>(schema.value);
  Json::Object properties{{"format", object({{"const", Json("burrowline-assessment")}})},
                          {"version", object({{"const", Json(std::int64_t{1})}})},
                          {"file", type("string", false)}};
  Json::Array required{Json("format"), Json("version"), Json("file")};
  for (JsonMember& member : members) {
    if (member.key == "properties") {
      for (JsonMember& one : std::get<Json::Object>(member.value.value)) properties.push_back(std::move(one));
      member.value = Json(std::move(properties));
    } else if (member.key == "required") {
      for (Json& one : std::get<Json::Array>(member.value.value)) required.push_back(std::move(one));
      member.value = Json(std::move(required));
    }
  }
  return schema;
}

Json::Object heading(const char* id, const char* title, const char* description) {
  return {{"$schema", Json(draft)}, {"$id", Json(id)}, {"title", Json(title)}, {"description", Json(description)}};
}

}  // namespace

std::string crossing_schema(const Tables& tables) {
  Json::Object members =
      heading("urn:burrowline:crossing:1", "A crossing of Burrowline, *.crossing, version 1",
              "SI units; a key carries its unit, and so does `unit`. Beyond this the program refuses: stations that do "
              "not increase, an id twice, a reference to nothing, a tool with neither class nor diameter, an exit that "
              "is not beyond the launch, a key twice.");
  for (JsonMember& member : Describer(tables).describe_all<Crossing>()) members.push_back(std::move(member));
  return pretty_json(Json(std::move(members)));
}

std::string assessment_schema() {
  Json::Object members = heading("urn:burrowline:assessment:1", "A line of burrowline check --json, version 1",
                                 "Always SI. Null: not known, never 0. Members may be added.");
  const Json failure = shape(R"({"error":{"pointer":"text!","found":"text!","expected":"text!"}})");
  members.push_back({"anyOf", Json(Json::Array{object({{"$ref", Json("#/$defs/assessment")}}),
                                               object({{"$ref", Json("#/$defs/failure")}})})});
  Json::Object defs{{"assessment", line_of(schema_of(shape(shape_of_assessment)))},
                    {"failure", line_of(schema_of(failure))}};
  const Json parts = shape(shape_of_parts);
  for (const JsonMember& part : *parts.object()) defs.push_back({part.key, schema_of(part.value)});
  members.push_back({"$defs", Json(std::move(defs))});
  return pretty_json(Json(std::move(members)));
}

}  // namespace burrow
