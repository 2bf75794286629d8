#include "burrow/window/window_place.h"

#include <QMainWindow>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <algorithm>

namespace burrow {

namespace {

constexpr QSize least{960, 600};  ///< of the window, where the screen has that
constexpr QSize least_screen{320, 240};

/// Settings of one size of screen.
QString key_of(const QScreen& screen, const char* what) {
  const QSize size = screen.size();
  return QStringLiteral("window/%1x%2/%3").arg(size.width()).arg(size.height()).arg(QLatin1String(what));
}

}  // namespace

QRect first_place(const QRect& available) {
  constexpr double share = 0.85;
  constexpr QSize roomy{1440, 860};  // less than that is taken as a whole
  const QSize wanted(static_cast<int>(available.width() * share), static_cast<int>(available.height() * share));
  QRect place({0, 0}, wanted.expandedTo(roomy.boundedTo(available.size())));
  place.moveCenter(available.center());
  return within_screen(place, available);
}

QRect within_screen(const QRect& place, const QRect& available) {
  QRect at(place.topLeft(), place.size().expandedTo(least_screen).boundedTo(available.size()));
  at.moveLeft(std::clamp(at.left(), available.left(), available.left() + available.width() - at.width()));
  at.moveTop(std::clamp(at.top(), available.top(), available.top() + available.height() - at.height()));
  return at;
}

void place_window(QMainWindow& window, QSplitter& splitter) {
  const QScreen& screen = *window.screen();
  const QRect available = screen.availableGeometry();
  window.setMinimumSize(least.boundedTo(available.size()));
  const QSettings settings;
  const QRect last = settings.value(key_of(screen, "place")).toRect();
  window.setGeometry(last.isValid() ? within_screen(last, available) : first_place(available));
  if (settings.value(key_of(screen, "maximized")).toBool()) window.setWindowState(Qt::WindowMaximized);
  const int column = settings.value(key_of(screen, "column")).toInt();
  if (column > 0 && column < window.width() && splitter.count() > 1)
    splitter.setSizes({window.width() - column, column});
}

void remember_window(const QMainWindow& window, const QSplitter& splitter) {
  const QScreen& screen = *window.screen();
  QSettings settings;
  settings.setValue(key_of(screen, "place"), window.normalGeometry());
  settings.setValue(key_of(screen, "maximized"), window.isMaximized());
  if (const int column = splitter.sizes().last(); column > 0 && splitter.count() > 1)
    settings.setValue(key_of(screen, "column"), column);
}

}  // namespace burrow
