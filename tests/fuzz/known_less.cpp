#include "known_less.h"

#include <array>
#include <utility>

namespace burrow::test {

namespace {

Utility* utility_of(Crossing& c, unsigned draw) {
  return c.site.utilities.empty() ? nullptr : &c.site.utilities[draw % c.site.utilities.size()];
}

/// Takes the answer away; false where none was given.
template <class T>
bool gone(T& answer, const T& blank = {}) {
  return std::exchange(answer, blank) != blank;
}

bool depth_gone(Crossing& c, unsigned draw) {
  Utility* u = utility_of(c, draw);
  if (!u || u->path.empty()) return false;
  for (PathVertex& v : u->path) v.z_m.reset();
  return true;
}

constexpr std::array less{
    Less{"water", [](Crossing& c, unsigned) { return gone(c.site.water); }},
    Less{"depth of a utility", depth_gone},
    Less{"how it was located",
         [](Crossing& c, unsigned draw) {
           Utility* u = utility_of(c, draw);
           return u && gone(u->located);
         }},
    Less{"status of a utility",
         [](Crossing& c, unsigned draw) {
           Utility* u = utility_of(c, draw);
           return u && gone(u->status, Utility{}.status);
         }},
    Less{"proof of abandonment",
         [](Crossing& c, unsigned draw) {
           Utility* u = utility_of(c, draw);
           return u && gone(u->abandonment);
         }},
    Less{"search for utilities", [](Crossing& c, unsigned) { return gone(c.site.utility_search.done); }},
    Less{"reference of the search", [](Crossing& c, unsigned) { return gone(c.site.utility_search.reference); }},
    Less{"date of the search", [](Crossing& c, unsigned) { return gone(c.site.utility_search.date); }},
    Less{"end of the ticket", [](Crossing& c, unsigned) { return gone(c.site.utility_search.valid_to); }},
    Less{"marks", [](Crossing& c, unsigned) { return gone(c.site.utility_search.marks_visible); }},
    Less{"house connections", [](Crossing& c, unsigned) { return gone(c.site.utility_search.laterals); }},
    Less{"permit",
         [](Crossing& c, unsigned draw) {
           return !c.site.surface.empty() && gone(c.site.surface[draw % c.site.surface.size()].permit);
         }},
    Less{"permission",
         [](Crossing& c, unsigned draw) {
           return !c.site.surface.empty() &&
                  gone(c.site.surface[draw % c.site.surface.size()].permission, SurfaceFeature{}.permission);
         }},
    Less{"way out for a stuck tool",
         [](Crossing& c, unsigned draw) {
           return !c.site.surface.empty() && gone(c.site.surface[draw % c.site.surface.size()].rescue);
         }},
    Less{"pipe", [](Crossing& c, unsigned) { return gone(c.pipe); }},
};

}  // namespace

std::span<const Less> all_less() {
  return less;
}

int badness(Verdict verdict) {
  switch (verdict) {
    case Verdict::within_limits:
      return 0;
    case Verdict::caution:
      return 1;
    case Verdict::stop:
    case Verdict::incomplete:
      break;
  }
  return 2;
}

}  // namespace burrow::test
