#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "burrow/check/assess.h"
#include "burrow/crossing/day_record.h"
#include "burrow/day/day.h"
#include "burrow/day/permit_lines.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/words/after_text.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

std::vector<std::filesystem::path> sample_files() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(BURROW_SOURCE_DIR "/samples"))
    if (entry.path().extension() == ".crossing") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

Crossing sample(const std::string& name) {
  const auto text = read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing");
  EXPECT_TRUE(text) << text.error().english();
  auto crossing = read_crossing(text.value_or("{}"), tables());
  EXPECT_TRUE(crossing) << name << ": " << crossing.error().english();
  return crossing.value_or(Crossing{});
}

TEST(Samples, Property_EachIsReadAndWrittenUnchanged) {
  EXPECT_GE(sample_files().size(), 6u);
  for (const auto& file : sample_files()) {
    const auto text = read_text_file(file.string());
    ASSERT_TRUE(text) << file;
    const auto crossing = read_crossing(*text, tables());
    ASSERT_TRUE(crossing) << file << ": " << crossing.error().english();
    EXPECT_EQ(write_crossing(*crossing), *text) << file << " would change by saving it";
  }
}

/// Sentences end in ". " or in the last full stop; figures like "0.2 m" do not count.
std::ptrdiff_t sentences(const std::string& text) {
  std::ptrdiff_t count = text.ends_with('.') ? 1 : 0;
  for (std::size_t at = text.find(". "); at != std::string::npos; at = text.find(". ", at + 1)) ++count;
  return count;
}

TEST(Samples, Property_EachSaysWhatToLookAt) {
  for (const auto& file : sample_files()) {
    const Crossing crossing = sample(file.stem().string());
    EXPECT_FALSE(crossing.name.empty()) << file;
    EXPECT_GE(sentences(crossing.notes), 2) << file;
    EXPECT_LE(sentences(crossing.notes), 3) << file;
  }
}

// Nothing that is merely forgotten may decide a sample: what the verdict wants entered is there.
TEST(Samples, Property_NothingIsMissingByOversight) {
  for (const auto& file : sample_files()) {
    const Crossing crossing = sample(file.stem().string());
    const Site& site = crossing.site;
    EXPECT_TRUE(site.water) << file;
    EXPECT_EQ(site.utility_search.done, true) << file;
    EXPECT_TRUE(site.utility_search.laterals && *site.utility_search.laterals != Laterals::not_checked) << file;
    EXPECT_LE(site.ground.front().station_m, crossing.bore.launch.station.m) << file;
    EXPECT_GE(site.ground.back().station_m, crossing.bore.exit.station.m) << file;
    ASSERT_TRUE(crossing.pipe && crossing.pipe->outside_diameter) << file;
    for (const Utility& utility : site.utilities) {
      EXPECT_TRUE(utility.outside_diameter) << file << utility.name;
      EXPECT_TRUE(utility.located.lateral_sd && utility.located.vertical_sd) << file << utility.name;
      for (const PathVertex& vertex : utility.path) EXPECT_TRUE(vertex.z_m) << file << utility.name;
    }
    for (const SurfaceFeature& feature : site.surface) {
      const bool owned =
          feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track || feature.kind == SurfaceKind::ditch;
      EXPECT_TRUE(!owned || feature.rule || feature.required_cover) << file << feature.name;
    }
  }
}

std::set<UtilityKind> kinds_of(const Crossing& crossing) {
  std::set<UtilityKind> kinds;
  for (const Utility& utility : crossing.site.utilities) kinds.insert(utility.kind);
  return kinds;
}

TEST(Samples, Contents_AsTheirNamesSay) {
  EXPECT_EQ(kinds_of(sample("house-service")), (std::set{UtilityKind::gas, UtilityKind::water, UtilityKind::telecom,
                                                         UtilityKind::power, UtilityKind::sewer}));
  EXPECT_EQ(sample("house-service").site.surface.front().permission.value, Permission::allowed);

  const Crossing siding = sample("rail-siding");
  EXPECT_EQ(siding.site.surface.front().kind, SurfaceKind::track);
  EXPECT_EQ(siding.site.surface.front().permission.value, Permission::not_asked);

  const Crossing duct = sample("car-park-duct");
  EXPECT_EQ(duct.bore.exit.station.m - duct.bore.launch.station.m, 30);
  EXPECT_GE(duct.site.strata.size(), 2u);

  EXPECT_EQ(sample("first-lesson").bore.exit.station.m, 6);

  const Crossing crowded = sample("sixty-utilities");
  EXPECT_EQ(crowded.site.utilities.size(), 60u);
  EXPECT_EQ(kinds_of(crowded).size(), std::size(EnumNames<UtilityKind>::list) - 1);  // all but oil
  for (const Utility& utility : crowded.site.utilities) EXPECT_EQ(utility.name.size(), 40u) << utility.name;
}

Assessment assessed(const std::string& name, double lowered_m = 0) {
  Crossing crossing = sample(name);
  crossing.bore.launch.elevation.m -= lowered_m;
  return assess(crossing, tables());
}

std::set<std::string> subjects_of(const Assessment& answer, Severity severity) {
  std::set<std::string> subjects;
  for (const Finding& finding : answer.findings)
    if (finding.severity == severity) subjects.insert(finding.subject);
  return subjects;
}

// What each sample is there to show, with the built-in limits (our defaults).
TEST(Samples, Verdict_HouseServiceHasOneTroubleAndACure) {
  const Assessment answer = assessed("house-service");
  EXPECT_EQ(answer.verdict, Verdict::stop);
  EXPECT_EQ(subjects_of(answer, Severity::stop), std::set<std::string>{"u2"});  // the gas main
  // As its notes say: no stop is left; the mains that nobody has exposed stay cautions.
  EXPECT_EQ(assessed("house-service", 0.15).verdict, Verdict::caution);
}

TEST(Samples, Verdict_RailSidingWaitsForItsOwner) {
  const Assessment answer = assessed("rail-siding");
  EXPECT_EQ(answer.verdict, Verdict::incomplete);
  EXPECT_TRUE(std::any_of(answer.findings.begin(), answer.findings.end(),
                          [](const Finding& f) { return f.code == "missing.permission" && f.subject == "f1"; }));
}

TEST(Samples, Verdict_FourFaultsAndTheirCure) {
  std::set<std::string> codes;
  for (const Finding& finding : assessed("four-faults").findings)
    if (finding.severity == Severity::stop) codes.insert(finding.code);
  for (const char* code : {"bore.cover", "utility.separation", "utility.contact", "surface.heave"})
    EXPECT_TRUE(codes.contains(code)) << code;
  EXPECT_TRUE(subjects_of(assessed("four-faults", 0.95), Severity::stop).empty());
}

// Three days of one invented bore: under way, struck, finished.
TEST(Samples, Days_AsTheirNamesSay) {
  const Crossing under_way = sample("day-under-way"), struck = sample("day-struck"), done = sample("day-finished");
  EXPECT_TRUE(open_record(under_way));
  const DayAnswer day = day_answer(under_way, tables(), under_way.record.front(), assess(under_way, tables()));
  EXPECT_EQ(day.advice, Advice::do_tasks);
  EXPECT_TRUE(day.queried.empty() && day.odd.empty());
  EXPECT_EQ(assessed("day-under-way").verdict, Verdict::caution);

  EXPECT_EQ(assessed("day-struck").verdict, Verdict::stop);
  EXPECT_EQ(day_answer(struck, tables(), struck.record.front(), assess(struck, tables())).advice, Advice::get_out);

  EXPECT_EQ(end_of(done.record.front()), EndHow::arrived);
  EXPECT_EQ(assessed("day-finished").verdict, Verdict::caution);
  for (const AfterLine& line : after_lines(done, done.record.front(), UnitSystem::metric))
    EXPECT_TRUE(line.done) << line.what << ": " << line.found;
  // On its day every line of the permit holds.
  for (const Crossing& one : {under_way, struck, done})
    for (const PermitLine& line : permit_lines(one, assess(one, tables()), Date{2026, 3, 2}))
      EXPECT_EQ(line.state, PermitState::holds) << line.what.english() << ": " << line.found.english();
}

TEST(Samples, Verdict_TheOthers) {
  EXPECT_EQ(assessed("car-park-duct").verdict, Verdict::caution);
  EXPECT_EQ(assessed("first-lesson").verdict, Verdict::within_limits);
  EXPECT_EQ(assessed("first-lesson", 0.3).verdict, Verdict::stop);
}

}  // namespace
}  // namespace burrow
