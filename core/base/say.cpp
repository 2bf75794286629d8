#include "burrow/base/say.h"

#include <algorithm>
#include <atomic>
#include <memory>
#include <mutex>
#include <vector>

namespace burrow {

namespace {

const Dictionary english_only;
std::atomic<const Dictionary*> in_use = &english_only;

const std::string* turned(std::string_view english) {
  const Dictionary& dictionary = spoken();
  const auto it = dictionary.texts.find(english);
  return it == dictionary.texts.end() ? nullptr : &it->second;
}

}  // namespace

void speak(Dictionary dictionary) {
  static std::mutex one_at_a_time;
  static std::vector<std::unique_ptr<const Dictionary>> all;
  const std::lock_guard lock(one_at_a_time);
  all.push_back(std::make_unique<const Dictionary>(std::move(dictionary)));
  in_use = all.back().get();
}

const Dictionary& spoken() {
  return *in_use.load();
}

const char* said(const char* english) {
  const std::string* text = turned(english);
  return text ? text->c_str() : english;
}

std::string said(std::string_view english) {
  const std::string* text = turned(english);
  return text ? *text : std::string(english);
}

std::string said_phrase(const Phrase& phrase) {
  return phrase.in_words([](std::string_view text) { return said(text); });
}

std::string said_label(std::string_view english) {
  if (const std::string* whole = turned(english)) return *whole;
  std::string text;
  for (std::size_t from = 0; from < english.size();) {
    const std::size_t next = std::min(english.find(", ", from + 1), english.size());
    text += said(english.substr(from, next - from));
    from = next;
  }
  return text;
}

}  // namespace burrow
