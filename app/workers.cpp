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
#include <fstream>
#include <map>
#include <new>
#include <optional>
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

/// The life of a worker: a number in, an answer out, until the other end closes.
[[noreturn]] void serve(int socket, const WorkersAsk& ask) {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  keep_within(ask.limits);
  std::uint64_t number = 0;
  while (read_all(socket, reinterpret_cast<char*>(&number), sizeof number)) {
    Answer answer;
    try {
      answer = ask.judge(number);
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
  std::optional<std::size_t> number;  ///< what it is judging
  Clock::time_point until;
  std::string got;  ///< of its answer, so far
};

/// The answer, once all of it is there.
std::optional<Answer> whole_answer(const std::string& got) {
  Header header;
  if (got.size() < sizeof header) return std::nullopt;
  std::memcpy(&header, got.data(), sizeof header);
  if (got.size() - sizeof header < header.out + header.err) return std::nullopt;
  return Answer{got.substr(sizeof header, header.out), got.substr(sizeof header + header.out, header.err),
                static_cast<int>(header.code)};
}

class Workers {
 public:
  explicit Workers(const WorkersAsk& ask)
      : ask_(ask), workers_(std::max<std::size_t>(1, std::min(ask.jobs, ask.count))) {}
  ~Workers() {
    for (Worker& worker : workers_) {
      if (worker.process < 0) continue;
      if (worker.number) ::kill(worker.process, SIGKILL);
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
  /// No more than a few answers wait for their turn, so memory stays flat.
  void hand_out() {
    const std::size_t most_ahead = 4 * workers_.size();
    for (Worker& worker : workers_) {
      if (worker.number || next_ >= ask_.count || next_ >= taken_ + most_ahead) continue;
      const std::uint64_t number = next_;
      if (worker.process < 0 && !start(worker)) {
        if (busy()) return;  // those that run go on; this one is tried again
        fail(next_++, translated("no worker process could be started"));
        return;
      }
      ++next_;
      worker.number = number;
      worker.got.clear();
      worker.until = Clock::now() +
                     std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(ask_.limits.seconds));
      write_all(worker.socket, reinterpret_cast<const char*>(&number), sizeof number);  // one that died is seen below
    }
  }

  [[nodiscard]] bool busy() const {
    return std::any_of(workers_.begin(), workers_.end(),
                       [](const Worker& worker) { return worker.number.has_value(); });
  }

  bool start(Worker& worker) {
    std::array<int, 2> ends{};
    if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) return false;
    const pid_t process = ::fork();
    if (process == 0) {
      ::close(ends[0]);
      for (const Worker& other : workers_)
        if (other.socket >= 0) ::close(other.socket);
      serve(ends[1], ask_);
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

  /// Closes its socket, upon which an idle one ends, and says how it ended.
  int end(Worker& worker) {
    ::close(worker.socket);
    int status = 0;
    while (::waitpid(worker.process, &status, 0) < 0 && errno == EINTR) {
    }
    worker.socket = -1;
    worker.process = -1;
    worker.number.reset();
    return status;
  }

  void fail(std::size_t number, std::string found) {
    const std::string expected = say("a file that can be judged in {:.0f} s with {:.1f} GB of memory",
                                     ask_.limits.seconds, static_cast<double>(ask_.limits.memory_bytes) / 1e9);
    ready_[number] = ask_.failed(number, Error{"", std::move(found), expected});
  }

  void ended(Worker& worker) {
    const std::size_t number = *worker.number;
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
    if (std::optional<Answer> answer = whole_answer(worker.got)) {
      ready_[*worker.number] = std::move(*answer);
      worker.number.reset();
    }
  }

  /// Until something comes from a worker, or one has had its time.
  void wait() {
    std::vector<pollfd> sockets;
    std::vector<Worker*> of;
    Clock::time_point first = Clock::time_point::max();
    for (Worker& worker : workers_) {
      if (!worker.number) continue;
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
        const std::size_t number = *worker.number;
        ::kill(worker.process, SIGKILL);
        end(worker);
        fail(number, say("worker stopped after {:.0f} s", ask_.limits.seconds));
      }
    }
  }

  const WorkersAsk& ask_;
  std::vector<Worker> workers_;
  std::map<std::size_t, Answer> ready_;
  std::size_t next_ = 0, taken_ = 0;
};

}  // namespace

void run_in_workers(const WorkersAsk& ask) {
  Workers(ask).run();
}

}  // namespace burrow
