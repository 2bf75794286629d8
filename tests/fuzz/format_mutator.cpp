#include "format_mutator.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>

namespace burrow::test {

namespace {

std::size_t pick(std::mt19937& random, std::size_t below) {
  return random() % below;
}

template <class List>
auto& one_of(List& list, std::mt19937& random) {
  return list[pick(random, std::size(list))];
}

Json number_of(std::string token) {
  Json json;
  json.value = Json::Number{std::move(token), 0};
  return json;
}

constexpr std::array edges{
    "0",     "-0",     "1",      "-1",    "0.001",    "-0.001",  "0.0009", "1e-9",   "-1e-9",
    "2",     "3",      "0.5",    "0.1",   "100",      "-100",    "1000",   "10000",  "-10000",
    "1e5",   "1e6",    "-1e6",   "1e9",   "1e12",     "-1e12",   "1e15",   "1e100",  "1e308",
    "1e-12", "1e-100", "5e-324", "1e999", "1.570796", "3.14159", "-1.571", "273.15", "2147483648",
    "0.99",  "1.01",   "5",      "12",    "45",       "64",      "1e4",    "1e-5",   "9007199254740993"};

constexpr std::array odd_texts{"",           " ",          "x",          "\xC3\xA4\xE2\x82\xAC", "2026-02-30",
                               "2026-03-02", "9999-12-31", "0001-01-01", "/bore/launch",         "u1",
                               "null",       "\n"};

}  // namespace

FormatMutator::FormatMutator(const std::vector<std::string>& donors, std::vector<std::string> words)
    : words_(std::move(words)) {
  for (const std::string& donor : donors)
    if (const Result<Json> json = parse_json(donor)) learn(*json, "");
  for (const auto& [key, values] : values_) keys_.push_back(key);
  // An unordered map has no order to rely on: the same seed must give the same text.
  std::sort(keys_.begin(), keys_.end());
  std::sort(words_.begin(), words_.end());
  words_.erase(std::unique(words_.begin(), words_.end()), words_.end());
}

void FormatMutator::learn(const Json& json, const std::string& key) {
  constexpr std::size_t enough = 64;
  if (const std::string* text = json.text(); text && text->size() < 40) words_.push_back(*text);
  if (std::vector<Json>& values = values_[key]; values.size() < enough) values.push_back(json);
  if (const Json::Array* items = json.array())
    for (const Json& item : *items) learn(item, key);
  if (const Json::Object* members = json.object())
    for (const JsonMember& member : *members) {
      if (std::vector<JsonMember>& known = members_[key]; known.size() < 4 * enough) known.push_back(member);
      learn(member.value, member.key);
    }
}

void FormatMutator::collect(Json& json, std::string_view key, std::vector<Place>& places) {
  if (auto* items = std::get_if<Json::Array>(&json.value))
    for (std::size_t i = 0; i < items->size(); ++i) {
      places.push_back({&json, i, key});
      collect((*items)[i], key, places);
    }
  if (auto* members = std::get_if<Json::Object>(&json.value))
    for (std::size_t i = 0; i < members->size(); ++i) {
      places.push_back({&json, i, (*members)[i].key});
      collect((*members)[i].value, (*members)[i].key, places);
    }
}

Json& FormatMutator::at(const Place& place) {
  if (auto* items = std::get_if<Json::Array>(&place.parent->value)) return (*items)[place.index];
  return std::get<Json::Object>(place.parent->value)[place.index].value;
}

void FormatMutator::drop(const Place& place) {
  const auto n = static_cast<std::ptrdiff_t>(place.index);
  if (auto* items = std::get_if<Json::Array>(&place.parent->value))
    items->erase(items->begin() + n);
  else if (auto* members = std::get_if<Json::Object>(&place.parent->value))
    members->erase(members->begin() + n);
}

/// An element again at a random place, without its id, which may stand once only; a member is left alone.
void FormatMutator::duplicate(const Place& place, Random& random) {
  auto* items = std::get_if<Json::Array>(&place.parent->value);
  if (!items) return;
  Json copy = (*items)[place.index];
  if (auto* members = std::get_if<Json::Object>(&copy.value); members && pick(random, 4) > 0)
    std::erase_if(*members, [](const JsonMember& member) { return member.key == "id"; });
  items->insert(items->begin() + static_cast<std::ptrdiff_t>(pick(random, items->size() + 1)), std::move(copy));
}

void FormatMutator::rename(const Place& place, Random& random) const {
  auto* members = std::get_if<Json::Object>(&place.parent->value);
  if (!members || keys_.empty()) return;
  std::string& key = (*members)[place.index].key;
  if (pick(random, 3) == 0 && !key.empty())
    std::swap(key.front(), key.back());
  else
    key = one_of(keys_, random);
}

void FormatMutator::change_number(Json& json, const std::vector<Place>& all, Random& random) {
  const double value = std::get<Json::Number>(json.value).value;
  switch (pick(random, 4)) {
    case 0:
      json = number_of(one_of(edges, random));
      return;
    case 1: {
      static constexpr std::array factors{-1.0, 0.5, 2.0, 0.1, 10.0, 1.001, 0.999, 0.9, 1.1, 100.0};
      json = Json(value * one_of(factors, random));
      return;
    }
    case 2: {
      static constexpr std::array steps{0.001, -0.001, 0.1, -0.1, 1.0, -1.0, 0.01, -0.01, 5.0, -5.0};
      json = Json(value + one_of(steps, random));
      return;
    }
    default:
      break;
  }
  for (int i = 0; i < 8; ++i)  // another number of the text: things that meet
    if (const Json& other = at(one_of(all, random)); other.number()) {
      json = Json(other);
      return;
    }
}

void FormatMutator::change_text(Json& json, const std::vector<Place>& all, Random& random) const {
  switch (pick(random, 8)) {
    case 0:
      json = Json(one_of(odd_texts, random));
      return;
    case 1:
    case 2:
      for (int i = 0; i < 8; ++i)
        if (const Json& other = at(one_of(all, random)); other.text()) {
          json = Json(other);
          return;
        }
      return;
    default:
      if (!words_.empty()) json = Json(one_of(words_, random));
  }
}

void FormatMutator::change_value(const Place& place, const std::vector<Place>& all, Random& random) const {
  Json& json = at(place);
  if (pick(random, 16) == 0) {
    switch (pick(random, 5)) {
      case 0:
        json = Json();
        return;
      case 1:
        json = Json(pick(random, 2) == 0);
        return;
      case 2:
        json = Json(Json::Array());
        return;
      case 3:
        json = Json(Json::Object());
        return;
      default:
        json = number_of(one_of(edges, random));
        return;
    }
  }
  if (json.number()) return change_number(json, all, random);
  if (json.text()) return change_text(json, all, random);
  if (const bool* truth = json.boolean())
    json = Json(!*truth);
  else
    put_donor(place, random);
}

/// Elements of a list change places, or all turn round.
void FormatMutator::move(const Place& place, Random& random) {
  auto* items = std::get_if<Json::Array>(&place.parent->value);
  if (!items) return;
  if (pick(random, 4) == 0)
    std::reverse(items->begin(), items->end());
  else
    std::swap((*items)[place.index], one_of(*items, random));
}

void FormatMutator::put_donor(const Place& place, Random& random) const {
  if (const auto found = values_.find(std::string(place.key)); found != values_.end())
    at(place) = one_of(found->second, random);
}

void FormatMutator::add_member(Json& object, std::string_view key, Random& random) const {
  auto* members = std::get_if<Json::Object>(&object.value);
  const auto found = members_.find(std::string(key));
  if (!members || found == members_.end()) return;
  const JsonMember& member = one_of(found->second, random);
  const auto same = [&](const JsonMember& there) { return there.key == member.key; };
  if (const auto there = std::find_if(members->begin(), members->end(), same); there != members->end())
    there->value = member.value;
  else
    members->push_back(member);
}

void FormatMutator::change(Json& root, Random& random) const {
  std::vector<Place> all;
  collect(root, "", all);
  if (all.empty() || pick(random, 12) == 0) return add_member(root, "", random);
  const Place& place = one_of(all, random);
  switch (pick(random, 16)) {
    case 0:
    case 1:
      return drop(place);
    case 2:
      return duplicate(place, random);
    case 3:
      return rename(place, random);
    case 4:
      return move(place, random);
    case 5:
      return put_donor(place, random);
    case 6:
    case 7:
    case 8:
      return add_member(at(place), place.key, random);
    default:
      return change_value(place, all, random);
  }
}

std::string FormatMutator::mutate(std::string_view text, unsigned seed) const {
  Result<Json> json = parse_json(text);
  if (!json) return {};
  Random random(seed);
  for (auto n = 1 + pick(random, 4); n > 0; --n) change(*json, random);
  return compact_json(*json);
}

std::string FormatMutator::splice(std::string_view text, std::string_view other, unsigned seed) const {
  Result<Json> json = parse_json(text), donor = parse_json(other);
  if (!json || !donor) return {};
  Random random(seed);
  std::vector<Place> all, theirs;
  collect(*json, "", all);
  collect(*donor, "", theirs);
  if (all.empty() || theirs.empty()) return {};
  const Place& from = one_of(theirs, random);
  std::vector<Place> like;
  std::copy_if(all.begin(), all.end(), std::back_inserter(like), [&](const Place& p) { return p.key == from.key; });
  const Place& to = one_of(like.empty() ? all : like, random);
  at(to) = Json(at(from));
  return compact_json(*json);
}

}  // namespace burrow::test
