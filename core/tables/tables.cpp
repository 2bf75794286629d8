#include "burrow/tables/tables.h"

#include <algorithm>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {
template <class Row>
const Row* find_by_id(const std::vector<Row>& rows, std::string_view id) {
  const auto it = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.id == id; });
  return it == rows.end() ? nullptr : &*it;
}
}  // namespace

const SoilClass* find_soil(const Tables& tables, std::string_view id) {
  return find_by_id(tables.soils, id);
}
const ToolClass* find_tool(const Tables& tables, std::string_view id) {
  return find_by_id(tables.tools, id);
}
const PipeMaterial* find_pipe(const Tables& tables, std::string_view id) {
  return find_by_id(tables.pipes, id);
}
const LimitRow* find_limit(const Tables& tables, std::string_view id) {
  return find_by_id(tables.limits, id);
}
const SurfaceRule* find_rule(const Tables& tables, std::string_view id) {
  return find_by_id(tables.surface_rules, id);
}
const EarthworkRow* find_earthwork(const Tables& tables, std::string_view id) {
  return find_by_id(tables.earthwork, id);
}
const DutyRow* find_duty(const ExcavationRuleSet& rules, std::string_view id) {
  return find_by_id(rules.duties, id);
}

const UtilityKindRow& row_of(const Tables& tables, UtilityKind kind) {
  for (const UtilityKindRow& row : tables.utilities)
    if (row.kind == kind) return row;
  BURROW_ENSURE(!"the tables lack a kind of utility");
  return tables.utilities.front();
}

const ExcavationRuleSet& row_of(const Tables& tables, ExcavationRules rules) {
  for (const ExcavationRuleSet& row : tables.excavation)
    if (row.rules == rules) return row;
  BURROW_ENSURE(!"the tables lack a set of excavation rules");
  return tables.excavation.front();
}

}  // namespace burrow
