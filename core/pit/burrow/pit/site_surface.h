#pragma once
/// The surface of a site, compared with it once for all that asks for it.

#include "burrow/crossing/crossing.h"
#include "burrow/pit/ground_surface.h"

namespace burrow {

/// Through the ground line and the surveyed points; none where either is missing.
class SiteSurface {
 public:
  SiteSurface() = default;  ///< not made yet: made by whoever wants it
  /// `made` is taken where it was made of that line and those points; where not, another is made.
  explicit SiteSurface(const Site& site, const GroundSurface& made = {});
  /// One that is known to be that of the site: the answer of `assess()` holds it.
  static SiteSurface known(GroundSurface surface);

  /// `site` is the one of which it was made.
  [[nodiscard]] GroundSurface of(const Site& site) const;

 private:
  bool known_ = false;
  GroundSurface surface_;
};

}  // namespace burrow
