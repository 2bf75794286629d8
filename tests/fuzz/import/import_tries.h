#pragma once
/// What is tried with hostile texts of foreign files, as far as the program's own code reads them: survey points,
/// LandXML, what a drawing says about itself, and what the attributes of a map are made to mean. Used by the
/// coverage-guided fuzzers, by the seeded runs and by the replay of what was kept.

#include <random>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "fuzz/tries.h"

namespace burrow::test {

/// survey: read, and read again in the order that was told. landxml. dxf: units, blocks, radii. fields: a GeoJSON text
/// whose properties are guessed, used in a crossing and written. What was read must be what the program believes of
/// its reading process, and a crossing made of it must be one that can be opened.
std::span<const Try> import_tries();
const Try& import_try_of(std::string_view name);
long import_accepted();

/// The texts to start from: small ones of each kind, and those kept beside this file.
std::vector<std::string> import_seeds_of(const Try& one);

/// Changes a text by its lines and by the words and numbers in them; the same seed gives the same text.
class LineMutator {
 public:
  explicit LineMutator(std::vector<std::string> donors) : donors_(std::move(donors)) {}
  [[nodiscard]] std::string mutate(std::string_view text, unsigned seed) const;

 private:
  using Random = std::mt19937;
  void change(std::vector<std::string>& lines, Random& random) const;
  void change_within(std::string& line, Random& random) const;
  std::vector<std::string> donors_;
};

}  // namespace burrow::test
