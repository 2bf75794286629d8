#include "utility_from.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "burrow/language/say.h"
#include "pipe_walls.h"

namespace burrow {

namespace {

class Maker {
 public:
  Maker(const ImportFile& file, const FoundFeature& feature, const std::vector<bool>& zero_counts,
        const LevelLine& ground, const std::string& where)
      : file_(file),
        found_(*file.found),
        choice_(file.layers.at(feature.layer)),
        feature_(feature),
        number_(number_of(*file.found, feature)),
        zero_counts_(zero_counts),
        ground_(ground),
        where_(where) {}

  MadeUtility make(UtilityKind kind, std::vector<PathVertex> path, bool whole_line) {
    Utility& u = made_.utility;
    u.kind = kind;
    u.name = attribute(FieldUse::name);
    if (u.name.empty()) u.name = feature_.text.empty() ? found_.layers[feature_.layer] : feature_.text;
    u.owner = attribute(FieldUse::owner);
    u.material = attribute(FieldUse::material);
    if (const std::string status = attribute(FieldUse::status); !status.empty()) {
      const auto known = status_in(status);
      if (known == UtilityStatus::proposed)
        leave_out(say("status {}", status),
                  translated("nobody confirmed that it is not built yet: it counts as one that may be live"));
      else if (known)
        u.status.set(*known);
      else
        leave_out(say("status {}", status), translated("it does not tell whether the line is live"));
    }
    u.located.how.set(LocatedHow::records);
    u.recorded.source = where_;
    take_date();
    take_diameter();
    take_heights(path, whole_line);
    u.path = std::move(path);
    return std::move(made_);
  }

 private:
  /// None of one that is not of the file, but stands for faces of a surface.
  static std::optional<std::size_t> number_of(const Found& found, const FoundFeature& feature) {
    const FoundFeature* const first = found.features.data();
    const std::less<> before;
    if (before(&feature, first) || !before(&feature, first + found.features.size())) return std::nullopt;
    return static_cast<std::size_t>(&feature - first);
  }

  void leave_out(std::string text, std::string reason) {
    made_.left_out.push_back({where_, fmt::format("{}: {}", made_.utility.name, text), std::move(reason)});
  }

  [[nodiscard]] const FieldChoice* field(FieldUse use, std::string& text) const {
    for (std::size_t i = 0; i < file_.fields.size() && number_; ++i) {
      if (file_.fields[i].use != use) continue;
      text = std::string(found_.table.text(*number_, i));
      return text.empty() ? nullptr : &file_.fields[i];
    }
    return nullptr;
  }

  [[nodiscard]] std::string attribute(FieldUse use) const {
    std::string text;
    const FieldChoice* choice = field(use, text);
    return choice && choice->is_decided ? text : std::string();
  }

  void take_date() {
    const std::string text = attribute(FieldUse::date);
    // A year, or the day as the file of a crossing has it.
    const bool day = text.size() >= 10 && text[4] == '-' && text[7] == '-';
    if (day) made_.utility.recorded.date = text.substr(0, 10);
  }

  /// A length of an attribute in metres; what is not decided is left out and said.
  std::optional<double> length_m(FieldUse use, const FieldChoice*& choice) {
    std::string text;
    choice = field(use, text);
    if (!choice) return std::nullopt;
    const auto number = number_in_cell(text);
    const std::string shown = fmt::format("{} {}", translated_word(use), text);
    if (!number) {
      leave_out(shown, translated("not a number with a unit"));
      return std::nullopt;
    }
    // A 0 is how records say that nobody knows; a height may be one, near the datum.
    if (number->value == 0 && (use == FieldUse::diameter || use == FieldUse::depth)) return std::nullopt;
    const auto column = static_cast<std::size_t>(choice - file_.fields.data());
    if (number->value == 0 && !(column < zero_counts_.size() && zero_counts_[column])) {
      leave_out(shown, translated("a 0 says that nobody knows it, as no other value of the column lies near 0"));
      return std::nullopt;
    }
    const auto unit = number->unit ? number->unit : choice->is_decided ? choice->unit : std::nullopt;
    if (!unit) {
      leave_out(shown, choice->unit ? say("nobody said that it is in {}", translated_word(*choice->unit))
                                    : std::string(translated("its unit is not known")));
      return std::nullopt;
    }
    return number->value * metres_in(*unit);
  }

  static std::string diameter_text(double diameter_m, DiameterMeant meant) {
    return say("diameter {:.0f} mm ({})", diameter_m * 1000, translated_word(meant));
  }

  void set_diameter(double diameter_m, DiameterMeant meant) {
    Utility& u = made_.utility;
    u.recorded.diameter = meant;
    if (meant != DiameterMeant::outside) inside_m_ = diameter_m;
    const auto outside = outside_of(Length{diameter_m}, meant, u.material);
    if (outside && outside->m <= 5) {
      u.outside_diameter = *outside;
      if (meant != DiameterMeant::outside)
        u.recorded.source += fmt::format("; {}, {}", diameter_text(diameter_m, meant), u.material);
      return;
    }
    leave_out(diameter_text(diameter_m, meant),
              u.material.empty() ? translated("without the material its wall, and so its outside, is not known")
                                 : translated("its wall, and so its outside, is not in the table of walls"));
  }

  void take_diameter() {
    if (choice_.diameter) return set_diameter(choice_.diameter->m, DiameterMeant::outside);
    if (feature_.diameter_m && *feature_.diameter_m > 0)
      return set_diameter(*feature_.diameter_m, DiameterMeant::inside);
    const FieldChoice* choice = nullptr;
    if (const auto m = length_m(FieldUse::diameter, choice); m && *m > 0)
      set_diameter(*m, choice->diameter.value_or(DiameterMeant::nominal));
  }

  void take_heights(std::vector<PathVertex>& path, bool whole_line) {
    // The file states a level only together with heights above datum, or what they are counted from.
    std::optional<LevelMeant> level = feature_.level ? feature_.level : choice_.level;
    std::optional<DepthFrom> from = feature_.level  ? std::optional(feature_.from.value_or(DepthFrom::datum))
                                    : feature_.from ? feature_.from
                                                    : choice_.heights_from;
    bool up = feature_.from.has_value();  // negative below the ground
    const FieldChoice* choice = nullptr;
    if (const auto depth = length_m(FieldUse::depth, choice)) {
      for (PathVertex& v : path) v.z_m = *depth;
      from = DepthFrom::ground;
      level = choice->level ? choice->level : choice_.level;
      up = false;
    } else if (const auto z = length_m(FieldUse::elevation, choice)) {
      for (PathVertex& v : path) v.z_m = *z;
      from = DepthFrom::datum;
      level = choice->level ? choice->level : choice_.level;
    } else if (take_inverts(path, whole_line)) {
      from = DepthFrom::datum;
      level = LevelMeant::invert;
    }
    made_.utility.recorded.level = level;
    made_.utility.recorded.from = from;
    const std::string reason = centre_heights(path, level, from, up);
    if (!reason.empty()) leave_out(translated("heights"), reason);
  }

  /// Elevations at both ends, the fall even between them.
  bool take_inverts(std::vector<PathVertex>& path, bool whole_line) {
    const FieldChoice* choice = nullptr;
    const auto start = length_m(FieldUse::invert_start, choice), end = length_m(FieldUse::invert_end, choice);
    if (!start || !end || path.size() < 2) return false;
    if (!whole_line) {
      leave_out(translated("inverts"), translated("the line is cut before its ends: its levels here are not known"));
      return false;
    }
    std::vector<double> along{0};
    for (std::size_t i = 1; i < path.size(); ++i)
      along.push_back(along.back() + std::hypot(path[i].x_m - path[i - 1].x_m, path[i].y_m - path[i - 1].y_m));
    for (std::size_t i = 0; i < path.size(); ++i)
      path[i].z_m = *start + (*end - *start) * (along.back() > 0 ? along[i] / along.back() : 0);
    return true;
  }

  /// Turns the heights into elevations of the centre line, or takes them away and says why.
  std::string centre_heights(std::vector<PathVertex>& path, std::optional<LevelMeant> level,
                             std::optional<DepthFrom> from, bool up) const {
    const bool any = std::any_of(path.begin(), path.end(), [](const PathVertex& v) { return v.z_m.has_value(); });
    if (!any) return {};
    const auto& outside = made_.utility.outside_diameter;
    // The invert is the lowest of the inside, the crown the highest of the outside.
    const std::optional<double> below = inside_m_ ? inside_m_ : outside ? std::optional(outside->m) : std::nullopt;
    std::string reason;
    if (!from) reason = translated("not said whether they are elevations or depths below the ground");
    if (from && !level) reason = translated("not said whether they are of the crown, the centre or the invert");
    if (from && level && ((*level == LevelMeant::crown && !outside) || (*level == LevelMeant::invert && !below)))
      reason = translated("the centre cannot be told without the diameter");
    if (from == DepthFrom::ground && ground_.empty()) reason = translated("depths below a ground that is not known");
    for (PathVertex& v : path) {
      if (!v.z_m) continue;
      double z = *v.z_m;
      if (reason.empty() && from == DepthFrom::ground) z = elevation_at(ground_, v.x_m) + (up ? z : -std::abs(z));
      if (reason.empty() && level == LevelMeant::crown) z -= outside->m / 2;
      if (reason.empty() && level == LevelMeant::invert) z += *below / 2;
      v.z_m = z;
      if (!reason.empty() || !(std::abs(z) <= 1e4)) v.z_m.reset();
    }
    return reason;
  }

  const ImportFile& file_;
  const Found& found_;
  const LayerChoice& choice_;
  const FoundFeature& feature_;
  std::optional<std::size_t> number_;
  const std::vector<bool>& zero_counts_;
  const LevelLine& ground_;
  const std::string& where_;
  std::optional<double> inside_m_;
  MadeUtility made_;
};

}  // namespace

std::vector<bool> zero_heights_count(const ImportFile& file) {
  constexpr double near_datum_m = 1;
  const FoundTable& table = file.found->table;
  std::vector<bool> counts(file.fields.size(), false);
  for (std::size_t i = 0; i < counts.size() && i < table.fields.size(); ++i) {
    const FieldChoice& choice = file.fields[i];
    const bool height =
        choice.use == FieldUse::elevation || choice.use == FieldUse::invert_start || choice.use == FieldUse::invert_end;
    if (!height) continue;
    const std::size_t rows = table.cells.size() / table.fields.size();
    for (std::size_t row = 0; row < rows && !counts[i]; ++row) {
      const auto number = number_in_cell(table.text(row, i));
      if (!number || number->value == 0) continue;
      const FileUnit unit = number->unit.value_or(choice.unit.value_or(FileUnit::metre));
      counts[i] = std::abs(number->value) * metres_in(unit) <= near_datum_m;
    }
  }
  return counts;
}

MadeUtility utility_from(const ImportFile& file, const FoundFeature& feature, UtilityKind kind,
                         std::vector<PathVertex> path, bool whole_line, const std::vector<bool>& zero_counts,
                         const LevelLine& ground, const std::string& where) {
  return Maker(file, feature, zero_counts, ground, where).make(kind, std::move(path), whole_line);
}

}  // namespace burrow
