/// Pictures of the main states of the workbench, for a person to look at. Not a test: it judges nothing.

#include <QCheckBox>
#include <QDir>
#include <QScrollArea>
#include <QTextStream>

#include "burrow/drawing/theme.h"
#include "burrow/panels/check_list.h"
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
      if (page == static_cast<int>(burrow::SideColumn::Page::pipe)) w.window.side().pipe().checks()->setCurrentRow(12);
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
