#include "burrow/check/conclude_trials.h"

#include <algorithm>

#include "burrow/base/phrase.h"
#include "burrow/check/limits.h"
#include "burrow/check/with_findings.h"
#include "burrow/clearance/course.h"

namespace burrow {

namespace {

class TrialsJudge {
 public:
  TrialsJudge(const Crossing& crossing, const Tables& tables, const Assessment& assessment, const Trials& trials)
      : crossing_(crossing), tables_(tables), assessment_(assessment), trials_(trials) {}

  std::vector<Finding> findings() {
    for (const UtilityTrials& counted : trials_.utilities) judge_utility(counted);
    judge_bore();
    return std::move(found_);
  }

 private:
  void judge_utility(const UtilityTrials& counted) {
    const auto answer = std::find_if(assessment_.utilities.begin(), assessment_.utilities.end(),
                                     [&](const UtilityAnswer& u) { return u.id == counted.id; });
    const auto utility = std::find_if(crossing_.site.utilities.begin(), crossing_.site.utilities.end(),
                                      [&](const Utility& u) { return u.id == counted.id; });
    if (answer == assessment_.utilities.end() || utility == crossing_.site.utilities.end()) return;
    Finding finding;
    finding.subject = counted.id;
    finding.name =
        utility->name.empty() ? phrase("{} {}", phrase_of_word(utility->kind), utility->id) : Phrase(utility->name);
    finding.station_m = answer->station_m;
    finding.offset_m = answer->offset_m;
    finding.elevation_m = answer->elevation_m;
    const Severity worst = may_be_live(*utility, tables_) ? Severity::stop : Severity::caution;
    finding.code = "trials.contact";
    require(finding, worst, counted.contact.lower_95(), "contact_stop", "contact_caution");
    finding.code = "trials.encroachment";
    require(finding, worst, counted.encroachment.lower_95(), "encroachment_stop", "encroachment_caution");
  }

  void judge_bore() {
    Finding finding;
    finding.subject = "bore";
    finding.name = "bore";
    finding.code = "trials.daylight";
    require(finding, Severity::stop, trials_.daylight.lower_95(), "daylight_stop", "daylight_caution");

    const Count inside{trials_.inside_window.n, trials_.count - trials_.refused.n};
    if (inside.of <= 0) return;
    finding.code = "trials.exit-window";
    finding.subject = "exit-pit";
    finding.name = translatable("exit pit");
    finding.station_m = crossing_.bore.exit.station.m;
    add(finding, Severity::stop, inside.upper_95(), limit_of(crossing_, tables_, "exit_window_chance"));
  }

  void require(const Finding& finding, Severity worst, double chance, std::string_view stop, std::string_view caution) {
    if (!add(finding, worst, chance, limit_of(crossing_, tables_, stop)))
      add(finding, Severity::caution, chance, limit_of(crossing_, tables_, caution));
  }

  bool add(Finding finding, Severity severity, double chance, const Limit& limit) {
    const double margin = margin_of(chance, limit);
    if (!(margin < 0)) return false;
    finding.severity = severity;
    finding.measured = chance;
    finding.limit = limit.value;
    finding.at_least = limit.at_least;
    finding.source = limit.source;
    finding.margin = margin;
    found_.push_back(std::move(finding));
    return true;
  }

  const Crossing& crossing_;
  const Tables& tables_;
  const Assessment& assessment_;
  const Trials& trials_;
  std::vector<Finding> found_;
};

}  // namespace

std::vector<Finding> trials_findings(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                     const Trials& trials) {
  if (trials.cancelled || trials.count <= 0) return {};
  return TrialsJudge(crossing, tables, assessment, trials).findings();
}

Assessment conclude_trials(const Crossing& crossing, const Tables& tables, Assessment assessment,
                           const Trials& trials) {
  std::vector<Finding> found = trials_findings(crossing, tables, assessment, trials);
  if (found.empty()) return assessment;
  return with_findings(crossing, tables, std::move(assessment), std::move(found));
}

}  // namespace burrow
