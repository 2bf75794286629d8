#pragma once
/// What a person said of layers and attributes of earlier files, in two files of his own.

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "burrow/import/fields.h"
#include "burrow/import/meanings.h"

namespace burrow {

struct KeptChoices {
  MeaningTable meanings;
  std::vector<FieldShape> shapes;

  /// From the table of meanings and the file "attributes.json" beside it; what is not there is empty. Gives why one of
  /// them could not be read.
  std::optional<QString> read(const QString& table);
  /// Writes both; gives why not.
  [[nodiscard]] std::optional<QString> write(const QString& table) const;
};

}  // namespace burrow
