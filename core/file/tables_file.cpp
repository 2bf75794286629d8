#include "burrow/file/tables_file.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "burrow/base/ensure.h"
#include "burrow/language/say.h"
#include "burrow/tables/material_rows.h"
#include "burrow_resources.h"
#include "pipe_rows.h"
#include "table_row.h"

namespace burrow {

namespace {
using nlohmann::json, table_file::Row;

template <class Quantity>
std::optional<Quantity> maybe(std::optional<double> value) {
  return value ? std::optional<Quantity>(Quantity{*value}) : std::nullopt;
}

void read(Row& row, SoilClass& soil) {
  soil.id = row.text("id");
  soil.name = row.phrase("name");
  soil.neighbours = row.texts_or_nothing("neighbours");
  if (soil.neighbours.size() > 2)
    row.wrong("neighbours", std::to_string(soil.neighbours.size()) + " classes", "one or two: the softer, the stiffer");
  soil.unit_weight.N_m3 = row.number("unit_weight_n_m3", 1e3, 5e4);
  soil.saturated_unit_weight.N_m3 = row.number("saturated_unit_weight_n_m3", 1e3, 5e4);
  soil.undrained_strength = maybe<Pressure>(row.number_or_null("undrained_strength_pa", 1, 1e8));
  soil.friction_angle = maybe<Angle>(row.number_or_null("friction_angle_rad", 0, 1.2));
  soil.cohesion.Pa = row.number("cohesion_pa", 0, 1e8);
  soil.dilation_angle.rad = row.number("dilation_angle_rad", 0, 1.2);
  soil.shear_modulus.Pa = row.number("shear_modulus_pa", 1, 1e11);
  soil.poisson_ratio.v = row.number("poisson_ratio", 0, 0.499);
  soil.earth_pressure_ratio = maybe<Ratio>(row.number_or_null("earth_pressure_ratio", 0, 10));
  soil.drained = row.flag("drained");
  soil.adhesion_ratio.v = row.number("adhesion_ratio", 0, 1);
  soil.interface_angle.rad = row.number("interface_angle_rad", 0, 1.2);
  soil.wander.rad_sqrt_m = row.number("wander_rad_sqrt_m", 0, 1);
  soil.stone_rate.per_m = row.number("stone_rate_1_m", 0, 1e3);
  soil.stone_kick.rad = row.number("stone_kick_rad", 0, 1);
  soil.refusal_rate.per_m = row.number("refusal_rate_1_m", 0, 1e3);
  soil.heave_share.v = row.number("heave_share", 0, 3);
  soil.swell.v = row.number("swell", 0, 3);
  soil.excavation_type = row.word<ExcavationType>("excavation_type");
  soil.matter = row.word_or_nothing<ExcavationMatter>("matter");
  const std::string stands_open = row.text("stands_open");
  soil.stands_open = Phrase::of_table(stands_open);
  soil.closes_soon = stands_open == "minutes" || stands_open.starts_with("closes");
  soil.use = row.phrase("use");
  soil.thumb = row.phrase("thumb");
  soil.source = row.source();
  if (soil.drained && !soil.friction_angle) row.wrong("friction_angle_rad", "nothing", "a value in a drained class");
  if (!soil.drained && !soil.undrained_strength)
    row.wrong("undrained_strength_pa", "nothing", "a value in an undrained class");
}

void read(Row& row, ToolClass& tool) {
  tool.id = row.text("id");
  tool.diameter.m = row.number("diameter_m", 1e-3, 5);
  tool.length.m = row.number("length_m", 1e-3, 100);
  tool.mass.kg = row.number("mass_kg", 1e-3, 1e5);
  tool.piston_diameter.m = row.number("piston_diameter_m", 1e-3, 5);
  tool.stroke.m = row.number("stroke_m", 1e-4, 10);
  tool.striker_mass.kg = row.number("striker_mass_kg", 1e-3, 1e5);
  tool.blow_rate.Hz = row.number("blow_rate_hz", 1e-3, 1e3);
  tool.pressure.Pa = row.number("pressure_pa", 1, 1e8);
  tool.free_air.m3_s = row.number("free_air_m3_s", 1e-9, 1e3);
  tool.source = row.source();
}

void read(Row& row, UtilityKindRow& utility) {
  utility.kind = row.word<UtilityKind>("kind");
  utility.name = row.phrase("name");
  utility.letter_code = row.text("letter_code");
  utility.colour = row.colour("colour");
  utility.colour_dark = row.colour("colour_dark");
  utility.dash = row.numbers("dash", 0.1, 100);
  if (utility.dash.size() % 2 != 0)
    row.wrong("dash", std::to_string(utility.dash.size()) + " lengths", "pairs: on, off");
  utility.dangerous = row.flag("dangerous");
  utility.can_hurt = row.flag("can_hurt");
  utility.separations = row.texts_or_nothing("separations");
  utility.source = row.source();
}

void read(Row& row, UtilityMaterialRow& material) {
  material.id = row.text("id");
  material.name = row.phrase("name");
  material.wall = row.word<UtilityWall>("wall");
  for (const std::string& word : row.texts_or_nothing("kinds")) {
    const auto kind = from_word<UtilityKind>(word);
    if (!kind) return row.wrong("kinds", "\"" + word + "\"", "some of: " + known_words<UtilityKind>());
    material.kinds.push_back(*kind);
  }
  for (const std::string& word : row.texts_or_nothing("words")) material.words.push_back(matched_form(word));
  material.source = row.source();
}

void read(Row& row, StructureRow& structure) {
  structure.id = row.text("id");
  structure.name = row.phrase("name");
  structure.limit = row.text("limit");
  structure.words = {matched_form(row.text("name"))};
  for (const std::string& word : row.texts_or_nothing("words")) structure.words.push_back(matched_form(word));
  structure.source = row.source();
}

void read(Row& row, LocatingPreset& preset) {
  preset.id = row.text("id");
  preset.name = row.phrase("name");
  preset.lateral = maybe<Length>(row.number_or_null("lateral_m", 0, 100));
  preset.lateral_of_depth = maybe<Ratio>(row.number_or_null("lateral_of_depth", 0, 10));
  preset.vertical = maybe<Length>(row.number_or_null("vertical_m", 0, 100));
  preset.vertical_of_depth = maybe<Ratio>(row.number_or_null("vertical_of_depth", 0, 10));
  preset.exposed = row.flag_or_no("exposed");
  preset.source = row.source();
}

void read(Row& row, LimitRow& limit) {
  limit.id = row.text("id");
  limit.name = row.phrase("name");
  limit.value = row.number("value");
  limit.unit = row.unit("unit");
  if ((limit.unit == "m") != limit.id.ends_with("_m"))
    row.wrong("unit", "\"" + limit.unit + "\"", "\"m\" exactly where the id ends in _m");
  if ((limit.unit == "m/s") != limit.id.ends_with("_m_s"))
    row.wrong("unit", "\"" + limit.unit + "\"", "\"m/s\" exactly where the id ends in _m_s");
  if ((limit.unit == "m3") != limit.id.ends_with("_m3"))
    row.wrong("unit", "\"" + limit.unit + "\"", "\"m3\" exactly where the id ends in _m3");
  if ((limit.unit == "Pa") != limit.id.ends_with("_pa"))
    row.wrong("unit", "\"" + limit.unit + "\"", "\"Pa\" exactly where the id ends in _pa");
  if ((limit.unit == "K") != limit.id.ends_with("_k"))
    row.wrong("unit", "\"" + limit.unit + "\"", "\"K\" exactly where the id ends in _k");
  limit.at_least = row.flag("at_least");
  limit.source = row.source();
}

void read(Row& row, SurfaceRule& rule) {
  rule.id = row.text("id");
  rule.name = row.phrase("name");
  rule.kind = row.word<SurfaceKind>("kind");
  rule.cover = maybe<Length>(row.number_or_null("cover_m", 0, 100));
  rule.heave_caution = maybe<Length>(row.number_or_null("heave_caution_m", 0, 1));
  rule.heave_stop = maybe<Length>(row.number_or_null("heave_stop_m", 0, 1));
  rule.least_angle = maybe<Angle>(row.number_or_null("least_angle_rad", 0, pi / 2));
  rule.pit_setback = maybe<Length>(row.number_or_null("pit_setback_m", 0, 100));
  rule.cover_exceeded = row.flag_or_no("cover_exceeded");
  rule.setback_span = row.word_or_nothing<SetbackSpan>("setback_span").value_or(SetbackSpan::face_to_edge);
  rule.unshored_adds_depth = row.flag_or_no("unshored_adds_depth");
  rule.pipe_end_setback = maybe<Length>(row.number_or_null("pipe_end_setback_m", 0, 100));
  rule.clear_of_centre = maybe<Length>(row.number_or_null("clear_of_centre_m", 0, 100));
  if (const std::string note = row.text_or_nothing("note"); !note.empty()) rule.note = Phrase::of_table(note);
  rule.largest_driven = maybe<Length>(row.number_or_null("largest_driven_m", 0, 5));
  rule.source = row.source();
}

void read(Row& row, SlopeRow& slope) {
  slope.type = row.word<ExcavationType>("type");
  slope.run_per_rise.v = row.number("run_per_rise", 0, 100);
  slope.depth_limit.m = row.number("depth_limit_m", 0.1, 100);
  slope.source = row.source();
}

void read(Row& row, UprightPartRow& part) {
  part.type = row.word<ExcavationType>("type");
  part.depth_limit.m = row.number("depth_limit_m", 0.1, 100);
  part.upright.m = row.number("upright_m", 0, 100);
  part.run_above.v = row.number("run_above", 0, 100);
  part.source = row.source();
}

void read(Row& row, DutyRow& duty) {
  duty.id = row.text("id");
  duty.value = row.number("value", 0, 1e6);
  duty.source = row.source();
}

void read(Row& row, ShoringRow& shoring) {
  shoring.id = row.text("id");
  shoring.method = row.word<ShoringMethod>("method");
  shoring.type = row.word<ExcavationType>("type");
  shoring.depth.m = row.number("depth_m", 0.1, 100);
  shoring.width.m = row.number("width_m", 0.1, 100);
  shoring.brace = row.text("brace");
  shoring.brace_spacing.m = row.number("brace_spacing_m", 0, 100);
  shoring.brace_rise.m = row.number("brace_rise_m", 0, 100);
  shoring.wale = row.text_or_nothing("wale");
  shoring.wale_rise = maybe<Length>(row.number_or_null("wale_rise_m", 0, 100));
  shoring.upright = row.text("upright");
  shoring.upright_spacing = maybe<Length>(row.number_or_null("upright_spacing_m", 0, 100));
  shoring.source = row.source();
}

void read(Row& row, EarthworkRow& earth) {
  earth.id = row.text("id");
  earth.name = row.phrase("name");
  earth.loose.v = row.number("loose", 1, 3);
  earth.compacted.v = row.number("compacted", 0.5, 2);
  earth.source = row.source();
}

void read(Row& row, ExcavationRuleSet& set);  // holds rows itself

template <class T>
Result<std::vector<T>> read_rows(const json& rows, const std::string& pointer) {
  std::vector<T> all;
  for (const json& object : rows) {
    Row row(object, pointer + "/" + std::to_string(all.size()));
    read(row, all.emplace_back());
    if (auto error = row.finish()) return tl::unexpected(std::move(*error));
  }
  return all;
}

void read(Row& row, ExcavationRuleSet& set) {
  set.rules = row.word<ExcavationRules>("rules");
  set.name = row.phrase("name");
  set.protection_from.m = row.number("protection_from_m", 0, 100);
  set.ladder_from.m = row.number("ladder_from_m", 0, 100);
  set.spoil_setback.m = row.number("spoil_setback_m", 0, 100);
  set.source = row.source();
  auto slopes = read_rows<SlopeRow>(row.list("slopes"), row.pointer() + "/slopes");
  if (!slopes) return row.wrong(std::move(slopes.error()));
  set.slopes = std::move(*slopes);
  auto parts = read_rows<UprightPartRow>(row.list_or_nothing("upright_parts"), row.pointer() + "/upright_parts");
  if (!parts) return row.wrong(std::move(parts.error()));
  set.upright_parts = std::move(*parts);
  auto duties = read_rows<DutyRow>(row.list_or_nothing("duties"), row.pointer() + "/duties");
  if (!duties) return row.wrong(std::move(duties.error()));
  set.duties = std::move(*duties);
  for (const auto& [type, word] : EnumNames<ExcavationType>::list)
    if (std::count_if(set.slopes.begin(), set.slopes.end(), [t = type](const SlopeRow& s) { return s.type == t; }) != 1)
      row.wrong("slopes", "not one row", "one row for type " + std::string(word));
}

/// What tells two rows of a table apart.
template <class T>
const std::string& key_of(const T& row) {
  return row.id;
}
UtilityKind key_of(const UtilityKindRow& row) {
  return row.kind;
}
ExcavationRules key_of(const ExcavationRuleSet& row) {
  return row.rules;
}

template <class T>
std::optional<Error> lay_over(std::vector<T>& rows, const json& text, const std::string& place) {
  auto added = read_rows<T>(text, place);
  if (!added) return std::move(added.error());
  for (std::size_t i = 0; i < added->size(); ++i) {
    T& row = (*added)[i];
    const auto same = [&](const T& other) { return key_of(other) == key_of(row); };
    if (std::any_of(added->begin(), added->begin() + static_cast<std::ptrdiff_t>(i), same))
      return Error{place + "/" + std::to_string(i), "a second row of the same id", "each id once"};
  }
  for (T& row : *added) {
    const auto it = std::find_if(rows.begin(), rows.end(), [&](const T& old) { return key_of(old) == key_of(row); });
    if (it != rows.end())
      *it = std::move(row);
    else
      rows.push_back(std::move(row));
  }
  return std::nullopt;
}

/// A class laid over without neighbours keeps those it had; each neighbour is a class that is there, and another one.
std::optional<Error> lay_soils_over(std::vector<SoilClass>& soils, const json& rows, const std::string& name) {
  const std::vector<SoilClass> before = soils;
  if (auto error = lay_over(soils, rows, name)) return error;
  for (SoilClass& soil : soils) {
    const auto old = std::find_if(before.begin(), before.end(), [&](const SoilClass& s) { return s.id == soil.id; });
    if (soil.neighbours.empty() && old != before.end()) soil.neighbours = old->neighbours;
    for (std::size_t i = 0; i < soil.neighbours.size(); ++i) {
      const std::string& other = soil.neighbours[i];
      const auto there = [&](const SoilClass& s) { return s.id == other; };
      if (other == soil.id || (i > 0 && other == soil.neighbours[0]) || std::none_of(soils.begin(), soils.end(), there))
        return Error{name + "/" + soil.id + "/neighbours/" + std::to_string(i), "\"" + other + "\"",
                     "another class of this table, once"};
    }
  }
  return std::nullopt;
}

/// A kind of utility laid over without limits keeps those it had; each is a clear gap of limits.json, laid over first.
std::optional<Error> lay_utilities_over(Tables& tables, const json& rows, const std::string& name) {
  const std::vector<UtilityKindRow> before = tables.utilities;
  if (auto error = lay_over(tables.utilities, rows, name)) return error;
  for (UtilityKindRow& row : tables.utilities) {
    const auto old = std::find_if(before.begin(), before.end(), [&](const auto& u) { return u.kind == row.kind; });
    if (row.separations.empty() && old != before.end()) row.separations = old->separations;
    const std::string place = name + "/" + std::string(word_of(row.kind)) + "/separations";
    if (row.separations.empty()) return Error{place, "nothing", "ids of limits.json"};
    for (const std::string& id : row.separations)
      if (!id.starts_with("separation_") || id == "separation_exposed_m" || !find_limit(tables, id))
        return Error{place, "\"" + id + "\"", "a gap of limits.json to what nobody has exposed"};
  }
  return std::nullopt;
}

/// A structure names a limit of this table, so the limits are laid over first.
std::optional<Error> lay_structures_over(Tables& tables, const json& rows, const std::string& name) {
  if (auto error = lay_over(tables.structures, rows, name)) return error;
  for (const StructureRow& structure : tables.structures)
    if (!find_limit(tables, structure.limit))
      return Error{name + "/" + structure.id + "/limit", "\"" + structure.limit + "\"", "an id of limits.json"};
  return std::nullopt;
}

constexpr std::array file_names{"soils.json",     "tools.json",     "pipes.json",         "limits.json",
                                "utilities.json", "locating.json",  "surface_rules.json", "excavation.json",
                                "shoring.json",   "earthwork.json", "pipe_sizes.json",    "utility_materials.json",
                                "structures.json"};

std::optional<Error> lay_file_over(Tables& tables, const std::string& name, const std::string& text) {
  const auto rows = table_file::parse_table(text, name);
  if (!rows) return rows.error();
  if (name == "soils.json") return lay_soils_over(tables.soils, *rows, name);
  if (name == "tools.json") return lay_over(tables.tools, *rows, name);
  if (name == "pipes.json") return lay_over(tables.pipes, *rows, name);
  if (name == "pipe_sizes.json") return lay_over(tables.pipe_sizes, *rows, name);
  if (name == "utilities.json") return lay_utilities_over(tables, *rows, name);
  if (name == "locating.json") return lay_over(tables.locating, *rows, name);
  if (name == "limits.json") return lay_over(tables.limits, *rows, name);
  if (name == "surface_rules.json") return lay_over(tables.surface_rules, *rows, name);
  if (name == "excavation.json") return lay_over(tables.excavation, *rows, name);
  if (name == "shoring.json") return lay_over(tables.shoring, *rows, name);
  if (name == "earthwork.json") return lay_over(tables.earthwork, *rows, name);
  if (name == "utility_materials.json") return lay_over(tables.utility_materials, *rows, name);
  if (name == "structures.json") return lay_structures_over(tables, *rows, name);
  return Error{name, "a file of this name", "a table of the program"};
}

Result<std::string> file_text(const std::filesystem::path& path, const std::string& name) {
  constexpr std::uintmax_t largest = 16u << 20;
  std::error_code code;
  const std::uintmax_t size = std::filesystem::file_size(path, code);
  if (code) return fail(name, code.message(), "a file that can be read");
  if (size > largest) return fail(name, std::to_string(size) + " bytes", "at most 16 MB");
  std::ifstream in(path, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in.eof() && !in.good()) return fail(name, "an error while reading", "a file that can be read");
  return text;
}

}  // namespace

Result<Tables> overlay_table(Tables tables, const std::string& file_name, const std::string& text) {
  if (auto error = lay_file_over(tables, file_name, text)) return tl::unexpected(std::move(*error));
  return tables;
}

Tables load_tables() {
  Tables tables;
  for (const std::string name : file_names) {
    const auto error = lay_file_over(tables, name, std::string(embedded_text("tables/" + name)));
    if (error) std::fprintf(stderr, "burrowline: built-in table: %s\n", error->english().c_str());
    BURROW_ENSURE(!error);
  }
  return tables;
}

Tables load_tables(const Date& judged_on) {
  Tables tables = load_tables();
  tables.judged_on = judged_on;
  return tables;
}

Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return {local.tm_year + 1900, local.tm_mon + 1, local.tm_mday};
}

Result<Tables> load_tables(const std::string& overlay_folder) {
  std::error_code code;
  if (!std::filesystem::is_directory(overlay_folder, code))
    return fail(overlay_folder, "no such folder", "a folder with tables");
  Tables tables = load_tables();
  for (const std::string name : file_names) {
    const std::filesystem::path path = std::filesystem::path(overlay_folder) / name;
    if (!std::filesystem::exists(path, code)) continue;
    const auto text = file_text(path, name);
    if (!text) return tl::unexpected(text.error());
    if (auto error = lay_file_over(tables, name, *text)) return tl::unexpected(std::move(*error));
  }
  return tables;
}

}  // namespace burrow
