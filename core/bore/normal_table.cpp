#include "burrow/bore/normal_table.h"

#include "burrow/base/quantity.h"

namespace burrow {

NormalTable::NormalTable() : nodes{}, density{} {
  for (std::size_t i = 0; i < count; ++i) {
    const double z = -end_z + static_cast<double>(i) * h;
    density[i] = std::exp(-0.5 * z * z) / std::sqrt(2 * pi);
    const double below = 0.5 * std::erfc(-z * std::sqrt(0.5));
    nodes[i] = {below, z * below + density[i]};
  }
}

const NormalTable& normal_table() {
  static const NormalTable table;
  return table;
}

double normal_below(double z) {
  const NormalTable& table = normal_table();
  if (!(z > -NormalTable::end_z)) return 0;
  if (z >= NormalTable::end_z) return 1;
  const double place = (z + NormalTable::end_z) * NormalTable::nodes_a_unit;
  const auto i = static_cast<std::size_t>(place);
  return NormalTable::between(place - static_cast<double>(i), table.nodes[i].below, table.density[i],
                              table.nodes[i + 1].below, table.density[i + 1]);
}

}  // namespace burrow
