// The record of what was built: every reading stands in it, everything inside the frame, nothing over anything else.

#include <QRawFont>
#include <QSet>
#include <algorithm>

#include "burrow/day/day.h"
#include "burrow/document/reading_forms.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

Reading at(ReadingKind kind, double minutes, std::optional<double> nose_m = {}) {
  Reading r;
  r.kind = kind;
  r.time = Duration{60 * minutes};
  if (nose_m) r.nose = Length{*nose_m};
  return r;
}

/// A day with everything that can be read, up to the exit, or stuck half way.
DayRecord day_of(const Crossing& crossing, bool arrives, double mark_every_m = 1) {
  DayRecord record;
  record.id = "d1";
  record.started = "2026-03-14T09:20:00";
  record.crew = "early shift";
  const double length = crossing.bore.exit.station.m - crossing.bore.launch.station.m;
  const double end = arrives ? length : 0.55 * length;
  record.readings.push_back(at(ReadingKind::start, 0, 0.0));
  for (double nose = mark_every_m; nose < end; nose += mark_every_m)
    record.readings.push_back(at(ReadingKind::mark, 3 * nose, nose));
  Reading grade = at(ReadingKind::grade, 3 * 0.3 * length + 0.1, 0.3 * length);
  grade.grade = Ratio{crossing.bore.launch.grade.v + 0.004};
  record.readings.push_back(grade);
  Reading fix = at(ReadingKind::fix, 3 * 0.5 * length + 0.2, 0.5 * length);
  fix.offset = Length{crossing.bore.launch.offset->m + 0.06};
  fix.depth = Length{1.3};
  record.readings.push_back(fix);
  Reading stop = at(ReadingKind::stop, 3 * 0.5 * length + 0.3, 0.5 * length);
  stop.why = "looked for the water main";
  record.readings.push_back(stop);
  record.readings.push_back(at(ReadingKind::go, 3 * 0.5 * length + 0.9));
  Reading pressure = at(ReadingKind::pressure, 3 * 0.5 * length + 1);
  pressure.pressure = Pressure{6.1e5};
  record.readings.push_back(pressure);
  Reading note = at(ReadingKind::note, 3 * 0.5 * length + 1.1);
  note.text = "rain; the owner of the drain watched";
  record.readings.push_back(note);
  record.readings.push_back(at(ReadingKind::back, 3 * 0.5 * length + 1.2, 0.5 * length - 0.4));
  Reading last = at(arrives ? ReadingKind::arrival : ReadingKind::note, 3 * length + 9, end);
  if (arrives) {
    last.offset = Length{crossing.bore.launch.offset->m + 0.11};
    last.elevation = Length{crossing.bore.launch.elevation.m - 0.05};
  }
  record.readings.push_back(last);
  Reading ended = at(ReadingKind::end, 3 * length + 10);
  ended.how = arrives ? EndHow::arrived : EndHow::stuck;
  record.readings.push_back(ended);
  std::stable_sort(record.readings.begin(), record.readings.end(),
                   [](const Reading& a, const Reading& b) { return a.time.s < b.time.s; });
  return record;
}

Judged bored(const std::string& sample, bool arrives, double mark_every_m = 1) {
  Judged j = judged_sample(sample);
  j.crossing.record = {day_of(j.crossing, arrives, mark_every_m)};
  return j;
}

TEST(AsBuilt, Pages_InsideTheFrameNothingOverlaps) {
  QRawFont fonts[] = {QRawFont::fromFont(paper_font(QFont::Normal)), QRawFont::fromFont(paper_font(QFont::DemiBold)),
                      QRawFont::fromFont(paper_font(QFont::Bold))};
  for (const std::string& name : sample_names())
    for (const bool arrives : {true, false})
      for (const PaperKind& kind : paper_kinds) {
        const Judged j = bored(name, arrives);
        const auto pages = sheet_pages(sheet_for(j, kind.units, kind.paper), SheetPart::as_built);
        ASSERT_TRUE(pages) << name << ": " << pages.error().english();
        int number = 0;
        for (const Page& page : *pages) {
          const std::string where = name + ", " + kind.paper + ", page " + std::to_string(++number);
          expect_inside_the_frame(page, where);
          expect_texts_apart(page, where);
          for (const PageItem& item : page.items)
            for (const uint c : item.text.toUcs4())
              EXPECT_TRUE(fonts[item.style.weight == QFont::Normal     ? 0
                                : item.style.weight == QFont::DemiBold ? 1
                                                                       : 2]
                              .supportsCharacter(c))
                  << where << ": " << item.text.toStdString();
        }
      }
}

TEST(AsBuilt, EveryReading_StandsWithItsNumberAndTime) {
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    const Judged j = bored("house-service", true);
    const auto pages = sheet_pages(sheet_for(j, units), SheetPart::as_built);
    ASSERT_TRUE(pages);
    const QString words = words_of(*pages).replace(QLatin1Char('\n'), QLatin1Char(' '));
    for (const Reading& reading : j.crossing.record.front().readings) {
      const QString line = QString::fromStdString(reading_line(reading, units)).section(QStringLiteral(" · "), 1);
      // Long ones break over lines, so the first words are looked for.
      EXPECT_TRUE(words.contains(line.left(12).trimmed())) << line.toStdString();
    }
    for (const char* shown_text : {"early shift", "2026-03-14 09:20:00", "arrived", "off the plan", "inspector",
                                   "Signed", "Readings as they were taken", "The line as built", "Utilities passed"})
      EXPECT_TRUE(words.contains(QLatin1String(shown_text))) << shown_text;
  }
}

// The numbers are those of the day's answer: where it came out, and how far off the plan.
TEST(AsBuilt, Arrival_AsTheDayHasIt) {
  const Judged j = bored("house-service", true);
  const DayAnswer day = day_answer(j.crossing, tables(), j.crossing.record.front());
  ASSERT_TRUE(day.arrival.offset_m && j.answer.arrival.offset_m);
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  const auto text = [](double v, Dimension d) { return QString::fromStdString(format(v, d, UnitSystem::metric)); };
  EXPECT_TRUE(words.contains(text(*day.arrival.offset_m, Dimension::station)));
  EXPECT_TRUE(words.contains(text(std::abs(*day.arrival.offset_m - *j.answer.arrival.offset_m), Dimension::length) +
                             (*day.arrival.offset_m > *j.answer.arrival.offset_m ? " left" : " right")))
      << words.toStdString();
}

// The drawn line goes through the place of each point of the smoothed path, at the scale that stands on the page.
TEST(AsBuilt, Drawing_IsToScale) {
  const Judged j = bored("house-service", true);
  const DayAnswer day = day_answer(j.crossing, tables(), j.crossing.record.front());
  const Page page = sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built)->front();
  double scale = 0;
  for (const PageItem& item : page.items)
    if (item.kind == PageItemKind::text && item.text.startsWith(QLatin1String("1 : ")))
      scale = item.text.mid(4).toDouble();
  ASSERT_GT(scale, 1);
  int lines = 0;
  for (const PageItem& item : page.items) {
    if (item.kind != PageItemKind::line || item.stroke.width_mm != 0.5 || item.points.size() < 10) continue;
    if (item.stroke.colour != QColor(0x10, 0x50, 0x9c)) continue;
    ++lines;
    const double drawn = item.points.back().x() - item.points.front().x();
    const PathPoint end = day.smoothed.points.back();
    EXPECT_NEAR(drawn * scale / 1000, end.x_m - day.smoothed.points.front().x_m, 1e-3);
  }
  EXPECT_EQ(lines, 2) << "side elevation and plan";
}

// A bore that got stuck is drawn as far as the nose came.
TEST(AsBuilt, Stuck_EndsAtTheFurthestNose) {
  const Judged j = bored("house-service", false);
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built));
  EXPECT_TRUE(words.contains(QStringLiteral("stuck")));
  EXPECT_TRUE(words.contains(QStringLiteral("furthest")));
  EXPECT_FALSE(words.contains(QStringLiteral("came out")));
}

/// "Utilities passed" and what stands below it.
QString passed_words(const Judged& j) {
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  const QString from = words.mid(words.indexOf(QStringLiteral("Utilities passed")));
  return from.left(from.indexOf(QStringLiteral("After the bore")));
}

// Backed out at 4.90 m: what lies beyond was not passed, and nothing arrives.
TEST(AsBuilt, BackedOut_PassedIsOnlyWhatItPassed) {
  Judged j = bored("house-service", false);
  DayRecord& record = j.crossing.record.front();
  record.readings = {at(ReadingKind::start, 0, 0.0), at(ReadingKind::mark, 5, 1.5), at(ReadingKind::mark, 15, 4.9),
                     at(ReadingKind::end, 20)};
  record.readings.back().how = EndHow::backed_out;
  const QString passed = passed_words(j);
  EXPECT_TRUE(passed.contains(QStringLiteral("telecom duct"))) << passed.toStdString();
  for (const char* beyond : {"sewer", "water main", "power cable", "house drain"})
    EXPECT_FALSE(passed.contains(QLatin1String(beyond))) << beyond << ": " << passed.toStdString();
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built));
  EXPECT_FALSE(words.contains(QStringLiteral("came out")));
}

// Marks alone measure no place: it is predicted, and said so.
TEST(AsBuilt, MarksOnly_PredictedNotMeasured) {
  Judged j = bored("house-service", true);
  std::erase_if(j.crossing.record.front().readings, [](const Reading& r) {
    return r.kind == ReadingKind::fix || r.kind == ReadingKind::grade || r.kind == ReadingKind::arrival;
  });
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  EXPECT_TRUE(words.contains(QStringLiteral("as predicted: nothing was measured")));
  EXPECT_TRUE(words.contains(QStringLiteral("The line as predicted")));
  EXPECT_TRUE(words.contains(QStringLiteral("not measured")));
  EXPECT_FALSE(words.contains(QStringLiteral("as planned 0"))) << "nobody measured that";
}

// A grade reads no place: neither how far aside nor how high it lies is measured.
TEST(AsBuilt, GradeOnly_PredictedNotMeasured) {
  Judged j = bored("house-service", true);
  std::erase_if(j.crossing.record.front().readings,
                [](const Reading& r) { return r.kind == ReadingKind::fix || r.kind == ReadingKind::arrival; });
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  EXPECT_TRUE(words.contains(QStringLiteral("as predicted: nothing was measured")));
  EXPECT_FALSE(passed_words(j).contains(QStringLiteral("±"))) << passed_words(j).toStdString();
}

// An arrival alone says where it came out, not how it ran; one with a level only says no offset.
TEST(AsBuilt, ArrivalAlone_MeasuresTheEndOnly) {
  Judged j = bored("house-service", true);
  std::erase_if(j.crossing.record.front().readings,
                [](const Reading& r) { return r.kind == ReadingKind::fix || r.kind == ReadingKind::grade; });
  const QString passed = passed_words(j);
  EXPECT_TRUE(passed.contains(QStringLiteral("predicted, not measured"))) << passed.toStdString();
  for (Reading& r : j.crossing.record.front().readings)
    if (r.kind == ReadingKind::arrival) r.offset.reset();
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  const QString out = words.mid(words.indexOf(QStringLiteral("came out")), 80);
  EXPECT_TRUE(words.contains(QStringLiteral("level"))) << out.toStdString();
  EXPECT_FALSE(out.contains(QStringLiteral("offset"))) << out.toStdString();
}

// A gap stands with its doubt, and a line whose depth nobody knows stands there too.
TEST(AsBuilt, Passed_WithDoubtAndUnknownDepth) {
  Judged j = bored("house-service", true);
  for (Reading& r : j.crossing.record.front().readings)
    if (r.kind == ReadingKind::fix) r.nose = Length{0.5 * j.answer.bore.length_m};
  EXPECT_TRUE(passed_words(j).contains(QStringLiteral("±"))) << passed_words(j).toStdString();
  for (PathVertex& v : j.crossing.site.utilities.front().path) v.z_m.reset();
  j.crossing.site.utilities.front().located.level.reset();
  j.answer = assess(j.crossing, tables());
  EXPECT_TRUE(passed_words(j).contains(QStringLiteral("depth not known"))) << passed_words(j).toStdString();
}

// Said to have arrived half way: it did not come out.
TEST(AsBuilt, ArrivedHalfWay_DidNotComeOut) {
  Judged j = bored("house-service", false);
  DayRecord& record = j.crossing.record.front();
  record.readings = {at(ReadingKind::start, 0, 0.0), at(ReadingKind::mark, 5, 3.0), at(ReadingKind::end, 20)};
  record.readings.back().how = EndHow::arrived;
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built))
                            .replace(QLatin1Char('\n'), QLatin1Char(' '));
  EXPECT_TRUE(words.contains(QStringLiteral("furthest")));
  EXPECT_TRUE(words.contains(QStringLiteral("nobody has confirmed it")));
}

// The clear gap stands beside the clear gap, never an axis distance.
TEST(AsBuilt, Passed_ClearGapsAlone) {
  const QString passed = passed_words(bored("house-service", true));
  EXPECT_TRUE(passed.contains(QStringLiteral("clear gap")));
  EXPECT_FALSE(passed.contains(QStringLiteral("axis to its axis")));
}

// What was struck through and what is doubtful stands there, and moves no line.
TEST(AsBuilt, StruckThroughAndDoubtful_StandThere) {
  Judged j = bored("house-service", true);
  Reading far = at(ReadingKind::mark, 12.5, 1e4), gone = at(ReadingKind::mark, 12.6, 5.2);
  gone.cancelled = "glove";
  j.crossing.record.front().readings.insert(j.crossing.record.front().readings.begin() + 3, {far, gone});
  const QString words = words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::as_built));
  EXPECT_TRUE(words.contains(QStringLiteral("struck through")));
  EXPECT_TRUE(words.contains(QStringLiteral("doubtful, not used")));
}

// Hundreds of marks go on to further pages, and the numbers that find no room over the drawing stand in the table.
TEST(AsBuilt, ManyReadings_GoOnToFurtherPages) {
  const Judged j = bored("sixty-utilities", true, 0.1);
  const auto pages = sheet_pages(sheet_for(j, UnitSystem::us, "letter"), SheetPart::as_built);
  ASSERT_TRUE(pages);
  EXPECT_GT(pages->size(), 6U);
  for (const Page& page : *pages) {
    expect_inside_the_frame(page, "many");
    expect_texts_apart(page, "many");
  }
}

TEST(AsBuilt, NoReadings_SaysWhatToDo) {
  const auto pages = sheet_pages(sheet_for(judged_sample("house-service"), UnitSystem::metric), SheetPart::as_built);
  ASSERT_FALSE(pages);
  EXPECT_NE(pages.error().english().find("page Day"), std::string::npos) << pages.error().english();
  Judged j = bored("house-service", true);
  Sheet sheet = sheet_for(j, UnitSystem::metric);
  sheet.record = "d9";
  EXPECT_FALSE(sheet_pages(sheet, SheetPart::as_built));
}

TEST(AsBuilt, AllOfIt_HoldsItWhereThereIsOne) {
  const auto shown_text = [](const Judged& j) {
    return words_of(*sheet_pages(sheet_for(j, UnitSystem::metric), SheetPart::all))
        .contains(QStringLiteral("As-built"));
  };
  EXPECT_TRUE(shown_text(bored("house-service", true)));
  EXPECT_FALSE(shown_text(judged_sample("house-service")));
}

}  // namespace
}  // namespace burrow::test
