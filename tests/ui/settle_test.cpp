// What takes the place of waiting in the tests of the window: that it leaves nothing put off, and nothing out.

#include "support/settle.h"

#include <gtest/gtest.h>

#include <QWidget>
#include <functional>
#include <memory>
#include <utility>

namespace burrow {
namespace {

struct PutOff {
  explicit PutOff(QObject& owner, int ms, std::function<void()> then = {}) : timer(new QTimer(&owner)) {
    timer->setSingleShot(true);
    timer->setInterval(ms);
    QObject::connect(timer, &QTimer::timeout, [this, then = std::move(then)] {
      ++times;
      if (then) then();
    });
    timer->start();
  }
  QTimer* timer;
  int times = 0;
};

TEST(Settle, WhatIsPutOffForAMoment_IsDoneOnceAndAtOnce) {
  QWidget window;
  auto* page = new QWidget(&window);
  PutOff list(window, 80);
  PutOff map(*page, 250);
  PutOff copy(window, 2000);
  settle(window);
  EXPECT_EQ(list.times, 1);
  EXPECT_EQ(map.times, 1) << "whatever it stands in";
  EXPECT_FALSE(list.timer->isActive() || map.timer->isActive());
  EXPECT_EQ(copy.times, 0) << "a copy of unsaved work is not for the screen";
  EXPECT_TRUE(copy.timer->isActive());
  settle(window);
  EXPECT_EQ(list.times, 1);
}

// A page that is brought up to date lays out anew, which moves the drawing, which puts off the overview.
TEST(Settle, WhatThatPutsOff_IsDoneToo) {
  QWidget window;
  std::unique_ptr<PutOff> second;
  PutOff first(window, 50, [&] { second = std::make_unique<PutOff>(window, 100); });
  settle(window);
  ASSERT_TRUE(second);
  EXPECT_EQ(second->times, 1);
}

TEST(Settle, TimersThatAreDeletedMeanwhile_DoNoHarm) {
  QWidget window;
  auto* page = new QWidget(&window);
  PutOff leaves(window, 50, [&] { delete page; });
  auto* gone = new QTimer(page);
  gone->setSingleShot(true);
  gone->start(60);
  settle(window);
  EXPECT_EQ(leaves.times, 1);
}

TEST(Settle, NextFrame_MovesWhatMovesByItselfAlone) {
  QWidget window;
  PutOff list(window, 80);
  QTimer glide(&window);
  int frames = 0;
  QObject::connect(&glide, &QTimer::timeout, [&] { ++frames; });
  glide.start(60'000);
  settle(window);
  EXPECT_EQ(frames, 0);
  next_frame(window);
  next_frame(window);
  EXPECT_EQ(frames, 2);
  glide.stop();
  next_frame(window);
  EXPECT_EQ(frames, 2);
  EXPECT_EQ(list.times, 1);
}

}  // namespace
}  // namespace burrow
