#include "reader_process.h"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstring>
#include <system_error>
#include <utility>

#include "beside_program.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

using Clock = std::chrono::steady_clock;

/// Closed at the end, and in every program that is started meanwhile.
class File {
 public:
  File() = default;
  explicit File(int number) : number_(number) {}
  ~File() { close(); }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  File(File&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  File& operator=(File&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  [[nodiscard]] int number() const { return number_; }
  void close() {
    if (number_ >= 0) ::close(number_);
    number_ = -1;
  }
  /// Out of the way of the numbers that the process is given.
  void lift() {
    constexpr int high = 10;
    const int lifted = ::fcntl(number_, F_DUPFD_CLOEXEC, high);
    close();
    number_ = lifted;
  }

 private:
  int number_ = -1;
};

std::string system_says(int error) {
  return std::generic_category().message(error);
}

/// A file in memory with that text; the process cannot keep us waiting while it is handed over.
File in_memory(const std::string& text) {
  File file(::memfd_create("request", MFD_CLOEXEC));
  for (std::size_t done = 0; done < text.size();) {
    const ssize_t some = ::pwrite(file.number(), text.data() + done, text.size() - done, static_cast<off_t>(done));
    if (some < 0 && errno == EINTR) continue;
    if (some <= 0) return {};
    done += static_cast<std::size_t>(some);
  }
  file.lift();
  return file;
}

/// What of the surroundings may matter to a reader: where libraries and their data lie, and sanitizers. Not the home
/// folder, whose settings of libraries could name files and addresses.
std::vector<std::string> surroundings() {
  std::vector<std::string> kept{"LC_ALL=C.UTF-8", "OMP_NUM_THREADS=1", "OPENBLAS_NUM_THREADS=1"};
  for (char** each = environ; each && *each; ++each) {
    const std::string_view entry = *each;
    for (const std::string_view name : {"LD_LIBRARY_PATH=", "PROJ_DATA=", "PROJ_LIB=", "GDAL_DATA=", "ASAN_OPTIONS=",
                                        "UBSAN_OPTIONS=", "TSAN_OPTIONS="})
      if (entry.starts_with(name)) kept.emplace_back(entry);
  }
  return kept;
}

/// What posix_spawn is told.
class Plan {
 public:
  Plan(const File& request, const File& answer) {
    ::posix_spawn_file_actions_init(&files);
    ::posix_spawn_file_actions_adddup2(&files, request.number(), request_file);
    ::posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    ::posix_spawn_file_actions_adddup2(&files, answer.number(), answer_pipe);
    ::posix_spawn_file_actions_addclosefrom_np(&files, answer_pipe + 1);
    ::posix_spawnattr_init(&attributes);
    sigset_t none, all;
    sigemptyset(&none);
    sigfillset(&all);
    ::posix_spawnattr_setsigmask(&attributes, &none);
    ::posix_spawnattr_setsigdefault(&attributes, &all);
    ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
  }
  ~Plan() {
    ::posix_spawn_file_actions_destroy(&files);
    ::posix_spawnattr_destroy(&attributes);
  }
  Plan(const Plan&) = delete;
  Plan& operator=(const Plan&) = delete;

  posix_spawn_file_actions_t files{};
  posix_spawnattr_t attributes{};
};

class ReaderProcess {
 public:
  ReaderProcess(const ReaderRequest& request, const std::function<bool(double)>& progress)
      : request_(request),
        progress_(progress),
        until_(Clock::now() + std::chrono::duration_cast<Clock::duration>(
                                  std::chrono::duration<double>(std::clamp(request.most_seconds, 0.0, 1e6)))) {}
  ~ReaderProcess() { end(); }
  ReaderProcess(const ReaderProcess&) = delete;
  ReaderProcess& operator=(const ReaderProcess&) = delete;

  std::optional<Error> start(const std::filesystem::path& program) {
    const File request = in_memory(packed(request_));
    std::array<int, 2> ends{-1, -1};
    if (request.number() < 0 || ::pipe2(ends.data(), O_CLOEXEC) != 0) return not_started(program, errno);
    from_ = File(ends[0]);
    File answer(ends[1]);
    answer.lift();
    const Plan plan(request, answer);
    std::string name = program.string();
    std::array<char*, 2> words{name.data(), nullptr};
    std::vector<std::string> entries = surroundings();
    std::vector<char*> environment;
    for (std::string& entry : entries) environment.push_back(entry.data());
    environment.push_back(nullptr);
    const int error =
        ::posix_spawn(&process_, name.c_str(), &plan.files, &plan.attributes, words.data(), environment.data());
    if (error == 0) return std::nullopt;
    process_ = -1;
    return not_started(program, error);
  }

  Result<ReaderAnswer> answer() {
    while (!whole()) {
      if (progress_ && !progress_(share_))
        return fail(request_.path, std::string(stopped_by_person), to_its_end(), stopped_by_person);
      const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(until_ - Clock::now()).count();
      if (left <= 0) return tl::unexpected(too_slow());
      pollfd one{from_.number(), POLLIN, 0};
      constexpr std::int64_t moment_ms = 20;  // how long a person waits at most for a stop
      ::poll(&one, 1, static_cast<int>(std::min<std::int64_t>(left, moment_ms)));
      if (one.revents == 0) continue;
      const Heard heard = take_some();
      if (heard == Heard::nonsense) return tl::unexpected(nonsense());
      if (heard == Heard::end) return tl::unexpected(why_ended(end()));
      if (size_ && *size_ > request_.most_memory_bytes / 2) return tl::unexpected(too_large());
    }
    if (progress_ && !progress_(1))
      return fail(request_.path, std::string(stopped_by_person), to_its_end(), stopped_by_person);
    auto answer = checked_answer(got_, request_);
    if (!answer) return tl::unexpected(nonsense());
    if (answer->error) return tl::unexpected(answer->error->as_error());
    return *std::move(answer);
  }

 private:
  static Error not_started(const std::filesystem::path& program, int error) {
    return {program.filename().string(), system_says(error), translated("the program beside the library")};
  }
  static std::string to_its_end() { return translated("to be read to its end"); }
  [[nodiscard]] Error too_slow() const {
    return {request_.path, say("more than {:g} s of reading", request_.most_seconds),
            translated("a part of the data near the crossing")};
  }
  [[nodiscard]] Error too_large() const {
    return {request_.path, say("more than {} MB of memory to read it", request_.most_memory_bytes / 1'000'000),
            translated("a part of the data near the crossing")};
  }
  [[nodiscard]] Error broke_down(std::string how) const {
    return {request_.path, std::move(how), translated("a whole file; saved anew, or as another kind, it may be read")};
  }
  [[nodiscard]] Error nonsense() const { return broke_down(translated("a file upon which the reader says nonsense")); }

  [[nodiscard]] Error why_ended(std::optional<int> status) const {
    if (!status) return broke_down(translated("a file upon which the reader breaks down"));
    if (WIFSIGNALED(*status)) {
      if (WTERMSIG(*status) == SIGXCPU) return too_slow();
      if (WTERMSIG(*status) == SIGKILL)
        return {request_.path, translated("the reader was ended from outside, maybe for want of memory"),
                translated("free memory, or a part of the data near the crossing")};
      return broke_down(say("a file upon which the reader breaks down (signal {})", WTERMSIG(*status)));
    }
    switch (WEXITSTATUS(*status)) {
      case reader_no_memory:
        return too_large();
      case reader_not_confined:
        return {request_.path, translated("a system that does not let the reader be confined"),
                translated("Linux with limits of resources and filters of calls (seccomp)")};
      case reader_bad_request:
        return {"burrowline-reader", translated("it is of another version"),
                translated("the program beside the library")};
      default:
        return broke_down(say("a file upon which the reader breaks down (exit code {})", WEXITSTATUS(*status)));
    }
  }

  [[nodiscard]] bool whole() const { return size_ && got_.size() == *size_; }

  enum class Heard { something, end, nonsense };

  Heard take_some() {
    constexpr std::size_t piece = 1u << 16u;
    const std::size_t had = got_.size();
    got_.resize(size_ ? std::min<std::size_t>(*size_, had + piece) : had + piece);
    ssize_t some = 0;
    do some = ::read(from_.number(), got_.data() + had, got_.size() - had);
    while (some < 0 && errno == EINTR);
    got_.resize(had + static_cast<std::size_t>(std::max<ssize_t>(some, 0)));
    if (some <= 0) return Heard::end;
    return size_ || take_words() ? Heard::something : Heard::nonsense;
  }

  /// Takes off what stands before the answer; false where that is nothing known.
  bool take_words() {
    constexpr std::size_t word = 1 + sizeof(double);
    static_assert(sizeof(double) == sizeof(std::uint64_t));
    std::size_t at = 0;
    while (!size_ && got_.size() - at >= word) {
      const char kind = got_[at];
      if (kind == 'p') {
        double share = 0;
        std::memcpy(&share, got_.data() + at + 1, sizeof share);
        if (share >= share_ && share <= 1) share_ = share;
      } else if (kind == 'a') {
        std::uint64_t size = 0;
        std::memcpy(&size, got_.data() + at + 1, sizeof size);
        size_ = size;
      } else {
        return false;
      }
      at += word;
    }
    got_.erase(0, at);
    if (size_ && got_.size() > *size_) return false;
    if (size_ && *size_ <= request_.most_memory_bytes / 2) got_.reserve(*size_);
    return true;
  }

  /// Ends the process if it runs, waits for it; how it ended, where that is known.
  std::optional<int> end() {
    if (process_ < 0) return std::nullopt;
    ::kill(process_, SIGKILL);  // one that has ended by itself keeps its own status
    int status = 0;
    pid_t waited = 0;
    do waited = ::waitpid(process_, &status, 0);
    while (waited < 0 && errno == EINTR);
    const bool known = waited == process_;
    process_ = -1;
    return known ? std::optional(status) : std::nullopt;
  }

  const ReaderRequest& request_;
  const std::function<bool(double)>& progress_;
  Clock::time_point until_;
  pid_t process_ = -1;
  File from_;
  double share_ = 0;
  std::optional<std::uint64_t> size_;  ///< of the answer, once said
  std::string got_;
};

/// One form for one, another for all else, as the process that reads takes it.
bool has_usual_plural(const PluralRule& rule) {
  const PluralRule usual;
  constexpr unsigned long long tried = 1000;
  bool same = rule.forms() == usual.forms();
  for (unsigned long long n = 0; n <= tried && same; ++n) same = rule.form_of(n) == usual.form_of(n);
  return same;
}

}  // namespace

ReaderRequest request_for(const std::string& path, const ReadOptions& options) {
  ReaderRequest request;
  request.program = ::getpid();
  request.path = path;
  request.order = options.order;
  request.unit = options.unit;
  request.most_vertices = options.most_vertices;
  request.most_unpacked_bytes = options.most_unpacked_bytes;
  request.most_memory_bytes = options.most_memory_bytes;
  request.most_seconds = options.most_seconds;
  request.most_layers = options.most_layers;
  request.most_cells = options.most_cells;
  request.language = dictionary().language;
  for (const auto& [english, translation] : dictionary().texts) request.texts.push_back({english, translation});
  if (has_usual_plural(dictionary().plural))
    for (const auto& [english, forms] : dictionary().counted) request.counted.push_back({english, forms});
  return request;
}

Result<ReaderAnswer> ask_reader(const std::filesystem::path& program, const ReaderRequest& request,
                                const std::function<bool(double)>& progress) {
  ReaderProcess process(request, progress);
  if (auto error = process.start(program)) return tl::unexpected(*error);
  return process.answer();
}

Result<ReaderAnswer> ask_reader(const ReaderRequest& request, const std::function<bool(double)>& progress) {
  const std::vector<std::filesystem::path> programs = beside_program(BURROW_READER_NAME);
  if (programs.empty())
    return fail(BURROW_READER_NAME, translated("it is not there"), translated("the program beside the library"));
  return ask_reader(programs.front(), request, progress);
}

Result<std::vector<std::optional<double>>> heights_of(const Found& found, const FoundRaster& raster,
                                                      const std::vector<PlanPoint>& points,
                                                      const std::function<bool()>& go_on) {
  ReaderRequest request = request_for(found.file, {});
  request.raster = raster;
  request.points = points;
  Result<ReaderAnswer> answer = ask_reader(request, [&go_on](double) { return go_on(); });
  if (!answer) return tl::unexpected(std::move(answer).error());
  return *std::move(answer->heights);
}

}  // namespace burrow
