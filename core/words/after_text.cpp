#include "burrow/words/after_text.h"

#include <algorithm>

#include "burrow/crossing/day_record.h"
#include "burrow/crossing/statement.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

std::string joined(const std::vector<std::string>& parts) {
  std::string all;
  for (const std::string& part : parts)
    if (!part.empty()) all += (all.empty() ? "" : ", ") + part;
  return all;
}

AfterLine pull_in(const PullIn& pull, UnitSystem units) {
  AfterLine line{translated("Pull-in"), {}, says_something(pull.what) && pull.date.has_value()};
  std::vector<std::string> parts{pull.what, pull.by, pull.date.value_or("")};
  if (pull.peak) parts.push_back(say("at most {}", format(pull.peak->N, Dimension::force, units)));
  if (pull.link_rating) parts.push_back(say("link breaks at {}", format(pull.link_rating->N, Dimension::force, units)));
  if (says_something(pull.watched_by)) parts.push_back(say("watched by {}", pull.watched_by));
  line.found = joined(parts);
  if (pull.peak && pull.link_rating && pull.peak->N > pull.link_rating->N) {
    line.done = false;
    line.found = say("more was pulled than the link is rated for: {}", line.found);
  } else if (line.done && !(pull.peak || pull.link_rating)) {
    line.done = false;
    line.found = say("neither the pull nor the rating of the link is entered: {}", line.found);
  } else if (line.done && !says_something(pull.watched_by)) {
    line.done = false;
    line.found = say("who watched for strikes is not entered: {}", line.found);
  } else if (line.found.empty()) {
    line.found = translated("not entered");
  }
  return line;
}

AfterLine by_statement(std::string what, const Statement& statement) {
  const bool done = says_something(statement.how) && says_something(statement.by) && statement.date;
  std::string found = joined({statement.how, statement.by, statement.date.value_or("")});
  if (found.empty()) found = translated("not entered");
  return {std::move(what), std::move(found), done};
}

AfterLine camera(const Crossing& crossing) {
  const CameraSurvey& survey = crossing.site.utility_search.camera_after;
  AfterLine line{translated("Camera through the sewers that were crossed"), translated("not entered"), false};
  if (!survey.result) return line;
  line.done = *survey.result == CameraResult::nothing_found && survey.date.has_value();
  line.found = joined({translated_word(*survey.result), survey.reference, survey.date.value_or("")});
  return line;
}

AfterLine levels(const SurfaceFeature& feature) {
  const LevelRecord& levels = feature.levels;
  const bool done = levels.settled_date && !levels.pegs.empty() &&
                    std::all_of(levels.pegs.begin(), levels.pegs.end(),
                                [](const LevelPeg& peg) { return peg.before && peg.after && peg.settled; });
  const std::string& name = feature.name.empty() ? feature.id : feature.name;
  return {say("Levels of {} when settled", name),
          done ? *levels.settled_date : std::string(translated("not all entered")), done};
}

std::string hole_words(HoleState hole) {
  return translated_word(hole);
}

}  // namespace

std::vector<AfterLine> after_lines(const Crossing& crossing, const DayRecord& record, UnitSystem units) {
  std::vector<AfterLine> all;
  const Aftermath& after = record.aftermath;
  if (end_of(record) == EndHow::arrived && !arrival_doubted(crossing, record)) {
    all.push_back(pull_in(after.pull_in, units));
    all.push_back(by_statement(translated("Closed around the pipe"), after.grouted));
  } else {
    const bool closed = after.hole == HoleState::grouted || after.hole == HoleState::dug_out;
    all.push_back({translated("The hole"),
                   after.hole ? hole_words(*after.hole) : std::string(translated("not entered")), closed});
  }
  const bool sewer = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::sewer; });
  if (sewer) all.push_back(camera(crossing));
  for (const SurfaceFeature& feature : crossing.site.surface)
    if (feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track) all.push_back(levels(feature));
  all.push_back(
      {translated("Photos"),
       after.photos.empty() ? std::string(translated("none")) : say_count("{} photo", "{} photos", after.photos.size()),
       !after.photos.empty()});
  return all;
}

std::string record_state(const Crossing& crossing, UnitSystem units) {
  const DayRecord* shown = open_record(crossing);
  if (!shown && !crossing.record.empty()) shown = &crossing.record.back();
  if (!shown || shown->readings.empty()) return {};
  const std::optional<EndHow> how = end_of(*shown);
  for (const DayRecord& record : crossing.record)
    if (danger_told(record) && !says_something(record.aftermath.released.by))
      return translated("danger: everybody out, not released");
  if (!ended(*shown)) {
    const double length = crossing.bore.exit.station.m - crossing.bore.launch.station.m;
    return say("under way, nose {} of {}", format(std::min(furthest_nose(*shown).m, length), Dimension::length, units),
               format(length, Dimension::length, units));
  }
  if (!how) return translated("ended, how was not entered");
  if (arrival_doubted(crossing, *shown)) return translated("said to have arrived half way, nobody has confirmed it");
  const std::string word = translated_word(*how);
  const std::vector<AfterLine> lines = after_lines(crossing, *shown, units);
  const auto open = std::count_if(lines.begin(), lines.end(), [](const AfterLine& line) { return !line.done; });
  return open > 0 ? say_count("{1}, {0} thing left to do", "{1}, {0} things left to do", open, word) : word;
}

}  // namespace burrow
