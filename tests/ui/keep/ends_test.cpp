// Ends that nobody chose: signals, a logout. What was not kept yet is kept then.

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <QDir>
#include <QSessionManager>
#include <QTemporaryDir>
#include <array>
#include <csignal>
#include <fstream>
#include <iterator>

#include "burrow/document/recovery.h"
#include "burrow/file/crossing_file.h"
#include "support/window_for_tests.h"
#include "ui/keep/child_window.h"

namespace burrow::test {
namespace {

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

// The window as a process, with an edit of this moment and an arrow key held down.
TEST(Ends, Signal_KeepsWhatIsOnTheScreen) {
  for (const int signal : {SIGTERM, SIGHUP, SIGINT}) {
    QTemporaryDir folder;
    const std::string log_path = folder.filePath(QStringLiteral("log")).toStdString();
    const QString file = folder.filePath(QStringLiteral("a.crossing"));
    const QString kept = folder.filePath(QStringLiteral("unsaved"));
    ASSERT_TRUE(QFile::copy(sample_path("first-lesson"), file));
    const std::string before = bytes_of(file.toStdString());
    ChildLog* log = map_log(log_path, true);
    const pid_t child = start_child_window(log_path, file.toStdString(), kept.toStdString(), "0");
    int status = 0;
    ASSERT_TRUE(comes([&] { return log->edit == 1; }));
    ::kill(child, signal);
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFEXITED(status)) << status;
    EXPECT_EQ(WEXITSTATUS(status), 128 + signal);
    EXPECT_EQ(bytes_of(file.toStdString()), before) << "nobody saved";
    const auto left = Recovery::left_work(kept);
    ASSERT_EQ(left.size(), 1u);
    EXPECT_EQ(left.front().original, file);
    EXPECT_EQ(bytes_of(left.front().copy.toStdString()), bytes_of(edit_file(log_path, 1)));
  }
}

/// The session's own object cannot be made by hand; nobody looks into it.
void log_out() {
  alignas(QSessionManager) static std::array<unsigned char, sizeof(QSessionManager)> session{};
  Q_EMIT qApp->commitDataRequest(reinterpret_cast<QSessionManager&>(session));
}

TEST(Ends, Logout_KeepsAndMayBeCalledOff) {
  QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("a.crossing"));
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  ASSERT_TRUE(QFile::copy(sample_path("first-lesson"), file));
  QFile(file).setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);
  {
    MainWindow window(tables_for_tests(), kept);
    window.show();
    ASSERT_TRUE(window.open_file(file));
    auto* recovery = window.findChild<Recovery*>();
    recovery->set_pause(3'600'000);
    window.keep_through_ends();
    log_out();
    EXPECT_FALSE(QFile::exists(recovery->copy_path())) << "nothing to keep";
    QTest::keyClick(&window.drawing(), Qt::Key_N);
    QTest::keyClick(&window.drawing(), Qt::Key_Up);
    log_out();
    EXPECT_EQ(bytes_of(recovery->copy_path().toStdString()), write_crossing(window.document().crossing()));
    // The session goes on: work is saved as ever, and the copy goes.
    EXPECT_TRUE(window.save());
    EXPECT_FALSE(QFile::exists(recovery->copy_path()));
    window.close();
  }
  EXPECT_TRUE(Recovery::left_work(kept).empty());
  for (const int signal : {SIGTERM, SIGHUP, SIGINT}) std::signal(signal, SIG_DFL);
}

}  // namespace
}  // namespace burrow::test
