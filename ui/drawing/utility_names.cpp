#include "burrow/drawing/utility_names.h"

#include <QFontMetricsF>
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "burrow/drawing/scene.h"
#include "overlaps.h"

namespace burrow {

namespace {

constexpr double beyond_px = 200;     ///< marks so far outside the pane have no name
constexpr double longest_texts = 19;  ///< a longer name loses its middle
constexpr double crowded_texts = 7;   ///< room for each mark below which only letters stand

/// 0 first.
std::vector<int> ranks_of(const Scene& scene) {
  const std::vector<Utility>& utilities = scene.crossing.site.utilities;
  const std::vector<Finding>& findings = scene.assessment.findings;
  std::vector<int> ranks(utilities.size());
  const int none = static_cast<int>(findings.size()) + 1;
  for (std::size_t i = 0; i < utilities.size(); ++i) {
    const std::string& id = utilities[i].id;
    const auto is = [&](const ItemRef& part) { return part.kind == ItemKind::utility && part.id == id; };
    if (is(scene.focus.picked) || is(scene.focus.hovered)) continue;
    const auto worst = std::find_if(findings.begin(), findings.end(),
                                    [&](const Finding& f) { return f.subject == id && counts_in_verdict(f); });
    ranks[i] = worst == findings.end() ? none : 1 + static_cast<int>(worst - findings.begin());
  }
  return ranks;
}

QString whole_name(const Scene& scene, const Utility& utility, const QString& letter) {
  QString name = letter;
  if (!utility.name.empty()) name += QStringLiteral("  ") + text_from(utility.name);
  if (utility.outside_diameter)
    name += QStringLiteral(" · ") +
            text_from(format(*utility.outside_diameter, scene.style.units, Dimension::small_length));
  return name;
}

QString letter_of(const Scene& scene, UtilityKind kind) {
  for (const UtilityKindRow& row : scene.tables.utilities)
    if (row.kind == kind)
      return QString::fromUtf8(row.letter_code.data(), static_cast<qsizetype>(row.letter_code.size()));
  return QStringLiteral("?");
}

QRectF disc_of(const Scene& scene, const UtilityMark& mark, const Utility& utility) {
  const Frame& f = scene.frame;
  const double least = scene.style.text * 0.7;
  const double diameter = utility.outside_diameter.value_or(Length{0}).m * f.px_per_m;
  const double w = std::max(least, diameter), h = std::max(least, diameter * f.exaggeration);
  const QPointF c = f.side(mark.station_m, mark.elevation_m);
  return {c.x() - w / 2, c.y() - h / 2, w, h};
}

}  // namespace

std::vector<UtilityName> place_utility_names(const Scene& scene) {
  const Frame& f = scene.frame;
  const double text = scene.style.text;
  const std::vector<Utility>& utilities = scene.crossing.site.utilities;
  // By what stands there anyway, by marks, then by the names placed so far.
  std::vector<QRectF> taken{model_status_box(scene), cloud_key_box(scene)};
  if (scene.layers.neutral_line) taken.push_back(neutral_name_box(scene));
  for (const DimensionLine& line : scene.dimensions)
    if (line.pane == Pane::elevation) taken.push_back(line.label);
  std::erase_if(taken, [](const QRectF& box) { return box.isEmpty(); });
  struct Place {
    std::size_t utility;
    QRectF disc;
    int rank;
    double away;
  };
  std::vector<Place> places;
  const std::vector<int> ranks = ranks_of(scene);
  int in_view = 0;
  for (std::size_t i = 0; i < utilities.size(); ++i) {
    const UtilityMark mark = utility_mark(utilities[i]);
    if (utilities[i].path.empty() || !mark.depth_known) continue;
    const QRectF disc = disc_of(scene, mark, utilities[i]);
    taken.push_back(disc.adjusted(1, 1, -1, -1));
    const double x = disc.center().x();
    if (x < f.elevation.left() - beyond_px || x > f.elevation.right() + beyond_px) continue;
    if (f.elevation.contains(disc.center())) ++in_view;
    const UtilityAnswer* answer = answer_for(scene, utilities[i].id);
    places.push_back({i, disc, ranks[i], answer && answer->separation_m ? *answer->separation_m : 1e9});
  }
  std::stable_sort(places.begin(), places.end(),
                   [](const Place& a, const Place& b) { return a.rank != b.rank ? a.rank < b.rank : a.away < b.away; });
  const bool crowded = in_view > 0 && f.elevation.width() / in_view < text * crowded_texts;
  const int unnamed = static_cast<int>(scene.assessment.findings.size()) + 1;

  std::vector<UtilityName> names;
  const QFontMetricsF metrics(drawing_font(text * 0.92, QFont::Bold));
  for (const Place& place : places) {
    const Utility& utility = utilities[place.utility];
    const QString letter = letter_of(scene, utility.kind);
    for (const bool whole : {true, false}) {
      if (whole && crowded && place.rank >= unnamed) continue;
      const QString shown =
          whole ? metrics.elidedText(whole_name(scene, utility, letter), Qt::ElideMiddle, text * longest_texts)
                : letter;
      const double w = metrics.horizontalAdvance(shown) + 4;
      const double h = metrics.height();
      const QRectF& disc = place.disc;
      const std::array<QPointF, 4> spots{QPointF(disc.right() + 4, disc.center().y() + h * 0.32),
                                         QPointF(disc.left() - w - 2, disc.center().y() + h * 0.32),
                                         QPointF(disc.center().x() - w / 2, disc.top() - 4),
                                         QPointF(disc.center().x() - w / 2, disc.bottom() + h)};
      const auto free = std::find_if(spots.begin(), spots.end(), [&](const QPointF& at) {
        const QRectF box(at.x() - 2, at.y() - metrics.ascent(), w, h);
        return std::none_of(taken.begin(), taken.end(), [&](const QRectF& r) { return lie_over(r, box); });
      });
      if (free == spots.end()) continue;
      const QRectF box(free->x() - 2, free->y() - metrics.ascent(), w, h);
      taken.push_back(box);
      names.push_back({utility.id, shown, *free, box, whole});
      break;
    }
  }
  return names;
}

}  // namespace burrow
