#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "burrow/base/decimal_mark.h"
#include "burrow/base/phrase.h"
#include "burrow/base/quantity_text.h"
#include "one_spelling.h"
#include "quantity_units.h"

namespace burrow {

namespace {

using quantity_units::Group;
using quantity_units::Unit;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

/// A number as written, and how: a bare fraction may mean a slope.
struct Number {
  double value = 0;
  bool whole = false;     ///< digits only: "6"
  bool fraction = false;  ///< "1/50"
  bool hyphened = false;  ///< "6-1/2": needs an inch or foot mark to be sure of
  bool parts = false;     ///< a fraction is in it: "1 1/4"
};

/// Reads "number unit" terms and adds them up. Every function gives false once something is wrong.
class Parser {
 public:
  Parser(std::string_view typed, Dimension dimension, UnitSystem units)
      : text_(one_spelling(typed)), typed_(typed), dimension_(dimension), units_(units) {}

  Result<double> run() {
    skip_spaces();
    if (at_end()) return nothing_typed();
    if (dimension_ == Dimension::ratio && !named("sdr")) (void)named("dr");
    if (dimension_ == Dimension::small_length && named("dn")) return nominal();
    if (dimension_ == Dimension::chance && (peek() == '<' || peek() == '>')) ++at_;
    for (bool first = true; first || !at_end(); first = false) {
      double sign = 1;
      skip_spaces();
      if (peek() == '+' || peek() == '-')
        sign = text_[at_++] == '-' ? -1 : 1;
      else if (!first)
        return error(rest_shown());
      skip_spaces();
      if (!term(sign)) return tl::unexpected(*error_);
      skip_spaces();
    }
    return total();
  }

 private:
  [[nodiscard]] bool at_end() const { return at_ >= text_.size(); }
  [[nodiscard]] char peek(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }
  bool skip_spaces() {
    const std::size_t from = at_;
    while (peek() == ' ') ++at_;
    return at_ != from;
  }
  /// Takes "SDR" of "SDR 11", with or without its space.
  bool named(std::string_view name) {
    std::size_t after = name.size();
    if (!std::string_view(text_).substr(at_).starts_with(name)) return false;
    while (peek(after) == ' ') ++after;
    if (!number_ahead(after)) return false;
    at_ += after;
    return true;
  }
  /// "DN 63": always in millimetres, and a whole number.
  Result<double> nominal() {
    Number size;
    if (!number(size)) return tl::unexpected(*error_);
    skip_spaces();
    if (!size.whole || !at_end()) return error({}, translatable("DN and a whole number: DN 63"));
    return size.value * 1e-3;
  }
  [[nodiscard]] bool number_ahead(std::size_t ahead = 0) const {
    return is_digit(peek(ahead)) || ((peek(ahead) == '.' || peek(ahead) == ',') && is_digit(peek(ahead + 1)));
  }
  [[nodiscard]] bool is_length() const { return quantity_units::accepts(dimension_, Group::length); }
  [[nodiscard]] bool is_slope() const { return quantity_units::accepts(dimension_, Group::slope); }

  /// Empty `why`: the whole is not understood.
  tl::unexpected<Error> error(const Phrase& why, Phrase advice = {}) {
    const std::string typed = "\"" + std::string(typed_) + "\"";
    const quantity_units::Noun wanted = quantity_units::noun(dimension_);
    if (advice.empty())
      advice = phrase(translatable("{}, for example {}"), wanted.one,
                      std::string(quantity_units::example(dimension_, units_)));
    error_ = Error{wanted.name, why.empty() ? Phrase(typed) : phrase(translatable("{} ({})"), typed, why),
                   std::move(advice)};
    return tl::unexpected(*error_);
  }
  tl::unexpected<Error> nothing_typed() {
    (void)error({});
    error_->found = translatable("nothing");
    return tl::unexpected(*error_);
  }
  bool wrong(const Phrase& why, Phrase advice = {}) {
    (void)error(why, std::move(advice));
    return false;
  }
  [[nodiscard]] Phrase rest_shown() const {
    return phrase(translatable("not understood from \"{}\" on"), text_.substr(at_));
  }

  bool whole_digits(double& value) {
    const std::size_t from = at_;
    while (is_digit(peek())) ++at_;
    return to_double(text_.substr(from, at_ - from), value);
  }

  bool to_double(const std::string& digits, double& value) {
    const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (code != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value))
      return wrong(phrase(translatable("not a number that can be used: {}"), std::string(digits)));
    return true;
  }

  /// Digits with one decimal mark. A comma is one only where people write it so or nobody could have meant thousands.
  bool decimal(Number& number) {
    const std::size_t from = at_;
    while (is_digit(peek()) || peek() == '.' || peek() == ',') ++at_;
    std::string digits = text_.substr(from, at_ - from);
    const auto marks = std::count_if(digits.begin(), digits.end(), [](char c) { return !is_digit(c); });
    if (marks > 1)
      return wrong(translatable("more than one decimal mark"), translatable("a number without thousands separators"));
    if (const std::size_t comma = digits.find(','); comma != std::string::npos) {
      const bool thousands = decimal_mark() == DecimalMark::point && digits.size() - comma == 4 && comma >= 1 &&
                             comma <= 3 && digits[0] != '0';
      std::string with_point = digits;
      with_point[comma] = '.';
      if (thousands || comma + 1 == digits.size())
        return wrong(translatable("the comma may be a decimal mark or a thousands separator"),
                     phrase(translatable("{} or {}"), digits.substr(0, comma) + digits.substr(comma + 1), with_point));
      digits = with_point;
    }
    number.whole = marks == 0;
    const bool signed_exponent = (peek(1) == '-' || peek(1) == '+') && is_digit(peek(2));
    if (peek() == 'e' && (is_digit(peek(1)) || signed_exponent)) {
      const std::size_t exponent = at_;
      at_ += 2;
      while (is_digit(peek())) ++at_;
      digits += text_.substr(exponent, at_ - exponent);
      number.whole = false;
    }
    return to_double(digits, number.value);
  }

  /// Whether "digits/digits" begins here.
  [[nodiscard]] bool fraction_ahead(std::size_t ahead) const {
    const std::size_t from = ahead;
    while (is_digit(peek(ahead))) ++ahead;
    return ahead > from && peek(ahead) == '/' && is_digit(peek(ahead + 1));
  }

  bool fraction(double& value) {
    double above = 0;
    double below = 0;
    if (!whole_digits(above)) return false;
    ++at_;
    if (!whole_digits(below)) return false;
    if (!(below > 0)) return wrong(translatable("a fraction over 0"));
    value = above / below;
    return true;
  }

  /// "1.37", "1/2", "6 1/2", "6-1/2".
  bool number(Number& result) {
    if (!number_ahead()) return wrong(at_end() ? Phrase(translatable("a number is missing")) : rest_shown());
    if (fraction_ahead(0)) {
      result.fraction = result.parts = true;
      return fraction(result.value);
    }
    if (!decimal(result)) return false;
    if (!result.whole) return true;
    std::size_t spaces = 0;
    while (peek(spaces) == ' ') ++spaces;
    result.hyphened = peek() == '-' && fraction_ahead(1);
    if (!result.hyphened && !(spaces > 0 && fraction_ahead(spaces))) return true;
    at_ += result.hyphened ? 1 : spaces;
    double part = 0;
    if (!fraction(part)) return false;
    result.value += part;
    result.whole = false;
    result.parts = true;
    return true;
  }

  /// The longest known unit that begins here and ends at a boundary; null: none is written.
  bool unit(const Unit*& found) {
    found = nullptr;
    const Unit* other = nullptr;
    const std::string_view here = std::string_view(text_).substr(at_);
    for (const Unit& each : quantity_units::known_units()) {
      if (!here.starts_with(each.name)) continue;
      const char next = here.size() > each.name.size() ? here[each.name.size()] : '\0';
      const bool word = is_letter(each.name.back()) || is_digit(each.name.back());
      if (word && (is_letter(next) || next == '/')) continue;
      const Unit*& best = quantity_units::accepts(dimension_, each.group) ? found : other;
      if (best == nullptr || each.name.size() > best->name.size()) best = &each;
    }
    if (found == nullptr && other != nullptr)
      return wrong(
          phrase(translatable("{}: that is {}"), std::string(other->name), quantity_units::noun(other->group).one));
    if (found != nullptr) {
      at_ += found->name.size();
      return true;
    }
    const bool stands = !at_end() && std::string_view("+-:").find(peek()) == std::string_view::npos && !number_ahead();
    return !stands || wrong(phrase(translatable("unknown unit \"{}\""), std::string(here)));
  }

  static bool is_feet(const Unit* unit) {
    return unit != nullptr && unit->group == Group::length && unit->factor == quantity_units::foot_m;
  }
  static bool is_inches(const Unit* unit) {
    return unit != nullptr && unit->group == Group::length && unit->factor == quantity_units::inch_m;
  }

  void add(double value, const Unit* unit) {
    const quantity_units::UnitShown bare = quantity_units::shown(dimension_, units_);
    const bool turn = unit != nullptr ? unit->group == Group::turn : dimension_ == Dimension::angle;
    const double zero = unit != nullptr ? unit->zero : bare.zero;
    (turn ? turns_ : sum_) += (value + zero) * (unit != nullptr ? unit->factor : bare.factor);
    ++terms_;
  }

  bool term(double sign) {
    Number first;
    if (!number(first)) return false;
    std::size_t spaces = 0;
    while (peek(spaces) == ' ') ++spaces;
    if (is_slope() || dimension_ == Dimension::ratio) {
      if (peek(spaces) == ':') return run_of_slope(sign * first.value, spaces + 1);
      // "1 in 50": not inches
      if (is_slope() && text_.compare(at_ + spaces, 3, "in ") == 0) return run_of_slope(sign * first.value, spaces + 2);
    }
    if (feet_hyphen_inches(first)) return hyphened_feet(sign, first);
    if (error_) return false;
    at_ += spaces;
    const Unit* first_unit = nullptr;
    if (!unit(first_unit)) return false;
    if (first.hyphened && !is_inches(first_unit) && !is_feet(first_unit))
      return wrong(translatable("a hyphen before a fraction"), translatable("6 1/2, or a difference with spaces"));
    if (first.fraction && first_unit == nullptr && is_slope()) {
      sum_ += sign * first.value;  // "1/50": rise over run, as on a level
      return true;
    }
    // Nobody writes eighths of a millimetre: sizes with a fraction are inches.
    static constexpr Unit inch{"in", Group::length, quantity_units::inch_m};
    if (first_unit == nullptr && first.parts && dimension_ == Dimension::small_length) first_unit = &inch;
    add(sign * first.value, first_unit);
    return smaller_parts(sign, first_unit);
  }

  /// The run of "1:50" or "1 in 50".
  bool run_of_slope(double rise, std::size_t ahead) {
    at_ += ahead;
    skip_spaces();
    Number run;
    if (!number(run)) return false;
    if (!(run.value > 0)) return wrong(translatable("a rise over a run of 0"));
    sum_ += rise / run.value;
    return true;
  }

  /// Whether "4-6 1/2"" stands here: feet, a tight hyphen, inches with their mark.
  bool feet_hyphen_inches(const Number& feet) {
    if (!is_length() || !feet.whole || peek() != '-' || !number_ahead(1)) return false;
    const std::size_t from = at_;
    ++at_;
    Number inches;
    const Unit* mark = nullptr;
    if (!number(inches)) return false;
    const bool bare = at_end() || peek() == '+' || peek() == '-';
    skip_spaces();
    if (!unit(mark)) return false;
    at_ = from;
    if (bare && units_ == UnitSystem::us && dimension_ != Dimension::small_length && inches.value < 12)
      return wrong(translatable("feet and inches, or a difference"),
                   phrase(translatable("{} or {}"), fmt::format("{:.0f}' {:g}\"", feet.value, inches.value),
                          fmt::format("{:.0f} - {:g}", feet.value, inches.value)));
    return is_inches(mark);
  }

  bool hyphened_feet(double sign, const Number& feet) {
    sum_ += sign * feet.value * quantity_units::foot_m;
    ++at_;
    Number inches;
    const Unit* mark = nullptr;
    if (!number(inches)) return false;
    skip_spaces();
    if (!unit(mark)) return false;
    sum_ += sign * inches.value * quantity_units::inch_m;
    return true;
  }

  /// What follows a term without a sign: "4 ft 6 in", "4' 6", "4'-6"", "1 h 12 min".
  bool smaller_parts(double sign, const Unit* bigger) {
    while (bigger != nullptr) {
      const std::size_t from = at_;
      const bool spaced = skip_spaces();
      if (is_feet(bigger) && peek() == '-') {
        ++at_;
        const bool tight = !skip_spaces() && !spaced;
        const Inches next = inches_ahead();
        if (next == Inches::maybe || (next == Inches::marked && !tight))
          return wrong(translatable("feet and inches, or a difference"),
                       translatable("4' 6\", or 4 ft - 0.5 ft for a difference"));
        if (next == Inches::none) at_ = from;
      }
      if (!number_ahead()) {
        at_ = from;
        return true;
      }
      Number part;
      const Unit* smaller = nullptr;
      if (!number(part)) return false;
      skip_spaces();
      if (!unit(smaller)) return false;
      static constexpr Unit inch{"in", Group::length, quantity_units::inch_m};
      if (smaller == nullptr && is_feet(bigger) && part.value < 12) smaller = &inch;
      if (smaller == nullptr || !(smaller->factor < bigger->factor) || smaller->group != bigger->group)
        return wrong(translatable("two numbers without a sign between them"));
      add(sign * part.value, smaller);
      bigger = smaller;
    }
    if (skip_spaces() && number_ahead()) return wrong(translatable("two numbers without a sign between them"));
    return true;
  }

  enum class Inches { none, marked, maybe };  ///< maybe: no unit, and less than a foot

  /// Whether inches follow; the place does not move.
  Inches inches_ahead() {
    const std::size_t from = at_;
    Number part;
    const Unit* mark = nullptr;
    bool read = number_ahead() && number(part);
    skip_spaces();
    read = read && unit(mark);
    at_ = from;
    error_.reset();
    if (!read) return Inches::none;
    if (mark == nullptr) return part.value < 12 ? Inches::maybe : Inches::none;
    return is_inches(mark) ? Inches::marked : Inches::none;
  }

  Result<double> total() {
    double value = sum_ + turns_;
    if (dimension_ == Dimension::grade && turns_ != 0) {
      if (!(std::abs(turns_) < pi / 2)) return error(translatable("steeper than upright"));
      value = sum_ + std::tan(turns_);
    }
    if (dimension_ == Dimension::angle) value = turns_ + std::atan(sum_);
    if (!std::isfinite(value)) return error(translatable("too large"));
    if (dimension_ == Dimension::temperature && terms_ != 1)
      return error(translatable("temperatures are not added up"));
    if (dimension_ == Dimension::count && value != std::floor(value)) return error(translatable("not a whole number"));
    return value;
  }

  std::string text_;
  std::string_view typed_;
  Dimension dimension_;
  UnitSystem units_;
  std::size_t at_ = 0;
  double sum_ = 0;    ///< SI; of a grade or an angle: rise over run
  double turns_ = 0;  ///< rad
  int terms_ = 0;
  std::optional<Error> error_;
};

}  // namespace

Result<double> parse(std::string_view text, Dimension dimension, UnitSystem units) {
  constexpr std::size_t longest = 200;
  if (text.size() > longest)
    return fail(translatable("text"), phrase(translatable("{} characters"), std::to_string(text.size())),
                translatable("at most 200 characters"));
  return Parser(text, dimension, units).run();
}

}  // namespace burrow
