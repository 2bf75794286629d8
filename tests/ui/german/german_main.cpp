#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"

// In German from the start, as a program started with that language: tables and samples are read after it.
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
  burrow::speak_language(QStringLiteral("de"));
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
