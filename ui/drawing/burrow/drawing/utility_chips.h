#pragma once
/// The lane of utilities under the side elevation: one chip for each that is in view, with its letter, name and
/// diameter, and a line up to its mark. One name serves both views.

#include <QPointF>
#include <QRectF>
#include <QString>
#include <string>
#include <vector>

#include "burrow/crossing/crossing.h"

class QPainter;

namespace burrow {

struct Scene;

struct UtilityChip {
  std::string id;
  QString letter;
  QString text;  ///< name and diameter; empty: the letter alone
  QRectF box;
  QPointF mark;  ///< where its line leads
};

struct ChipRow {
  std::vector<UtilityChip> chips;  ///< from left to right
  int left_out = 0;                ///< for which even a letter found no room
};

/// In the order of their stations, each as near under its mark as the others let it: the least sum of squared shifts
/// (isotonic regression, pool adjacent violators: Ayer, Brunk, Ewing, Reid, Silverman 1955). Where the lane is too
/// short, those that are neither selected, hovered nor in a finding that counts become their letter; then others, the
/// least telling first; then some go.   Evidence: UtilityChips.*
ChipRow place_utility_chips(const Scene& scene);

/// Left ends of boxes of these widths that stand in order with `gap` between them, their middles as near to `wanted` as
/// the squares have it, within [from, to]. They must fit.   Evidence: UtilityChips.*
std::vector<double> in_order(const std::vector<double>& wanted, const std::vector<double>& widths, double gap,
                             double from, double to);

/// "G"; "?" for what the tables do not know.
QString utility_letter(const Scene& scene, UtilityKind kind);

/// From the chips up to the marks, behind everything else.
void paint_chip_leaders(QPainter& painter, const Scene& scene);
void paint_utility_chips(QPainter& painter, const Scene& scene);
/// A letter in a ring of its utility's colour.
void paint_letter_ring(QPainter& painter, const Scene& scene, const QRectF& box, UtilityKind kind,
                       const QString& letter);

}  // namespace burrow
