#include <dlfcn.h>

#include <array>
#include <filesystem>

#include "burrow/base/say.h"
#include "readers/readers.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

/// Beside the program or where an installation keeps libraries, and nowhere else: whoever can write to a place that is
/// searched runs code.
Result<const Readers*> load() {
  std::error_code ignored;
  const fs::path program = fs::read_symlink("/proc/self/exe", ignored).parent_path();
  std::string why = said("it is not there");
  for (const fs::path& place : {program / BURROW_READERS_NAME, program / "../lib/burrowline" / BURROW_READERS_NAME}) {
    if (!fs::exists(place, ignored)) continue;
    void* library = ::dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL);
    if (!library) {
      why = ::dlerror();
      continue;
    }
    void* symbol = ::dlsym(library, "burrow_readers");
    if (!symbol) continue;
    const Readers* readers = reinterpret_cast<const Readers* (*)()>(symbol)();
    if (readers->version == readers_version) return readers;
    why = said("it is of another version");
  }
  return fail(say("importer library {}", BURROW_READERS_NAME), why, said("the library beside the program"));
}

}  // namespace

Result<const Readers*> load_readers() {
  static const Result<const Readers*> readers = load();
  if (readers) (*readers)->speak(spoken());  // the library has a dictionary of its own
  return readers;
}

}  // namespace burrow
