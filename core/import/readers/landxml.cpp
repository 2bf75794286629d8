#include "landxml.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <new>
#include <pugixml.hpp>

#include "burrow/language/say.h"
#include "landxml_lines.h"
#include "landxml_text.h"

namespace burrow {

namespace {

using namespace landxml;

PlanPoint plan(const FoundVertex& v) {
  return {v.x_m, v.y_m};
}

class Reader {
 public:
  Reader(const Node& root, const ReadOptions& options) : root_(root), builder_(options, "LandXML") {}

  Result<Found> run() {
    read_units();
    double done = 0;
    for (const auto& [section, read] : sections) {
      for (const Node& node : root_.children())
        if (local_name(node) == section) (this->*read)(node);
      done += 1.0 / static_cast<double>(std::size(sections));
      if (auto error = builder_.check_cancelled(done)) return tl::unexpected(*error);
    }
    for (const Node& node : root_.children()) count_unread(node);
    Found found = builder_.finish();
    if (found.features.empty() && found.surfaces.empty())
      return fail(translated("file"),
                  found.left_out.empty() ? translated("nothing")
                                         : found.left_out.front().text + ": " + found.left_out.front().reason,
                  translated("points, surfaces, alignments or pipe networks"));
    return found;
  }

 private:
  void read_units() {
    FoundFrame& frame = builder_.found.frame;
    const Node units = child(root_, "Units");
    for (const Node& system : units.children()) {
      frame.unit = unit_from(system.attribute("linearUnit").value());
      frame.height_unit = unit_from(system.attribute("elevationUnit").value());
      if (!frame.height_unit) frame.height_unit = frame.unit;
      diameter_unit_ = unit_from(system.attribute("diameterUnit").value());
    }
    const Node crs = child(root_, "CoordinateSystem");
    if (const std::string code = crs.attribute("epsgCode").value(); !code.empty()) frame.crs = "EPSG:" + as_utf8(code);
    frame.vertical = as_utf8(crs.attribute("verticalCoordinateSystemName").value());
    sagitta_ = 0.01 / metres_in(frame.unit.value_or(FileUnit::metre));
  }

  /// "north east height", or a reference to a point by its name.
  std::optional<FoundVertex> vertex(const Node& node) const {
    std::vector<double> n = numbers(node.child_value());
    if (n.size() < 2) {
      const auto it = named_.find(node.attribute("pntRef").value());
      return it == named_.end() ? std::nullopt : std::optional(it->second);
    }
    const auto usable = [](double c) { return std::abs(c) <= largest_coordinate; };  // false for "nan"
    if (!usable(n[0]) || !usable(n[1])) return std::nullopt;
    FoundVertex v{n[1], n[0], std::nullopt};
    if (n.size() > 2) v.z_m = n[2];
    return v;
  }

  void read_points(const Node& section) {
    each(section, "CgPoints", [&](const Node& inner) { read_points(inner); });
    each(section, "CgPoint", [&](const Node& node) {
      ++number_;
      const std::string name = node.attribute("name").value();
      const auto v = vertex(node);
      if (!v)
        return builder_.leave_out("CgPoint " + as_utf8(name), node.child_value(), translated("no north and east"));
      named_.emplace(name, *v);
      FoundFeature feature;
      const std::string code = node.attribute("code").value();
      feature.layer = builder_.layer(code.empty() ? node.attribute("desc").value() : code.c_str());
      feature.place = number_;
      feature.text = name;
      builder_.add(std::move(feature), {*v}, "CgPoint " + as_utf8(name));
    });
  }

  void read_surfaces(const Node& section) {
    each(section, "Surface", [&](const Node& node) {
      const std::string name = node.attribute("name").value();
      const Node definition = child(node, "Definition");
      FoundSurface surface;
      surface.layer = builder_.layer(name);
      std::map<std::string_view, std::uint32_t> index;
      each(child(definition, "Pnts"), "P", [&](const Node& p) {
        const std::vector<double> n = numbers(p.child_value());
        const bool good =
            n.size() > 2 && std::all_of(n.begin(), n.end(), [](double v) { return std::abs(v) <= largest_coordinate; });
        if (!good)
          return builder_.leave_out(say("surface {}, point {}", as_utf8(name), as_utf8(p.attribute("id").value())),
                                    p.child_value(), translated("not three usable numbers"));
        index.emplace(p.attribute("id").value(), static_cast<std::uint32_t>(surface.points.size()));
        surface.points.push_back({n[1], n[0], n[2]});
      });
      std::size_t hidden = 0, broken = 0;
      each(definition, "Faces", [&](const Node& faces) {
        each(faces, "F", [&](const Node& f) {
          if (std::string_view(f.attribute("i").value()) == "1") {
            ++hidden;
          } else if (!add_face(surface, index, f.child_value())) {
            ++broken;
          }
        });
      });
      const std::string place = "surface " + as_utf8(name);
      if (hidden > 0)
        builder_.leave_out(place, say_count("{} face", "{} faces", hidden), translated("marked as hidden"));
      if (broken > 0)
        builder_.leave_out(place, say_count("{} face", "{} faces", broken),
                           translated("not three points of the surface"));
      if (surface.faces.empty()) return builder_.leave_out(place, "", translated("no faces"));
      builder_.found.surfaces.push_back(std::move(surface));
    });
  }

  static bool add_face(FoundSurface& surface, const std::map<std::string_view, std::uint32_t>& index,
                       std::string_view text) {
    std::array<std::uint32_t, 3> face{};
    for (std::uint32_t& corner : face) {
      text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
      const std::string_view id = text.substr(0, text.find_first_of(" \t\r\n"));
      const auto it = index.find(id);
      if (it == index.end()) return false;
      corner = it->second;
      text.remove_prefix(id.size());
    }
    surface.faces.push_back(face);
    return true;
  }

  /// The vertices of a CoordGeom, with the heights of its own points.
  std::vector<FoundVertex> geometry(const Node& geom, const std::string& place) {
    std::vector<FoundVertex> line;
    const auto add = [&](const FoundVertex& v) {
      if (line.empty() || plan(line.back()) != plan(v)) line.push_back(v);
    };
    for (const Node& part : geom.children()) {
      const auto start = vertex(child(part, "Start"));
      const auto end = vertex(child(part, "End"));
      const std::string_view kind = local_name(part);
      if (kind == "IrregLine") {
        if (start) add(*start);
        add_list(part, add);
        if (end) add(*end);
        continue;
      }
      if (kind != "Line" && kind != "Curve" && kind != "Spiral") continue;
      if (!start || !end) {
        builder_.leave_out(place, kind, translated("no start or no end"));
        continue;
      }
      add(*start);
      std::vector<PlanPoint> between;
      if (kind == "Curve") {
        const auto centre = vertex(child(part, "Center"));
        const bool clockwise = std::string_view(part.attribute("rot").value()) == "cw";
        if (centre) add_arc(between, {plan(*start), plan(*centre), plan(*end), clockwise}, sagitta_);
        if (!centre) builder_.leave_out(place, kind, translated("no centre: read as a straight line"));
      }
      if (kind == "Spiral") add_spiral_of(part, *start, *end, between, place);
      for (std::size_t i = 0; i + 1 < between.size(); ++i) add({between[i].x_m, between[i].y_m, std::nullopt});
      add(*end);
    }
    return line;
  }

  template <class Add>
  static void add_list(const Node& part, Add&& add) {
    for (const auto& [name, width] : {std::pair<std::string_view, std::size_t>{"PntList2D", 2}, {"PntList3D", 3}}) {
      const std::vector<double> n = numbers(child(part, name).child_value());
      for (std::size_t i = 0; i + width <= n.size(); i += width)
        add({n[i + 1], n[i], width == 3 ? std::optional(n[i + 2]) : std::nullopt});
    }
  }

  void add_spiral_of(const Node& part, const FoundVertex& start, const FoundVertex& end,
                     std::vector<PlanPoint>& between, const std::string& place) {
    const auto towards = vertex(child(part, "PI"));
    const auto length = number_in(part, "length");
    if (!towards || !length || !(*length > 0))
      return builder_.leave_out(place, "Spiral", translated("no PI or no length: read as a straight line"));
    const auto curvature = [&](const char* attribute) {
      const auto radius = number_in(part, attribute);  // "INF" is no finite number: straight
      const double left = std::string_view(part.attribute("rot").value()) == "cw" ? -1 : 1;
      return radius && *radius > 0 ? left / *radius : 0.0;
    };
    add_spiral(between,
               {plan(start), plan(*towards), plan(end), curvature("radiusStart"), curvature("radiusEnd"), *length});
  }

  static std::vector<ProfilePoint> profile_of(const Node& alignment) {
    std::vector<ProfilePoint> points;
    const Node design = child(child(alignment, "Profile"), "ProfAlign");
    for (const Node& node : design.children()) {
      const std::vector<double> n = numbers(node.child_value());
      if (n.size() < 2) continue;
      ProfilePoint p{n[0], n[1], 0, 0};
      const double half = number_in(node, "length").value_or(0) / 2;
      p.curve_in = number_in(node, "lengthIn").value_or(half);
      p.curve_out = number_in(node, "lengthOut").value_or(half);
      if (points.empty() || p.station > points.back().station) points.push_back(p);
    }
    return points;
  }

  void read_alignments(const Node& section) {
    each(section, "Alignment", [&](const Node& node) {
      const std::string name = node.attribute("name").value();
      const std::string place = "alignment " + as_utf8(name);
      std::vector<FoundVertex> line = geometry(child(node, "CoordGeom"), place);
      const std::vector<ProfilePoint> profile = profile_of(node);
      if (!profile.empty()) line = with_heights(line, profile, number_in(node, "staStart").value_or(0));
      if (profile.empty() && !line.empty())
        builder_.leave_out(place, "", translated("no profile: its heights are not known"));
      if (child(node, "CrossSects"))
        builder_.leave_out(place, "", translated("its cross sections, the ground in them too, are not read"));
      add_line(std::move(line), "alignment " + name, name, place, Shape::line);
    });
  }

  /// A vertex at least every 5 m, so that the curves of the profile are followed.
  std::vector<FoundVertex> with_heights(const std::vector<FoundVertex>& line, const std::vector<ProfilePoint>& profile,
                                        double station) const {
    const double step = 500 * sagitta_;
    std::vector<FoundVertex> out;
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (i > 0) {
        const FoundVertex &a = line[i - 1], &b = line[i];
        const double length = std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
        const double pieces = std::clamp(std::ceil(length / step), 1.0, 10000.0);
        for (double k = 1; k < pieces; ++k)
          out.push_back({a.x_m + (b.x_m - a.x_m) * k / pieces, a.y_m + (b.y_m - a.y_m) * k / pieces,
                         profile_height(profile, station + length * k / pieces)});
        station += length;
      }
      // An end a hair beyond the profile, by rounding, still has its height.
      const double within = std::abs(station - profile.back().station) < sagitta_ ? profile.back().station : station;
      out.push_back({line[i].x_m, line[i].y_m, profile_height(profile, within)});
    }
    return out;
  }

  void add_line(std::vector<FoundVertex> line, const std::string& layer, const std::string& name,
                const std::string& place, Shape shape) {
    FoundFeature feature;
    feature.shape = shape;
    feature.layer = builder_.layer(layer);
    feature.place = ++number_;
    feature.text = name;
    if (shape == Shape::area && line.size() > 1 && plan(line.front()) == plan(line.back())) line.pop_back();
    builder_.add(std::move(feature), line, place);
  }

  void read_parcels(const Node& section) {
    each(section, "Parcel", [&](const Node& node) {
      const std::string name = node.attribute("name").value();
      const std::string place = "parcel " + as_utf8(name);
      add_line(geometry(child(node, "CoordGeom"), place), "parcels", name, place, Shape::area);
    });
  }

  void read_plan_features(const Node& section) {
    each(section, "PlanFeature", [&](const Node& node) {
      const std::string name = node.attribute("name").value();
      const std::string code = node.attribute("code").value();
      const std::string place = say("plan feature {}", as_utf8(name));
      each(node, "CoordGeom", [&](const Node& geom) {
        add_line(geometry(geom, place), code.empty() ? name : code, name, place, Shape::line);
      });
    });
  }

  void read_networks(const Node& section) {
    each(section, "PipeNetwork", [&](const Node& network) {
      const std::string name = network.attribute("name").value();
      const std::string kind = network.attribute("pipeNetType").value();
      const std::string layer =
          "pipes " + (kind.empty() || name.find(kind) != std::string::npos ? "" : kind + " ") + name;
      std::map<std::string, Node> structures;
      each(child(network, "Structs"), "Struct", [&](const Node& s) {
        structures.emplace(s.attribute("name").value(), s);
        auto v = vertex(child(s, "Center"));
        const std::string place = "structure " + as_utf8(s.attribute("name").value());
        if (!v) return builder_.leave_out(place, "", translated("no place"));
        v->z_m = number_in(s, "elevRim");
        add_line({*v}, "structures " + name, s.attribute("name").value(), place, Shape::point);
      });
      each(child(network, "Pipes"), "Pipe", [&](const Node& pipe) { read_pipe(pipe, structures, layer); });
    });
  }

  void read_pipe(const Node& pipe, const std::map<std::string, Node>& structures, const std::string& layer) {
    const std::string name = pipe.attribute("name").value();
    const std::string place = "pipe " + as_utf8(name);
    std::vector<FoundVertex> line;
    for (const char* which : {"refStart", "refEnd"}) {
      const auto it = structures.find(pipe.attribute(which).value());
      const auto v = it == structures.end() ? std::nullopt : vertex(child(it->second, "Center"));
      if (!v)
        return builder_.leave_out(place, pipe.attribute(which).value(),
                                  translated("a structure that is not in the file"));
      line.push_back({v->x_m, v->y_m, std::nullopt});
      each(it->second, "Invert", [&](const Node& invert) {
        if (name == invert.attribute("refPipe").value()) line.back().z_m = number_in(invert, "elev");
      });
    }
    FoundFeature feature;
    feature.shape = Shape::line;
    feature.layer = builder_.layer(layer);
    feature.place = ++number_;
    feature.text = name;
    feature.level = LevelMeant::invert;
    if (const auto diameter = number_in(child(pipe, "CircPipe"), "diameter")) {
      if (diameter_unit_) feature.diameter_m = *diameter * metres_in(*diameter_unit_);
      if (!diameter_unit_)
        builder_.leave_out(place, say("diameter {:g}", *diameter),
                           translated("the file does not state the unit of diameters"));
    }
    const std::string material = child(pipe, "CircPipe").attribute("material").value();
    if (!material.empty()) builder_.set_attributes({{builder_.field("material"), material}});
    builder_.add(std::move(feature), line, place);
    builder_.set_attributes({});
  }

  void count_unread(const Node& node) {
    static constexpr std::array<std::string_view, 15> known{
        "Units",   "CoordinateSystem", "Project",      "Application",       "CgPoints", "Surfaces",  "Alignments",
        "Parcels", "PlanFeatures",     "PipeNetworks", "FeatureDictionary", "Feature",  "Amendment", "DocFileRef",
        ""};
    const std::string_view name = local_name(node);
    if (std::find(known.begin(), known.end(), name) == known.end())
      builder_.leave_out(translated("whole file"), name, translated("a part of LandXML that is not read"));
  }

  using Section = void (Reader::*)(const Node&);
  static constexpr std::pair<std::string_view, Section> sections[] = {{"CgPoints", &Reader::read_points},
                                                                      {"Surfaces", &Reader::read_surfaces},
                                                                      {"Alignments", &Reader::read_alignments},
                                                                      {"Parcels", &Reader::read_parcels},
                                                                      {"PlanFeatures", &Reader::read_plan_features},
                                                                      {"PipeNetworks", &Reader::read_networks}};

  Node root_;
  FoundBuilder builder_;
  std::map<std::string, FoundVertex> named_;
  std::optional<FileUnit> diameter_unit_;
  double sagitta_ = 0.01;
  std::uint32_t number_ = 0;
};

}  // namespace

namespace {

Result<Found> found_in(const pugi::xml_document& document, const pugi::xml_parse_result& parsed,
                       const ReadOptions& options) {
  // As any other want of memory: the process that reads says so in its own way.
  if (parsed.status == pugi::status_out_of_memory) throw std::bad_alloc();
  if (!parsed)
    return fail(translated("file"), say("{} at byte {}", parsed.description(), parsed.offset),
                translated("a whole LandXML file"));
  for (const Node& root : document.children())
    if (local_name(root) == "LandXML") return Reader(root, options).run();
  return fail(translated("file"), as_utf8(document.document_element().name()), "LandXML");
}

}  // namespace

Result<Found> read_landxml(const std::string& path, const ReadOptions& options) {
  pugi::xml_document document;
  const pugi::xml_parse_result parsed = document.load_file(path.c_str());
  return found_in(document, parsed, options);
}

Result<Found> read_landxml_text(std::string_view text, const ReadOptions& options) {
  pugi::xml_document document;
  const pugi::xml_parse_result parsed = document.load_buffer(text.data(), text.size());
  return found_in(document, parsed, options);
}

}  // namespace burrow
