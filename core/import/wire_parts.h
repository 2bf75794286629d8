#pragma once
/// What the structs that go between the two processes consist of; see `wire.h`. `visit` is given all members, in an
/// order that is the same at both ends. The members are taken by structured binding, so that a struct that gets one
/// more does not compile until it is named here too. Private to this room.

#include <concepts>

#include "answer.h"
#include "wire.h"

namespace burrow {

template <>
inline bool wire::is_known<Shape>(std::uint8_t number) {
  return number <= static_cast<std::uint8_t>(Shape::area);
}

/// The struct itself or a constant one.
template <class T, class Struct>
concept Is = std::same_as<std::remove_const_t<T>, Struct>;

template <class Visit>
void each_part(Is<PlanPoint> auto& p, Visit visit) {
  auto& [x_m, y_m] = p;
  visit(x_m, y_m);
}
template <class Visit>
void each_part(Is<Point3> auto& p, Visit visit) {
  auto& [x_m, y_m, z_m] = p;
  visit(x_m, y_m, z_m);
}
template <class Visit>
void each_part(Is<PathVertex> auto& v, Visit visit) {
  auto& [x_m, y_m, z_m] = v;
  visit(x_m, y_m, z_m);
}
template <class Visit>
void each_part(Is<FoundFeature> auto& f, Visit visit) {
  auto& [shape, layer, first, count, place, text, diameter_m, level, from, is_text] = f;
  visit(shape, layer, first, count, place, text, diameter_m, level, from, is_text);
}
template <class Visit>
void each_part(Is<FoundSurface> auto& s, Visit visit) {
  auto& [layer, points, faces] = s;
  visit(layer, points, faces);
}
template <class Visit>
void each_part(Is<FoundRaster> auto& r, Visit visit) {
  auto& [layer, path, columns, rows, to_plan, least_z, most_z] = r;
  visit(layer, path, columns, rows, to_plan, least_z, most_z);
}
template <class Visit>
void each_part(Is<FoundField> auto& f, Visit visit) {
  auto& [name] = f;
  visit(name);
}
template <class Visit>
void each_part(Is<FoundTable> auto& t, Visit visit) {
  auto& [fields, texts, cells] = t;
  visit(fields, texts, cells);
}
template <class Visit>
void each_part(Is<FoundFrame> auto& f, Visit visit) {
  auto& [crs, geographic, unit, height_unit, vertical, unit_is_doubtful, unit_is_foreign] = f;
  visit(crs, geographic, unit, height_unit, vertical, unit_is_doubtful, unit_is_foreign);
}
template <class Visit>
void each_part(Is<LeftOut> auto& l, Visit visit) {
  auto& [place, text, reason, matters] = l;
  visit(place, text, reason, matters);
}
template <class Visit>
void each_part(Is<Found> auto& f, Visit visit) {
  auto& [file, format, layers, vertices, features, surfaces, rasters, frame, table, left_out, left_out_more, order,
         order_is_known, notes] = f;
  visit(file, format, layers, vertices, features, surfaces, rasters, frame, table, left_out, left_out_more, order,
        order_is_known, notes);
}
template <class Visit>
void each_part(Is<ErrorInWords> auto& e, Visit visit) {
  auto& [place, found, expected] = e;
  visit(place, found, expected);
}
template <class Visit>
void each_part(Is<RequestText> auto& t, Visit visit) {
  auto& [english, translated] = t;
  visit(english, translated);
}
template <class Visit>
void each_part(Is<RequestCounted> auto& t, Visit visit) {
  auto& [english, forms] = t;
  visit(english, forms);
}
template <class Visit>
void each_part(Is<ReaderRequest> auto& r, Visit visit) {
  auto& [version, program, path, order, unit, most_vertices, most_unpacked_bytes, most_memory_bytes, most_seconds,
         most_layers, most_cells, language, texts, counted, raster, points] = r;
  visit(version, program, path, order, unit, most_vertices, most_unpacked_bytes, most_memory_bytes, most_seconds,
        most_layers, most_cells, language, texts, counted, raster, points);
}
template <class Visit>
void each_part(Is<ReaderAnswer> auto& a, Visit visit) {
  auto& [version, error, found, heights] = a;
  visit(version, error, found, heights);
}

}  // namespace burrow
