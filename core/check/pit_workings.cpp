/// Working of a pit that belongs to no finding.

#include "pit_check.h"

namespace burrow {

void show_set_back(Judge& judge, const PitUnderCheck& pit) {
  constexpr std::string_view rises[] = {"t_1", "t_2", "t_3", "t_4", "t_5", "t_6"};
  constexpr std::string_view runs[] = {"n_1", "n_2", "n_3", "n_4", "n_5", "n_6"};
  if (pit.shape.layers.size() > std::size(rises)) return;
  Working working{
      "pit.set-back", pit.subject,     "r = Σ t n, n the flattest of a layer and those below it", {}, "r", 0, "m",
      std::nullopt,   pit.rules.source};
  for (std::size_t i = 0; i < pit.shape.layers.size(); ++i) {
    const PitLayer& layer = pit.shape.layers[i];
    working.inputs.push_back({rises[i], layer.top_m - layer.bottom_m, "m"});
    working.inputs.push_back({runs[i], layer.run_per_rise, ""});
    working.value += (layer.top_m - layer.bottom_m) * layer.run_per_rise;
  }
  judge.show(std::move(working));
}

}  // namespace burrow
