#include <cpl_vsi.h>
#include <fmt/format.h>
#include <gdal_alg.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "../csv_fields.h"
#include "burrow/language/say.h"
#include "gdal_tools.h"

namespace burrow::gdal {

namespace {

constexpr std::array<const char*, 3> raster_drivers{"GTiff", "AAIGrid", nullptr};

/// Turns stored values into heights; none where the grid has no data.
struct Band {
  GDALRasterBandH handle = nullptr;
  std::optional<double> no_data;
  double scale = 1;
  double offset = 0;

  explicit Band(GDALRasterBandH band) : handle(band) {
    int given = 0;
    const double value = GDALGetRasterNoDataValue(band, &given);
    if (given) no_data = value;
    const double s = GDALGetRasterScale(band, &given);
    if (given) scale = s;
    const double o = GDALGetRasterOffset(band, &given);
    if (given) offset = o;
  }

  [[nodiscard]] std::optional<double> height(double stored) const {
    if (!std::isfinite(stored) || (no_data && stored == *no_data)) return std::nullopt;
    const double z = stored * scale + offset;
    if (!(std::abs(z) <= 1e5)) return std::nullopt;  // a mark for no data that the file does not declare
    return z;
  }
};

/// A text grid that begins with empty lines is read from where it begins.
std::string from_its_begin(const std::string& path) {
  VSILFILE* in = VSIFOpenL(path.c_str(), "rb");
  if (!in) return path;
  std::array<char, 4096> some{};
  const std::string_view head(some.data(), VSIFReadL(some.data(), 1, some.size(), in));
  VSIFCloseL(in);
  const std::size_t at = head.find_first_not_of(" \t\r\n");
  if (at == 0 || at == std::string_view::npos || head.substr(0, at).find('\n') == std::string_view::npos) return path;
  return fmt::format("/vsisubfile/{},{}", at, path);
}

/// A grid that claims more than anybody wants, or than its file can hold.
std::optional<Error> no_true_size(const std::string& path, const FoundRaster& raster, const ReadOptions& options) {
  const double cells = static_cast<double>(raster.columns) * raster.rows;
  if (!(cells <= options.most_cells))
    return Error{translated("file"), say("{} by {} cells", raster.columns, raster.rows),
                 say("at most {:g} cells: a part of the grid near the crossing", options.most_cells)};
  VSIStatBufL about{};
  const bool known = VSIStatL(path.c_str(), &about) == 0;
  // Packed as tightly as grids are, a byte holds some thousand cells; as text it holds half of one.
  const bool is_text = !csv::lower(path).ends_with(".tif") && !csv::lower(path).ends_with(".tiff");
  const double most_in_file = static_cast<double>(about.st_size) * (is_text ? 1 : 4096) + 4096;
  if (known && cells > most_in_file)
    return Error{translated("file"),
                 say("{} by {} cells claimed by {} bytes", raster.columns, raster.rows, about.st_size),
                 translated("a whole grid of heights")};
  return std::nullopt;
}

std::optional<FileUnit> unit_from_text(std::string_view text) {
  if (text == "m" || text == "metre" || text == "meter") return FileUnit::metre;
  if (text == "ft" || text == "foot" || text == "feet") return FileUnit::foot;
  if (text == "US survey foot" || text == "us-ft" || text == "ftUS") return FileUnit::us_survey_foot;
  return std::nullopt;
}

}  // namespace

Result<Found> read_raster(const std::string& path, const ReadOptions& options) {
  set_up();
  const Listener listener;
  const DataSet data(GDALOpenEx(from_its_begin(path).c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, raster_drivers.data(),
                                nullptr, nullptr));
  if (!data.get())
    return fail(translated("file"), translated("something else than its name says, or a file cut short"),
                translated("a grid of heights (GeoTIFF or ASCII grid)"));
  FoundRaster raster;
  raster.path = path;
  raster.columns = GDALGetRasterXSize(data.get());
  raster.rows = GDALGetRasterYSize(data.get());
  const int bands = GDALGetRasterCount(data.get());
  if (raster.columns < 1 || raster.rows < 1 || bands != 1)
    return fail(
        translated("file"),
        say_count("{} band of {} by {} cells", "{} bands of {} by {} cells", bands, raster.columns, raster.rows),
        translated("one band of heights; a picture has several"));
  if (auto no = no_true_size(path, raster, options)) return tl::unexpected(*no);
  if (GDALGetGeoTransform(data.get(), raster.to_plan.data()) != CE_None)
    return fail(translated("file"), translated("a grid that does not say where it lies"),
                translated("a grid with its place"));
  const auto& t = raster.to_plan;
  const bool finite = std::all_of(t.begin(), t.end(), [](double v) { return std::abs(v) <= largest_coordinate; });
  if (!finite || !(std::abs(t[1] * t[5] - t[2] * t[4]) > 1e-18))
    return fail(translated("file"), translated("a grid whose cells have no size"), translated("a grid with its place"));
  const Band band(GDALGetRasterBand(data.get(), 1));

  // A sparse look over the whole, for the least and the greatest height.
  const int columns = std::min(raster.columns, 128);
  const int rows = std::min(raster.rows, 128);
  std::vector<double> some(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
  if (GDALRasterIO(band.handle, GF_Read, 0, 0, raster.columns, raster.rows, some.data(), columns, rows, GDT_Float64, 0,
                   0) != CE_None)
    return fail(translated("file"), translated("a grid cut short"), translated("a whole grid of heights"));
  for (const double stored : some)
    if (const auto z = band.height(stored)) {
      raster.least_z = std::min(raster.least_z.value_or(*z), *z);
      raster.most_z = std::max(raster.most_z.value_or(*z), *z);
    }
  if (!raster.least_z || (*raster.least_z == 0 && *raster.most_z == 0))
    return fail(translated("file"), translated("no height, or 0, in the whole grid"), translated("a grid of heights"));

  FoundBuilder builder(options, translated("grid of heights"));
  const std::size_t slash = path.find_last_of('/');
  raster.layer = builder.layer(path.substr(slash == std::string::npos ? 0 : slash + 1));
  describe(GDALGetSpatialRef(data.get()), builder.found.frame);
  if (const char* unit = GDALGetRasterUnitType(band.handle); unit && !builder.found.frame.height_unit)
    builder.found.frame.height_unit = unit_from_text(unit);
  builder.found.rasters.push_back(std::move(raster));
  if (auto error = builder.check_cancelled(1)) return tl::unexpected(*error);
  return builder.finish();
}

Result<std::vector<std::optional<double>>> heights(const FoundRaster& raster, const std::vector<PlanPoint>& points) {
  set_up();
  const Listener listener;
  const DataSet data(GDALOpenEx(from_its_begin(raster.path).c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY,
                                raster_drivers.data(), nullptr, nullptr));
  if (!data.get() || GDALGetRasterXSize(data.get()) != raster.columns || GDALGetRasterYSize(data.get()) != raster.rows)
    return fail(raster.path, translated("another grid than before"), translated("the grid that was read"));
  const Band band(GDALGetRasterBand(data.get(), 1));
  const auto& t = raster.to_plan;
  const double determinant = t[1] * t[5] - t[2] * t[4];
  std::vector<std::optional<double>> all;
  all.reserve(points.size());
  for (const PlanPoint& p : points) {
    const double dx = p.x_m - t[0], dy = p.y_m - t[3];
    const double column = (t[5] * dx - t[2] * dy) / determinant;
    const double row = (t[1] * dy - t[4] * dx) / determinant;
    all.emplace_back();
    if (!(column >= 0 && column <= raster.columns && row >= 0 && row <= raster.rows)) continue;
    // A height belongs to the middle of its cell; within half a cell of the rim the outermost holds.
    const double u = std::clamp(column - 0.5, 0.0, raster.columns - 1.0);
    const double v = std::clamp(row - 0.5, 0.0, raster.rows - 1.0);
    const int i = std::min(static_cast<int>(u), std::max(0, raster.columns - 2));
    const int j = std::min(static_cast<int>(v), std::max(0, raster.rows - 2));
    const int wide = std::min(2, raster.columns), high = std::min(2, raster.rows);
    std::array<double, 4> stored{};
    if (GDALRasterIO(band.handle, GF_Read, i, j, wide, high, stored.data(), wide, high, GDT_Float64, 0, 16) != CE_None)
      return fail(raster.path, translated("a grid cut short"), translated("a whole grid of heights"));
    const auto at = [&](int c, int r) {
      return band.height(stored[static_cast<std::size_t>(std::min(r, high - 1) * 2 + std::min(c, wide - 1))]);
    };
    const auto z00 = at(0, 0), z10 = at(1, 0), z01 = at(0, 1), z11 = at(1, 1);
    if (!z00 || !z10 || !z01 || !z11) continue;
    const double fu = u - i, fv = v - j;
    all.back() = (1 - fv) * ((1 - fu) * *z00 + fu * *z10) + fv * ((1 - fu) * *z01 + fu * *z11);
  }
  return all;
}

/// All within a millionth of their extent of one line, or fewer than three.
static bool on_one_line(const std::vector<PlanPoint>& points) {
  if (points.size() < 3) return true;
  const PlanPoint& first = points.front();
  const auto away = [&](const PlanPoint& p) { return std::hypot(p.x_m - first.x_m, p.y_m - first.y_m); };
  const auto far = *std::max_element(points.begin(), points.end(), [&](auto& a, auto& b) { return away(a) < away(b); });
  const double length = away(far);
  if (!(length > 0)) return true;
  return std::all_of(points.begin(), points.end(), [&](const PlanPoint& p) {
    const double off = (far.x_m - first.x_m) * (p.y_m - first.y_m) - (far.y_m - first.y_m) * (p.x_m - first.x_m);
    return std::abs(off) <= 1e-6 * length * length;
  });
}

Result<std::vector<std::array<std::uint32_t, 3>>> triangles(const std::vector<PlanPoint>& points) {
  set_up();
  const Listener listener;
  std::vector<double> x, y;
  for (const PlanPoint& p : points) {
    x.push_back(p.x_m);
    y.push_back(p.y_m);
  }
  // Asked beforehand: the library would write its thoughts about such points to the terminal.
  GDALTriangulation* triangulation =
      on_one_line(points) ? nullptr
                          : GDALTriangulationCreateDelaunay(static_cast<int>(points.size()), x.data(), y.data());
  if (!triangulation)
    return fail(translated("ground points"), say_count("{} point on one line", "{} points on one line", points.size()),
                translated("three points that are not"));
  std::vector<std::array<std::uint32_t, 3>> all;
  for (int i = 0; i < triangulation->nFacets; ++i) {
    const auto& corners = triangulation->pasFacets[i].anVertexIdx;
    all.push_back({static_cast<std::uint32_t>(corners[0]), static_cast<std::uint32_t>(corners[1]),
                   static_cast<std::uint32_t>(corners[2])});
  }
  GDALTriangulationFree(triangulation);
  return all;
}

}  // namespace burrow::gdal
