#include "burrow/drawing/readout.h"

#include <QObject>
#include <QStringList>
#include <algorithm>
#include <limits>

#include "burrow/base/quantity_apart.h"
#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "burrow/drawing/pit_edges.h"
#include "burrow/search/just_clear.h"

namespace burrow {

namespace {

/// Collects numbers, each in the unit and digits of its kind.
class Numbers {
 public:
  explicit Numbers(UnitSystem units) : units_(units) {}

  void add(const QString& what, double value, Dimension dimension) {
    all_.push_back({what, text(value, dimension), {}, Kept::not_judged});
  }

  /// With the least, or the most, that is required.
  void add(const QString& what, double value, Dimension dimension, double limit, bool at_least) {
    LiveNumber number{what, text_from(format_apart(value, limit, dimension, units_)), {}, Kept::not_judged};
    number.kept = (at_least ? value >= limit : value <= limit) ? Kept::kept : Kept::broken;
    number.limit = (at_least ? QObject::tr("%1 required") : QObject::tr("%1 at most"))
                       .arg(text_from(format_apart(limit, value, dimension, units_)));
    all_.push_back(number);
  }

  /// The last number keeps its limit, and yet a finding about the same counts: it is not called fine.
  void doubt_last() {
    if (all_.back().kept == Kept::kept) all_.back().kept = Kept::not_judged;
  }

  void add(const std::vector<LiveNumber>& more) { all_.insert(all_.end(), more.begin(), more.end()); }

  [[nodiscard]] std::vector<LiveNumber> take() { return std::move(all_); }

 private:
  [[nodiscard]] QString text(double value, Dimension dimension) const {
    return text_from(format(value, dimension, units_));
  }

  UnitSystem units_;
  std::vector<LiveNumber> all_;
};

bool counts_about(const Assessment& assessment, const std::string& utility) {
  return std::any_of(assessment.findings.begin(), assessment.findings.end(),
                     [&](const Finding& f) { return f.subject == utility && counts_in_verdict(f); });
}

bool counts_about_cover(const Assessment& assessment) {
  return std::any_of(assessment.findings.begin(), assessment.findings.end(), [](const Finding& f) {
    return (f.code.starts_with("surface.cover") || f.code.starts_with("bore.cover")) && counts_in_verdict(f);
  });
}

void add_vertex(Numbers& numbers, const LevelLine* line, int index) {
  if (!line || index < 0 || static_cast<std::size_t>(index) >= line->size()) return;
  const LevelPoint& point = (*line)[static_cast<std::size_t>(index)];
  numbers.add(QObject::tr("station"), point.station_m, Dimension::station);
  numbers.add(QObject::tr("level"), point.elevation_m, Dimension::station);
}

void add_utility(Numbers& numbers, const Assessment& assessment, const std::string& id) {
  for (const UtilityAnswer& answer : assessment.utilities) {
    if (answer.id != id) continue;
    if (answer.separation_m && answer.required_m) {
      numbers.add(QObject::tr("clear gap"), *answer.separation_m, Dimension::length, *answer.required_m, true);
      if (counts_about(assessment, id)) numbers.doubt_last();
    } else if (answer.separation_m)
      numbers.add(QObject::tr("clear gap"), *answer.separation_m, Dimension::length);
    if (answer.contact_chance_worst)
      numbers.add(QObject::tr("contact"), *answer.contact_chance_worst, Dimension::chance);
    if (answer.elevation_m) numbers.add(QObject::tr("axis level"), *answer.elevation_m, Dimension::station);
  }
}

void add_gap(Numbers& numbers, const Assessment& assessment, const std::string& id) {
  for (const UtilityAnswer& answer : assessment.utilities)
    if (answer.id == id && answer.separation_m && answer.required_m) {
      numbers.add(QObject::tr("%1, clear").arg(text_from(answer.name)), *answer.separation_m, Dimension::length,
                  *answer.required_m, true);
      if (counts_about(assessment, id)) numbers.doubt_last();
    }
}

struct JudgedCover {
  QString what;
  double least_m = 0, required_m = 0;
  [[nodiscard]] double spare_m() const { return least_m - required_m; }
};

/// Of the program's own limit and those of the owners, the one with least to spare.
std::optional<JudgedCover> deciding_cover(const Crossing& crossing, const Assessment& assessment) {
  const CoverAnswer& cover = assessment.cover;
  if (!cover.least_m || !cover.required_m) return std::nullopt;
  JudgedCover deciding{QObject::tr("least cover"), *cover.least_m, *cover.required_m};
  for (const RuleZone& zone : assessment.zones) {
    if (!zone.cover_m) continue;
    double least = std::numeric_limits<double>::infinity();
    for (const PathPoint& p : assessment.bore.points)
      if (p.x_m >= zone.from_m && p.x_m <= zone.to_m) least = std::min(least, p.cover_m);
    if (least - *zone.cover_m >= deciding.spare_m()) continue;
    const QString name = text_from(part_name(crossing, {ItemKind::surface, zone.id, -1}));
    deciding = {QObject::tr("cover under %1").arg(name), least, *zone.cover_m};
  }
  return deciding;
}

const LevelLine* line_of(const Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::ground) return &crossing.site.ground;
  if (part.kind == ItemKind::water) return crossing.site.water ? &*crossing.site.water : nullptr;
  for (const Stratum& stratum : crossing.site.strata)
    if (part.kind == ItemKind::stratum && stratum.id == part.id && stratum.top) return &*stratum.top;
  return nullptr;
}

}  // namespace

std::string tightest_utility(const Assessment& assessment) {
  const UtilityAnswer* tightest = nullptr;
  const auto spare = [](const UtilityAnswer& a) { return *a.separation_m - *a.required_m; };
  for (const UtilityAnswer& answer : assessment.utilities)
    if (answer.separation_m && answer.required_m && (!tightest || spare(answer) < spare(*tightest))) tightest = &answer;
  return tightest ? tightest->id : std::string();
}

std::vector<LiveNumber> live_numbers(const Crossing& crossing, const Assessment& assessment, const ItemRef& part,
                                     UnitSystem units, const std::vector<std::string>& watched) {
  Numbers numbers(units);
  const Launch& launch = crossing.bore.launch;
  switch (part.kind) {
    case ItemKind::launch:
      numbers.add(QObject::tr("axis level"), launch.elevation.m, Dimension::station);
      if (!crossing.site.ground.empty())
        numbers.add(QObject::tr("depth at face"),
                    elevation_at(crossing.site.ground, launch.station.m) - launch.elevation.m, Dimension::length);
      break;
    case ItemKind::bore:
      numbers.add(QObject::tr("axis level"), launch.elevation.m, Dimension::station);
      break;
    case ItemKind::grade:
      numbers.add(QObject::tr("grade"), launch.grade.v, Dimension::grade);
      if (launch.heading->rad != 0) numbers.add(QObject::tr("heading"), launch.heading->rad, Dimension::angle);
      break;
    case ItemKind::exit:
      numbers.add(QObject::tr("station"), crossing.bore.exit.station.m, Dimension::station);
      break;
    case ItemKind::utility:
      add_utility(numbers, assessment, part.id);
      break;
    case ItemKind::ground:
    case ItemKind::stratum:
    case ItemKind::water:
      add_vertex(numbers, line_of(crossing, part), part.index);
      break;
    case ItemKind::pit_edge:
      numbers.add(pit_edge_numbers(crossing, assessment, part, units));
      break;
    default:
      break;
  }
  // A utility tells its own gap, the edge of a pit its size.
  if (part.kind != ItemKind::utility && part.kind != ItemKind::pit_edge) {
    for (const std::string& id : watched) add_gap(numbers, assessment, id);
    if (const std::optional<JudgedCover> cover = deciding_cover(crossing, assessment)) {
      numbers.add(cover->what, cover->least_m, Dimension::length, cover->required_m, true);
      if (counts_about_cover(assessment)) numbers.doubt_last();
    }
    const bool of_the_bore = part.kind == ItemKind::launch || part.kind == ItemKind::grade ||
                             part.kind == ItemKind::exit || part.kind == ItemKind::bore;
    if (of_the_bore && assessment.arrival.elevation_m)
      numbers.add(QObject::tr("arrives at"), *assessment.arrival.elevation_m, Dimension::station);
    if (part.kind == ItemKind::launch) numbers.add(QObject::tr("station"), launch.station.m, Dimension::station);
  }
  return numbers.take();
}

std::vector<ChangedNumber> beside(const std::vector<LiveNumber>& before, std::vector<LiveNumber> now) {
  std::vector<ChangedNumber> both;
  for (LiveNumber& number : now) {
    const auto was =
        std::find_if(before.begin(), before.end(), [&](const LiveNumber& b) { return b.what == number.what; });
    both.push_back({std::move(number), was == before.end() ? QString() : was->value});
  }
  return both;
}

QString snap_words(const std::vector<SnapLine>& lines, const Assessment& now) {
  QStringList words;
  for (const SnapLine& line : lines)
    if (line.clear_of.empty() || limits_kept(now, line.clear_of)) words << line.reason;
  return words.join(QStringLiteral(" · "));
}

}  // namespace burrow
