/// What a layer means, by the words of its name and by what it holds.

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "burrow/import/meanings.h"
#include "layer_words.h"

namespace burrow {

namespace {

/// A row whose phrase stands in the name.
struct Met {
  const MeaningRow* row = nullptr;
  LayerWords::Place place;
  std::size_t letters = 0;
};

std::size_t letters_in(const LayerWords& words, LayerWords::Place place) {
  std::size_t count = 0;
  for (std::size_t i = place.from; i < place.to; ++i) count += words.pieces()[i].text.size();
  return count;
}

const MeaningRow* by_name(const MeaningTable& table, std::string_view name) {
  const auto it = std::find_if(table.begin(), table.end(),
                               [&](const MeaningRow& row) { return row.by == MatchBy::name && fits(row.match, name); });
  return it == table.end() ? nullptr : &*it;
}

const MeaningRow* by_code(const MeaningTable& table, const LayerWords& words, MatchBy kind) {
  const auto it = std::find_if(table.begin(), table.end(),
                               [&](const MeaningRow& row) { return row.by == kind && words.is_code(row.match); });
  return it == table.end() ? nullptr : &*it;
}

/// Words after the one or two letters of a discipline, wherever they stand: a minor group says as much as a major one.
std::vector<Met> standards_met(const MeaningTable& table, const LayerWords& words) {
  constexpr std::size_t most_letters = 2;
  std::vector<Met> met;
  const auto& pieces = words.pieces();
  if (pieces.size() < 2 || pieces[0].text.size() > most_letters || pieces[0].is_number() || pieces[1].soft_before)
    return met;
  for (std::size_t i = 1; i < pieces.size(); ++i)
    for (const MeaningRow& row : table) {
      if (row.by != MatchBy::standard) continue;
      const auto place = words.at(i, row.match);
      if (!place) continue;
      met.push_back({&row, *place, letters_in(words, *place)});
      break;
    }
  return met;
}

/// "gasleitung": by its first part; where nobody knows that, by its second.
void add_compounds(const MeaningTable& table, const LayerWords& words, std::vector<Met>& all) {
  for (std::size_t i = 0; i < words.pieces().size(); ++i) {
    const auto [word, end] = words.word_at(i);
    const auto compound = compound_of(word);
    if (!compound) continue;
    const LayerWords whole(word), head(word.substr(compound->first.size()));
    std::string first = compound->first;
    const MeaningRow* best = nullptr;
    const auto look_up = [&](const LayerWords& part) {
      for (const MeaningRow& row : table)
        if (row.by == MatchBy::anywhere && !best)
          if (const auto place = part.at(0, row.match); place && place->to == part.pieces().size()) best = &row;
    };
    look_up(LayerWords(first));
    if (!best && first.ends_with('s')) look_up(LayerWords(first.substr(0, first.size() - 1)));
    if (best) {
      all.push_back({best, {i, end}, word.size()});
    } else {
      look_up(head);
      if (best) all.push_back({best, {i, end}, compound->head_letters});
    }
  }
}

/// Of those that lie over each other the longest.
std::vector<Met> longest(std::vector<Met> all) {
  std::stable_sort(all.begin(), all.end(), [](const Met& a, const Met& b) { return a.letters > b.letters; });
  std::vector<Met> kept;
  for (const Met& one : all) {
    const bool covered = std::any_of(kept.begin(), kept.end(), [&](const Met& k) {
      return one.place.from < k.place.to && k.place.from < one.place.to;
    });
    if (!covered) kept.push_back(one);
  }
  return kept;
}

std::vector<Met> words_met(const MeaningTable& table, const LayerWords& words) {
  std::vector<Met> all;
  for (const MeaningRow& row : table) {
    if (row.by != MatchBy::anywhere) continue;
    for (std::size_t i = 0; i < words.pieces().size(); ++i)
      if (const auto place = words.at(i, row.match)) all.push_back({&row, *place, letters_in(words, *place)});
  }
  add_compounds(table, words, all);
  return longest(std::move(all));
}

/// Words that say nothing of what a line is: they stand beside others, and one letter that begins a name is that of a
/// discipline.
bool says_nothing(const LayerWords& words, std::size_t piece) {
  static constexpr std::array<std::string_view, 47> idle{
      "line",    "lines", "linie",  "linien", "layer",  "ebene", "ex",     "exst",   "exist",   "existing",
      "bestand", "majr",  "minr",   "major",  "minor",  "index", "the",    "of",     "and",     "und",
      "der",     "des",   "on",     "at",     "left",   "right", "links",  "rechts", "edge",    "outline",
      "surface", "model", "no",     "m",      "ft",     "level", "levels", "height", "heights", "point",
      "points",  "road",  "street", "site",   "survey", "surv",  "plan"};
  static constexpr std::string_view disciplines = "aclsv";
  const LayerWords::Piece& one = words.pieces()[piece];
  if (one.is_number() || std::find(idle.begin(), idle.end(), one.text) != idle.end()) return true;
  const bool alone = piece + 1 < words.pieces().size() && !words.pieces()[piece + 1].soft_before;
  return piece == 0 && alone && one.text.size() == 1 && disciplines.find(one.text) != std::string_view::npos;
}

/// Whether every word of the name is one that was met, or says nothing: "river" beside "crossing HDD" may be anything.
bool all_known(const std::vector<Met>& met, const LayerWords& words, std::size_t from = 0) {
  for (std::size_t i = from; i < words.pieces().size(); ++i) {
    const auto holds = [i](const Met& m) { return m.place.from <= i && i < m.place.to; };
    if (!says_nothing(words, i) && !std::any_of(met.begin(), met.end(), holds)) return false;
  }
  return true;
}

/// The utility that they name, of two kinds one of unknown kind.
std::optional<Meaning> utility_among(const std::vector<Met>& met) {
  std::optional<Meaning> utility;
  for (const Met& one : met) {
    const Meaning meaning = one.row->meaning;
    if (!utility_kind(meaning)) continue;
    if (!utility || *utility == Meaning::unknown_utility)
      utility = meaning;
    else if (meaning != *utility && meaning != Meaning::unknown_utility)
      return Meaning::unknown_utility;  // judged as the strictest
  }
  return utility;
}

bool any_is(const std::vector<Met>& met, Meaning meaning) {
  return std::any_of(met.begin(), met.end(), [&](const Met& one) { return one.row->meaning == meaning; });
}

/// Without a utility: what the first says, if nothing speaks against it. `known`: no word of the name is unknown; else
/// it may be a service after all.
LayerReading harmless(const std::vector<Met>& met, bool known) {
  const MeaningRow& first = *met.front().row;
  const bool of_one =
      std::all_of(met.begin(), met.end(), [&](const Met& m) { return m.row->meaning == first.meaning; });
  if (any_is(met, Meaning::undecided) || !known) return {};
  // "contour text": whether its heights are those of the ground is not known.
  if (!of_one && any_is(met, Meaning::ground)) return {};
  return {first.meaning, first.on_ground};
}

std::optional<LayerReading> by_words(const std::vector<Met>& met, const LayerWords& words) {
  if (met.empty()) return std::nullopt;
  if (const auto utility = utility_among(met)) return LayerReading{*utility, false};
  return harmless(met, all_known(met, words));
}

LayerReading of_row(const MeaningRow& row) {
  return {row.meaning, row.on_ground};
}

std::optional<LayerReading> by_table(const LayerSummary& layer, const MeaningTable& table) {
  if (const MeaningRow* row = by_name(table, layer.name)) return of_row(*row);
  const LayerWords words(layer.name);
  if (layer.rasters > 0) {  // its name is that of the file, and says at most that it is another ground than today's
    const std::vector<Met> met = words_met(table, words);
    return any_is(met, Meaning::not_used) ? std::optional(LayerReading{Meaning::not_used, false}) : std::nullopt;
  }
  const bool others = layer.lines + layer.areas + layer.faces > 0;
  const MeaningRow* of_points = layer.points > 0 ? by_code(table, words, MatchBy::points) : nullptr;
  const MeaningRow* of_lines = others || layer.points == 0 ? by_code(table, words, MatchBy::lines) : nullptr;
  // A code of a layer that holds both must mean the same for both.
  if (layer.points == 0 || !others) {
    if (of_points || of_lines) return of_row(of_points ? *of_points : *of_lines);
  } else if (of_points && of_lines && of_points->meaning == of_lines->meaning) {
    return of_row(*of_points);
  }
  const std::vector<Met> standards = standards_met(table, words), met = words_met(table, words);
  if (const auto utility = utility_among(standards)) return LayerReading{*utility, false};
  if (standards.empty() || utility_among(met) || any_is(met, Meaning::undecided)) return by_words(met, words);
  std::vector<Met> both = standards;
  both.insert(both.end(), met.begin(), met.end());
  return harmless(standards, all_known(both, words, 1));
}

constexpr std::size_t few_faces = 4;

/// Faces that lie as ground does: none is steep, and together they are no larger than the rectangle around them.
class Lying {
 public:
  /// False: a wall.
  bool take(const Point3& a, const Point3& b, const Point3& c) {
    const double ux = b.x_m - a.x_m, uy = b.y_m - a.y_m, uz = b.z_m - a.z_m;
    const double wx = c.x_m - a.x_m, wy = c.y_m - a.y_m, wz = c.z_m - a.z_m;
    const double nx = uy * wz - uz * wy, ny = uz * wx - ux * wz, nz = ux * wy - uy * wx;
    const double whole = std::sqrt(nx * nx + ny * ny + nz * nz);
    constexpr double least_cosine = 0.3;  // steeper than 70 degrees is a wall
    if (whole > 0 && !(std::abs(nz) >= least_cosine * whole)) return false;
    area_ += std::abs(nz) / 2;
    for (const Point3& p : {a, b, c}) {
      box_.low_x = std::min(box_.low_x, p.x_m);
      box_.high_x = std::max(box_.high_x, p.x_m);
      box_.low_y = std::min(box_.low_y, p.y_m);
      box_.high_y = std::max(box_.high_y, p.y_m);
    }
    return true;
  }
  [[nodiscard]] bool nothing_doubled() const {
    return area_ <= 1.001 * (box_.high_x - box_.low_x) * (box_.high_y - box_.low_y);
  }

 private:
  double area_ = 0;
  PlanExtent box_{1e300, 1e300, -1e300, -1e300};
};

/// The only surface of its file, that nothing says is another ground than that of today. One of LandXML is a ground by
/// what that format calls a surface; of others faces may be those of a pipe.
bool is_only_ground(const Found& found) {
  if (found.surfaces.size() != 1) return false;
  if (found.format == "LandXML") return true;
  const FoundSurface& surface = found.surfaces.front();
  Lying lying;
  for (const auto& face : surface.faces)
    if (!lying.take(surface.points[face[0]], surface.points[face[1]], surface.points[face[2]])) return false;
  return surface.faces.size() >= few_faces && lying.nothing_doubled();
}

/// Faces of a drawing that lie beside each other as ground does, and no other layer holds faces.
bool is_only_terrain(const Found& found, const LayerSummary& layer) {
  constexpr std::size_t many_layers = 200;
  if (layer.facets < few_faces || layer.facets != layer.areas || layer.points + layer.lines > 0) return false;
  if (found.layers.size() > many_layers) return false;
  Lying lying;
  for (const FoundFeature& f : found.features) {
    if (f.shape != Shape::area) continue;
    if (found.layers[f.layer] != layer.name) return false;
    const FoundVertex* v = &found.vertices[f.first];
    const auto corner = [&](std::size_t k) { return Point3{v[k].x_m, v[k].y_m, *v[k].z_m}; };
    for (std::size_t k = 2; k < f.count; ++k)
      if (!lying.take(corner(0), corner(k - 1), corner(k))) return false;
  }
  return lying.nothing_doubled();
}

}  // namespace

LayerReading reading_of(const Found& found, const LayerSummary& layer, const MeaningTable& table) {
  if (const auto reading = by_table(layer, table)) return *reading;
  if (layer.rasters > 0) return {Meaning::ground, false};
  if (layer.faces > 0) return {is_only_ground(found) ? Meaning::ground : Meaning::undecided, false};
  if (is_only_terrain(found, layer)) return {Meaning::ground, false};
  // A list of points without a single code: heights of the ground, as they come from a grid or a scan.
  const bool bare = found.format == "survey points" && layer.name.empty() && found.layers.size() == 1;
  return {bare && layer.with_height > 0 ? Meaning::ground : Meaning::undecided, false};
}

Meaning meaning_of(const Found& found, const LayerSummary& layer, const MeaningTable& table) {
  return reading_of(found, layer, table).meaning;
}

}  // namespace burrow
