#pragma once
/// The real window is killed while it keeps and saves; after each kill the next start must find everything.

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QPushButton>
#include <QTemporaryDir>
#include <QTimer>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <random>

#include "burrow/document/open_mark.h"
#include "burrow/document/recovery.h"
#include "burrow/window/left_work_dialog.h"
#include "support/window_for_tests.h"
#include "ui/keep/child_window.h"

namespace burrow::test {

inline std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

class KilledWindow {
 public:
  explicit KilledWindow(unsigned seed) : random_(seed) {
    QFile::copy(sample_path("first-lesson"), QString::fromStdString(file_));
    QFile(QString::fromStdString(file_)).setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);
    std::filesystem::create_directory(kept_);
  }

  /// One life of the window, ended by a kill, and what the next start makes of it.
  void kill_once(int round) {
    log_ = map_log(log_path_, true);
    before_ = bytes_of(file_);
    const bool by_time = round % 4 == 3;
    if (!by_time) {
      constexpr unsigned calls_of_two_edits = 60;
      log_->calls.kill_at = 1 + static_cast<long>(random_() % calls_of_two_edits);
      log_->calls.kill_in_the_middle = random_() % 2 == 0;
    }
    const pid_t child = start_child_window(log_path_, file_, kept_, round % 2 == 0 ? "1" : "-1");
    if (by_time) kill_by_time(child);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL) << "round " << round << ", status " << status;
    note_hit(by_time);
    judge(round);
    ::munmap(log_, sizeof(ChildLog));
  }

  void tell() const {
    for (const auto& [where, count] : hits_) std::cout << "  " << where << ": " << count << '\n';
  }
  [[nodiscard]] int hits(const std::string& begin) const {
    int all = 0;
    for (const auto& [where, count] : hits_) all += where.starts_with(begin) ? count : 0;
    return all;
  }

 private:
  void kill_by_time(pid_t child) {
    const auto edits = static_cast<long>(1 + random_() % 4);
    while (log_->edit < edits && ::waitpid(child, nullptr, WNOHANG) == 0) ::sched_yield();
    for (auto spins = random_() % 20'000'000u; spins > 0; --spins) static_cast<void>(log_->edit.load());
    ::kill(child, SIGKILL);
  }

  void note_hit(bool by_time) {
    static constexpr const char* phases[] = {"starting", "editing", "autosave", "save"};
    static constexpr const char* calls[] = {
        "open",   "write",  "pwrite", "fsync of the file", "fsync of the folder", "ftruncate", "rename",
        "unlink", "fchmod", "fchown"};
    std::string where = phases[static_cast<std::size_t>(log_->phase.load())];
    if (by_time)
      where += ", by time";
    else
      where += std::string(", ") + calls[log_->calls.killed_in] + (log_->calls.kill_in_the_middle ? " done" : " begun");
    ++hits_[where];
  }

  [[nodiscard]] std::string edit(long n) const { return n == 0 ? before_ : bytes_of(edit_file(log_path_, n)); }

  void judge(int round) {
    const std::string shown_text = "round " + std::to_string(round) + ", edit " + std::to_string(log_->edit) +
                                   ", kept " + std::to_string(log_->kept) + ", saved " + std::to_string(log_->saved) +
                                   ", call " + std::to_string(log_->calls.kill_at);
    SCOPED_TRACE(shown_text);
    const std::string there = bytes_of(file_);
    const bool saving = log_->phase == ChildPhase::save;
    const bool is_old = there == edit(log_->saved);
    ASSERT_TRUE(is_old || (saving && there == edit(log_->edit))) << "the file is neither the old nor the new one";

    // The next start: leftovers go, and what is offered is right.
    const QString kept = QString::fromStdString(kept_);
    const QString file = QString::fromStdString(file_);
    Recovery::clean(kept);
    const std::vector<LeftWork> left = Recovery::left_work(kept);
    const bool unsaved = there != edit(log_->edit);
    const bool must_be_there = unsaved && log_->kept > log_->saved;
    ASSERT_LE(left.size(), 1u);
    ASSERT_TRUE(!left.empty() || !must_be_there) << "kept work is lost";
    ASSERT_TRUE(left.empty() || unsaved) << "offered, but it is saved already";
    if (!left.empty()) {
      const std::string copy = bytes_of(left.front().copy.toStdString());
      ASSERT_TRUE(copy == edit(log_->edit) || (copy == edit(log_->kept) && log_->kept > log_->saved));
      ASSERT_EQ(left.front().original, file);
    }
    round % 10 == 0 ? start_again(left) : take_back(left);
    EXPECT_EQ(entries(kept_), 0) << "leftovers among the copies";
    EXPECT_EQ(entries(shared_), 1) << "leftovers beside the file";
  }

  /// As the program does it, without its window.
  void take_back(const std::vector<LeftWork>& left) {
    const QString file = QString::fromStdString(file_);
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(file));
    OpenMark mark;
    EXPECT_FALSE(mark.take(file)) << "the dead window still counts as having it open";
    if (left.empty()) return;
    const std::string copy = bytes_of(left.front().copy.toStdString());
    ASSERT_TRUE(Recovery::take_back(document, left.front()));
    EXPECT_TRUE(document.modified());
    EXPECT_EQ(document.on_disk(), OnDisk::as_known);
    ASSERT_TRUE(document.save_as(document.path()));
    EXPECT_EQ(bytes_of(file_), copy);
    Recovery::discard(left.front());
  }

  /// The window itself: it offers the work, which is taken back by its button and saved.
  void start_again(const std::vector<LeftWork>& left) {
    const std::string copy = left.empty() ? "" : bytes_of(left.front().copy.toStdString());
    MainWindow window(tables_for_tests(), QString::fromStdString(kept_));
    window.show();
    ASSERT_TRUE(window.open_file(QString::fromStdString(file_)));
    int offered = 0;
    QTimer style;
    QObject::connect(&style, &QTimer::timeout, [&] {
      auto* dialog = qobject_cast<LeftWorkDialog*>(QApplication::activeModalWidget());
      if (!dialog) return;
      style.stop();
      ++offered;
      for (auto* button : dialog->findChildren<QPushButton*>())
        if (button->text().remove(QLatin1Char('&')) == QLatin1String("Recover")) button->click();
    });
    style.start(5);
    window.offer_left_work();
    style.stop();
    EXPECT_EQ(offered, left.empty() ? 0 : 1);
    if (!left.empty()) {
      EXPECT_TRUE(window.save());
      EXPECT_EQ(bytes_of(file_), copy);
    }
    window.close();
  }

  static long entries(const std::string& folder) {
    return std::distance(std::filesystem::directory_iterator(folder), std::filesystem::directory_iterator());
  }

  std::mt19937 random_;
  QTemporaryDir folder_;
  std::string root_ = folder_.path().toStdString();
  std::string shared_ = [this] {
    std::filesystem::create_directory(root_ + "/shared");
    return root_ + "/shared";
  }();
  std::string file_ = shared_ + "/a.crossing";
  std::string kept_ = root_ + "/unsaved";
  std::string log_path_ = root_ + "/log";
  std::string before_;
  ChildLog* log_ = nullptr;
  std::map<std::string, int> hits_;
};

/// `kills` lives; answers what the kills met.
inline KilledWindow& kill_windows(KilledWindow& window, int kills) {
  for (int round = 0; round < kills; ++round) {
    window.kill_once(round);
    if (testing::Test::HasFatalFailure()) break;
  }
  window.tell();
  return window;
}

}  // namespace burrow::test
