#include <QApplication>
#include <QSettings>
#include <QStandardPaths>
#include <QTimer>
#include <chrono>
#include <cstdlib>
#include <iostream>

#include "burrow/document/language.h"
#include "burrow/document/text.h"
#include "burrow/drawing/theme.h"
#include "burrow/file/tables_file.h"
#include "burrow/widgets/edge_style.h"
#include "burrow/window/main_window.h"
#include "commands.h"
#include "kept_memory.h"
#include "version.h"

namespace {

bool display_there() {
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"})
    if (const char* value = std::getenv(name); value && *value) return true;
  return false;
}

int open_workbench(int argc, char** argv, const std::string& file, const std::string& language) {
  if (!display_there()) {
    std::cerr << "burrowline: there is no display to open the workbench on. Without one:\n" << burrow::usage();
    return 2;
  }
  QApplication app(argc, argv);
  QApplication::setApplicationName(QStringLiteral("burrowline"));
  QApplication::setOrganizationName(QStringLiteral("burrowline"));
  QApplication::setApplicationVersion(QStringLiteral(BURROW_VERSION));
  QApplication::setStyle(new burrow::EdgeStyle);
  QFont font(burrow::register_typeface());
  font.setPointSizeF(10);
  QApplication::setFont(font);
  burrow::speak_language(burrow::resolve_language(
      language.empty() ? QSettings().value(QStringLiteral("language"), QStringLiteral("as-desktop")).toString()
                       : burrow::text_from(language)));
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + QStringLiteral("/unsaved");
  burrow::MainWindow window(burrow::load_tables(burrow::today()), folder);
  if (file.empty()) window.show_start();
  window.place_on_screen();
  window.show();
  if (!file.empty() && !window.open_file(burrow::text_from(file))) window.show_start();
  window.offer_left_work();
  window.keep_through_ends();
  QTimer midnight;
  QObject::connect(&midnight, &QTimer::timeout, &window, [&window] { window.document().judge_on(burrow::today()); });
  midnight.start(std::chrono::minutes(1));
  return QApplication::exec();
}

/// What could not be written was not told: a full disk, a closed pipe.
int written(int code) {
  std::cout.flush();
  if (std::cout) return code;
  std::cerr << "burrowline: standard output could not be written\n";
  return 2;
}

}  // namespace

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  burrow::keep_freed_memory();
  std::vector<std::string> args(argv + 1, argv + argc);
  const burrow::Result<std::string> language = burrow::take_language(args);
  if (!language) {
    std::cerr << "burrowline: " << translated_error(language.error()) << '\n';
    return 2;
  }
  const std::string first = args.empty() ? std::string() : args.front();
  const bool help = first == "--help" || first == "-h";
  if (help || first == "--version") {
    if (help) burrow::speak_language(burrow::text_from(*language));
    std::cout << (help ? burrow::usage() : burrow::version_line() + "\n");
    return written(0);
  }
  if (!burrow::is_command(first)) {
    if (args.size() > 1 || (first.size() > 1 && first[0] == '-')) {
      std::cerr << "burrowline: " << first << " is not a command\n" << burrow::usage();
      return 2;
    }
    return open_workbench(argc, argv, first, *language);
  }
  const burrow::CommandArgs rest(args.begin() + 1, args.end());
  const burrow::Streams streams{std::cout, std::cerr};
  if (!burrow::command_draws(first)) {
    burrow::speak_language(burrow::text_from(*language));
    return written(burrow::run_command(first, rest, streams));
  }
  ::setenv("QT_QPA_PLATFORM", "offscreen", 1);  // sheet, picture and export draw, but show nothing
  int none = 1;
  QGuiApplication app(none, argv);
  burrow::speak_language(burrow::text_from(*language));
  return written(burrow::run_command(first, rest, streams));
}
