// The monkey for half an hour in the checked build, and what memory it leaves. BURROW_MONKEY_SEED is the first seed.
#include <QApplication>
#include <QPixmapCache>
#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <vector>

#include "monkey/burst.h"

namespace burrow {
namespace {

const std::array samples{"house-service", "first-lesson",    "rail-siding", "four-faults",
                         "car-park-duct", "sixty-utilities", "lesson-mark", "lesson-sag"};

/// In a window of the same size each time: what is kept of the drawing goes with its pixels.
void walk_all_pages(MonkeyHouse& house) {
  house.window().showNormal();
  house.window().resize(1366, 768);
  house.window().set_units(UnitSystem::metric);
  house.window().set_dark(false);
  house.window().drawing().zoom_to_fit();
  turn_event_loop();
  for (int page = 0; page < house.window().side().count(); ++page) {
    house.window().side().setCurrentIndex(page);
    QCoreApplication::processEvents();
  }
}

/// What there is most of below the window, and the widgets of the program in all: something that is made again and
/// again and never given back stands here.
std::string most_frequent_objects(const QObject& root) {
  std::map<std::string, int> counted;
  for (const QObject* object : root.findChildren<QObject*>()) ++counted[object->metaObject()->className()];
  std::vector<std::pair<int, std::string>> by_count;
  for (const auto& [name, count] : counted) by_count.emplace_back(count, name);
  std::sort(by_count.rbegin(), by_count.rend());
  by_count.resize(std::min<std::size_t>(by_count.size(), 12));
  std::string text = "  " + std::to_string(QApplication::allWidgets().size()) + " widgets";
  for (const auto& [count, name] : by_count) text += ", " + std::to_string(count) + ' ' + name;
  return text + '\n';
}

TEST(MonkeyLong, SixtyBursts_NothingBreaksHangsOrIsLost_MemoryStays) {
  constexpr int bursts = 60;
  constexpr int events_each = 700;
  const unsigned first = qEnvironmentVariable("BURROW_MONKEY_SEED", QStringLiteral("1000")).toUInt();
  MonkeyHouse house;
  double after_first_mb = 0;
  for (unsigned i = 0; i < bursts; ++i) {
    house.start(QLatin1String(samples[i % samples.size()]));
    house.burst(first + i, events_each);
    if (testing::Test::HasFatalFailure()) return;
    if ((i + 1) % samples.size() != 0) continue;
    house.start(QStringLiteral("house-service"));
    walk_all_pages(house);
    QPixmapCache::clear();
    const double now_mb = live_megabytes();
    std::cerr << house.sent() << " events, " << now_mb << " MB in use\n" << most_frequent_objects(house.window());
    if (after_first_mb == 0) after_first_mb = now_mb;
    EXPECT_LT(now_mb, 1.1 * after_first_mb) << "after seed " << first + i;
  }
}

}  // namespace
}  // namespace burrow
