// Tables: read back by a reader written here from the grammar of RFC 4180, section 2 (from memory).

#include "burrow/export/csv.h"

#include <charconv>
#include <cmath>

#include "support/export_for_tests.h"

namespace burrow::test {
namespace {

using Table = std::vector<std::vector<std::string>>;

/// A state a character, as the grammar has it; fails on a quote inside a plain field and on a bare CR or LF.
Table read_table(const std::string& text) {
  Table rows(1, std::vector<std::string>(1));
  for (std::size_t i = 0; i < text.size();) {
    std::string& field = rows.back().back();
    if (text[i] == '"') {
      EXPECT_TRUE(field.empty());
      for (++i; i < text.size(); ++i) {
        if (text[i] != '"')
          field += text[i];
        else if (i + 1 < text.size() && text[i + 1] == '"')
          field += text[++i];
        else
          break;
      }
      EXPECT_LT(i, text.size()) << "a quote is not closed";
      ++i;
    } else if (text[i] == ',') {
      rows.back().emplace_back();
      ++i;
    } else if (text[i] == '\r') {
      EXPECT_EQ(text.substr(i, 2), "\r\n");
      i += 2;
      if (i < text.size()) rows.emplace_back(1);
    } else {
      EXPECT_NE(text[i], '\n');
      field += text[i++];
    }
  }
  return rows;
}

double number(const std::string& text) {
  double value = NAN;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  EXPECT_TRUE(error == std::errc() && end == text.data() + text.size()) << text;
  return value;
}

TEST(Csv, Field_QuotesOnlyWhereNeeded) {
  EXPECT_EQ(csv_field("gas main"), "gas main");
  EXPECT_EQ(csv_field(""), "");
  // A spreadsheet works out what begins so; a number stays one.
  EXPECT_EQ(csv_field("=HYPERLINK(1)"), "'=HYPERLINK(1)");
  EXPECT_EQ(csv_field("+49 123"), "'+49 123");
  EXPECT_EQ(csv_field("-A1,2"), "\"'-A1,2\"");
  EXPECT_EQ(csv_field("@SUM(A1)"), "'@SUM(A1)");
  EXPECT_EQ(csv_field("-1.25"), "-1.25");
  EXPECT_EQ(csv_field("-1e-05"), "-1e-05");
  EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
  EXPECT_EQ(csv_field("18\" pipe"), "\"18\"\" pipe\"");
  EXPECT_EQ(csv_field("two\nlines"), "\"two\nlines\"");
}

// The same numbers come back, every row has as many fields as the header.
TEST(Csv, Path_ReadsBackAsTheSameNumbers) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const Table rows = read_table(write_csv(CsvTable::path, j.crossing, j.answer));
    ASSERT_EQ(rows.size(), j.answer.bore.points.size() + 1) << name;
    ASSERT_EQ(rows[0][1], "station_m");
    for (std::size_t i = 1; i < rows.size(); ++i) {
      ASSERT_EQ(rows[i].size(), rows[0].size());
      const PathPoint& p = j.answer.bore.points[i - 1];
      // To ten digits, and none of them noise.
      EXPECT_NEAR(number(rows[i][1]), p.x_m, 1e-9 * std::abs(p.x_m));
      EXPECT_NEAR(number(rows[i][3]), p.z_m, 1e-9 * std::abs(p.z_m));
      EXPECT_NEAR(number(rows[i][8]), p.cover_m, 1e-9 * std::abs(p.cover_m));
      for (const std::string& field : rows[i]) EXPECT_LE(field.size(), 17u) << field;
    }
  }
}

TEST(Csv, MarksAndFindings_OneRowEach_UnknownIsEmpty) {
  for (const std::string& name : sample_names()) {
    const Judged& j = judged_sample(name);
    const Table marks = read_table(write_csv(CsvTable::marks, j.crossing, j.answer));
    ASSERT_EQ(marks.size(), j.answer.marks.size() + 1) << name;
    for (std::size_t i = 1; i < marks.size(); ++i) {
      ASSERT_EQ(marks[i].size(), marks[0].size()) << name;
      EXPECT_EQ(marks[i][0].empty(), !j.answer.marks[i - 1].hose_m);
    }
    const Table findings = read_table(write_csv(CsvTable::findings, j.crossing, j.answer));
    ASSERT_EQ(findings.size(), j.answer.findings.size() + 1) << name;
    for (std::size_t i = 1; i < findings.size(); ++i) {
      const Finding& f = j.answer.findings[i - 1];
      ASSERT_EQ(findings[i].size(), findings[0].size()) << name;
      EXPECT_EQ(findings[i][0], f.code);
      EXPECT_EQ(findings[i][8].empty(), !f.measured);
      EXPECT_EQ(findings[i][15], finding_text(f, UnitSystem::metric));
    }
  }
}

// Words that would break a line or a field stay one field.
TEST(Csv, HostileNames_StayInTheirField) {
  Judged j = judged_sample("four-faults");
  ASSERT_FALSE(j.answer.findings.empty());
  j.answer.findings[0].name = "18\" main,\r\n\"old\"";
  const Table rows = read_table(write_csv(CsvTable::findings, j.crossing, j.answer));
  ASSERT_EQ(rows.size(), j.answer.findings.size() + 1);
  EXPECT_EQ(rows[1][4], j.answer.findings[0].name);
}

TEST(Csv, Working_EachNumberOnALineOfItsOwn) {
  const Judged& j = judged_sample("house-service");
  const Table rows = read_table(write_csv(CsvTable::working, j.crossing, j.answer));
  std::size_t wanted = 0;
  for (const Working& w : j.answer.working) wanted += w.inputs.size() + 1 + (w.limit ? 1 : 0);
  EXPECT_EQ(rows.size(), wanted + 1) << "with the header";
  for (const auto& row : rows) EXPECT_EQ(row.size(), rows[0].size());
}

}  // namespace
}  // namespace burrow::test
