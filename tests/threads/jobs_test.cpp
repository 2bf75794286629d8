// The desks that work beside the screen: many requests at once, cancelled, replaced, the desk gone in the middle. For
// the thread sanitizer (preset tsan); that the last answer is the one of the last request is asked as well.

#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <fstream>
#include <random>

#include "burrow/check/trials_plan.h"
#include "burrow/document/document.h"
#include "burrow/document/launch_search_job.h"
#include "burrow/document/trials_job.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"
#include "burrow/window/import_job.h"
#include "seen_dispatcher.h"

namespace burrow::test {
namespace {

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

void open_sample(Document& document, const char* name) {
  ASSERT_TRUE(document.open(QStringLiteral(BURROW_SOURCE_DIR "/samples/%1.crossing").arg(QLatin1String(name))));
}

void set_trials(Document& document, std::int64_t count) {
  TrialsRequest request = document.crossing().bore.trials;
  request.count.set(count);
  Crossing crossing = document.crossing();
  crossing.bore.trials = request;
  document.start_from(crossing, false);
}

void move_launch(Document& document, double by_m) {
  Crossing crossing = document.crossing();
  crossing.bore.launch.elevation.m += by_m;
  ASSERT_TRUE(document.change(QStringLiteral("move"), [&](Crossing& to) { to.bore.launch = crossing.bore.launch; }));
}

void turn(int times) {
  for (int i = 0; i < times; ++i) QCoreApplication::processEvents();
}

/// What a hand at the screen does to a desk while it works, drawn by a seed; the desk may go in the middle.
template <class Job, class Ask>
void hurry(Document& document, int rounds, unsigned seed, Ask ask) {
  std::mt19937 random(seed);
  auto job = std::make_unique<Job>(document);
  for (int i = 0; i < rounds; ++i) {
    switch (random() % 8) {
      case 0:
        job->cancel();
        break;
      case 1:
        move_launch(document, random() % 2 == 0 ? 0.01 : -0.01);
        break;
      case 2:
        job.reset();  // in the middle of whatever runs
        seen_dispatcher().forget_posts();
        job = std::make_unique<Job>(document);
        break;
      case 3:
        turn_until([&] { return !job->running() || random() % 4 == 0; });
        break;
      default:
        ask(*job, static_cast<unsigned>(random()));
        break;
    }
    turn(static_cast<int>(random() % 3));
  }
}

TEST(Jobs, Trials_ManyRequestsCancelsAndGone) {
  Document document(tables());
  open_sample(document, "house-service");
  set_trials(document, 300);
  hurry<TrialsJob>(document, 120, 1, [](TrialsJob& job, unsigned draw) {
    if (draw % 5 == 0)
      job.set_following(!job.following());
    else
      job.run();
  });
}

TEST(Jobs, Trials_TheNewestWins) {
  Document document(tables());
  open_sample(document, "first-lesson");
  set_trials(document, 400);
  TrialsJob job(document);
  for (int i = 0; i < 30; ++i) {
    move_launch(document, -0.005);
    job.run();
    if (i % 7 == 0) turn(2);
  }
  ASSERT_TRUE(turn_until([&] { return !job.running(); }));
  ASSERT_NE(job.trials(), nullptr);
  EXPECT_TRUE(job.current());
  const TrialsSetup setup = trials_setup(document.crossing(), document.tables(), document.assessment());
  EXPECT_EQ(*job.trials(), run_trials(document.crossing(), document.tables(), setup));
}

TEST(Jobs, Search_ManyRequestsCancelsAndGone) {
  Document document(tables());
  open_sample(document, "first-lesson");
  hurry<LaunchSearchJob>(document, 40, 2, [](LaunchSearchJob& job, unsigned draw) {
    if (draw % 5 == 0)
      job.set_over(draw % 2 == 0 ? MapOver::depth_and_grade : MapOver::station_and_offset);
    else if (draw % 5 == 1)
      job.ask_tools();
    else if (draw % 5 == 2)
      job.set_wanted(draw % 2 == 0);
    else
      job.run();
  });
}

// Both at once, the texts turned to the other language and back while they make their findings.
TEST(Jobs, TwoAtOnce_WhileTheLanguageChanges) {
  Document document(tables());
  open_sample(document, "four-faults");
  set_trials(document, 300);
  const std::optional<Dictionary> german = dictionary_of("de");
  ASSERT_TRUE(german.has_value());
  {
    TrialsJob trials(document);
    LaunchSearchJob search(document);
    for (int i = 0; i < 12; ++i) {
      trials.run();
      search.run();
      use_dictionary(i % 2 == 0 ? *german : Dictionary{});
      turn(3);
      document.assessment();
    }
    ASSERT_TRUE(turn_until([&] { return !trials.running(); }));
    EXPECT_TRUE(trials.current());
  }
  seen_dispatcher().forget_posts();
  use_dictionary(Dictionary{});
}

class ImportJobs : public testing::Test {
 protected:
  std::string survey(const char* name, int points) {
    const std::string path = folder_.filePath(QString::fromLatin1(name)).toStdString();
    std::ofstream out(path);
    for (int i = 0; i < points; ++i)
      out << i << ',' << 2000 + 4 * (i % 11) << ',' << 1000 + 4 * (i / 11) << ",55.5,GND\n";
    return path;
  }
  QTemporaryDir folder_;
};

TEST_F(ImportJobs, ManyReadsStoppedAndGone) {
  const std::string small = survey("a.csv", 200), large = survey("b.csv", 40000);
  std::mt19937 random(3);
  auto job = std::make_unique<ImportJob>();
  for (int i = 0; i < 60; ++i) {
    switch (random() % 6) {
      case 0:
        job->stop();
        break;
      case 1:
        job.reset();
        seen_dispatcher().forget_posts();
        job = std::make_unique<ImportJob>();
        break;
      case 2:
        job->read(folder_.filePath(QStringLiteral("nothing.csv")).toStdString(), {}, nullptr);
        break;
      default:
        job->read(random() % 2 == 0 ? small : large, {}, nullptr);
        break;
    }
    turn(static_cast<int>(random() % 4));
  }
}

TEST_F(ImportJobs, TheNewestReadWins) {
  const std::string small = survey("a.csv", 200), large = survey("b.csv", 40000);
  ImportJob job;
  std::vector<std::shared_ptr<const Result<Found>>> read;
  QObject::connect(&job, &ImportJob::read_done, &job,
                   [&](const std::shared_ptr<const Result<Found>>& found) { read.push_back(found); });
  for (int i = 0; i < 10; ++i) job.read(large, {}, nullptr);
  job.read(small, {}, nullptr);
  ASSERT_TRUE(turn_until([&] { return !job.running(); }));
  ASSERT_EQ(read.size(), 1u);
  ASSERT_TRUE(*read.front()) << read.front()->error().english();
  EXPECT_EQ((*read.front())->vertices.size(), 200u);
}

TEST_F(ImportJobs, TheNewestCutWins) {
  std::string text;
  for (int i = 0; i < 4000; ++i)
    text +=
        std::to_string(i) + ',' + std::to_string(2000 + i % 60) + ',' + std::to_string(1000 + i / 60) + ",55.5,GND\n";
  auto points = read_survey_csv(text, {});
  ASSERT_TRUE(points.has_value()) << points.error().english();
  const auto found = std::make_shared<const Found>(std::move(*points));
  ImportFile file;
  file.found = found;
  file.layers.assign(found->layers.size(), LayerChoice{Meaning::ground, {}, {}, {}, false});

  ImportJob job;
  std::vector<double> lengths;
  QObject::connect(&job, &ImportJob::cut_done, &job, [&](const std::shared_ptr<const Result<Imported>>& imported) {
    lengths.push_back(*imported ? (*imported)->length.m : -1);
  });
  for (int i = 0; i < 30; ++i) {
    job.cut({file}, {{1010, 2010}, {1011.0 + i, 2010}});
    if (i % 5 == 1) turn(1);
    if (i % 11 == 3) job.stop();
  }
  ASSERT_TRUE(turn_until([&] { return !job.running(); }));
  ASSERT_FALSE(lengths.empty());
  EXPECT_NEAR(lengths.back(), 30, 1e-6);
}

}  // namespace
}  // namespace burrow::test

int main(int argc, char** argv) {
  QCoreApplication::setEventDispatcher(&burrow::test::seen_dispatcher());
  const burrow::test::SeenApplication app(argc, argv);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
