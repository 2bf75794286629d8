#pragma once
/// The system tells the program to end: SIGTERM, SIGHUP, SIGINT.

#include <functional>

class QObject;

namespace burrow {

/// Calls `then` from the event loop, with the number of the signal, as long as `parent` lives. A signal may come in the
/// middle of anything: all it does itself is to write a byte.   Evidence: Recovery.Signal_*
void on_end_signal(QObject* parent, std::function<void(int)> then);

}  // namespace burrow
