#include <dlfcn.h>

#include "beside_program.h"
#include "burrow/language/say.h"
#include "readers/readers.h"

namespace burrow {

namespace {

Result<const Readers*> load() {
  std::string why = translated("it is not there");
  for (const std::filesystem::path& place : beside_program(BURROW_READERS_NAME)) {
    // The library itself is bound at once (it is linked so); the hundred that it brings along need not be.
    void* library = ::dlopen(place.c_str(), RTLD_LAZY | RTLD_LOCAL);
    if (!library) {
      why = ::dlerror();
      continue;
    }
    void* symbol = ::dlsym(library, "burrow_readers");
    if (!symbol) continue;
    const Readers* readers = reinterpret_cast<const Readers* (*)()>(symbol)();
    if (readers->version == readers_version) return readers;
    why = translated("it is of another version");
  }
  return fail(say("importer library {}", BURROW_READERS_NAME), why, translated("the library beside the program"));
}

}  // namespace

Result<const Readers*> load_readers() {
  static const Result<const Readers*> readers = load();
  if (readers) (*readers)->use_dictionary(dictionary());  // the library has a dictionary of its own
  return readers;
}

}  // namespace burrow
