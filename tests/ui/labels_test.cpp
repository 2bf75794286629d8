/// Every text of the drawing finds a place of its own: no text over a text, none over a grip, none cut at an edge.

#include "burrow/drawing/labels.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

#include "burrow/check/assess.h"
#include "burrow/crossing/blank.h"
#include "burrow/drawing/handles.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

constexpr const char* samples[] = {"house-service", "rail-siding",  "car-park-duct",
                                   "four-faults",   "first-lesson", "sixty-utilities"};

/// The whole bore in a drawing of this size, as the window lays it out.
struct Sheet {
  Sheet(const Crossing& c, const Assessment& a, const QSizeF& size, double text, UnitSystem units,
        Views views = Views::both)
      : crossing(c), assessment(a) {
    style.text = text;
    style.units = units;
    const QRectF area(QPointF(0, 0), size);
    lay_out(frame, area, 0.58, lane_sizes(style, size.height()), views);
    fit(frame, crossing, assessment, true);
  }
  [[nodiscard]] Scene scene() const { return {crossing, assessment, tables_for_tests(), frame, style, focus}; }
  const Crossing& crossing;
  const Assessment& assessment;
  Style style;
  Frame frame;
  Interaction focus;
};

/// Texts that lie over one another or over a grip, or are cut.
void expect_all_clear(const Scene& scene, const std::string& where) {
  const Labels labels = place_labels(scene);
  const std::vector<WrittenBox> boxes = written_boxes(scene, labels);
  const Frame& f = scene.frame;
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const QRectF& box = boxes[i].box;
    bool inside = false;
    for (const QRectF* lane : {&f.flags, &f.on_top, &f.elevation, &f.names, &f.plan})
      inside = inside || lane->adjusted(-0.5, -0.5, 0.5, 0.5).contains(box);
    EXPECT_TRUE(inside) << where << ": " << boxes[i].what.toStdString() << " is cut";
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_FALSE(box.adjusted(0.5, 0.5, -0.5, -0.5).intersects(boxes[k].box))
          << where << ": " << boxes[i].what.toStdString() << " over " << boxes[k].what.toStdString();
    for (const Handle& handle : handles(scene)) {
      const QRectF& pane = handle.pane == Pane::plan ? f.plan : f.elevation;
      const QRectF grip = QRectF(handle.at.x() - 4, handle.at.y() - 4, 8, 8).intersected(pane);
      if (!pane.contains(handle.at)) continue;
      EXPECT_FALSE(box.intersects(grip)) << where << ": " << boxes[i].what.toStdString() << " over a grip";
    }
  }
}

constexpr QSizeF sizes[] = {{1130, 720}, {900, 560}, {820, 440}, {1500, 1040}};

TEST(Labels, NothingOverAnything_OneViewAtATime) {
  for (const char* sample : samples) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const Views views : {Views::side, Views::plan})
      for (const QSizeF& size : {QSizeF(960, 400), QSizeF(700, 320)}) {
        Sheet sheet(document.crossing(), document.assessment(), size, 12, UnitSystem::metric, views);
        EXPECT_EQ(sheet.frame.elevation.isEmpty(), views == Views::plan);
        EXPECT_EQ(sheet.frame.plan.isEmpty(), views == Views::side);
        expect_all_clear(sheet.scene(), std::string(sample) + ", one view");
      }
  }
}

// The three steps stand there until something about the site is entered; nothing lies over them.
TEST(FirstSteps, OnlyWhereNothingWasEntered_EachHasItsPlace) {
  const Tables& tables = tables_for_tests();
  Crossing blank = blank_crossing("blank");
  ASSERT_TRUE(nothing_entered(blank));
  for (const QSizeF& size : sizes) {
    const Assessment judged = assess(blank, tables);
    Sheet sheet(blank, judged, size, 12, UnitSystem::metric);
    const Labels labels = place_labels(sheet.scene());
    const auto steps = std::count_if(labels.side.begin(), labels.side.end(),
                                     [](const PlacedText& text) { return text.role == TextRole::step; });
    EXPECT_EQ(steps, 3) << size.width();
    expect_all_clear(sheet.scene(), "blank");
    EXPECT_NE(judged.verdict, Verdict::within_limits) << "an empty crossing is not a good one";
  }
  Crossing entered = blank;
  entered.site.utilities.push_back({});
  EXPECT_FALSE(nothing_entered(entered));
  entered = blank;
  entered.site.nothing_above.by = "A. M.";
  EXPECT_FALSE(nothing_entered(entered)) << "declared is entered";
  Style printed;
  printed.handles = false;
  const Assessment judged = assess(blank, tables);
  Sheet sheet(blank, judged, sizes[0], 12, UnitSystem::metric);
  sheet.style = printed;
  sheet.style.handles = false;
  for (const PlacedText& text : place_labels(sheet.scene()).side) EXPECT_NE(text.role, TextRole::step) << "on paper";
}

TEST(Labels, NothingOverAnything_AllSamples) {
  for (const char* sample : samples) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const QSizeF& size : sizes)
      for (const double text : {12.0, 24.0})
        for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
          Sheet sheet(document.crossing(), document.assessment(), size, text, units);
          expect_all_clear(sheet.scene(), sample);
          sheet.focus.picked = {ItemKind::launch, {}, -1};
          expect_all_clear(sheet.scene(), std::string(sample) + ", launch selected");
          if (document.crossing().site.utilities.empty()) continue;
          sheet.focus.picked = {ItemKind::utility, document.crossing().site.utilities.front().id, -1};
          expect_all_clear(sheet.scene(), std::string(sample) + ", utility selected");
          sheet.frame.zoom(sheet.frame.elevation.center(), 3);
          expect_all_clear(sheet.scene(), std::string(sample) + ", closer");
        }
  }
}

/// A crossing as people draw them, from a seed: 6 to 45 m, up to 60 utilities, names of up to 40 letters.
Crossing random_one(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
  Document document(tables_for_tests());
  EXPECT_TRUE(document.open(sample_path(seed % 2 ? "house-service" : "rail-siding")));
  Crossing c = document.crossing();
  const double length = between(6, 45);
  c.bore.exit.station.m = c.bore.launch.station.m + length;
  c.bore.launch.elevation.m += between(-1.2, 0.6);
  const std::vector<Utility> models = c.site.utilities;
  c.site.utilities.clear();
  c.site.test_holes.clear();
  const int count = std::uniform_int_distribution<int>(0, seed % 5 ? 9 : 60)(random);
  for (int i = 0; i < count && !models.empty(); ++i) {
    Utility u = models[static_cast<std::size_t>(i) % models.size()];
    u.id = "u" + std::to_string(i);
    u.name = std::string(static_cast<std::size_t>(between(1, 40)), 'm');
    const double station = c.bore.launch.station.m + between(-2, length + 2);
    const double by = u.path.empty() ? 0 : station - u.path.front().x_m, down = between(-1.5, 1.5);
    for (PathVertex& v : u.path) {
      v.x_m += by;
      if (v.z_m) v.z_m = seed % 7 == 0 && i == 0 ? std::nullopt : std::optional(*v.z_m + down);
    }
    c.site.utilities.push_back(u);
  }
  return c;
}

TEST(Labels, NothingOverAnything_RandomCrossings) {
  constexpr unsigned crossings = 300;
  for (unsigned seed = 1; seed <= crossings; ++seed) {
    const Crossing crossing = random_one(seed);
    const Assessment assessment = assess(crossing, tables_for_tests());
    const QSizeF& size = sizes[seed % std::size(sizes)];
    Sheet sheet(crossing, assessment, size, seed % 3 ? 12 : 15, seed % 4 ? UnitSystem::metric : UnitSystem::us);
    if (seed % 2 && !crossing.site.utilities.empty())
      sheet.focus.picked = {ItemKind::utility, crossing.site.utilities.front().id, -1};
    expect_all_clear(sheet.scene(), "seed " + std::to_string(seed));
    if (testing::Test::HasFailure()) return;
  }
}

// Nothing that counts is silent on the drawing: in a flag of its own, named by another, or by its number.
TEST(Flags, WhatCountsAndIsInView_IsSaidSomewhere) {
  for (const char* sample : {"house-service", "four-faults", "rail-siding", "car-park-duct"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const QSizeF& size : sizes) {
      const Sheet sheet(document.crossing(), document.assessment(), size, 12, UnitSystem::metric);
      const FlagLane lane = place_flag_lane(sheet.scene());
      std::set<int> said;
      for (const Flag& flag : lane.flags) {
        said.insert(flag.finding);
        said.insert(flag.others.begin(), flag.others.end());
      }
      for (const FlagDot& dot : lane.dots) said.insert(dot.findings.begin(), dot.findings.end());
      const auto& findings = document.assessment().findings;
      for (std::size_t i = 0; i < findings.size(); ++i) {
        if (!flag_wanted(findings[i])) continue;
        const double x = sheet.frame.px_x(*findings[i].station_m);
        if (x < sheet.frame.flags.left() || x > sheet.frame.flags.right()) continue;
        EXPECT_TRUE(said.count(static_cast<int>(i))) << sample << " " << findings[i].code;
      }
    }
  }
}

/// No flag and no dot names one that is graver than the one it shows.
void expect_gravest_shown(const Scene& scene, const std::string& where) {
  const FlagLane lane = place_flag_lane(scene);
  const auto& findings = scene.assessment.findings;
  const auto rank = [&](int i) {
    const Finding& f = findings.at(static_cast<std::size_t>(i));
    return f.severity == Severity::stop ? 0 : f.missing ? 1 : f.severity == Severity::caution ? 2 : 3;
  };
  for (const Flag& flag : lane.flags)
    for (const int other : flag.others)
      EXPECT_GE(rank(other), rank(flag.finding)) << where << ": " << flag.text.toStdString();
  for (const FlagDot& dot : lane.dots)
    for (const int other : dot.findings)
      EXPECT_GE(rank(other), rank(dot.findings.front())) << where << ": " << dot.text.toStdString();
}

TEST(Flags, TheGravestIsTheOneShown) {
  for (const char* sample : samples) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    for (const QSizeF& size : sizes)
      expect_gravest_shown(Sheet(document.crossing(), document.assessment(), size, 12, UnitSystem::metric).scene(),
                           sample);
  }
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const Crossing crossing = random_one(seed);
    const Assessment assessment = assess(crossing, tables_for_tests());
    const Sheet sheet(crossing, assessment, sizes[seed % std::size(sizes)], 12, UnitSystem::metric);
    expect_gravest_shown(sheet.scene(), "seed " + std::to_string(seed));
  }
}

// Isotonic regression by a second route: quadratic steps of projection onto one constraint at a time (Dykstra 1983).
TEST(UtilityChips, InOrder_TheLeastShifts_AsDykstraFindsThem) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(0, 900), wide(20, 120);
  for (int trial = 0; trial < 20; ++trial) {
    std::vector<double> wanted, widths;
    for (int i = 0; i < 7; ++i) {
      wanted.push_back(place(random));
      widths.push_back(wide(random));
    }
    std::sort(wanted.begin(), wanted.end());
    const double gap = 5, from = -2000, to = 4000;  // the edges do not bind
    const std::vector<double> lefts = in_order(wanted, widths, gap, from, to);
    std::vector<double> x(wanted.size());
    for (std::size_t i = 0; i < x.size(); ++i) x[i] = wanted[i] - widths[i] / 2;
    std::vector<double> correction(x.size(), 0);
    for (int round = 0; round < 4000; ++round)
      for (std::size_t i = 1; i < x.size(); ++i) {
        const double a = x[i - 1] - correction[i], b = x[i] + correction[i];
        const double over = (a + widths[i - 1] + gap - b) / 2;
        const double push = std::max(0.0, over);
        correction[i] = -push;
        x[i - 1] = a - push;
        x[i] = b + push;
      }
    for (std::size_t i = 0; i < x.size(); ++i) EXPECT_NEAR(lefts[i], x[i], 0.05) << "trial " << trial;
  }
}

TEST(UtilityChips, InOrder_StaysBetweenTheEdges) {
  const std::vector<double> lefts = in_order({5, 10, 995}, {100, 100, 100}, 5, 0, 1000);
  EXPECT_GE(lefts[0], 0);
  EXPECT_GE(lefts[1], lefts[0] + 105);
  EXPECT_LE(lefts[2] + 100, 1000);
}

TEST(UtilityChips, SixtyOfThem_LettersAndTheMostTellingNames) {
  TestWindow w("sixty-utilities");
  ASSERT_GE(w.crossing().site.utilities.size(), 60u);
  const std::string picked = w.crossing().site.utilities.back().id;
  w.window.drawing().pick({ItemKind::utility, picked, -1});
  settle(w.window);
  const std::shared_ptr<const Labels> labels = w.window.drawing().labels();
  const auto& chips = labels->utilities.chips;
  ASSERT_GT(chips.size(), 15u);
  EXPECT_EQ(chips.size() + static_cast<std::size_t>(labels->utilities.left_out), 60u) << "none is forgotten";
  const auto own = std::find_if(chips.begin(), chips.end(), [&](const UtilityChip& c) { return c.id == picked; });
  ASSERT_NE(own, chips.end());
  EXPECT_FALSE(own->text.isEmpty()) << "what is selected has its name";
}

TEST(UtilityChips, LongName_LosesItsMiddle_UnknownDepthIsSaid) {
  TestWindow w("house-service");
  Crossing c = w.crossing();
  c.site.utilities = {c.site.utilities.front()};
  c.site.utilities.front().name = "high pressure transmission main, north side";
  w.window.document().start_from(c, false);
  settle(w.window);
  ASSERT_EQ(w.window.drawing().labels()->utilities.chips.size(), 1u);
  EXPECT_TRUE(w.window.drawing().labels()->utilities.chips.front().text.contains(QChar(0x2026)));
  for (PathVertex& v : c.site.utilities.front().path) v.z_m.reset();
  c.site.utilities.front().name = "main";
  w.window.document().start_from(c, false);
  settle(w.window);
  EXPECT_TRUE(w.window.drawing().labels()->utilities.chips.front().text.contains(QStringLiteral("depth not known")));
}

TEST(UtilityChips, Click_SelectsTheUtility) {
  TestWindow w("house-service");
  settle(w.window);
  const UtilityChip chip = w.window.drawing().labels()->utilities.chips.back();
  w.press(chip.box.center());
  w.release(chip.box.center());
  EXPECT_EQ(w.window.drawing().picked(), (ItemRef{ItemKind::utility, chip.id, -1}));
}

TEST(OnTop, EachFeatureHasItsStretch_ClickSelectsIt) {
  TestWindow w("house-service");
  settle(w.window);
  const std::shared_ptr<const Labels> labels = w.window.drawing().labels();
  ASSERT_FALSE(labels->on_top.empty());
  const OnTopPart& part = labels->on_top.front();
  w.press(part.stretch.center());
  w.release(part.stretch.center());
  EXPECT_EQ(w.window.drawing().picked(), (ItemRef{ItemKind::surface, part.id, -1}));
}

// 07: the largest round factor whose levels still fit; chosen with the whole bore, said on the drawing, one click to
// change.
TEST(Heights, AutomaticFactor_IsTheLargestThatFits) {
  for (const char* sample : samples) {
    TestWindow w(sample);
    const Frame& f = w.window.drawing().frame();
    EXPECT_TRUE(w.window.drawing().automatic_heights());
    const LevelBand band =
        levels_to_show(w.crossing(), w.window.document().assessment(), f.left_station_m, f.right_station_m());
    const double high = (band.high_m - band.low_m) * f.px_per_m;
    EXPECT_LE(high * f.exaggeration, f.elevation.height() + 1) << sample;
    EXPECT_GE(f.px_z(band.high_m), f.elevation.top() - 0.5) << sample;
    for (const double factor : height_factors)
      if (factor > f.exaggeration && f.px_per_m * (f.right_station_m() - f.left_station_m) > 0) {
        EXPECT_GT(high * factor, f.elevation.height()) << sample << " " << factor << " would fit too";
      }
  }
}

// Derived: 11 cm at 60 px/m are 6.6 px; ×10 is the first round factor at which they are 60 px. Levels that must be seen
// bound it.
TEST(Heights, Miss_RaisedUntilItIsSeen_AsFarAsItFits) {
  Frame f;
  f.elevation = QRectF(0, 100, 1200, 400);
  f.px_per_m = 60;
  f.exaggeration = 2;
  f.top_elevation_m = 101;
  EXPECT_TRUE(raise_heights(f, -0.11, {98.4, 98.6}));
  EXPECT_EQ(f.exaggeration, 10);
  EXPECT_NEAR(f.px_z(98.5), 300, 1e-9) << "in the middle";
  EXPECT_FALSE(raise_heights(f, -0.11, {98.4, 98.6})) << "seen already";
  EXPECT_FALSE(raise_heights(f, 0, {98.4, 98.6})) << "there is none";
  f.exaggeration = 2;
  EXPECT_TRUE(raise_heights(f, 0.11, {97.8, 98.9}));
  EXPECT_EQ(f.exaggeration, 5) << "1.1 m of levels over 400 px";
  EXPECT_FALSE(raise_heights(f, 0.001, {97.8, 98.9})) << "no greater one fits";
}

TEST(Heights, TypedFactorStays_AutomaticComesBack) {
  TestWindow w("car-park-duct");
  DrawingView& drawing = w.window.drawing();
  const double automatic = drawing.exaggeration();
  drawing.set_exaggeration(1);
  drawing.zoom_to_fit();
  EXPECT_EQ(drawing.exaggeration(), 1);
  EXPECT_FALSE(drawing.automatic_heights());
  drawing.set_automatic_heights();
  EXPECT_EQ(drawing.exaggeration(), automatic);
  EXPECT_EQ(heights_words(1), QStringLiteral("true to scale"));
  EXPECT_EQ(heights_words(2.5), QStringLiteral("heights ×2.5"));
}

TEST(Heights, OutOfTheBand_AnArrowSaysWhere) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("four-faults")));
  const Sheet sheet(document.crossing(), document.assessment(), {1130, 720}, 12, UnitSystem::metric);
  const Labels labels = place_labels(sheet.scene());
  for (const Utility& u : document.crossing().site.utilities) {
    const UtilityMark mark = utility_mark(u);
    if (!mark.depth_known || sheet.frame.elevation.contains(sheet.frame.side(mark.station_m, mark.elevation_m)))
      continue;
    EXPECT_TRUE(std::any_of(labels.side.begin(), labels.side.end(), [&](const PlacedText& text) {
      return text.role == TextRole::away && text.id == u.id;
    })) << u.name;
  }
}

}  // namespace
}  // namespace burrow
