#pragma once
/// Rows of the pipe tables: materials with their law, series of sizes.

#include "burrow/tables/tables.h"
#include "table_row.h"

namespace burrow::table_file {

void read(Row& row, PipeMaterial& pipe);
void read(Row& row, PipeSeries& series);

}  // namespace burrow::table_file
