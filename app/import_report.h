#pragma once
/// What `burrowline import` says: for people on the error stream, or as one JSON object.

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include "burrow/import/into_crossing.h"

namespace burrow {

void say_found(const ImportFile& file, const std::optional<CrossingLine>& line, std::ostream& err);
void say_imported(const Imported& imported, std::ostream& err);

/// {"format":"burrowline-import","version":1,"files":[…],"crossing":{…},"asked":[…],"left_out":[…]}
std::string import_json(const std::vector<ImportFile>& files, const CrossingLine& line, const Imported& imported,
                        const std::string& written);
std::string import_error_json(const Error& error);

/// Something that could matter was left out, or nobody decided what it is.
bool lost_something(const std::vector<ImportFile>& files, const Imported& imported);

}  // namespace burrow
