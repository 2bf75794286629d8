#pragma once
/// Pieces of work shared out over threads.

#include <atomic>
#include <functional>
#include <stop_token>
#include <system_error>
#include <thread>
#include <vector>

namespace burrow {

/// Calls `work(worker, piece)` for each piece once, on `threads` threads of which this one is the first; `after` on
/// this thread after each of its pieces, with the number of pieces done. Ends early where stopping is asked for. Where
/// the system gives no more threads, those that there are do all of it.
inline void parallel_for(unsigned threads, std::size_t pieces, const std::stop_token& stop,
                         const std::function<void(std::size_t worker, std::size_t piece)>& work,
                         const std::function<void(std::size_t done)>& after = {}) {
  std::atomic<std::size_t> next{0}, done{0};
  const auto take = [&](std::size_t worker) {
    while (!stop.stop_requested()) {
      const std::size_t piece = next.fetch_add(1);
      if (piece >= pieces) return;
      work(worker, piece);
      const std::size_t so_far = done.fetch_add(1) + 1;
      if (worker == 0 && after) after(so_far);
    }
  };
  std::vector<std::jthread> helpers;
  helpers.reserve(threads);
  try {
    for (unsigned i = 1; i < threads && i < pieces; ++i) helpers.emplace_back([&take, i] { take(i); });
  } catch (const std::system_error&) {
    // as many as there are
  }
  take(0);
}

}  // namespace burrow
