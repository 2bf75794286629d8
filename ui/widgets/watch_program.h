#pragma once
/// An event filter over the whole program.

#include <QApplication>
#include <QPointer>

namespace burrow {

/// Installs one filter of its kind, however many windows ask for it; it goes with the application.
template <class Filter>
void watch_program() {
  static QPointer<Filter> one;
  if (one) return;
  one = new Filter(qApp);
  qApp->installEventFilter(one);
}

}  // namespace burrow
