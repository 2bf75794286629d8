#include "burrow/tables/quality_level.h"

namespace burrow {

std::string_view quality_level_of(LocatedHow how) {
  switch (how) {
    case LocatedHow::exposed:
      return "pas128-a";
    case LocatedHow::traced_twice:
      return "pas128-b1";
    case LocatedHow::traced:
      return "pas128-b2";
    case LocatedHow::records:
      return "pas128-d";
    case LocatedHow::unknown:
      break;
  }
  return {};
}

}  // namespace burrow
