/// Pictures of the main states of the workbench, for a person to look at. Not a test: it judges nothing.

#include <QCheckBox>
#include <QDir>
#include <QPushButton>
#include <QScrollArea>
#include <QSlider>
#include <QTextStream>

#include "burrow/drawing/theme.h"
#include "burrow/panels/try_error_box.h"
#include "window_for_tests.h"

namespace {

void shot(burrow::TestWindow& w, const QString& folder, const QString& name) {
  QCoreApplication::processEvents();
  QTest::qWait(80);  // let the list catch up
  w.window.grab().save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

QPointF grip(burrow::TestWindow& w, burrow::PartKind kind, const std::string& id = {}) {
  return w.window.drawing().place_of({kind, id, -1});
}

/// All of a page that scrolls.
void whole_page(burrow::TestWindow& w, const QString& folder, const QString& name) {
  QCoreApplication::processEvents();
  QTest::qWait(80);  // entries made anew are laid out
  if (const auto* scroll = w.window.side().currentWidget()->findChild<QScrollArea*>())
    scroll->widget()->grab().save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

QPushButton* click(burrow::TestWindow& w, QPushButton* button) {
  (void)w;
  if (button && button->isEnabled()) QTest::mouseClick(button, Qt::LeftButton);
  return button;
}

/// Light and metric, then dark and US.
void both(burrow::TestWindow& w, const QString& folder, const QString& name) {
  shot(w, folder, name);
  whole_page(w, folder, name + QStringLiteral("-whole"));
  w.window.set_dark(true);
  w.window.set_units(burrow::UnitSystem::us);
  shot(w, folder, name + QStringLiteral("-dark-us"));
  whole_page(w, folder, name + QStringLiteral("-whole-dark-us"));
  w.window.set_dark(false);
  w.window.set_units(burrow::UnitSystem::metric);
}

/// The pages of the day and of practice bores, in their states.
void day_and_practice(const QString& folder) {
  using burrow::SideColumn;
  {
    burrow::TestWindow w("house-service");
    burrow::DayPanel& day = w.window.side().day();
    QDateTime now(QDate(2026, 3, 14), QTime(8, 0), Qt::UTC);
    day.set_clock([&now] { return now; });
    w.window.side().show_page(SideColumn::Page::day);
    both(w, folder, QStringLiteral("day-empty"));
    click(w, day.button(QStringLiteral("Start")));
    for (int i = 0; i < 3; ++i) {
      now = now.addSecs(200);
      day.refresh_now();
      click(w, day.button(QStringLiteral("Mark")));
    }
    day.refresh_now();
    both(w, folder, QStringLiteral("day-marks"));
    day.input(QStringLiteral("hose"))->setText(QStringLiteral("nonsense"));
    click(w, day.button(QStringLiteral("Add")));
    both(w, folder, QStringLiteral("day-wrong"));
  }
  for (const char* lesson : {"lesson-mark", "lesson-shallow"}) {
    burrow::TestWindow w(lesson);
    burrow::PracticePanel& page = w.window.side().practice();
    w.window.side().show_page(SideColumn::Page::practice);
    const QString name = QLatin1String(lesson);
    both(w, folder, name + QStringLiteral("-start"));
    click(w, page.button(QStringLiteral("Set out")));
    click(w, page.button(QStringLiteral("Drive")));
    click(w, page.button(QStringLiteral("Take a fix")));
    both(w, folder, name + QStringLiteral("-under-way"));
    for (int i = 0; i < 20 && page.run() && !page.run()->over(); ++i) click(w, page.button(QStringLiteral("Drive")));
    page.finish_reveal();
    click(w, page.button(QStringLiteral("Enter")));
    page.trainer()->setChecked(true);
    page.try_error()->level()->setValue(5);
    both(w, folder, name + QStringLiteral("-debrief"));
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  QApplication::setStyle(QStringLiteral("Fusion"));
  QFont font(burrow::register_typeface());
  font.setPointSizeF(10);
  QApplication::setFont(font);
  const QString folder = argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral(".");
  QDir().mkpath(folder);
  day_and_practice(folder);
  if (argc > 2) return 0;  // those alone
  const QStringList samples{QStringLiteral("house-service"), QStringLiteral("rail-siding"),
                            QStringLiteral("car-park-duct"), QStringLiteral("four-faults"),
                            QStringLiteral("first-lesson"),  QStringLiteral("sixty-utilities")};
  for (const QString& name : samples) {
    burrow::TestWindow w(name.toLatin1().constData());
    shot(w, folder, name);
    w.window.findings().pick(0);
    shot(w, folder, name + QStringLiteral("-picked"));
    w.window.set_dark(true);
    w.window.set_units(burrow::UnitSystem::us);
    shot(w, folder, name + QStringLiteral("-dark-us"));
    w.window.set_dark(false);
  }
  {
    burrow::TestWindow w("house-service");
    const QPointF from = grip(w, burrow::PartKind::utility, w.crossing().site.utilities.front().id);
    w.press(from);
    for (int i = 1; i <= 6; ++i) w.move(from + QPointF(4.0 * i, 9.0 * i));
    shot(w, folder, QStringLiteral("drag-utility"));
    w.release(from + QPointF(24, 54));
    const QPointF launch = grip(w, burrow::PartKind::launch);
    w.press(launch);
    for (int i = 1; i <= 6; ++i) w.move(launch + QPointF(2.0 * i, -8.0 * i));
    shot(w, folder, QStringLiteral("drag-launch"));
    w.release(launch + QPointF(12, -48));
    w.window.drawing().pick({burrow::PartKind::launch, {}, -1});
    w.key(Qt::Key_Return);
    shot(w, folder, QStringLiteral("typing"));
  }
  for (const char* name : {"house-service", "sixty-utilities", "first-lesson"}) {
    burrow::TestWindow w(name);
    w.window.drawing().set_turning_strip(true);
    w.window.drawing().zoom_to_fit();
    for (int page = 1; page < w.window.side().count(); ++page) {
      w.window.side().setCurrentIndex(page);
      if (page == 2) {
        w.window.side().trials().cloud_wanted()->setChecked(true);
        (void)QTest::qWaitFor([&] { return !w.window.side().desk().running(); }, 60000);
        QTest::qWait(150);
      }
      if (page == 1) w.window.side().path().rescue_wanted()->setChecked(true);
      if (page == static_cast<int>(burrow::SideColumn::Page::surface)) w.window.side().surface().add_peg();
      if (page == static_cast<int>(burrow::SideColumn::Page::pits)) {
        w.window.side().pits().show_pit(burrow::WhichPit::exit);
        whole_page(w, folder, QStringLiteral("%1-exit-pit").arg(QLatin1String(name)));
        w.window.side().pits().show_pit(burrow::WhichPit::launch);
      }
      shot(w, folder, QStringLiteral("%1-page%2").arg(QLatin1String(name)).arg(page));
      whole_page(w, folder, QStringLiteral("%1-page%2-whole").arg(QLatin1String(name)).arg(page));
      w.window.side().path().rescue_wanted()->setChecked(false);
      w.window.set_dark(true);
      w.window.set_units(burrow::UnitSystem::us);
      shot(w, folder, QStringLiteral("%1-page%2-dark-us").arg(QLatin1String(name)).arg(page));
      whole_page(w, folder, QStringLiteral("%1-page%2-whole-dark-us").arg(QLatin1String(name)).arg(page));
      w.window.set_dark(false);
      w.window.set_units(burrow::UnitSystem::metric);
    }
  }
  for (const char* name : {"house-service", "rail-siding", "four-faults"}) {
    burrow::TestWindow w(name);
    w.window.drawing().set_rise(true);
    shot(w, folder, QStringLiteral("%1-rise").arg(QLatin1String(name)));
    w.window.set_dark(true);
    w.window.set_units(burrow::UnitSystem::us);
    shot(w, folder, QStringLiteral("%1-rise-dark-us").arg(QLatin1String(name)));
    w.window.set_dark(false);
  }
  {
    burrow::TestWindow w("house-service", {900, 620});
    shot(w, folder, QStringLiteral("small"));
  }
  return 0;
}
