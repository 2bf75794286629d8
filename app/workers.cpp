#include "workers.h"

#include <poll.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdint>
#include <cstring>
#include <deque>
#include <fstream>
#include <map>
#include <new>
#include <optional>
#include <set>
#include <vector>

#include "burrow/language/say.h"

namespace burrow {

namespace {

using Clock = std::chrono::steady_clock;

/// Stands before each answer on the socket.
struct Header {
  std::uint64_t out = 0, err = 0;
  std::int64_t code = 0;
};

bool write_all(int socket, const char* bytes, std::size_t count) {
  while (count > 0) {
    const ssize_t sent = ::send(socket, bytes, count, MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent <= 0) return false;
    bytes += sent;
    count -= static_cast<std::size_t>(sent);
  }
  return true;
}

bool read_all(int socket, char* bytes, std::size_t count) {
  while (count > 0) {
    const ssize_t got = ::recv(socket, bytes, count, 0);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return false;
    bytes += got;
    count -= static_cast<std::size_t>(got);
  }
  return true;
}

/// No more memory than the limit beyond what is mapped now; no core files.
void keep_within(const WorkerLimits& limits) {
  std::size_t pages = 0;
  std::ifstream("/proc/self/statm") >> pages;
  const rlim_t most = pages * static_cast<std::size_t>(::sysconf(_SC_PAGESIZE)) + limits.memory_bytes;
  const rlimit memory{most, most}, core{0, 0};
  ::setrlimit(RLIMIT_AS, &memory);
  ::setrlimit(RLIMIT_CORE, &core);
}

/// What is to be judged: a number, and the text that comes with it.
struct Task {
  std::uint64_t number = 0, text = 0;
};

/// WorkersAsk, and the text of what is judged when the workers do not have it already.
struct TextAsk : WorkersAsk {
  std::string text;
  std::function<Answer(const std::string&)> judge_text;
};

/// The life of a worker: a task in, an answer out, until the other end closes.
[[noreturn]] void serve(int socket, const WorkersAsk& ask, const TextAsk* texts) {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  keep_within(ask.limits);
  Task task;
  while (read_all(socket, reinterpret_cast<char*>(&task), sizeof task)) {
    Answer answer;
    try {
      std::string text(task.text, '\0');
      if (!read_all(socket, text.data(), text.size())) break;
      answer = texts ? texts->judge_text(text) : ask.judge(task.number);
    } catch (const std::bad_alloc&) {
      ::_exit(ENOMEM);
    }
    const Header header{answer.out.size(), answer.err.size(), answer.code};
    if (!write_all(socket, reinterpret_cast<const char*>(&header), sizeof header) ||
        !write_all(socket, answer.out.data(), answer.out.size()) ||
        !write_all(socket, answer.err.data(), answer.err.size()))
      break;
  }
  ::_exit(0);
}

struct Worker {
  pid_t process = -1;
  int socket = -1;
  std::deque<std::size_t> numbers;  ///< what it is judging, and what waits at its door
  Clock::time_point until;
  std::string got;  ///< of its answers, so far
};

/// The first answer, taken off once all of it is there.
std::optional<Answer> whole_answer(std::string& got) {
  Header header;
  if (got.size() < sizeof header) return std::nullopt;
  std::memcpy(&header, got.data(), sizeof header);
  const std::size_t size = sizeof header + header.out + header.err;
  if (got.size() < size) return std::nullopt;
  Answer answer{got.substr(sizeof header, header.out), got.substr(sizeof header + header.out, header.err),
                static_cast<int>(header.code)};
  got.erase(0, size);
  return answer;
}

class Workers {
 public:
  explicit Workers(const WorkersAsk& ask, const TextAsk* texts = nullptr)
      : ask_(ask), texts_(texts), workers_(std::max<std::size_t>(1, std::min(ask.jobs, ask.count))) {}
  ~Workers() {
    for (Worker& worker : workers_) {
      if (worker.process < 0) continue;
      if (!worker.numbers.empty()) ::kill(worker.process, SIGKILL);
      end(worker);
    }
  }
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;

  void run() {
    while (taken_ < ask_.count) {
      hand_out();
      wait();
      for (auto first = ready_.find(taken_); first != ready_.end(); first = ready_.find(taken_)) {
        Answer answer = std::move(first->second);
        ready_.erase(first);
        ++taken_;
        ask_.take(std::move(answer));
      }
    }
  }

 private:
  /// No more than a few answers wait for their turn, so memory stays flat. While many are left each worker has one more
  /// at its door, so that it does not wait for us.
  void hand_out() {
    for (const std::size_t at_most : {0U, 1U}) {
      if (at_most > 0 && next_ + 2 * workers_.size() > ask_.count) return;
      for (Worker& worker : workers_)
        if (worker.numbers.size() <= at_most && !hand_out_to(worker)) return;
    }
  }

  /// False: nothing is left to hand out now, or there is nobody to do it.
  bool hand_out_to(Worker& worker) {
    const std::size_t most_ahead = 4 * workers_.size();
    if (again_.empty() && (next_ >= ask_.count || next_ >= taken_ + most_ahead)) return false;
    const std::size_t number = again_.empty() ? next_ : *again_.begin();
    const Task task{number, texts_ ? texts_->text.size() : 0};
    const bool none_started = worker.process < 0 && !start(worker);
    if (none_started && busy()) return false;  // those that run go on; this one is tried again
    if (again_.empty())
      ++next_;
    else
      again_.erase(again_.begin());
    if (none_started) {
      fail(number, translated("no worker process could be started"));
      return false;
    }
    if (worker.numbers.empty()) start_clock(worker);
    worker.numbers.push_back(number);
    // One that died is seen below.
    if (write_all(worker.socket, reinterpret_cast<const char*>(&task), sizeof task) && texts_)
      write_all(worker.socket, texts_->text.data(), texts_->text.size());
    return true;
  }

  void start_clock(Worker& worker) const {
    worker.until =
        Clock::now() + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(ask_.limits.seconds));
  }

  [[nodiscard]] bool busy() const {
    return std::any_of(workers_.begin(), workers_.end(), [](const Worker& worker) { return !worker.numbers.empty(); });
  }

  bool start(Worker& worker) {
    std::array<int, 2> ends{};
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) return false;
    const pid_t process = ::fork();
    if (process == 0) {
      ::close(ends[0]);
      for (const Worker& other : workers_)
        if (other.socket >= 0) ::close(other.socket);
      serve(ends[1], ask_, texts_);
    }
    ::close(ends[1]);
    if (process < 0) {
      ::close(ends[0]);
      return false;
    }
    worker.process = process;
    worker.socket = ends[0];
    return true;
  }

  /// What a worker was at when it ended. What waited at its door is for another.
  std::size_t lost(Worker& worker) {
    const std::size_t number = worker.numbers.front();
    again_.insert(worker.numbers.begin() + 1, worker.numbers.end());
    return number;
  }

  /// Closes its socket, upon which an idle one ends, and says how it ended.
  int end(Worker& worker) {
    ::close(worker.socket);
    int status = 0;
    while (::waitpid(worker.process, &status, 0) < 0 && errno == EINTR) {
    }
    worker.socket = -1;
    worker.process = -1;
    worker.numbers.clear();
    worker.got.clear();
    return status;
  }

  void fail(std::size_t number, std::string found) {
    const std::string expected = say("a file that can be judged in {:.0f} s with {:.1f} GB of memory",
                                     ask_.limits.seconds, static_cast<double>(ask_.limits.memory_bytes) / 1e9);
    ready_[number] = ask_.failed(number, Error{"", std::move(found), expected});
  }

  void ended(Worker& worker) {
    const std::size_t number = lost(worker);
    const int status = end(worker);
    if (WIFSIGNALED(status))
      fail(number, say("worker ended by signal {}", WTERMSIG(status)));
    else if (WEXITSTATUS(status) == ENOMEM)
      fail(number, translated("worker ended: no memory left"));
    else
      fail(number, say("worker ended with exit code {}", WEXITSTATUS(status)));
  }

  void read_some(Worker& worker) {
    std::array<char, 65536> some{};
    const ssize_t got = ::recv(worker.socket, some.data(), some.size(), MSG_DONTWAIT);
    if (got < 0 && (errno == EINTR || errno == EAGAIN)) return;
    if (got <= 0) return ended(worker);
    worker.got.append(some.data(), static_cast<std::size_t>(got));
    while (!worker.numbers.empty()) {
      std::optional<Answer> answer = whole_answer(worker.got);
      if (!answer) return;
      ready_[worker.numbers.front()] = std::move(*answer);
      worker.numbers.pop_front();
      start_clock(worker);
    }
  }

  /// Until something comes from a worker, or one has had its time.
  void wait() {
    std::vector<pollfd> sockets;
    std::vector<Worker*> of;
    Clock::time_point first = Clock::time_point::max();
    for (Worker& worker : workers_) {
      if (worker.numbers.empty()) continue;
      sockets.push_back({worker.socket, POLLIN, 0});
      of.push_back(&worker);
      first = std::min(first, worker.until);
    }
    if (sockets.empty()) return;
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(first - Clock::now()).count() + 1;
    ::poll(sockets.data(), sockets.size(), static_cast<int>(std::clamp<long long>(left, 0, 1'000'000)));
    const Clock::time_point now = Clock::now();
    for (std::size_t i = 0; i < of.size(); ++i) {
      Worker& worker = *of[i];
      if (sockets[i].revents != 0) {
        read_some(worker);
      } else if (now >= worker.until) {
        const std::size_t number = lost(worker);
        ::kill(worker.process, SIGKILL);
        end(worker);
        fail(number, say("worker stopped after {:.0f} s", ask_.limits.seconds));
      }
    }
  }

  const WorkersAsk& ask_;
  const TextAsk* texts_;
  std::vector<Worker> workers_;
  std::map<std::size_t, Answer> ready_;
  std::set<std::size_t> again_;  ///< handed to a worker that ended before it came to them
  std::size_t next_ = 0, taken_ = 0;
};

}  // namespace

void run_in_workers(const WorkersAsk& ask) {
  Workers(ask).run();
}

struct TextWorker::Parts {
  TextAsk ask;
  Answer last;
  std::unique_ptr<Workers> workers;
};

TextWorker::TextWorker(WorkerLimits limits, std::function<Answer(const std::string&)> judge,
                       std::function<Answer(const Error&)> failed)
    : parts_(std::make_unique<Parts>()) {
  parts_->ask.limits = limits;
  parts_->ask.judge_text = std::move(judge);
  parts_->ask.failed = [failed = std::move(failed)](std::size_t, const Error& error) { return failed(error); };
  parts_->ask.take = [parts = parts_.get()](Answer answer) { parts->last = std::move(answer); };
  parts_->workers = std::make_unique<Workers>(parts_->ask, &parts_->ask);
}

TextWorker::~TextWorker() = default;

Answer TextWorker::answer(std::string text) {
  parts_->ask.text = std::move(text);
  ++parts_->ask.count;
  parts_->workers->run();
  return std::move(parts_->last);
}

}  // namespace burrow
