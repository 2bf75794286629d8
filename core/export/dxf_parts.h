#pragma once
/// What plan and side elevation of the drawing file share.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/export/dxf.h"
#include "burrow/export/dxf_text.h"

namespace burrow {

struct DxfParts {
  const Crossing& crossing;
  const Assessment& answer;
  UnitSystem units = UnitSystem::metric;
  DxfOptions options;
  double shift_m = 0;  ///< of the side elevation
  double hole_m = 0;   ///< diameter of the hole as opened
  DxfText out{};
};

inline constexpr double dxf_text_m = 0.15;    ///< height of words, 1.5 mm at 1:100
inline constexpr double dxf_band_sd = 1.645;  ///< nine in ten between

std::string dxf_upper(std::string_view word);
std::string dxf_name(const Utility& utility);
std::string dxf_name(const SurfaceFeature& feature);

void add_dxf_plan(DxfParts& parts);
void add_dxf_side(DxfParts& parts);

}  // namespace burrow
