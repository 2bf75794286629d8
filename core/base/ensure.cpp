#include "burrow/base/ensure.h"

#include <cstdio>
#include <cstdlib>

namespace burrow {

void ensure_failed(const char* condition, const char* file, int line) {
  std::fprintf(stderr, "burrowline: a bug, please report it: (%s) does not hold at %s:%d\n", condition, file, line);
  std::abort();
}

}  // namespace burrow
