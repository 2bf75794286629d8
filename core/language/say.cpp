#include "burrow/language/say.h"

#include <algorithm>
#include <atomic>
#include <memory>
#include <mutex>
#include <vector>

namespace burrow {

namespace {

const Dictionary english_only;
std::atomic<const Dictionary*> in_use = &english_only;

const std::string* known_text(std::string_view english) {
  const Dictionary& known = dictionary();
  const auto it = known.texts.find(english);
  return it == known.texts.end() ? nullptr : &it->second;
}

}  // namespace

void use_dictionary(Dictionary dictionary) {
  static std::mutex one_at_a_time;
  static std::vector<std::unique_ptr<const Dictionary>> all;
  const std::lock_guard lock(one_at_a_time);
  set_decimal_mark(dictionary.mark);
  all.push_back(std::make_unique<const Dictionary>(std::move(dictionary)));
  in_use = all.back().get();
}

const Dictionary& dictionary() {
  return *in_use.load();
}

const char* translated(const char* english) {
  const std::string* text = known_text(english);
  return text ? text->c_str() : english;
}

std::string translated(std::string_view english) {
  const std::string* text = known_text(english);
  return text ? *text : std::string(english);
}

std::string in_context(std::string_view context, std::string_view english) {
  return std::string(context) + '\x04' + std::string(english);
}

const char* translated_in(const char* context, const char* english) {
  const std::string* text = known_text(in_context(context, english));
  return text ? text->c_str() : translated(english);
}

const std::string* counted_text(std::string_view one, unsigned long long n) {
  const Dictionary& known = dictionary();
  const auto it = known.counted.find(one);
  const std::size_t form = known.plural.form_of(n);
  return it == known.counted.end() || form >= it->second.size() ? nullptr : &it->second[form];
}

const std::string* counted_text_in(std::string_view context, std::string_view one, unsigned long long n) {
  const std::string* text = counted_text(in_context(context, one), n);
  return text ? text : counted_text(one, n);
}

std::string sentences(std::initializer_list<std::string> all) {
  std::string text;
  for (const std::string& one : all) text += (text.empty() || one.empty() ? "" : " ") + one;
  return text;
}

namespace {
struct InUse {
  std::string operator()(std::string_view text) const { return translated(text); }
  std::string operator()(std::string_view one, std::string_view many, unsigned long long count) const {
    const std::string* known = counted_text(one, count);
    return known ? *known : std::string(count == 1 ? one : many);
  }
};
}  // namespace

std::string translated_phrase(const Phrase& phrase) {
  return phrase.in_words(InUse());
}

std::string translated_error(const Error& error) {
  return translated_phrase(error.line());
}

std::string translated_label(std::string_view english) {
  if (const std::string* whole = known_text(english)) return *whole;
  constexpr std::string_view between = ", ";
  std::string text;
  for (std::size_t from = 0; from < english.size();) {
    const std::size_t next = std::min(english.find(between, from), english.size());
    const std::string part(english.substr(from, next - from));
    text += from == 0 ? translated(part) : std::string(between) + translated_in("part of a label", part.c_str());
    from = next + between.size();
  }
  return text;
}

}  // namespace burrow
