/// What the drawing shows on demand: why the tool turns, neutral cover, trials, stops, rescue pit, whose model it is.

#include <gtest/gtest.h>

#include "burrow/check/trials_plan.h"
#include "burrow/drawing/along.h"
#include "burrow/drawing/labels.h"
#include "burrow/pit/rescue.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

constexpr const char* samples[] = {"house-service", "rail-siding",  "car-park-duct",
                                   "four-faults",   "first-lesson", "sixty-utilities"};

/// A drawing without a window, painted onto an image.
struct Bench {
  explicit Bench(const char* sample, bool strip = false) : document(tables_for_tests()) {
    opened = document.open(sample_path(sample)).has_value();
    layers.turning = strip;
    lay_out(frame, QRectF(0, 0, 1160, 820), 0.58, lane_sizes(style, 820, 1, strip));
    fit(frame, document.crossing(), document.assessment(), true);
  }
  [[nodiscard]] Scene scene() const {
    return {
        document.crossing(), document.assessment(), document.tables(), frame, style, Interaction{}, nullptr, layers};
  }
  [[nodiscard]] QImage image() const {
    QImage all(1160, 820, QImage::Format_RGB32);
    all.fill(style.theme.panel);
    QPainter painter(&all);
    paint_scene(painter, scene());
    return all;
  }
  mutable Document document;  ///< answers on demand
  bool opened = false;
  Style style;
  Frame frame;
  VisibleLayers layers;
};

bool same_in(const QImage& a, const QImage& b, const QRectF& area) {
  return a.copy(area.toAlignedRect()) == b.copy(area.toAlignedRect());
}

const Trials& some_trials(Document& document) {
  static std::map<std::string, Trials> layer_cache;
  const auto [it, is_new] = layer_cache.try_emplace(document.crossing().name);
  if (is_new) {
    Crossing few = document.crossing();
    few.bore.trials.count.set(400);
    it->second =
        run_trials(few, document.tables(), trials_setup(few, document.tables(), document.assessment()), {}, {}, 1);
  }
  return it->second;
}

TEST(TurningStrip, LiesBetweenElevationAndRuler_SharesTheStationScale) {
  TestWindow w("house-service");
  DrawingView& view = w.window.drawing();
  EXPECT_FALSE(view.turning_strip());
  EXPECT_EQ(view.frame().turning.height(), 0);
  EXPECT_DOUBLE_EQ(view.frame().names.bottom(), view.frame().ruler.top());

  view.set_turning_strip(true);
  const Frame& f = view.frame();
  EXPECT_GT(f.turning.height(), 8 * view.style().text);
  EXPECT_DOUBLE_EQ(f.elevation.bottom(), f.names.top());
  EXPECT_DOUBLE_EQ(f.names.bottom(), f.turning.top());
  EXPECT_DOUBLE_EQ(f.turning.bottom(), f.ruler.top());
  EXPECT_DOUBLE_EQ(f.ruler.bottom(), f.plan.top());
  EXPECT_DOUBLE_EQ(f.turning.left(), f.elevation.left());
  EXPECT_DOUBLE_EQ(f.turning.width(), f.plan.width());
  EXPECT_DOUBLE_EQ(f.side(7, 100).x(), f.above(7, 0).x());
  EXPECT_EQ(f.pane_at(f.turning.center()), Pane::turning);

  view.set_turning_strip(false);
  EXPECT_EQ(view.frame().turning.height(), 0);
}

TEST(TurningStrip, RulerCanBeDraggedWithIt) {
  for (const bool strip : {false, true}) {
    TestWindow w("house-service");
    DrawingView& view = w.window.drawing();
    view.set_turning_strip(strip);
    const QPointF from(view.frame().ruler.center().x(), view.frame().ruler.center().y());
    w.drag(from, from + QPointF(0, -40));
    EXPECT_NEAR(view.frame().ruler.center().y(), from.y() - 40, 1.0) << strip;
  }
}

TEST(TurningStrip, IsPaintedOnlyWhenOn) {
  const Bench off("house-service");
  Bench on("house-service", true);
  const QImage with = on.image();
  on.layers.turning = false;
  EXPECT_FALSE(same_in(with, on.image(), on.frame.turning));
  EXPECT_TRUE(off.frame.turning.isEmpty());
}

TEST(TurningStrip, NumbersAreThoseOfThePath) {
  const Bench bench("house-service");
  const PathPoint& p = bench.document.assessment().bore.points[20];
  const QStringList shown_text = turning_numbers(bench.document.assessment(), p.x_m, UnitSystem::metric);
  ASSERT_EQ(shown_text.size(), 4);
  EXPECT_TRUE(shown_text[1].contains(QString::fromStdString(format(p.resistance_above_Pa, Dimension::pressure, {}))));
  EXPECT_TRUE(shown_text[1].contains(QString::fromStdString(format(p.resistance_below_Pa, Dimension::pressure, {}))));
  EXPECT_TRUE(shown_text[2].startsWith(p.curvature_1_m < 0 ? QStringLiteral("sags") : QStringLiteral("turns up")));
  EXPECT_TRUE(shown_text[2].contains(QString::fromStdString(format(10 * p.curvature_1_m, Dimension::grade, {}))));
  EXPECT_TRUE(turning_numbers(bench.document.assessment(), -3, UnitSystem::metric).isEmpty());
  const QStringList feet = turning_numbers(bench.document.assessment(), p.x_m, UnitSystem::us);
  EXPECT_TRUE(feet[1].contains(QStringLiteral("psi")));
  EXPECT_TRUE(feet[2].endsWith(QStringLiteral("10 ft")));
}

TEST(TurningStrip, ShallowInSandResistsLessAboveAndClimbs) {
  Bench bench("first-lesson");
  Crossing shallow = bench.document.crossing();
  for (Stratum& s : shallow.site.strata) s.soil = "medium-sand";
  shallow.bore.launch.elevation.m =
      elevation_at(shallow.site.ground, shallow.bore.launch.station.m) - 5 * 0.065;  // half of ten diameters
  bench.document.start_from(shallow, false);
  const double middle = shallow.bore.launch.station.m + 2;
  const std::optional<PathPoint> at = path_point_at(bench.document.assessment(), middle);
  ASSERT_TRUE(at.has_value());
  EXPECT_LT(at->resistance_above_Pa, at->resistance_below_Pa);
  EXPECT_TRUE(turning_numbers(bench.document.assessment(), middle, UnitSystem::metric)[2].startsWith(
      QStringLiteral("turns up: grade +")));
}

TEST(TurningStrip, FlagsStayInTheirLane) {
  for (const char* sample : samples) {
    const Bench bench(sample, true);
    const std::vector<Flag> flags = place_flag_lane(bench.scene()).flags;
    for (std::size_t i = 0; i < flags.size(); ++i) {
      EXPECT_TRUE(bench.frame.flags.contains(flags[i].box)) << sample;
      for (std::size_t j = i + 1; j < flags.size(); ++j) EXPECT_FALSE(flags[i].box.intersects(flags[j].box)) << sample;
    }
  }
}

/// Where the name of the neutral cover stands; empty: nowhere.
QRectF neutral_name(const Scene& scene) {
  for (const PlacedText& text : place_labels(scene).side)
    if (text.role == TextRole::neutral) return text.box;
  return {};
}

TEST(NeutralLine, IsDrawnWhenOn_NameIsClearOfUtilities) {
  for (const char* sample : samples) {
    Bench bench(sample);
    const QImage on = bench.image();
    EXPECT_TRUE(bench.layers.neutral_line);
    bench.layers.neutral_line = false;
    const QImage off = bench.image();
    EXPECT_FALSE(same_in(on, off, bench.frame.elevation)) << sample;
    EXPECT_TRUE(same_in(on, off, bench.frame.plan)) << sample;
    bench.layers.neutral_line = true;
    const QRectF name = neutral_name(bench.scene());
    EXPECT_TRUE(name.isEmpty() || bench.frame.elevation.contains(name)) << sample;
    for (const Utility& u : bench.document.crossing().site.utilities) {
      const UtilityMark mark = utility_mark(u);
      if (mark.depth_known) {
        EXPECT_FALSE(name.contains(bench.frame.side(mark.station_m, mark.elevation_m))) << sample << " " << u.name;
      }
    }
  }
}

TEST(NeutralLine, BreaksWhereThereIsNone_AndIsSilentFarBelow) {
  const Bench bench("house-service");
  Assessment none = bench.document.assessment();
  for (NeutralPoint& p : none.neutral_line) p.elevation_m.reset();
  Assessment deep = bench.document.assessment();
  for (NeutralPoint& p : deep.neutral_line) p.elevation_m = 20;
  for (const Assessment* answer : {&none, &deep}) {
    Scene scene{bench.document.crossing(), *answer, bench.document.tables(), bench.frame, bench.style, Interaction{}};
    EXPECT_TRUE(neutral_name(scene).isEmpty());
    const auto paint = [&](bool on) {
      QImage all(1160, 820, QImage::Format_RGB32);
      all.fill(Qt::white);
      scene.layers.neutral_line = on;
      QPainter painter(&all);
      paint_scene(painter, scene);
      painter.end();
      return all;
    };
    EXPECT_EQ(paint(true), paint(false));
  }
}

TEST(Cloud, IsDrawnInBothViews_StaleLooksStale) {
  Bench bench("four-faults");
  const QImage bare = bench.image();
  bench.layers.trials = &some_trials(bench.document);
  bench.layers.trials_current = true;
  EXPECT_EQ(bare, bench.image()) << "off until asked for";
  bench.layers.cloud = true;
  const QImage current = bench.image();
  EXPECT_FALSE(same_in(bare, current, bench.frame.elevation));
  EXPECT_FALSE(same_in(bare, current, bench.frame.plan));
  bench.layers.trials_current = false;
  const QImage stale = bench.image();
  EXPECT_FALSE(same_in(stale, current, bench.frame.elevation));
  EXPECT_FALSE(same_in(stale, current, bench.frame.plan));
  EXPECT_FALSE(same_in(stale, bare, bench.frame.plan));
  EXPECT_TRUE(bench.frame.elevation.contains(cloud_area(bench.scene(), Pane::elevation)));
  EXPECT_TRUE(bench.frame.plan.contains(cloud_area(bench.scene(), Pane::plan)));
}

TEST(Cloud, EndsAreToldApartByTheirMarks) {
  Bench bench("four-faults");
  Trials trials = some_trials(bench.document);
  trials.outcomes[0].station_m = 5;
  trials.outcomes[0].elevation_m = bench.document.crossing().bore.launch.elevation.m - 1;
  std::vector<QImage> seen;
  for (const TrialEnd end : {TrialEnd::arrived, TrialEnd::contact, TrialEnd::daylight, TrialEnd::refused}) {
    trials.outcomes[0].end = end;
    bench.layers.trials = &trials;
    bench.layers.trials_current = false;  // grey: only the shapes differ
    bench.layers.cloud = true;
    const QPointF at = bench.frame.side(5, trials.outcomes[0].elevation_m);
    const QImage here = bench.image().copy(QRectF(at.x() - 8, at.y() - 8, 16, 16).toAlignedRect());
    for (const QImage& other : seen) EXPECT_NE(here, other);
    seen.push_back(here);
  }
}

TEST(Cloud, KeptPixelsFollowTheTrials) {
  TestWindow w("four-faults");
  DrawingView& view = w.window.drawing();
  Trials trials = some_trials(w.window.document());
  const QImage bare = w.viewport()->grab().toImage();
  view.set_cloud(true);
  view.set_trials(&trials, true);
  const QImage first = w.viewport()->grab().toImage();
  EXPECT_NE(bare, first);
  EXPECT_EQ(first, w.viewport()->grab().toImage());
  for (auto& path : trials.paths)
    for (Point3& p : path) p.z_m -= 0.3;
  view.set_trials(&trials, true);
  EXPECT_NE(first, w.viewport()->grab().toImage());
  view.set_trials(nullptr, false);
  EXPECT_EQ(bare, w.viewport()->grab().toImage());
}

TEST(Cloud, AnotherCrossingTakesTrialsAndRescuePitAway) {
  TestWindow w("four-faults");
  DrawingView& view = w.window.drawing();
  const Trials trials = some_trials(w.window.document());
  view.set_trials(&trials, true);
  view.set_rescue(w.window.document().assessment().launch_pit);
  ASSERT_TRUE(w.window.document().open(sample_path("house-service")).has_value());
  EXPECT_EQ(view.layers().trials, nullptr);
  EXPECT_FALSE(view.layers().rescue.has_value());
}

TEST(Stops, EachStretchIsHitAndSaysWhatIsAbove) {
  for (const char* sample : samples) {
    const Bench bench(sample);
    const Assessment& answer = bench.document.assessment();
    ASSERT_FALSE(answer.stops.empty()) << sample;
    const double y = stops_row(bench.frame, bench.style).center().y();
    for (std::size_t i = 0; i < answer.stops.size(); ++i) {
      const StopStretch& s = answer.stops[i];
      const QPointF at(bench.frame.px_x((s.from_m + s.to_m) / 2), y);
      ASSERT_EQ(stop_at(bench.scene(), at), i) << sample;
      const QString shown_text = pointer_words(bench.scene(), at).join(QLatin1Char(' '));
      EXPECT_FALSE(shown_text.contains(QStringLiteral("%"))) << "a rate without a source";
      EXPECT_EQ(shown_text.contains(QStringLiteral("not to be dug out")), s.above != AboveBore::diggable);
      EXPECT_FALSE(stop_at(bench.scene(), {at.x(), bench.frame.ruler.bottom() - 2}).has_value());
    }
    EXPECT_FALSE(stop_at(bench.scene(), {bench.frame.px_x(answer.stops.back().to_m) + 5, y}).has_value());
  }
}

TEST(Stops, TextNamesWhatIsOnTop) {
  const Bench bench("house-service");
  const StopStretch& road = bench.document.assessment().stops[1];
  EXPECT_EQ(stop_text(bench.document.crossing(), road, false, UnitSystem::metric).toStdString(),
            "under Larkfold Rise: a tool that stops is not to be dug out");
  EXPECT_EQ(stop_text(bench.document.crossing(), road, true, UnitSystem::metric).toStdString(),
            "under Larkfold Rise: 0.71 % chance that the ground stops the tool; not to be dug out");
}

TEST(Stops, PlaceWhereTheToolWouldStopIsMarked) {
  const Bench bench("house-service");
  Assessment stuck = bench.document.assessment();
  const auto paint = [&] {
    QImage all(1160, 820, QImage::Format_RGB32);
    all.fill(Qt::white);
    QPainter painter(&all);
    paint_scene(painter, Scene{bench.document.crossing(), stuck, bench.document.tables(), bench.frame, bench.style,
                               Interaction{}});
    painter.end();
    return all;
  };
  const QImage goes = paint();
  stuck.refusal_station_m = 6;
  const QImage stops = paint();
  EXPECT_FALSE(same_in(goes, stops, stops_row(bench.frame, bench.style)));
  EXPECT_FALSE(same_in(goes, stops, bench.frame.elevation));
}

TEST(Rescue, IsDrawnInBothViews) {
  Bench bench("house-service");
  const QImage bare = bench.image();
  const Crossing& crossing = bench.document.crossing();
  bench.layers.rescue = rescue_pit_shape(crossing, resolve_tool(crossing.bore.tool, bench.document.tables()),
                                         bench.document.tables(), bench.document.assessment().bore, Length{7});
  const QImage with = bench.image();
  EXPECT_FALSE(same_in(bare, with, bench.frame.elevation));
  EXPECT_FALSE(same_in(bare, with, bench.frame.plan));
}

TEST(ModelStatus, StandsInTheElevationAndChangesWhenCalibrated) {
  Bench bench("house-service");
  const QRectF before = place_labels(bench.scene()).status;
  EXPECT_TRUE(bench.frame.elevation.contains(before));
  Crossing known = bench.document.crossing();
  known.bore.model.calibrated_from.set(12);
  for (int i = 1; i <= 12; ++i) known.bore.model.calibrated_records.push_back("record " + std::to_string(i));
  const QImage ours = bench.image();
  bench.document.start_from(known, false);
  EXPECT_FALSE(same_in(ours, bench.image(), before));
}

TEST(Pointer, IsToldTheNumbersInTheStrip) {
  TestWindow w("house-service");
  w.window.drawing().set_turning_strip(true);
  const QImage bare = w.viewport()->grab().toImage();
  const QPointF at = w.window.drawing().frame().turning.center();
  w.mouse(QEvent::MouseMove, at, Qt::NoButton, Qt::NoButton);
  EXPECT_NE(bare, w.viewport()->grab().toImage());
  QEvent leave(QEvent::Leave);
  QCoreApplication::sendEvent(&w.window.drawing(), &leave);
  EXPECT_EQ(bare, w.viewport()->grab().toImage());
}

}  // namespace
}  // namespace burrow
