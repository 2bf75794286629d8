#include "kept_memory.h"

#include <malloc.h>

namespace burrow {

bool keep_freed_memory() {
#if defined(__GLIBC__)
  constexpr int megabyte = 1 << 20;
  return ::mallopt(M_TRIM_THRESHOLD, 64 * megabyte) == 1 && ::mallopt(M_MMAP_THRESHOLD, 16 * megabyte) == 1 &&
         ::mallopt(M_TOP_PAD, 8 * megabyte) == 1;
#else
  return false;
#endif
}

}  // namespace burrow
