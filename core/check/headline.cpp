#include "burrow/check/headline.h"

#include <fmt/format.h>

namespace burrow {

std::string_view verdict_title(Verdict verdict) {
  switch (verdict) {
    case Verdict::stop:
      return "Stop";
    case Verdict::incomplete:
      return "Incomplete";
    case Verdict::caution:
      return "Caution";
    case Verdict::within_limits:
      break;
  }
  return "Within limits";
}

std::string headline(const Assessment& assessment, UnitSystem units) {
  int stops = 0;
  int missing = 0;
  int cautions = 0;
  for (const Finding& f : assessment.findings) {
    if (f.severity == Severity::stop)
      ++stops;
    else if (f.missing)
      ++missing;
    else if (f.severity == Severity::caution && !f.muted)
      ++cautions;
  }
  const auto first = [&] { return finding_text(assessment.findings.front(), units); };
  const auto many = [](int n, std::string_view one, std::string_view more) {
    return fmt::format("{} {}", n, n == 1 ? one : more);
  };
  switch (assessment.verdict) {
    case Verdict::stop:
      return fmt::format("{}; first: {}.", many(stops, "limit is broken", "limits are broken"), first());
    case Verdict::incomplete:
      return fmt::format("{}; first: {}.", many(missing, "thing is not known", "things are not known"), first());
    case Verdict::caution:
      return fmt::format("{}; first: {}.", many(cautions, "caution", "cautions"), first());
    case Verdict::within_limits:
      break;
  }
  return "All limits judged here are kept. Locate, expose and protect as always.";
}

}  // namespace burrow
