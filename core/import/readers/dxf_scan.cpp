#include "dxf_scan.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <set>

#include "../dxf_curves.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

/// Kinds that GDAL 3.6 turns into points, lines and areas.
const std::set<std::string, std::less<>> drawn{
    "LINE",   "LWPOLYLINE", "POLYLINE", "POINT",  "CIRCLE", "ARC",       "ELLIPSE", "SPLINE",      "TEXT",
    "MTEXT",  "INSERT",     "SOLID",    "3DFACE", "HATCH",  "DIMENSION", "LEADER",  "MULTILEADER", "MLINE",
    "ATTRIB", "ATTDEF",     "VERTEX",   "SEQEND", "TRACE",  "HELIX",     "MLEADER"};

std::string_view trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(" \t\r");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r") - from + 1);
}

constexpr std::string_view mesh_by_rows = "POLYLINE (mesh by rows and columns)";

struct Block {
  std::size_t elements = 0;
  bool is_elsewhere = false;  ///< its lines stand in another drawing
  std::map<std::string, std::size_t> kinds;
  std::map<std::string, std::size_t> inserts;
};

/// Counts what a block unfolds into; a block met again while it is being counted goes round in a circle.
class Unfolded {
 public:
  explicit Unfolded(const std::map<std::string, Block>& blocks) : blocks_(blocks) {}

  double of(const std::string& name) {
    const auto it = blocks_.find(name);
    if (it == blocks_.end()) return 0;
    if (const auto known = counted_.find(name); known != counted_.end()) {
      if (known->second < 0) circle = name;
      return std::max(0.0, known->second);
    }
    constexpr std::size_t deepest = 200;
    if (++depth_ > deepest) circle = name;
    double sum = static_cast<double>(it->second.elements);
    counted_[name] = -1;
    if (circle.empty())
      for (const auto& [inner, times] : it->second.inserts) sum += static_cast<double>(times) * of(inner);
    --depth_;
    return counted_[name] = sum;
  }

  std::string circle;

 private:
  const std::map<std::string, Block>& blocks_;
  std::map<std::string, double> counted_;
  std::size_t depth_ = 0;
};

class Scanner {
 public:
  Scanner(std::istream& in, const ReadOptions& options) : in_(in), options_(options) {}

  Result<DrawingScan> run() {
    std::size_t pairs = 0;
    while (next()) {
      if (bad_)
        return fail(say("line {}", line_), as_utf8(code_.substr(0, 40)), translated("a group code of a DXF drawing"));
      if (++pairs % 65536 == 0 && options_.progress && !options_.progress(0))
        return fail(translated("file"), std::string(stopped_by_person), translated("to be read to its end"),
                    stopped_by_person);
      take();
    }
    if (pairs == 0) return fail(translated("file"), translated("nothing"), translated("a DXF drawing"));
    if (!ended_)
      return fail(translated("file"), say("a drawing that breaks off after line {}", line_),
                  translated("a whole DXF drawing"));
    scan_.largest_radius = radius_.radius();
    count_blocks_in_use();
    Unfolded unfolded(blocks_);
    double all = 0;
    for (const auto& [name, times] : plan_.inserts) all += static_cast<double>(times) * unfolded.of(name);
    if (!unfolded.circle.empty()) {
      scan_.inline_blocks = false;
      scan_.block_note = say("block {} holds itself: blocks were read as points alone", as_utf8(unfolded.circle));
    } else if (all > static_cast<double>(options_.most_vertices)) {
      scan_.inline_blocks = false;
      scan_.block_note = say_count("the blocks unfold into {} element: they were read as points alone",
                                   "the blocks unfold into {} elements: they were read as points alone",
                                   static_cast<long long>(std::min(all, 1e18)));
    }
    return std::move(scan_);
  }

 private:
  bool next() {
    if (ended_ || !std::getline(in_, code_)) return false;
    ++line_;
    const std::string_view digits = trimmed(code_);
    const auto [stop, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number_);
    bad_ = error != std::errc() || stop != digits.data() + digits.size();
    if (bad_) return true;
    if (!std::getline(in_, value_)) return false;
    ++line_;
    return true;
  }

  void take() {
    const std::string value(trimmed(value_));
    if (number_ == 0) return begin(value);
    // Within a section a value of group 2 is another matter: a style, a block.
    if (number_ == 2 && element_ == "SECTION" && section_.empty()) {
      section_ = value;
      return;
    }
    // Some programs end the header too early: what stands before the next section belongs to it as well.
    if (section_ == "HEADER" || (section_.empty() && element_ == "ENDSEC")) return take_variable(value);
    if (number_ == 2 && element_ == "BLOCK") block_ = &blocks_[value];
    constexpr int external = 4, overlay = 8;
    if (number_ == 70 && element_ == "BLOCK" && block_)
      block_->is_elsewhere = (std::atoi(value.c_str()) & (external | overlay)) != 0;
    if (number_ == 2 && element_ == "INSERT") ++(block_ ? *block_ : plan_).inserts[value];
    if (section_ == "OBJECTS" && element_ == "GEODATA") scan_.place.take(number_, value);
    if (section_ == "ENTITIES" || section_ == "BLOCKS") take_measure(value);
  }

  void take_variable(const std::string& value) {
    if (number_ == 9) variable_ = value;
    scan_.units.take(variable_, number_, value);
  }

  void take_measure(const std::string& value) {
    if (number_ == 8) layer_ = value;
    if (number_ < 10 || number_ > 73) return;
    double measure = 0;
    const auto [stop, error] = std::from_chars(value.data(), value.data() + value.size(), measure);
    if (error != std::errc() || stop != value.data() + value.size()) return;
    if (number_ <= 42) radius_.take(number_, measure);
    // A mesh by rows and columns, of which the library makes nothing and says nothing.
    constexpr int mesh = 16;
    const bool is_mesh = number_ == 70 && element_ == "POLYLINE" && (static_cast<int>(measure) & mesh) != 0;
    if (is_mesh) ++(block_ ? *block_ : plan_).kinds[std::string(mesh_by_rows)];
    if (element_ != "SPLINE") return;
    spline_.take(number_, measure);
    if (number_ == 73) has_control_points_ = measure > 0;
    if (number_ == 11) fit_.push_back({measure, 0});
    if (number_ == 21 && !fit_.empty()) fit_.back().y_m = measure;
  }

  void end_spline() {
    if (element_ == "SPLINE" && !has_control_points_ && fit_.size() > 1) {
      if (section_ == "ENTITIES")
        scan_.fit_splines.push_back({layer_, fit_});
      else
        ++scan_.fit_splines_in_blocks;
    }
    if (has_control_points_) scan_.spline_off = std::max(scan_.spline_off, spline_.farthest_off());
    spline_.begin();
    fit_.clear();
    has_control_points_ = false;
  }

  void begin(const std::string& kind) {
    radius_.begin(kind);
    end_spline();
    element_ = kind;
    if (kind == "EOF") ended_ = true;
    if (kind == "SECTION" || kind == "ENDSEC") section_.clear();
    if (kind == "ENDBLK") block_ = nullptr;
    const bool plan = section_ == "ENTITIES";
    const bool in_block = section_ == "BLOCKS" && block_ && kind != "ENDBLK" && kind != "BLOCK";
    if (!plan && !in_block) return;
    ++(in_block ? block_->kinds : scan_.kinds)[kind];
    if (in_block) ++block_->elements;
    if (plan && kind == "INSERT") ++scan_.inserts;
  }

  /// What stands in a block that nobody put into the plan is not there.
  void count_blocks_in_use() {
    for (const auto& [kind, count] : plan_.kinds) scan_.kinds[kind] += count;
    std::set<std::string> met;
    std::vector<std::string> open;
    for (const auto& [name, times] : plan_.inserts) open.push_back(name);
    while (!open.empty()) {
      const std::string name = std::move(open.back());
      open.pop_back();
      const auto it = blocks_.find(name);
      if (it == blocks_.end() || !met.insert(name).second) continue;
      if (it->second.is_elsewhere) scan_.elsewhere.push_back(name);
      for (const auto& [kind, count] : it->second.kinds) scan_.kinds[kind] += count;
      for (const auto& [inner, times] : it->second.inserts) open.push_back(inner);
    }
  }

  std::istream& in_;
  const ReadOptions& options_;
  DrawingScan scan_;
  std::map<std::string, Block> blocks_;
  Block plan_;
  Block* block_ = nullptr;
  LargestRadius radius_;
  std::string layer_;
  std::vector<PlanPoint> fit_;  ///< of the spline that is being read
  SplineMeasure spline_;
  bool has_control_points_ = false;
  std::string code_, value_, section_, element_, variable_;
  int number_ = 0;
  std::size_t line_ = 0;
  bool bad_ = false;
  bool ended_ = false;
};

}  // namespace

Result<DrawingScan> scan_drawing(const std::string& path, const ReadOptions& options) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return fail(path, translated("a file that cannot be opened"), translated("a DXF drawing"));
  return scan_drawing(in, options);
}

Result<DrawingScan> scan_drawing(std::istream& in, const ReadOptions& options) {
  return Scanner(in, options).run();
}

void apply(const DrawingScan& scan, FoundBuilder& builder) {
  Found& found = builder.found;
  found.frame.unit = scan.units.unit();
  found.frame.height_unit = found.frame.unit;
  found.frame.unit_is_doubtful = true;
  found.frame.unit_is_foreign = scan.units.is_foreign();
  for (std::string& note : scan.units.notes()) found.notes.push_back(std::move(note));
  if (!scan.block_note.empty()) found.notes.push_back(scan.block_note);
  for (const auto& [kind, count] : scan.kinds)
    if (!drawn.contains(kind))
      builder.leave_out(translated("whole drawing"), fmt::format("{} × {}", count, as_utf8(kind)),
                        translated("a kind of element that is not read"));
  for (const std::string& name : scan.elsewhere)
    builder.leave_out(translated("whole drawing"), as_utf8(name),
                      translated("another drawing that this one refers to: import it beside this one"));
  if (const auto it = scan.kinds.find("SPLINE"); it != scan.kinds.end())
    found.notes.push_back(
        say_count("{} spline was read without its heights", "{} splines were read without their heights", it->second));
  constexpr double close_m = 0.010;
  if (const double off_m = scan.spline_off * metres_in(found.frame.unit.value_or(FileUnit::metre)); off_m > close_m)
    found.notes.push_back(
        say("splines are drawn in straight pieces that lie up to {:.0f} mm beside them", std::ceil(off_m * 1000)));
  for (const DrawingScan::FitSpline& spline : scan.fit_splines) {
    FoundFeature feature;
    feature.shape = Shape::line;
    feature.layer = builder.layer(spline.layer);
    std::vector<FoundVertex> line;
    for (const PlanPoint& p : smooth_through(spline.points)) line.push_back({p.x_m, p.y_m, std::nullopt});
    builder.add(std::move(feature), line, translated("whole drawing"));
  }
  if (scan.fit_splines_in_blocks > 0)
    builder.leave_out(translated("whole drawing"), say_count("{} spline", "{} splines", scan.fit_splines_in_blocks),
                      translated("in a block, and given by its fit points alone"));
  if (scan.inserts > 0 && scan.inline_blocks)
    found.notes.push_back(
        say_count("{} block was unfolded into its lines", "{} blocks were unfolded into their lines", scan.inserts));
}

}  // namespace burrow
