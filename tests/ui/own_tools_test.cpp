// The crew's own tools and compressors: kept by name on this machine, picked for a job.
#include "burrow/window/own_tools.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QListWidget>
#include <QTemporaryDir>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(OwnTools, KeptPickedForgotten) {
  const QTemporaryDir folder;
  const OwnTools own(folder.path(), tables_for_tests());
  TestWindow w("house-service");
  OwnToolsDialog dialog(w.window.document(), own, nullptr);
  EXPECT_EQ(dialog.list()->count(), 0);
  dialog.name()->setText(QStringLiteral("the old 75"));
  dialog.keep();
  ASSERT_EQ(own.names(), QStringList{QStringLiteral("the old 75")});

  TestWindow job("first-lesson");
  ASSERT_EQ(job.crossing().bore.tool.tool_class, "tool-55");
  const Crossing before = job.crossing();
  OwnToolsDialog pick(job.window.document(), own, nullptr);
  pick.list()->setCurrentRow(0);
  pick.use();
  EXPECT_EQ(job.crossing().bore.tool.tool_class, "tool-75");
  EXPECT_EQ(job.crossing().limits, before.limits);
  EXPECT_EQ(job.window.document().undo_stack().index(), 1);
  job.window.document().undo_stack().undo();
  EXPECT_EQ(job.crossing(), before);
  pick.forget();
  EXPECT_TRUE(own.names().isEmpty());
}

// What stands there is replaced only when asked for twice; a name that is no file name is refused with what may be one.
TEST(OwnTools, NothingIsLostUnasked) {
  const QTemporaryDir folder;
  const OwnTools own(folder.path(), tables_for_tests());
  TestWindow w("house-service"), other("first-lesson");
  OwnToolsDialog first(w.window.document(), own, nullptr), second(other.window.document(), own, nullptr);
  first.name()->setText(QStringLiteral("kit"));
  first.keep();
  second.name()->setText(QStringLiteral("kit"));
  second.keep();
  EXPECT_EQ(own.of(QStringLiteral("kit"))->bore.tool.tool_class, "tool-75") << second.message().toStdString();
  second.keep();
  EXPECT_EQ(own.of(QStringLiteral("kit"))->bore.tool.tool_class, "tool-55");
  for (const char* bad : {"", "a/b", "../up", ".hidden"}) {
    second.name()->setText(QString::fromLatin1(bad));
    second.keep();
    EXPECT_EQ(own.names().size(), 1) << bad;
    EXPECT_FALSE(second.message().isEmpty());
  }
}

// The layout is locked while a record runs.
TEST(OwnTools, NotWhileABoreIsUnderWay) {
  const QTemporaryDir folder;
  const OwnTools own(folder.path(), tables_for_tests());
  TestWindow w("house-service"), running("day-under-way");
  OwnToolsDialog keeps(w.window.document(), own, nullptr);
  keeps.name()->setText(QStringLiteral("kit"));
  keeps.keep();
  const Crossing before = running.crossing();
  OwnToolsDialog dialog(running.window.document(), own, nullptr);
  dialog.list()->setCurrentRow(0);
  dialog.use();
  EXPECT_EQ(running.crossing(), before);
  EXPECT_TRUE(dialog.message().contains(QStringLiteral("under way"))) << dialog.message().toStdString();
}

}  // namespace
}  // namespace burrow
