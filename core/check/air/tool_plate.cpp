#include "burrow/check/tool_plate.h"

#include <fmt/format.h>

#include "burrow/base/phrase.h"
#include "burrow/bore/tool.h"

namespace burrow {

Result<void> check_tool_plate(const ToolChoice& choice, const Tables& tables) {
  const Tool tool = resolve_tool(choice, tables);
  if (tool.striker_mass.kg < tool.mass.kg) return {};
  return fail("striker_mass_kg",
              phrase(translatable("a striker of {} kg in a tool of {} kg"), fmt::format("{:g}", tool.striker_mass.kg),
                     fmt::format("{:g}", tool.mass.kg)),
              translatable("a striker lighter than its tool; type both masses from the maker's plate"));
}

}  // namespace burrow
