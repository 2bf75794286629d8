#pragma once
/// A small good file of each kind that is read.

#include <cpl_conv.h>
#include <cpl_vsi.h>

#include "support/import_for_tests.h"

namespace burrow::test {

inline void zip(const std::string& archive, const std::vector<std::pair<std::string, std::string>>& files) {
  // One archive is open for writing throughout, else each entry would replace those before.
  VSILFILE* whole = VSIFOpenL(("/vsizip/" + archive).c_str(), "wb");
  for (const auto& [name, text] : files) {
    VSILFILE* out = VSIFOpenL(("/vsizip/" + archive + "/" + name).c_str(), "wb");
    ASSERT_NE(out, nullptr) << name;
    VSIFWriteL(text.data(), 1, text.size(), out);
    VSIFCloseL(out);
  }
  VSIFCloseL(whole);
}

inline std::string bytes_in(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Their paths; companions stand beside.
inline std::vector<std::string> write_every_kind(const std::string& folder) {
  const auto at = [&](const char* name) { return folder + "/" + name; };
  const auto write = [&](const char* name, const std::string& text) {
    std::ofstream(at(name), std::ios::binary) << text;
  };
  const std::vector<std::vector<Point3>> map{{{500010, 5540020, 101.5}, {500020, 5540030, 101.25}}};
  const std::vector<std::vector<Point3>> degrees{{{9.0001, 50.0002, 101.5}, {9.0002, 50.0003, 101.25}}};
  write("a.csv", "1,5540000.5,500000.25,100.5,GND\n2,5540001,500001,100.25,KERB left\nbroken\n");
  write("b.txt", "point;north;east;height\n7;5540000,5;500000,25;100,5\n");
  write("c.dxf", drawing("6", drawing_line("GAS", 0.5, 0.25, 101.5, 5.75, 5, 102) + insert("A", 10, 20),
                         block("A", drawing_line("0", 0, 0, 0, 1, 0, 0))));
  write_lines("GeoJSON", at("d.geojson"), 4326, degrees);
  write_lines("ESRI Shapefile", at("e.shp"), 25832, map);
  zip(at("f.zip"), {{"e.shp", bytes_in(at("e.shp"))},
                    {"e.shx", bytes_in(at("e.shx"))},
                    {"e.dbf", bytes_in(at("e.dbf"))},
                    {"e.prj", bytes_in(at("e.prj"))}});
  write_lines("GPKG", at("g.gpkg"), 25832, map);
  write_lines("LIBKML", at("h.kml"), 4326, degrees);
  write_lines("LIBKML", at("i.kmz"), 4326, degrees);
  write("j.xml",
        "<LandXML><Units><Metric linearUnit='meter'/></Units><CgPoints><CgPoint name='1'>1 2 3</CgPoint></CgPoints>"
        "<Surfaces><Surface name='EG'><Definition><Pnts><P id='1'>0 0 5</P><P id='2'>0 10 6</P><P id='3'>10 0 7</P>"
        "</Pnts><Faces><F>1 2 3</F></Faces></Definition></Surface></Surfaces></LandXML>");
  write_grid(at("k.tif"), 25832, 500000, 5540100, 10, 20, {100, 1e-3, 0});
  write("l.asc", "ncols 3\nnrows 2\nxllcorner 500000\nyllcorner 5540000\ncellsize 10\n1 2 3\n4 5 6\n");
  write("l.prj", bytes_in(at("e.prj")));
  write("n.gpx",
        "<?xml version=\"1.0\"?><gpx version=\"1.1\" creator=\"t\" "
        "xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>edge"
        "</name><trkseg><trkpt lat=\"50\" lon=\"9\"><ele>101.5</ele></trkpt><trkpt lat=\"50.001\" "
        "lon=\"9\"><ele>102</ele>"
        "</trkpt></trkseg></trk></gpx>");
  write_lines("FlatGeobuf", at("o.fgb"), 25832, map);
  zip(at("m.zip"), {{"k.tif", bytes_in(at("k.tif"))}});
  write_lines("GML", at("p.gml"), 25832, map);
  write_lines("MapInfo File", at("q.tab"), 25832, map, false);
  write_lines("MapInfo File", at("r.mif"), 25832, map, false);
  write_lines("OpenFileGDB", at("s.gdb"), 25832, map);
  std::vector<std::string> all;
  for (const char* name : {"a.csv", "b.txt", "c.dxf", "d.geojson", "e.shp", "f.zip", "g.gpkg", "h.kml", "i.kmz",
                           "j.xml", "k.tif", "l.asc", "m.zip", "n.gpx", "o.fgb", "p.gml", "q.tab", "r.mif", "s.gdb"})
    all.push_back(at(name));
  return all;
}

}  // namespace burrow::test
