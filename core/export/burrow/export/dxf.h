#pragma once
/// The crossing as a drawing file: plan and side elevation, together or each alone.

#include <string>

#include "burrow/base/enum_names.h"
#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

enum class DxfView { both, plan, profile };
template <>
struct EnumNames<DxfView> {
  static constexpr std::pair<DxfView, std::string_view> list[] = {
      {DxfView::both, "both"}, {DxfView::plan, "plan"}, {DxfView::profile, "profile"}};
};

enum class DxfPlace { local, survey };
template <>
struct EnumNames<DxfPlace> {
  static constexpr std::pair<DxfPlace, std::string_view> list[] = {{DxfPlace::local, "local"},
                                                                   {DxfPlace::survey, "survey"}};
};

enum class DxfLength { metre, us_survey_foot };
template <>
struct EnumNames<DxfLength> {
  static constexpr std::pair<DxfLength, std::string_view> list[] = {{DxfLength::metre, "m"},
                                                                    {DxfLength::us_survey_foot, "us-ft"}};
};

struct DxfOptions {
  DxfView view = DxfView::both;
  DxfPlace place = DxfPlace::local;  ///< survey: the plan in the coordinates of the crossing's georeference
  DxfLength length = DxfLength::metre;
};

/// How far the side elevation is moved up where it stands above the plan: its y is elevation plus this, a whole number
/// of 10 m, so that it stands at least 2 m clear. As a drawing of its own its y is the elevation.
/// Evidence: Dxf.SideElevation_*
double side_elevation_shift_m(const Crossing& crossing, const Assessment& assessment);

/// Plan (x station, y offset to the left, or the survey's east and north; bore and utilities whose depth is known as
/// lines in space) and side elevation (x station, y elevation). Layers: what starts with PLAN- and SIDE-; pits and
/// bands are closed. Numbers in words in the units asked for. Errors: the survey's coordinates without a place on the
/// map, or for a drawing that holds the profile. Evidence: Dxf.*
Result<std::string> write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                              UnitSystem units, const DxfOptions& options);
/// Both, local, in metres.
std::string write_dxf(const Crossing& crossing, const Tables& tables, const Assessment& assessment, UnitSystem units);

}  // namespace burrow
