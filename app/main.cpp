#include <QApplication>
#include <QStandardPaths>
#include <cstdlib>
#include <iostream>

#include "burrow/drawing/theme.h"
#include "burrow/file/tables_file.h"
#include "burrow/window/main_window.h"
#include "commands.h"

namespace {

bool display_there() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (const char* value = std::getenv(name); value && *value) return true;
  return false;
}

int open_workbench(int argc, char** argv, const std::string& file) {
  if (!display_there()) {
    std::cerr << "burrowline: there is no display to open the workbench on. Without one:\n" << burrow::usage();
    return 2;
  }
  QApplication app(argc, argv);
  QApplication::setApplicationName(QStringLiteral("burrowline"));
  QApplication::setOrganizationName(QStringLiteral("burrowline"));
  QApplication::setApplicationVersion(QStringLiteral(BURROW_VERSION));
  QApplication::setStyle(QStringLiteral("Fusion"));
  QFont font(burrow::register_typeface());
  font.setPointSizeF(10);
  QApplication::setFont(font);
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + QStringLiteral("/unsaved");
  burrow::MainWindow window(burrow::load_tables(), folder);
  if (file.empty()) window.open_sample(QStringLiteral("house-service"));
  window.show();
  if (file.empty()) window.show_first_hints();
  if (!file.empty() && !window.open_file(QString::fromStdString(file)))
    window.open_sample(QStringLiteral("house-service"));
  window.offer_left_work();
  return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + 1, argv + argc);
  const std::string first = words.empty() ? std::string() : words.front();
  if (first == "--help" || first == "-h") {
    std::cout << burrow::usage();
    return 0;
  }
  if (first == "--version") {
    std::cout << "burrowline " BURROW_VERSION "\n";
    return 0;
  }
  if (!burrow::is_command(first)) {
    if (words.size() > 1 || (first.size() > 1 && first[0] == '-')) {
      std::cerr << "burrowline: " << first << " is not a command\n" << burrow::usage();
      return 2;
    }
    return open_workbench(argc, argv, first);
  }
  const burrow::CommandWords rest(words.begin() + 1, words.end());
  const burrow::Streams streams{std::cout, std::cerr};
  if (first == "check" || first == "search" || first == "import" || first == "learn")
    return burrow::run_command(first, rest, streams);
  ::setenv("QT_QPA_PLATFORM", "offscreen", 1);  // sheet, picture and export draw, but show nothing
  int none = 1;
  QGuiApplication app(none, argv);
  return burrow::run_command(first, rest, streams);
}
