#include <gtest/gtest.h>

#include <QApplication>
#include <QStandardPaths>
#include <string_view>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"
#include "ui/keep/child_window.h"

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
  burrow::speak_language(QStringLiteral("en"));
  if (argc == 6 && std::string_view(argv[1]) == burrow::test::child_word)
    return burrow::test::run_child_window(argv + 2);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
