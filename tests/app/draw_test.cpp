// burrowline sheet and picture: what is written has the size asked for and is not blank; wrong words are refused.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QSet>
#include <charconv>
#include <fstream>
#include <nlohmann/json.hpp>

#include "burrow/sheet/movie.h"
#include "support/command_run.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

/// Width and height in points after "/MediaBox [0 0 w h]".
std::pair<double, double> media_box(const std::string& pdf) {
  const auto at = pdf.find("/MediaBox");
  EXPECT_NE(at, std::string::npos);
  if (at == std::string::npos) return {};
  std::vector<double> numbers;
  const char* p = pdf.data() + pdf.find('[', at) + 1;
  const char* const end = pdf.data() + pdf.size();
  while (p < end && *p != ']') {
    double value = 0;
    const auto [next, error] = std::from_chars(p, end, value);
    if (error == std::errc()) {
      numbers.push_back(value);
      p = next;
    } else {
      ++p;
    }
  }
  EXPECT_EQ(numbers.size(), 4u);
  return numbers.size() == 4 ? std::pair{numbers[2], numbers[3]} : std::pair<double, double>{};
}

std::size_t pages(const std::string& pdf) {
  std::size_t count = 0;
  for (auto at = pdf.find("/Type /Page"); at != std::string::npos; at = pdf.find("/Type /Page", at + 1))
    if (pdf.compare(at, 12, "/Type /Pages") != 0) ++count;
  return count;
}

struct Paper {
  const char* name;
  double width_mm, height_mm;
};

// ISO 216 A-series and the US sizes 8.5 × 11 and 11 × 17 in (from memory), landscape.
TEST(SheetCommand, Paper_PagesOfTheSizeAskedFor) {
  const Folder folder;
  for (const auto& [name, width, height] : {Paper{"a3", 420, 297},
                                            {"a4", 297, 210},
                                            {"a2", 594, 420},
                                            {"letter", 279.4, 215.9},
                                            {"tabloid", 431.8, 279.4}}) {
    const Ran ran = run("sheet", {sample("house-service"), "-o", folder.path("x.pdf"), "--paper", name});
    ASSERT_EQ(ran.code, 0) << name << ran.err;
    const std::string pdf = folder.read("x.pdf");
    EXPECT_EQ(pdf.substr(0, 5), "%PDF-");
    const auto [w, h] = media_box(pdf);
    EXPECT_NEAR(w / 72 * 25.4, width, 0.5) << name;
    EXPECT_NEAR(h / 72 * 25.4, height, 0.5) << name;
    EXPECT_GE(pages(pdf), 2u) << name;  // the drawing, then the tables
    EXPECT_GT(pdf.size(), 20000u) << name;
  }
}

// The paper of the file counts where none is asked for, and A3 where the file names none either.
TEST(SheetCommand, PaperNotSaid_TheFilesElseA3) {
  const Folder folder;
  nlohmann::json crossing = nlohmann::json::parse(std::ifstream(sample("first-lesson")));
  const auto width_mm = [&] {
    folder.write("x.crossing", crossing.dump());
    const Ran ran = run("sheet", {folder.path("x.crossing"), "-o", folder.path("x.pdf")});
    EXPECT_EQ(ran.code, 0) << ran.err;
    return media_box(folder.read("x.pdf")).first / 72 * 25.4;
  };
  crossing.erase("sheet");
  EXPECT_NEAR(width_mm(), 420, 0.5);
  crossing["sheet"]["paper"] = "a4";
  EXPECT_NEAR(width_mm(), 297, 0.5);
}

TEST(SheetCommand, ScaleAndUnits_ChangeThePage) {
  const Folder folder;
  const auto page = [&](std::vector<std::string> more) {
    more.insert(more.begin(), {sample("house-service"), "-o", folder.path("x.pdf")});
    const Ran ran = run("sheet", more);
    EXPECT_EQ(ran.code, 0) << ran.err;
    return folder.read("x.pdf");
  };
  const std::string at_100 = page({"--scale", "100"});
  EXPECT_NE(at_100.size(), page({"--scale", "200"}).size());
  EXPECT_NE(at_100.size(), page({"--scale", "100", "--units", "us"}).size());
}

TEST(SheetCommand, Part_CardIsSmall_AllIsMost) {
  const Folder folder;
  const auto page = [&](const char* part) {
    const Ran ran = run("sheet", {sample("house-service"), "-o", folder.path("x.pdf"), "--part", part});
    EXPECT_EQ(ran.code, 0) << ran.err;
    return folder.read("x.pdf");
  };
  const std::string card = page("card");
  EXPECT_NEAR(media_box(card).first / 72 * 25.4, 148, 0.5);
  EXPECT_NEAR(media_box(card).second / 72 * 25.4, 210, 0.5);
  EXPECT_EQ(pages(page("all")), pages(page("sheet")) + pages(card) + pages(page("permit")) + pages(page("working")));
  const Ran wrong = run("sheet", {sample("house-service"), "-o", folder.path("y.pdf"), "--part", "poster"});
  EXPECT_EQ(wrong.code, 2);
  EXPECT_THAT(wrong.err, HasSubstr("card"));
}

// The card as a picture for a phone; other parts are paper.
TEST(SheetCommand, Png_TheCardAlone) {
  const Folder folder;
  const Ran card = run("sheet", {sample("house-service"), "-o", folder.path("card.png"), "--part", "card"});
  EXPECT_EQ(card.code, 0) << card.err;
  EXPECT_EQ(folder.read("card.png").substr(1, 3), "PNG");
  const Ran sheet = run("sheet", {sample("house-service"), "-o", folder.path("sheet.png")});
  EXPECT_EQ(sheet.code, 2);
  EXPECT_THAT(sheet.err, HasSubstr("--part card"));
  EXPECT_FALSE(std::filesystem::exists(folder.path("sheet.png")));
}

TEST(SheetCommand, ScaleThatDoesNotFit_NamesOneThatDoes) {
  const Folder folder;
  const Ran ran = run("sheet", {sample("house-service"), "-o", folder.path("x.pdf"), "--scale", "10"});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("1:50 or smaller"));
  EXPECT_FALSE(std::filesystem::exists(folder.path("x.pdf")));
}

TEST(SheetCommand, WrongWords_TwoAndNothingWritten) {
  const Folder folder;
  const std::string out = folder.path("x.pdf");
  const Ran paper = run("sheet", {sample("first-lesson"), "-o", out, "--paper", "a9"});
  EXPECT_EQ(paper.code, 2);
  EXPECT_THAT(paper.err, HasSubstr("a3"));
  for (const char* scale : {"0", "-5", "x", "1e9", "nan"})
    EXPECT_EQ(run("sheet", {sample("first-lesson"), "-o", out, "--scale", scale}).code, 2) << scale;
  EXPECT_EQ(run("sheet", {sample("first-lesson"), "-o", out, "--units", "cubits"}).code, 2);
  EXPECT_EQ(run("sheet", {sample("first-lesson")}).code, 2);
  EXPECT_EQ(run("sheet", {"-o", out}).code, 2);
  EXPECT_EQ(run("sheet", {sample("first-lesson"), sample("rail-siding"), "-o", out}).code, 2);
  EXPECT_EQ(run("sheet", {"/nowhere.crossing", "-o", out}).code, 2);
  EXPECT_EQ(run("sheet", {sample("first-lesson"), "-o", out, "--colour"}).code, 2);
  EXPECT_FALSE(std::filesystem::exists(out));
  const Ran nowhere = run("sheet", {sample("first-lesson"), "-o", "/nowhere/at/all.pdf"});
  EXPECT_EQ(nowhere.code, 2);
  EXPECT_THAT(nowhere.err, HasSubstr("/nowhere/at/all.pdf"));
}

int colours(const QImage& image) {
  QSet<QRgb> seen;
  for (int y = 0; y < image.height(); y += 3)
    for (int x = 0; x < image.width(); x += 3) seen.insert(image.pixel(x, y));
  return static_cast<int>(seen.size());
}

/// Share of the pixels that are not of the colour near the first corner.
double inked(const QImage& image) {
  const QRgb ground = image.pixel(2, 2);
  int other = 0, all = 0;
  for (int y = 0; y < image.height(); y += 3)
    for (int x = 0; x < image.width(); x += 3, ++all)
      if (image.pixel(x, y) != ground) ++other;
  return static_cast<double>(other) / all;
}

double brightness(const QImage& image) {
  double sum = 0;
  int count = 0;
  for (int y = 0; y < image.height(); y += 7)
    for (int x = 0; x < image.width(); x += 7, ++count) sum += qGray(image.pixel(x, y));
  return sum / count;
}

TEST(PictureCommand, SizeAndRatio_AsAskedFor) {
  const Folder folder;
  const auto size = [&](std::vector<std::string> more) {
    more.insert(more.begin(), {sample("house-service"), "-o", folder.path("x.png")});
    const Ran ran = run("picture", more);
    EXPECT_EQ(ran.code, 0) << ran.err;
    return QImage(QString::fromStdString(folder.path("x.png"))).size();
  };
  EXPECT_EQ(size({}), QSize(1600, 900));
  EXPECT_EQ(size({"--size", "800x600"}), QSize(800, 600));
  EXPECT_EQ(size({"--size", "800x600", "--ratio", "2"}), QSize(1600, 1200));
  EXPECT_EQ(size({"--size", "800x600", "--ratio", "1.5"}), QSize(1200, 900));
}

TEST(PictureCommand, IsNotBlank_InBothThemes) {
  const Folder folder;
  for (const char* name : {"house-service", "rail-siding", "sixty-utilities"}) {
    QImage images[2];
    for (const int dark : {0, 1}) {
      const std::string out = folder.path("x.png");
      ASSERT_EQ(run("picture", {sample(name), "-o", out, "--theme", dark ? "dark" : "light"}).code, 0);
      images[dark] = QImage(QString::fromStdString(out));
      EXPECT_GT(colours(images[dark]), 40) << name;
      EXPECT_GT(inked(images[dark]), 0.2) << name;
    }
    EXPECT_NE(images[0], images[1]);
    EXPECT_GT(brightness(images[0]), brightness(images[1]) + 60);
  }
}

TEST(PictureCommand, DifferentCrossings_DifferentPictures) {
  const Folder folder;
  ASSERT_EQ(run("picture", {sample("house-service"), "-o", folder.path("a.png")}).code, 0);
  ASSERT_EQ(run("picture", {sample("house-service"), "-o", folder.path("b.png")}).code, 0);
  ASSERT_EQ(run("picture", {sample("rail-siding"), "-o", folder.path("c.png")}).code, 0);
  ASSERT_EQ(run("picture", {sample("house-service"), "-o", folder.path("d.png"), "--units", "us"}).code, 0);
  EXPECT_TRUE(folder.read("a.png") == folder.read("b.png"));
  EXPECT_FALSE(folder.read("a.png") == folder.read("c.png"));
  EXPECT_FALSE(folder.read("a.png") == folder.read("d.png"));
}

TEST(PictureCommand, WrongWords_TwoAndNothingWritten) {
  const Folder folder;
  const std::string out = folder.path("x.png");
  for (const char* size : {"800", "800x", "x600", "800*600", "0x0", "-800x600", "99999x600", "nanxnan", "800x600x2"})
    EXPECT_EQ(run("picture", {sample("first-lesson"), "-o", out, "--size", size}).code, 2) << size;
  const Ran theme = run("picture", {sample("first-lesson"), "-o", out, "--theme", "pink"});
  EXPECT_EQ(theme.code, 2);
  EXPECT_THAT(theme.err, HasSubstr("light, dark"));
  for (const char* ratio : {"0", "-1", "9", "two"})
    EXPECT_EQ(run("picture", {sample("first-lesson"), "-o", out, "--ratio", ratio}).code, 2) << ratio;
  EXPECT_EQ(run("picture", {sample("first-lesson")}).code, 2);
  EXPECT_EQ(run("picture", {"/nowhere.crossing", "-o", out}).code, 2);
  EXPECT_FALSE(std::filesystem::exists(out));
  EXPECT_EQ(run("picture", {sample("first-lesson"), "-o", "/nowhere/at/all.png"}).code, 2);
}

/// A program of that name in a folder of its own, and the search path with nothing else in it, for one test.
class FfmpegInPath {
 public:
  explicit FfmpegInPath(const char* script) : before_(qgetenv("PATH")) {
    if (script) {
      const std::string path = folder_.path("ffmpeg");
      QFile file(QString::fromStdString(path));
      if (file.open(QIODevice::WriteOnly)) file.write(script);
      file.setPermissions(QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
    }
    qputenv("PATH", QByteArray::fromStdString(folder_.path("")));
  }
  ~FfmpegInPath() { qputenv("PATH", before_); }
  FfmpegInPath(const FfmpegInPath&) = delete;
  FfmpegInPath& operator=(const FfmpegInPath&) = delete;

 private:
  Folder folder_;
  QByteArray before_;
};

TEST(MovieCommand, Folder_APictureForEachFrame_TheToolMoves) {
  const Folder folder;
  const Ran ran = run("movie", {sample("first-lesson"), "-o", folder.path("frames"), "--size", "500x300", "--speed",
                                "300", "--rate", "2"});
  ASSERT_EQ(ran.code, 0) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("100 %"));
  const QDir frames(QString::fromStdString(folder.path("frames")));
  const QStringList names = frames.entryList(QDir::Files, QDir::Name);
  ASSERT_GE(names.size(), 5);
  EXPECT_EQ(names.front(), QStringLiteral("frame-00001.png"));
  const QImage first(frames.filePath(names.front())), last(frames.filePath(names.back())),
      before_last(frames.filePath(names[names.size() - 2]));
  EXPECT_EQ(first.size(), QSize(500, 300));
  EXPECT_NE(first, last);
  EXPECT_EQ(last, before_last) << "the end stands";
}

TEST(MovieCommand, FolderWithSomethingInIt_IsLeftAlone) {
  const Folder folder;
  QFile file(QString::fromStdString(folder.path("mine.txt")));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.close();
  const Ran ran = run("movie", {sample("first-lesson"), "-o", folder.path("")});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("not empty"));
}

TEST(MovieCommand, WrongWords_AreRefused) {
  const Folder folder;
  for (const auto& [words, said] : std::vector<std::pair<std::vector<std::string>, const char*>>{
           {{}, "-o"},
           {{"-o", folder.path("x.avi")}, "OUT.mp4"},
           {{"-o", folder.path("a"), "--speed", "0"}, "--speed"},
           {{"-o", folder.path("a"), "--rate", "61"}, "--rate"},
           {{"-o", folder.path("a"), "--size", "50x50"}, "--size"},
           {{"-o", folder.path("a"), "--speed", "1", "--rate", "60", "--size", "300x200"}, "20000 frames"}}) {
    std::vector<std::string> all{sample("house-service")};
    all.insert(all.end(), words.begin(), words.end());
    const Ran ran = run("movie", all);
    EXPECT_EQ(ran.code, 2) << said;
    EXPECT_THAT(ran.err, HasSubstr(said));
    EXPECT_FALSE(QFileInfo::exists(QString::fromStdString(folder.path("a")))) << said;
  }
}

// A crossing without a path has nothing to show: no empty movie, and no folder left behind.
TEST(MovieCommand, NoPath_IsRefused) {
  const Folder folder;
  nlohmann::json crossing = nlohmann::json::parse(std::ifstream(sample("first-lesson")));
  crossing["bore"]["launch"]["elevation_m"] = 100.0;  // above the ground
  folder.write("up.crossing", crossing.dump());
  const Ran ran = run("movie", {folder.path("up.crossing"), "-o", folder.path("frames")});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("nothing to play"));
  EXPECT_FALSE(QFileInfo::exists(QString::fromStdString(folder.path("frames"))));
}

TEST(MovieCommand, WithoutFfmpeg_SaysWhatToDo) {
  const Folder folder;
  const FfmpegInPath none(nullptr);
  const Ran ran = run("movie", {sample("first-lesson"), "-o", folder.path("bore.mp4")});
  EXPECT_EQ(ran.code, 2);
  EXPECT_THAT(ran.err, HasSubstr("apt-get install ffmpeg"));
}

// What it writes becomes the file, whole; where it fails, the old file stays.
TEST(MovieCommand, Ffmpeg_JoinsThePictures) {
  const Folder folder;
  const std::string out = folder.path("bore.mp4");
  const std::vector<std::string> words{
      sample("first-lesson"), "-o", out, "--size", "400x300", "--speed", "600", "--rate", "1"};
  {
    const FfmpegInPath joins("#!/bin/sh\nfor last; do :; done\necho \"$@\" > \"$last\"\n");
    const Ran ran = run("movie", words);
    ASSERT_EQ(ran.code, 0) << ran.err;
    EXPECT_THAT(folder.read("bore.mp4"), HasSubstr("-framerate 1"));
    EXPECT_THAT(folder.read("bore.mp4"), HasSubstr("frame-%05d.png"));
  }
  const std::string before = folder.read("bore.mp4");
  for (const char* script : {"#!/bin/sh\necho no room >&2\nexit 1\n", "#!/bin/sh\nexit 0\n"}) {
    const FfmpegInPath falls(script);
    const Ran ran = run("movie", words);
    EXPECT_EQ(ran.code, 2);
    EXPECT_THAT(ran.err, HasSubstr("ffmpeg"));
    EXPECT_EQ(folder.read("bore.mp4"), before);
  }
}

// Derived: at 60 times and 25 frames a second a frame is 2.4 s of the bore; the end stands for two seconds.
TEST(Movie, Times_FromTheStartToTheVeryEnd) {
  Playback bore;
  bore.path.points.resize(2);
  bore.path.points[1].s_m = bore.path.points[1].x_m = 3;
  bore.path.length_m = 3;
  bore.time_s = {0, 61};
  const std::vector<double> times = frame_times(bore, MovieOptions{});
  ASSERT_EQ(times.size(), 26u + 50u);
  EXPECT_EQ(times.front(), 0);
  EXPECT_NEAR(times[1], 2.4, 1e-12);
  EXPECT_NEAR(times[25], 60, 1e-9);
  for (std::size_t i = 26; i < times.size(); ++i) EXPECT_EQ(times[i], 61);
}

}  // namespace
}  // namespace burrow::test
