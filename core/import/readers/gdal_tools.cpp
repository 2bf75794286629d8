#include "gdal_tools.h"

#include <cpl_conv.h>
#include <cpl_http.h>
#include <cpl_string.h>
#include <gdal_frmts.h>
#include <ogrsf_frmts.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdlib>
#include <mutex>
#include <string_view>

#include "burrow/language/say.h"

namespace burrow::gdal {

void set_up() {
  static std::once_flag once;
  std::call_once(once, [] {
    // Not GDALAllRegister: some drivers go to the network, some write, most nobody here needs.
    RegisterOGRGeoJSON();
    RegisterOGRShape();
    RegisterOGRGeoPackage();
    RegisterOGRLIBKML();
    RegisterOGRKML();
    RegisterOGRGPX();
    RegisterOGRFlatGeobuf();
    RegisterOGRGML();
    RegisterOGRTAB();
    RegisterOGROpenFileGDB();
    RegisterOGRDXF();
    GDALRegister_GTiff();
    GDALRegister_AAIGrid();
    for (const auto& [key, value] : {std::pair{"GDAL_PAM_ENABLED", "NO"},
                                     {"GDAL_DISABLE_READDIR_ON_OPEN", "TRUE"},
                                     {"SHAPE_RESTORE_SHX", "NO"},
                                     {"GPX_ELE_AS_25D", "YES"},
                                     {"LIBKML_READ_GROUND_OVERLAY", "NO"},  // a picture laid on the ground is no thing
                                     {"GML_SKIP_RESOLVE_ELEMS", "ALL"},
                                     {"GDAL_HTTP_MAX_RETRY", "0"},
                                     {"GDAL_CACHEMAX", "64"},
                                     {"CPL_VSIL_CURL_ALLOWED_EXTENSIONS", "{none}"},
                                     {"OGR_GEOJSON_MAX_OBJ_SIZE", "512"}})
      CPLSetConfigOption(key, value);
    OSRSetPROJEnableNetwork(0);
  });
}

namespace {
std::atomic<void (*)()> out_of_memory = nullptr;
}

void when_out_of_memory(void (*what)()) {
  out_of_memory = what;
}

Listener::Listener() {
  CPLPushErrorHandlerEx(&Listener::hear, this);
}
Listener::~Listener() {
  CPLPopErrorHandler();
}

void CPL_STDCALL Listener::hear(CPLErr kind, CPLErrorNum number, const char* text) {
  if (kind == CE_Fatal && number == CPLE_OutOfMemory)
    if (const auto what = out_of_memory.load()) what();
  constexpr std::size_t most = 20;
  auto* self = static_cast<Listener*>(CPLGetErrorHandlerUserData());
  std::vector<std::string>& list = kind >= CE_Failure ? self->errors_ : self->warnings_;
  if (kind >= CE_Warning && list.size() < most) list.push_back(as_utf8(text));
}

bool Listener::has_file_warnings() const {
  return std::any_of(warnings_.begin(), warnings_.end(), [](const std::string& warning) {
    return warning.find("configuration option") == std::string::npos;  // about the library's own settings
  });
}

namespace {

CPLHTTPResult* refuse(const char* url, CSLConstList, GDALProgressFunc, void*, CPLHTTPFetchWriteFunc, void*,
                      void* asked) {
  auto& first = *static_cast<std::optional<std::string>*>(asked);
  if (!first) first = as_utf8(url ? url : "");
  auto* result = static_cast<CPLHTTPResult*>(CPLCalloc(1, sizeof(CPLHTTPResult)));
  result->nStatus = 1;
  result->pszErrBuf = CPLStrdup("nothing is fetched");
  return result;
}

}  // namespace

NoNetwork::NoNetwork() {
  CPLHTTPPushFetchCallback(&refuse, &asked_);
}
NoNetwork::~NoNetwork() {
  CPLHTTPPopFetchCallback();
}

std::optional<Error> NoNetwork::refusal() const {
  if (!asked_) return std::nullopt;
  return Error{translated("coordinate system"), asked_->substr(0, 80),
               translated("a named one, \"EPSG:25832\": nothing is fetched from an address")};
}

namespace {

std::optional<FileUnit> unit_of(double metres) {
  for (const auto& [unit, word] : EnumNames<FileUnit>::list)
    if (std::abs(metres - metres_in(unit)) < 1e-9 * metres) return unit;
  return std::nullopt;
}

/// The same system as the register has it, in place of a long definition under another name.
OGRSpatialReferenceH like_a_known_one(OGRSpatialReferenceH srs) {
  constexpr int all_but_the_name = 90;  // of 100, by the documentation of OSRFindMatches
  int count = 0;
  int* confidence = nullptr;
  OGRSpatialReferenceH* matches = OSRFindMatches(srs, nullptr, &count, &confidence);
  // Two of the register that fit equally well are not told apart; other lists name the same systems once more.
  std::vector<OGRSpatialReferenceH> best_ones;
  for (int i = 0; i < count && confidence[i] >= all_but_the_name && confidence[i] == confidence[0]; ++i) {
    const char* list = OSRGetAuthorityName(matches[i], nullptr);
    if (list && std::string_view(list) == "EPSG") best_ones.push_back(matches[i]);
  }
  OGRSpatialReferenceH best = nullptr;
  if (best_ones.size() == 1)
    best = OSRClone(best_ones.front());
  else if (best_ones.empty() && count > 0 && confidence[0] >= all_but_the_name &&
           (count == 1 || confidence[1] < confidence[0]))
    best = OSRClone(matches[0]);
  OSRFreeSRSArray(matches);
  CPLFree(confidence);
  if (!best) return srs;
  OSRDestroySpatialReference(srs);
  return best;
}

std::string definition(OGRSpatialReferenceH srs) {
  const char* name = OSRGetAuthorityName(srs, nullptr);
  const char* code = OSRGetAuthorityCode(srs, nullptr);
  if (name && code) return std::string(name) + ":" + code;
  char* text = nullptr;
  const std::array<const char*, 2> options{"FORMAT=WKT2_2019", nullptr};
  OSRExportToWktEx(srs, &text, options.data());
  std::string wkt = text ? text : "";
  CPLFree(text);
  return wkt;
}

}  // namespace

void describe(OGRSpatialReferenceH srs, FoundFrame& frame) {
  if (!srs) return;
  OGRSpatialReferenceH copy = OSRClone(srs);
  if (OSRAutoIdentifyEPSG(copy) != OGRERR_NONE) copy = like_a_known_one(copy);
  if (OSRIsProjected(copy) || OSRIsGeographic(copy)) {
    frame.crs = as_utf8(definition(copy));
    frame.geographic = OSRIsGeographic(copy) != 0;
    if (!frame.geographic) frame.unit = unit_of(OSRGetLinearUnits(copy, nullptr));
  }
  if (OSRIsLocal(copy)) frame.unit = unit_of(OSRGetLinearUnits(copy, nullptr));  // no system, but a unit
  if (OSRIsCompound(copy)) {
    frame.height_unit = unit_of(OSRGetTargetLinearUnits(copy, "VERT_CS", nullptr));
    if (const char* name = OSRGetAttrValue(copy, "VERT_CS", 0)) frame.vertical = as_utf8(name);
  }
  OSRDestroySpatialReference(copy);
}

bool describe_code(const std::string& crs, FoundFrame& frame) {
  OGRSpatialReferenceH srs = OSRNewSpatialReference(nullptr);
  const std::string prefix = "EPSG:";
  const bool known =
      crs.starts_with(prefix) && OSRImportFromEPSG(srs, std::atoi(crs.c_str() + prefix.size())) == OGRERR_NONE;
  if (known) describe(srs, frame);
  OSRDestroySpatialReference(srs);
  return known;
}

Result<FoundFrame> frame_of_code(const std::string& crs) {
  set_up();
  const Listener listener;
  const std::string digits = crs.starts_with("EPSG:") ? crs.substr(5) : std::string();
  const bool is_code =
      !digits.empty() && digits.size() < 8 && digits.find_first_not_of("0123456789") == std::string::npos;
  FoundFrame frame;
  if (!is_code || !describe_code(crs, frame) || frame.crs.empty())
    return fail(translated("coordinate system"), as_utf8(crs.substr(0, 80)),
                translated("one that PROJ knows, \"EPSG:25832\""));
  return frame;
}

}  // namespace burrow::gdal
