#include "burrow/file/differences.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

#include "json_tree.h"

namespace burrow {

namespace {

const Json* member(const Json::Object& object, std::string_view key) {
  const auto it = std::find_if(object.begin(), object.end(), [&](const JsonMember& m) { return m.key == key; });
  return it == object.end() ? nullptr : &it->value;
}

const std::string* id_of(const Json& json) {
  const Json* id = json.object() ? member(*json.object(), "id") : nullptr;
  return id ? id->text() : nullptr;
}

/// Things are told apart by their id, not by their place in the list: one that is new moves all behind it.
Json::Object by_name(const Json::Array& items) {
  Json::Object named;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::string* id = id_of(items[i]);
    named.push_back({id ? *id : std::to_string(i + 1), items[i]});
  }
  return named;
}

/// Nobody reads the last digits of a binary fraction, unless they are all that differs.
std::string short_number(const Json& json) {
  std::array<char, 32> text{};
  constexpr int digits = 9;
  const auto [end, bad] =
      std::to_chars(text.data(), text.data() + text.size(), json.number()->value, std::chars_format::general, digits);
  return bad == std::errc() ? std::string(text.data(), end) : json.number()->token;
}

std::pair<std::string, std::string> shown_both(const Json* one, const Json* other) {
  if (one && other && one->number() && other->number() && short_number(*one) != short_number(*other))
    return {short_number(*one), short_number(*other)};
  return {one ? shown_json(*one) : "", other ? shown_json(*other) : ""};
}

class Walk {
 public:
  std::vector<Difference> all;

  void compare(const std::string& where, const Json* one, const Json* other) {
    if (one && other && one->object() && other->object()) return members(where, *one->object(), *other->object());
    if (one && other && one->array() && other->array() && (has_objects(*one) || has_objects(*other)))
      return members(where, by_name(*one->array()), by_name(*other->array()));
    if (one && other && compact_json(*one) == compact_json(*other)) return;
    if (!one && !other) return;
    auto [first, second] = shown_both(one, other);
    all.push_back({where, std::move(first), std::move(second)});
  }

 private:
  static bool has_objects(const Json& array) {
    return std::any_of(array.array()->begin(), array.array()->end(), [](const Json& item) { return item.object(); });
  }

  void members(const std::string& where, const Json::Object& one, const Json::Object& other) {
    const std::string before = where.empty() ? "" : where + '/';
    for (const JsonMember& m : one) compare(before + m.key, &m.value, member(other, m.key));
    for (const JsonMember& m : other)
      if (!member(one, m.key)) compare(before + m.key, nullptr, &m.value);
  }
};

}  // namespace

Result<std::vector<Difference>> differences(std::string_view one, std::string_view other) {
  const Result<Json> first = parse_json(one);
  if (!first) return tl::unexpected(first.error());
  const Result<Json> second = parse_json(other);
  if (!second) return tl::unexpected(second.error());
  Walk walk;
  walk.compare("", &*first, &*second);
  return std::move(walk.all);
}

}  // namespace burrow
