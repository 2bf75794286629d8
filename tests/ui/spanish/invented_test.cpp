// A language nobody speaks, whose words are 40 % longer than the English ones, read from left to right and from right
// to left: nothing on a page is cut, and the drawing stays as the ground lies.

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QGuiApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>

#include "burrow/document/language.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/language/say.h"
#include "support/window_for_tests.h"

namespace burrow {
namespace {

/// Vowels twice until there are 40 % more letters; placeholders, tags and the letter after "&" stay.
std::string longer(const std::string& text) {
  const auto is_vowel = [](char c) { return std::string_view("aeiou").find(c) != std::string_view::npos; };
  const std::size_t wanted = (text.size() * 14 + 9) / 10;
  std::string out;
  std::size_t more = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const char end = c == '{' ? '}' : c == '<' ? '>' : '\0';
    if (const std::size_t last = end ? text.find(end, i) : std::string::npos; last != std::string::npos) {
      out += text.substr(i, last + 1 - i);
      i = last;
      continue;
    }
    out += c;
    if (is_vowel(c) && (i == 0 || (text[i - 1] != '&' && text[i - 1] != '%')) && text.size() + more < wanted) {
      out += std::string(2, c);
      more += 2;
    }
  }
  return out;
}

Dictionary invented() {
  Dictionary dictionary = dictionary_of("es").value();
  dictionary.language = "qx";
  for (auto& [english, text] : dictionary.texts) {
    const std::size_t context = english.find('\x04');
    text = longer(context == std::string::npos ? english : english.substr(context + 1));
  }
  for (auto& [english, forms] : dictionary.counted)
    for (std::string& form : forms) form = longer(english.substr(english.find('\x04') + 1));
  return dictionary;
}

/// Speaks it until the test ends.
class Speaking {
 public:
  explicit Speaking(Qt::LayoutDirection direction) {
    use_dictionary(invented());
    QGuiApplication::setLayoutDirection(direction);
  }
  ~Speaking() {
    QGuiApplication::setLayoutDirection(Qt::LeftToRight);
    speak_language(QStringLiteral("es"));
  }
};

bool is_cut(const QWidget& w, const QString& text) {
  if (text.isEmpty() || !w.isVisible()) return false;
  if (qobject_cast<const QLineEdit*>(w.parentWidget())) return false;  // a picture at its end, its text is spoken alone
  const int high = w.hasHeightForWidth() ? w.heightForWidth(w.width()) : w.minimumSizeHint().height();
  return w.width() < w.minimumSizeHint().width() || w.height() < high;
}

void expect_nothing_cut(const QWidget& root, const std::string& where) {
  for (const QWidget* w : root.findChildren<QWidget*>()) {
    const auto* label = qobject_cast<const QLabel*>(w);
    const auto* button = qobject_cast<const QAbstractButton*>(w);
    const QString text = label ? label->text() : button ? button->text() : QString();
    EXPECT_FALSE(is_cut(*w, text)) << where << ": \"" << text.toStdString() << "\" has " << w->width() << " x "
                                   << w->height() << " of " << w->minimumSizeHint().width() << " x "
                                   << w->minimumSizeHint().height();
  }
}

void expect_pages_hold(Qt::LayoutDirection direction) {
  const Speaking now(direction);
  TestWindow w("house-service", {1280, 720});
  ASSERT_TRUE(w.opened);
  EXPECT_LE(w.window.width(), 1280) << "the words make the window wider than a laptop's screen";
  EXPECT_LE(w.window.height(), 720);
  for (int page = 0; page < w.window.side().count(); ++page) {
    w.window.side().show_page(static_cast<SideColumn::Page>(page));
    settle(w.window);
    expect_nothing_cut(w.window, "page " + std::to_string(page));
  }
  // East is right whatever way people read.
  EXPECT_LT(w.window.drawing().frame().side(0, 0).x(), w.window.drawing().frame().side(5, 0).x());
}

TEST(InventedLanguage, LongerWords_AreNotCut) {
  expect_pages_hold(Qt::LeftToRight);
}

TEST(InventedLanguage, ReadFromTheRight_IsNotCut) {
  expect_pages_hold(Qt::RightToLeft);
}

}  // namespace
}  // namespace burrow
