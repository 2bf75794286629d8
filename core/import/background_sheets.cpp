#include "background_sheets.h"

#include <algorithm>

#include "simplified.h"

namespace burrow {

namespace {

bool passes(const PlanLine& line, const NearBox& box) {
  std::vector<PathVertex> path;
  for (const PlanPoint& p : line) path.push_back({p.x_m, p.y_m, std::nullopt});
  return !inside_box(path, box).empty();
}

}  // namespace

void BackgroundSheets::add(const std::string& source, const std::string& layer,
                           const std::vector<std::vector<PathVertex>>& parts) {
  if (sheets_.empty() || sheets_.back().source != source || sheets_.back().layer != layer) {
    Background sheet;
    sheet.source = source;
    sheet.layer = layer;
    sheets_.push_back(std::move(sheet));
  }
  for (const auto& part : parts) {
    PlanLine plain;
    for (const PathVertex& v : part) plain.push_back({v.x_m, v.y_m});
    sheets_.back().lines.push_back(std::move(plain));
  }
}

BackgroundSheets::Lightened BackgroundSheets::lighten(double tolerance_m, std::size_t most_vertices,
                                                      const NearBox& near) {
  Lightened how;
  for (const Background& sheet : sheets_)
    for (const PlanLine& line : sheet.lines) how.before += line.size();
  constexpr int most_passes = 4;  // coarser than some 0.2 m a line is not where it was drawn
  for (int pass = 0; pass < most_passes; ++pass, tolerance_m *= 2) {
    how.after = 0;
    how.tolerance_m = tolerance_m;
    for (Background& sheet : sheets_)
      for (PlanLine& line : sheet.lines) {
        PlanLine lighter;
        for (const std::size_t i : simplified(line, tolerance_m)) lighter.push_back(line[i]);
        line = std::move(lighter);
        how.after += line.size();
      }
    if (how.after <= most_vertices) return how;
  }
  // What may meet the bore stays, up to what a file may hold; of the rest the first that fit.
  const std::size_t most_near = 4 * most_vertices;
  how.after = 0;
  const auto drop = [&](bool near_ones, std::size_t most) {
    for (Background& sheet : sheets_)
      std::erase_if(sheet.lines, [&](const PlanLine& line) {
        if (passes(line, near) != near_ones) return false;
        const bool too_many = how.after + line.size() > most;
        if (too_many) ++how.lines_dropped;
        if (!too_many) how.after += line.size();
        return too_many;
      });
  };
  drop(true, most_near);
  drop(false, most_vertices);
  std::erase_if(sheets_, [](const Background& sheet) { return sheet.lines.empty(); });
  return how;
}

}  // namespace burrow
