#pragma once
/// The texts a person reads, as they stand in the source: what a dictionary has to hold.

#include <cctype>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "source_tree.h"

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

/// Text to the file it was first seen in.
using Texts = std::map<std::string, std::string>;

inline bool has_words(const std::string& text) {
  int letters = 0;
  for (const char c : text) {
    letters = std::isalpha(static_cast<unsigned char>(c)) ? letters + 1 : 0;
    if (letters == 2) return true;
  }
  return false;
}

/// Labels of entries are texts wherever they stand in these files; what begins otherwise is an id or a pointer.
inline bool is_label_file(const std::string& name) {
  return name.starts_with("ui/document/") && (name.ends_with("fields.cpp") || name.ends_with("entry.cpp"));
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

/// Those of one file of source: tr(…), said(…), say(…), noted(…), translate(context, …), sources with their label,
/// labels of entries, the words of choices in the headers of the core.
inline void add_texts(const fs::path& file, Texts& texts) {
  const std::string name = file.lexically_relative(source_dir()).generic_string();
  const std::vector<Token> tokens = tokens_of(read_all(file));
  const auto sign = [&](std::size_t i, const char* what) {
    return i < tokens.size() && tokens[i].kind == Token::Kind::sign && tokens[i].value == what;
  };
  const auto named = [&](std::size_t i, std::initializer_list<const char*> names) {
    return i < tokens.size() && tokens[i].kind == Token::Kind::name &&
           std::any_of(names.begin(), names.end(), [&](const char* n) { return tokens[i].value == n; });
  };
  bool words = false;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (named(i, {"Words"}) && sign(i + 1, "<") && i > 0 && named(i - 1, {"struct"}) && name.starts_with("core/"))
      words = true;
    if (sign(i, "}") && sign(i + 1, ";") && sign(i + 2, "}")) words = false;
    if (words && sign(i, "}") && sign(i + 1, ";") && !sign(i - 1, "}")) words = false;
    if (tokens[i].kind != Token::Kind::text || !has_words(tokens[i].value)) continue;
    const bool call = i >= 2 && sign(i - 1, "(") && named(i - 2, {"tr", "said", "say", "noted"});
    const bool second = i >= 4 && sign(i - 1, ",") && tokens[i - 2].kind == Token::Kind::text && sign(i - 3, "(") &&
                        named(i - 4, {"translate", "QT_TRANSLATE_NOOP"});
    const bool source = sign(i + 1, ",") && named(i + 2, {"SourceLabel"});
    const bool label = is_label_file(name) && is_label(tokens[i].value);
    if (call || second || source || label || words) texts.emplace(tokens[i].value, name);
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
    if (most >= 4) texts.emplace(text, file);
  }
}

inline Texts texts_in_source() {
  Texts texts;
  for (const char* folder : {"core", "ui", "app"})
    for (const fs::path& file : files_below(folder, {".h", ".cpp"})) add_texts(file, texts);
  for (const fs::path& file : files_below("resources/tables", {".json"}))
    add_texts_of_tables(nlohmann::json::parse(read_all(file)), file.filename().string(), texts);
  return texts;
}

}  // namespace burrow::test
