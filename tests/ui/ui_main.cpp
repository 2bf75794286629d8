#include <gtest/gtest.h>

#include <QStandardPaths>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"
#include "watchdog.h"

namespace {

/// No event of any test may keep the screen's thread for longer than a person waits.
class NothingTakesLong : public testing::EmptyTestEventListener {
  void OnTestEnd(const testing::TestInfo&) override {
    for (const std::string& fault : burrow::WatchedApplication::take_faults()) ADD_FAILURE() << fault;
  }
};

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  burrow::WatchedApplication app(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("burrowline-tests"));
  QApplication::setApplicationName(QStringLiteral("burrowline-tests"));
  QApplication::setStyle(QStringLiteral("Fusion"));
  QFont font(burrow::register_typeface());
  font.setPointSizeF(10);
  QApplication::setFont(font);
  // The language is chosen before tables, samples and windows are read, as the program does it.
  burrow::speak_language(QStringLiteral(BURROW_TEST_LANGUAGE));
  testing::InitGoogleTest(&argc, argv);
  testing::UnitTest::GetInstance()->listeners().Append(new NothingTakesLong);  // which owns it
  return RUN_ALL_TESTS();
}
