#include "vector_reader.h"

#include <fmt/format.h>
#include <ogr_geometry.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "../csv_fields.h"
#include "../simplified.h"
#include "burrow/language/say.h"

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

/// Fields that the driver adds and no person wrote.
bool of_driver(const std::string& name) {
  static const std::set<std::string, std::less<>> own{
      "timestamp", "begin", "end", "altitudemode", "tessellate", "extrude", "visibility", "draworder", "icon"};
  return own.contains(csv::lower(name));
}

/// Empty: one is no code of the register, or no datum shift between them is known, which may be many metres.
std::unique_ptr<OGRCoordinateTransformation> between_codes(const std::string& from, const std::string& to) {
  const std::string prefix = "EPSG:";
  if (!from.starts_with(prefix) || !to.starts_with(prefix)) return nullptr;
  OGRSpatialReference source, target;
  for (OGRSpatialReference* system : {&source, &target}) {
    const std::string& code = system == &source ? from : to;
    if (system->importFromEPSG(std::atoi(code.c_str() + prefix.size())) != OGRERR_NONE) return nullptr;
    system->SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  }
  OGRCoordinateTransformationOptions options;
  options.SetBallparkAllowed(false);
  return std::unique_ptr<OGRCoordinateTransformation>(OGRCreateCoordinateTransformation(&source, &target, options));
}

constexpr double finest_step_degrees = 0.1;  // of arcs within a file of features
constexpr double thin_m = 0.002, thin_degrees = 2e-8;

}  // namespace

std::optional<Error> VectorReader::read(GDALDatasetH data) {
  const int count = GDALDatasetGetLayerCount(data);
  has_several_ = count > 1;
  for (int i = 0; i < count; ++i)
    if (auto error = read_layer(GDALDatasetGetLayer(data, i), i, count)) return error;
  for (const auto& [reason, n] : counted_)
    builder_.leave_out(translated("whole file"), say_count("{} element", "{} elements", n), reason);
  if (on_sheet_ > 0)
    builder_.leave_out(translated("whole file"), say_count("{} element", "{} elements", on_sheet_),
                       translated("on the sheet of the drawing, not in the plan"), false);
  return std::nullopt;
}

VectorReader::Fields VectorReader::fields_of(OGRLayerH layer) {
  OGRFeatureDefnH definition = OGR_L_GetLayerDefn(layer);
  Fields fields;
  fields.layer = field_of(definition, std::array{"Layer", "code", "feature_code", "kind", "type", "class"});
  fields.text = field_of(definition, std::array{"Text", "Name", "label", "id"});
  if (kind_.drawing) {
    fields.paper = OGR_FD_GetFieldIndex(definition, "PaperSpace");
    return fields;
  }
  const auto is_named = [&](std::initializer_list<const char*> names) {
    const std::string name =
        fields.layer < 0 ? std::string() : OGR_Fld_GetNameRef(OGR_FD_GetFieldDefn(definition, fields.layer));
    return std::any_of(names.begin(), names.end(), [&](const char* one) { return csv::lower(name) == one; });
  };
  fields.within_layer = is_named({"type", "class"}) || (has_several_ && is_named({"kind"}));
  if (kind_.altitudes) fields.altitude = OGR_FD_GetFieldIndex(definition, "altitudeMode");
  constexpr std::uint32_t most = 64;
  std::size_t beyond = 0;
  for (int i = 0; i < OGR_FD_GetFieldCount(definition); ++i) {
    const std::string name = OGR_Fld_GetNameRef(OGR_FD_GetFieldDefn(definition, i));
    if (kind_.altitudes && of_driver(name)) continue;
    if (builder_.found.table.fields.size() >= most && !builder_.has_field(name)) {
      ++beyond;
      continue;
    }
    fields.attributes.emplace_back(i, builder_.field(name));
  }
  if (beyond > 0)
    builder_.leave_out(say("layer {}", as_utf8(OGR_L_GetName(layer))),
                       say_count("{} attribute", "{} attributes", beyond), say("more than {} columns", most));
  return fields;
}

std::optional<Error> VectorReader::read_layer(OGRLayerH layer, int index, int count) {
  if (!layer) return std::nullopt;
  const std::string layer_name = OGR_L_GetName(layer);
  // Blocks that were not unfolded: their lines lie around the block's own origin, not in the plan.
  if (kind_.drawing && layer_name == "blocks") return std::nullopt;
  if (kind_.parts.contains(layer_name)) return std::nullopt;
  if (kind_.views.contains(layer_name)) {
    builder_.leave_out(say("layer {}", as_utf8(layer_name)), "",
                       translated("a view, which is computed while it is read: only tables are read"));
    return std::nullopt;
  }
  if (OGR_L_GetGeomType(layer) == wkbNone) {
    builder_.leave_out(say("layer {}", as_utf8(layer_name)), "", translated("a table without places"), false);
    return std::nullopt;
  }
  OGR_L_ResetReading(layer);
  OGRFeatureH first = OGR_L_GetNextFeature(layer);
  if (!first) return std::nullopt;  // an empty layer says nothing about where the others lie
  OGR_F_Destroy(first);
  if (!take_frame(layer, !std::exchange(has_features_, true))) return std::nullopt;
  const Fields fields = fields_of(layer);
  const auto features = static_cast<double>(std::max<GIntBig>(1, OGR_L_GetFeatureCount(layer, 0)));
  OGR_L_ResetReading(layer);
  number_ = 0;
  while (OGRFeatureH feature = OGR_L_GetNextFeature(layer)) {
    ++number_;
    read_feature(feature, fields, layer_name);
    OGR_F_Destroy(feature);
    if (number_ % 256 == 0 || builder_.found.vertices.size() > next_look_) {
      next_look_ = builder_.found.vertices.size() + 20000;
      if (auto error = builder_.check_cancelled((index + std::min(1.0, number_ / features)) / count)) return error;
    }
  }
  return builder_.check_cancelled((index + 1.0) / count);
}

void VectorReader::read_feature(OGRFeatureH feature, const Fields& fields, const std::string& layer_name) {
  if (fields.paper >= 0 && OGR_F_GetFieldAsInteger(feature, fields.paper) == 1) {
    ++on_sheet_;
    return;
  }
  std::string name = text_in(feature, fields.layer);
  if (name.empty())
    name = layer_name;
  else if (fields.within_layer)
    name = layer_name + ": " + name;  // "main" of the gas pipes is another thing than "main" of the water pipes
  FoundFeature like;
  like.layer = builder_.layer(name);
  like.place = number_;
  like.text = text_in(feature, fields.text);
  like.is_text = kind_.drawing && !like.text.empty();
  std::vector<std::pair<std::uint32_t, std::string>> attributes;
  for (const auto& [field, column] : fields.attributes) attributes.emplace_back(column, text_in(feature, field));
  builder_.set_attributes(std::move(attributes));
  without_heights_ = false;
  if (kind_.altitudes) take_altitude_mode(feature, fields, like);
  OGRGeometryH geometry = OGR_F_GetGeometryRef(feature);
  if (geometry && into_first_ && !move_into_frame(geometry))
    return builder_.leave_out(place(), like.text,
                              translated("it has no place in the coordinate system of the first layer"));
  take(geometry, like, 0);
}

/// KML: on the ground, above the ground (below it where negative), or above the sea.
void VectorReader::take_altitude_mode(OGRFeatureH feature, const Fields& fields, FoundFeature& like) {
  const std::string mode = text_in(feature, fields.altitude);
  OGRGeometryH geometry = OGR_F_GetGeometryRef(feature);
  if (mode == "absolute") like.from = DepthFrom::datum;
  if (mode == "relativeToGround") like.from = DepthFrom::ground;
  without_heights_ = mode == "clampToGround" || mode == "clampToSeaFloor" || mode == "relativeToSeaFloor";
  if (without_heights_ && geometry && OGR_G_Is3D(geometry))
    ++counted_[translated("its heights do not count, as the file says (on the ground)")];
}

/// All layers are put into the system of the first one that holds anything.
bool VectorReader::take_frame(OGRLayerH layer, bool is_first) {
  FoundFrame frame;
  describe(OGR_L_GetSpatialRef(layer), frame);
  FoundFrame& known = builder_.found.frame;
  into_first_.reset();
  if (is_first) {
    if (!frame.crs.empty() || !kind_.drawing) known = frame;
    return true;
  }
  if (frame.crs == known.crs) return true;
  if (!frame.crs.empty() && !known.crs.empty()) return bring_into_frame(layer, frame);
  builder_.leave_out(
      say("layer {}", as_utf8(OGR_L_GetName(layer))),
      frame.crs.empty() ? std::string(translated("no coordinate system")) : name_of_crs(frame.crs),
      known.crs.empty()
          ? std::string(translated("the first layer states no coordinate system: it needs a file of its own"))
          : say("the first layer is in {}: it needs a file of its own", name_of_crs(known.crs)));
  return false;
}

/// Both by their codes alone: a definition may name files.
bool VectorReader::bring_into_frame(OGRLayerH layer, const FoundFrame& frame) {
  const FoundFrame& known = builder_.found.frame;
  into_first_ = between_codes(frame.crs, known.crs);
  if (!into_first_) {
    builder_.leave_out(say("layer {}", as_utf8(OGR_L_GetName(layer))), name_of_crs(frame.crs),
                       say("another coordinate system than the first layer's, {}: it needs a file of its own",
                           name_of_crs(known.crs)));
    return false;
  }
  builder_.found.notes.push_back(say("layer {} is in {}: it was brought into {}, that of the first layer",
                                     as_utf8(OGR_L_GetName(layer)), name_of_crs(frame.crs), name_of_crs(known.crs)));
  return true;
}

bool VectorReader::move_into_frame(OGRGeometryH geometry) const {
  return OGRGeometry::FromHandle(geometry)->transform(into_first_.get()) == OGRERR_NONE;
}

std::string VectorReader::place() const {
  return say("element {}", number_);
}

void VectorReader::take(OGRGeometryH geometry, const FoundFeature& like, int depth) {
  constexpr int deepest = 16;
  if (!geometry || OGR_G_IsEmpty(geometry)) return builder_.leave_out(place(), like.text, translated("no geometry"));
  if (depth > deepest) return builder_.leave_out(place(), like.text, translated("collections within collections"));
  if (OGR_G_HasCurveGeometry(geometry, 0)) {
    OGRGeometryH lines = OGR_G_GetLinearGeometry(geometry, finest_step_degrees, nullptr);
    thin_ = builder_.found.frame.geographic ? thin_degrees
                                            : thin_m / metres_in(builder_.found.frame.unit.value_or(FileUnit::metre));
    take_straight(lines, like, depth);
    thin_ = kind_.tolerance;
    OGR_G_DestroyGeometry(lines);
    return;
  }
  take_straight(geometry, like, depth);
}

void VectorReader::take_straight(OGRGeometryH geometry, const FoundFeature& like, int depth) {
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

void VectorReader::vertices_of(OGRGeometryH geometry) {
  const int count = OGR_G_GetPointCount(geometry);
  const bool has_z = OGR_G_Is3D(geometry) != 0 && !without_heights_;
  vertices_.clear();
  for (int i = 0; i < count; ++i) {
    double x = 0, y = 0, z = 0;
    OGR_G_GetPoint(geometry, i, &x, &y, &z);
    FoundVertex v{x, y, std::nullopt};
    if (has_z && !std::isnan(z)) v.z_m = z;
    vertices_.push_back(v);
  }
}

/// Arcs were cut finely enough for the largest of them: of the others most vertices tell nothing.
void VectorReader::thin_curve() {
  constexpr std::size_t few = 16;
  if (!(thin_ > 0) || vertices_.size() <= few) return;
  std::vector<PlanPoint> plan;
  for (const FoundVertex& v : vertices_) {
    if (!std::isfinite(v.x_m) || !std::isfinite(v.y_m)) return;
    if (v.z_m != vertices_.front().z_m) return;  // a line in space keeps its vertices
    plan.push_back({v.x_m, v.y_m});
  }
  std::vector<FoundVertex> kept;
  for (const std::size_t i : simplified(plan, thin_)) kept.push_back(vertices_[i]);
  vertices_ = std::move(kept);
}

void VectorReader::add(Shape shape, OGRGeometryH geometry, const FoundFeature& like) {
  vertices_of(geometry);
  if (shape != Shape::point) thin_curve();
  FoundFeature feature = like;
  feature.shape = shape;
  if (shape != Shape::point) feature.is_text = false;
  if (shape == Shape::area && vertices_.size() > 1 && vertices_.front() == vertices_.back()) vertices_.pop_back();
  builder_.add(std::move(feature), vertices_, place());
}

void VectorReader::add_surface(OGRGeometryH geometry, const FoundFeature& like) {
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

}  // namespace burrow::gdal
