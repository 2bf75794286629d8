// Lengths in the file itself: the content stream of the PDF is walked, operator by operator.

#include <QImage>
#include <QTemporaryDir>
#include <QXmlStreamReader>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <sstream>

#include "burrow/sheet/page_out.h"
#include "support/sheet_for_tests.h"

namespace burrow::test {
namespace {

constexpr double point_mm = 25.4 / 72;

/// The content streams of the pages, unpacked, in the order of the file.
std::vector<std::string> contents(const std::string& pdf) {
  std::vector<std::string> all;
  for (std::size_t at = 0; (at = pdf.find("stream\n", at)) != std::string::npos; at += 7) {
    if (at >= 3 && pdf.compare(at - 3, 3, "end") == 0) continue;
    const std::size_t object = pdf.rfind(" obj", at);
    const std::string head = pdf.substr(object, at - object);
    if (head.find("FlateDecode") == std::string::npos || head.find("Length1") != std::string::npos) continue;
    const std::size_t from = at + 7, to = pdf.find("endstream", from);
    QByteArray packed("\0\0\0\1", 4);  // what qUncompress takes for the length, a hint only
    packed.append(pdf.data() + from, static_cast<qsizetype>(to - from));
    const QByteArray text = qUncompress(packed);
    if (text.contains(" cm\n") || text.contains(" re\n")) all.push_back(text.toStdString());
  }
  return all;
}

/// Stroked or filled straight segments in millimetres on the page, every transform applied.
std::vector<QLineF> segments(const std::string& content) {
  std::vector<QLineF> all;
  std::vector<QTransform> kept;
  QTransform now;
  std::vector<double> numbers;
  QPointF at, began;
  std::istringstream words(content);
  const auto place = [&](std::size_t i) { return now.map(QPointF(numbers[i], numbers[i + 1])) * point_mm; };
  for (std::string word; words >> word;) {
    double value = 0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
    if (error == std::errc() && end == word.data() + word.size()) {
      numbers.push_back(value);
      continue;
    }
    if (word == "q") kept.push_back(now);
    if (word == "Q" && !kept.empty()) {
      now = kept.back();
      kept.pop_back();
    }
    if (word == "cm" && numbers.size() >= 6)
      now = QTransform(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]) * now;
    if (word == "m" && numbers.size() >= 2) at = began = place(numbers.size() - 2);
    if (word == "l" && numbers.size() >= 2) {
      const QPointF to = place(numbers.size() - 2);
      all.emplace_back(at, to);
      at = to;
    }
    if (word == "h") {
      all.emplace_back(at, began);
      at = began;
    }
    numbers.clear();
  }
  return all;
}

/// How far the nearest horizontal segment's length is from the one wanted.
double nearest(const std::vector<QLineF>& lines, double length_mm) {
  double best = 1e300;
  for (const QLineF& line : lines)
    if (std::abs(line.dy()) < 1e-3) best = std::min(best, std::abs(line.length() - length_mm));
  return best;
}

std::string file(const QString& path) {
  std::ostringstream text;
  text << std::ifstream(path.toStdString(), std::ios::binary).rdbuf();
  return text.str();
}

// The check bar is 100 mm; the bore of 14 m is 280, 140 and 70 mm long. 1e-4 mm: a tenth of a micrometre.
TEST(PaperOut, Pdf_LengthsAtScale) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("x.pdf"));
  const Judged& j = judged_sample("house-service");
  const double bore_mm = 1000 * (j.crossing.bore.exit.station.m - j.crossing.bore.launch.station.m);
  for (const double scale : {50.0, 100.0, 200.0}) {
    Sheet sheet = sheet_for(j, UnitSystem::metric, "a2");
    sheet.scale = scale;
    ASSERT_TRUE(write_sheet_pdf(sheet, path));
    const auto streams = contents(file(path));
    ASSERT_FALSE(streams.empty());
    const auto lines = segments(streams.front());
    ASSERT_GT(lines.size(), 100u);
    EXPECT_LT(nearest(lines, 100), 1e-4) << scale;
    EXPECT_LT(nearest(lines, bore_mm / scale), 1e-4) << scale;
    EXPECT_LT(nearest(lines, 1000 * j.answer.launch_pit.floor_length_m / scale), 1e-4) << scale;
    EXPECT_GT(nearest(lines, 123.4567), 1e-3) << "or any length would be found";
  }
}

TEST(PaperOut, Pdf_EachPageHasItsOwnSize) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("x.pdf"));
  ASSERT_TRUE(
      write_sheet_pdf(sheet_for(judged_sample("first-lesson"), UnitSystem::metric, "a4"), path, SheetPart::all));
  const std::string pdf = file(path);
  int landscape = 0, cards = 0;
  for (std::size_t at = 0; (at = pdf.find("/MediaBox [", at)) != std::string::npos; ++at) {
    double a = 0, b = 0, w = 0, h = 0;
    ASSERT_EQ(std::sscanf(pdf.c_str() + at, "/MediaBox [%lf %lf %lf %lf", &a, &b, &w, &h), 4);
    if (std::abs(w * point_mm - 297) < 0.5 && std::abs(h * point_mm - 210) < 0.5) ++landscape;
    if (std::abs(w * point_mm - 148) < 0.5 && std::abs(h * point_mm - 210) < 0.5) ++cards;
  }
  EXPECT_GE(landscape, 3);
  EXPECT_GE(cards, 2);
}

// Another program lists the fonts: all embedded, all ours.
TEST(PaperOut, Pdf_FontsAreEmbedded) {
  ASSERT_EQ(std::system("pdffonts -v >/dev/null 2>&1"), 0) << "poppler-utils is not there";
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("x.pdf"));
  ASSERT_TRUE(write_sheet_pdf(sheet_for(judged_sample("house-service"), UnitSystem::metric), path, SheetPart::all));
  std::FILE* pipe = ::popen(("pdffonts '" + path.toStdString() + "'").c_str(), "r");
  ASSERT_TRUE(pipe);
  std::array<char, 512> line{};
  int fonts = 0;
  for (int row = 0; std::fgets(line.data(), line.size(), pipe); ++row) {
    if (row < 2) continue;
    const QStringList words = QString::fromUtf8(line.data()).simplified().split(QLatin1Char(' '));
    ++fonts;
    EXPECT_TRUE(words.front().contains(QStringLiteral("OpenSans"))) << line.data();
    EXPECT_EQ(words[words.size() - 5], QStringLiteral("yes")) << line.data();
  }
  ::pclose(pipe);
  EXPECT_GE(fonts, 2);
}

std::string said_by(const std::string& command) {
  std::FILE* pipe = ::popen(command.c_str(), "r");
  EXPECT_TRUE(pipe);
  std::string all;
  std::array<char, 512> line{};
  while (pipe && std::fgets(line.data(), line.size(), pipe)) all += line.data();
  if (pipe) {
    EXPECT_EQ(::pclose(pipe), 0) << command << "\n" << all;
  }
  return all;
}

// Two other programs: one finds no fault in its structure, the other reads title and author.
TEST(PaperOut, Pdf_TitleAndAuthor_AndNoFault) {
  ASSERT_EQ(std::system("qpdf --version >/dev/null 2>&1"), 0) << "qpdf is not there";
  const QTemporaryDir folder;
  for (const std::string& name : sample_names()) {
    Judged j = judged_sample(name);
    j.crossing.name = "Ärger & <Lane>";
    j.crossing.sheet.drawn_by = "A. Nobody & Söhne";
    const QString path = folder.filePath(QStringLiteral("x.pdf"));
    ASSERT_TRUE(write_sheet_pdf(sheet_for(j, UnitSystem::metric), path, SheetPart::all));
    const std::string file_name = "'" + path.toStdString() + "'";
    const std::string check = said_by("qpdf --check " + file_name + " 2>&1");
    EXPECT_NE(check.find("No syntax or stream encoding errors"), std::string::npos) << check;
    const std::string info = said_by("pdfinfo -enc UTF-8 " + file_name + " 2>&1");
    EXPECT_NE(info.find("Ärger & <Lane>"), std::string::npos) << info;
    EXPECT_NE(info.find("A. Nobody & Söhne"), std::string::npos) << info;
    EXPECT_NE(said_by("pdfinfo -meta " + file_name).find("A. Nobody &amp; Söhne"), std::string::npos);
    EXPECT_EQ(file(path).find("/ca 0."), std::string::npos) << "no transparency";
  }
}

// As qpdf lists them: each part, and below the calculation each of its sections.
TEST(PaperOut, Pdf_BookmarksOfPartsAndSections) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("x.pdf"));
  const Sheet sheet = sheet_for(judged_sample("house-service"), UnitSystem::metric);
  ASSERT_TRUE(write_sheet_pdf(sheet, path, SheetPart::all));
  const std::string list = said_by("qpdf --json=1 --json-key=outlines '" + path.toStdString() + "'");
  for (const char* part : {"Crossing sheet", "Calculation", "Setup card", "Clear gap to the utility"})
    EXPECT_NE(list.find(part), std::string::npos) << part;
  // Each leads to a page of the file.
  EXPECT_EQ(list.find("\"destpageposfrom1\": null"), std::string::npos) << list;
}

TEST(PaperOut, Pdf_NowhereToWrite_IsTold) {
  const auto done = write_sheet_pdf(sheet_for(judged_sample("first-lesson"), UnitSystem::metric),
                                    QStringLiteral("/nowhere/at/all.pdf"));
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().place, "/nowhere/at/all.pdf");
}

// Well-formed, in millimetres, with the check bar in it and each text named.
// The card for a phone: both sides below one another, 1080 pixels wide, with ink on each.
TEST(PaperOut, Png_CardForAPhone) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("card.png"));
  ASSERT_TRUE(write_card_png(sheet_for(judged_sample("day-finished"), UnitSystem::metric), path));
  const QImage card(path);
  EXPECT_EQ(card.width(), 1080);
  EXPECT_NEAR(card.height(), 2 * 1080 * 210 / 148.0, 20);
  for (const double part : {0.25, 0.75}) {
    int dark = 0;
    const int from = static_cast<int>(card.height() * (part - 0.2)),
              to = static_cast<int>(card.height() * (part + 0.2));
    for (int y = from; y < to; ++y)
      for (int x = 0; x < card.width(); x += 3) dark += qGray(card.pixel(x, y)) < 100;
    EXPECT_GT(dark, 2000) << part;
  }
  EXPECT_FALSE(write_card_png(sheet_for(judged_sample("day-finished"), UnitSystem::metric),
                              folder.filePath(QStringLiteral("none/card.png"))));
}

TEST(PaperOut, Svg_HasItsSizeAndLengths) {
  const auto pages = *sheet_pages(sheet_for(judged_sample("house-service"), UnitSystem::metric), SheetPart::sheet);
  const QByteArray svg = page_svg(pages.front(), QStringLiteral("a & b"));
  QXmlStreamReader in(svg);
  int texts = 0;
  bool bar = false;
  QString size;
  while (!in.atEnd()) {
    in.readNext();
    if (!in.isStartElement()) continue;
    const auto attributes = in.attributes();
    if (in.name() == QStringLiteral("svg")) size = attributes.value(QStringLiteral("width")).toString();
    if (in.name() != QStringLiteral("path")) continue;
    if (attributes.hasAttribute(QStringLiteral("aria-label"))) ++texts;
    const QStringList d =
        attributes.value(QStringLiteral("d")).toString().remove(QLatin1Char('M')).simplified().split(QLatin1Char(' '));
    if (d.size() == 4 && d[1] == d[3] && d[2].startsWith(QLatin1Char('L')) &&
        std::abs(d[2].mid(1).toDouble() - d[0].toDouble() - 100) < 1e-4)
      bar = true;
  }
  EXPECT_FALSE(in.hasError()) << in.errorString().toStdString();
  EXPECT_EQ(size, QStringLiteral("420.00000mm"));
  EXPECT_TRUE(bar);
  int wanted = 0;
  for (const PageItem& item : pages.front().items) wanted += item.kind == PageItemKind::text;
  EXPECT_EQ(texts, wanted);
}

}  // namespace
}  // namespace burrow::test
