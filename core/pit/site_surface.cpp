#include "burrow/pit/site_surface.h"

#include <utility>

namespace burrow {

SiteSurface::SiteSurface(const Site& site, const GroundSurface& made) : known_(true) {
  if (site.ground.empty() || site.ground_points.empty()) return;
  surface_ =
      made.made_of(site.ground, site.ground_points) ? made : GroundSurface(site.ground, site.ground_points, made);
}

SiteSurface SiteSurface::known(GroundSurface surface) {
  SiteSurface of_site;
  of_site.known_ = true;
  of_site.surface_ = std::move(surface);
  return of_site;
}

GroundSurface SiteSurface::of(const Site& site) const {
  return known_ ? surface_ : SiteSurface(site).surface_;
}

}  // namespace burrow
