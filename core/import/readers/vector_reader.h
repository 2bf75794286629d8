#pragma once
/// Features of a GDAL data set into what was found. Private to the importer library.

#include <ogr_spatialref.h>

#include <array>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "gdal_tools.h"

namespace burrow::gdal {

class VectorReader {
 public:
  /// What differs from one kind of file to another.
  struct Kind {
    std::string format;      ///< in words
    bool drawing = false;    ///< layers and texts of a drawing, no attributes
    bool altitudes = false;  ///< KML, which says for each thing what its heights are
    double tolerance = 0;    ///< vertices of curves that lie so near the line through their neighbours go; 0: all stay
    std::set<std::string> views;  ///< layers that are computed: left out
    std::set<std::string> parts;  ///< layers that hold the vertices of another once more: passed over
  };
  VectorReader(const ReadOptions& options, Kind kind)
      : builder_(options, kind.format), kind_(std::move(kind)), thin_(kind_.tolerance) {}

  FoundBuilder& builder() { return builder_; }
  std::optional<Error> read(GDALDatasetH data);

 private:
  /// What the fields of a layer are for.
  struct Fields {
    int layer = -1, text = -1, paper = -1, altitude = -1;
    bool within_layer = false;  ///< the field parts the features of the layer, and does not say all about them
    std::vector<std::pair<int, std::uint32_t>> attributes;  ///< field of the layer, column of the table
  };

  std::optional<Error> read_layer(OGRLayerH layer, int index, int count);
  Fields fields_of(OGRLayerH layer);
  void read_feature(OGRFeatureH feature, const Fields& fields, const std::string& layer_name);
  void take_altitude_mode(OGRFeatureH feature, const Fields& fields, FoundFeature& like);
  bool take_frame(OGRLayerH layer, bool is_first);
  bool bring_into_frame(OGRLayerH layer, const FoundFrame& frame);
  bool move_into_frame(OGRGeometryH geometry) const;
  [[nodiscard]] std::string place() const;
  void take(OGRGeometryH geometry, const FoundFeature& like, int depth);
  void take_straight(OGRGeometryH geometry, const FoundFeature& like, int depth);
  void vertices_of(OGRGeometryH geometry);
  void add(Shape shape, OGRGeometryH geometry, const FoundFeature& like);
  void thin_curve();
  void add_surface(OGRGeometryH geometry, const FoundFeature& like);

  FoundBuilder builder_;
  Kind kind_;
  double thin_ = 0;  ///< tolerance for the geometry that is being read
  std::uint32_t number_ = 0;
  std::size_t on_sheet_ = 0;
  std::size_t next_look_ = 20000;
  bool has_several_ = false;                                 ///< layers
  bool has_features_ = false;                                ///< a layer before this one held some
  std::unique_ptr<OGRCoordinateTransformation> into_first_;  ///< of a layer in another system
  bool without_heights_ = false;                             ///< of the feature: its heights do not count
  std::vector<FoundVertex> vertices_;
  std::map<std::string, std::size_t> counted_;
};

}  // namespace burrow::gdal
