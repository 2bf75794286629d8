#include "ui/keep/child_window.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/mman.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <new>

#include "burrow/document/recovery.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"

namespace burrow::test {

namespace {

/// By the system directly: what the test writes for itself is no part of what is tested.
void write_plainly(const std::string& path, const std::string& text) {
  const auto fd = static_cast<int>(::syscall(SYS_openat, AT_FDCWD, path.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600));
  if (fd < 0 || ::syscall(SYS_write, fd, text.data(), text.size()) != static_cast<long>(text.size())) std::abort();
  ::close(fd);
}

void wait_until(const std::function<bool()>& done) {
  if (!comes(done)) std::abort();
}

}  // namespace

ChildLog* map_log(const std::string& path, bool make) {
  const auto fd = static_cast<int>(::syscall(SYS_openat, AT_FDCWD, path.c_str(), O_RDWR | O_CREAT, 0600));
  if (fd < 0 || ::syscall(SYS_ftruncate, fd, sizeof(ChildLog)) != 0) std::abort();
  void* at = ::mmap(nullptr, sizeof(ChildLog), PROT_READ | PROT_WRITE, MAP_SHARED, fd, 0);
  ::close(fd);
  if (at == MAP_FAILED) std::abort();
  return make ? new (at) ChildLog : static_cast<ChildLog*>(at);
}

pid_t start_child_window(const std::string& log, const std::string& file, const std::string& kept, const char* up) {
  const std::string program = std::filesystem::read_symlink("/proc/self/exe").string();
  std::array<std::string, 6> words{program, child_word, log, file, kept, up};
  std::array<char*, 7> pointers{};
  for (std::size_t i = 0; i < words.size(); ++i) pointers[i] = words[i].data();
  pid_t child = -1;
  if (::posix_spawn(&child, program.c_str(), nullptr, nullptr, pointers.data(), environ) != 0) std::abort();
  return child;
}

std::string edit_file(const std::string& log, long edit) {
  return log + "-edit-" + std::to_string(edit);
}

namespace {

/// One edit that is not kept yet, and a drag half done; then it waits for its end as the program does.
int wait_for_the_end(MainWindow& window, const std::string& log_path, ChildLog& log) {
  window.findChild<Recovery*>()->set_pause(3'600'000);
  window.keep_through_ends();
  QTest::keyClick(&window.drawing(), Qt::Key_Up);
  QTest::keyPress(&window.drawing(), Qt::Key_Up);
  write_plainly(edit_file(log_path, 1), write_crossing(window.document().crossing()));
  log.edit = 1;
  return QApplication::exec();
}

}  // namespace

int run_child_window(char** words) {
  const std::string log_path = words[0];
  ChildLog* log = map_log(log_path, false);
  MainWindow window(tables_for_tests(), QString::fromUtf8(words[2]));
  window.resize(700, 420);
  window.show();
  if (!window.open_file(QString::fromUtf8(words[1]))) return 3;
  auto* recovery = window.findChild<Recovery*>();
  recovery->set_pause(1);
  Document& document = window.document();
  QCoreApplication::processEvents();
  QTest::keyClick(&window.drawing(), Qt::Key_N);  // picks the launch
  use_disk_calls(&log->calls);
  if (std::atoi(words[3]) == 0) return wait_for_the_end(window, log_path, *log);
  const Qt::Key way = std::atoi(words[3]) > 0 ? Qt::Key_Up : Qt::Key_Down;
  for (long edit = 1;; ++edit) {
    log->phase = ChildPhase::editing;
    QTest::keyClick(&window.drawing(), way);
    const std::string text = write_crossing(document.crossing());
    write_plainly(edit_file(log_path, edit), text);
    log->edit = edit;
    log->phase = ChildPhase::autosave;
    log->calls.counting = true;
    wait_until([&] { return read_text_file(recovery->copy_path().toStdString()) == text; });
    log->calls.counting = false;
    log->kept = edit;
    if (edit % 2 != 0) continue;  // of two edits the first is only kept
    log->phase = ChildPhase::save;
    log->calls.counting = true;
    QTest::keyClick(&window, Qt::Key_S, Qt::ControlModifier);
    wait_until([&] { return !document.modified(); });
    log->calls.counting = false;
    log->saved = edit;
  }
}

}  // namespace burrow::test
