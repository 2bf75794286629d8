#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  QApplication app(argc, argv);
  QApplication::setOrganizationName(QStringLiteral("burrowline-tests"));
  QApplication::setApplicationName(QStringLiteral("burrowline-tests"));
  QApplication::setStyle(QStringLiteral("Fusion"));
  QFont font(burrow::register_typeface());
  font.setPointSizeF(10);
  QApplication::setFont(font);
  // The language is chosen before tables, samples and windows are read, as the program does it.
  burrow::speak_language(QStringLiteral(BURROW_TEST_LANGUAGE));
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
