// The words of the trade are explained where they stand.

#include "burrow/widgets/glossary.h"

#include <gtest/gtest.h>

#include <QHelpEvent>
#include <QLabel>
#include <QToolTip>

#include "support/window_for_tests.h"

namespace burrow {
namespace {

TEST(Glossary, EveryEntryOfThePage_IsRead) {
  EXPECT_EQ(glossary().size(), 55u);
  for (const Term& term : glossary()) {
    EXPECT_FALSE(term.spelt.empty()) << term.title.toStdString();
    EXPECT_GT(term.means.size(), 12) << term.title.toStdString();
    EXPECT_FALSE(term.means.contains(QLatin1Char('*'))) << term.title.toStdString();
  }
}

TEST(Glossary, Labels_AreExplainedByTheirLongestTerms) {
  EXPECT_TRUE(explained(QStringLiteral("grade, up positive")).contains(QStringLiteral("rise over run")));
  EXPECT_TRUE(explained(QStringLiteral("levelling tolerance (1σ)")).contains(QStringLiteral("about two in three")));
  const QString neutral = explained(QStringLiteral("&Neutral cover"));
  EXPECT_TRUE(neutral.startsWith(QStringLiteral("<p><b>Neutral cover</b>"))) << neutral.toStdString();
  EXPECT_TRUE(explained(QStringLiteral("colour")).isEmpty());
  EXPECT_TRUE(explained(QStringLiteral("upgraded")).isEmpty()) << "a part of a word is no word";
  EXPECT_TRUE(explained(QString()).isEmpty());
}

TEST(Glossary, PointerOnALabel_ShowsTheTip_OwnTipsStay) {
  TestWindow w("house-service");  // installs it
  QLabel label(QStringLiteral("heading, left positive"));
  label.show();
  QHelpEvent ask(QEvent::ToolTip, QPoint(2, 2), label.mapToGlobal(QPoint(2, 2)));
  QCoreApplication::sendEvent(&label, &ask);
  EXPECT_TRUE(QToolTip::text().contains(QStringLiteral("direction in plan"))) << QToolTip::text().toStdString();
  QToolTip::hideText();
  QLabel own(QStringLiteral("heading"));
  own.setToolTip(QStringLiteral("a tip of its own"));
  own.show();
  QHelpEvent again(QEvent::ToolTip, QPoint(2, 2), own.mapToGlobal(QPoint(2, 2)));
  QCoreApplication::sendEvent(&own, &again);
  EXPECT_FALSE(QToolTip::text().contains(QStringLiteral("direction in plan")));
}

}  // namespace
}  // namespace burrow
