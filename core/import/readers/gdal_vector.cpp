#include <cpl_conv.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <set>

#include "burrow/language/say.h"
#include "dxf_scan.h"
#include "gdal_tools.h"
#include "json_crs.h"
#include "position_sizes.h"
#include "watched_file.h"

namespace burrow::gdal {

namespace {

/// The first of these fields of a layer, -1 if it has none of them.
template <std::size_t N>
int field_of(OGRFeatureDefnH definition, const std::array<const char*, N>& names) {
  for (const char* name : names)
    if (const int at = OGR_FD_GetFieldIndex(definition, name); at >= 0) return at;
  return -1;
}

std::string text_in(OGRFeatureH feature, int field) {
  if (field < 0 || !OGR_F_IsFieldSetAndNotNull(feature, field)) return {};
  return OGR_F_GetFieldAsString(feature, field);
}

class VectorReader {
 public:
  VectorReader(const ReadOptions& options, const std::string& format, bool drawing)
      : builder_(options, format), drawing_(drawing) {}

  FoundBuilder& builder() { return builder_; }

  std::optional<Error> read(GDALDatasetH data) {
    const int count = GDALDatasetGetLayerCount(data);
    for (int i = 0; i < count; ++i)
      if (auto error = read_layer(GDALDatasetGetLayer(data, i), i, count)) return error;
    for (const auto& [reason, n] : counted_)
      builder_.leave_out(translated("whole file"), say_count("{} element", "{} elements", n), reason);
    return std::nullopt;
  }

 private:
  std::optional<Error> read_layer(OGRLayerH layer, int index, int count) {
    if (!layer) return std::nullopt;
    // Blocks that were not unfolded: their lines lie around the block's own origin, not in the plan.
    if (drawing_ && std::string_view(OGR_L_GetName(layer)) == "blocks") return std::nullopt;
    take_frame(layer);
    OGRFeatureDefnH definition = OGR_L_GetLayerDefn(layer);
    const std::string layer_name = OGR_L_GetName(layer);
    const int layer_field = field_of(definition, std::array{"Layer", "code", "feature_code", "kind", "type", "class"});
    const int text_field = field_of(definition, std::array{"Text", "Name", "label", "id"});
    const int paper_field = drawing_ ? OGR_FD_GetFieldIndex(definition, "PaperSpace") : -1;
    const auto features = static_cast<double>(std::max<GIntBig>(1, OGR_L_GetFeatureCount(layer, 0)));
    OGR_L_ResetReading(layer);
    number_ = 0;
    while (OGRFeatureH feature = OGR_L_GetNextFeature(layer)) {
      ++number_;
      std::string name = text_in(feature, layer_field);
      if (name.empty()) name = layer_name;
      FoundFeature like;
      like.layer = builder_.layer(name);
      like.place = number_;
      like.text = text_in(feature, text_field);
      if (paper_field >= 0 && OGR_F_GetFieldAsInteger(feature, paper_field) == 1) {
        ++counted_[translated("on the sheet of the drawing, not in the plan")];
      } else {
        take(OGR_F_GetGeometryRef(feature), like, 0);
      }
      OGR_F_Destroy(feature);
      if (number_ % 256 == 0 || builder_.found.vertices.size() > next_look_) {
        next_look_ = builder_.found.vertices.size() + 20000;
        if (auto error = builder_.check_cancelled((index + std::min(1.0, number_ / features)) / count)) return error;
      }
    }
    return builder_.check_cancelled((index + 1.0) / count);
  }

  void take_frame(OGRLayerH layer) {
    FoundFrame frame;
    describe(OGR_L_GetSpatialRef(layer), frame);
    FoundFrame& known = builder_.found.frame;
    if (known.crs.empty() && !frame.crs.empty()) known = frame;
    if (!frame.crs.empty() && frame.crs != known.crs)
      builder_.found.notes.push_back(
          say("layer {} has another coordinate system than the first layer; it was read as if it had the first one's",
              as_utf8(OGR_L_GetName(layer))));
  }

  [[nodiscard]] std::string place() const { return say("element {}", number_); }

  void take(OGRGeometryH geometry, const FoundFeature& like, int depth) {
    constexpr int deepest = 16;
    if (!geometry || OGR_G_IsEmpty(geometry)) return builder_.leave_out(place(), like.text, translated("no geometry"));
    if (depth > deepest) return builder_.leave_out(place(), like.text, translated("collections within collections"));
    if (OGR_G_HasCurveGeometry(geometry, 0)) {
      OGRGeometryH lines = OGR_G_GetLinearGeometry(geometry, 0, nullptr);
      take_straight(lines, like, depth);
      OGR_G_DestroyGeometry(lines);
      return;
    }
    take_straight(geometry, like, depth);
  }

  void take_straight(OGRGeometryH geometry, const FoundFeature& like, int depth) {
    switch (OGR_GT_Flatten(OGR_G_GetGeometryType(geometry))) {
      case wkbPoint:
        return add(Shape::point, geometry, like);
      case wkbLineString:
        return add(Shape::line, geometry, like);
      case wkbPolygon:
      case wkbTriangle:
        for (int i = 0; i < OGR_G_GetGeometryCount(geometry); ++i)
          add(i == 0 ? Shape::area : Shape::line, OGR_G_GetGeometryRef(geometry, i), like);
        return;
      case wkbTIN:
      case wkbPolyhedralSurface:
        return add_surface(geometry, like);
      default:
        for (int i = 0; i < OGR_G_GetGeometryCount(geometry); ++i)
          take(OGR_G_GetGeometryRef(geometry, i), like, depth + 1);
    }
  }

  void vertices_of(OGRGeometryH geometry) {
    const int count = OGR_G_GetPointCount(geometry);
    const bool has_z = OGR_G_Is3D(geometry) != 0;
    vertices_.clear();
    for (int i = 0; i < count; ++i) {
      double x = 0, y = 0, z = 0;
      OGR_G_GetPoint(geometry, i, &x, &y, &z);
      FoundVertex v{x, y, std::nullopt};
      if (has_z && !std::isnan(z)) v.z_m = z;
      vertices_.push_back(v);
    }
  }

  void add(Shape shape, OGRGeometryH geometry, const FoundFeature& like) {
    vertices_of(geometry);
    FoundFeature feature = like;
    feature.shape = shape;
    if (shape == Shape::area && vertices_.size() > 1 && vertices_.front() == vertices_.back()) vertices_.pop_back();
    builder_.add(std::move(feature), vertices_, place());
  }

  void add_surface(OGRGeometryH geometry, const FoundFeature& like) {
    FoundSurface surface;
    surface.layer = like.layer;
    for (int i = 0; i < OGR_G_GetGeometryCount(geometry); ++i) {
      OGRGeometryH face = OGR_G_GetGeometryRef(geometry, i);
      if (OGR_G_GetGeometryCount(face) > 0) face = OGR_G_GetGeometryRef(face, 0);
      vertices_of(face);
      if (vertices_.size() > 1 && vertices_.front() == vertices_.back()) vertices_.pop_back();
      const auto good = [](const FoundVertex& v) {
        return v.z_m && std::abs(v.x_m) <= largest_coordinate && std::abs(v.y_m) <= largest_coordinate &&
               std::abs(*v.z_m) <= largest_coordinate;
      };
      if (vertices_.size() < 3 || !std::all_of(vertices_.begin(), vertices_.end(), good)) {
        builder_.leave_out(place(), like.text, translated("a face without three usable corners"));
        continue;
      }
      const auto first = static_cast<std::uint32_t>(surface.points.size());
      for (const FoundVertex& v : vertices_) surface.points.push_back({v.x_m, v.y_m, *v.z_m});
      for (std::uint32_t k = 2; k < vertices_.size(); ++k) surface.faces.push_back({first, first + k - 1, first + k});
    }
    if (!surface.faces.empty()) builder_.found.surfaces.push_back(std::move(surface));
  }

  FoundBuilder builder_;
  bool drawing_ = false;
  std::uint32_t number_ = 0;
  std::size_t next_look_ = 20000;
  std::vector<FoundVertex> vertices_;
  std::map<std::string, std::size_t> counted_;
};

std::string format_words(const std::string& driver) {
  if (driver == "DXF") return translated("DXF drawing");
  if (driver == "ESRI Shapefile") return "Shapefile";
  if (driver == "GPKG") return "GeoPackage";
  if (driver == "LIBKML" || driver == "KML") return "KML";
  return driver;
}

/// Degrees that cannot be: the writer left out which system the numbers are in.
void doubt_degrees(Found& found) {
  if (!found.frame.geographic) return;
  const auto extent = extent_of(found);
  if (!extent || (extent->low_x >= -360 && extent->high_x <= 360 && extent->low_y >= -90 && extent->high_y <= 90))
    return;
  found.frame = {};
  found.notes.emplace_back(
      translated("the file counts as degrees, but its numbers are none: the coordinate system is not known"));
}

tl::unexpected<Error> not_read_to_its_end() {
  return fail(translated("file"), std::string(stopped_by_person), translated("to be read to its end"),
              stopped_by_person);
}

/// The first few that differ; those about the library's own settings are not for a person.
void note_warnings(const Listener& listener, Found& found) {
  constexpr std::size_t most = 5;
  std::set<std::string> reported;
  for (const std::string& warning : listener.warnings())
    if (warning.find("configuration option") == std::string::npos && reported.size() < most &&
        reported.insert(warning).second)
      found.notes.push_back(warning);
}

}  // namespace

Result<Found> read_vector(const std::string& path, const std::string& driver, const ReadOptions& options) {
  set_up();
  const bool drawing = driver == "DXF";
  DrawingScan scan;
  if (drawing) {
    Result<DrawingScan> scanned = scan_drawing(path, options);
    if (!scanned) return tl::unexpected(scanned.error());
    scan = std::move(*scanned);
    CPLSetThreadLocalConfigOption("DXF_INLINE_BLOCKS", scan.inline_blocks ? "TRUE" : "FALSE");
  }
  if (driver == "GeoJSON")
    if (const auto named = file_named_by_crs(path))
      return fail(translated("coordinate system"), as_utf8(named->substr(0, 80)),
                  translated("a named one: \"EPSG:25832\", an OGC URN, or WKT that names no file"));
  const Listener listener;
  const NoNetwork no_network;
  const std::array<const char*, 3> drivers{driver.c_str(), driver == "LIBKML" ? "KML" : nullptr, nullptr};
  const std::array<const char*, 2> immutable{"IMMUTABLE=YES", nullptr};  // no journal files beside a GeoPackage
  // Those that read the whole file to open it: half of the way.
  const bool opens_whole = driver == "GeoJSON";
  double furthest = 0;
  const auto halfway = [&options, &furthest](double from) {
    return [&options, &furthest, from](double share) {
      furthest = std::max(furthest, from + share / 2);
      return options.progress(furthest);
    };
  };
  ReadOptions to_open = options, to_take = options;
  if (opens_whole && options.progress) {
    to_open.progress = halfway(0);
    to_take.progress = halfway(0.5);
  }
  WatchedFile watched(path, to_open);
  const DataSet data(GDALOpenEx(opens_whole ? watched.path().c_str() : path.c_str(), GDAL_OF_VECTOR | GDAL_OF_READONLY,
                                drivers.data(), driver == "GPKG" ? immutable.data() : nullptr, nullptr));
  if (watched.stopped()) return not_read_to_its_end();
  if (auto refused = no_network.refusal()) return tl::unexpected(*refused);
  if (!data.get())
    return fail(translated("file"),
                listener.last_error(translated("something else than its name says, or a file cut short")),
                "a " + format_words(driver));
  VectorReader reader(to_take, format_words(driver), drawing);
  if (drawing) apply(scan, reader.builder());
  const auto error = reader.read(data.get());
  if (watched.stopped()) return not_read_to_its_end();
  if (auto refused = no_network.refusal()) return tl::unexpected(*refused);
  if (error) return tl::unexpected(*error);
  if (!listener.errors().empty()) reader.builder().leave_out(translated("whole file"), "", listener.errors().front());
  note_warnings(listener, reader.builder().found);
  const bool mixed = driver.starts_with("GeoJSON") && mixes_position_sizes(path);
  Found found = reader.builder().finish(mixed);
  doubt_degrees(found);
  if (found.features.empty() && found.surfaces.empty())
    return fail(translated("file"),
                found.left_out.empty() ? translated("nothing")
                                       : found.left_out.front().text + " " + found.left_out.front().reason,
                translated("points, lines or areas"));
  return found;
}

}  // namespace burrow::gdal
