#pragma once
/// The application of every test of the window: bundled typeface, fixed style, one language, and nothing may keep the
/// screen's thread for longer than a person waits.

#include <gtest/gtest.h>

#include <QFont>
#include <QStandardPaths>

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
    QStandardPaths::setTestModeEnabled(true);
  }

  int run_tests(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    testing::UnitTest::GetInstance()->listeners().Append(new NothingTakesLong);  // which owns it
    return RUN_ALL_TESTS();
  }

 private:
  class NothingTakesLong : public testing::EmptyTestEventListener {
    void OnTestEnd(const testing::TestInfo&) override {
      for (const std::string& fault : take_faults()) ADD_FAILURE() << fault;
    }
  };
};

}  // namespace burrow
