#pragma once
/// The application of every test of the window: bundled typeface, fixed style, one language, and nothing may keep the
/// screen's thread for longer than a person waits.

#include <gtest/gtest.h>

#include <QDir>
#include <QFont>
#include <QStandardPaths>
#include <QTemporaryDir>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"
#include "support/watchdog.h"

namespace burrow {

class ApplicationForTests : public WatchedApplication {
 public:
  ApplicationForTests(int& argc, char** argv, const QString& language) : WatchedApplication(argc, argv) {
    setOrganizationName(QStringLiteral("burrowline-tests"));
    setApplicationName(QStringLiteral("burrowline-tests"));
    setStyle(QStringLiteral("Fusion"));
    QFont font(register_typeface());
    font.setPointSizeF(10);
    setFont(font);
    // The language is chosen before tables, samples and windows are read, as the program does it.
    speak_language(language);
  }
  /// Before the application is made.
  static void without_a_display() {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    live_alone();
    QStandardPaths::setTestModeEnabled(true);
  }

  int run_tests(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    testing::UnitTest::GetInstance()->listeners().Append(new NothingTakesLong);  // which owns it
    return RUN_ALL_TESTS();
  }

 private:
  /// A home of its own, gone with the program: what one test sets, another that runs at the same time or later must not
  /// find. A process that a test starts lives in its home.
  static void live_alone() {
    if (qEnvironmentVariableIsSet("BURROW_HOME_FOR_TESTS")) return;
    static const QTemporaryDir home;
    if (!home.isValid()) return;
    if (qEnvironmentVariableIsEmpty("XDG_CACHE_HOME"))  // typefaces are read once for all
      qputenv("XDG_CACHE_HOME", QDir::home().filePath(QStringLiteral(".cache")).toUtf8());
    qputenv("HOME", home.path().toUtf8());
    qputenv("BURROW_HOME_FOR_TESTS", home.path().toUtf8());
  }

  class NothingTakesLong : public testing::EmptyTestEventListener {
    void OnTestEnd(const testing::TestInfo&) override {
      for (const std::string& fault : take_faults()) ADD_FAILURE() << fault;
    }
  };
};

}  // namespace burrow
