// One fuzzer: libFuzzer's entry points around one of the tries. BURROW_TRY names it.

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include "fuzz/tries.h"

using namespace burrow::test;

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t max_size);

namespace {

/// Of the seeds the format is learnt once.
struct StratumEvidence {
  const Try& what = try_of(BURROW_TRY);
  std::vector<std::string> seeds = seeds_of(what);
  FormatMutator mutator = mutator_of(what, seeds);
};

const StratumEvidence& known() {
  static const StratumEvidence all;
  return all;
}

std::string_view as_text(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// Its size; 0 where it is none or too long.
std::size_t put(const std::string& text, std::uint8_t* data, std::size_t max_size) {
  if (text.empty() || text.size() > max_size) return 0;
  std::memcpy(data, text.data(), text.size());
  return text.size();
}

void report_accepted() {
  std::fprintf(stderr, "accepted: %ld\n", accepted());
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

/// Mostly as the format has it; now and then byte by byte, and where the text is no JSON.
extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t max_size,
                                               unsigned seed) {
  if (seed % 8 != 0) {
    const std::string_view text = as_text(data, size);
    std::string changed;
    if (seed % 64 == 1)  // a seed that the corpus does not hold as it is
      changed = mutated(known().what, known().mutator, known().seeds[seed / 64 % known().seeds.size()], seed);
    else
      changed = mutated(known().what, known().mutator, text, seed);
    if (const std::size_t length = put(changed, data, max_size)) return length;
  }
  return LLVMFuzzerMutate(data, size, max_size);
}

extern "C" std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* data, std::size_t size, const std::uint8_t* other,
                                                 std::size_t other_size, std::uint8_t* out, std::size_t max_out,
                                                 unsigned seed) {
  return put(spliced(known().what, known().mutator, as_text(data, size), as_text(other, other_size), seed), out,
             max_out);
}
