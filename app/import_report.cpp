#include "import_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <ostream>

#include "burrow/import/scale.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

using json = nlohmann::ordered_json;

void say_list(const char* word, const std::vector<LeftOut>& list, std::size_t more, std::ostream& err) {
  for (const LeftOut& l : list)
    err << "  " << word << ": " << l.place << (l.text.empty() ? "" : ": " + l.text) << ": " << l.reason << "\n";
  if (more > 0) err << "  " << word << ": " << more << " more\n";
}

std::string unit_words(const ImportFile& file) {
  const FoundFrame& frame = frame_of(file);
  if (frame.geographic) return "degrees";
  if (file.unit) return std::string(word_of(*file.unit)) + " (as said)";
  if (frame.unit)
    return std::string(word_of(*frame.unit)) +
           (frame.unit_is_doubtful ? " (as the file says, which is often wrong)" : "");
  return "m (not stated: taken as metres; --units says otherwise)";
}

void say_scale(const ImportFile& file, const std::optional<CrossingLine>& line, std::ostream& err) {
  err << "  unit of the plan: " << unit_words(file);
  if (!frame_of(file).geographic) {
    const ScaleView view = scale_of(file, line);
    err << fmt::format("; in it the plan is {:.2f} m by {:.2f} m", view.wide.m, view.high.m);
    if (view.line) err << fmt::format(", the crossing line {:.2f} m", view.line->m);
  }
  err << "\n";
}

void say_layers(const ImportFile& file, std::ostream& err) {
  const std::vector<LayerSummary> layers = summaries(*file.found);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const LayerSummary& l = layers[i];
    err << "  layer " << (l.name.empty() ? "(none)" : l.name) << " = " << word_of(file.layers[i].meaning)
        << (file.layers[i].on_ground ? ", its points on the ground" : "") << ":";
    for (const auto& [count, what] : {std::pair{l.points, "points"},
                                      {l.lines, "lines"},
                                      {l.areas, "areas"},
                                      {l.faces, "faces"},
                                      {l.rasters, "grids"}})
      if (count > 0) err << " " << count << " " << what;
    if (l.vertices > 0 && l.with_height == 0) err << ", no heights";
    err << "\n";
  }
}

std::string field_words(const FieldChoice& choice) {
  std::string text(word_of(choice.use));
  if (choice.unit) text += " in " + std::string(word_of(*choice.unit));
  if (choice.diameter) text += ", " + std::string(word_of(*choice.diameter));
  if (choice.level) text += ", " + std::string(word_of(*choice.level));
  return text;
}

void say_fields(const ImportFile& file, std::ostream& err) {
  std::string dropped;
  for (std::size_t i = 0; i < file.fields.size(); ++i) {
    const FieldChoice& choice = file.fields[i];
    const std::string& name = file.found->table.fields[i].name;
    if (choice.use == FieldUse::not_used) {
      dropped += (dropped.empty() ? "" : ", ") + name;
      continue;
    }
    err << "  attribute " << name << " = " << field_words(choice);
    if (!choice.is_decided)
      err << " (a guess, not used: --field " << word_of(choice.use) << "=" << name << ":"
          << (choice.unit ? word_of(*choice.unit) : "UNIT") << ")";
    err << "\n";
  }
  if (!dropped.empty()) err << "  attributes not used: " << dropped << "\n";
}

json list_json(const std::vector<LeftOut>& list) {
  json all = json::array();
  for (const LeftOut& l : list)
    all.push_back({{"place", l.place}, {"text", l.text}, {"reason", l.reason}, {"matters", l.matters}});
  return all;
}

template <class E>
json word_or_null(const std::optional<E>& value) {
  return value ? json(word_of(*value)) : json();
}

json file_json(const ImportFile& file, const std::optional<CrossingLine>& line) {
  const Found& found = *file.found;
  const FoundFrame& frame = frame_of(file);
  const ScaleView view = scale_of(file, line);
  json out{{"file", found.file}, {"read_as", found.format}};
  out["coordinate_system"] = frame.crs.empty() ? json() : json(frame.crs);
  out["coordinate_system_said"] = file.said_frame.has_value();
  out["unit"] = frame.geographic ? json("degree") : json(word_of(view.unit));
  out["unit_from"] = frame.geographic || (!file.unit && frame.unit) ? "file" : file.unit ? "said" : "taken";
  out["height_unit"] = word_or_null(file.height_unit ? file.height_unit : frame.height_unit);
  out["plan_m"] = frame.geographic ? json() : json{view.wide.m, view.high.m};
  out["order"] = found.order.empty() ? json() : json(found.order);
  out["order_is_known"] = found.order_is_known;
  out["layers"] = json::array();
  const std::vector<LayerSummary> layers = summaries(found);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const LayerSummary& l = layers[i];
    out["layers"].push_back({{"name", l.name},
                             {"meaning", word_of(file.layers[i].meaning)},
                             {"points_on_ground", file.layers[i].on_ground},
                             {"points", l.points},
                             {"lines", l.lines},
                             {"areas", l.areas},
                             {"faces", l.faces},
                             {"grids", l.rasters},
                             {"vertices", l.vertices},
                             {"with_height", l.with_height}});
  }
  out["attributes"] = json::array();
  for (std::size_t i = 0; i < file.fields.size(); ++i) {
    const FieldChoice& c = file.fields[i];
    out["attributes"].push_back({{"name", found.table.fields[i].name},
                                 {"use", word_of(c.use)},
                                 {"unit", word_or_null(c.unit)},
                                 {"diameter", word_or_null(c.diameter)},
                                 {"level", word_or_null(c.level)},
                                 {"decided", c.is_decided}});
  }
  out["left_out"] = list_json(found.left_out);
  out["left_out_more"] = found.left_out_more;
  out["notes"] = found.notes;
  return out;
}

}  // namespace

void say_found(const ImportFile& file, const std::optional<CrossingLine>& line, std::ostream& err) {
  const Found& found = *file.found;
  const FoundFrame& frame = frame_of(file);
  err << found.file << ": " << found.format << "\n";
  if (!found.order.empty())
    err << "  order of columns: " << found.order
        << (found.order_is_known ? "" : " (not stated: --order says otherwise)") << "\n";
  say_scale(file, line, err);
  if (!frame.crs.empty())
    err << "  coordinate system: " << name_of_crs(frame.crs) << (file.said_frame ? " (as said)" : "") << "\n";
  if (!file.height_unit && !frame.height_unit && !file.unit)
    err << "  unit of heights: not stated, taken as " << (frame.crs.empty() && frame.unit ? word_of(*frame.unit) : "m")
        << " (--height-units says otherwise)\n";
  if (const auto e = extent_of(found))
    err << fmt::format("  extent: {:.3f}, {:.3f} to {:.3f}, {:.3f}\n", e->low_x, e->low_y, e->high_x, e->high_y);
  say_layers(file, err);
  say_fields(file, err);
  for (const std::string& note : found.notes) err << "  note: " << note << "\n";
  say_list("left out", found.left_out, found.left_out_more, err);
}

void say_imported(const Imported& imported, std::ostream& err) {
  err << fmt::format(
      "crossing line {:.3f} m; ground line of {} points, {} utilities, {} on the surface, {} boundaries, background in "
      "{} layers\n",
      imported.length.m, imported.ground.size(), imported.utilities.size(), imported.surface.size(),
      imported.boundaries.size(), imported.background.size());
  if (imported.ground.empty()) err << "  note: no ground along the crossing line: it counts as missing\n";
  for (const std::string& note : imported.notes) err << "  note: " << note << "\n";
  say_list("left out", imported.left_out, imported.left_out_more, err);
  say_list("asked", imported.asked, 0, err);
}

std::string import_json(const std::vector<ImportFile>& files, const CrossingLine& line, const Imported& imported,
                        const std::string& written) {
  json out{{"format", "burrowline-import"}, {"version", 1}, {"written", written}};
  out["files"] = json::array();
  for (std::size_t i = 0; i < files.size(); ++i)
    out["files"].push_back(file_json(files[i], i == 0 ? std::optional(line) : std::nullopt));
  out["crossing"] = {
      {"length_m", imported.length.m},
      {"ground_points", imported.ground.size()},
      {"utilities", imported.utilities.size()},
      {"on_the_surface", imported.surface.size()},
      {"boundaries", imported.boundaries.size()},
      {"background_layers", imported.background.size()},
      {"coordinate_system", imported.georeference.crs.empty() ? json() : json(imported.georeference.crs)}};
  out["asked"] = list_json(imported.asked);
  out["left_out"] = list_json(imported.left_out);
  out["left_out_more"] = imported.left_out_more;
  out["notes"] = imported.notes;
  out["complete"] = !lost_something(files, imported);
  return out.dump(-1, ' ', false, json::error_handler_t::replace);
}

std::string import_error_json(const Error& error) {
  json out{{"format", "burrowline-import"}, {"version", 1}};
  out["error"] = {{"place", translated_phrase(error.place)},
                  {"found", translated_phrase(error.found)},
                  {"expected", translated_phrase(error.expected)}};
  return out.dump(-1, ' ', false, json::error_handler_t::replace);
}

bool lost_something(const std::vector<ImportFile>& files, const Imported& imported) {
  const auto matter = [](const std::vector<LeftOut>& list) {
    return std::any_of(list.begin(), list.end(), [](const LeftOut& l) { return l.matters; });
  };
  return !imported.asked.empty() || imported.left_out_more > 0 || matter(imported.left_out) ||
         std::any_of(files.begin(), files.end(), [&](const ImportFile& file) {
           return file.found->left_out_more > 0 || matter(file.found->left_out);
         });
}

}  // namespace burrow
