#include "burrow/document/clock_time.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <vector>

namespace burrow {

namespace {

constexpr double day_s = 86400, hour_s = 3600, minute_s = 60;
constexpr double ahead_s = 120;  ///< a watch may be that far ahead

std::optional<int> whole(std::string_view text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

struct Typed {
  int first = 0, second = 0;
  std::optional<bool> afternoon;
};

std::optional<Typed> split(std::string_view text) {
  const auto trim = [&] {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  };
  trim();
  Typed typed;
  std::string low(text);
  for (char& c : low) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  for (const auto& [word, afternoon] : {std::pair{"am", false}, {"pm", true}, {"a.m.", false}, {"p.m.", true}})
    if (low.ends_with(word)) {
      typed.afternoon = afternoon;
      text.remove_suffix(std::string_view(word).size());
      trim();
      break;
    }
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return std::nullopt;
  const std::optional<int> first = whole(text.substr(0, colon)), second = whole(text.substr(colon + 1));
  if (!first || !second || *first < 0 || *second < 0 || *second >= 60) return std::nullopt;
  if (text.size() - colon - 1 != 2) return std::nullopt;
  typed.first = *first;
  typed.second = *second;
  return typed;
}

}  // namespace

std::optional<double> seconds_by_clock(std::string_view text, const ClockOfRecord& record) {
  const std::optional<Typed> typed = split(text);
  if (!typed) return std::nullopt;
  std::vector<double> clock;
  const auto add = [&](int hour) {
    const double since = hour * hour_s + typed->second * minute_s - record.started_at_s;
    clock.push_back(since - day_s * std::floor(since / day_s));
  };
  if (typed->afternoon) {
    if (typed->first < 1 || typed->first > 12) return std::nullopt;
    add(typed->first % 12 + (*typed->afternoon ? 12 : 0));
    return clock.front();
  }
  if (typed->first < 24) add(typed->first);
  if (typed->first < 12) add(typed->first + 12);
  const auto between = [&](double s) { return s >= record.last_s - minute_s && s <= record.now_s + ahead_s; };
  for (const double s : clock)
    if (between(s)) return s;
  const double since = typed->first * minute_s + typed->second;
  if (between(since)) return since;
  for (const double s : clock)
    if (s <= record.now_s + ahead_s) return s;
  return typed->first < 24 && typed->first > 12 ? std::optional(clock.front()) : std::optional(since);
}

std::string clock_text(double since_start_s, double started_at_s) {
  const double at = started_at_s + since_start_s;
  const double days = std::floor(at / day_s), minutes = std::floor((at - days * day_s) / minute_s);
  const int hour = static_cast<int>(minutes / 60), minute = static_cast<int>(minutes) % 60;
  const std::string text = fmt::format("{}:{:02}", hour, minute);
  return days >= 1 ? fmt::format("{} +{:.0f}", text, days) : text;
}

std::optional<double> time_of_day_s(std::string_view started) {
  constexpr std::size_t hours = 11, minutes = 14, seconds = 17;
  if (started.size() < minutes + 2) return std::nullopt;
  const std::optional<int> hour = whole(started.substr(hours, 2)), minute = whole(started.substr(minutes, 2));
  if (!hour || !minute) return std::nullopt;
  const std::optional<int> second =
      started.size() >= seconds + 2 ? whole(started.substr(seconds, 2)) : std::optional(0);
  return *hour * hour_s + *minute * minute_s + second.value_or(0);
}

}  // namespace burrow
