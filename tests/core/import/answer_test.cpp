// What the reading process answers: there and back, and distrusted.

#include "reader_process.h"
#include "support/mutated_answers.h"

namespace burrow::test {
namespace {

const std::string path = "/a folder/b.zip";

TEST(Answer, ThereAndBack) {
  const ReaderAnswer answer = full_answer(path);
  const std::string bytes = packed(answer);
  EXPECT_EQ(bytes.size(), size_of(answer));
  const auto back = checked_answer(bytes, request_of(path));
  ASSERT_TRUE(back);
  EXPECT_EQ(*back, answer);
  std::string pieces;
  EXPECT_TRUE(send_packed(answer, [&](std::string_view piece) {
    pieces += piece;
    return true;
  }));
  EXPECT_EQ(pieces, bytes);
  EXPECT_FALSE(send_packed(answer, [](std::string_view) { return false; }));

  ReaderAnswer error;
  error.error = ErrorInWords{path + ": line 3", "x", "y"};
  EXPECT_EQ(checked_answer(packed(error), request_of(path)), error);

  ReaderRequest heights = request_of(path);
  heights.raster = answer.found->rasters[0];
  heights.points = {{1, 2}, {3, 4}};
  ReaderAnswer two;
  two.heights = std::vector<std::optional<double>>{101.5, std::nullopt};
  EXPECT_EQ(checked_answer(packed(two), heights), two);
}

TEST(Answer, Request_ThereAndBack) {
  ReadOptions options;
  options.order = "nez";
  options.most_seconds = 2.5;
  ReaderRequest request = request_for(path, options);
  request.texts = {{"a", "ä"}};
  request.counted = {{"{} line", {"{} Linie", "{} Linien"}}};
  request.points = {{1, 2}};
  request.raster = full_answer(path).found->rasters[0];
  const auto back = unpacked_request(packed(request));
  ASSERT_TRUE(back);
  EXPECT_EQ(packed(*back), packed(request));
  EXPECT_EQ(back->order, "nez");
  EXPECT_EQ(back->most_seconds, 2.5);
  EXPECT_EQ(back->texts[0].translated, "ä");
  EXPECT_EQ(back->counted[0].forms[1], "{} Linien");
  EXPECT_FALSE(unpacked_request(packed(request).substr(1)));
  EXPECT_FALSE(unpacked_request(""));
}

// Each member that somebody later relies on, wrong by itself.
TEST(Answer, Refused_WhatCannotBe) {
  std::size_t tried = 0;
  const auto refused = [&](auto spoil) {
    ReaderAnswer answer = full_answer(path);
    spoil(*answer.found);
    ++tried;
    return !checked_answer(packed(answer), request_of(path));
  };
  EXPECT_FALSE(refused([](Found&) {}));
  EXPECT_TRUE(refused([](Found& f) { f.file = "/another"; }));
  EXPECT_TRUE(refused([](Found& f) { f.vertices[0].x_m = std::nan(""); }));
  EXPECT_TRUE(refused([](Found& f) { f.vertices[1].y_m = 1.1e11; }));
  EXPECT_TRUE(refused([](Found& f) { f.vertices[2].z_m = HUGE_VAL; }));
  EXPECT_TRUE(refused([](Found& f) { f.vertices.resize(97); }));  // and four of the surface: one beyond the bound
  EXPECT_TRUE(refused([](Found& f) { f.features[0].layer = 3; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[0].count = 0; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[1].count = 3; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[1].count = ~std::size_t{0}; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[1].first = ~std::size_t{0}; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[2].count = 2; }));
  EXPECT_TRUE(refused([](Found& f) { f.features[1].diameter_m = std::nan(""); }));
  EXPECT_TRUE(refused([](Found& f) { f.features[1].shape = static_cast<Shape>(3); }));
  EXPECT_TRUE(refused([](Found& f) { f.frame.unit = static_cast<FileUnit>(99); }));
  EXPECT_TRUE(refused([](Found& f) { f.surfaces[0].layer = 3; }));
  EXPECT_TRUE(refused([](Found& f) { f.surfaces[0].faces[1][2] = 4; }));
  EXPECT_TRUE(refused([](Found& f) { f.surfaces[0].points[3].z_m = std::nan(""); }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[0].path = "/vsicurl/http://127.0.0.1/e.tif"; }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[1].path += ".ovr"; }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[0].columns = 0; }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[0].rows = -1; }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[0].to_plan[1] = 0; }));
  EXPECT_TRUE(refused([](Found& f) { f.rasters[0].least_z = std::nan(""); }));
  EXPECT_TRUE(refused([](Found& f) { f.order = "pnezq"; }));
  EXPECT_EQ(tried, 25u);
}

// Texts are made fit to be shown: a control sign would move the cursor of a terminal, broken UTF-8 a label.
TEST(Answer, Texts_AreClean) {
  ReaderAnswer answer = full_answer(path);
  answer.found->layers[0] = "GAS\x1b[2J";
  answer.found->notes[0] = "caf\xE9";
  const auto back = checked_answer(packed(answer), request_of(path));
  ASSERT_TRUE(back);
  EXPECT_EQ(back->found->layers[0], "GAS [2J");
  EXPECT_EQ(back->found->notes[0], "café");
  ReaderAnswer error;
  error.error = ErrorInWords{path + "\n", "\n", "\n"};
  EXPECT_EQ(checked_answer(packed(error), request_of(path))->error, (ErrorInWords{path + " ", " ", " "}));
}

TEST(Answer, Refused_AnotherKindThanAsked) {
  ReaderAnswer heights;
  heights.heights = std::vector<std::optional<double>>{101.5};
  EXPECT_FALSE(checked_answer(packed(heights), request_of(path)));
  ReaderRequest request = request_of(path);
  request.raster = full_answer(path).found->rasters[0];
  request.points = {{1, 2}};
  EXPECT_TRUE(checked_answer(packed(heights), request));
  EXPECT_FALSE(checked_answer(packed(full_answer(path)), request));
  request.points = {{1, 2}, {3, 4}};
  EXPECT_FALSE(checked_answer(packed(heights), request)) << "one height for two points";
  request.points = {{1, 2}};
  heights.heights = std::vector<std::optional<double>>{std::nan("")};
  EXPECT_FALSE(checked_answer(packed(heights), request));
  EXPECT_FALSE(checked_answer(packed(ReaderAnswer{}), request_of(path))) << "says nothing";
  ReaderAnswer both = full_answer(path);
  both.error = ErrorInWords{};
  EXPECT_FALSE(checked_answer(packed(both), request_of(path)));
  ReaderAnswer newer = full_answer(path);
  ++newer.version;
  EXPECT_FALSE(checked_answer(packed(newer), request_of(path)));
  EXPECT_FALSE(checked_answer(packed(full_answer(path)) + '\0', request_of(path)));
}

TEST(Answer, Mutated_RefusedOrSound) {
  const Mutated sum = try_mutations(1, 20'000);
  EXPECT_GT(sum.changed, 19'000u);
  EXPECT_GT(sum.refused, 10'000u);
  EXPECT_GT(sum.taken, 500u) << "a change within a text or a number hurts nothing";
}

}  // namespace
}  // namespace burrow::test
