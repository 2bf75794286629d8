#include "burrow/window/edit_commands.h"

#include <QClipboard>
#include <QGuiApplication>
#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/crossing/locks.h"
#include "burrow/crossing/reversed.h"
#include "burrow/document/points.h"
#include "burrow/document/several.h"
#include "burrow/document/surroundings.h"
#include "burrow/document/text.h"
#include "burrow/file/clip_file.h"
#include "burrow/widgets/name_entry.h"

namespace burrow {

namespace {

constexpr double beside_m = 0.5;

/// Where its name stands; null for what has none.
Lens<std::string> name_of(const Crossing& crossing, const ItemRef& part) {
  if (part.kind == ItemKind::utility)
    return [id = part.id](auto& c) {
      auto* one = find_by_id(c.site.utilities, id);
      return one ? &one->name : nullptr;
    };
  if (part.kind == ItemKind::surface)
    return [id = part.id](auto& c) {
      auto* one = find_by_id(c.site.surface, id);
      return one ? &one->name : nullptr;
    };
  if (part.kind == ItemKind::around)
    for (const Around& one : surroundings(crossing))
      if (one.id == part.id) return around_name(one);
  return [](auto& c) { return decltype(&c.name)(nullptr); };
}

/// A bend, a point of a line, a corner.
bool is_point(const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::utility:
    case ItemKind::ground:
    case ItemKind::stratum:
    case ItemKind::water:
    case ItemKind::around:
      return part.index >= 0;
    case ItemKind::surface:
      return part.index >= first_outline_corner;
    default:
      return false;
  }
}

/// The lowest station of what is copied; none: it has none of its own.
std::optional<double> first_station(const Site& clip) {
  std::optional<double> first;
  const auto offer = [&](double station) { first = std::min(first.value_or(station), station); };
  for (const Utility& u : clip.utilities)
    for (const PathVertex& p : u.path) offer(p.x_m);
  for (const SurfaceFeature& f : clip.surface) {
    if (f.from) offer(f.from->m);
    for (const PlanPoint& p : f.outline) offer(p.x_m);
  }
  for (const TestHole& h : clip.test_holes) offer(h.station.m);
  for (const Boundary& b : clip.boundaries)
    for (const PlanPoint& p : b.line) offer(p.x_m);
  for (const Strip& s : clip.strips)
    for (const PlanPoint& p : s.outline) offer(p.x_m);
  for (const Tree& t : clip.trees) offer(t.station.m);
  for (const Plant& p : clip.plant) offer(p.station.m);
  return first;
}

/// Whether one of them stands where it would come to lie.
bool lies_there(const Crossing& crossing, const Site& clip, double along_m) {
  Site with_stations = clip;
  with_stations.strata.clear();
  const Site moved = site_with_clip(Crossing(), with_stations, along_m).site;
  const auto any = [](const auto& list, const auto& fresh, const auto& same) {
    return std::any_of(fresh.begin(), fresh.end(), [&](const auto& one) {
      return std::any_of(list.begin(), list.end(), [&](const auto& other) { return same(one, other); });
    });
  };
  const Site& site = crossing.site;
  const auto at = [](const auto& a, const auto& b) { return a.station.m == b.station.m && a.offset.m == b.offset.m; };
  return any(site.utilities, moved.utilities, [](const auto& a, const auto& b) { return a.path == b.path; }) ||
         any(site.surface, moved.surface,
             [](const auto& a, const auto& b) {
               return a.kind == b.kind && a.from == b.from && a.to == b.to && a.outline == b.outline;
             }) ||
         any(site.boundaries, moved.boundaries, [](const auto& a, const auto& b) { return a.line == b.line; }) ||
         any(site.strips, moved.strips, [](const auto& a, const auto& b) { return a.outline == b.outline; }) ||
         any(site.trees, moved.trees, at) || any(site.plant, moved.plant, at) ||
         any(site.test_holes, moved.test_holes, at);
}

}  // namespace

EditCommands::EditCommands(Document& document, DrawingView& drawing, QObject* parent)
    : QObject(parent), document_(document), drawing_(drawing), name_(new NameEntry(&drawing)) {
  connect(name_, &NameEntry::closed, &drawing_, qOverload<>(&QWidget::setFocus));
  connect(&document_, &Document::replaced, name_, &QWidget::hide);
}

bool EditCommands::several_or_one() const {
  const std::vector<ItemRef> parts = drawing_.all_picked();
  return !parts.empty() && std::all_of(parts.begin(), parts.end(), may_be_several);
}

bool EditCommands::may_copy() const {
  return several_or_one();
}

bool EditCommands::may_remove() const {
  return several_or_one() || is_point(drawing_.picked()) || drawing_.picked().kind == ItemKind::water;
}

bool EditCommands::may_rename() const {
  const ItemRef& part = drawing_.picked();
  return !part.none() && name_of(document_.crossing(), part)(document_.crossing());
}

bool EditCommands::may_lock() const {
  const std::vector<ItemRef> parts = drawing_.all_picked();
  return std::any_of(parts.begin(), parts.end(),
                     [&](const ItemRef& part) { return !lock_places(document_.crossing(), part).empty(); });
}

bool EditCommands::locked() const {
  const Crossing& crossing = document_.crossing();
  for (const ItemRef& part : drawing_.all_picked())
    for (const std::string& place : lock_places(crossing, part))
      if (!lock_stands(crossing, place)) return false;
  return may_lock();
}

QString EditCommands::selected_name() const {
  const std::vector<ItemRef> parts = drawing_.all_picked();
  if (parts.size() == 1) return text_from(part_name(document_.crossing(), parts.front()));
  return text_from(several_name(document_.crossing(), parts));
}

void EditCommands::copy() {
  if (!may_copy()) return;
  const Site clip = clip_of(document_.crossing(), drawing_.all_picked());
  QGuiApplication::clipboard()->setText(text_from(write_clip(clip)));
}

void EditCommands::cut() {
  if (!may_copy()) return;
  copy();
  remove();
}

void EditCommands::paste(std::optional<double> station_m) {
  const Result<Site> clip = read_clip(QGuiApplication::clipboard()->text().toStdString(), document_.tables());
  if (!clip) {
    Q_EMIT refused(
        tr("Not pasted: the clipboard holds no things of a crossing (%1).").arg(text_from(clip.error().place)));
    return;
  }
  double along = 0;
  const std::optional<double> first = first_station(*clip);
  if (station_m && first) {
    along = *station_m - *first;
  } else {
    constexpr int most_steps = 200;
    for (int step = 0; step < most_steps && lies_there(document_.crossing(), *clip, along); ++step) along += beside_m;
  }
  Copies copies = site_with_clip(document_.crossing(), *clip, along);
  if (copies.parts.empty()) return;
  Crossing pasted = document_.crossing();
  pasted.site = copies.site;
  const QString name = text_from(several_name(pasted, copies.parts));
  if (!document_.change(tr("Paste %1").arg(name), [&](Crossing& c) { c.site = copies.site; })) {
    Q_EMIT refused(document_.read_only_because());
    return;
  }
  drawing_.pick_several(copies.parts);
  Q_EMIT refused(
      tr("Pasted without what was established elsewhere: how it was located, measured, agreed or permitted "
         "has to be entered for this place."));
}

void EditCommands::duplicate() {
  const std::vector<ItemRef> parts = drawing_.all_picked();
  if (!may_copy()) return;
  Copies copies = site_with_copies(document_.crossing(), parts);
  if (!document_.change(tr("Duplicate %1").arg(selected_name()), [&](Crossing& c) { c.site = copies.site; })) return;
  drawing_.pick_several(copies.parts);
  Q_EMIT refused(
      tr("Duplicated without what was established at the old place: how it was located, measured, seen, agreed or "
         "permitted has to be entered."));
}

std::vector<ItemRef> EditCommands::locked_ones(const std::vector<ItemRef>& parts) const {
  std::vector<ItemRef> held;
  for (const ItemRef& part : parts)
    for (const std::string& place : lock_places(document_.crossing(), part))
      if (lock_stands(document_.crossing(), place)) {
        held.push_back(part);
        break;
      }
  return held;
}

void EditCommands::remove_point(const ItemRef& point) {
  const Result<Crossing> without = without_point(document_.crossing(), point);
  if (!without) {
    Q_EMIT refused(tr("%1 stays: without it nothing would be left of the line.").arg(selected_name()));
    return;
  }
  const QString name = selected_name();
  drawing_.pick({});
  document_.change(tr("Remove a point of %1").arg(name), [&](Crossing& c) { c = *without; });
}

void EditCommands::remove() {
  if (!may_remove()) return;
  const std::vector<ItemRef> parts = drawing_.all_picked();
  if (const std::vector<ItemRef> held = locked_ones(parts); !held.empty()) {
    Q_EMIT refused(tr("Nothing was deleted: %1 is locked. Ctrl+L unlocks it.")
                       .arg(text_from(part_name(document_.crossing(), held.front()))));
    return;
  }
  if (parts.size() == 1 && is_point(parts.front())) {
    remove_point(parts.front());
    return;
  }
  const QString step = tr("Remove %1").arg(selected_name());
  const bool water = parts.front().kind == ItemKind::water;
  const Site without = site_without(document_.crossing(), parts);
  drawing_.pick({});
  document_.change(step, [&](Crossing& c) {
    if (water)
      c.site.water.reset();  // not known, which is not the same as none
    else
      c.site = without;
  });
}

void EditCommands::select_all() {
  drawing_.pick_several(all_items(document_.crossing()));
}

void EditCommands::select_same_kind() {
  const std::vector<ItemRef> models = drawing_.all_picked();
  std::vector<ItemRef> same = all_items(document_.crossing());
  std::erase_if(same, [&](const ItemRef& one) {
    return std::none_of(models.begin(), models.end(),
                        [&](const ItemRef& model) { return same_kind(document_.crossing(), model, one); });
  });
  if (!same.empty()) drawing_.pick_several(same);
}

void EditCommands::select_kind(ItemKind kind) {
  std::vector<ItemRef> all = all_items(document_.crossing());
  std::erase_if(all, [&](const ItemRef& one) { return one.kind != kind; });
  drawing_.pick_several(all);
}

void EditCommands::set_locked(bool locked) {
  const std::vector<ItemRef> parts = drawing_.all_picked();
  const QString step = (locked ? tr("Lock %1") : tr("Unlock %1")).arg(selected_name());
  document_.change(step, [&](Crossing& c) {
    for (const ItemRef& part : parts)
      for (const std::string& place : lock_places(document_.crossing(), part)) set_lock(c, place, locked);
  });
}

void EditCommands::lock_kinds(const std::vector<ItemKind>& kinds, bool locked) {
  const Site& site = document_.crossing().site;
  std::vector<ItemRef> parts;
  for (const ItemKind kind : kinds) {
    if (kind == ItemKind::ground) parts.push_back({kind, {}, -1});
    if (kind == ItemKind::water && site.water) parts.push_back({kind, {}, -1});
    for (const ItemRef& one : all_items(document_.crossing()))
      if (one.kind == kind) parts.push_back(one);
  }
  document_.change(locked ? tr("Lock all of a kind") : tr("Unlock all of a kind"), [&](Crossing& c) {
    for (const ItemRef& part : parts)
      for (const std::string& place : lock_places(document_.crossing(), part)) set_lock(c, place, locked);
  });
}

void EditCommands::rename(std::optional<QPoint> at) {
  if (!may_rename()) return;
  if (document_.crossing().version > known_file_version) {
    Q_EMIT refused(document_.read_only_because());
    return;
  }
  const ItemRef part{drawing_.picked().kind, drawing_.picked().id, -1};
  const QString what = text_from(part_name(document_.crossing(), part));
  const QPoint place = at ? *at : drawing_.place_of(part).toPoint();
  const std::string* now = name_of(document_.crossing(), part)(document_.crossing());
  name_->open(text_from(*now), what, drawing_.viewport()->mapTo(&drawing_, place),
              [this, part, what](const QString& name) {
                document_.change(tr("Rename %1").arg(what), [&](Crossing& c) {
                  if (std::string* own = name_of(c, part)(c)) *own = name.toStdString();
                });
              });
}

void EditCommands::reverse() {
  if (const Phrase why = why_not_reversed(document_.crossing()); !why.empty()) {
    Q_EMIT refused(tr("Not reversed: %1.").arg(text_from(why)));
    return;
  }
  drawing_.pick({});
  if (document_.change(tr("Reverse the bore"), [](Crossing& c) { c = reversed(c); })) drawing_.zoom_to_fit();
}

}  // namespace burrow
