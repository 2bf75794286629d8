/// The page of what stands on top: real widgets, one undo step each, nothing taken that could not be reopened.

#include <gtest/gtest.h>

#include <QPushButton>
#include <QSlider>

#include "burrow/charts/bore_charts.h"

#include "burrow/panels/surface_panel.h"
#include "support/panel_for_tests.h"

namespace burrow {
namespace {

using Page = PanelBeside<SurfacePanel>;

TEST(SurfacePanel, EntriesAndChoices_AreOneStepEach) {
  Page w("house-service");
  ASSERT_TRUE(w.opened);
  w.panel.pick("f1");
  const Crossing before = w.crossing();
  const auto& road = [&]() -> const SurfaceFeature& { return w.crossing().site.surface[0]; };
  int steps = 0;
  const auto one_more = [&](const char* what) {
    EXPECT_EQ(w.steps(), ++steps) << what;
    w.expect_opens_again();
  };
  w.type(w.panel.names(), "name", "Larkfold Rise, both lanes");
  EXPECT_EQ(road().name, "Larkfold Rise, both lanes");
  one_more("name");
  w.type(w.panel.values(), "from station", "13 ft");
  EXPECT_NEAR(road().from->m, 3.9624, 1e-12);
  one_more("from");
  w.type(w.panel.values(), "to station", "11.5");
  one_more("to");
  w.type(w.panel.values(), "skew", "10 deg");
  EXPECT_NEAR(road().skew->rad, 10 * pi / 180, 1e-12);
  one_more("skew");
  w.type(w.panel.limits(), "cover", "4 ft");
  EXPECT_NEAR(road().required_cover->m, 1.2192, 1e-12);
  one_more("cover");
  w.type(w.panel.limits(), "heave", "1/4 in");
  EXPECT_NEAR(road().heave_limit->m, 0.00635, 1e-12);
  one_more("heave");
  w.type(w.panel.permits(), "permit", "permit 115");
  one_more("permit");
  const auto stuck = [&] {
    for (const Finding& f : w.document.assessment().findings)
      if (f.code == "surface.stuck" && f.subject == "f1") return f.severity;
    return Severity::stop;
  };
  w.type(w.panel.rescue(), "how it would be got out", "dug up at night");
  EXPECT_EQ(road().rescue.how, "dug up at night");
  one_more("got out by");
  w.type(w.panel.rescue(), "agreed with", "  ");
  EXPECT_EQ(stuck(), Severity::caution);
  one_more("agreed with nobody");
  w.type(w.panel.rescue(), "agreed with", "the road authority");
  EXPECT_EQ(stuck(), Severity::note);
  one_more("agreed with");
  w.type(w.panel.rescue(), "agreed on", "2026-03-14");
  EXPECT_EQ(road().rescue.date, "2026-03-14");
  one_more("agreed on");
  w.choose("permission", "refused");
  EXPECT_TRUE(w.finds("surface.permission-refused", "f1"));
  one_more("permission");
  w.choose("kind", "ditch");
  EXPECT_EQ(road().kind, SurfaceKind::ditch);
  one_more("kind");
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(SurfacePanel, PermissionAnswered_TakesTheMissingFindingAway) {
  Page w("rail-siding");
  w.panel.pick("f1");
  EXPECT_TRUE(w.finds("missing.permission", "f1"));
  w.choose("permission", "allowed");
  EXPECT_FALSE(w.finds("missing.permission", "f1"));
  w.document.undo_stack().undo();
  EXPECT_TRUE(w.finds("missing.permission", "f1"));
}

TEST(SurfacePanel, Rule_ShowsWhatItAsksAndItsSource) {
  Page w("rail-siding");
  w.panel.pick("f1");
  const SurfaceRule& rule = *find_rule(tables_for_tests(), "track-cover-72in");
  for (int row = 1; row < w.panel.rules()->count(); ++row) {
    const std::string id = w.panel.rules()->itemData(row).toString().toStdString();
    EXPECT_EQ(find_rule(tables_for_tests(), id)->kind, SurfaceKind::track) << id;
  }
  w.choose("rule of the owner", "72 in");
  EXPECT_EQ(w.crossing().site.surface[0].rule, rule.id);
  const QString shown_text = w.panel.visible_text();
  EXPECT_TRUE(shown_text.contains(QString::fromStdString(format(*rule.cover, UnitSystem::metric))))
      << shown_text.toStdString();
  EXPECT_TRUE(shown_text.contains(QString::fromStdString(rule.source.text.english())));
  EXPECT_TRUE(shown_text.contains(QStringLiteral("[read]")));
  w.type(w.panel.limits(), "cover", "2 m");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("goes before it")));
  w.type(w.panel.limits(), "cover", "");
  w.choose("rule of the owner", "none");
  EXPECT_TRUE(w.finds("missing.rule", "f1"));
  w.expect_opens_again();
}

TEST(SurfacePanel, WrongValues_AreToldAndNothingChanges) {
  Page w("house-service");
  w.panel.pick("f1");
  const Crossing before = w.crossing();
  for (const auto& [form, label, text] : std::initializer_list<std::tuple<EntryForm*, const char*, const char*>>{
           {w.panel.values(), "from station", "12 m"},
           {w.panel.values(), "to station", "3 m"},
           {w.panel.values(), "to station", "200000 m"},
           {w.panel.values(), "skew", "95 deg"},
           {w.panel.limits(), "cover", "-1"},
           {w.panel.limits(), "heave", "0"},
           {w.panel.limits(), "heave", "5 kg"}}) {
    const int row = form->find(QString::fromUtf8(label));
    w.type(form, label, text);
    EXPECT_EQ(w.crossing(), before) << label << " " << text;
    EXPECT_FALSE(form->complaint(row).isEmpty()) << label << " " << text;
    QTest::keyClick(form->entry(row), Qt::Key_Escape);
  }
  EXPECT_EQ(w.steps(), 0);
}

TEST(SurfaceFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  for (const SurfaceFeature& feature : document.crossing().site.surface) {
    const ItemRef part{ItemKind::surface, feature.id, -1};
    for (const Field& field : fields_of(document.crossing(), part))
      for (const double end : {field.low, field.high}) {
        Crossing changed = document.crossing();
        field.apply(changed, end);
        const Result<Crossing> again = read_crossing(write_crossing(changed), tables_for_tests());
        ASSERT_TRUE(again) << field.label << ": " << again.error().english();
        EXPECT_FALSE(assess(*again, tables_for_tests()).findings.empty()) << field.label << " " << end;
      }
  }
}

TEST(SurfacePanel, AddAndRemove_EachOneStepAndUndone) {
  Page w("house-service");
  const Crossing before = w.crossing();
  w.panel.add();
  ASSERT_EQ(w.crossing().site.surface.size(), 5u);
  EXPECT_EQ(w.panel.picked_id(), w.crossing().site.surface.back().id);
  EXPECT_TRUE(w.finds("missing.permission", w.panel.picked_id())) << "nothing is answered by itself";
  w.expect_opens_again();
  w.panel.remove();
  EXPECT_EQ(w.crossing(), before);
  w.panel.pick("f2");
  w.panel.remove();
  EXPECT_EQ(w.crossing().site.surface.size(), 3u);
  w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before) << "at its old place in the list";
}

TEST(SurfacePanel, PickingGoesBothWays) {
  TestWindow w("house-service");
  w.window.side().show_page(SideColumn::Page::surface);
  SurfacePanel& panel = w.window.side().surface();
  w.window.drawing().pick({ItemKind::surface, "f3", -1});
  EXPECT_EQ(panel.picked_id(), "f3");
  panel.list()->setCurrentRow(0);
  EXPECT_EQ(w.window.drawing().picked(), (ItemRef{ItemKind::surface, "f1", -1}));
}

TEST(SurfacePanel, Levels_TypedJudgedUndone) {
  Page w("house-service");
  w.panel.pick("f1");
  const Crossing before = w.crossing();
  w.panel.add_peg();
  const auto pegs = [&]() -> const std::vector<LevelPeg>& { return w.crossing().site.surface[0].levels.pegs; };
  ASSERT_EQ(pegs().size(), 1u);
  EXPECT_NEAR(pegs()[0].station.m, (w.crossing().site.surface[0].from->m + w.crossing().site.surface[0].to->m) / 2,
              1e-12);
  w.type(w.panel.peg_entries(), "level before", "102.500");
  w.type(w.panel.peg_entries(), "level after", "102.520");
  EXPECT_TRUE(w.finds("surface.levels-rose", "f1"));
  EXPECT_TRUE(w.panel.pegs()->cards()[0].facts.contains(QStringLiteral("risen 20")));
  w.type(w.panel.peg_entries(), "level when settled", "102.498");
  EXPECT_TRUE(w.panel.pegs()->cards()[0].facts.contains(QStringLiteral("sunk 2")));
  w.type(w.panel.level_dates(), "taken before, on", "2026-03-01");
  w.panel.add_peg();
  ASSERT_EQ(pegs().size(), 2u);
  EXPECT_NEAR(pegs()[1].station.m, pegs()[0].station.m + 2, 1e-12);
  w.type(w.panel.peg_entries(), "offset of the peg", "-1.5");
  EXPECT_EQ(pegs()[1].offset.m, -1.5);
  w.expect_opens_again();
  w.panel.remove_peg();
  ASSERT_EQ(pegs().size(), 1u);
  EXPECT_EQ(pegs()[0].after->m, 102.52);
  EXPECT_EQ(w.steps(), 8);
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(SurfacePanel, HeaveChart_FollowsTheTipAndTheUnits) {
  Page w("house-service");
  using Line = HeaveChart::Line;
  const auto line = [&](Line which) { return w.panel.heave()->points(which); };
  const std::vector<HeavePoint>& heave = w.document.assessment().heave;
  ASSERT_EQ(line(Line::low).size(), static_cast<qsizetype>(heave.size()));
  EXPECT_NEAR(line(Line::low).front().y(), heave[0].low_m * 1e3, 1e-9);
  w.panel.tip()->setValue(0);
  const double ahead_at_start = line(Line::tip).back().y();
  w.panel.tip()->setValue(100);
  const double passed = line(Line::tip).front().y(), at_tip = line(Line::tip).back().y();
  EXPECT_LT(ahead_at_start, 0.02 * heave.back().low_m * 1e3) << "14 m ahead of the tip hardly anything";
  EXPECT_GT(passed, 0.98 * heave[0].low_m * 1e3);
  EXPECT_NEAR(at_tip, 0.5 * heave.back().low_m * 1e3, 1e-9) << "half of it over the tip";
  w.panel.set_units(UnitSystem::us);
  w.panel.refresh_now();
  EXPECT_NEAR(line(Line::low).front().y(), heave[0].low_m / 0.0254, 1e-9);
}

// What runs on it presses on the pipe: one undo step, and the load follows.
TEST(SurfacePanel, Traffic_IsPickedAndPresses) {
  PanelBeside<SurfacePanel> w("house-service");
  ASSERT_TRUE(w.opened);
  w.panel.refresh_now();
  const auto live = [&] {
    double most = 0;
    for (const LoadPoint& load : w.document.assessment().loads) most = std::max(most, load.live_Pa);
    return most;
  };
  const int before = w.steps();
  w.choose("what runs on it", "cars");
  EXPECT_EQ(w.crossing().site.surface.front().traffic, "cars");
  EXPECT_EQ(w.steps(), before + 1);
  w.expect_opens_again();
  w.choose("what runs on it", "not said");
  EXPECT_FALSE(w.crossing().site.surface.front().traffic);
  EXPECT_EQ(w.steps(), before + 2);
  w.choose("what runs on it", "trains");
  const double trains = live();
  w.choose("what runs on it", "nothing");
  EXPECT_LT(live(), trains);
}

// The kind of a building decides what it may be shaken by; it is asked of what stands, not of a road.
TEST(SurfacePanel, KindOfBuilding_IsPicked) {
  PanelBeside<SurfacePanel> w("house-service");
  ASSERT_TRUE(w.opened);
  w.panel.pick("f1");
  w.panel.refresh_now();
  EXPECT_FALSE(w.choice("kind of building")->isVisibleTo(&w.panel));
  w.panel.pick("f4");
  w.panel.refresh_now();
  EXPECT_TRUE(w.choice("kind of building")->isVisibleTo(&w.panel));
  EXPECT_EQ(w.choice("kind of building")->currentText(), QStringLiteral("dwelling"));
  const auto kind = [&] {
    const auto& all = w.crossing().site.surface;
    return std::find_if(all.begin(), all.end(), [](const SurfaceFeature& f) { return f.id == "f4"; })->structure;
  };
  const int before = w.steps();
  w.choose("kind of building", "listed");
  EXPECT_EQ(kind(), "fragile");
  w.expect_opens_again();
  w.choose("kind of building", "not known");
  EXPECT_FALSE(kind());
  EXPECT_EQ(w.steps(), before + 2);
}

TEST(SurfacePanel, NarrowColumn_ClipsNothing) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
    for (const int width : {240, 260, 370}) {
      Page w("house-service", units);
      w.expect_inside(width);
    }
}

TEST(SurfacePanel, NothingAbove_SaidWithNameAndDay) {
  Page w("house-service");
  Crossing bare = w.crossing();
  bare.site.surface.clear();
  bare.site.nothing_above = {};
  w.document.start_from(bare, false);
  w.panel.refresh_now();
  EXPECT_FALSE(w.panel.nothing_above()->isHidden());
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("or say that there is nothing")));
  w.type(w.panel.nothing_above(), "nothing on top, says", "E. Walker");
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("or say that there is nothing")))
      << "a name alone does not do";
  QTest::keyClick(w.panel.nothing_above()->entry(QStringLiteral("as seen on")), Qt::Key_Down);
  w.panel.refresh_now();
  EXPECT_EQ(w.crossing().site.nothing_above, (Statement{{}, "E. Walker", "2026-03-02", {}}));
  EXPECT_TRUE(w.panel.visible_text().contains(QStringLiteral("E. Walker says that there is none")));
  EXPECT_EQ(w.steps(), 2);
  w.expect_opens_again();
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), bare);
  w.panel.add();
  EXPECT_TRUE(w.panel.nothing_above()->isHidden()) << "something is on top";
}

TEST(SurfacePanel, StuckTool_HowItIsGotOutAndWhoAgreed) {
  Page w("house-service");
  w.panel.pick("f1");
  const Crossing before = w.crossing();
  w.type(w.panel.rescue(), "how it would be got out", "one lane closed at night");
  w.type(w.panel.rescue(), "agreed with", "road office");
  w.type(w.panel.rescue(), "agreed on", "2026-02-20");
  const StuckPlan& plan = w.crossing().site.surface.front().rescue;
  EXPECT_EQ(plan.how, "one lane closed at night");
  EXPECT_EQ(plan.agreed_with, "road office");
  EXPECT_EQ(plan.date, "2026-02-20");
  EXPECT_EQ(w.steps(), 3);
  w.expect_opens_again();
  while (w.document.undo_stack().canUndo()) w.document.undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

}  // namespace
}  // namespace burrow
