// The permit to bore: what nobody entered is open, what was looked at on another day too; ticket, exposures and a no-go
// block. Common practice, no source.
#include "burrow/day/permit_lines.h"

#include <gtest/gtest.h>

#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

const Date today{2026, 3, 2};

/// The clean crossing with everything answered on the day.
Crossing permitted() {
  Crossing c = clean_crossing();
  c.site.utilities[0].owner = "water supplier";
  Permit& permit = c.permit;
  permit.emergency_phone = "0100 1";
  permit.locating_phone = "0100 2";
  permit.owners.push_back({"water supplier", "0100 3", {"marked", "B. Nobody", "2026-02-25", ""}, "the corner", ""});
  permit.pits_inspected = {"firm, dry", "C. Nobody", "2026-03-02", ""};
  permit.daily.date = "2026-03-02";
  permit.daily.by = "D. Nobody";
  for (const auto& [item, word] : EnumNames<DailyItem>::list) permit.daily.done.emplace_back(word);
  permit.at_air_valve = "D. Nobody";
  permit.at_exit = "E. Nobody";
  permit.supervisor = {GoDecision::go, "A. Nobody", "2026-03-02", ""};
  permit.crew = {GoDecision::go, "D. Nobody", "2026-03-02", ""};
  return c;
}

std::vector<PermitLine> lines_of(const Crossing& c, std::optional<Date> on = today) {
  return permit_lines(c, judged(c), on);
}
int open(const Crossing& c, std::optional<Date> on = today) {
  return open_lines(lines_of(c, on));
}
bool blocks(const Crossing& c, std::string_view code, std::optional<Date> on = today) {
  const auto lines = lines_of(c, on);
  return std::any_of(lines.begin(), lines.end(),
                     [&](const PermitLine& l) { return l.code == code && l.state == PermitState::blocks; });
}

TEST(PermitLines, AllAnswered_Holds) {
  for (const PermitLine& line : lines_of(permitted()))
    EXPECT_EQ(line.state, PermitState::holds) << line.what.english() << ": " << line.found.english();
}

// Each member taken away alone opens a line.
TEST(PermitLines, EachMissing_IsOpen) {
  const std::vector<std::pair<const char*, void (*)(Crossing&)>> takes{
      {"reference", [](Crossing& c) { c.site.utility_search.reference.clear(); }},
      {"requested", [](Crossing& c) { c.site.utility_search.date.reset(); }},
      {"emergency", [](Crossing& c) { c.permit.emergency_phone = " "; }},
      {"locating", [](Crossing& c) { c.permit.locating_phone.clear(); }},
      {"number", [](Crossing& c) { c.permit.owners[0].phone.clear(); }},
      {"answer", [](Crossing& c) { c.permit.owners[0].answered.how.clear(); }},
      {"who answered", [](Crossing& c) { c.permit.owners[0].answered.by.clear(); }},
      {"answered when", [](Crossing& c) { c.permit.owners[0].answered.date.reset(); }},
      {"answered later", [](Crossing& c) { c.permit.owners[0].answered.date = "2026-03-03"; }},
      {"valve", [](Crossing& c) { c.permit.owners[0].valve.clear(); }},
      {"contact", [](Crossing& c) { c.permit.owners.clear(); }},
      {"owner", [](Crossing& c) { c.site.utilities[0].owner.clear(); }},
      {"permit of the road", [](Crossing& c) { c.site.surface[0].permit.clear(); }},
      {"permission", [](Crossing& c) { c.site.surface[0].permission.set(Permission::refused); }},
      {"pits by", [](Crossing& c) { c.permit.pits_inspected.by.clear(); }},
      {"pits yesterday", [](Crossing& c) { c.permit.pits_inspected.date = "2026-03-01"; }},
      {"one check", [](Crossing& c) { c.permit.daily.done.pop_back(); }},
      {"checks by", [](Crossing& c) { c.permit.daily.by.clear(); }},
      {"checks yesterday", [](Crossing& c) { c.permit.daily.date = "2026-03-01"; }},
      {"air valve", [](Crossing& c) { c.permit.at_air_valve.clear(); }},
      {"watcher", [](Crossing& c) { c.permit.at_exit.clear(); }},
      {"supervisor", [](Crossing& c) { c.permit.supervisor.by.clear(); }},
      {"crew yesterday", [](Crossing& c) { c.permit.crew.date = "2026-03-01"; }},
      {"crew undecided", [](Crossing& c) { c.permit.crew.decision.reset(); }}};
  for (const auto& [name, take] : takes) {
    Crossing c = permitted();
    take(c);
    EXPECT_GT(open(c), 0) << name;
  }
  EXPECT_GT(open(permitted(), std::nullopt), 0) << "nobody knows the day";
  EXPECT_GT(open(permitted(), Date{2026, 3, 3}), 0) << "the next day";
}

TEST(PermitLines, TicketAndExposure_Block) {
  Crossing expired = permitted();
  expired.site.utility_search.valid_to = "2026-03-01";
  EXPECT_TRUE(blocks(expired, "permit.ticket"));
  Crossing unseen = permitted();
  unseen.site.utility_search.marks_visible = false;
  EXPECT_TRUE(blocks(unseen, "permit.ticket"));
  EXPECT_TRUE(blocks(permitted(), "permit.ticket", std::nullopt));
  Crossing gas = permitted();
  gas.site.utilities.push_back(gas_beside(4, 98.95));
  gas.site.utilities.back().id = "u2";
  EXPECT_TRUE(blocks(gas, "permit.exposed"));
}

// An exposure without who, when or what was measured is open; a photo is named, and asked for.
TEST(PermitLines, Exposure_WhoWhenMeasuredPhoto) {
  Crossing c = permitted();
  TestHole hole = hole_at(c.site.utilities[0], 4, 97.0);
  hole.photo = "hole.jpg";
  c.site.test_holes = {hole};
  const auto found = [](const Crossing& of) {
    for (const PermitLine& line : lines_of(of))
      if (line.code == "permit.exposed") return line.found.english();
    return std::string();
  };
  EXPECT_NE(found(c).find("hole.jpg"), std::string::npos) << found(c);
  EXPECT_NE(found(c).find("A. Nobody"), std::string::npos);
  const std::vector<PermitLine> all = lines_of(c);
  EXPECT_TRUE(std::any_of(all.begin(), all.end(), [](const PermitLine& line) { return line.level_m == 97.0; }));
  const int with_photo = open(c);
  c.site.test_holes[0].photo.clear();
  EXPECT_NE(found(c).find("no photo"), std::string::npos);
  const int before = open(c);
  EXPECT_EQ(before, with_photo + 1) << "without one nobody can see it again";
  c.site.test_holes[0].photo = "hole.jpg";
  c.site.test_holes[0].by.clear();
  EXPECT_GT(open(c), with_photo);
}

TEST(PermitLines, NoGo_Blocks) {
  for (GoSigned Permit::*who : {&Permit::supervisor, &Permit::crew}) {
    Crossing c = permitted();
    (c.permit.*who).decision = GoDecision::no_go;
    EXPECT_TRUE(signed_no_go(c.permit, today));
    EXPECT_TRUE(blocks(c, who == &Permit::crew ? "permit.crew" : "permit.supervisor"));
    (c.permit.*who).by.clear();  // nobody signs a no-go away by leaving his name out
    EXPECT_TRUE(signed_no_go(c.permit, today));
    EXPECT_TRUE(blocks(c, who == &Permit::crew ? "permit.crew" : "permit.supervisor"));
    (c.permit.*who).date.reset();
    EXPECT_TRUE(signed_no_go(c.permit, today));
    (c.permit.*who).date = "2026-03-01";
    EXPECT_FALSE(signed_no_go(c.permit, today));
    EXPECT_GT(open(c), 0);
  }
}

TEST(PermitLines, Owners_EachOnce) {
  Crossing c = permitted();
  c.site.utilities.push_back(c.site.utilities[0]);
  c.permit.owners.push_back({"road authority", "0100 9", {}, "", ""});
  EXPECT_EQ(owners_here(c), (std::vector<std::string>{"water supplier", "road authority"}));
  EXPECT_EQ(contact_of(c.permit, "nobody").phone, "");
}

}  // namespace
}  // namespace burrow::test
