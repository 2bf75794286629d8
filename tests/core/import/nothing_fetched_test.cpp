// Foreign files ask for nothing from the network and name no file to be opened.
#include <arpa/inet.h>
#include <gmock/gmock.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include "readers/readers.h"
#include "support/import_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

/// A server on this machine that nobody may call.
class Loopback {
 public:
  Loopback() : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    socklen_t size = sizeof address;
    open = ::bind(socket_, reinterpret_cast<const sockaddr*>(&address), size) == 0 && ::listen(socket_, 8) == 0 &&
           ::getsockname(socket_, reinterpret_cast<sockaddr*>(&address), &size) == 0;
    url = "http://127.0.0.1:" + std::to_string(ntohs(address.sin_port)) + "/crs";
  }
  ~Loopback() { ::close(socket_); }
  Loopback(const Loopback&) = delete;
  Loopback& operator=(const Loopback&) = delete;
  [[nodiscard]] bool called() const {
    pollfd one{socket_, POLLIN, 0};
    return ::poll(&one, 1, 50) > 0;
  }
  bool open = false;
  std::string url;

 private:
  int socket_;
};

class NothingFetched : public WithFolder {};

TEST_F(NothingFetched, GeoJson_SystemByAddressIsRefused) {
  const Loopback server;
  ASSERT_TRUE(server.open);
  const std::string lines =
      R"("features":[{"type":"Feature","properties":{},"geometry":{"type":"LineString","coordinates":[[1,2],[3,4]]}}]})";
  const auto with = [&](const std::string& crs) {
    write("a.geojson", R"({"type":"FeatureCollection","crs":)" + crs + "," + lines);
    return read_here(path("a.geojson"), {});
  };
  for (const std::string& crs : {R"({"type":"url","properties":{"url":")" + server.url + R"("}})",
                                 R"({"type":"URL","properties":{"url":")" + server.url + R"("}})",
                                 R"({"type":"link","properties":{"href":")" + server.url + R"(","type":"ogcwkt"}})",
                                 R"({"type":"link","properties":{"href":")" + server.url + R"("}})"}) {
    const Result<Found> found = with(crs);
    ASSERT_FALSE(found) << crs;
    EXPECT_THAT(found.error().expected.english(), HasSubstr("nothing is fetched")) << crs;
    EXPECT_FALSE(server.called()) << crs;
  }
  const Result<Found> named = with(R"({"type":"name","properties":{"name":"urn:ogc:def:crs:EPSG::25832"}})");
  ASSERT_TRUE(named);
  EXPECT_EQ(named->frame.crs, "EPSG:25832");
  // A name that is an address or a file is no name.
  for (const std::string& name : {server.url, path("evil.wkt"), std::string("+proj=longlat +nadgrids=/etc/passwd")}) {
    const Result<Found> found = with(R"({"type":"name","properties":{"name":")" + name + R"("}})");
    EXPECT_FALSE(server.called()) << name;
    if (found) {
      EXPECT_THAT(found->frame.crs, ::testing::Not(HasSubstr("grids"))) << name;
    }
  }
}

TEST_F(NothingFetched, System_NamesNoFile) {
  const Result<const Readers*> readers = load_readers();
  ASSERT_TRUE(readers);
  const auto project = [&](const std::string& crs) {
    std::vector<PlanPoint> points{{500001, 5540001}};
    return (*readers)->project(crs, {"EPSG:25832", 500000, 5540000}, points);
  };
  for (const char* good : {"EPSG:25832", "epsg:25832", "urn:ogc:def:crs:EPSG::25832", "EPSG:25832+7837"})
    EXPECT_TRUE(project(good)) << good;
  write("grid.gsb", "a grid");
  const std::string grid = path("grid.gsb");
  for (const std::string& bad :
       {"+proj=longlat +ellps=bessel +nadgrids=" + grid + " +type=crs", "+init=" + grid, "/" + grid, std::string(),
        std::string("@epsg"), std::string(R"({"type":"GeographicCRS"})"),
        "GEOGCS[\"x\",DATUM[\"d\",SPHEROID[\"s\",6377397,299]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.017453],"
        "EXTENSION[\"PROJ4\",\"+proj=longlat +nadgrids=" +
            grid + "\"]]",
        "BOUNDCRS[SOURCECRS[GEOGCRS[\"x\"]],TARGETCRS[GEOGCRS[\"y\"]],ABRIDGEDTRANSFORMATION[\"t\",METHOD[\"NTv2\"],"
        "PARAMETERFILE[\"Latitude and longitude difference file\",\"" +
            grid + "\"]]]"}) {
    const auto done = project(bad);
    ASSERT_FALSE(done) << bad;
    EXPECT_THAT(done.error().expected.english(), HasSubstr("EPSG:25832")) << bad;
  }
}

}  // namespace
}  // namespace burrow::test
