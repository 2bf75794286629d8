#pragma once
/// Changes a text of one of our formats as a text that stays JSON: it knows the keys, the words and the values that
/// stand under a key elsewhere. What is left is nearly always read, so that what lies behind the reader is tried too.

#include <random>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "json_tree.h"

namespace burrow::test {

class FormatMutator {
 public:
  /// `donors`: texts whose members may be taken over; `words`: those of the format, beside the donors' own.
  FormatMutator(const std::vector<std::string>& donors, std::vector<std::string> words);

  /// One to four changes; the same seed gives the same text. Empty where the text is not JSON.
  [[nodiscard]] std::string mutate(std::string_view text, unsigned seed) const;
  /// `text` with a member or an element of `other`, of the same key where there is one. Empty where one is not JSON.
  [[nodiscard]] std::string splice(std::string_view text, std::string_view other, unsigned seed) const;

 private:
  /// A value below the root: the `index`th of its parent; `key`: its own, in a list that of the list, as it stands
  /// there.
  struct Place {
    Json* parent;
    std::size_t index;
    std::string_view key;
  };
  using Random = std::mt19937;

  static void collect(Json& json, std::string_view key, std::vector<Place>& places);
  static Json& at(const Place& place);
  void learn(const Json& json, const std::string& key);
  void change(Json& root, Random& random) const;
  static void drop(const Place& place);
  static void duplicate(const Place& place, Random& random);
  void rename(const Place& place, Random& random) const;
  void change_value(const Place& place, const std::vector<Place>& all, Random& random) const;
  static void change_number(Json& json, const std::vector<Place>& all, Random& random);
  void change_text(Json& json, const std::vector<Place>& all, Random& random) const;
  static void move(const Place& place, Random& random);
  void put_donor(const Place& place, Random& random) const;
  void add_member(Json& object, std::string_view key, Random& random) const;

  std::vector<std::string> words_, keys_;
  std::unordered_map<std::string, std::vector<Json>> values_;         ///< by key
  std::unordered_map<std::string, std::vector<JsonMember>> members_;  ///< of objects under a key
};

}  // namespace burrow::test
