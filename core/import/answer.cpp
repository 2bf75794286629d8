#include "answer.h"

#include <algorithm>
#include <cmath>

#include "burrow/language/say.h"
#include "found_builder.h"
#include "wire_parts.h"

namespace burrow {

namespace {

/// Gathers small parts into pieces that are worth sending.
class Sender {
 public:
  explicit Sender(const std::function<bool(std::string_view)>& send) : send_(send) { text_.reserve(piece); }
  void bytes(const void* from, std::size_t count) {
    const char* at = static_cast<const char*>(from);
    while (count > 0) {
      const std::size_t some = std::min(count, piece - text_.size());
      text_.append(at, some);
      at += some;
      count -= some;
      if (text_.size() == piece) flush();
    }
  }
  void flush() {
    good = good && (text_.empty() || send_(text_));
    text_.clear();
  }
  bool good = true;

 private:
  static constexpr std::size_t piece = 1u << 16u;
  const std::function<bool(std::string_view)>& send_;
  std::string text_;
};

template <class T>
std::optional<T> unpacked(std::string_view bytes) {
  wire::Unpacker from(bytes);
  T value;
  wire::part(from, value.version);
  if (!from.good || value.version != answer_version) return std::nullopt;
  from = wire::Unpacker(bytes);
  wire::part(from, value);
  if (!from.good || !from.rest.empty()) return std::nullopt;
  return value;
}

bool is_coordinate(double value) {
  return std::abs(value) <= largest_coordinate;  // false for NaN
}

void clean(std::string& text) {
  make_utf8(text);
}

/// The path may hold any bytes; it is the person's own.
void clean(ErrorInWords& error, const std::string& path) {
  const std::size_t own = error.place.starts_with(path) ? path.size() : 0;
  error.place = error.place.substr(0, own) + as_utf8(std::string_view(error.place).substr(own));
  clean(error.found);
  clean(error.expected);
}

/// Looks at all of what was found, and makes its texts fit to be shown.
class Check {
 public:
  Check(Found& found, const ReaderRequest& request) : found_(found), request_(request) {}

  [[nodiscard]] bool good() {
    clean_texts();
    return found_.file == request_.path && order_good() && counts_good() && table_good() &&
           std::all_of(found_.vertices.begin(), found_.vertices.end(), vertex_good) &&
           all(found_.features, &Check::feature_good) && all(found_.surfaces, &Check::surface_good) &&
           all(found_.rasters, &Check::raster_good);
  }

 private:
  template <class T>
  bool all(const std::vector<T>& list, bool (Check::*is_good)(const T&) const) const {
    return std::all_of(list.begin(), list.end(), [&](const T& one) { return (this->*is_good)(one); });
  }

  void clean_texts() {
    for (std::string* text : {&found_.format, &found_.frame.crs, &found_.frame.vertical}) clean(*text);
    for (std::string& name : found_.layers) clean(name);
    for (FoundFeature& f : found_.features) clean(f.text);
    for (LeftOut& l : found_.left_out)
      for (std::string* text : {&l.place, &l.text, &l.reason}) clean(*text);
    for (std::string& note : found_.notes) clean(note);
    for (FoundField& field : found_.table.fields) clean(field.name);
    for (std::string& text : found_.table.texts) clean(text);
  }

  [[nodiscard]] bool order_good() const { return found_.order.find_first_not_of("pnezd-") == std::string::npos; }

  [[nodiscard]] bool counts_good() const {
    std::uint64_t count = found_.vertices.size();
    for (const FoundSurface& s : found_.surfaces) count += s.points.size();
    return count <= request_.most_vertices && found_.layers.size() <= request_.most_layers + 1;
  }

  [[nodiscard]] bool table_good() const {
    const FoundTable& t = found_.table;
    // A file that was given features by a reader without attributes has no cells.
    return t.fields.size() <= 4096 &&
           t.cells.size() == (t.fields.empty() ? 0 : t.fields.size() * found_.features.size()) &&
           std::all_of(t.cells.begin(), t.cells.end(), [&](std::uint32_t cell) { return cell <= t.texts.size(); });
  }

  static bool vertex_good(const FoundVertex& v) {
    return is_coordinate(v.x_m) && is_coordinate(v.y_m) && (!v.z_m || is_coordinate(*v.z_m));
  }

  [[nodiscard]] bool feature_good(const FoundFeature& f) const {
    const std::size_t least = f.shape == Shape::point ? 1 : f.shape == Shape::line ? 2 : 3;
    return f.layer < found_.layers.size() && f.count >= least && f.first <= found_.vertices.size() &&
           f.count <= found_.vertices.size() - f.first && (!f.diameter_m || std::isfinite(*f.diameter_m));
  }

  [[nodiscard]] bool surface_good(const FoundSurface& s) const {
    const auto point_good = [](const Point3& p) {
      return is_coordinate(p.x_m) && is_coordinate(p.y_m) && is_coordinate(p.z_m);
    };
    const auto face_good = [&](const std::array<std::uint32_t, 3>& face) {
      return std::all_of(face.begin(), face.end(), [&](std::uint32_t corner) { return corner < s.points.size(); });
    };
    return s.layer < found_.layers.size() && std::all_of(s.points.begin(), s.points.end(), point_good) &&
           std::all_of(s.faces.begin(), s.faces.end(), face_good);
  }

  [[nodiscard]] bool raster_good(const FoundRaster& r) const {
    const bool in_zip = r.path.starts_with("/vsizip/{" + request_.path + "}/");
    const auto height_good = [](const std::optional<double>& z) { return !z || is_coordinate(*z); };
    const auto& t = r.to_plan;
    return r.layer < found_.layers.size() && (r.path == request_.path || in_zip) && r.columns >= 1 && r.rows >= 1 &&
           std::all_of(t.begin(), t.end(), is_coordinate) && std::abs(t[1] * t[5] - t[2] * t[4]) > 0 &&
           height_good(r.least_z) && height_good(r.most_z);
  }

  Found& found_;
  const ReaderRequest& request_;
};

bool heights_good(const std::vector<std::optional<double>>& heights, const ReaderRequest& request) {
  return heights.size() == request.points.size() &&
         std::all_of(heights.begin(), heights.end(), [](const auto& z) { return !z || is_coordinate(*z); });
}

}  // namespace

ErrorInWords ErrorInWords::of(const Error& error) {
  return {translated_phrase(error.place), translated_phrase(error.found), translated_phrase(error.expected)};
}

std::string packed(const ReaderRequest& request) {
  wire::Packer packer;
  wire::part(packer, request);
  return std::move(packer.text);
}

std::optional<ReaderRequest> unpacked_request(std::string_view bytes) {
  return unpacked<ReaderRequest>(bytes);
}

std::uint64_t size_of(const ReaderAnswer& answer) {
  wire::Counter counter;
  wire::part(counter, answer);
  return counter.size;
}

std::string packed(const ReaderAnswer& answer) {
  wire::Packer packer;
  wire::part(packer, answer);
  return std::move(packer.text);
}

bool send_packed(const ReaderAnswer& answer, const std::function<bool(std::string_view)>& send) {
  Sender sender(send);
  wire::part(sender, answer);
  sender.flush();
  return sender.good;
}

std::optional<ReaderAnswer> checked_answer(std::string_view bytes, const ReaderRequest& request) {
  std::optional<ReaderAnswer> answer = unpacked<ReaderAnswer>(bytes);
  if (!answer) return std::nullopt;
  const int kinds = (answer->error ? 1 : 0) + (answer->found ? 1 : 0) + (answer->heights ? 1 : 0);
  if (kinds != 1) return std::nullopt;
  if (answer->error) clean(*answer->error, request.path);
  const bool heights_wanted = request.raster.has_value();
  if (answer->found && (heights_wanted || !Check(*answer->found, request).good())) return std::nullopt;
  if (answer->heights && (!heights_wanted || !heights_good(*answer->heights, request))) return std::nullopt;
  return answer;
}

}  // namespace burrow
