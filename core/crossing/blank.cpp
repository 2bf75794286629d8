#include "burrow/crossing/blank.h"

namespace burrow {

Crossing blank_crossing(std::string name) {
  Crossing crossing;
  crossing.name = std::move(name);
  crossing.site.ground = {{-4.0, 100.0}, {0.0, 100.0}, {10.0, 100.0}, {14.0, 100.0}};
  Stratum clay;
  clay.id = "l1";
  clay.soil = "firm-clay";
  clay.known.set(StratumEvidence::guess);
  crossing.site.strata = {clay};
  crossing.bore.tool.tool_class = "tool-65";
  crossing.bore.launch.station = Length{0.0};
  crossing.bore.launch.elevation = Length{98.8};
  crossing.bore.exit.station = Length{10.0};
  return crossing;
}

}  // namespace burrow
