/// Pictures of the main states of the workbench, for a person to look at. Not a test: it judges nothing.

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QDir>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QSlider>
#include <QTemporaryDir>
#include <QTextStream>
#include <cmath>

#include "burrow/document/language.h"
#include "burrow/drawing/theme.h"
#include "burrow/panels/check_list.h"
#include "burrow/window/guided_crossing.h"
#include "burrow/window/import_screen.h"
#include "burrow/window/what_if_bar.h"
#include "support/window_for_tests.h"

namespace {

void shot(burrow::TestWindow& w, const QString& folder, const QString& name) {
  burrow::settle(w.window);
  w.window.grab().save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

QPointF grip(burrow::TestWindow& w, burrow::ItemKind kind, const std::string& id = {}) {
  return w.window.drawing().place_of({kind, id, -1});
}

/// All of a page that scrolls.
void whole_page(burrow::TestWindow& w, const QString& folder, const QString& name) {
  burrow::settle(w.window);
  if (const auto* scroll = w.window.side().currentWidget()->findChild<QScrollArea*>())
    scroll->widget()->grab().save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

/// A street as a surveyor hands it over: ground, kerbs, two mains, houses.
void write_street(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return;
  int number = 0;
  const auto point = [&](double x, double y, double z, const char* code) {
    file.write(QStringLiteral("%1,%2,%3,%4,%5\n")
                   .arg(++number)
                   .arg(5200 + y, 0, 'f', 3)
                   .arg(4100 + x, 0, 'f', 3)
                   .arg(z, 0, 'f', 3)
                   .arg(QLatin1String(code))
                   .toUtf8());
  };
  const auto ground = [](double x, double y) {
    return 101.6 + 0.015 * x + 0.12 * std::sin(y / 6) - (std::abs(y) < 4 ? 0.15 : 0.0);
  };
  for (int i = 0; i < 13; ++i)
    for (int k = -6; k <= 6; ++k) point(5 * i + 0.4 * k, 4 * k + 0.3 * i, ground(5 * i, 4 * k), "GND");
  for (const double y : {-4.0, 4.0})
    for (int i = 0; i < 13; ++i) point(5 * i, y, ground(5 * i, y), y < 0 ? "KERB-S" : "KERB-N");
  for (int i = 0; i < 13; ++i) point(5 * i, -1.5 + 0.04 * i, 100.7, "GAS");
  for (int i = 0; i < 13; ++i) point(5 * i, 2.2 - 0.05 * i, 0, "WATER");
  for (int i = 0; i < 4; ++i) point(14 * i + 3, 13, ground(14 * i, 13), "FENCE");
  file.write("not a point\n9999,5200,,101,GND\n");
}

void import_screens(const QString& folder) {
  QTemporaryDir temporary;
  const QString street = temporary.filePath(QStringLiteral("street.csv"));
  write_street(street);
  for (const bool dark : {false, true}) {
    burrow::TestWindow w("house-service");
    w.window.set_dark(dark);
    const auto theme = dark ? burrow::Theme::night() : burrow::Theme::light();
    burrow::ImportScreen screen(burrow::tables_for_tests(), theme,
                                dark ? burrow::UnitSystem::us : burrow::UnitSystem::metric, QString(), nullptr);
    const auto settle = [&](const char* name) {
      (void)burrow::comes([&] { return !screen.busy(); });
      burrow::settle(screen);
      screen.grab().save(
          QDir(folder).filePath(QLatin1String(name) + (dark ? QStringLiteral("-dark.png") : QStringLiteral(".png"))));
    };
    screen.show();
    settle("import-empty");
    screen.add_file(street);
    settle("import-found");
    for (int row = 0; row < screen.layers().rowCount({}); ++row) {
      using burrow::LayerModel;
      screen.layers().setData(screen.layers().index(row, LayerModel::join), row == 0 ? Qt::Unchecked : Qt::Checked,
                              Qt::CheckStateRole);
      screen.layers().setData(screen.layers().index(row, LayerModel::heights), 1, Qt::EditRole);
    }
    screen.set_line({{4120, 5190}, {4124, 5211}});
    settle("import-line");
    screen.resize(900, 620);
    settle("import-small");
    w.window.take_import(screen.imported(), true);
    shot(w, folder, QStringLiteral("import-taken") + (dark ? QStringLiteral("-dark") : QString()));
    w.window.set_dark(false);
  }
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
    click(w, page.button(QStringLiteral("Start boring")));
    click(w, page.button(QStringLiteral("Drive")));
    click(w, page.button(QStringLiteral("Locate the tool")));
    both(w, folder, name + QStringLiteral("-under-way"));
    for (int i = 0; i < 20 && page.run() && !page.run()->over(); ++i) click(w, page.button(QStringLiteral("Drive")));
    page.finish_reveal();
    click(w, page.button(QStringLiteral("Enter")));
    page.trainer()->setChecked(true);
    w.window.what_if().show();
    w.window.what_if().slider(burrow::WhatIfBar::level)->setValue(10);
    both(w, folder, name + QStringLiteral("-debrief"));
  }
}

/// The six questions and the three hints.
void newcomer(const QString& folder) {
  for (const bool dark : {false, true}) {
    const burrow::UnitSystem units = dark ? burrow::UnitSystem::us : burrow::UnitSystem::metric;
    burrow::TestWindow w("house-service");
    w.window.set_dark(dark);
    w.window.set_units(units);
    const QString end = dark ? QStringLiteral("-dark-us.png") : QStringLiteral(".png");
    w.window.show_hints();
    for (int i = 0; i < 3 && w.window.hints(); ++i) {
      burrow::settle(w.window);
      w.window.grab().save(QDir(folder).filePath(QStringLiteral("hint-%1").arg(i + 1) + end));
      for (QPushButton* b : w.window.findChildren<QPushButton*>())
        if (b->text() == QLatin1String("Next hint") && b->isVisible()) b->click();
    }
    const QTemporaryDir own_folder;
    const burrow::CrewDefaults own(own_folder.path(), burrow::tables_for_tests());
    (void)own.keep(w.crossing());
    burrow::SettingsDialog settings({units, burrow::Colours::light}, own, w.crossing(), &w.window);
    settings.show();
    burrow::settle(settings);
    settings.grab().save(QDir(folder).filePath(QStringLiteral("settings") + end));
    settings.hide();
    burrow::GuidedCrossing guide(burrow::tables_for_tests(), dark ? burrow::Theme::night() : burrow::Theme::light(),
                                 units, std::nullopt, &w.window);
    guide.show();
    for (int question = 0; question < 6; ++question) {
      guide.go_to(question);
      if (question == 3)
        for (QPushButton* b : guide.findChildren<QPushButton*>())
          if (b->text().contains(QLatin1String("dd a line")))
            for (int k = 0; k < 3; ++k) b->click();
      burrow::settle(guide);
      guide.grab().save(QDir(folder).filePath(QStringLiteral("guide-%1").arg(question + 1) + end));
    }
  }
}

/// Ground that rises across the line, surveyed; a floor with corners; the section across; hidden things of a practice.
void surveyed_ground(const QString& folder) {
  using burrow::SideColumn;
  burrow::TestWindow w("house-service");
  burrow::Crossing crossing = w.crossing();
  for (double x = -7; x < 20; x += 2.9)
    for (const double y : {-4.6, -2.1, 1.9, 4.2})
      crossing.site.ground_points.push_back(
          {x + 0.3 * std::sin(7 * y), y + 0.2 * std::sin(3 * x),
           elevation_at(crossing.site.ground, x) + 0.17 * y + 0.05 * std::sin(x * y)});
  w.window.document().start_from(crossing, false);
  burrow::DrawingView& drawing = w.window.drawing();
  w.window.side().show_page(SideColumn::Page::pits);
  both(w, folder, QStringLiteral("surveyed"));
  drawing.set_across(true);
  for (const double station : {-1.2, 6.0}) {
    w.mouse(QEvent::MouseMove, drawing.frame().side(station, 101), Qt::NoButton, Qt::NoButton);
    both(w, folder, QStringLiteral("surveyed-across-%1").arg(station > 0 ? 2 : 1));
  }
  drawing.set_across(false);
  crossing.pits.launch.floor_outline = {{0, -0.5}, {0, 0.5}, {1.3, 0.5}, {1.3, 1.3}, {2.8, 1.3}, {2.8, -0.5}};
  w.window.document().start_from(crossing, false);
  drawing.pick({burrow::ItemKind::launch, {}, -1});
  both(w, folder, QStringLiteral("floor-corners"));
  burrow::PracticePanel& page = w.window.side().practice();
  w.window.side().show_page(SideColumn::Page::practice);
  page.trainer()->setChecked(true);
  click(w, page.button(QStringLiteral("Add a stone")));
  page.refresh_now();
  both(w, folder, QStringLiteral("practice-hidden"));
}

/// A bore of another length, its utilities named by forty letters.
void other_length(burrow::TestWindow& w, double length_m, std::size_t utilities) {
  burrow::Crossing c = w.crossing();
  c.bore.exit.station.m = c.bore.launch.station.m + length_m;
  if (c.site.ground.back().station_m < c.bore.exit.station.m + 6)
    c.site.ground.push_back({c.bore.exit.station.m + 8, c.site.ground.back().elevation_m});
  if (c.site.utilities.size() > utilities) c.site.utilities.resize(utilities);
  for (burrow::Utility& u : c.site.utilities) u.name = "transmission main, north side, number 12 b";
  w.window.document().start_from(c, false);
  w.window.drawing().zoom_to_fit();
}

/// Muting, filter, overview, dimension lines, several picked.
void workbench(const QString& folder) {
  const auto in_both = [&](burrow::TestWindow& w, const QString& name) {
    shot(w, folder, name);
    w.window.set_dark(true);
    w.window.set_units(burrow::UnitSystem::us);
    shot(w, folder, name + QStringLiteral("-dark-us"));
    w.window.set_dark(false);
    w.window.set_units(burrow::UnitSystem::metric);
  };
  for (const char* name : {"house-service", "sixty-utilities", "rail-siding", "four-faults"}) {
    burrow::TestWindow w(name);
    w.window.overview().shown_action()->setChecked(true);
    const QString sample = QLatin1String(name);
    w.window.drawing().pick({burrow::ItemKind::launch, {}, -1});
    in_both(w, sample + QStringLiteral("-bench-launch"));
    w.window.drawing().pick({burrow::ItemKind::utility, w.crossing().site.utilities[1].id, -1});
    w.window.drawing().show_stations(w.crossing().bore.launch.station.m + 1, w.crossing().bore.launch.station.m + 6,
                                     false);
    in_both(w, sample + QStringLiteral("-bench-near"));
    w.window.drawing().zoom_to_fit();
    std::vector<burrow::ItemRef> all;
    for (const burrow::Utility& u : w.crossing().site.utilities)
      if (all.size() < 4) all.push_back({burrow::ItemKind::utility, u.id, -1});
    w.window.drawing().pick_several(all);
    in_both(w, sample + QStringLiteral("-bench-several"));
  }
  {
    burrow::TestWindow w("house-service");
    burrow::FindingsPanel& page = w.window.findings();
    const auto& findings = w.window.document().assessment().findings;
    for (std::size_t i = 0; i < findings.size(); ++i)
      if (findings[i].severity == burrow::Severity::caution) {
        page.pick(static_cast<int>(i));
        break;
      }
    QTest::keyClick(page.list(), Qt::Key_M);
    shot(w, folder, QStringLiteral("mute-form"));
    QTest::keyClick(page.mute_form()->reason(), Qt::Key_Return);
    shot(w, folder, QStringLiteral("mute-refused"));
    QTest::keyClicks(page.mute_form()->reason(), QStringLiteral("seen open on site, cut and capped"));
    QTest::keyClick(page.mute_form()->reason(), Qt::Key_Return);
    in_both(w, QStringLiteral("muted"));
    page.filter_bar()->words()->setText(QStringLiteral("gas"));
    in_both(w, QStringLiteral("filter"));
    page.filter_bar()->kind(burrow::FindingKind::note)->click();
    in_both(w, QStringLiteral("filter-empty"));
  }
  for (const double length : {6.0, 45.0}) {
    burrow::TestWindow w("house-service");
    other_length(w, length, length > 10 ? 6 : 1);
    in_both(w, QStringLiteral("length-%1").arg(length));
  }
  {
    burrow::TestWindow w("house-service", {900, 620});
    shot(w, folder, QStringLiteral("bench-small"));
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
  // BURROW_LANGUAGE=de: the same pictures in German.
  burrow::speak_language(burrow::resolve_language(qEnvironmentVariable("BURROW_LANGUAGE", QStringLiteral("en"))));
  const QString folder = argc > 1 ? QString::fromLocal8Bit(argv[1]) : QStringLiteral(".");
  QDir().mkpath(folder);
  const QString only = argc > 2 ? QString::fromLocal8Bit(argv[2]) : QString();  // one of the words below, or all
  if (only.isEmpty() || only == QLatin1String("import")) import_screens(folder);
  if (only.isEmpty() || only == QLatin1String("day")) day_and_practice(folder);
  if (only.isEmpty() || only == QLatin1String("newcomer")) newcomer(folder);
  if (only.isEmpty() || only == QLatin1String("ground")) surveyed_ground(folder);
  if (only.isEmpty() || only == QLatin1String("workbench")) workbench(folder);
  for (const char* alone : {"import", "day", "newcomer", "ground", "workbench"})
    if (only == QLatin1String(alone)) return 0;
  const bool pages_only = only == QLatin1String("pages");
  for (const char* name : {"house-service", "four-faults", "rail-siding"}) {
    if (pages_only) break;
    burrow::TestWindow w(name);
    burrow::LaunchSearchJob& job = w.window.side().launch_job();
    const auto settle = [&] {
      (void)burrow::comes([&] { return job.map() && job.current() && !job.running(); });
      burrow::settle(w.window);
    };
    w.window.side().show_page(burrow::SideColumn::Page::launch);
    settle();
    shot(w, folder, QStringLiteral("launch-%1").arg(QLatin1String(name)));
    whole_page(w, folder, QStringLiteral("launch-%1-whole").arg(QLatin1String(name)));
    w.window.set_dark(true);
    w.window.set_units(burrow::UnitSystem::us);
    shot(w, folder, QStringLiteral("launch-%1-dark-us").arg(QLatin1String(name)));
    whole_page(w, folder, QStringLiteral("launch-%1-whole-dark-us").arg(QLatin1String(name)));
    w.window.set_dark(false);
    w.window.set_units(burrow::UnitSystem::metric);
    job.set_over(burrow::MapOver::station_and_offset);
    settle();
    shot(w, folder, QStringLiteral("launch-%1-station").arg(QLatin1String(name)));
    job.ask_tools();
    settle();
    whole_page(w, folder, QStringLiteral("launch-%1-tools").arg(QLatin1String(name)));
  }
  if (only == QLatin1String("launches")) return 0;
  const QStringList samples{QStringLiteral("house-service"), QStringLiteral("rail-siding"),
                            QStringLiteral("car-park-duct"), QStringLiteral("four-faults"),
                            QStringLiteral("first-lesson"),  QStringLiteral("sixty-utilities")};
  for (const QString& name : samples) {
    if (pages_only) break;
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
    const QPointF from = grip(w, burrow::ItemKind::utility, w.crossing().site.utilities.front().id);
    w.click(from);
    w.press(from);
    for (int i = 1; i <= 6; ++i) w.move(from + QPointF(4.0 * i, 9.0 * i));
    shot(w, folder, QStringLiteral("drag-utility"));
    w.release(from + QPointF(24, 54));
    const QPointF launch = grip(w, burrow::ItemKind::launch);
    w.press(launch);
    for (int i = 1; i <= 6; ++i) w.move(launch + QPointF(2.0 * i, -8.0 * i));
    shot(w, folder, QStringLiteral("drag-launch"));
    w.release(launch + QPointF(12, -48));
    w.window.drawing().pick({burrow::ItemKind::launch, {}, -1});
    w.key(Qt::Key_Return);
    shot(w, folder, QStringLiteral("typing"));
  }
  for (const char* name : {"house-service", "sixty-utilities"}) {
    burrow::TestWindow w(name);
    w.window.drawing().set_across(true);
    for (const double station : {5.8, 12.0}) {
      w.mouse(QEvent::MouseMove, w.window.drawing().frame().side(station, 101), Qt::NoButton, Qt::NoButton);
      shot(w, folder, QStringLiteral("%1-across-%2").arg(QLatin1String(name)).arg(station));
    }
    w.window.set_dark(true);
    w.window.set_units(burrow::UnitSystem::us);
    const burrow::Frame f = w.window.drawing().frame();
    w.mouse(QEvent::MouseButtonPress, f.elevation.center(), Qt::LeftButton, Qt::LeftButton, Qt::ControlModifier);
    w.mouse(QEvent::MouseMove, f.elevation.center() + QPointF(180, 60), Qt::NoButton, Qt::LeftButton,
            Qt::ControlModifier);
    shot(w, folder, QStringLiteral("%1-tape-dark-us").arg(QLatin1String(name)));
    w.mouse(QEvent::MouseButtonRelease, f.elevation.center() + QPointF(180, 60), Qt::LeftButton, Qt::NoButton,
            Qt::ControlModifier);
    w.window.set_dark(false);
    w.window.set_units(burrow::UnitSystem::metric);
  }
  {
    burrow::TestWindow w("house-service");
    const QPointF launch = grip(w, burrow::ItemKind::launch);
    w.press(launch);
    w.move(launch + QPointF(0, 5));
    for (int i = 0; i < 40; ++i) {
      w.move(launch + QPointF(0, 5 + i));
      if (w.window.document().assessment().findings.empty()) break;
    }
    shot(w, folder, QStringLiteral("snap-launch"));
    w.key(Qt::Key_Escape);
  }
  for (const char* name : {"house-service", "four-faults"}) {
    burrow::TestWindow w(name);
    for (const auto& [kind, id] : {std::pair{burrow::ItemKind::launch, "launch"}, {burrow::ItemKind::exit, "exit"}}) {
      w.window.drawing().pick({kind, {}, -1});
      shot(w, folder, QStringLiteral("%1-%2-edges").arg(QLatin1String(name), QLatin1String(id)));
      const burrow::ItemRef edge{burrow::ItemKind::pit_edge, id, static_cast<int>(burrow::PitEdge::floor_level)};
      const QPointF from = w.window.drawing().place_of(edge);
      w.press(from);
      for (int i = 1; i <= 6; ++i) w.move(from + QPointF(0, 3.0 * i));
      shot(w, folder, QStringLiteral("%1-%2-floor-dragged").arg(QLatin1String(name), QLatin1String(id)));
      w.release(from + QPointF(0, 18));
    }
  }
  for (const char* name : {"house-service", "sixty-utilities", "first-lesson"}) {
    burrow::TestWindow w(name);
    w.window.drawing().set_turning_strip(true);
    w.window.drawing().zoom_to_fit();
    for (int page = 1; page < w.window.side().count(); ++page) {
      if (page == static_cast<int>(burrow::SideColumn::Page::launch)) continue;  // taken above
      w.window.side().setCurrentIndex(page);
      if (page == 2) {
        w.window.side().trials().cloud_wanted()->setChecked(true);
        (void)burrow::comes([&] { return !w.window.side().job().running(); });
      }
      if (page == static_cast<int>(burrow::SideColumn::Page::launch)) {
        const burrow::LaunchSearchJob& job = w.window.side().launch_job();
        (void)burrow::comes([&] { return job.map() && !job.running(); });
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
