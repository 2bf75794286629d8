#pragma once
/// Reads the tables: the built-in ones, and a user's folder laid over them.

#include <string>

#include "burrow/base/result.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// The built-in tables (`resources/tables`, compiled in). A broken one is a bug.
/// Evidence: TablesFile.BuiltIn_*
Tables load_tables();
/// The same, to judge a crossing on that day.
Tables load_tables(const Date& judged_on);

/// The day by the clock and zone of this machine: the one place where anything asks the clock what to judge by.
Date today();

/// The built-in tables with a folder laid over them: a file of the same name ("soils.json") replaces the rows whose id
/// it repeats, whole, and adds the others at the end. A file that is not there changes nothing.
/// Errors: the folder is not there, a file cannot be read, or a row is wrong; the place is the file and a JSON pointer
/// ("soils.json/3/swell"). Nothing is half-loaded.   Evidence: TablesOverlay.*
Result<Tables> load_tables(const std::string& overlay_folder);

/// Lays one file's text over tables; `file_name` decides which table it is.   Errors: as above, and an unknown name.
Result<Tables> overlay_table(Tables tables, const std::string& file_name, const std::string& text);

}  // namespace burrow
