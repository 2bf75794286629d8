// Counted texts of the pages: each language has the forms its rule wants, English too.

#include <gtest/gtest.h>

#include <QObject>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "burrow/document/language.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/language/say.h"

namespace burrow {
namespace {

/// German again when a test ends.
struct Speaks {
  explicit Speaks(const char* language) { speak_language(QString::fromLatin1(language)); }
  ~Speaks() { speak_language(QStringLiteral("de")); }
};

/// Those of the pages, "%n pits"; the core's have "{}".
std::vector<std::string> counted_texts_of_pages() {
  const std::optional<Dictionary> english = dictionary_of("en");
  std::vector<std::string> texts;
  for (const auto& [text, forms] : english.value().counted) texts.push_back(text);
  return texts;
}

void expect_forms(const char* language) {
  const Speaks now(language);
  const std::vector<std::string> texts = counted_texts_of_pages();
  ASSERT_GT(texts.size(), 20u);
  for (const std::string& text : texts) {
    const std::vector<std::string>& forms = dictionary().counted.at(text);
    ASSERT_EQ(forms.size(), 2u) << text;
    for (const int n : {0, 1, 2, 5}) {
      const QString wanted =
          QString::fromStdString(forms[n == 1 ? 0 : 1]).replace(QStringLiteral("%n"), QString::number(n));
      const QString shown = QObject::tr(text.c_str(), nullptr, n);
      EXPECT_EQ(shown, wanted);
      EXPECT_FALSE(shown.contains(QStringLiteral("(s)")) || shown.contains(QStringLiteral("%n"))) << text;
      EXPECT_TRUE(n == 1 || shown.contains(QString::number(n))) << text << n;
    }
  }
}

TEST(CountedTexts, English_HasTheFormForOne) {
  expect_forms("en");
  const Speaks english("en");
  EXPECT_EQ(QObject::tr("%n utilities", nullptr, 1), QStringLiteral("1 utility"));
  EXPECT_EQ(QObject::tr("%n utilities", nullptr, 0), QStringLiteral("0 utilities"));
  EXPECT_EQ(QObject::tr("%n of a kind that no dictionary has", nullptr, 3),
            QStringLiteral("3 of a kind that no dictionary has"));
}

TEST(CountedTexts, German_HasTheFormForOne) {
  expect_forms("de");
  EXPECT_EQ(QObject::tr("%n utilities", nullptr, 1), QStringLiteral("1 Leitung"));
  EXPECT_EQ(QObject::tr("%n utilities", nullptr, 2), QStringLiteral("2 Leitungen"));
}

// A third language needs its catalogue: an invented one with three forms, as Slavic languages have them.
TEST(CountedTexts, ThreeForms_AreChosenByTheRuleOfTheLanguage) {
  const Speaks again("de");
  Result<Dictionary> invented = read_dictionary(
      "msgid \"\"\nmsgstr \"\"\n\"Language: qx\\n\"\n\"Content-Type: text/plain; charset=UTF-8\\n\"\n"
      "\"Plural-Forms: nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 "
      ": 2;\\n\"\n\n"
      "msgid \"%n utilities\"\nmsgid_plural \"%n utilities\"\nmsgstr[0] \"%n trubka\"\nmsgstr[1] \"%n trubky\"\n"
      "msgstr[2] \"%n trubok\"\n\n"
      "msgid \"{} utility\"\nmsgid_plural \"{} utilities\"\nmsgstr[0] \"{} vedka\"\nmsgstr[1] \"{} vedky\"\n"
      "msgstr[2] \"{} vedok\"\n\n"
      "msgid \"level\"\nmsgstr \"urova\"\n\nmsgctxt \"a line\"\nmsgid \"level\"\nmsgstr \"rovno\"\n");
  ASSERT_TRUE(invented) << invented.error().english();
  use_dictionary(*invented);
  const std::vector<std::pair<int, QString>> wanted{
      {0, QStringLiteral("ok")},  {1, QStringLiteral("ka")},  {2, QStringLiteral("ky")},  {5, QStringLiteral("ok")},
      {11, QStringLiteral("ok")}, {12, QStringLiteral("ok")}, {21, QStringLiteral("ka")}, {104, QStringLiteral("ky")}};
  for (const auto& [n, ending] : wanted) {
    EXPECT_EQ(QObject::tr("%n utilities", nullptr, n), QString::number(n) + QStringLiteral(" trub") + ending);
    EXPECT_EQ(QString::fromStdString(say_count("{} utility", "{} utilities", n)),
              QString::number(n) + QStringLiteral(" ved") + ending);
  }
  EXPECT_EQ(QObject::tr("level"), QStringLiteral("urova"));
  EXPECT_EQ(QObject::tr("level", "a line"), QStringLiteral("rovno"));
  EXPECT_EQ(QObject::tr("level", "a context it does not know"), QStringLiteral("urova"));
  EXPECT_EQ(QObject::tr("a text it does not know"), QStringLiteral("a text it does not know"));
}

}  // namespace
}  // namespace burrow
