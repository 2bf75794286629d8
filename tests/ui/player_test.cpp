// The player: a bore as it happens, in the drawing and under it.

#include "burrow/window/player_bar.h"

#include <gtest/gtest.h>

#include <QAction>
#include <QImage>
#include <QLabel>
#include <QPushButton>
#include <cmath>

#include "burrow/bore/point_on_path.h"
#include "burrow/check/played_bores.h"
#include "burrow/check/predicted_playback.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

struct PlayedWindow : TestWindow {
  explicit PlayedWindow(const char* sample, QSize size = {1600, 900}) : TestWindow(sample, size) {
    window.player().set_clock([this] { return ms; });
    window.player().set_still(false);
  }
  /// Presses Space in the drawing.
  void space() {
    QTest::keyPress(&window.drawing(), Qt::Key_Space);
    QTest::keyRelease(&window.drawing(), Qt::Key_Space);
    QCoreApplication::processEvents();
  }
  void wait(qint64 milliseconds) {
    ms += milliseconds;
    window.player().tick();
  }
  [[nodiscard]] const std::optional<Played>& shown() { return window.drawing().layers().played; }

  qint64 ms = 1000;
};

TEST(Player, Space_PlaysAndPauses) {
  PlayedWindow w("house-service");
  ASSERT_TRUE(w.opened);
  PlayerBar& player = w.window.player();
  EXPECT_FALSE(player.isVisible());
  EXPECT_FALSE(w.shown());
  w.space();
  EXPECT_TRUE(player.isVisible());
  EXPECT_TRUE(player.playing());
  player.set_speed(20);
  const double from = player.time_s();
  w.wait(500);
  EXPECT_NEAR(player.time_s() - from, 10, 1e-9) << "half a second at twenty times";
  ASSERT_TRUE(w.shown());
  EXPECT_EQ(w.shown()->time_s, player.time_s());
  w.space();
  EXPECT_FALSE(player.playing());
  const double stopped = player.time_s();
  w.wait(500);
  EXPECT_EQ(player.time_s(), stopped);
}

TEST(Player, AtTheEnd_ItPauses_AndStartsAgain) {
  PlayedWindow w("house-service");
  w.space();
  PlayerBar& player = w.window.player();
  player.set_speed(60);
  w.wait(1000LL * 3600);
  EXPECT_FALSE(player.playing());
  ASSERT_TRUE(w.shown());
  EXPECT_EQ(player.time_s(), w.shown()->bore->end_s());
  w.space();
  EXPECT_TRUE(player.playing());
  EXPECT_EQ(player.time_s(), 0);
}

TEST(Player, SpaceWithADrag_StillMovesTheView) {
  PlayedWindow w("house-service");
  QTest::keyPress(&w.window.drawing(), Qt::Key_Space);
  const QPointF middle = w.window.drawing().frame().elevation.center();
  w.drag(middle, middle + QPointF(60, 0));
  QTest::keyRelease(&w.window.drawing(), Qt::Key_Space);
  EXPECT_FALSE(w.window.player().isVisible());
}

TEST(Player, Steps_GoFromMarkToMark) {
  PlayedWindow w("house-service");
  w.key(Qt::Key_Period);
  PlayerBar& player = w.window.player();
  ASSERT_TRUE(w.shown());
  const Playback& bore = *w.shown()->bore;
  ASSERT_GE(bore.marks_m.size(), 3u);
  EXPECT_NEAR(nose_at(bore, player.time_s()), bore.marks_m[0], 1e-6);
  w.key(Qt::Key_Period);
  EXPECT_NEAR(nose_at(bore, player.time_s()), bore.marks_m[1], 1e-6);
  w.key(Qt::Key_Comma);
  EXPECT_NEAR(nose_at(bore, player.time_s()), bore.marks_m[0], 1e-6);
  w.key(Qt::Key_Comma);
  EXPECT_EQ(player.time_s(), 0);
  for (int i = 0; i < 40; ++i) w.key(Qt::Key_Period);
  EXPECT_EQ(player.time_s(), bore.end_s());
}

// What the run sheet says at the mark at hand stands under the strip.
TEST(Player, Task_IsThatOfTheRunSheet) {
  PlayedWindow w("house-service");
  w.key(Qt::Key_Period);
  QString text;
  for (const QLabel* label : w.window.player().findChildren<QLabel*>()) text += label->text() + QLatin1Char('\n');
  EXPECT_TRUE(text.contains(QStringLiteral("Now: "))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("Next: "))) << text.toStdString();
  EXPECT_TRUE(text.contains(QStringLiteral("nose "))) << text.toStdString();
}

// A change of the layout is played at once: nothing old stays on the screen.
TEST(Player, ADrag_ChangesWhatIsPlayed) {
  PlayedWindow w("house-service");
  w.key(Qt::Key_Period);
  ASSERT_TRUE(w.shown());
  const double before = w.shown()->bore->path.points.front().z_m;
  raise_launch(w.window.document(), -0.2);
  QCoreApplication::processEvents();
  ASSERT_TRUE(w.shown());
  EXPECT_NEAR(w.shown()->bore->path.points.front().z_m, before - 0.2, 1e-9);
  EXPECT_EQ(w.shown()->bore->path.points, w.window.document().assessment().bore.points);
}

TEST(Player, Closed_TheDrawingIsAsBefore) {
  PlayedWindow w("house-service");
  w.space();
  w.wait(2000);
  Q_EMIT w.window.player().closed();
  QCoreApplication::processEvents();
  EXPECT_FALSE(w.window.player().isVisible());
  EXPECT_FALSE(w.window.player().playing());
  EXPECT_FALSE(w.shown());
}

// Another crossing has no time of the old one.
TEST(Player, AnotherCrossing_StartsAtItsBeginning) {
  PlayedWindow w("house-service");
  w.key(Qt::Key_Period);
  ASSERT_TRUE(w.window.document().open(sample_path("four-faults")));
  QCoreApplication::processEvents();
  ASSERT_TRUE(w.shown());
  EXPECT_EQ(w.shown()->bore->path.points, w.window.document().assessment().bore.points);
  EXPECT_EQ(w.shown()->time_s, 0);
}

// Who asked the desktop for stillness gets marks, not a glide.
TEST(Player, Still_GoesMarkByMark) {
  PlayedWindow w("house-service");
  w.window.player().set_still(true);
  w.space();
  w.window.player().set_speed(60);
  w.wait(100);
  ASSERT_TRUE(w.shown());
  EXPECT_EQ(w.shown()->time_s, 0) << "before the first mark nothing moves";
  for (int i = 0; i < 40; ++i) w.wait(100);
  ASSERT_TRUE(w.shown());
  const Playback& bore = *w.shown()->bore;
  const double nose = nose_at(bore, w.shown()->time_s);
  bool at_a_mark = w.shown()->time_s == bore.end_s();
  for (const double mark : bore.marks_m) at_a_mark = at_a_mark || std::abs(mark - nose) < 1e-6;
  EXPECT_TRUE(at_a_mark) << nose;
}

// The tool on the screen is where the values say: body and hole up to the nose, nothing ahead of it.
TEST(Player, Drawn_TheNoseIsWhereItIs) {
  PlayedWindow w("house-service");
  w.window.drawing().set_dimensions(false);
  w.key(Qt::Key_Period);
  w.key(Qt::Key_Period);
  ASSERT_TRUE(w.shown());
  const Playback& bore = *w.shown()->bore;
  const double nose = nose_at(bore, w.shown()->time_s);
  const auto picture_now = [&] {
    return w.window.drawing().viewport()->grab().toImage().convertToFormat(QImage::Format_RGB32);
  };
  const QImage with = picture_now();
  w.window.drawing().set_played(std::nullopt);
  const QImage without = picture_now();
  const double ratio = with.devicePixelRatio();
  const auto place = [&](double s_m) {
    const PathPoint p = point_at(bore.path, s_m);
    return w.window.drawing().frame().side(p.x_m, p.z_m) * ratio;
  };
  // Along the axis, two pixels below the line of the mean path: what is drawn there ends at the nose.
  const auto drawn_at = [&](double s_m) {
    const QPoint at = (place(s_m) + QPointF(0, 2 * ratio)).toPoint();
    return with.pixel(at) != without.pixel(at);
  };
  EXPECT_TRUE(drawn_at(nose - bore.tool_length_m / 2)) << "the body";
  EXPECT_TRUE(drawn_at(0.1)) << "the hole behind it";
  EXPECT_FALSE(drawn_at(nose + 0.2)) << "ahead of the nose there is ground";
  EXPECT_FALSE(drawn_at(nose + 3));
}

// Not knowing never looks safe: a line without a depth is passed with a mark of its own, not in silence.
TEST(Player, ALineOfUnknownDepth_IsMarkedWhenPassed) {
  PlayedWindow w("house-service");
  w.window.document().change(QStringLiteral("depth not known"), [](Crossing& to) {
    for (PathVertex& vertex : to.site.utilities[1].path) vertex.z_m.reset();
  });
  w.key(Qt::Key_Period);
  PlayerBar& player = w.window.player();
  const double station = utility_mark(w.crossing().site.utilities[1]).station_m;
  const auto stop_pixels = [&] {
    const QImage picture = w.window.drawing().viewport()->grab().toImage().convertToFormat(QImage::Format_RGB32);
    const PathPoint p = point_at(w.shown()->bore->path, station);
    const QPoint at = (w.window.drawing().frame().side(p.x_m, p.z_m) * picture.devicePixelRatio()).toPoint();
    int found = 0;
    for (int x = -14; x <= 14; ++x)
      for (int y = -14; y <= 14; ++y)
        found += QColor(picture.pixel(at + QPoint(x, y))) == w.window.drawing().style().theme.stop;
    return found;
  };
  player.set_time(0);
  const int before = stop_pixels();
  player.set_time(1e9);
  EXPECT_GT(stop_pixels(), before + 5);
}

// A lesson: half a degree becomes the miss at the exit, told as a dimension; never before the truth has been shown.
TEST(Player, Lesson_PlaysTheTrueBoreOnceShown) {
  PlayedWindow w("lesson-level");
  w.window.side().show_page(SideColumn::Page::practice);
  settle(w.window);
  PracticePanel& practice = w.window.side().practice();
  w.space();
  ASSERT_TRUE(w.shown());
  EXPECT_FALSE(w.shown()->in_truth);
  EXPECT_FALSE(practice.shown_truth()) << "hidden until the trainer shows it";
  practice.button(QStringLiteral("Start boring"))->click();
  for (int i = 0; i < 40 && practice.run() && !practice.run()->over(); ++i)
    practice.button(QStringLiteral("Drive"))->click();
  ASSERT_TRUE(practice.run() && practice.run()->over());
  EXPECT_FALSE(practice.shown_truth());
  practice.finish_reveal();
  QCoreApplication::processEvents();
  ASSERT_TRUE(practice.shown_truth());
  PlayerBar& player = w.window.player();
  player.choose(PlayerBar::Kind::truth);
  player.set_time(1e9);
  ASSERT_TRUE(w.shown());
  EXPECT_TRUE(w.shown()->in_truth);
  // By hand: 0.6 degrees over nine metres are 94 mm; chance adds about a centimetre.
  const PathPoint end = w.shown()->bore->path.points.back();
  const PathPoint predicted = point_at(w.window.document().assessment().bore, end.s_m);
  EXPECT_NEAR(end.z_m - predicted.z_m, 9 * std::tan(0.6 * pi / 180), 0.03);
}

// The recorded day: where the nose was read at the times of the record, past the lines as that bore passes them, and
// how far its end is from what was predicted.
TEST(Player, RecordedDay_IsPlayedWithItsOwnDistances) {
  PlayedWindow w("day-finished");
  ASSERT_TRUE(w.opened);
  w.space();
  PlayerBar& player = w.window.player();
  player.choose(PlayerBar::Kind::recorded);
  player.set_time(1e9);
  ASSERT_TRUE(w.shown());
  EXPECT_TRUE(w.shown()->tells_miss);
  ASSERT_TRUE(w.shown()->passed);
  EXPECT_EQ(w.shown()->passed->size(), w.crossing().site.utilities.size());
  const DayRecord& record = w.crossing().record.back();
  double last_mark_m = 0;
  for (const Reading& reading : record.readings)
    if (reading.kind == ReadingKind::mark && reading.nose && !reading.cancelled) last_mark_m = reading.nose->m;
  EXPECT_GE(nose_at(*w.shown()->bore, 1e9), last_mark_m - 1e-6);
  // Beside it the prediction, as a ghost; alone again nothing.
  player.set_beside(PlayerBar::Kind::predicted);
  ASSERT_TRUE(w.shown()->beside);
  EXPECT_EQ(w.shown()->beside->path.points, w.window.document().assessment().bore.points);
  player.set_beside({});
  EXPECT_FALSE(w.shown()->beside);
}

// One of the random trials by its number. In a trial lines lie where they may: no distance is told. A change of the
// layout makes them old, and old ones are not played.
TEST(Player, Simulated_ByNumber_AndNeverAnOldOne) {
  PlayedWindow w("house-service");
  w.space();
  PlayerBar& player = w.window.player();
  TrialsJob& job = w.window.side().job();
  job.run();
  ASSERT_TRUE(comes([&] { return !job.running() && job.trials() && job.current(); }));
  QCoreApplication::processEvents();
  player.choose(PlayerBar::Kind::simulated);
  ASSERT_TRUE(w.shown());
  EXPECT_TRUE(w.shown()->lines_elsewhere);
  const auto first = w.shown()->bore->path.points;
  player.set_number(3);
  ASSERT_TRUE(w.shown());
  EXPECT_NE(w.shown()->bore->path.points, first);
  EXPECT_EQ(w.shown()->bore->path.points.size(),
            trial_playback(*job.trials(), 2,
                           predicted_playback(w.window.document().assessment(),
                                              resolve_tool(w.crossing().bore.tool, tables_for_tests())))
                .path.points.size());
  raise_launch(w.window.document(), -0.2);
  settle(w.window);
  ASSERT_TRUE(w.shown());
  EXPECT_FALSE(w.shown()->lines_elsewhere);
  EXPECT_EQ(w.shown()->bore->path.points, w.window.document().assessment().bore.points);
}

}  // namespace
}  // namespace burrow
