// One fuzzer of foreign files: libFuzzer's entry points around one of the tries. BURROW_TRY names it.

#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "fuzz/import/import_tries.h"

using namespace burrow::test;

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace {

struct Known {
  const Try& what = import_try_of(BURROW_TRY);
  std::vector<std::string> seeds = import_seeds_of(what);
  LineMutator mutator{seeds};
};

const Known& known() {
  static const Known all;
  return all;
}

std::string_view as_text(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

void report_accepted() {
  std::fprintf(stderr, "accepted: %ld\n", import_accepted());
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int* /*argc*/, char*** /*argv*/) {
  known();
  std::atexit(report_accepted);
  return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string wrong = known().what.run(as_text(data, size));
  if (!wrong.empty()) {
    std::fprintf(stderr, "%s\n", wrong.c_str());
    std::abort();
  }
  return 0;
}

/// Mostly by lines and words; now and then byte by byte, and from a seed that the corpus does not hold as it is.
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t max_size,
                                               unsigned seed) {
  if (seed % 4 == 0) return LLVMFuzzerMutate(data, size, max_size);
  const bool from_seed = seed % 64 == 1 || size == 0;
  const std::string_view from =
      from_seed ? std::string_view(known().seeds[seed / 64 % known().seeds.size()]) : as_text(data, size);
  const std::string changed = known().mutator.mutate(from, seed);
  if (changed.empty() || changed.size() > max_size) return LLVMFuzzerMutate(data, size, max_size);
  std::memcpy(data, changed.data(), changed.size());
  return changed.size();
}
