#pragma once
/// The texts a person reads, as they stand in the source: what a dictionary has to hold. `xgettext` finds the calls too
/// (tests/dictionary_test.cpp compares); words of choices, sources, labels of entries and texts of the tables it cannot
/// tell from ids, so `resources/words/update` has them from here.

#include <cctype>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "support/source_tree.h"

namespace burrow::test {

struct Token {
  enum class Kind { name, text, sign } kind = Kind::sign;
  std::string value;
};

inline std::string read_all(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Names, string literals (neighbours joined, escapes resolved) and single signs; comments and directives left out.
inline std::vector<Token> tokens_of(const std::string& code) {
  std::vector<Token> tokens;
  const auto is_name = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_'; };
  bool line_begins = true;
  for (std::size_t i = 0; i < code.size();) {
    const char c = code[i];
    if (c == '\n' || c == ' ' || c == '\t' || c == '\r') {
      line_begins = line_begins || c == '\n';
      ++i;
      continue;
    }
    if (code.compare(i, 2, "//") == 0 || (c == '#' && line_begins)) {
      while (i < code.size() && code[i] != '\n') ++i;
      continue;
    }
    line_begins = false;
    if (code.compare(i, 2, "/*") == 0) {
      i = std::min(code.find("*/", i), code.size() - 2) + 2;
    } else if (code.compare(i, 2, "R\"") == 0) {
      const std::size_t open = code.find('(', i);
      const std::string close = ")" + code.substr(i + 2, open - i - 2) + "\"";
      i = std::min(code.find(close, open), code.size() - close.size()) + close.size();
      tokens.push_back({Token::Kind::sign, "R"});
    } else if (c == '\'' && (tokens.empty() || tokens.back().kind != Token::Kind::name ||
                             !std::isdigit(static_cast<unsigned char>(tokens.back().value[0])))) {
      for (++i; i < code.size() && code[i] != '\''; ++i)
        if (code[i] == '\\') ++i;
      ++i;
      tokens.push_back({Token::Kind::sign, "'"});
    } else if (c == '"') {
      std::string text;
      for (++i; i < code.size() && code[i] != '"'; ++i) {
        if (code[i] != '\\') {
          text += code[i];
          continue;
        }
        const char escaped = code[++i];
        text += escaped == 'n' ? '\n' : escaped == 't' ? '\t' : escaped;
      }
      ++i;
      if (!tokens.empty() && tokens.back().kind == Token::Kind::text)
        tokens.back().value += text;
      else
        tokens.push_back({Token::Kind::text, text});
    } else if (is_name(c)) {
      std::string name;
      while (i < code.size() && is_name(code[i])) name += code[i++];
      tokens.push_back({Token::Kind::name, name});
    } else {
      tokens.push_back({Token::Kind::sign, std::string(1, c)});
      ++i;
    }
  }
  return tokens;
}

/// What gettext tells texts by.
struct TextKey {
  std::string context, text;
  auto operator<=>(const TextKey&) const = default;
};
struct TextFound {
  std::string plural;                 ///< of a counted text
  std::set<std::string> calls;        ///< files with it in tr(…), translated(…) …: xgettext finds it there
  std::set<std::string> other_files;  ///< where it stands otherwise
};
using Texts = std::map<TextKey, TextFound>;

inline bool has_words(const std::string& text) {
  int letters = 0;
  for (const char c : text) {
    letters = std::isalpha(static_cast<unsigned char>(c)) ? letters + 1 : 0;
    if (letters == 2) return true;
  }
  return false;
}

inline const std::string label_part = "part of a label";

/// Labels of entries are texts wherever they stand in these files; what begins otherwise is an id or a pointer.
inline bool is_label_file(const std::string& name) {
  return name.starts_with("ui/document/") &&
         (name.ends_with("fields.cpp") || name.ends_with("entry.cpp") || name.ends_with("forms.cpp"));
}
inline bool is_label(const std::string& text) {
  static const std::set<std::string> ids{"launch", "exit", "tool", "bore"};
  const auto small = [&](std::size_t i) {
    return i < text.size() && (std::islower(static_cast<unsigned char>(text[i])) || text[i] == ' ' || text[i] == ',');
  };
  int letters = 0, most = 0;
  for (const char c : text) {
    letters = std::islower(static_cast<unsigned char>(c)) ? letters + 1 : 0;
    most = std::max(most, letters);
  }
  return most >= 3 && small(0) && text[0] != ' ' && small(1) && !ids.contains(text);
}

/// The tokens of one file, with what is asked of them.
class TokenList {
 public:
  explicit TokenList(std::vector<Token> tokens) : tokens_(std::move(tokens)) {}

  [[nodiscard]] std::size_t size() const { return tokens_.size(); }
  [[nodiscard]] bool sign(std::size_t i, const char* what) const {
    return is(i, Token::Kind::sign) && tokens_[i].value == what;
  }
  [[nodiscard]] bool named(std::size_t i, std::initializer_list<const char*> names) const {
    return is(i, Token::Kind::name) &&
           std::any_of(names.begin(), names.end(), [&](const char* n) { return tokens_[i].value == n; });
  }
  [[nodiscard]] bool text(std::size_t i) const { return is(i, Token::Kind::text); }
  [[nodiscard]] const std::string& value(std::size_t i) const { return tokens_[i].value; }

  /// A text that is the whole first argument: its third one is there ("tr(text, nullptr, n)").
  [[nodiscard]] bool has_third_argument(std::size_t i) const {
    int depth = 0, commas = 0;
    for (; i < size(); ++i) {
      if (sign(i, "(") || sign(i, "{") || sign(i, "[")) ++depth;
      if ((sign(i, ")") || sign(i, "}") || sign(i, "]")) && depth-- == 0) return commas >= 2;
      if (sign(i, ",") && depth == 0) ++commas;
    }
    return false;
  }

 private:
  [[nodiscard]] bool is(std::size_t i, Token::Kind kind) const { return i < size() && tokens_[i].kind == kind; }

  std::vector<Token> tokens_;
};

/// The calls: tr(…), translated(…), say(…), translatable(…), translated_in(context, …), say_count(one, many, …),
/// translate(context, …).
inline void add_call(const TokenList& tokens, std::size_t i, const std::string& file, Texts& texts) {
  if (i < 2 || !tokens.sign(i - 1, "(")) return;
  const auto add = [&](const std::string& context, const std::string& text, const std::string& plural) {
    TextFound& found = texts[{context, text}];
    found.calls.insert(file);
    if (!plural.empty()) found.plural = plural;
  };
  const bool another = tokens.sign(i + 1, ",") && tokens.text(i + 2);
  const std::string& text = tokens.value(i);
  const std::string second = another ? tokens.value(i + 2) : std::string();
  if (tokens.named(i - 2, {"translated", "say", "translatable"})) add("", text, "");
  if (tokens.named(i - 2, {"tr"})) {
    const bool counted = tokens.has_third_argument(i);
    add(second, text, counted ? text : "");
  }
  if (!another) return;
  if (tokens.named(i - 2, {"say_count", "phrase_count"})) add("", text, second);
  if (tokens.named(i - 2, {"translated_in"})) add(text, second, "");
  if (tokens.named(i - 2, {"say_count_in"}) && tokens.text(i + 4)) add(text, second, tokens.value(i + 4));
  if (tokens.named(i - 2, {"translate", "QT_TRANSLATE_NOOP"})) add("", second, "");
}

/// Those of one file of source: the calls, sources with their label, labels of entries, the words of choices
/// (`EnumNames`) in the headers of the core.
inline void add_texts(const fs::path& file, Texts& texts) {
  const std::string name = file.lexically_relative(source_dir()).generic_string();
  const TokenList tokens(tokens_of(read_all(file)));
  bool words = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (tokens.named(i, {"EnumNames"}) && tokens.sign(i + 1, "<") && i > 0 && tokens.named(i - 1, {"struct"}) &&
        name.starts_with("core/"))
      words = true;
    if (tokens.sign(i, "}") && tokens.sign(i + 1, ";") && tokens.sign(i + 2, "}")) words = false;
    if (words && tokens.sign(i, "}") && tokens.sign(i + 1, ";") && !tokens.sign(i - 1, "}")) words = false;
    if (!tokens.text(i)) continue;
    add_call(tokens, i, name, texts);
    if (!has_words(tokens.value(i))) continue;
    const bool source = tokens.sign(i + 1, ",") && tokens.named(i + 2, {"SourceLabel"});
    const bool label = is_label_file(name) && is_label(tokens.value(i)) && !(i > 1 && tokens.named(i - 2, {"tr"}));
    if (!source && !label && !words) continue;
    // What follows a name in a label, ", high": translated_label looks it up by itself.
    const bool part = label && tokens.value(i).starts_with(", ");
    const TextKey key = part ? TextKey{label_part, tokens.value(i).substr(2)} : TextKey{"", tokens.value(i)};
    texts[key].other_files.insert(name);
  }
}

/// Names and short texts of the tables.
inline void add_texts_of_tables(const nlohmann::json& value, const std::string& file, Texts& texts) {
  static const std::set<std::string> shown{"name", "use",    "stands_open", "thumb",
                                           "note", "source", "law_source",  "yield_source"};
  for (const auto& [key, member] : value.items()) {
    if (member.is_structured()) add_texts_of_tables(member, file, texts);
    if (!member.is_string() || !shown.contains(key)) continue;
    const std::string text = member.get<std::string>();
    int letters = 0, most = 0;
    for (const char c : text) {
      letters = std::isalpha(static_cast<unsigned char>(c)) ? letters + 1 : 0;
      most = std::max(most, letters);
    }
    if (most >= 4) texts[{"", text}].other_files.insert(file);
  }
}

/// What a person reads in the samples and lessons: their names and notes, in the context "sample", numbers at the end
/// left out.
inline void add_texts_of_sample(const nlohmann::json& value, const std::string& file, Texts& texts) {
  static const std::set<std::string> shown{"name", "notes", "title", "aim",    "question",    "rule",      "source",
                                           "how",  "with",  "why",   "permit", "agreed_with", "precaution"};
  for (const auto& [key, member] : value.items()) {
    if (member.is_structured()) add_texts_of_sample(member, file, texts);
    if (!member.is_string() || !shown.contains(key)) continue;
    std::string text = member.get<std::string>();
    if (text.find(' ') == std::string::npos && key != "name") continue;  // a word of the file: "traced"
    text.erase(text.find_last_not_of(" 0123456789") + 1);
    if (!text.empty()) texts[{"sample", text}].other_files.insert(file);
  }
}

inline Texts texts_in_source() {
  Texts texts;
  for (const char* folder : {"core", "ui", "app"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"})) add_texts(file, texts);
  for (const fs::path& file : files_below("resources/tables", {".json"}))
    add_texts_of_tables(nlohmann::json::parse(read_all(file)), file.lexically_relative(source_dir()).generic_string(),
                        texts);
  for (const fs::path& file : files_below("samples", {".crossing"}))
    add_texts_of_sample(nlohmann::json::parse(read_all(file)), file.lexically_relative(source_dir()).generic_string(),
                        texts);
  return texts;
}

}  // namespace burrow::test
