#pragma once
/// What the words of `burrowline import` say about files, layers and attributes.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/import/into_crossing.h"
#include "options.h"

namespace burrow {

std::vector<std::string> split_words(std::string_view text, char at);

/// X1,Y1,X2,Y2; empty: not said.
Result<std::optional<CrossingLine>> import_line_of(const Options& options);

/// The built-in meanings under those of "--meanings FILE".
Result<MeaningTable> import_meanings(const Options& options);

/// Laid over what the table and the files say.
class ImportChoices {
 public:
  static Result<ImportChoices> read(const Options& options);

  /// Error: a coordinate system that PROJ does not know, an attribute word that is wrong.
  Result<ImportFile> apply(ImportFile file) const;

  /// What is said of a file or a column that is none of these: nothing said may be lost. Empty: all was of use.
  [[nodiscard]] std::optional<Error> of_no_use(const std::vector<ImportFile>& files) const;
  /// Patterns of layers that fit none.
  [[nodiscard]] std::vector<std::string> idle_patterns(const std::vector<ImportFile>& files) const;
  /// Of the plan.
  [[nodiscard]] const std::optional<FileUnit>& unit() const { return unit_; }

 private:
  Result<void> read_pairs(const Options& options);
  [[nodiscard]] std::string crs_for(const ImportFile& file) const;

  std::optional<FileUnit> unit_, height_unit_;
  std::optional<DepthFrom> from_;
  std::optional<LevelMeant> level_;
  std::vector<std::pair<std::string, std::string>> meanings_, diameters_, systems_;
  std::vector<std::string> join_, fields_;
};

}  // namespace burrow
