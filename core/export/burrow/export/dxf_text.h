#pragma once
/// Writes a drawing file in the DXF of release 12, the one that every drawing program reads.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/geometry.h"

namespace burrow {

/// Text as release 12 holds it: in code page 1252, what that lacks as \U+XXXX (beyond the basic plane "?"); no line
/// ends, and `%%` kept from becoming a sign.   Evidence: Dxf.Text_*
std::string dxf_string(std::string_view utf8);

/// Collects entities layer by layer; `take()` gives the file with header (code page, unit, extents), tables and
/// entities. Numbers with six decimals. What is not finite is a bug of the caller. Source: DXF reference of release 12,
/// group codes (from memory); the reading back by another library is the check. Evidence: Dxf.*
class DxfText {
 public:
  /// Lengths are given in metres and written in these.
  explicit DxfText(bool us_survey_feet = false);
  /// A layer is made on first use. `colour`: number of the standard palette, 1 red … 7 black on white.
  void layer(const std::string& name, int colour, bool dashed = false);

  void line(const std::string& layer, const std::vector<PlanPoint>& points, bool closed = false);
  void line(const std::string& layer, const std::vector<Point3>& points);
  void circle(const std::string& layer, PlanPoint middle, double radius_m);
  /// `rotated_deg`: counter-clockwise. At its left end on the base line.
  void text(const std::string& layer, PlanPoint at, double height_m, std::string_view words, double rotated_deg = 0);

  [[nodiscard]] std::string take() const;

 private:
  struct LayerRow {
    int colour = 7;
    bool dashed = false;
  };
  void begin(std::string_view kind, const std::string& layer);
  void point(int first_code, double x_m, double y_m, double z_m);
  void code(int group, std::string_view value);
  void number(int group, double value);

  std::map<std::string, LayerRow> layers_;
  std::string entities_;
  bool feet_;
  double per_m_;
  bool any_ = false;
  double least_x_ = 0, least_y_ = 0, most_x_ = 0, most_y_ = 0;
};

}  // namespace burrow
