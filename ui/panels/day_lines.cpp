#include "day_lines.h"

#include <QComboBox>
#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "burrow/crew/checklist.h"
#include "burrow/crossing/day_record.h"
#include "burrow/day/permit_lines.h"
#include "burrow/document/clock_time.h"
#include "burrow/document/reading_forms.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/day_text.h"
#include "burrow/words/headline.h"

namespace burrow {

namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("burrow::DayPanel", text);
}

QString number(double value, Dimension dimension, UnitSystem units) {
  return text_from(format(value, dimension, units)).replace(QLatin1Char(' '), QChar(QChar::Nbsp));
}

double expected_s(const Advance& advance, double nose_m) {
  for (std::size_t i = 1; i < advance.points.size(); ++i) {
    const AdvancePoint &a = advance.points[i - 1], &b = advance.points[i];
    if (nose_m > b.s_m || !(b.s_m > a.s_m)) continue;
    return a.time.p50_s + (nose_m - a.s_m) / (b.s_m - a.s_m) * (b.time.p50_s - a.time.p50_s);
  }
  return advance.points.empty() ? 0 : advance.points.back().time.p50_s;
}

QString pace_words(const DayAnswer& day) {
  if (day.rate.pieces.empty()) return {};
  const RatePiece& last = day.rate.pieces.back();
  const OddRate what = day.rate.odds.back().front().what;
  if (what == OddRate::stone) return tr("slower than expected, as in stones");
  if (what == OddRate::lost_grip) return tr("slower than expected, as without grip");
  if (what == OddRate::soft_pocket) return tr("faster than expected, as in soft ground");
  if (what == OddRate::hollow) return tr("faster than expected, as in a void");
  constexpr double much = 1.5;
  if (last.taken_s > much * last.expected_s) return tr("slower than expected");
  if (much * last.taken_s < last.expected_s) return tr("faster than expected");
  return tr("as expected");
}

class DeckState {
 public:
  explicit DeckState(const DayShown& shown) : s_(shown) {}

  DayDeck::State all() {
    DayDeck::State& state = state_;
    const bool begun = s_.record && !s_.record->readings.empty();
    const bool going = begun && !ended(*s_.record) && !s_.locked;
    state.may_start = !begun && !s_.locked;
    state.start = s_.gate.gate == Gate::record_only ? tr("Record only") : tr("Start");
    state.advised = begun ? goes_on() : s_.gate.gate == Gate::open && s_.gate.permit_open == 0;
    state.may_mark = going && !s_.resting;
    state.may_stop = state.may_go = going;
    state.may_tick = going && std::any_of(s_.day.tasks.begin(), s_.day.tasks.end(), [](const DayTask& task) {
                       return !task.done && task.task != MarkTask::stop_until_exposed;
                     });
    if (s_.card) {
      danger();
    } else if (begun) {
      if (going) state.mark = number(next_mark(s_.crossing, s_.tables, *s_.record), Dimension::station, s_.units);
      advice();
      nose();
      rows();
    } else {
      not_started();
    }
    return std::move(state_);
  }

 private:
  /// Nothing is written down, and everybody goes out all the same.
  void danger() {
    DayAnswer out;
    out.advice = Advice::get_out;
    colour(s_.theme.stop, s_.theme.on_stop);
    state_.title = text_from(advice_title(out)) + phone();
    state_.text = text_from(advice_text(out, s_.units));
    state_.advised = false;
  }

  /// Whom to ring stands in the first line: nobody goes looking for it then.
  [[nodiscard]] QString phone() const {
    const std::string& number = s_.crossing.permit.emergency_phone;
    return number.empty() ? QString() : QStringLiteral(" · ") + text_from(number);
  }

  void not_started() {
    switch (s_.gate.gate) {
      case Gate::open:
        if (s_.gate.permit_open > 0) {
          colour(s_.theme.caution, s_.theme.on_caution);
          state_.title = tr("Permit to bore is open");
          state_.text = text_from(say_count("{} line of the page Permit does not hold today.",
                                            "{} lines of the page Permit do not hold today.", s_.gate.permit_open));
          state_.reason = tr("Fill them in first. A start is written down all the same; nothing shows green.");
          break;
        }
        state_.title = tr("Nothing started");
        state_.text = tr("Start when the tool is set and the air is on; then tap each hose mark as it goes in.");
        break;
      case Gate::take_on:
        colour(s_.theme.stop, s_.theme.on_stop);
        state_.title = tr("Do not start");
        state_.text = text_from(headline(s_.assessment, s_.units));
        state_.reason = tr("A named person may take it on, with a reason that stays in the record.");
        break;
      case Gate::record_only:
        colour(s_.theme.stop, s_.theme.on_stop);
        state_.title = tr("Do not bore: nobody can take this on");
        state_.text = blocked();
        state_.reason = tr("What is done all the same is only written down; no advice is given.");
        break;
    }
  }

  [[nodiscard]] QString blocked() const {
    if (s_.gate.no_go) return tr("No-go was signed for this day, on the page Permit.");
    if (!s_.gate.ticket_holds) return tr("The utility search does not hold on this day, or its marks cannot be seen.");
    if (s_.gate.to_expose.empty()) return tr("No path is known.");
    QStringList names;
    for (const Phrase& name : s_.gate.to_expose) names << text_from(translated_phrase(name));
    return tr("Not exposed: %1.").arg(names.join(QStringLiteral(", ")));
  }

  /// Nothing stands against the next mark but what is taken on or is being done.
  [[nodiscard]] bool goes_on() const {
    return s_.day.advice == Advice::go_on || s_.day.advice == Advice::as_taken_on || s_.day.advice == Advice::do_tasks;
  }

  void colour(const QColor& ground, const QColor& ink) {
    state_.ground = ground;
    state_.ink = ink;
  }

  void advice() {
    state_.title = text_from(advice_title(s_.day));
    if (s_.day.advice == Advice::get_out) state_.title += phone();
    state_.text = text_from(advice_text(s_.day, s_.units));
    if (!s_.day.reasons.empty() && s_.day.reasons.front().broken)
      state_.reason = text_from(reason_text(s_.day.reasons.front(), s_.units));
    if (!s_.day.advice) return;
    const Theme& theme = s_.theme;
    const bool amber = *s_.day.advice == Advice::do_tasks || (*s_.day.advice == Advice::go_on && s_.day.with_care);
    if (amber && s_.assessment.verdict != Verdict::stop)
      colour(theme.caution, theme.on_caution);
    else if (*s_.day.advice == Advice::go_on && !amber)
      colour(theme.fine, theme.on_fine);
    else
      colour(theme.stop, theme.on_stop);
  }

  void nose() {
    const double length = s_.assessment.bore.length_m;
    const double started = time_of_day_s(s_.record->started.value_or("")).value_or(0);
    const double expected = expected_s(s_.assessment.advance, s_.day.nose_m);
    state_.nose =
        tr("Nose %1 of %2 · %3 (%4 expected)")
            .arg(number(s_.day.nose_m, Dimension::station, s_.units), number(length, Dimension::station, s_.units),
                 number(s_.day.time_s, Dimension::duration, s_.units), number(expected, Dimension::duration, s_.units));
    const QString now = tr("now %1").arg(text_from(clock_text(s_.now_s, started)));
    QStringList pace{now};
    if (!ended(*s_.record) && goes_on()) {
      const double next = next_mark(s_.crossing, s_.tables, *s_.record);
      const double takes = expected_s(s_.assessment.advance, std::min(next, length)) - expected;
      if (takes > 0 && next <= length)
        pace << tr("next mark about %1")
                    .arg(text_from(clock_text(s_.day.time_s + takes * std::exp(s_.day.rate.factor_ln), started)));
    }
    if (const QString words = pace_words(s_.day); !words.isEmpty()) pace << words;
    state_.pace = pace.join(QStringLiteral(" · "));
  }

  void rows() {
    const double started = time_of_day_s(s_.record->started.value_or("")).value_or(0);
    const std::vector<Reading>& all = s_.record->readings;
    for (std::size_t i = all.size(); i-- > 0 && state_.rows.size() < DayDeck::rows_shown;) {
      DayDeck::Row row;
      row.reading = i;
      row.when = text_from(clock_text(all[i].time.s, started));
      const QString line = text_from(reading_line(all[i], s_.units));
      row.what = line.section(QStringLiteral(" · "), 1);
      row.struck = !counts(all[i]);
      row.asked = std::any_of(s_.day.queried.begin(), s_.day.queried.end(),
                              [i](const ReadingQuery& query) { return query.reading == i; });
      state_.rows.push_back(row);
    }
  }

  const DayShown& s_;
  DayDeck::State state_;
};

}  // namespace

DayDeck::State deck_state(const DayShown& shown) {
  return DeckState(shown).all();
}

DayTexts day_texts(const DayAnswer& day, const Crossing& crossing, UnitSystem units) {
  DayTexts texts;
  for (const DayLine& line : day_lines(day, crossing, units)) {
    if (line.what == burrow::translated("advice")) continue;
    if (line.what == burrow::translated("against") || line.what == burrow::translated("for") ||
        line.what == burrow::translated("worth knowing") || line.what == burrow::translated("not used") ||
        line.what.empty() || line.what == burrow::translated("the pace fits"))
      texts.why << (line.what == burrow::translated("for") || line.what.empty()
                        ? QString()
                        : text_from(line.what) + QStringLiteral(": ")) +
                       text_from(line.value);
    else
      texts.facts.emplace_back(text_from(line.what), text_from(line.value));
  }
  return texts;
}

std::vector<Card> reading_cards(const DayRecord* record, UnitSystem units) {
  std::vector<Card> cards;
  for (std::size_t i = record ? record->readings.size() : 0; i-- > 0;) {
    Card card;
    card.id = std::to_string(i);
    card.title = text_from(reading_line(record->readings[i], units));
    cards.push_back(std::move(card));
  }
  return cards;
}

void fill_records(QComboBox& records, const std::vector<DayRecord>& all, const std::string& shown) {
  records.clear();
  for (const DayRecord& one : all) {
    const QString when = text_from(one.started.value_or("")).left(16).replace(QLatin1Char('T'), QLatin1Char(' '));
    records.addItem(when.isEmpty() ? text_from(one.id) : when, text_from(one.id));
  }
  records.setCurrentIndex(records.findData(text_from(shown)));
}

QString danger_html(const Crossing& crossing) {
  QString html;
  int number = 0;
  for (const Phrase& step : first_steps())
    html += QStringLiteral("<p><b>%1. %2</b></p>").arg(++number).arg(text_from(step).toHtmlEscaped());
  const Permit& permit = crossing.permit;
  const auto number_of = [&](const QString& who, const std::string& phone) {
    html +=
        QStringLiteral("<p><b>%1: %2</b></p>")
            .arg(who.toHtmlEscaped(), (phone.empty() ? tr("number not entered") : text_from(phone)).toHtmlEscaped());
  };
  number_of(tr("Emergency number"), permit.emergency_phone);
  for (const std::string& owner : owners_here(crossing)) number_of(text_from(owner), contact_of(permit, owner).phone);
  number_of(tr("Locating service"), permit.locating_phone);
  for (const EmergencySteps& steps : emergency_steps(crossing)) {
    html += QStringLiteral("<p><b>%1</b></p>").arg(text_from(steps.title).toHtmlEscaped());
    for (const Phrase& step : steps.steps) html += QStringLiteral("<p>%1</p>").arg(text_from(step).toHtmlEscaped());
  }
  return html;
}

QString aftermath_text(const DayRecord& record) {
  const std::optional<EndHow> how = end_of(record);
  const bool trouble = danger_told(record) || how == EndHow::stuck || how == EndHow::lost || how == EndHow::daylight;
  if (!trouble && (!ended(record) || how == EndHow::arrived)) return {};
  const Statement& released = record.aftermath.released;
  if (!released.by.empty())
    return tr("Released by %1 on %2: %3")
        .arg(text_from(released.by), text_from(released.date.value_or("")), text_from(released.how));
  return trouble ? tr("The verdict is stop until a named person has released the place.")
                 : tr("Enter what became of the hole.");
}

}  // namespace burrow
