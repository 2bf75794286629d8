#include "burrow/language/plural.h"

#include <array>
#include <cctype>
#include <charconv>
#include <optional>
#include <string>

namespace burrow {

namespace {

using Step = PluralRule::Step;
using Kind = Step::Kind;

constexpr std::size_t most_forms = 16;
constexpr std::size_t most_steps = 500;
constexpr int most_nested = 100;  // parentheses in a row: the reader calls itself

struct Sign {
  std::string_view text;
  Kind kind;
};
// Loosest first, as C binds them; in a row the longer sign comes first.
const std::array<std::vector<Sign>, 6> levels{
    {{{"||", Kind::any}},
     {{"&&", Kind::both}},
     {{"==", Kind::equal}, {"!=", Kind::unequal}},
     {{"<=", Kind::at_most}, {">=", Kind::at_least}, {"<", Kind::less}, {">", Kind::greater}},
     {{"+", Kind::plus}, {"-", Kind::minus}},
     {{"*", Kind::times}, {"/", Kind::over}, {"%", Kind::rest}}}};

/// Reads by descent; nothing where the text is no expression.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  std::optional<std::vector<Step>> all() {
    const std::optional<std::size_t> last = choice();
    skip_blanks();
    if (!last || at_ != text_.size()) return std::nullopt;
    return std::move(steps_);
  }

 private:
  using Answer = std::optional<std::size_t>;

  void skip_blanks() {
    while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
  }
  bool take(std::string_view sign) {
    skip_blanks();
    if (!text_.substr(at_).starts_with(sign)) return false;
    at_ += sign.size();
    return true;
  }
  Answer add(Step step) {
    if (steps_.size() == most_steps) return std::nullopt;
    steps_.push_back(step);
    return steps_.size() - 1;
  }

  Answer choice() {
    if (++nested_ > most_nested) return std::nullopt;
    Answer answer = binary(0);
    if (answer && take("?")) {
      const Answer then = choice();
      if (!then || !take(":")) return std::nullopt;
      const Answer otherwise = choice();
      if (!otherwise) return std::nullopt;
      answer = add({Kind::choose, 0, *answer, *then, *otherwise});
    }
    --nested_;
    return answer;
  }

  Answer binary(std::size_t level) {
    if (level == levels.size()) return unary();
    Answer left = binary(level + 1);
    while (left) {
      const Sign* found = nullptr;
      for (const Sign& sign : levels[level])
        if (!found && take(sign.text)) found = &sign;
      if (!found) return left;
      const Answer right = binary(level + 1);
      left = right ? add({found->kind, 0, *left, *right, 0}) : std::nullopt;
    }
    return left;
  }

  Answer unary() {
    skip_blanks();
    if (at_ == text_.size()) return std::nullopt;
    if (take("!")) {
      if (++nested_ > most_nested) return std::nullopt;
      const Answer what = unary();
      --nested_;
      return what ? add({Kind::negate, 0, *what, 0, 0}) : std::nullopt;
    }
    if (take("(")) {
      const Answer inside = choice();
      return inside && take(")") ? inside : std::nullopt;
    }
    if (take("n")) return add({Kind::n, 0, 0, 0, 0});
    Step step;
    const char* end = text_.data() + text_.size();
    const auto [next, error] = std::from_chars(text_.data() + at_, end, step.number);
    if (error != std::errc()) return std::nullopt;
    at_ = static_cast<std::size_t>(next - text_.data());
    return add(step);
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int nested_ = 0;
  std::vector<Step> steps_;
};

/// Nothing where it divides by nothing. What a choice does not take is not reckoned, as in C.
std::optional<unsigned long long> value_of(const std::vector<Step>& steps, std::size_t at, unsigned long long n) {
  const Step& step = steps[at];
  if (step.kind == Kind::number) return step.number;
  if (step.kind == Kind::n) return n;
  const auto a = value_of(steps, step.a, n);
  if (!a) return std::nullopt;
  if (step.kind == Kind::negate) return *a == 0 ? 1 : 0;
  if (step.kind == Kind::choose) return value_of(steps, *a != 0 ? step.b : step.c, n);
  if (step.kind == Kind::any && *a != 0) return 1;
  if (step.kind == Kind::both && *a == 0) return 0;
  const auto b = value_of(steps, step.b, n);
  if (!b || (*b == 0 && (step.kind == Kind::over || step.kind == Kind::rest))) return std::nullopt;
  switch (step.kind) {
    case Kind::any:
    case Kind::both:
      return *b != 0 ? 1 : 0;
    case Kind::equal:
      return *a == *b ? 1 : 0;
    case Kind::unequal:
      return *a != *b ? 1 : 0;
    case Kind::less:
      return *a < *b ? 1 : 0;
    case Kind::greater:
      return *a > *b ? 1 : 0;
    case Kind::at_most:
      return *a <= *b ? 1 : 0;
    case Kind::at_least:
      return *a >= *b ? 1 : 0;
    case Kind::plus:
      return *a + *b;
    case Kind::minus:
      return *a - *b;
    case Kind::times:
      return *a * *b;
    case Kind::over:
      return *a / *b;
    default:
      return *a % *b;
  }
}

/// What stands between `name=` and the next semicolon.
std::string_view part(std::string_view line, std::string_view name) {
  const std::size_t at = line.find(name);
  if (at == std::string_view::npos) return {};
  const std::string_view rest = line.substr(at + name.size());
  return rest.substr(0, rest.find(';'));
}

}  // namespace

PluralRule::PluralRule() : steps_{{Kind::n, 0, 0, 0, 0}, {Kind::number, 1, 0, 0, 0}, {Kind::unequal, 0, 0, 1, 0}} {}

Result<PluralRule> PluralRule::read(std::string_view line) {
  const auto refused = [&] {
    return fail("Plural-Forms", std::string(line), "nplurals=N; plural=EXPRESSION; with less than N for each n");
  };
  PluralRule rule;
  const std::string_view count = part(line, "nplurals=");
  const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), rule.forms_);
  if (error != std::errc() || end != count.data() + count.size()) return refused();
  if (rule.forms_ == 0 || rule.forms_ > most_forms) return refused();
  auto steps = Reader(part(line, " plural=")).all();
  if (!steps) return refused();
  rule.steps_ = std::move(*steps);
  for (unsigned long long n = 0; n <= 1000; ++n) {
    const auto form = value_of(rule.steps_, rule.steps_.size() - 1, n);
    if (!form || *form >= rule.forms_) return refused();
  }
  return rule;
}

std::size_t PluralRule::form_of(unsigned long long n) const {
  const auto form = value_of(steps_, steps_.size() - 1, n);
  return form && *form < forms_ ? static_cast<std::size_t>(*form) : 0;  // as gettext answers beyond what was tried
}

}  // namespace burrow
