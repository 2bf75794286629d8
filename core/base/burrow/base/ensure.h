#pragma once
/// An assert that stays on in release: a failed one is a bug in this program, never a fault of the input.

namespace burrow {

[[noreturn]] void ensure_failed(const char* condition, const char* file, int line);

}  // namespace burrow

#define BURROW_ENSURE(condition) \
  (static_cast<bool>(condition) ? void(0) : ::burrow::ensure_failed(#condition, __FILE__, __LINE__))
