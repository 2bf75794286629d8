/// What the right button offers on the drawing, what a screen reader is told of it, and the start page.

#include <gtest/gtest.h>

#include <QAccessible>
#include <QFile>
#include <QMenu>
#include <QTemporaryDir>

#include "burrow/check/assess.h"
#include "burrow/drawing/labels.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/panels/verdict_bar.h"
#include "burrow/window/start_page.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

QStringList entries(TestWindow& w, const QPointF& at) {
  QMenu menu;
  w.window.fill_drawing_menu(menu, w.window.drawing().under(at), at.toPoint());
  QStringList names;
  std::map<QChar, QString> letters;
  for (const QAction* action : menu.actions()) {
    if (action->isSeparator()) continue;
    names << action->text();
    const qsizetype letter = action->text().indexOf(QLatin1Char('&'));
    if (letter < 0) continue;
    const auto [it, fresh] = letters.emplace(action->text()[letter + 1].toLower(), action->text());
    EXPECT_TRUE(fresh) << it->second.toStdString() << " and " << action->text().toStdString();
  }
  return names;
}

TEST(DrawingMenu, OffersWhatFitsWhatLiesThere) {
  TestWindow w("house-service");
  settle(w.window);
  DrawingView& drawing = w.window.drawing();
  const std::shared_ptr<const Labels> labels = drawing.labels();
  EXPECT_TRUE(entries(w, labels->flags.flags.front().box.center()).join(u' ').contains(QStringLiteral("calculation")));
  EXPECT_TRUE(entries(w, labels->utilities.chips.front().box.center()).join(u' ').contains(QStringLiteral("De&lete")));
  EXPECT_TRUE(entries(w, labels->dimensions.front().label.center()).join(u' ').contains(QStringLiteral("value")));
  EXPECT_TRUE(entries(w, drawing.place_of({ItemKind::launch, {}, -1})).join(u' ').contains(QStringLiteral("launch")));
  const QPointF nowhere = drawing.frame().side(1.5, 99.9);
  EXPECT_TRUE(entries(w, nowhere).join(u' ').contains(QStringLiteral("utility")));
}

TEST(DrawingMenu, RightButton_MenuOnAClick_PanOnADrag) {
  TestWindow w("house-service");
  int menus = 0;
  QObject::disconnect(&w.window.drawing(), &DrawingView::menu_wanted, &w.window, nullptr);
  QObject::connect(&w.window.drawing(), &DrawingView::menu_wanted, &w.window.drawing(), [&] { ++menus; });
  const QPointF at = w.window.drawing().frame().elevation.center();
  const double left = w.window.drawing().frame().left_station_m;
  w.mouse(QEvent::MouseButtonPress, at, Qt::RightButton, Qt::RightButton);
  w.mouse(QEvent::MouseButtonRelease, at, Qt::RightButton, Qt::NoButton);
  EXPECT_EQ(menus, 1);
  EXPECT_EQ(w.window.drawing().frame().left_station_m, left);
  w.mouse(QEvent::MouseButtonPress, at, Qt::RightButton, Qt::RightButton);
  w.mouse(QEvent::MouseMove, at + QPointF(60, 0), Qt::NoButton, Qt::RightButton);
  w.mouse(QEvent::MouseButtonRelease, at + QPointF(60, 0), Qt::RightButton, Qt::NoButton);
  EXPECT_EQ(menus, 1);
  EXPECT_LT(w.window.drawing().frame().left_station_m, left);
  w.window.drawing().pick({ItemKind::launch, {}, -1});
  w.key(Qt::Key_F10, Qt::ShiftModifier);
  EXPECT_EQ(menus, 2) << "by keyboard at what is selected";
}

TEST(DrawingMenu, InsertedUtility_StandsWhereItWasAsked_AndNothingIsMadeUp) {
  TestWindow w("house-service");
  QMenu menu;
  const QPointF at = w.window.drawing().frame().side(1.5, 99.9);
  w.window.fill_drawing_menu(menu, w.window.drawing().under(at), at.toPoint());
  const std::size_t before = w.crossing().site.utilities.size();
  menu.actions().front()->trigger();
  ASSERT_EQ(w.crossing().site.utilities.size(), before + 1);
  const Utility& fresh = w.crossing().site.utilities.back();
  EXPECT_NEAR(utility_mark(fresh).station_m, 1.5, 1e-6);
  EXPECT_FALSE(utility_mark(fresh).depth_known);
  EXPECT_FALSE(fresh.outside_diameter);
  EXPECT_NE(w.window.document().assessment().verdict, Verdict::within_limits);
}

// WCAG 2.1, 4.1.2 name, role, value (success criterion, from memory).
TEST(AccessibleDrawing, EveryItemHasNameNumbersAndState) {
  TestWindow w("house-service");
  QAccessibleInterface* drawing = QAccessible::queryAccessibleInterface(&w.window.drawing());
  ASSERT_TRUE(drawing);
  EXPECT_EQ(drawing->role(), QAccessible::List);
  const std::vector<ItemRef> items = w.window.drawing().items();
  ASSERT_EQ(drawing->childCount(), static_cast<int>(items.size()));
  for (int i = 0; i < drawing->childCount(); ++i) {
    QAccessibleInterface* item = drawing->child(i);
    ASSERT_TRUE(item && item->isValid());
    EXPECT_FALSE(item->text(QAccessible::Name).isEmpty()) << i;
    EXPECT_EQ(drawing->indexOfChild(item), i);
    EXPECT_FALSE(item->state().selected);
  }
  EXPECT_TRUE(drawing->child(0)->text(QAccessible::Value).contains(QStringLiteral("axis level")));
  w.window.drawing().pick(items[3]);
  EXPECT_TRUE(drawing->child(3)->state().selected);
  EXPECT_EQ(drawing->focusChild(), drawing->child(3));
}

TEST(AccessibleDrawing, N_WalksThroughAllItems) {
  TestWindow w("house-service");
  std::set<std::tuple<int, std::string, int>> been;
  const std::size_t all = w.window.drawing().items().size();
  for (std::size_t i = 0; i < all; ++i) {
    w.key(Qt::Key_N);
    const ItemRef& at = w.window.drawing().picked();
    been.insert({static_cast<int>(at.kind), at.id, at.index});
  }
  EXPECT_EQ(been.size(), all);
}

TEST(StartPage, OpensSamplesAndBegins_AndGoesThen) {
  TestWindow w("house-service");
  w.window.show_start();
  settle(w.window);
  EXPECT_TRUE(w.window.starting());
  const std::vector<StartCard*>& cards = w.window.start_page().cards();
  ASSERT_GE(cards.size(), 15u) << "four ways, five samples, eight lessons";
  for (const StartCard* card : cards) {
    EXPECT_FALSE(card->accessibleName().isEmpty());
    EXPECT_TRUE(card->focusPolicy() & Qt::TabFocus);
  }
  const auto card = std::find_if(cards.begin(), cards.end(),
                                 [](const StartCard* c) { return c->text() == QStringLiteral("Four faults"); });
  ASSERT_NE(card, cards.end());
  QTest::mouseClick(*card, Qt::LeftButton);
  EXPECT_FALSE(w.window.starting());
  EXPECT_EQ(w.crossing().site.utilities.size(), 3u);
}

// What was open last is shown as a picture with its numbers; what cannot be read is listed all the same.
TEST(StartPage, Recent_HavePictures_WhatCannotBeReadHasNone) {
  const QTemporaryDir folder;
  const QString broken = folder.filePath(QStringLiteral("broken.crossing"));
  QFile file(broken);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("{ not a crossing");
  file.close();
  StartPage page(tables_for_tests(), UnitSystem::metric, nullptr);
  const QString gone = folder.filePath(QStringLiteral("gone.crossing"));
  page.show_recent({broken, sample_path("house-service"), gone, folder.path()});
  ASSERT_EQ(page.recent_cards().size(), 4u);
  EXPECT_FALSE(page.recent_cards()[1]->has_picture()) << "the page is there before its pictures";
  for (int turn = 0; turn < 20; ++turn) QCoreApplication::processEvents();
  EXPECT_FALSE(page.recent_cards()[0]->has_picture());
  EXPECT_TRUE(page.recent_cards()[1]->has_picture());
  EXPECT_FALSE(page.recent_cards()[2]->isEnabled());
  EXPECT_FALSE(page.recent_cards()[3]->has_picture()) << "a folder";
  const Crossing crossing =
      *read_crossing(read_text_file(sample_path("house-service").toStdString()).value(), tables_for_tests());
  const auto worst = finding_counts(assess(crossing, tables_for_tests()).findings).front();
  EXPECT_TRUE(page.recent_cards()[1]->accessibleDescription().contains(count_words(worst)));
}

TEST(StartPage, Cards_LieWithinThePageAndApart) {
  for (const QSize size : {QSize(1600, 900), QSize(1280, 720), QSize(1000, 640)}) {
    TestWindow w("house-service", size);
    w.window.show_start();
    settle(w.window);
    const auto& cards = w.window.start_page().cards();
    for (std::size_t i = 0; i < cards.size(); ++i) {
      EXPECT_TRUE(cards[i]->parentWidget()->rect().contains(cards[i]->geometry())) << cards[i]->text().toStdString();
      for (std::size_t k = 0; k < i; ++k)
        if (cards[k]->parentWidget() == cards[i]->parentWidget()) {
          EXPECT_FALSE(cards[i]->geometry().intersects(cards[k]->geometry())) << cards[i]->text().toStdString();
        }
    }
  }
}

}  // namespace
}  // namespace burrow
