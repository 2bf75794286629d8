/// The wheel over a page scrolls it and changes nothing, whatever lies under the pointer.

#include <gtest/gtest.h>

#include <QtTest/qtestspontaneevent.h>
#include <QAbstractSlider>
#include <QAbstractSpinBox>
#include <QComboBox>
#include <QScrollArea>
#include <QScrollBar>
#include <QWheelEvent>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

void turn_wheel_over(QWidget& widget, Qt::KeyboardModifiers keys = Qt::NoModifier) {
  const QPointF middle = QRectF(widget.rect()).center();
  QWheelEvent event(middle, widget.mapToGlobal(middle), {0, 0}, {0, -120}, Qt::NoButton, keys, Qt::NoScrollPhase,
                    false);
  QSpontaneKeyEvent::setSpontaneous(&event);  // as from a person: only such a one goes on to the widgets around
  qApp->notify(&widget, &event);
  QCoreApplication::processEvents();
}

/// What a widget holds, as text; empty for one that holds nothing.
QString held(const QWidget& widget) {
  if (const auto* choice = qobject_cast<const QComboBox*>(&widget))
    return QStringLiteral("%1 %2").arg(choice->currentIndex()).arg(choice->currentText());
  if (const auto* slider = qobject_cast<const QAbstractSlider*>(&widget))
    return qobject_cast<const QScrollBar*>(slider) ? QString() : QString::number(slider->value());
  if (const auto* number = qobject_cast<const QAbstractSpinBox*>(&widget)) return number->text();
  return {};
}

TEST(WheelGuard, OverEveryPage_NoValueChanges) {
  TestWindow test("house-service");
  const Crossing before = test.crossing();
  int tried = 0;
  for (int page = 0; page < test.window.side().count(); ++page) {
    test.window.side().setCurrentIndex(page);
    settle(test.window);
    for (QWidget* widget : test.window.side().currentWidget()->findChildren<QWidget*>()) {
      const QString value = held(*widget);
      if (value.isEmpty() || !widget->isVisible()) continue;
      for (const bool focused : {false, true}) {
        focused ? widget->setFocus() : test.window.drawing().setFocus();
        turn_wheel_over(*widget);
        EXPECT_EQ(held(*widget), value) << test.window.side().page_name(page).toStdString() << ": "
                                        << widget->accessibleName().toStdString();
      }
      ++tried;
    }
  }
  EXPECT_GT(tried, 30);
  EXPECT_EQ(test.crossing(), before);
}

TEST(WheelGuard, OverAChoice_ScrollsThePage) {
  TestWindow test("house-service", {1280, 720});
  test.window.side().show_page(SideColumn::Page::utilities);
  settle(test.window);
  QWidget& page = *test.window.side().currentWidget();
  auto* area = page.findChild<QScrollArea*>();
  ASSERT_TRUE(area);
  ASSERT_GT(area->verticalScrollBar()->maximum(), 0);
  int tried = 0;
  for (QComboBox* choice : page.findChildren<QComboBox*>()) {
    if (!choice->isVisible()) continue;
    area->verticalScrollBar()->setValue(0);
    area->ensureWidgetVisible(choice);
    const int before = area->verticalScrollBar()->value();
    if (before == area->verticalScrollBar()->maximum()) continue;
    turn_wheel_over(*choice);
    EXPECT_GT(area->verticalScrollBar()->value(), before) << choice->accessibleName().toStdString();
    ++tried;
  }
  EXPECT_GT(tried, 2);
}

TEST(WheelGuard, WithFocusAndCtrl_ChangesIt) {
  QComboBox choice;
  choice.addItems({"one", "two", "three"});
  TestWindow test("house-service");  // whose filter it is
  choice.show();
  choice.activateWindow();
  choice.setFocus();
  ASSERT_TRUE(comes([&] { return choice.hasFocus(); }));
  turn_wheel_over(choice);
  EXPECT_EQ(choice.currentIndex(), 0);
  turn_wheel_over(choice, Qt::ControlModifier);
  EXPECT_EQ(choice.currentIndex(), 1);
}

}  // namespace
}  // namespace burrow
