#pragma once
/// The real window, as a test drives it.

#include <QApplication>
#include <QMouseEvent>
#include <QTest>

#include "burrow/file/tables_file.h"
#include "burrow/window/main_window.h"
#include "support/settle.h"

namespace burrow {

inline const Tables& tables_for_tests() {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return tables;
}

inline QString sample_path(const char* name) {
  return QStringLiteral(BURROW_SOURCE_DIR "/samples/") + QLatin1String(name) + QStringLiteral(".crossing");
}

inline void raise_launch(Document& document, double by_m) {
  Launch launch = document.crossing().bore.launch;
  launch.elevation.m += by_m;
  document.change(QStringLiteral("raise"), [&](Crossing& to) { to.bore.launch = launch; });
}

/// A window of fixed size on a sample, shown offscreen.
struct TestWindow {
  explicit TestWindow(const char* sample, QSize size = {1600, 900}) : window(tables_for_tests(), QString()) {
    window.resize(size);
    window.set_units(UnitSystem::metric);
    window.set_dark(false);
    window.show();
    opened = window.document().open(sample_path(sample)).has_value();
    QCoreApplication::processEvents();
    window.drawing().zoom_to_fit();
    QCoreApplication::processEvents();
  }

  QWidget* viewport() { return window.drawing().viewport(); }

  void mouse(QEvent::Type type, const QPointF& at, Qt::MouseButton button, Qt::MouseButtons buttons,
             Qt::KeyboardModifiers keys = Qt::NoModifier) {
    QMouseEvent event(type, at, viewport()->mapToGlobal(at), button, buttons, keys);
    QCoreApplication::sendEvent(viewport(), &event);
    QCoreApplication::processEvents();
  }
  void press(const QPointF& at) { mouse(QEvent::MouseButtonPress, at, Qt::LeftButton, Qt::LeftButton); }
  void move(const QPointF& at) { mouse(QEvent::MouseMove, at, Qt::NoButton, Qt::LeftButton); }
  void release(const QPointF& at) { mouse(QEvent::MouseButtonRelease, at, Qt::LeftButton, Qt::NoButton); }
  /// What was surveyed moves only once it is selected.
  void click(const QPointF& at) {
    press(at);
    release(at);
  }
  void drag(const QPointF& from, const QPointF& to, int steps = 8) {
    press(from);
    for (int i = 1; i <= steps; ++i) move(from + (to - from) * i / steps);
    release(to);
  }
  void key(Qt::Key key, Qt::KeyboardModifiers keys = Qt::NoModifier) {
    QTest::keyClick(&window.drawing(), key, keys);
    QCoreApplication::processEvents();
  }
  const Crossing& crossing() { return window.document().crossing(); }

  MainWindow window;
  bool opened = false;
};

}  // namespace burrow
