// Which form a language uses for a number. The rules are those of the GNU gettext manual, "Additional functions for
// plural forms" (read there).

#include "burrow/language/plural.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace burrow {
namespace {

std::vector<std::size_t> forms_of(const PluralRule& rule, const std::vector<unsigned long long>& numbers) {
  std::vector<std::size_t> forms;
  for (const unsigned long long n : numbers) forms.push_back(rule.form_of(n));
  return forms;
}

TEST(Plural, WithoutARule_OneAndAllElse) {
  EXPECT_EQ(PluralRule().forms(), 2u);
  EXPECT_EQ(forms_of(PluralRule(), {0, 1, 2, 21}), (std::vector<std::size_t>{1, 0, 1, 1}));
}

TEST(Plural, Gettext_RulesOfItsManual) {
  struct Case {
    const char* line;
    std::vector<unsigned long long> numbers;
    std::vector<std::size_t> forms;
  };
  const Case cases[] = {
      {"nplurals=1; plural=0;", {0, 1, 2, 5}, {0, 0, 0, 0}},
      {"nplurals=2; plural=n != 1;", {0, 1, 2, 21}, {1, 0, 1, 1}},
      {"nplurals=2; plural=n>1;", {0, 1, 2}, {0, 0, 1}},
      {"nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n != 0 ? 1 : 2;", {0, 1, 11, 21, 5}, {2, 0, 1, 0, 1}},
      {"nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1 : 2;",
       {0, 1, 2, 5, 11, 12, 21, 22, 104, 112},
       {2, 0, 1, 2, 2, 2, 0, 1, 1, 2}},
      {"nplurals=4; plural=n%100==1 ? 0 : n%100==2 ? 1 : n%100==3 || n%100==4 ? 2 : 3;",
       {1, 2, 3, 4, 5, 101, 103},
       {0, 1, 2, 2, 3, 0, 2}},
      {"nplurals=6; plural=n==0 ? 0 : n==1 ? 1 : n==2 ? 2 : n%100>=3 && n%100<=10 ? 3 : n%100>=11 ? 4 : 5;",
       {0, 1, 2, 3, 10, 11, 99, 100, 102},
       {0, 1, 2, 3, 3, 4, 4, 5, 5}},
  };
  for (const Case& c : cases) {
    const Result<PluralRule> rule = PluralRule::read(c.line);
    ASSERT_TRUE(rule) << c.line;
    EXPECT_EQ(forms_of(*rule, c.numbers), c.forms) << c.line;
  }
}

TEST(Plural, Operators_BindAsInC) {
  const auto form = [](const std::string& expression, unsigned long long n) {
    const Result<PluralRule> rule = PluralRule::read("nplurals=16; plural=" + expression + ";");
    EXPECT_TRUE(rule) << expression;
    return rule ? rule->form_of(n) : 99;
  };
  EXPECT_EQ(form("2+3*4-1-1", 0), 12u);
  EXPECT_EQ(form("(2+3)*3", 0), 15u);
  EXPECT_EQ(form("100/7/2", 0), 7u);
  EXPECT_EQ(form("!n", 0), 1u);
  EXPECT_EQ(form("!!n", 7), 1u);
  EXPECT_EQ(form("1 < 2 == 1", 0), 1u);
  EXPECT_EQ(form("0 && 0 || 1", 0), 1u);
  EXPECT_EQ(form("n == 0 ? 4 : n < 3 ? 5 : 6", 2), 5u);
  EXPECT_EQ(form("n == 0 || 10 / n < 20", 0), 1u) << "what is not needed is not reckoned";
  EXPECT_EQ(form("n > 1000000 ? 3 : 1", 18446744073709551615u), 3u);
}

TEST(Plural, WhatIsNoRule_IsRefused) {
  const std::string deep(200, '('), shut(200, ')');
  for (const std::string& line : std::vector<std::string>{
           "", "nplurals=2;", "plural=n;", "nplurals=0; plural=0;", "nplurals=17; plural=0;", "nplurals=2; plural=;",
           "nplurals=2; plural=n;", "nplurals=2; plural=n != 1 1;", "nplurals=2; plural=(n;",
           "nplurals=2; plural=n ? 1;", "nplurals=2; plural=m != 1;", "nplurals=2; plural=1/n;",
           "nplurals=2; plural=n%0;", "nplurals=2; plural=n-1;", "nplurals=INTEGER; plural=EXPRESSION;",
           "nplurals=-2; plural=0;", "nplurals=2; plural=" + deep + "0" + shut + ";",
           "nplurals=2; plural=" + std::string(5000, '!') + "n;", "nplurals=2; plural=99999999999999999999999;"})
    EXPECT_FALSE(PluralRule::read(line)) << line;
}

}  // namespace
}  // namespace burrow
