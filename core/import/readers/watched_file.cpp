#include "watched_file.h"

#include <cpl_conv.h>
#include <cpl_vsi.h>

#include <algorithm>
#include <mutex>

namespace burrow::gdal {

namespace {

constexpr const char* prefix = "/vsiwatched/";

thread_local WatchedFile* watch = nullptr;

struct OpenFile {
  VSILFILE* file = nullptr;
  vsi_l_offset size = 0;
};

VSILFILE* plain(void* handle) {
  return static_cast<OpenFile*>(handle)->file;
}

void* open(void*, const char* name, const char* access) {
  VSILFILE* file = VSIFOpenL(name, access);
  if (!file) return nullptr;
  VSIStatBufL about{};
  const bool sized = VSIStatL(name, &about) == 0;
  return new OpenFile{file, sized ? static_cast<vsi_l_offset>(about.st_size) : 0};
}

std::size_t read(void* handle, void* into, std::size_t size, std::size_t count) {
  const auto* file = static_cast<OpenFile*>(handle);
  const auto at = static_cast<double>(VSIFTellL(file->file));
  const double share = file->size > 0 ? std::min(1.0, at / static_cast<double>(file->size)) : 0;
  if (watch && !watch->may_go_on(share)) return 0;
  return VSIFReadL(into, size, count, file->file);
}

int close(void* handle) {
  auto* file = static_cast<OpenFile*>(handle);
  const int result = VSIFCloseL(file->file);
  delete file;
  return result;
}

void install() {
  static std::once_flag once;
  std::call_once(once, [] {
    VSIFilesystemPluginCallbacksStruct* calls = VSIAllocFilesystemPluginCallbacksStruct();
    calls->open = open;
    calls->read = read;
    calls->close = close;
    calls->stat = [](void*, const char* name, VSIStatBufL* about, int flags) { return VSIStatExL(name, about, flags); };
    calls->tell = [](void* handle) { return VSIFTellL(plain(handle)); };
    calls->seek = [](void* handle, vsi_l_offset to, int from) { return VSIFSeekL(plain(handle), to, from); };
    calls->eof = [](void* handle) { return VSIFEofL(plain(handle)); };
    VSIInstallPluginHandler(prefix, calls);
    VSIFreeFilesystemPluginCallbacksStruct(calls);
  });
}

}  // namespace

WatchedFile::WatchedFile(const std::string& path, const ReadOptions& options) : path_(path), options_(options) {
  install();
  watch = this;
}

WatchedFile::~WatchedFile() {
  watch = nullptr;
}

std::string WatchedFile::path() const {
  return prefix + path_;
}

bool WatchedFile::may_go_on(double share) {
  stopped_ = stopped_ || (options_.progress && !options_.progress(share));
  return !stopped_;
}

}  // namespace burrow::gdal
