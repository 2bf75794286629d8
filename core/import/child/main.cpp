/// burrowline-reader: reads one foreign file and says what it holds. Started by the program (`reader_process.h`), which
/// hands it the request as a file and reads its answer from a pipe; of no use by itself.

#include <sys/prctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstring>
#include <new>

#include "../answer.h"
#include "../companions.h"
#include "../read_here.h"
#include "../readers/readers.h"
#include "confine.h"

#ifdef __SANITIZE_ADDRESS__
extern "C" const char* __asan_default_options() {
  return "detect_leaks=0";  // it ends without looking back
}
#endif

namespace burrow {

namespace {

[[noreturn]] void no_memory() {
  ::_exit(reader_no_memory);
}

std::string request_text() {
  struct stat about {};
  if (::fstat(request_file, &about) != 0 || about.st_size <= 0) return {};
  std::string text(static_cast<std::size_t>(about.st_size), '\0');
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t some = ::pread(request_file, text.data() + done, text.size() - done, static_cast<off_t>(done));
    if (some < 0 && errno == EINTR) continue;
    if (some <= 0) return {};
    done += static_cast<std::size_t>(some);
  }
  return text;
}

bool send(std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t some = ::write(answer_pipe, bytes.data(), bytes.size());
    if (some < 0 && errno == EINTR) continue;
    if (some <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(some));
  }
  return true;
}

template <class T>
bool send_word(char kind, T value) {
  std::string word(1 + sizeof value, kind);
  std::memcpy(word.data() + 1, &value, sizeof value);
  return send(word);
}

/// Tells how far it is, now and then.
class Progress {
 public:
  bool operator()(double share) {
    const auto now = std::chrono::steady_clock::now();
    if (now - told_ < std::chrono::milliseconds(20)) return true;
    told_ = now;
    return send_word('p', share);
  }

 private:
  std::chrono::steady_clock::time_point told_ = std::chrono::steady_clock::now();
};

ReaderAnswer read(const ReaderRequest& request) {
  ReaderAnswer answer;
  if (request.raster) {
    auto heights = load_readers().and_then(
        [&](const Readers* readers) { return readers->heights(*request.raster, request.points); });
    if (heights)
      answer.heights = *std::move(heights);
    else
      answer.error = ErrorInWords::of(heights.error());
    return answer;
  }
  Progress progress;
  ReadOptions options;
  options.order = request.order;
  options.unit = request.unit;
  options.most_vertices = request.most_vertices;
  options.most_unpacked_bytes = request.most_unpacked_bytes;
  options.most_layers = request.most_layers;
  options.most_cells = request.most_cells;
  options.progress = [&progress](double share) { return progress(share); };
  Result<Found> found = read_here(request.path, options);
  if (found)
    answer.found = *std::move(found);
  else
    answer.error = ErrorInWords::of(found.error());
  return answer;
}

int serve() {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);  // nobody waits for the answer then
  std::optional<ReaderRequest> request = unpacked_request(request_text());
  if (!request || ::getppid() != request->program) return reader_bad_request;
  Dictionary dictionary;
  dictionary.language = request->language;
  for (RequestText& text : request->texts)
    dictionary.texts.emplace(std::move(text.english), std::move(text.translated));
  for (RequestCounted& text : request->counted)
    dictionary.counted.emplace(std::move(text.english), std::move(text.forms));
  use_dictionary(std::move(dictionary));
  // Libraries are loaded before the file is looked into; what they do at their start is no concern of ours.
  if (request->raster || needs_library(request->path))
    if (const auto readers = load_readers()) (*readers)->when_out_of_memory(&no_memory);
  std::set_new_handler(&no_memory);
  if (!confine({request->most_memory_bytes, request->most_seconds, with_companions(request->path)}))
    return reader_not_confined;
  ReaderAnswer answer;
  try {
    answer = read(*request);
  } catch (const std::bad_alloc&) {
    return reader_no_memory;
  }
  send_word('a', size_of(answer));
  send_packed(answer, send);
  return 0;
}

}  // namespace

}  // namespace burrow

int main() {
  ::_exit(burrow::serve());
}
