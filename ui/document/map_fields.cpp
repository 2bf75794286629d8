#include "burrow/document/map_fields.h"

#include <numbers>

#include "number_field.h"

namespace burrow {

namespace {

constexpr double farthest_map_m = 1e8;

void drop_if_empty(Crossing& crossing) {
  if (crossing.site.georeference == Georeference()) crossing.site.georeference.reset();
}

Georeference& reference_of(Crossing& crossing) {
  if (!crossing.site.georeference) crossing.site.georeference.emplace();
  return *crossing.site.georeference;
}

Field coordinate(const Crossing& crossing, const char* label, double PlanPoint::*member) {
  const auto& now = crossing.site.georeference;
  Field field = typed_field(label, Dimension::station, {-farthest_map_m, farthest_map_m},
                            now ? Typed(now->origin.*member) : std::nullopt, [member](Crossing& c, Typed typed) {
                              if (!typed && !c.site.georeference) return;
                              reference_of(c).origin.*member = typed.value_or(0);
                              drop_if_empty(c);
                            });
  field.may_be_empty = true;
  field.entered = now.has_value();
  return field;
}

}  // namespace

std::vector<Field> map_fields(const Crossing& crossing) {
  const auto& now = crossing.site.georeference;
  Field direction = typed_field("direction of the line, clockwise from grid north", Dimension::angle,
                                {-2 * std::numbers::pi, 2 * std::numbers::pi},
                                now ? Typed(now->azimuth->rad) : std::nullopt, [](Crossing& c, Typed typed) {
                                  if (!typed && !c.site.georeference) return;
                                  reference_of(c).azimuth = Georeference().azimuth;
                                  if (typed) reference_of(c).azimuth.set(Angle{*typed});
                                  drop_if_empty(c);
                                });
  direction.may_be_empty = true;
  direction.entered = now && now->azimuth.entered;
  return {coordinate(crossing, "easting of station 0", &PlanPoint::x_m),
          coordinate(crossing, "northing of station 0", &PlanPoint::y_m), direction};
}

void set_map_text(Crossing& crossing, std::string Georeference::*member, const std::string& text) {
  if (text.empty() && !crossing.site.georeference) return;
  reference_of(crossing).*member = text;
  drop_if_empty(crossing);
}

}  // namespace burrow
