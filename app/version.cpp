#include "version.h"

#include "burrow_resources.h"

namespace burrow {

ProgramVersion program_version() {
  return {BURROW_VERSION, source_commit(), std::string(embedded_text("tables-digest"))};
}

std::string version_line() {
  const ProgramVersion program = program_version();
  return "burrowline " + program.version + ", commit " + (program.commit.empty() ? "not known" : program.commit) +
         ", tables " + program.tables;
}

}  // namespace burrow
