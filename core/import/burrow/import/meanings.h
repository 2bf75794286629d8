#pragma once
/// What the layers and codes of foreign files mean: a table that is read from resources, laid over by what a person
/// chose before, and that learns from each choice.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/base/source.h"
#include "burrow/import/found.h"

namespace burrow {

enum class Meaning {
  ground,
  gas,
  power,
  water,
  sewer,
  telecom,
  reclaimed,
  steam,
  unknown_utility,
  road_edge,
  building,
  boundary,
  background,
  not_used,
  oil
};
template <>
struct EnumNames<Meaning> {
  static constexpr std::pair<Meaning, std::string_view> list[] = {
      {Meaning::ground, "ground"},         {Meaning::gas, "gas"},           {Meaning::power, "power"},
      {Meaning::water, "water"},           {Meaning::sewer, "sewer"},       {Meaning::telecom, "telecom"},
      {Meaning::reclaimed, "reclaimed"},   {Meaning::steam, "steam"},       {Meaning::unknown_utility, "utility"},
      {Meaning::road_edge, "road-edge"},   {Meaning::building, "building"}, {Meaning::boundary, "boundary"},
      {Meaning::background, "background"}, {Meaning::not_used, "not-used"}, {Meaning::oil, "oil"}};
};

/// The kind of utility, if the meaning is one.
std::optional<UtilityKind> utility_kind(Meaning meaning);

struct MeaningRow {
  std::string match;  ///< a layer or code; "*" stands for any text; capitals do not matter
  Meaning meaning = Meaning::background;
  Source source;
  bool operator==(const MeaningRow&) const = default;
};
/// The first row that fits counts.
using MeaningTable = std::vector<MeaningRow>;

/// `resources/tables/layer_meanings.json`, compiled in.   Evidence: Meanings.BuiltIn_*
MeaningTable built_in_meanings();

/// The rows of a person's own file (JSON, the same shape; `source` may be absent there).
/// Errors: with the JSON pointer of what is wrong.   Evidence: Meanings.OwnFile_*
Result<MeaningTable> read_meanings(std::string_view json_text);
std::string write_meanings(const MeaningTable& rows);

/// Own rows before the built-in ones.
MeaningTable joined(const MeaningTable& own, const MeaningTable& built_in);

/// The own rows with this choice as the first; an older row for the same name goes. Nothing is added where the table
/// as it stands says the same.   Evidence: Meanings.Learns_*
MeaningTable learned(MeaningTable own, const MeaningTable& built_in, const std::string& layer, Meaning meaning);

bool fits(std::string_view match, std::string_view name);

/// By the table, else by what the layer holds: surfaces, grids and survey points with height are ground, all else is
/// background.
Meaning meaning_of(const Found& found, const LayerSummary& layer, const MeaningTable& table);

}  // namespace burrow
