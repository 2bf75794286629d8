#pragma once
/// The soil type of an excavation, proposed by the published order. A program can only propose it: the competent person
/// decides, after at least one look and one test by hand.

#include <optional>
#include <string_view>
#include <vector>

#include "burrow/base/quantity.h"
#include "burrow/base/source.h"
#include "burrow/soil/soil.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// What is known of one layer in the pit. An empty sign: nobody looked.
struct SoilSeen {
  ExcavationMatter matter = ExcavationMatter::granular;
  std::optional<Pressure> unconfined_strength;  ///< q_u; empty: not known
  std::optional<bool> fissured, vibrated, disturbed;
  std::optional<bool> wet;                ///< submerged, or water seeps out of it freely
  std::optional<Ratio> dip_run_per_rise;  ///< of layers that dip into the pit
  bool operator==(const SoilSeen&) const = default;
};

/// One step of the order: what decided, and the types left after it. `why` and `clause` point to literals.
struct TypeStep {
  std::string_view why;
  std::string_view clause;
  SourceLabel label = SourceLabel::read;
  ExcavationType best = ExcavationType::c, worst = ExcavationType::c;
  bool operator==(const TypeStep&) const = default;
};

/// Every type from `best` to `worst` is possible; one alone when the two are the same.
struct TypeProposal {
  ExcavationType best = ExcavationType::c, worst = ExcavationType::c;
  std::vector<TypeStep> steps;
  bool operator==(const TypeProposal&) const = default;
};

/// Source: 29 CFR 1926 Subpart P App. A (b) (read): rock; base type from the soil and q_u (1.5 and 0.5 tsf decide);
/// then what demotes it, the worst wins: water, dip of 4H : 1V or steeper, fissures, vibration, former digging. A
/// cohesive soil of unknown strength keeps all three types. A sign that nobody looked for never speaks for the better
/// type (our model). Fill is taken as disturbed; without cohesion it is Type C. Range: strength ≥ 0, dip ≥ 0. Evidence:
/// PublishedSoilType.*, SoilType.*
TypeProposal propose_type(const SoilSeen& seen);

/// What a class is to the rules, where its row does not say so: a type by the class, else undrained is cohesive.
/// Source: our model.   Evidence: SoilType.Matter_*
ExcavationMatter matter_of(const SoilClass& soil_class);

}  // namespace burrow
