#include "burrow/import/fields.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <set>

#include "burrow/language/say.h"
#include "csv_fields.h"
#include "layer_words.h"

namespace burrow {

namespace {

struct NameRow {
  FieldUse use;
  std::vector<std::string_view> phrases;
};

const std::vector<NameRow>& name_rows() {
  static const std::vector<NameRow> rows{
      {FieldUse::invert_start,
       {"upstream invert", "us invert",        "up invert",     "invert up",    "invert us", "us il",
        "us inv",          "inv us",           "inv up",        "upinvert",     "upinv",     "upelev",
        "upstreami",       "from invert",      "start invert",  "invert start", "invert in", "sohle oben",
        "sohle anfang",    "sohlhoehe anfang", "sohlhoehe oben"}},
      {FieldUse::invert_end, {"downstream invert", "ds invert",   "down invert", "invert down",
                              "invert ds",         "ds il",       "ds inv",      "inv ds",
                              "inv down",          "downinvert",  "dninv",       "downelev",
                              "downstreami",       "to invert",   "end invert",  "invert end",
                              "invert out",        "sohle unten", "sohle ende",  "sohlhoehe ende",
                              "sohlhoehe unten"}},
      {FieldUse::diameter,
       {"diameter",
        "diam",
        "dia",
        "pipe size",
        "pipesize",
        "main size",
        "mainsize",
        "nominal size",
        "nominal diameter",
        "nennweite",
        "durchmesser",
        "nom dia",
        "pipe dia",
        "pipe diameter",
        "outside diameter",
        "inside diameter",
        "internal diameter",
        "external diameter",
        "dn",
        "od",
        "size",
        "bore",
        "caliber",
        "profilhoehe"}},
      {FieldUse::material,
       {"material", "mat", "pipe material", "pipematerial", "matl", "werkstoff", "mtrl", "rohrmaterial"}},
      {FieldUse::depth,
       {"depth", "cover", "burial depth", "depth of cover", "tiefe", "ueberdeckung", "verlegetiefe", "deckung",
        "bury depth"}},
      {FieldUse::elevation, {"elevation", "elev", "invert", "crown elevation", "hoehe", "height", "z", "altitude"}},
      {FieldUse::status,
       {"status", "lifecycle status", "lifecyclestatus", "life cycle", "zustand", "betriebszustand",
        "condition status"}},
      {FieldUse::owner,
       {"owner", "owned by", "ownedby", "operator", "eigentuemer", "betreiber", "utility owner", "maintained by"}},
      {FieldUse::date,
       {"date", "install date", "installdate", "year", "install year", "installyear", "baujahr", "year built",
        "instdate", "einbaujahr", "datum", "built"}},
      {FieldUse::name,
       {"name", "facility id", "facilityid", "asset id", "assetid", "label", "bezeichnung", "ref", "reference"}}};
  return rows;
}

FieldUse use_by_name(const LayerWords& words) {
  FieldUse use = FieldUse::not_used;
  std::size_t longest = 0;
  for (const NameRow& row : name_rows())
    for (const std::string_view phrase : row.phrases)
      if (phrase.size() > longest && words.find(phrase)) {
        use = row.use;
        longest = phrase.size();
      }
  return use;
}

bool is_length(FieldUse use) {
  return use == FieldUse::diameter || use == FieldUse::depth || use == FieldUse::elevation ||
         use == FieldUse::invert_start || use == FieldUse::invert_end;
}

/// "in" may also be where a pipe comes in.
std::optional<FileUnit> unit_by_name(const LayerWords& words, FieldUse use) {
  const auto says = [&](std::initializer_list<std::string_view> list) {
    return std::any_of(list.begin(), list.end(), [&](std::string_view word) { return words.find(word).has_value(); });
  };
  if (says({"mm", "millimetre", "millimeter"})) return FileUnit::millimetre;
  if (says({"cm", "centimetre", "centimeter"})) return FileUnit::centimetre;
  if (says({"inch", "inches", "zoll"}) || (use == FieldUse::diameter && says({"in"}))) return FileUnit::inch;
  if (says({"usft"})) return FileUnit::us_survey_foot;
  if (says({"ft", "feet", "foot"})) return FileUnit::foot;
  if (says({"m", "metre", "meter"})) return FileUnit::metre;
  return std::nullopt;
}

/// Inches are small whole numbers, millimetres large ones; between them nothing is guessed.
std::optional<FileUnit> diameter_unit_by_values(const std::vector<double>& values) {
  if (values.empty()) return std::nullopt;
  static const std::set<double> inches{0.5, 0.75, 1,  1.25, 1.5, 2,  2.5, 3,  4,  6, 8,
                                       10,  12,   14, 15,   16,  18, 20,  24, 30, 36};
  const double least = *std::min_element(values.begin(), values.end());
  const double most = *std::max_element(values.begin(), values.end());
  if (std::all_of(values.begin(), values.end(), [&](double v) { return inches.contains(v); }) && most <= 36)
    return FileUnit::inch;
  if (least >= 40) return FileUnit::millimetre;
  if (most < 3 && least > 0.01) return FileUnit::metre;
  return std::nullopt;
}

std::vector<double> values_of(const FoundTable& table, std::size_t field) {
  constexpr std::size_t enough = 2000;
  std::vector<double> values;
  const std::size_t wide = table.fields.size();
  for (std::size_t i = 0; i < table.cells.size() / wide && values.size() < enough; ++i)
    if (const auto number = number_in_cell(table.text(i, field)); number && number->value > 0)
      values.push_back(number->value);
  return values;
}

FieldChoice guessed(const FoundTable& table, std::size_t field) {
  const LayerWords words(table.fields[field].name);
  FieldChoice choice;
  choice.use = use_by_name(words);
  if (!is_length(choice.use)) {
    choice.is_decided = choice.use != FieldUse::not_used;
    return choice;
  }
  choice.unit = unit_by_name(words, choice.use);
  choice.is_decided = choice.unit.has_value();
  if (choice.use == FieldUse::diameter) {
    if (words.find("outside") || words.find("od") || words.find("external") || words.find("aussen"))
      choice.diameter = DiameterMeant::outside;
    if (words.find("inside") || words.find("internal") || words.find("innen")) choice.diameter = DiameterMeant::inside;
    if (!choice.unit) choice.unit = diameter_unit_by_values(values_of(table, field));
    return choice;
  }
  if (words.find("crown") || words.find("cover") || words.find("ueberdeckung") || words.find("deckung"))
    choice.level = LevelMeant::crown;
  if (words.find("invert") || choice.use == FieldUse::invert_start || choice.use == FieldUse::invert_end)
    choice.level = LevelMeant::invert;
  return choice;
}

}  // namespace

std::optional<CellNumber> number_in_cell(std::string_view text) {
  std::string plain = csv::lower(text);
  if (const auto comma = plain.find(','); comma != std::string::npos && plain.find('.') == std::string::npos &&
                                          plain.find(',', comma + 1) == std::string::npos)
    plain[comma] = '.';
  std::size_t from = plain.find_first_of("0123456789.-");
  if (from == std::string::npos) return std::nullopt;
  // What may stand before it: "DN 100", "ø 63", and no other number or word that changes it.
  std::string before = plain.substr(0, from);
  before.erase(std::remove(before.begin(), before.end(), ' '), before.end());
  if (!(before.empty() || before == "dn" || before == "od" || before == "d" || before == "da" || before == "ø" ||
        before == "Ø" || before == "id" || before == "di"))
    return std::nullopt;
  CellNumber number;
  const char* end = plain.data() + plain.size();
  const auto [stop, error] = std::from_chars(plain.data() + from, end, number.value);
  if (error != std::errc() || !std::isfinite(number.value)) return std::nullopt;
  std::string after(stop, end);
  after.erase(std::remove(after.begin(), after.end(), ' '), after.end());
  static const std::array<std::pair<std::string_view, FileUnit>, 16> units{{{"mm", FileUnit::millimetre},
                                                                            {"cm", FileUnit::centimetre},
                                                                            {"m", FileUnit::metre},
                                                                            {"in", FileUnit::inch},
                                                                            {"in.", FileUnit::inch},
                                                                            {"inch", FileUnit::inch},
                                                                            {"inches", FileUnit::inch},
                                                                            {"\"", FileUnit::inch},
                                                                            {"''", FileUnit::inch},
                                                                            {"zoll", FileUnit::inch},
                                                                            {"ft", FileUnit::foot},
                                                                            {"feet", FileUnit::foot},
                                                                            {"'", FileUnit::foot},
                                                                            {"us-ft", FileUnit::us_survey_foot},
                                                                            {"m.", FileUnit::metre},
                                                                            {"meter", FileUnit::metre}}};
  const auto it = std::find_if(units.begin(), units.end(), [&](const auto& u) { return u.first == after; });
  if (it != units.end()) number.unit = it->second;
  if (it == units.end() && !after.empty()) return std::nullopt;
  return number;
}

std::vector<FieldChoice> guessed_fields(const FoundTable& table) {
  std::vector<FieldChoice> choices;
  for (std::size_t i = 0; i < table.fields.size(); ++i) {
    choices.push_back(guessed(table, i));
    // Two columns for one thing: the first counts, the other is shown.
    const auto same = [&](const FieldChoice& c) { return c.use == choices.back().use; };
    if (choices.back().use != FieldUse::not_used && std::any_of(choices.begin(), choices.end() - 1, same))
      choices.back() = {};
  }
  return choices;
}

Result<std::vector<FieldChoice>> with_fields(const FoundTable& table, std::vector<FieldChoice> choices,
                                             const std::vector<std::string>& words) {
  choices.resize(table.fields.size());
  for (const std::string& word : words) {
    const auto wrong = [&](std::string expected) { return fail("--field", word, std::move(expected)); };
    const std::size_t is = word.find('=');
    if (is == std::string::npos) return wrong("USE=COLUMN:UNIT:MEANT, \"diameter=DIAMETER:mm\"");
    const auto use = from_word<FieldUse>(word.substr(0, is));
    if (!use) return wrong(known_words<FieldUse>());
    std::vector<std::string> parts;
    for (std::size_t at = is + 1; at <= word.size();) {
      const std::size_t end = std::min(word.find(':', at), word.size());
      parts.push_back(word.substr(at, end - at));
      at = end + 1;
    }
    const auto column = std::find_if(table.fields.begin(), table.fields.end(), [&](const FoundField& f) {
      return csv::lower(f.name) == csv::lower(parts.front());
    });
    if (column == table.fields.end()) continue;  // of another file
    FieldChoice choice;
    choice.use = *use;
    choice.is_decided = true;
    for (std::size_t i = 1; i < parts.size(); ++i) {
      if (const auto unit = from_word<FileUnit>(parts[i])) {
        choice.unit = unit;
      } else if (const auto diameter = from_word<DiameterMeant>(parts[i])) {
        choice.diameter = diameter;
      } else if (const auto level = from_word<LevelMeant>(parts[i])) {
        choice.level = level;
      } else {
        return wrong(known_words<FileUnit>() + ", " + known_words<DiameterMeant>() + ", " + known_words<LevelMeant>());
      }
    }
    if (is_length(choice.use) && !choice.unit) return wrong("its unit: " + known_words<FileUnit>());
    for (FieldChoice& other : choices)
      if (other.use == choice.use) other = {};
    choices[static_cast<std::size_t>(column - table.fields.begin())] = choice;
  }
  return choices;
}

std::optional<UtilityStatus> status_in(std::string_view text) {
  const LayerWords words(text);
  const auto says = [&](std::initializer_list<std::string_view> list) {
    return std::any_of(list.begin(), list.end(), [&](std::string_view word) { return words.find(word).has_value(); });
  };
  // What is said to be no longer in use, and not the reverse, is so.
  if (says({"not abandoned", "nicht stillgelegt", "unknown", "unbekannt", "reactivated"})) return std::nullopt;
  const bool off = says({"abandoned", "aban", "abn", "retired", "removed", "disused", "out of service", "dead",
                         "inactive", "stillgelegt", "ausser betrieb", "tot", "aufgelassen", "decommissioned"});
  const bool planned = says({"proposed", "planned", "design", "future", "geplant", "planung"});
  const bool on = says({"live", "active", "in service", "in use", "existing", "in betrieb", "bestand", "aktiv",
                        "operational", "energized"});
  if (off + planned + on != 1) return std::nullopt;
  return off ? UtilityStatus::abandoned : planned ? UtilityStatus::proposed : UtilityStatus::live;
}

}  // namespace burrow
