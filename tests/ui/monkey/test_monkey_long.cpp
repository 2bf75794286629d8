// The monkey for half an hour in the checked build, and what memory it leaves. BURROW_MONKEY_SEED is the first seed.
#include "monkey/burst.h"

namespace burrow {
namespace {

const std::array samples{"house-service", "first-lesson",    "rail-siding", "four-faults",
                         "car-park-duct", "sixty-utilities", "lesson-mark", "lesson-sag"};

void walk_all_pages(MonkeyHouse& house) {
  for (int page = 0; page < house.window().side().count(); ++page) {
    house.window().side().setCurrentIndex(page);
    QCoreApplication::processEvents();
  }
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
    const double now_mb = live_megabytes();
    std::cerr << house.sent() << " events, " << now_mb << " MB in use\n";
    if (after_first_mb == 0) after_first_mb = now_mb;
    EXPECT_LT(now_mb, 1.1 * after_first_mb) << "after seed " << first + i;
  }
}

}  // namespace
}  // namespace burrow
