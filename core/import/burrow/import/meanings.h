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
  oil,
  undecided  ///< nobody said it yet: asked, and never taken for something harmless
};
template <>
struct EnumNames<Meaning> {
  static constexpr std::pair<Meaning, std::string_view> list[] = {
      {Meaning::ground, "ground"},         {Meaning::gas, "gas"},           {Meaning::power, "power"},
      {Meaning::water, "water"},           {Meaning::sewer, "sewer"},       {Meaning::telecom, "telecom"},
      {Meaning::reclaimed, "reclaimed"},   {Meaning::steam, "steam"},       {Meaning::unknown_utility, "utility"},
      {Meaning::road_edge, "road-edge"},   {Meaning::building, "building"}, {Meaning::boundary, "boundary"},
      {Meaning::background, "background"}, {Meaning::not_used, "not-used"}, {Meaning::oil, "oil"},
      {Meaning::undecided, "ask"}};
};

/// The kind of utility, if the meaning is one.
std::optional<UtilityKind> utility_kind(Meaning meaning);

/// How a row is held against a name.
enum class MatchBy {
  name,      ///< the whole name; "*" stands for any text
  anywhere,  ///< whole words of it: "C-SSWR", "GasMain" and "GAS1" hold the words c, sswr, gas, main; the longest
             ///< counts
  standard,  ///< whole words after the one or two letters of a discipline
  points,    ///< all of it but its figures, of a layer that holds points alone: the code of a survey
  lines      ///< likewise of a layer without points
};
template <>
struct EnumNames<MatchBy> {
  static constexpr std::pair<MatchBy, std::string_view> list[] = {{MatchBy::name, "match"},
                                                                  {MatchBy::anywhere, "anywhere"},
                                                                  {MatchBy::standard, "standard"},
                                                                  {MatchBy::points, "points"},
                                                                  {MatchBy::lines, "lines"}};
};

struct MeaningRow {
  std::string match;  ///< capitals and umlauts do not matter
  Meaning meaning = Meaning::background;
  Source source;
  MatchBy by = MatchBy::name;
  bool on_ground = false;  ///< its points lie on the ground, though it means something else
  bool operator==(const MeaningRow&) const = default;
};
/// Of rows by the whole name the first that fits counts.
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

/// What a layer means, and whether its points lie on the ground.
struct LayerReading {
  Meaning meaning = Meaning::undecided;
  bool on_ground = false;
  bool operator==(const LayerReading&) const = default;
};

/// By the table: a row by the whole name, else a code, else the words after the letters of a discipline, else words. Of
/// words that lie over each other the longest counts; words of two kinds of utility beside each other make one of
/// unknown kind, a utility counts before all else, what is to be asked before the ground. What is no utility is taken
/// for that only where no word of the name is unknown. Without a word: the only surface of a LandXML file, or one that
/// lies as ground does, a grid and the points of a file without any code are ground; all else is asked. Source: our
/// default.   Evidence: LayerNames.*, PointCodes.*
LayerReading reading_of(const Found& found, const LayerSummary& layer, const MeaningTable& table);

/// Its meaning alone.
Meaning meaning_of(const Found& found, const LayerSummary& layer, const MeaningTable& table);

}  // namespace burrow
