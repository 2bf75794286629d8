#include "found_builder.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include "burrow/language/say.h"

namespace burrow {

namespace {

/// Length of the UTF-8 sequence at the start, 0 if there is none.
std::size_t sequence(std::string_view s) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const auto tail = [&](std::size_t n) {
    if (s.size() < n) return false;
    for (std::size_t i = 1; i < n; ++i)
      if ((byte(i) & 0xC0u) != 0x80u) return false;
    return true;
  };
  if (byte(0) < 0x80) return 1;
  if (byte(0) >= 0xC2 && byte(0) < 0xE0) return tail(2) ? 2 : 0;
  if (byte(0) >= 0xE0 && byte(0) < 0xF0) {
    if (!tail(3) || (byte(0) == 0xE0 && byte(1) < 0xA0) || (byte(0) == 0xED && byte(1) >= 0xA0)) return 0;
    return 3;
  }
  if (byte(0) >= 0xF0 && byte(0) < 0xF5) {
    if (!tail(4) || (byte(0) == 0xF0 && byte(1) < 0x90) || (byte(0) == 0xF4 && byte(1) >= 0x90)) return 0;
    return 4;
  }
  return 0;
}

bool is_utf8(std::string_view s) {
  while (!s.empty()) {
    const std::size_t n = sequence(s);
    if (n == 0) return false;
    s.remove_prefix(n);
  }
  return true;
}

/// Printed signs of ASCII alone.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= 0x20 && c < 0x7F; });
}

bool usable(const FoundVertex& v) {
  const auto small = [](double c) { return std::abs(c) <= largest_coordinate; };  // false for NaN
  return small(v.x_m) && small(v.y_m) && (!v.z_m || small(*v.z_m));
}

constexpr std::size_t most_left_out = 2000;
constexpr std::size_t longest_text = 200;
constexpr std::size_t most_cells = 4'000'000;

}  // namespace

void make_utf8(std::string& text) {
  if (!is_plain(text)) text = as_utf8(text);
}

std::string as_utf8(std::string_view bytes) {
  if (is_plain(bytes)) return std::string(bytes);
  std::string out;
  const bool known = is_utf8(bytes);
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F) {
      out += ' ';  // a control sign within a name would only puzzle
    } else if (known || byte < 0x80) {
      out += c;
    } else {
      out += static_cast<char>(0xC0u | (byte >> 6u));
      out += static_cast<char>(0x80u | (byte & 0x3Fu));
    }
  }
  return out;
}

std::uint32_t FoundBuilder::layer(std::string_view name) {
  if (const auto it = layers_.find(name); it != layers_.end()) return it->second;
  if (layers_.size() >= options_.most_layers) {
    if (layers_shared_++ == 0) found.layers.emplace_back(translated("(all further layers)"));
    return static_cast<std::uint32_t>(found.layers.size() - 1);
  }
  const auto index = static_cast<std::uint32_t>(found.layers.size());
  layers_.emplace(std::string(name), index);
  found.layers.push_back(as_utf8(name));
  return index;
}

std::uint32_t FoundBuilder::field(std::string_view name) {
  if (const auto it = fields_.find(name); it != fields_.end()) return it->second;
  const auto index = static_cast<std::uint32_t>(found.table.fields.size());
  fields_.emplace(std::string(name), index);
  found.table.fields.push_back({as_utf8(name)});
  return index;
}

void FoundBuilder::add(FoundFeature feature, const std::vector<FoundVertex>& vertices, const std::string& place) {
  const std::size_t least = feature.shape == Shape::point ? 1 : feature.shape == Shape::line ? 2 : 3;
  if (vertices.size() < least)
    return leave_out(
        place, feature.text,
        say_count("{} vertex, at least {} required", "{} vertices, at least {} required", vertices.size(), least));
  for (const FoundVertex& v : vertices)
    if (!usable(v)) return leave_out_coordinate(feature, v, place);
  feature.first = found.vertices.size();
  feature.count = vertices.size();
  make_utf8(feature.text);
  found.vertices.insert(found.vertices.end(), vertices.begin(), vertices.end());
  found.features.push_back(std::move(feature));
  take_attributes(static_cast<std::uint32_t>(found.features.size() - 1));
}

void FoundBuilder::add_point(FoundFeature feature, const FoundVertex& vertex,
                             const std::function<std::string()>& place) {
  if (!usable(vertex)) return leave_out_coordinate(feature, vertex, place());
  feature.first = found.vertices.size();
  feature.count = 1;
  make_utf8(feature.text);
  found.vertices.push_back(vertex);
  found.features.push_back(std::move(feature));
  take_attributes(static_cast<std::uint32_t>(found.features.size() - 1));
}

void FoundBuilder::leave_out_coordinate(const FoundFeature& feature, const FoundVertex& v, const std::string& place) {
  leave_out(place, feature.text,
            say("a coordinate that is no number within ±{:g}: {:g}, {:g}, {:g}", largest_coordinate, v.x_m, v.y_m,
                v.z_m.value_or(0)));
}

void FoundBuilder::take_attributes(std::uint32_t number) {
  for (const auto& [column, text] : row_) {
    if (text.empty()) continue;
    if (cells_.size() >= most_cells) {
      ++cells_left_out_;
      continue;
    }
    const std::string shown = as_utf8(std::string_view(text).substr(0, longest_text));
    const auto [at, is_new] = texts_.emplace(shown, static_cast<std::uint32_t>(found.table.texts.size()));
    if (is_new) found.table.texts.push_back(shown);
    cells_.push_back({number, column, at->second + 1});
  }
}

void FoundBuilder::leave_out(std::string place, std::string_view text, const std::string& reason, bool matters) {
  if (found.left_out.size() >= most_left_out) {
    ++found.left_out_more;
    return;
  }
  found.left_out.push_back({std::move(place), as_utf8(text.substr(0, longest_text)), as_utf8(reason), matters});
}

std::optional<Error> FoundBuilder::check_cancelled(double share) {
  std::size_t count = found.vertices.size();
  for (const FoundSurface& s : found.surfaces) count += s.points.size();
  if (count > options_.most_vertices)
    return Error{"file", say_count("more than {} vertex", "more than {} vertices", options_.most_vertices),
                 translated("a part of the drawing or survey near the crossing")};
  if (options_.progress && !options_.progress(std::clamp(share, 0.0, 1.0)))
    return Error{"file", std::string(stopped_by_person), translated("to be read to its end"), stopped_by_person};
  return std::nullopt;
}

void FoundBuilder::forget_zero_heights(bool mixed) {
  struct Heights {
    std::size_t zero = 0, other = 0;
  };
  std::vector<Heights> of_layer(found.layers.size());
  for (const FoundFeature& f : found.features)
    for (std::size_t i = f.first; i < f.first + f.count; ++i)
      if (const auto& z = found.vertices[i].z_m) ++(*z == 0 ? of_layer[f.layer].zero : of_layer[f.layer].other);
  std::size_t single = 0;
  std::vector<std::string> flat;
  for (std::size_t i = 0; i < of_layer.size(); ++i)
    if (of_layer[i].zero > 0 && of_layer[i].other == 0) flat.push_back(found.layers[i]);
  for (const FoundFeature& f : found.features) {
    if (of_layer[f.layer].zero == 0) continue;
    double far = 0;
    for (std::size_t i = f.first; i < f.first + f.count; ++i)
      if (const auto& z = found.vertices[i].z_m) far = std::max(far, std::abs(*z));
    // A true height of exactly nothing stands only among heights close to it; a point has no neighbours to judge by.
    const bool all_zero = far == 0;
    if (!all_zero && far <= 0.5 && !mixed) continue;
    for (std::size_t i = f.first; i < f.first + f.count; ++i)
      if (auto& z = found.vertices[i].z_m; z && *z == 0) {
        z.reset();
        single += of_layer[f.layer].other > 0 ? 1u : 0u;
      }
  }
  if (!flat.empty()) {
    std::string names;
    for (std::size_t i = 0; i < flat.size() && i < 6; ++i) names += (i ? ", " : "") + flat[i];
    if (flat.size() > 6) names = say_count("{1} and {0} more", "{1} and {0} more", flat.size() - 6, names);
    found.notes.push_back(say("height 0 throughout counts as not given: {}", names));
  }
  if (single > 0)
    found.notes.push_back(say_count("{} height of 0 among others counts as not given",
                                    "{} heights of 0 among others count as not given", single));
  if (mixed) found.notes.emplace_back(translated("the file mixes vertices with and without height"));
}

/// In a survey a height of exactly 0 is a true one where others come near it.
void FoundBuilder::forget_zero_of_survey() {
  constexpr double near = 1;
  double nearest = std::numeric_limits<double>::infinity();
  for (const FoundVertex& v : found.vertices)
    if (v.z_m && *v.z_m != 0) nearest = std::min(nearest, std::abs(*v.z_m));
  if (nearest > near) forget_zero_heights(false);
}

void FoundBuilder::fill_table() {
  FoundTable& table = found.table;
  const std::size_t wide = table.fields.size();
  constexpr std::size_t most = 40'000'000;
  if (wide * found.features.size() > most || cells_left_out_ > 0) {
    leave_out(translated("whole file"), say_count("{} attribute", "{} attributes", cells_.size() + cells_left_out_),
              translated("more attributes than can be held: a part of the data near the crossing"));
    table = {};
    return;
  }
  table.cells.assign(wide * found.features.size(), 0);
  for (const auto& [feature, column, text] : cells_) table.cells[feature * wide + column] = text;
}

void FoundBuilder::drop_flat_surfaces() {
  std::vector<FoundSurface> flat;
  std::erase_if(found.surfaces, [&](FoundSurface& surface) {
    const bool is_flat =
        std::all_of(surface.points.begin(), surface.points.end(), [](const Point3& p) { return p.z_m == 0; });
    if (is_flat)
      leave_out("surface " + found.layers[surface.layer], "", translated("height 0 throughout counts as not given"));
    if (is_flat) flat.push_back(std::move(surface));
    return is_flat;
  });
  if (found.format == "LandXML") return;  // there a surface is a ground, and without heights it is none
  row_.clear();
  constexpr std::size_t most_faces = 100'000;
  std::size_t faces = 0;
  for (const FoundSurface& surface : flat) {
    FoundFeature area;
    area.shape = Shape::area;
    area.layer = surface.layer;
    for (const auto& face : surface.faces) {
      if (++faces > most_faces) return;
      std::vector<FoundVertex> corners;
      for (const std::size_t k : face) corners.push_back({surface.points[k].x_m, surface.points[k].y_m, std::nullopt});
      add(area, corners, "surface " + found.layers[surface.layer]);
    }
  }
}

Found FoundBuilder::finish(bool mixed) {
  if (found.format == "survey points")
    forget_zero_of_survey();
  else
    forget_zero_heights(mixed);
  drop_flat_surfaces();
  fill_table();
  if (layers_shared_ > 0)
    found.notes.push_back(
        say("more than {} layers or codes: all further ones are shown as one, and asked as one", options_.most_layers));
  found.vertices.shrink_to_fit();
  found.features.shrink_to_fit();
  return std::move(found);
}

}  // namespace burrow
