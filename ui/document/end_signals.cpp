#include "burrow/document/end_signals.h"

#include <fcntl.h>
#include <unistd.h>

#include <QSocketNotifier>
#include <array>
#include <csignal>

namespace burrow {

namespace {

std::array<int, 2> ends{-1, -1};

void note(int signal) {
  const auto byte = static_cast<unsigned char>(signal);
  [[maybe_unused]] const auto written = ::write(ends[1], &byte, 1);
}

}  // namespace

void on_end_signal(QObject* parent, std::function<void(int)> then) {
  if (ends[0] < 0 && ::pipe2(ends.data(), O_CLOEXEC | O_NONBLOCK) != 0) return;
  auto* notifier = new QSocketNotifier(ends[0], QSocketNotifier::Read, parent);
  QObject::connect(notifier, &QSocketNotifier::activated, parent, [then = std::move(then)] {
    unsigned char signal = 0;
    if (::read(ends[0], &signal, 1) == 1) then(signal);
  });
  for (const int signal : {SIGTERM, SIGHUP, SIGINT}) {
    struct sigaction action {};
    action.sa_handler = note;
    action.sa_flags = SA_RESTART;
    ::sigaction(signal, &action, nullptr);
  }
}

}  // namespace burrow
