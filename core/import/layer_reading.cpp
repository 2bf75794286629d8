/// What a layer means, by the words of its name and by what it holds.

#include <algorithm>
#include <cmath>

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

/// After the letters of a discipline; a word that says no more than "utility" lets the next one speak.
const MeaningRow* by_standard(const MeaningTable& table, const LayerWords& words) {
  constexpr std::size_t most_letters = 2;
  const auto& pieces = words.pieces();
  if (pieces.size() < 2 || pieces[0].text.size() > most_letters || pieces[0].is_number() || pieces[1].soft_before)
    return nullptr;
  const MeaningRow* general = nullptr;
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const auto it = std::find_if(table.begin(), table.end(), [&](const MeaningRow& row) {
      return row.by == MatchBy::standard && words.at(i, row.match);
    });
    if (it == table.end()) break;
    if (it->meaning != Meaning::unknown_utility) return general && !utility_kind(it->meaning) ? general : &*it;
    general = &*it;
  }
  return general;
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

/// Whether every word of the name, figures aside, is one that was met.
bool all_known(const std::vector<Met>& met, const LayerWords& words) {
  for (std::size_t i = 0; i < words.pieces().size(); ++i) {
    const auto holds = [i](const Met& m) { return m.place.from <= i && i < m.place.to; };
    if (!words.pieces()[i].is_number() && !std::any_of(met.begin(), met.end(), holds)) return false;
  }
  return true;
}

/// `strict`: of single points, which are ground only where no word of their code is unknown.
std::optional<LayerReading> by_words(const std::vector<Met>& met, const LayerWords& words, bool strict) {
  if (met.empty()) return std::nullopt;
  std::optional<Meaning> utility;
  for (const Met& one : met) {
    const Meaning meaning = one.row->meaning;
    if (!utility_kind(meaning)) continue;
    if (!utility || *utility == Meaning::unknown_utility) {
      utility = meaning;
    } else if (meaning != *utility && meaning != Meaning::unknown_utility) {
      return LayerReading{Meaning::unknown_utility, false};  // of two kinds: judged as the strictest
    }
  }
  if (utility) return LayerReading{*utility, false};
  const auto is = [&](Meaning meaning) {
    return std::any_of(met.begin(), met.end(), [&](const Met& one) { return one.row->meaning == meaning; });
  };
  if (is(Meaning::undecided)) return LayerReading{};
  const MeaningRow& first = *met.front().row;
  const bool of_one =
      std::all_of(met.begin(), met.end(), [&](const Met& m) { return m.row->meaning == first.meaning; });
  // "contour text": whether its heights are those of the ground is not known.
  if (first.meaning == Meaning::ground && (!of_one || (strict && !all_known(met, words)))) return LayerReading{};
  return LayerReading{first.meaning, first.on_ground && all_known(met, words)};
}

LayerReading of_row(const MeaningRow& row) {
  return {row.meaning, row.on_ground};
}

std::optional<LayerReading> by_table(const LayerSummary& layer, const MeaningTable& table) {
  if (const MeaningRow* row = by_name(table, layer.name)) return of_row(*row);
  const LayerWords words(layer.name);
  if (layer.rasters > 0) {  // its name is that of the file, and says at most that it is another ground than today's
    const auto reading = by_words(words_met(table, words), words, false);
    return reading && reading->meaning == Meaning::not_used ? reading : std::nullopt;
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
  const MeaningRow* standard = by_standard(table, words);
  if (standard && utility_kind(standard->meaning)) return of_row(*standard);
  const auto reading = by_words(words_met(table, words), words, layer.points > 0 && !others);
  if (standard && !(reading && utility_kind(reading->meaning))) return of_row(*standard);
  return reading;
}

/// A surface that nothing says is another ground than that of today, and the only one of its file.
bool is_only_surface(const Found& found) {
  return found.surfaces.size() == 1;
}

/// Faces of a drawing that lie beside each other as ground does: none is steep, and together they are no larger than
/// the rectangle around them; and no other layer holds faces.
bool is_only_terrain(const Found& found, const LayerSummary& layer) {
  constexpr std::size_t few = 4, many_layers = 200;
  if (layer.facets < few || layer.facets != layer.areas || layer.points + layer.lines > 0) return false;
  if (found.layers.size() > many_layers) return false;
  double area = 0;
  PlanExtent box{1e300, 1e300, -1e300, -1e300};
  for (const FoundFeature& f : found.features) {
    if (f.shape != Shape::area) continue;
    if (found.layers[f.layer] != layer.name) return false;
    const FoundVertex* v = &found.vertices[f.first];
    for (std::size_t k = 2; k < f.count; ++k) {
      const double ux = v[k - 1].x_m - v[0].x_m, uy = v[k - 1].y_m - v[0].y_m, uz = *v[k - 1].z_m - *v[0].z_m;
      const double wx = v[k].x_m - v[0].x_m, wy = v[k].y_m - v[0].y_m, wz = *v[k].z_m - *v[0].z_m;
      const double nx = uy * wz - uz * wy, ny = uz * wx - ux * wz, nz = ux * wy - uy * wx;
      const double whole = std::sqrt(nx * nx + ny * ny + nz * nz);
      constexpr double least_cosine = 0.3;  // steeper than 70 degrees is a wall
      if (whole > 0 && !(std::abs(nz) >= least_cosine * whole)) return false;
      area += std::abs(nz) / 2;
    }
    for (std::size_t k = 0; k < f.count; ++k) {
      box.low_x = std::min(box.low_x, v[k].x_m);
      box.high_x = std::max(box.high_x, v[k].x_m);
      box.low_y = std::min(box.low_y, v[k].y_m);
      box.high_y = std::max(box.high_y, v[k].y_m);
    }
  }
  return area <= 1.001 * (box.high_x - box.low_x) * (box.high_y - box.low_y);
}

}  // namespace

LayerReading reading_of(const Found& found, const LayerSummary& layer, const MeaningTable& table) {
  if (const auto reading = by_table(layer, table)) return *reading;
  if (layer.rasters > 0) return {Meaning::ground, false};
  if (layer.faces > 0) return {is_only_surface(found) ? Meaning::ground : Meaning::undecided, false};
  if (is_only_terrain(found, layer)) return {Meaning::ground, false};
  // A list of points without a single code: heights of the ground, as they come from a grid or a scan.
  const bool bare = found.format == "survey points" && layer.name.empty() && found.layers.size() == 1;
  return {bare && layer.with_height > 0 ? Meaning::ground : Meaning::undecided, false};
}

Meaning meaning_of(const Found& found, const LayerSummary& layer, const MeaningTable& table) {
  return reading_of(found, layer, table).meaning;
}

}  // namespace burrow
