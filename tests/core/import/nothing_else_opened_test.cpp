// All readers under a trace of their system calls (strace): no socket, no other program, and once confined no file
// opened but the given one, its companions, and what belongs to the libraries. Good files of each kind, and files that
// would have others opened. What cannot be done is tried once more from inside.

#include <fcntl.h>
#include <gmock/gmock.h>
#include <linux/landlock.h>
#include <poll.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <regex>
#include <set>
#include <sstream>

#include "beside_program.h"
#include "child/confine.h"
#include "companions.h"
#include "reader_process.h"
#include "support/kinds_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

struct Call {
  std::string name, arguments, path;
  bool done = false;  ///< false: refused, or nothing there
  std::string line;
};

class NothingElseOpened : public WithFolder {
 protected:
  /// The calls of a process that answers that request.
  std::vector<Call> traced(const ReaderRequest& request) {
    const auto reader = beside_program("burrowline-reader");
    EXPECT_FALSE(reader.empty());
    const std::string log = path("trace.log");
    std::filesystem::remove(log);
    // The tracer stands aside (-D): the reader is still the child of the one that asks.
    const std::string program = write("traced.sh", "#!/bin/sh\nexec strace -D -f -q -s 4096 -o '" + log +
                                                       "' -e trace=%file,%network,%process,io_uring_setup,"
                                                       "open_by_handle_at,seccomp,landlock_restrict_self '" +
                                                       reader.front().string() + "'\n");
    std::filesystem::permissions(program, std::filesystem::perms::owner_all);
    answer_ = ask_reader(program, request, {});
    return calls_in(log);
  }

  std::vector<Call> traced(const std::string& file) { return traced(request_for(file, {})); }

  /// Holds the calls to what a reader may do; returns how many files were opened.
  std::size_t expect_harmless(const std::vector<Call>& calls, const std::string& file) {
    static const std::set<std::string> of_the_network{
        "socket",  "socketpair", "connect",  "bind",    "listen",   "accept",         "accept4",          "sendto",
        "sendmsg", "sendmmsg",   "recvfrom", "recvmsg", "recvmmsg", "io_uring_setup", "open_by_handle_at"};
    static const std::set<std::string> of_processes{"execve", "execveat", "fork", "vfork", "clone", "clone3"};
    const std::vector<std::string> own = with_companions(file);
    bool confined = false, started = false;
    std::size_t opened = 0;
    for (const Call& call : calls) {
      EXPECT_FALSE(of_the_network.contains(call.name)) << call.line;
      EXPECT_THAT(call.line, Not(HasSubstr("secret"))) << file;
      if (of_processes.contains(call.name)) {
        EXPECT_TRUE(!started && call.name == "execve") << call.line;
        started = true;
      }
      confined = confined || (call.name == "seccomp" && call.done && call.line.find("FILTER,") != std::string::npos);
      if (!call.done || (!call.name.starts_with("open") && call.name != "creat")) continue;
      ++opened;
      EXPECT_TRUE(call.name != "creat" && call.line.find("O_WRONLY") == std::string::npos &&
                  call.line.find("O_RDWR") == std::string::npos && call.line.find("O_CREAT") == std::string::npos)
          << call.line;
      const bool of_file = std::find(own.begin(), own.end(), call.path) != own.end();
      if (confined) {
        EXPECT_TRUE(of_file || of_libraries(call.path)) << file << ": " << call.line;
      } else {
        EXPECT_FALSE(call.path.starts_with(folder_) && !of_file) << call.line;
      }
    }
    EXPECT_TRUE(started && confined) << file << ": no trace, or not confined";
    return opened;
  }

  /// A layer that is a view which calls for a library and a file, and a trigger that would attach another database.
  static void spoil(const std::string& database, const std::string& words) {
    GDALDatasetH data = GDALOpenEx(database.c_str(), GDAL_OF_VECTOR | GDAL_OF_UPDATE, nullptr, nullptr, nullptr);
    ASSERT_NE(data, nullptr);
    for (const std::string& statement :
         {"CREATE VIEW evil AS SELECT fid, geom, load_extension('" + words + "') AS kind FROM mains",
          "CREATE VIEW worse AS SELECT fid, geom, readfile('" + words + "') AS kind FROM mains",
          std::string("INSERT INTO gpkg_contents(table_name,identifier,data_type,srs_id) "
                      "VALUES('evil','evil','features',25832),('worse','worse','features',25832)"),
          std::string("INSERT INTO gpkg_geometry_columns VALUES('evil','geom','LINESTRING',25832,1,0),"
                      "('worse','geom','LINESTRING',25832,1,0)"),
          "UPDATE gpkg_spatial_ref_sys SET organization='NONE', definition='+proj=longlat +ellps=bessel +nadgrids=" +
              words + "' WHERE srs_id=25832",
          "CREATE TRIGGER look AFTER INSERT ON mains BEGIN SELECT load_extension('" + words + "'); END"})
      GDALDatasetReleaseResultSet(data, GDALDatasetExecuteSQL(data, statement.c_str(), nullptr, nullptr));
    GDALClose(data);
  }

  Result<ReaderAnswer> answer_ = fail("", "", "");

 private:
  static bool of_libraries(const std::string& path) {
    for (const char* place : {"/usr/", "/lib/", "/lib64/", "/proc/self/", "/proc/sys/vm/", "/sys/devices/system/cpu"})
      if (path.starts_with(place)) return true;
    return path == "/etc/ld.so.cache" || path == "/etc/localtime" || path == "/dev/urandom" || path == "/dev/null";
  }

  static std::string text_of(const std::string& log) {
    std::ifstream in(log);
    return {std::istreambuf_iterator<char>(in), {}};
  }

  static std::vector<Call> calls_in(const std::string& log) {
    std::string text;
    for (int moment = 0; moment < 3000 && text.find("+++") == std::string::npos; ++moment) {
      ::poll(nullptr, 0, 10);  // the tracer writes its last line after the process has ended
      text = text_of(log);
    }
    static const std::regex form(R"(^\d+ +(\w+)\((.*)\) += (-?\w+).*$)");
    static const std::regex quoted(R"re("((?:[^"\\]|\\.)*)")re");
    std::vector<Call> calls;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
      std::smatch parts, first;
      if (!std::regex_match(line, parts, form)) continue;
      Call call{parts[1], parts[2], {}, parts[3].str()[0] != '-', line};
      if (std::regex_search(call.arguments, first, quoted)) call.path = first[1];
      calls.push_back(std::move(call));
    }
    return calls;
  }
};

TEST_F(NothingElseOpened, EveryKind) {
  for (const std::string& file : write_every_kind(folder_)) {
    const std::vector<Call> calls = traced(file);
    ASSERT_TRUE(answer_) << file << ": " << answer_.error().english();
    EXPECT_GT(expect_harmless(calls, file), 0u) << file;
    const auto opened = [&](const std::string& name) {
      return std::any_of(calls.begin(), calls.end(), [&](const Call& c) { return c.done && c.path == name; });
    };
    EXPECT_TRUE(opened(file) || file.ends_with(".gdb")) << "the trace does not see what it must";
    if (file.ends_with(".shp")) {
      EXPECT_TRUE(opened(path("e.dbf")) && opened(path("e.prj")));
    }
    if (!file.ends_with(".tif")) continue;
    ReaderRequest request = request_for(file, {});
    request.raster = answer_->found->rasters.at(0);
    request.points = {{500015, 5540085}};
    const std::vector<Call> of_heights = traced(request);
    ASSERT_TRUE(answer_) << answer_.error().english();
    expect_harmless(of_heights, file);
  }
}

// Each names a file or an address that must not even be asked for. Whether the rest is read does not matter here.
TEST_F(NothingElseOpened, Traps) {
  const auto good = write_every_kind(folder_);
  write("secret.gsb", "a grid");
  write("secret.txt", "words");
  const std::string grid = path("secret.gsb"), words = path("secret.txt"), address = "http://127.0.0.1:9/secret";
  const std::string features =
      R"("features":[{"type":"Feature","properties":{},"geometry":{"type":"LineString","coordinates":[[1,2],[3,4]]}}]})";
  std::vector<std::string> traps;
  const auto trap = [&](const std::string& name, const std::string& text) { traps.push_back(write(name, text)); };
  const auto with_crs = [&](const std::string& crs) {
    trap("crs" + std::to_string(traps.size()) + ".geojson",
         R"({"type":"FeatureCollection","crs":)" + crs + "," + features);
  };
  with_crs(R"({"type":"url","properties":{"url":")" + address + R"("}})");
  with_crs(R"({"type":"link","properties":{"href":")" + address + R"(","type":"ogcwkt"}})");
  for (const std::string& name : {address, words, "+proj=longlat +nadgrids=" + grid, "+init=" + words + ":1",
                                  "+proj=pipeline +step +proj=hgridshift +grids=" + grid})
    with_crs(R"({"type":"name","properties":{"name":")" + name + R"("}})");
  trap("escaped.geojson",
       R"({"type":"FeatureCollection","\u0063RS":{"type":"name","properties":{"name":"\u002bproj=longlat )"
       R"(+nadgrids=)" +
           grid + R"("}},)" + features);
  trap("inside.geojson",
       R"({"type":"LineString","coordinates":[[1,2],[3,4]],"crs":{"type":"name","properties":{"name":)"
       R"("+proj=longlat +nadgrids=)" +
           grid + R"("}}})");
  // A drawing with another drawing, a picture and a font in it.
  std::string outside = pair(0, "BLOCK") + pair(8, "0") + pair(2, "X") + pair(70, "4") + pair(10, "0") + pair(20, "0") +
                        pair(30, "0") + pair(3, "X") + pair(1, path("secret.dxf")) + pair(0, "ENDBLK");
  write("secret.dxf", drawing("6", drawing_line("GAS", 0, 0, 1, 5, 5, 1)));
  trap("xref.dxf", drawing("6",
                           insert("X", 0, 0) + drawing_line("GAS", 0, 0, 1, 5, 5, 1) + pair(0, "IMAGE") + pair(8, "0") +
                               pair(1, path("secret.tif")),
                           outside));
  std::filesystem::copy_file(path("k.tif"), path("secret.tif"));
  const std::string virtual_grid = R"(<VRTDataset rasterXSize="20" rasterYSize="20"><VRTRasterBand dataType="Float64" )"
                                   R"(band="1"><SimpleSource><SourceFilename>)" +
                                   path("secret.tif") + "</SourceFilename></SimpleSource></VRTRasterBand></VRTDataset>";
  for (const char* name : {"vrt.tif", "vrt.xml", "vrt.geojson", "vrt.kml"}) trap(name, virtual_grid);
  trap("schema.gml",
       "<a:FeatureCollection xmlns:a='http://ogr.maptools.org/' xmlns:gml='http://www.opengis.net/gml' "
       "xmlns:xlink='http://www.w3.org/1999/xlink' xmlns:xsi='http://www.w3.org/2001/XMLSchema-instance' "
       "xsi:schemaLocation='http://ogr.maptools.org/ " +
           address + ".xsd b " + words + "'><gml:featureMember><a:gas><a:g xlink:href='" + address +
           "#x'><gml:Point><gml:coordinates>1,2</gml:coordinates></gml:Point></a:g></a:gas>"
           "</gml:featureMember></a:FeatureCollection>");
  trap("seamless.tab",
       "!table\n!version 300\n!charset WindowsLatin1\nDefinition Table\n  Type NATIVE Charset "
       "\"WindowsLatin1\"\n  File \"" +
           words + "\"\n  Fields 1\n    a Char (10) ;\n");
  trap("vrt.shp", "<OGRVRTDataSource><OGRVRTLayer name='a'><SrcDataSource>" + path("secret.dxf") +
                      "</SrcDataSource></OGRVRTLayer></OGRVRTDataSource>");
  // External entities.
  const std::string entity = "<?xml version='1.0'?><!DOCTYPE a [<!ENTITY e SYSTEM 'file://" + words +
                             "'><!ENTITY % p SYSTEM '" + address + "'> %p;]>";
  trap("xxe.xml", entity + "<LandXML><CgPoints><CgPoint name='&e;'>1 2 3</CgPoint></CgPoints></LandXML>");
  trap("xxe.kml", entity +
                      "<kml><Document><Placemark><name>&e;</name><Point><coordinates>9,50,1</coordinates></Point>"
                      "</Placemark></Document></kml>");
  trap("links.kml", R"(<kml xmlns="http://www.opengis.net/kml/2.2"><Document><NetworkLink><Link><href>)" + address +
                        "</href></Link></NetworkLink><NetworkLink><Link><href>" + path("secret.kml") +
                        "</href></Link></NetworkLink><Schema id='s' parent='" + words + "'/><Placemark><styleUrl>" +
                        address +
                        "#a</styleUrl><Point><coordinates>9,50,1</coordinates></Point></Placemark></Document>"
                        "</kml>");
  // Systems of companions that name a grid.
  const std::string wkt = R"(GEOGCS["x",DATUM["d",SPHEROID["s",6377397,299]],PRIMEM["Greenwich",0],UNIT["degree",)"
                          R"(0.0174532925199433],EXTENSION["PROJ4","+proj=longlat +ellps=bessel +nadgrids=)" +
                          grid + R"( +no_defs"]])";
  for (const std::string& system : {wkt, "+proj=longlat +ellps=bessel +nadgrids=" + grid, "+init=" + words + ":1"}) {
    const std::string name = "prj" + std::to_string(traps.size());
    for (const char* ending : {".shp", ".shx", ".dbf"})
      std::filesystem::copy_file(path(std::string("e") + ending), path(name + ending));
    write(name + ".prj", system);
    traps.push_back(path(name + ".shp"));
    trap(name + ".asc", bytes_in(path("l.asc")));
  }
  // Files beside a grid that libraries like to look into.
  std::filesystem::copy_file(path("k.tif"), path("beside.tif"));
  std::filesystem::copy_file(path("k.tif"), path("beside.tif.ovr"));
  std::filesystem::copy_file(path("k.tif"), path("beside.tif.msk"));
  write("beside.tif.aux.xml", "<PAMDataset><Metadata/></PAMDataset>");
  traps.push_back(path("beside.tif"));
  // A database with a view and triggers that call what opens files.
  std::filesystem::copy_file(path("g.gpkg"), path("view.gpkg"));
  spoil(path("view.gpkg"), words);
  traps.push_back(path("view.gpkg"));
  zip(path("up.zip"), {{"../secret.geojson", bytes_in(path("d.geojson"))},
                       {"vsicurl/" + address + "/a.geojson", bytes_in(path("d.geojson"))},
                       {"d.geojson", bytes_in(path("d.geojson"))}});
  traps.push_back(path("up.zip"));
  for (const std::string& file : traps) {
    const std::vector<Call> calls = traced(file);
    expect_harmless(calls, file);
    if (!answer_) {
      EXPECT_THAT(answer_.error().found.english(), Not(HasSubstr("breaks down"))) << file;
    }
  }
  EXPECT_GT(traps.size(), 20u);
}

/// Tries from inside; 0 where all was refused, else the number of what was let through.
int tries_all(const std::string& given, const std::string& other) {
  if (!confine({100'000'000, 10, {given}})) return 1;
  if (::open(given.c_str(), O_RDONLY) < 0) return 2;
  if (::open(given.c_str(), O_RDWR) >= 0 || ::open(given.c_str(), O_WRONLY | O_APPEND) >= 0) return 3;
  if (::open((given + ".new").c_str(), O_WRONLY | O_CREAT, 0600) >= 0) return 4;
  if (::unlink(given.c_str()) == 0 || ::rename(given.c_str(), other.c_str()) == 0) return 5;
  if (::truncate(given.c_str(), 0) == 0 || ::chmod(given.c_str(), 0777) == 0) return 6;
  for (const int family : {AF_INET, AF_INET6, AF_UNIX, AF_NETLINK})
    if (::socket(family, SOCK_STREAM, 0) >= 0 || ::socket(family, SOCK_DGRAM, 0) >= 0) return 7;
  if (const pid_t child = ::fork(); child >= 0) {
    if (child == 0) ::_exit(0);
    return 8;
  }
  char name[] = "/bin/true";
  char* words[] = {name, nullptr};
  ::execv(name, words);
  if (::kill(::getppid(), 0) == 0) return 9;
  if (::open(other.c_str(), O_RDONLY) >= 0 && ::syscall(SYS_landlock_create_ruleset, nullptr, 0, 1) > 0) return 10;
  const rlimit more{RLIM_INFINITY, RLIM_INFINITY};
  if (::setrlimit(RLIMIT_CPU, &more) == 0) return 11;
  rlimit most{};
  if (::getrlimit(RLIMIT_CORE, &most) != 0 || most.rlim_max != 0) return 12;
  return 0;
}

class Confined : public WithFolder {};

TEST_F(Confined, RefusesAllButReading) {
  const std::string given = write("given.csv", "1"), other = write("other.csv", "2");
  const pid_t child = ::fork();
  if (child == 0) ::_exit(tries_all(given, other));
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_TRUE(WIFEXITED(status)) << status;
  EXPECT_EQ(WEXITSTATUS(status), 0);
  EXPECT_EQ(bytes_in(given), "1");
}

}  // namespace
}  // namespace burrow::test
