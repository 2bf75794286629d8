#pragma once
/// What a drag does, in numbers: each as it was and as it is now, with the limit it has to keep.

#include <QString>
#include <vector>

#include "burrow/document/item.h"
#include "burrow/drawing/live_number.h"
#include "burrow/drawing/snap.h"

namespace burrow {

/// The utility whose gap has least to spare; empty: none has a gap.
std::string tightest_utility(const Assessment& assessment);

/// The numbers of a part that can be dragged, most telling first: its own, then the gaps to the utilities that are
/// watched, cover and arrival. A gap or a cover that keeps its limit is not called kept while another finding about it
/// counts: a line still to be exposed, an owner's cover.   Evidence: Readout.*
std::vector<LiveNumber> live_numbers(const Crossing& crossing, const Assessment& assessment, const ItemRef& part,
                                     UnitSystem units, const std::vector<std::string>& watched);

struct ChangedNumber {
  LiveNumber now;
  QString before;  ///< empty: it was not there
  bool operator==(const ChangedNumber&) const = default;
};

struct Readout {
  QString moves;
  std::vector<ChangedNumber> numbers;
  QString snapped;  ///< why it is held, in words; empty: it is not
  bool operator==(const Readout&) const = default;
};

/// The same number before and now stands together, known by what it is.   Evidence: Readout.*
std::vector<ChangedNumber> beside(const std::vector<LiveNumber>& before, std::vector<LiveNumber> now);

/// The reasons of the lines that hold, joined. What was clear of a utility at the press and is not any more, since it
/// was moved along besides, is not said.
QString snap_words(const std::vector<SnapLine>& lines, const Assessment& now);

}  // namespace burrow
