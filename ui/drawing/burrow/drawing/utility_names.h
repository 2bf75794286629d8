#pragma once
/// Names beside the marks of utilities in the side elevation: placed one after the other, none over another name, a
/// mark, a dimension or what else stands there.

#include <QPointF>
#include <QRectF>
#include <QString>
#include <string>
#include <vector>

namespace burrow {

struct Scene;

struct UtilityName {
  std::string id;
  QString text;
  QPointF at;  ///< left end of its base line
  QRectF box;
  bool whole = false;  ///< the name, not its letter alone
};

/// First what is picked or under the pointer, then what findings are about, worst first, then the others from the bore
/// outward: where room is short it goes to those. Where marks stand closer than a name is wide, only the first two have
/// names and the others their letter; what finds no room at all has neither.   Evidence: UtilityNames.*
std::vector<UtilityName> place_utility_names(const Scene& scene);

}  // namespace burrow
