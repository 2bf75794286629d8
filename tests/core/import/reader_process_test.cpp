// The process that reads foreign files: the same answers as without it, and whatever becomes of it, a sentence, no
// process left behind, no waiting without end.

#include "reader_process.h"

#include <fcntl.h>
#include <gmock/gmock.h>
#include <sys/prctl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <csignal>
#include <thread>

#include "readers/readers.h"
#include "support/import_for_tests.h"
#include "support/kinds_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

/// The processes this thread has started and not yet waited for.
std::vector<pid_t> children() {
  std::ifstream in("/proc/thread-self/children");
  std::vector<pid_t> all;
  for (pid_t one = 0; in >> one;) all.push_back(one);
  return all;
}

class ReaderProcess : public WithFolder {
 protected:
  void TearDown() override {
    EXPECT_TRUE(children().empty()) << "a process was left behind";
    WithFolder::TearDown();
  }

  /// A Shapefile whose records are a pipe that nobody writes to: reading it never ends.
  [[nodiscard]] std::string endless() const {
    write_lines("ESRI Shapefile", path("a.shp"), 25832, {{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}});
    std::filesystem::remove(path("a.dbf"));
    EXPECT_EQ(::mkfifo(path("a.dbf").c_str(), 0600), 0);
    return path("a.shp");
  }

  /// By the process itself: the program would refuse the pipe.
  [[nodiscard]] static Result<ReaderAnswer> ask(const std::string& file, const ReadOptions& options) {
    return ask_reader(request_for(file, options), options.progress);
  }

  /// What is said of the endless file when its process is sent that signal.
  [[nodiscard]] Error after_signal(int signal) const {
    ReadOptions options;
    int asked = 0;
    options.progress = [&](double) {
      if (++asked == 5)
        for (const pid_t child : children()) ::kill(child, signal);
      return asked < 5000;
    };
    const Result<ReaderAnswer> found = ask(endless(), options);
    EXPECT_FALSE(found);
    std::filesystem::remove(path("a.dbf"));
    return found ? Error{} : found.error();
  }

  /// A reader of ours in place of the true one.
  [[nodiscard]] Result<ReaderAnswer> from_script(const std::string& lines, double seconds = 60) const {
    const std::string program = write("reader.sh", "#!/bin/sh\n" + lines + "\n");
    std::filesystem::permissions(program, std::filesystem::perms::owner_all);
    ReadOptions options;
    options.most_seconds = seconds;
    return ask_reader(program, request_for(path("a.csv"), options), {});
  }
};

TEST_F(ReaderProcess, EveryKind_AsInThisProcess) {
  for (const std::string& file : write_every_kind(folder_)) {
    const Result<Found> here = read_here(file, {});
    Result<Found> there = read_foreign_file(file, {});
    if (const auto note = note_without_bound(landlock_version()); note && there) std::erase(there->notes, *note);
    ASSERT_TRUE(here) << file << ": " << here.error().english();
    ASSERT_TRUE(there) << file << ": " << there.error().english();
    EXPECT_EQ(*here, *there) << file;
    const auto readers = load_readers();
    ASSERT_TRUE(readers);
    for (const FoundRaster& raster : there->rasters) {
      const auto& t = raster.to_plan;
      const std::vector<PlanPoint> points{{t[0] + 1.5 * t[1], t[3] + 1.5 * t[5]}, {t[0] - 1e5, t[3]}};
      const auto heights = heights_of(*there, raster, points, [] { return true; });
      ASSERT_TRUE(heights) << heights.error().english();
      EXPECT_EQ(*heights, *(*readers)->heights(raster, points)) << file;
      EXPECT_TRUE(heights->at(0) && !heights->at(1)) << file;
    }
  }
}

TEST_F(ReaderProcess, WithoutABoundOnFiles_ItIsSaid) {
  EXPECT_TRUE(note_without_bound(0));
  EXPECT_FALSE(note_without_bound(1));
  const Result<Found> found = read_foreign_file(write("plain.csv", "1,2,3,4,GND\n2,3,4,5,GND\n"), {});
  ASSERT_TRUE(found);
  EXPECT_EQ(says(found->notes, "does not bound the files"), landlock_version() == 0);
}

TEST_F(ReaderProcess, Errors_AsInThisProcess) {
  write("a.geojson", R"({"type":"Line)");
  write("b.csv", "no numbers\n");
  write("c.dxf", "0\nSECTION\n");
  write("d.xml", "<a/>");
  for (const char* name : {"a.geojson", "b.csv", "c.dxf", "d.xml"}) {
    const Result<Found> here = read_here(path(name), {}), there = read_foreign_file(path(name), {});
    ASSERT_FALSE(here || there) << name;
    EXPECT_EQ(here.error().english(), there.error().english()) << name;
  }
  ::mkfifo(path("e.csv").c_str(), 0600);
  EXPECT_THAT(read_foreign_file(path("e.csv"), {}).error().found.english(), HasSubstr("pipe or a device"));
  EXPECT_THAT(read_foreign_file("/dev/zero", {}).error().found.english(), HasSubstr("pipe or a device"));
  EXPECT_FALSE(read_foreign_file("/vsicurl/http://127.0.0.1:9/a.shp", {}));
}

TEST_F(ReaderProcess, Language_IsThatOfTheProgram) {
  write("a.csv", "");
  use_dictionary({"de", {{"an empty file", "eine leere Datei"}}});
  const Result<Found> found = read_foreign_file(path("a.csv"), {});
  use_dictionary({});
  EXPECT_EQ(found.error().found, "eine leere Datei");
}

TEST_F(ReaderProcess, KilledInTheMiddle_SaysSo) {
  EXPECT_THAT(after_signal(SIGKILL).found.english(), HasSubstr("ended from outside"));
  EXPECT_THAT(after_signal(SIGABRT).found.english(), HasSubstr("breaks down (signal 6)"));
  EXPECT_THAT(after_signal(SIGXCPU).found.english(), HasSubstr("60 s of reading"));
  EXPECT_TRUE(children().empty());
}

TEST_F(ReaderProcess, Endless_EndsByTime) {
  ReadOptions options;
  options.most_seconds = 0.5;
  const Result<ReaderAnswer> found = ask(endless(), options);
  ASSERT_FALSE(found);
  EXPECT_THAT(found.error().found.english(), HasSubstr("more than 0.5 s of reading"));
  EXPECT_THAT(found.error().place.english(), HasSubstr("a.shp"));
}

TEST_F(ReaderProcess, Cancel_KillsAtOnce) {
  ReadOptions options;
  int asked = 0;
  options.progress = [&](double) { return ++asked < 8; };
  EXPECT_EQ(ask(endless(), options).error().found, std::string(stopped_by_person));
  EXPECT_EQ(asked, 8);
  EXPECT_TRUE(children().empty());
}

TEST_F(ReaderProcess, Progress_ComesThrough) {
  {
    std::ofstream out(path("a.csv"), std::ios::binary);
    for (int i = 0; i < 100'000; ++i)
      out << i << ',' << 5540000 + i % 2000 << ',' << 500000 + i / 2000 << ",100.5,GND\n";
  }
  std::vector<double> shares;
  ReadOptions options;
  options.progress = [&](double share) {
    shares.push_back(share);
    return true;
  };
  const Result<Found> found = read_foreign_file(path("a.csv"), options);
  ASSERT_TRUE(found) << found.error().english();
  EXPECT_EQ(found->vertices.size(), 100'000u);
  EXPECT_TRUE(std::is_sorted(shares.begin(), shares.end()));
  EXPECT_GT(std::count_if(shares.begin(), shares.end(), [](double share) { return share > 0 && share < 1; }), 0);
  EXPECT_EQ(shares.back(), 1);
}

// Files that take more memory than is allowed: in our own code, in a library of records, in one that keeps a tree.
TEST_F(ReaderProcess, MemoryBomb_EndsWithASentence) {
  std::string points, features, marks, tags;
  for (int i = 0; i < 300'000; ++i) points += std::to_string(i) + ",5540000.5,500000.25,100.5,POINT WITH A LONG NAME\n";
  for (int i = 0; i < 40'000; ++i) {
    features += std::string(i ? "," : "") + R"({"type":"Feature","properties":{"name":"a name of some length )" +
                std::to_string(i) + R"("},"geometry":{"type":"LineString","coordinates":[[9,50],[9.1,50.1]]}})";
    marks += "<Placemark><name>a</name><Point><coordinates>9,50,1</coordinates></Point></Placemark>";
    tags += "<CgPoint name='a'>1 2 3</CgPoint>";
  }
  write("a.csv", points);
  write("b.geojson", R"({"type":"FeatureCollection","features":[)" + features + "]}");
  write("c.kml", R"(<kml xmlns="http://www.opengis.net/kml/2.2"><Document>)" + marks + "</Document></kml>");
  write("d.xml", "<LandXML><CgPoints>" + tags + "</CgPoints></LandXML>");
  ReadOptions options;
  options.most_memory_bytes = 6'000'000;
  for (const char* name : {"a.csv", "b.geojson", "c.kml", "d.xml"}) {
    const Result<Found> found = read_foreign_file(path(name), options);
    ASSERT_FALSE(found) << name;
    EXPECT_THAT(found.error().found.english(), HasSubstr("more than 6 MB of memory")) << name;
    EXPECT_THAT(found.error().expected.english(), HasSubstr("near the crossing")) << name;
  }
}

TEST_F(ReaderProcess, Answer_ThatCannotBeRight) {
  EXPECT_THAT(from_script("printf xxxxxxxxxxxx >&3").error().found.english(), HasSubstr("nonsense"));
  EXPECT_THAT(from_script("printf 'a\\004\\0\\0\\0\\0\\0\\0\\0xxxx' >&3").error().found.english(),
              HasSubstr("nonsense"));
  EXPECT_THAT(from_script("printf 'a\\004\\0\\0\\0\\0\\0\\0\\0xxxxx' >&3").error().found.english(),
              HasSubstr("nonsense"));
  EXPECT_THAT(from_script("printf 'a\\0\\0\\0\\0\\0\\0\\0\\0' >&3").error().found.english(), HasSubstr("nonsense"));
  EXPECT_THAT(
      from_script("printf 'a\\377\\377\\377\\377\\377\\377\\377\\377' >&3; exec sleep 1000").error().found.english(),
      HasSubstr("MB of memory"));
  EXPECT_THAT(from_script("printf 'a\\011\\0\\0\\0\\0\\0\\0\\0xxxx' >&3").error().found.english(),
              HasSubstr("breaks down"));
  EXPECT_THAT(from_script("exit 0").error().found.english(), HasSubstr("breaks down (exit code 0)"));
  EXPECT_THAT(from_script("kill -11 $$").error().found.english(), HasSubstr("breaks down (signal 11)"));
  EXPECT_THAT(from_script("exit 71").error().found.english(), HasSubstr("be confined"));
  EXPECT_THAT(from_script("exit 72").error().found.english(), HasSubstr("MB of memory"));
  EXPECT_THAT(from_script("exit 70").error().found.english(), HasSubstr("another version"));
  // It says that it goes on, for ever; it says nothing more, and stays.
  EXPECT_THAT(from_script("while :; do printf 'p\\0\\0\\0\\0\\0\\0\\0\\0' >&3; done", 0.5).error().found.english(),
              HasSubstr("0.5 s of reading"));
  EXPECT_FALSE(from_script("exec 3>&-; exec sleep 1000"));
}

TEST_F(ReaderProcess, Start_ThatFails) {
  const auto with = [&](const std::string& program) { return ask_reader(program, request_for(path("a"), {}), {}); };
  EXPECT_FALSE(with(path("nothing-there")));
  EXPECT_THAT(with(path("nothing-there")).error().place.english(), HasSubstr("nothing-there"));
  write("no-program", "\x01\x02");
  EXPECT_FALSE(with(path("no-program")));
}

// The process gets no file of the program's but its two, and of the surroundings what libraries need.
TEST_F(ReaderProcess, Start_HandsNothingOver) {
  constexpr int number = 57;
  const int open_file = ::open("/dev/null", O_RDONLY);
  ASSERT_EQ(::dup2(open_file, number), number);
  ::close(open_file);
  ::setenv("A_SECRET", "x", 1);
  EXPECT_THAT(from_script("[ -e /proc/$$/fd/57 ] && exit 90; [ -n \"$A_SECRET$HOME\" ] && exit 91; exit 92")
                  .error()
                  .found.english(),
              HasSubstr("exit code 92"));
  ::unsetenv("A_SECRET");
  ::close(number);
}

// Who asked is gone: the process does not stay behind, busy with a file nobody waits for.
TEST_F(ReaderProcess, ProgramKilled_TakesItAlong) {
  const std::string file = endless();
  std::array<int, 2> ends{};
  ASSERT_EQ(::pipe2(ends.data(), O_CLOEXEC), 0);
  ASSERT_EQ(::prctl(PR_SET_CHILD_SUBREAPER, 1), 0);
  const pid_t program = ::fork();
  if (program == 0) {
    ReadOptions options;
    int asked = 0;
    options.progress = [&](double) {
      if (++asked == 5)
        for (const pid_t child : children())
          if (::write(ends[1], &child, sizeof child) != sizeof child) ::_exit(1);
      return true;
    };
    (void)ask(file, options);
    ::_exit(0);
  }
  ::close(ends[1]);  // else a program that ends by itself would leave this test waiting
  pid_t reader = 0;
  ASSERT_EQ(::read(ends[0], &reader, sizeof reader), static_cast<ssize_t>(sizeof reader));
  ::kill(program, SIGKILL);
  EXPECT_EQ(::waitpid(program, nullptr, 0), program);
  int status = 0;
  EXPECT_EQ(::waitpid(reader, &status, 0), reader);
  EXPECT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL);
  ::prctl(PR_SET_CHILD_SUBREAPER, 0);
  ::close(ends[0]);
}

// Many at once, from several threads, each with an answer of its own.
TEST_F(ReaderProcess, Threads_EachItsOwn) {
  std::vector<std::string> files;
  for (int i = 0; i < 4; ++i)
    files.push_back(write("a" + std::to_string(i) + ".csv", "1," + std::to_string(5540000 + i) + ",500000,1,GND\n"));
  std::vector<std::thread> threads;
  std::atomic<int> right = 0;
  for (int i = 0; i < 4; ++i)
    threads.emplace_back([&, i] {
      for (int k = 0; k < 5; ++k) {
        const Result<Found> found = read_foreign_file(files[static_cast<std::size_t>(i)], {});
        right += found && found->vertices.at(0).y_m == 5540000 + i ? 1 : 0;
      }
      right += children().empty() ? 1 : 0;
    });
  for (std::thread& t : threads) t.join();
  EXPECT_EQ(right, 24);
}

}  // namespace
}  // namespace burrow::test
