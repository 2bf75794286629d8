#pragma once
/// Memory that was given back stays with the program for the next assessment. The system's allocator hands the pages of
/// each one back when it goes, and asks for them anew: a fifth of the time of 200 near-parallel utilities.
/// Source: mallopt(3) of the GNU C library; measured by bench_assess.

namespace burrow {

/// Once, at the start of the program. Up to 64 MB stay. False where the allocator knows no such wish.
bool keep_freed_memory();

}  // namespace burrow
