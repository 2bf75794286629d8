/// What is typed of utilities and test holes, at the ends of its ranges; the bar of pages.

#include <gtest/gtest.h>

#include "burrow/document/utility_fields.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

// Whole kind: the ends of every range are taken by the reader and by everything that is computed.
TEST(UtilityFields, EndsOfEveryRange_OpenAgainAndAreAnswered) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const auto try_all = [&](const std::vector<Field>& fields) {
    ASSERT_FALSE(fields.empty());
    for (const Field& field : fields)
      for (const double end : {field.low, field.high}) {
        Crossing changed = document.crossing();
        field.apply(changed, end);
        const Result<Crossing> again = read_crossing(write_crossing(changed), tables_for_tests());
        ASSERT_TRUE(again) << field.label << ": " << again.error().english();
        EXPECT_FALSE(assess(*again, tables_for_tests()).findings.empty()) << field.label << " " << end;
      }
  };
  for (std::size_t i = 0; i < document.crossing().site.utilities.size(); ++i)
    for (const DepthFrom from : {DepthFrom::ground, DepthFrom::datum}) {
      const std::string id = document.crossing().site.utilities[i].id;
      document.change(QStringLiteral("from"), [&](Crossing& c) { c.site.utilities[i].recorded.from = from; });
      const PassingPlace place = passing_place(document.crossing(), document.crossing().site.utilities[i],
                                               &document.assessment().utilities[i]);
      try_all(utility_level_fields(document.crossing(), id, place));
      try_all(utility_size_fields(document.crossing(), id));
      try_all(utility_location_fields(document.crossing(), id, place, tables_for_tests()));
      try_all(utility_gap_fields(document.crossing(), id));
      try_all({new_hole_field(document.crossing(), id, place)});
    }
  try_all(hole_fields(document.crossing(), "h1"));
  try_all(search_fields(document.crossing()));
}

}  // namespace
}  // namespace burrow
