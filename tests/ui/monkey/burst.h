#pragma once
/// A burst of the monkey on a sample in the real window, and what must hold after it.

#include <gtest/gtest.h>
#include <malloc.h>

#include <QDir>
#include <QTemporaryDir>
#include <QUndoStack>
#include <iostream>

#include "burrow/file/crossing_file.h"
#include "monkey/monkey.h"
#include "support/watchdog.h"
#include "support/window_for_tests.h"

#if defined(BURROW_SANITIZED)
extern "C" std::size_t __sanitizer_get_current_allocated_bytes();  // NOLINT: its own name
#endif

namespace burrow {

/// Memory in use, without what the allocator keeps for later.
inline double live_megabytes() {
#if defined(BURROW_SANITIZED)
  return static_cast<double>(__sanitizer_get_current_allocated_bytes()) / 1e6;
#else
  return static_cast<double>(mallinfo2().uordblks) / 1e6;
#endif
}

/// A window that keeps its unsaved work in a folder of its own, as the program's does.
class MonkeyHouse {
 public:
  MonkeyHouse() : window_(tables_for_tests(), folder_.filePath(QStringLiteral("unsaved"))) {
    QDir::setCurrent(folder_.path());
    QGuiApplication::setQuitOnLastWindowClosed(false);
    window_.resize(1366, 768);
    window_.show();
    QObject::connect(&window_.document(), &Document::replaced, &window_, [this] { note_first(); });
  }
  MainWindow& window() { return window_; }

  void start(const QString& sample) {
    sample_ = sample;
    window_.open_sample(sample);
    note_first();
    QCoreApplication::processEvents();
  }

  /// The seed and the last events stand in every message.
  void burst(unsigned seed, int events) {
    Monkey monkey(window_, seed, folder_.path());
    const QString log = qEnvironmentVariable("BURROW_MONKEY_LOG");
    if (!log.isEmpty()) monkey.log_to(QStringLiteral("%1.%2").arg(log).arg(seed), sample_);
    WatchedApplication::on_fault([&] {
      std::cerr << "seed " << seed << ", event " << monkey.sent() << '\n' << monkey.last_events().toStdString();
    });
    const QString replay = qEnvironmentVariable("BURROW_MONKEY_PLAY");
    if (replay.isEmpty()) {
      monkey.run(events);
    } else {
      if (const QString sample = Monkey::sample_of(replay); !sample.isEmpty()) start(sample);
      monkey.play(replay);
    }
    WatchedApplication::on_fault({});
    sent_ += monkey.sent();
    for (const auto& [window, times] : monkey.windows()) windows_[window] += times;
    for (const std::string& fault : WatchedApplication::take_faults())
      ADD_FAILURE() << "seed " << seed << ": " << fault << "\nlast events:\n" << monkey.last_events().toStdString();
    check_undo(seed, monkey);
  }
  [[nodiscard]] long sent() const { return sent_; }
  [[nodiscard]] int undone() const { return undone_; }
  [[nodiscard]] const std::map<QString, int>& windows() const { return windows_; }

 private:
  void note_first() { first_ = write_crossing(window_.document().crossing()); }

  /// All undone is the first file byte for byte, all redone the last.
  void check_undo(unsigned seed, const Monkey& monkey) {
    Document& document = window_.document();
    // An arrow key whose release went to another widget is let go by a timer.
    ASSERT_TRUE(comes([&] { return !document.in_session(); })) << "seed " << seed << ": a drag was left open\n"
                                                               << monkey.last_events().toStdString();
    QUndoStack& stack = document.undo_stack();
    const int steps = stack.index();
    const std::string last = write_crossing(document.crossing());
    undone_ += steps;
    stack.setIndex(0);
    EXPECT_EQ(write_crossing(document.crossing()), first_) << "seed " << seed << ", " << steps << " steps undone";
    stack.setIndex(steps);
    EXPECT_EQ(write_crossing(document.crossing()), last) << "seed " << seed << ", " << steps << " steps redone";
    // What was drawn and judged can be read again: nothing that the screen made is refused by the file.
    const Result<Crossing> again = read_crossing(last, document.tables());
    EXPECT_TRUE(again) << "seed " << seed << ": " << (again ? std::string() : again.error().english());
  }

  QTemporaryDir folder_;
  QString sample_;
  MainWindow window_;
  std::string first_;
  std::map<QString, int> windows_;
  long sent_ = 0;
  int undone_ = 0;
};

}  // namespace burrow
