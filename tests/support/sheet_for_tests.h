#pragma once
/// The samples, judged once, and what their pages say.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <vector>

#include "burrow/check/assess.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/sheet/sheet.h"

namespace burrow::test {

inline const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

inline const std::vector<std::string>& sample_names() {
  static const std::vector<std::string> names{"car-park-duct", "day-finished", "first-lesson",   "four-faults",
                                              "house-service", "rail-siding",  "sixty-utilities"};
  return names;
}

struct Judged {
  Crossing crossing;
  Assessment answer;
};

inline const Judged& judged_sample(const std::string& name) {
  static std::map<std::string, Judged> all;
  const auto found = all.find(name);
  if (found != all.end()) return found->second;
  const auto text = read_text_file(BURROW_SOURCE_DIR "/samples/" + name + ".crossing");
  EXPECT_TRUE(text) << name;
  const auto crossing = read_crossing(text.value_or("{}"), tables());
  EXPECT_TRUE(crossing) << name;
  Judged judged;
  judged.crossing = crossing.value_or(Crossing{});
  judged.answer = assess(judged.crossing, tables());
  return all.emplace(name, std::move(judged)).first->second;
}

inline Sheet sheet_for(const Judged& judged, UnitSystem units, const char* paper = "a3") {
  Sheet sheet{judged.crossing, judged.answer, tables()};
  sheet.units = units;
  sheet.paper_mm = *paper_size(QString::fromLatin1(paper));
  return sheet;
}

struct PaperKind {
  const char* paper;
  UnitSystem units;
};
inline const PaperKind paper_kinds[] = {{"a4", UnitSystem::metric},  {"a3", UnitSystem::metric},
                                        {"a2", UnitSystem::metric},  {"letter", UnitSystem::us},
                                        {"tabloid", UnitSystem::us}, {"ansi-d", UnitSystem::us}};

inline void expect_inside_the_frame(const Page& page, const std::string& where) {
  EXPECT_TRUE(QRectF(QPointF(0, 0), page.size_mm).contains(page.frame_mm)) << where;
  for (const PageItem& item : page.items) {
    if (item.kind == PageItemKind::text) {
      EXPECT_TRUE(page.frame_mm.contains(item.box)) << where << ": " << item.text.toStdString();
      EXPECT_FALSE(item.text.trimmed().isEmpty()) << where;
    } else if (item.clip.isNull()) {
      for (const QPointF& p : item.points)
        EXPECT_TRUE(page.frame_mm.adjusted(-0.01, -0.01, 0.01, 0.01).contains(p))
            << where << ", a line through " << p.x() << ", " << p.y();
    } else {
      EXPECT_TRUE(page.frame_mm.contains(item.clip)) << where;
    }
    for (const QPointF& p : item.points) EXPECT_TRUE(std::isfinite(p.x()) && std::isfinite(p.y())) << where;
  }
}

inline void expect_texts_apart(const Page& page, const std::string& where) {
  std::vector<const PageItem*> texts;
  for (const PageItem& item : page.items)
    if (item.kind == PageItemKind::text) texts.push_back(&item);
  std::sort(texts.begin(), texts.end(),
            [](const PageItem* a, const PageItem* b) { return a->box.top() < b->box.top(); });
  for (std::size_t i = 0; i < texts.size(); ++i)
    for (std::size_t k = i + 1; k < texts.size() && texts[k]->box.top() < texts[i]->box.bottom(); ++k)
      EXPECT_FALSE(texts[i]->box.adjusted(0.02, 0.02, -0.02, -0.02).intersects(texts[k]->box))
          << where << ": \"" << texts[i]->text.toStdString() << "\" and \"" << texts[k]->text.toStdString() << "\"";
}

inline QString words_of(const std::vector<Page>& pages) {
  QString all;
  for (const Page& page : pages)
    for (const PageItem& item : page.items)
      if (item.kind == PageItemKind::text) all += item.text + QLatin1Char('\n');
  return all;
}

}  // namespace burrow::test
