#pragma once
/// Whether boxes lie over one another, asked a million times in a frame where names and flags look for room.

#include <QRectF>

namespace burrow {

/// As QRectF::intersects, for boxes with a positive width and height; here so that it is compiled into the loop.
inline bool lie_over(const QRectF& a, const QRectF& b) {
  return a.left() < b.right() && b.left() < a.right() && a.top() < b.bottom() && b.top() < a.bottom();
}

}  // namespace burrow
