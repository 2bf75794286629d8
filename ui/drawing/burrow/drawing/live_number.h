#pragma once
/// A number that a drag changes, as it is told beside the others.

#include <QString>

namespace burrow {

/// Whether a number keeps its limit.
enum class Kept { not_judged, kept, broken };

struct LiveNumber {
  QString what;   ///< "least cover"
  QString value;  ///< "1.12 m"
  QString limit;  ///< "0.65 m required"; empty: none
  Kept kept = Kept::not_judged;
  bool operator==(const LiveNumber&) const = default;
};

}  // namespace burrow
