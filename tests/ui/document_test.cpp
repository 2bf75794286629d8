/// Files, recovery, ground line from CSV.

#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/stat.h>

#include <QDir>
#include <QFile>
#include <QSysInfo>
#include <QTemporaryDir>
#include <algorithm>
#include <csignal>

#include "burrow/crossing/blank.h"
#include "burrow/crossing/find.h"
#include "burrow/document/end_signals.h"
#include "burrow/document/fields.h"
#include "burrow/document/open_mark.h"
#include "burrow/document/recovery.h"
#include "burrow/document/several.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/window/help_window.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

void write_file(const QString& path, const QByteArray& text) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(text);
}

TEST(Document, StartsWithABlankCrossingThatIsIncomplete) {
  Document document(tables_for_tests());
  EXPECT_EQ(document.assessment().verdict, Verdict::incomplete);
}

// What random trials found worse counts while the crossing stands as they knew it; a mute of something else leaves it.
TEST(Document, Trials_WorsenWhileTheCrossingStands) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  const Verdict alone = document.assessment().verdict;
  ASSERT_NE(alone, Verdict::stop);
  Finding worse;
  worse.code = "trials.contact";
  worse.severity = Severity::stop;
  document.note_trials(document.crossing(), {worse});
  EXPECT_EQ(document.assessment().verdict, Verdict::stop);

  Launch launch = document.crossing().bore.launch;
  launch.elevation.m -= 0.1;
  document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
  EXPECT_NE(document.assessment().verdict, Verdict::stop);
  document.undo_stack().undo();
  EXPECT_EQ(document.assessment().verdict, Verdict::stop);

  std::vector<Mute> muted = document.crossing().muted;
  muted.push_back({});
  muted.back().code = "bore.climb";
  ASSERT_TRUE(document.change(QStringLiteral("mute"), [&](Crossing& to) { to.muted = muted; }));
  EXPECT_EQ(document.assessment().verdict, Verdict::stop);

  document.note_trials(document.crossing(), {});
  EXPECT_EQ(document.assessment().verdict, alone);
}

// A window left open over midnight: the ticket of the sample does not hold for ever.
TEST(Document, NextDay_TheTicketRunsOut) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const auto asks = [&] {
    const auto& findings = document.assessment().findings;
    return std::any_of(findings.begin(), findings.end(),
                       [](const Finding& f) { return f.code == "missing.search-validity"; });
  };
  EXPECT_FALSE(asks());
  int changes = 0;
  QObject::connect(&document, &Document::changed, [&] { ++changes; });
  document.judge_on(Date{2100, 1, 1});
  EXPECT_TRUE(asks());
  document.judge_on(Date{2100, 1, 1});
  EXPECT_EQ(changes, 1);
}

TEST(Document, WrongFileLeavesEverythingAsItWas) {
  QTemporaryDir folder;
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Crossing before = document.crossing();
  for (const QByteArray& text :
       {QByteArray(""), QByteArray("{"), QByteArray("{\"format\":\"burrowline-crossing\",\"version\":1}"),
        QByteArray("\xff\xfe\x00")}) {
    const QString path = folder.filePath(QStringLiteral("wrong.crossing"));
    write_file(path, text);
    const Result<void> opened = document.open(path);
    ASSERT_FALSE(opened.has_value());
    EXPECT_FALSE(opened.error().english().empty());
    EXPECT_EQ(document.crossing(), before);
    EXPECT_EQ(document.path(), QFileInfo(sample_path("house-service")).absoluteFilePath());
  }
}

TEST(Document, NewerFileOpensReadOnly_AndIsNeverSaved) {
  QTemporaryDir folder;
  const auto text = read_text_file(sample_path("house-service").toStdString());
  ASSERT_TRUE(text.has_value());
  std::string newer = *text;
  const auto at = newer.find("\"version\": 1");
  ASSERT_NE(at, std::string::npos);
  newer.replace(at, 12, "\"version\": 9");
  const QString path = folder.filePath(QStringLiteral("newer.crossing"));
  write_file(path, QByteArray::fromStdString(newer));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(path));
  EXPECT_FALSE(document.read_only_because().isEmpty());
  EXPECT_FALSE(document.save_as(path));
  const Crossing before = document.crossing();
  document.change(QStringLiteral("Name"), [&](Crossing& to) { to.name = "other"; });
  EXPECT_EQ(document.crossing(), before);
}

TEST(Document, SavingTwiceGivesTheSameBytes) {
  QTemporaryDir folder;
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("sixty-utilities")));
  const QString a = folder.filePath(QStringLiteral("a.crossing"));
  const QString b = folder.filePath(QStringLiteral("b.crossing"));
  ASSERT_TRUE(document.save_as(a));
  ASSERT_TRUE(document.open(a));
  ASSERT_TRUE(document.save_as(b));
  EXPECT_EQ(*read_text_file(a.toStdString()), *read_text_file(b.toStdString()));
}

TEST(Document, WhatCouldNotBeReopenedIsNotSaved) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("kept.crossing"));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  ASSERT_TRUE(document.save_as(path));
  const std::string before = *read_text_file(path.toStdString());
  Launch beyond_exit = document.crossing().bore.launch;
  beyond_exit.station.m = document.crossing().bore.exit.station.m + 1;
  document.change(QStringLiteral("Move"), [&](Crossing& to) { to.bore.launch = beyond_exit; });
  const Result<Written> saved = document.save_as(path);
  ASSERT_FALSE(saved.has_value());
  EXPECT_NE(saved.error().place.english().find("/bore/"), std::string::npos);
  EXPECT_EQ(*read_text_file(path.toStdString()), before);
}

TEST(Document, NothingIsSavedInTheMiddleOfADrag) {
  QTemporaryDir folder;
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  const Crossing before = document.crossing();
  {
    EditSession session(document, {ItemKind::launch, {}, -1});
    session.preview([](Crossing& c) { c.bore.launch.elevation.m -= 1; });
    EXPECT_FALSE(document.save_as(folder.filePath(QStringLiteral("x.crossing"))));
  }
  EXPECT_EQ(document.crossing(), before) << "a session that is not finished puts everything back";
}

TEST(OnDisk, ToldByTheContent) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing"));
  Document document(tables_for_tests());
  EXPECT_EQ(document.on_disk(), OnDisk::as_known);  // never saved
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  ASSERT_TRUE(document.save_as(path));
  EXPECT_EQ(document.on_disk(), OnDisk::as_known);
  Document theirs(tables_for_tests());
  ASSERT_TRUE(theirs.open(path));
  ASSERT_TRUE(theirs.save_as(path));  // the same again
  EXPECT_EQ(document.on_disk(), OnDisk::as_known);
  Launch launch = theirs.crossing().bore.launch;
  launch.elevation.m -= 0.05;
  theirs.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
  ASSERT_TRUE(theirs.save_as(path));
  EXPECT_EQ(document.on_disk(), OnDisk::changed);
  ASSERT_TRUE(document.open(path));
  EXPECT_EQ(document.on_disk(), OnDisk::as_known);
  QFile::remove(path);
  EXPECT_EQ(document.on_disk(), OnDisk::gone);
}

TEST(OnDisk, RecoveredWork_KnowsWhatItsFileHeld) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing"));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  ASSERT_TRUE(document.save_as(path));
  const QByteArray known = document.known_hash();
  document.remember_path(path, known);
  EXPECT_EQ(document.on_disk(), OnDisk::as_known);
  document.remember_path(path, {});  // nobody kept what it held
  EXPECT_EQ(document.on_disk(), OnDisk::changed);
}

// Opened, then a colleague saves, then a copy is kept, then the crash: the file is older than the copy, and still hers.
TEST(OnDisk, Recovered_ColleagueSavedBeforeTheCopy_Asks) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing")), kept = folder.filePath(QStringLiteral("kept"));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  ASSERT_TRUE(document.save_as(path));
  const auto lower = [](Document& one, double by_m) {
    Launch launch = one.crossing().bore.launch;
    launch.elevation.m -= by_m;
    one.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
  };
  for (const bool colleague : {false, true}) {
    if (colleague) {
      Document theirs(tables_for_tests());
      ASSERT_TRUE(theirs.open(path));
      lower(theirs, 0.05);
      ASSERT_TRUE(theirs.save_as(path));
    }
    lower(document, 0.01);
    {
      Recovery recovery(document, kept, 1);
      ASSERT_TRUE(recovery.keep_for_later());
    }
    const std::vector<LeftWork> left = Recovery::left_work(kept);
    ASSERT_EQ(left.size(), 1U);
    EXPECT_EQ(left[0].original, path);
    Document back(tables_for_tests());
    ASSERT_TRUE(Recovery::take_back(back, left[0]));
    EXPECT_EQ(back.on_disk(), colleague ? OnDisk::changed : OnDisk::as_known);
    Recovery::discard(left[0]);
  }
}

TEST(OpenMark, TellsWhoHoldsIt_StaleOnesAreTakenOver) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing"));
  const QString mark = OpenMark::mark_of(path);
  const QByteArray host = QSysInfo::machineHostName().toUtf8();
  const QByteArray now = QDateTime::currentDateTime().toString(Qt::ISODate).toUtf8();
  {
    OpenMark mine;
    EXPECT_FALSE(mine.take(path));
    EXPECT_TRUE(QFile::exists(mark));
  }
  EXPECT_FALSE(QFile::exists(mark));
  write_file(mark, "anna\n" + host + "\n1\n" + now);  // the first process of the machine lives
  OpenMark mine;
  const auto holder = mine.take(path);
  ASSERT_TRUE(holder);
  EXPECT_EQ(holder->user, QStringLiteral("anna"));
  write_file(mark, "anna\nanother-desk\n1\n" + now);
  EXPECT_TRUE(mine.take(path));
  write_file(mark, "anna\nanother-desk\n1\n2020-01-01T00:00:00");  // years ago
  EXPECT_FALSE(mine.take(path));
  mine.leave();
  write_file(mark, "anna\n" + host + "\n999999999\n" + now);  // that program has ended
  EXPECT_FALSE(mine.take(path));
  mine.leave();
  write_file(mark, "nonsense");
  EXPECT_FALSE(mine.take(path));
}

// Whoever may write in a shared folder makes no program write over a file elsewhere, nor wait for ever.
TEST(OpenMark, LinksAndPipes_NeitherFollowedNorWaitedFor) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing")), elsewhere = folder.filePath(QStringLiteral("b"));
  const QString mark = OpenMark::mark_of(path);
  write_file(elsewhere, "somebody's work");
  ASSERT_TRUE(QFile::link(elsewhere, mark));
  {
    OpenMark mine;
    EXPECT_FALSE(mine.take(path));
    EXPECT_FALSE(QFileInfo(mark).isSymLink());
  }
  EXPECT_FALSE(QFile::exists(mark));
  QFile kept(elsewhere);
  ASSERT_TRUE(kept.open(QIODevice::ReadOnly));
  EXPECT_EQ(kept.readAll(), QByteArray("somebody's work"));
  ASSERT_EQ(::mkfifo(QFile::encodeName(mark).constData(), 0600), 0);
  OpenMark mine;
  EXPECT_FALSE(mine.take(path));  // and comes back
}

// A opens, B opens and is told, A closes: B holds it then, and C is told of B. A number given anew is another program.
TEST(OpenMark, PassesOn_AndOnlyItsOwnIsRemoved) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("a.crossing")), mark = OpenMark::mark_of(path);
  const QByteArray host = QSysInfo::machineHostName().toUtf8();
  const QByteArray now = QDateTime::currentDateTime().toString(Qt::ISODate).toUtf8();
  write_file(mark, "anna\n" + host + "\n1\n" + now);
  OpenMark b;
  EXPECT_TRUE(b.take(path));
  QFile::remove(mark);  // Anna closes hers
  EXPECT_FALSE(b.take(path));
  EXPECT_TRUE(QFile::exists(mark));
  write_file(mark, "carl\nanother-desk\n1\n" + now);  // taken over by somebody
  EXPECT_TRUE(b.take(path));
  b.leave();
  EXPECT_TRUE(QFile::exists(mark)) << "another's mark stays";
  write_file(mark, "anna\n" + host + "\n1\n" + now + "\n99999999999");  // process 1 began at another time
  EXPECT_FALSE(b.take(path));
  // By a link to it the file is the same.
  write_file(path, "{}");
  ASSERT_TRUE(QFile::link(path, folder.filePath(QStringLiteral("l.crossing"))));
  EXPECT_EQ(OpenMark::mark_of(folder.filePath(QStringLiteral("l.crossing"))), mark);
}

// The folder of the copies has become a file: nothing can be kept there, and nothing is lost in silence.
TEST(Recovery, Signal_FullDisk_KeptElsewhere) {
  QTemporaryDir folder, other;
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  Recovery recovery(document, kept, 60000);
  Launch launch = document.crossing().bore.launch;
  launch.elevation.m -= 0.05;
  document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
  ASSERT_TRUE(QDir(kept).removeRecursively());
  write_file(kept, "in the way");
  EXPECT_FALSE(recovery.keep_for_later());
  const QString file = recovery.keep_elsewhere(other.path());
  ASSERT_FALSE(file.isEmpty());
  Document next(tables_for_tests());
  ASSERT_TRUE(next.open(file));
  EXPECT_EQ(next.crossing(), document.crossing());
  EXPECT_TRUE(recovery.keep_elsewhere(kept).isEmpty());
}

TEST(Recovery, Signal_KeepsAnEditOfThisMoment) {
  QTemporaryDir folder;
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  Crossing changed;
  int heard = 0;
  {
    QObject alive;
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path("first-lesson")));
    Recovery recovery(document, kept, 60000);  // its own time has not come
    on_end_signal(&alive, [&](int signal) {
      heard = signal;
      EXPECT_TRUE(recovery.keep_for_later());
    });
    Launch launch = document.crossing().bore.launch;
    launch.elevation.m -= 0.05;
    document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
    changed = document.crossing();
    std::raise(SIGTERM);
    ASSERT_TRUE(comes([&] { return heard == SIGTERM; }));
  }
  for (const int signal : {SIGTERM, SIGHUP, SIGINT}) std::signal(signal, SIG_DFL);
  const auto left = Recovery::left_work(kept);
  ASSERT_EQ(left.size(), 1U);
  Document next(tables_for_tests());
  ASSERT_TRUE(Recovery::take_back(next, left.front()));
  EXPECT_TRUE(next.crossing() == changed);
}

TEST(Recovery, Trouble_IsToldAndTriedAgain) {
  QTemporaryDir folder;
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("first-lesson")));
  Recovery recovery(document, kept, 20);
  QStringList reported;
  QObject::connect(&recovery, &Recovery::trouble, [&](const QString& why) { reported << why; });
  QDir(kept).removeRecursively();
  write_file(kept, "a file where the folder was");  // as good as a full disk: root may write anywhere
  Launch launch = document.crossing().bore.launch;
  launch.elevation.m -= 0.05;
  document.change(QStringLiteral("lower"), [&](Crossing& to) { to.bore.launch = launch; });
  ASSERT_TRUE(comes([&] { return !reported.isEmpty(); }));
  EXPECT_FALSE(reported.last().isEmpty());
  QFile::remove(kept);
  ASSERT_TRUE(comes([&] { return reported.last().isEmpty(); })) << "it is tried again without a change";
  EXPECT_TRUE(QFile::exists(recovery.copy_path()));
}

TEST(Recovery, Leftovers_AreCleanedAtTheNextStart) {
  QTemporaryDir folder;
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  QDir().mkpath(kept);
  const auto in = [&](const char* name) { return kept + QLatin1Char('/') + QLatin1String(name); };
  write_file(in("dead.crossing.lock"), "999999999\nburrowline\n" + QSysInfo::machineHostName().toUtf8() + "\n");
  write_file(in(".burrowline-999999-1.tmp"), "half");
  write_file(in(".burrowline-999999-2.tmp"), "half");
  write_file(in("gone.crossing.origin"), "a path");
  QFile writing(in(".burrowline-999999-2.tmp"));
  ASSERT_TRUE(writing.open(QIODevice::ReadWrite));
  ASSERT_EQ(::flock(writing.handle(), LOCK_EX), 0);
  Document document(tables_for_tests());
  const Recovery recovery(document, kept);
  EXPECT_FALSE(QFile::exists(in("dead.crossing.lock")));
  EXPECT_FALSE(QFile::exists(in("gone.crossing.origin")));
  EXPECT_FALSE(QFile::exists(in(".burrowline-999999-1.tmp")));
  EXPECT_TRUE(QFile::exists(in(".burrowline-999999-2.tmp"))) << "being written now";
}

TEST(Recovery, CrashLosesNothing) {
  QTemporaryDir folder;
  const QString kept = folder.filePath(QStringLiteral("unsaved"));
  Crossing changed;
  {
    // A run that "crashes": its lock is released by the system, its copy stays. Here the copy is moved out before the
    // normal end removes it, and moved back after.
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path("house-service")));
    Recovery recovery(document, kept, 1);
    Launch launch = document.crossing().bore.launch;
    launch.elevation.m -= 0.25;
    document.change(QStringLiteral("Move"), [&](Crossing& to) { to.bore.launch = launch; });
    recovery.keep_now();
    ASSERT_TRUE(QFile::exists(recovery.copy_path()));
    EXPECT_TRUE(Recovery::left_work(kept).empty()) << "a running program holds it";
    changed = document.crossing();
    ASSERT_TRUE(QFile::copy(recovery.copy_path(), folder.filePath(QStringLiteral("copy"))));
    ASSERT_TRUE(
        QFile::copy(recovery.copy_path() + QStringLiteral(".origin"), folder.filePath(QStringLiteral("origin"))));
  }
  EXPECT_TRUE(Recovery::left_work(kept).empty()) << "a normal end leaves nothing";
  ASSERT_TRUE(QFile::rename(folder.filePath(QStringLiteral("copy")), kept + QStringLiteral("/x.crossing")));
  ASSERT_TRUE(QFile::rename(folder.filePath(QStringLiteral("origin")), kept + QStringLiteral("/x.crossing.origin")));

  const std::vector<LeftWork> left = Recovery::left_work(kept);
  ASSERT_EQ(left.size(), 1u);
  EXPECT_EQ(left[0].original, QFileInfo(sample_path("house-service")).absoluteFilePath());
  Document document(tables_for_tests());
  ASSERT_TRUE(Recovery::take_back(document, left[0]));
  EXPECT_EQ(document.crossing(), changed);
  EXPECT_TRUE(document.modified());
  EXPECT_EQ(document.path(), left[0].original);
  EXPECT_EQ(Recovery::left_work(kept).size(), 1u) << "the copy stays until another one is kept";
  Recovery again(document, kept, 1);
  ASSERT_TRUE(again.keep_now());
  Recovery::discard(left[0]);
  EXPECT_TRUE(Recovery::left_work(kept).empty());
}

// Whole kind: whatever is removed, the file can be opened again, and undo brings all of it back.
TEST(Document, AnyUtilityRemoved_FileOpensAgain) {
  for (const char* sample : {"house-service", "rail-siding", "car-park-duct", "four-faults", "first-lesson"}) {
    Document document(tables_for_tests());
    ASSERT_TRUE(document.open(sample_path(sample)));
    const Crossing before = document.crossing();
    for (const Utility& u : before.site.utilities) {
      ASSERT_TRUE(document.change(QStringLiteral("Remove"), [&](Crossing& c) {
        c.site = site_without(c, {{ItemKind::utility, u.id, -1}});
      }));
      EXPECT_TRUE(read_crossing(write_crossing(document.crossing()), tables_for_tests())) << sample << " " << u.id;
      document.undo_stack().undo();
      EXPECT_EQ(document.crossing(), before) << sample << " " << u.id;
    }
  }
}

TEST(Document, AnotherCrossingDuringADrag_IsNotTouchedByIt) {
  Document document(tables_for_tests());
  ASSERT_TRUE(document.open(sample_path("house-service")));
  EditSession session(document, {ItemKind::launch, {}, -1});
  const auto lower = [](Crossing& c) { c.bore.launch.elevation.m -= 1; };
  session.preview(lower);
  document.start_from(blank_crossing(), false);
  EXPECT_EQ(document.crossing(), blank_crossing());
  session.preview(lower);
  session.finish(QStringLiteral("Move"));
  EXPECT_EQ(document.crossing(), blank_crossing());
  EXPECT_EQ(document.undo_stack().count(), 0);
}

TEST(GroundLine, FromCsv_IsOneUndoStep) {
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("ground.csv"));
  write_file(path, "station [m],elevation [m]\n-5,101.5\n0,101.6\n20,102.4\n");
  TestWindow w("house-service");
  const Crossing before = w.crossing();
  ASSERT_TRUE(w.window.import_ground(path));
  ASSERT_EQ(w.crossing().site.ground.size(), 3u);
  EXPECT_EQ(w.crossing().site.ground[2], (LevelPoint{20, 102.4}));
  w.window.document().undo_stack().undo();
  EXPECT_EQ(w.crossing(), before);
}

TEST(Fields, EveryFieldTakesItsOwnValueBack) {
  TestWindow w("house-service");
  const Crossing& c = w.crossing();
  std::vector<ItemRef> parts{
      {ItemKind::launch, {}, -1}, {ItemKind::exit, {}, -1}, {ItemKind::grade, {}, -1}, {ItemKind::ground, {}, 1}};
  for (const Utility& u : c.site.utilities) parts.push_back({ItemKind::utility, u.id, -1});
  for (const SurfaceFeature& s : c.site.surface) parts.push_back({ItemKind::surface, s.id, -1});
  for (const ItemRef& part : parts) {
    const std::vector<Field> fields = fields_of(c, part);
    EXPECT_FALSE(fields.empty()) << part_name(c, part);
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (!fields[i].value) continue;
      const double wanted = *fields[i].value * 1.0 + (fields[i].dimension == Dimension::grade ? 0.01 : 0.002);
      Crossing changed = c;
      fields[i].apply(changed, wanted);
      EXPECT_NEAR(*fields_of(changed, part)[i].value, wanted, 1e-9) << fields[i].label;
    }
  }
}

TEST(Fields, RefuseWhatTheFileWouldRefuse) {
  const std::vector<Field> fields = fields_of(blank_crossing(), {ItemKind::launch, {}, -1});
  EXPECT_FALSE(read_field(fields[3], "150 %", UnitSystem::metric));
  EXPECT_FALSE(read_field(fields[0], "10.0 m", UnitSystem::metric)) << "launch at the exit";
  EXPECT_FALSE(read_field(fields[0], "", UnitSystem::metric));
  EXPECT_TRUE(read_field(fields[3], "1:50", UnitSystem::metric));
}

TEST(Help, HasPagesWithTitles) {
  const std::vector<HelpPage> pages = help_pages();
  ASSERT_FALSE(pages.empty());
  for (const HelpPage& page : pages) {
    EXPECT_FALSE(page.title.isEmpty());
    EXPECT_GT(page.text.size(), 200) << page.title.toStdString();
  }
}

// A located line that is dragged lies where nobody found it: kept with it, asked about, one step to undo; whoever
// enters anew when or how it was located says where it is. What is only drawn, or proposed, was never located.
TEST(Document, DraggedLocatedLine_IsAskedAbout) {
  TestWindow w("house-service");
  ASSERT_TRUE(w.opened);
  Document& document = w.window.document();
  const Crossing before = document.crossing();
  const std::string gas = before.site.utilities[1].id;
  const auto line = [&]() -> const Utility& { return *find_by_id(document.crossing().site.utilities, gas); };
  const auto asks = [&] {
    const auto& findings = document.assessment().findings;
    return std::any_of(findings.begin(), findings.end(),
                       [&](const Finding& f) { return f.code == "missing.utility-moved" && f.subject == gas; });
  };
  ASSERT_NE(*line().located.how, LocatedHow::unknown);
  const auto raise = [&] {
    EditSession session(document, {ItemKind::utility, gas, -1});
    session.preview([&](Crossing& c) {
      for (PathVertex& v : find_by_id(c.site.utilities, gas)->path) *v.z_m += 0.14;
    });
    session.finish(QStringLiteral("move"));
  };
  EXPECT_FALSE(asks());
  raise();
  EXPECT_TRUE(line().located.moved);
  EXPECT_TRUE(asks());
  EXPECT_NE(document.assessment().verdict, Verdict::within_limits);
  document.undo_stack().undo();
  EXPECT_EQ(document.crossing(), before);
  EXPECT_FALSE(asks());
  document.undo_stack().redo();
  EXPECT_TRUE(asks());
  document.change(QStringLiteral("name"), [&](Crossing& c) { find_by_id(c.site.utilities, gas)->name = "main"; });
  EXPECT_TRUE(asks()) << "its name tells nothing of its place";
  document.change(QStringLiteral("located"),
                  [&](Crossing& c) { find_by_id(c.site.utilities, gas)->located.date = "2026-03-01"; });
  EXPECT_FALSE(line().located.moved);
  EXPECT_FALSE(asks());
  document.change(QStringLiteral("proposed"),
                  [&](Crossing& c) { find_by_id(c.site.utilities, gas)->status.set(UtilityStatus::proposed); });
  raise();
  EXPECT_FALSE(line().located.moved);
}

}  // namespace
}  // namespace burrow
