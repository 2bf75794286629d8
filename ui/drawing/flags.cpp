#include "burrow/drawing/flags.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <set>

#include "burrow/check/mute.h"
#include "burrow/document/figures.h"
#include "burrow/document/text.h"
#include "burrow/drawing/labels.h"
#include "burrow/drawing/scene.h"
#include "overlaps.h"
#include "text_width.h"

namespace burrow {

namespace {

constexpr std::size_t most_flags = 9;

QPointF anchor_of(const Scene& scene, const Finding& finding) {
  const double station = *finding.station_m;
  const LevelLine& ground = scene.crossing.site.ground;
  const double elevation = finding.elevation_m ? *finding.elevation_m
                           : ground.empty()    ? 0
                                               : elevation_at(ground, station);
  return scene.frame.side(station, elevation);
}

/// A stop before what is not known before a caution; findings stand in that order.
bool graver(const std::vector<Finding>& findings, int a, int b) {
  return a < b && mark_of(findings[static_cast<std::size_t>(a)]) != mark_of(findings[static_cast<std::size_t>(b)]);
}

/// Findings about one subject at one place share a flag; the gravest speaks. (Of those as grave the clear gap stands
/// first in the list: a length is easier to picture than a chance.)
struct Group {
  std::size_t speaks = 0;
  std::vector<int> others;
};

std::vector<Group> groups_of(const std::vector<Finding>& findings) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const Finding& f = findings[i];
    if (!flag_wanted(f)) continue;
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& g) {
      const Finding& first = findings[g.speaks];
      return first.subject == f.subject &&
             first.code.substr(0, first.code.find('.')) == f.code.substr(0, f.code.find('.')) &&
             std::abs(*first.station_m - *f.station_m) < 0.5;
    });
    if (same == groups.end()) {
      groups.push_back({i, {}});
    } else {
      same->others.push_back(static_cast<int>(i));
    }
  }
  return groups;
}

/// "also 2, 4", "also 2, 4, 7 and 5 more"; nothing where there is no other.
QString also_words(const std::vector<int>& others) {
  constexpr std::size_t most_numbers = 3;
  if (others.empty()) return {};
  QStringList numbers;
  for (std::size_t i = 0; i < std::min(most_numbers, others.size()); ++i) numbers << QString::number(others[i] + 1);
  const QString named = numbers.join(QStringLiteral(", "));
  const int more = static_cast<int>(others.size()) - static_cast<int>(numbers.size());
  return QStringLiteral(" · ") +
         (more > 0 ? QObject::tr("also %1 and %n more", nullptr, more).arg(named) : QObject::tr("also %1").arg(named));
}

/// Places flags one after the other, the worst first.
class FlagPlacer {
 public:
  explicit FlagPlacer(const Scene& scene)
      : scene_(scene),
        lane_(scene.frame.flags),
        text_(scene.style.text),
        plain_(drawing_font(text_ * 0.92)),
        bold_(drawing_font(text_ * 0.95, QFont::DemiBold)),
        rows_(lane_.height() > two_rows_texts * text_ ? 2 : 1),
        one_line_(lane_.height() < two_lines_texts * text_) {}

  /// False: it found no room.
  bool add(const Group& group) {
    const Finding& finding = scene_.assessment.findings[group.speaks];
    Flag flag;
    flag.finding = static_cast<int>(group.speaks);
    flag.others = group.others;
    flag.anchor = anchor_of(scene_, finding);
    flag.stem_x = flag.anchor.x();
    if (!room_for(flag.stem_x)) return false;
    set_words(flag, with_units_kept(text_from(finding_text(finding, scene_.style.units))),
              widest_texts * text_ - badge() - text_);
    const double h = height();
    const double w = width_of(flag);
    double least = 1e300;
    for (int row = 0; row < rows_; ++row)
      for (const double x : places_for(row, w, flag.stem_x)) {
        const QRectF box(x, bottom_of(row) - h, w, h);
        const double cost = std::abs(box.center().x() - flag.stem_x) + row * text_ * 4;
        if (cost >= least || !fits(box, row, flag.stem_x)) continue;
        least = cost;
        flag.box = box;
        flag.row = row;
      }
    if (least > 1e299) return false;
    placed_.push_back(flag);
    return true;
  }

  /// Whether even a short flag could stand over that place; asked before words are made for it.
  [[nodiscard]] bool room_for(double stem) const {
    const double h = height(), w = least_texts * text_;
    for (int row = 0; row < rows_; ++row)
      for (const double x : places_for(row, w, stem))
        if (fits(QRectF(x, bottom_of(row) - h, w, h), row, stem)) return true;
    return false;
  }

  /// Names it in the flag nearest to it that is no milder: no "+3" of a caution hides a stop.
  void join(int finding) {
    const auto& findings = scene_.assessment.findings;
    const double x = anchor_of(scene_, findings[static_cast<std::size_t>(finding)]).x();
    const auto away = [&](const Flag& flag) {
      return std::pair(graver(findings, finding, flag.finding), std::abs(flag.stem_x - x));
    };
    const auto nearest = std::min_element(placed_.begin(), placed_.end(),
                                          [&](const Flag& a, const Flag& b) { return away(a) < away(b); });
    if (nearest == placed_.end()) return;
    nearest->others.push_back(finding);
    joined_.insert(nearest->finding);
  }
  /// Says it, once all are named, in the room that each flag has.
  void tell_joined() {
    for (Flag& flag : placed_) {
      if (!joined_.count(flag.finding)) continue;
      const Finding& own = scene_.assessment.findings[static_cast<std::size_t>(flag.finding)];
      set_words(flag, with_units_kept(text_from(finding_text(own, scene_.style.units))),
                flag.box.width() - badge() - text_ * 1.3);
    }
  }

  [[nodiscard]] const std::vector<Flag>& placed() const { return placed_; }
  [[nodiscard]] bool full() const { return placed_.size() >= most_flags; }
  [[nodiscard]] std::vector<Flag> take() { return std::move(placed_); }

 private:
  static constexpr double two_rows_texts = 6, two_lines_texts = 3.6;
  static constexpr double widest_texts = 26, least_texts = 9;
  static constexpr double farthest_texts = 19;

  /// "0.61 m clear of gas main" over "0.70 m required (…)"; in one line where the lane is low.
  void set_words(Flag& flag, const QString& words, double room) const {
    const QString also = also_words(flag.others);
    flag.text = words + also;
    if (one_line_) {
      flag.head = bold_.elided(words + also, Qt::ElideRight, room);
      return;
    }
    // What is found stands over what is required, where both fit so; the others by their count where their numbers do
    // not. Else the words go on below.
    const QString count = flag.others.empty() ? QString() : QStringLiteral(" +%1").arg(flag.others.size());
    const qsizetype comma = words.indexOf(QStringLiteral(", "));
    for (const QString& named : {also, count}) {
      if (comma < 0 || bold_.of(words.left(comma) + named) > room) continue;
      flag.head = words.left(comma) + named;
      flag.rest = plain_.elided(words.mid(comma + 1).trimmed(), Qt::ElideRight, room);
      return;
    }
    flag.rest.clear();
    if (bold_.of(words + also) <= room) {
      flag.head = words + also;
      return;
    }
    const qsizetype end = words.lastIndexOf(QLatin1Char(' '), fitting(words, room));
    const QString below = words.mid(end + 1);
    const QString& named = plain_.of(below) + plain_.of(also) <= room ? also : count;
    flag.head = words.left(end);
    flag.rest = plain_.elided(below, Qt::ElideRight, room - plain_.of(named)) + named;
  }

  /// How many of its letters fit.
  [[nodiscard]] qsizetype fitting(const QString& words, double room) const {
    qsizetype n = words.size();
    while (n > 1 && bold_.of(words.left(n)) > room) n = n * 9 / 10;
    return n;
  }

  [[nodiscard]] double height() const { return std::ceil((one_line_ ? 1 : 2) * plain_.height() + text_ * 0.35); }
  [[nodiscard]] double bottom_of(int row) const {
    return lane_.bottom() - text_ * 0.45 - row * (height() + text_ * 0.3);
  }
  [[nodiscard]] double badge() const { return text_ * 1.6; }
  [[nodiscard]] double width_of(const Flag& flag) const {
    return std::ceil(std::max(bold_.of(flag.head), plain_.of(flag.rest)) + badge() + text_ * 1.3);
  }

  [[nodiscard]] std::vector<double> places_for(int row, double w, double stem) const {
    std::vector<double> all{stem - w / 2, stem - w + text_, stem - text_};
    for (const Flag& other : placed_) {
      if (other.row == row) {
        all.push_back(other.box.right() + gap_px);
        all.push_back(other.box.left() - gap_px - w);
      } else {  // beside the stem of one above
        all.push_back(other.stem_x + gap_px);
        all.push_back(other.stem_x - gap_px - w);
      }
    }
    const double left = lane_.left() + 2, right = std::max(left, lane_.right() - w - 2);
    for (double& x : all) x = std::clamp(x, left, right);
    return all;
  }

  [[nodiscard]] bool fits(const QRectF& box, int row, double stem) const {
    if (!lane_.contains(box)) return false;
    const double away = std::max({0.0, box.left() - stem, stem - box.right()});
    if (away > farthest_texts * text_) return false;
    // A stem may pass behind a flag of the lower row, if not where that has its own.
    const auto stands_on = [&](const QRectF& b, double x, double own) {
      return x > b.left() - 3 && x < b.right() + 3 && std::abs(x - own) < text_ * 1.5;
    };
    return std::none_of(placed_.begin(), placed_.end(), [&](const Flag& other) {
      if (lie_over(other.box, box.adjusted(-gap_px / 2, -1, gap_px / 2, 1))) return true;
      if (other.row > row && stands_on(box, other.stem_x, stem)) return true;
      return other.row < row && stands_on(other.box, stem, other.stem_x);
    });
  }

  static constexpr double gap_px = 6;
  const Scene& scene_;
  const QRectF& lane_;
  double text_;
  TextWidths plain_, bold_;
  int rows_;
  bool one_line_;
  std::vector<Flag> placed_;
  std::set<int> joined_;  ///< flags that name others since they were placed
};

/// Dots of what has no flag: over its station, a little aside, or together with the next one.
class DotPlacer {
 public:
  DotPlacer(const Scene& scene, const std::vector<Flag>& flags)
      : scene_(scene), lane_(scene.frame.flags), flags_(flags), side_(scene.style.text * 1.35) {}

  /// False: it found no room, nor another to stand with.
  bool add(int finding) {
    const QPointF anchor = anchor_of(scene_, scene_.assessment.findings[static_cast<std::size_t>(finding)]);
    const double y = lane_.bottom() - scene_.style.text * 0.45 - side_;
    for (const double aside : {0.0, 5.0, -5.0, 10.0, -10.0, 14.0, -14.0}) {
      const double x = std::clamp(anchor.x() + aside - side_ / 2, lane_.left() + 1, lane_.right() - side_ - 1);
      const QRectF box(x, y, side_, side_);
      if (!free(box)) continue;
      dots_.push_back({{finding}, box, anchor, QString::number(finding + 1)});
      return true;
    }
    const auto nearest = std::min_element(dots_.begin(), dots_.end(), [&](const FlagDot& a, const FlagDot& b) {
      return std::abs(a.anchor.x() - anchor.x()) < std::abs(b.anchor.x() - anchor.x());
    });
    if (nearest == dots_.end() || std::abs(nearest->anchor.x() - anchor.x()) > side_ * 3) return false;
    nearest->findings.push_back(finding);
    nearest->text = QStringLiteral("+%1").arg(nearest->findings.size());
    return true;
  }

  [[nodiscard]] std::vector<FlagDot> take() { return std::move(dots_); }

 private:
  [[nodiscard]] bool free(const QRectF& box) const {
    const QRectF around = box.adjusted(-2, -2, 2, 2);
    const bool flag = std::any_of(flags_.begin(), flags_.end(), [&](const Flag& f) {
      return lie_over(f.box, around) || (f.stem_x > around.left() && f.stem_x < around.right());
    });
    return !flag && std::none_of(dots_.begin(), dots_.end(), [&](const FlagDot& d) { return lie_over(d.box, around); });
  }

  const Scene& scene_;
  const QRectF& lane_;
  const std::vector<Flag>& flags_;
  double side_;
  std::vector<FlagDot> dots_;
};

}  // namespace

bool flag_wanted(const Finding& finding) {
  if (!finding.station_m || finding.severity == Severity::note) return false;
  return !finding.muted || counts_in_verdict(finding);
}

double marks_row_height(const Style& style) {
  return style.text * 1.1;
}

FlagLane place_flag_lane(const Scene& scene) {
  FlagLane lane;
  const Frame& f = scene.frame;
  if (f.flags.isEmpty()) return lane;
  const std::vector<Finding>& findings = scene.assessment.findings;
  const auto in_view = [&](const Finding& finding) {
    const double x = f.px_x(*finding.station_m);
    return x >= f.flags.left() && x <= f.flags.right();
  };
  FlagPlacer placer(scene);
  std::vector<int> by_number;
  for (const Group& group : groups_of(findings)) {
    if (!in_view(findings[group.speaks])) continue;
    if (!placer.full() && placer.add(group)) continue;
    by_number.push_back(static_cast<int>(group.speaks));
    by_number.insert(by_number.end(), group.others.begin(), group.others.end());
  }
  for (std::size_t i = 0; i < findings.size(); ++i)
    if (findings[i].severity == Severity::note && findings[i].station_m && !findings[i].muted && in_view(findings[i]))
      by_number.push_back(static_cast<int>(i));
  std::sort(by_number.begin(), by_number.end());  // the gravest has its dot first
  DotPlacer dots(scene, placer.placed());
  // A note under a flag is left to the list; what counts is named by the flag next to it.
  for (const int finding : by_number)
    if (!dots.add(finding) && findings[static_cast<std::size_t>(finding)].severity != Severity::note)
      placer.join(finding);
  lane.dots = dots.take();
  placer.tell_joined();
  lane.flags = placer.take();
  return lane;
}

bool wants_second_row(const Scene& scene, const FlagLane& lane) {
  const auto& findings = scene.assessment.findings;
  const bool by_number = std::any_of(lane.dots.begin(), lane.dots.end(), [&](const FlagDot& dot) {
    return findings[static_cast<std::size_t>(dot.findings.front())].severity != Severity::note;
  });
  return by_number || std::any_of(lane.flags.begin(), lane.flags.end(), [&](const Flag& flag) {
           return std::any_of(flag.others.begin(), flag.others.end(), [&](int other) {
             return findings[static_cast<std::size_t>(other)].subject !=
                    findings[static_cast<std::size_t>(flag.finding)].subject;
           });
         });
}

}  // namespace burrow
