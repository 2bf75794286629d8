#include "burrow/panels/day_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTimer>
#include <algorithm>

#include "ask_box.h"
#include "burrow/charts/bore_charts.h"
#include "burrow/crossing/day_record.h"
#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/learn_box.h"
#include "burrow/words/headline.h"
#include "choice_words.h"
#include "day_deck.h"
#include "day_lines.h"
#include "day_taps.h"
#include "reading_entry.h"

namespace burrow {

namespace {

constexpr std::size_t rows_seen = 6;
constexpr int glove = 48;
constexpr int rest_ms = 1000;    ///< of Mark after a tap: a glove taps twice
constexpr int clock_ms = 10000;  ///< the clock on the page shows minutes

}  // namespace

DayPanel::DayPanel(Document& document, QWidget* parent)
    : FormPanel(document, heavy_page_ms, parent),
      clock_([] { return QDateTime::currentDateTime(); }),
      deck_(new DayDeck(this)),
      ask_(new AskBox(this)) {
  add_above(deck_);
  make_taps();
  auto* clock = new QTimer(this);
  clock->start(clock_ms);
  connect(clock, &QTimer::timeout, this, [this] {
    if (isVisible() && under_way()) show_deck();
  });
  add_widget(ask_);
  make_danger();
  make_entry();
  make_list();
  facts_ = add_text(tr("Where it is and where it goes"));
  why_ = add_text(tr("The numbers that decide"));
  up_ = new DeviationChart(Across::up, this);
  sideways_ = new DeviationChart(Across::sideways, this);
  add_widget(up_);
  add_widget(sideways_);
  make_end();
  make_paper();
  add_end();
  // With gloves: whatever is tapped on this page.
  for (CardList* list : {list_, photos_}) list->set_least_row(glove);
  for (QWidget* one : findChildren<QWidget*>())
    if (qobject_cast<QPushButton*>(one) || qobject_cast<QComboBox*>(one) || qobject_cast<QLineEdit*>(one))
      one->setMinimumHeight(std::max(glove, one->minimumHeight()));
  connect(&document, &Document::replaced, this, [this] {
    shown_.clear();
    picked_.reset();
    card_ = false;
    last_tap_ = {};
    entry_->clear_all();
    ask_->close_it();
  });
}

void DayPanel::make_taps() {
  connect(deck_, &DayDeck::start_tapped, this, &DayPanel::begin);
  connect(deck_, &DayDeck::mark_tapped, this, [this] { tap(ReadingKind::mark); });
  connect(deck_, &DayDeck::stop_tapped, this, [this] { tap(ReadingKind::stop); });
  connect(deck_, &DayDeck::go_tapped, this, [this] { tap(ReadingKind::go); });
  connect(deck_, &DayDeck::danger_tapped, this, &DayPanel::tap_danger);
  connect(deck_, &DayDeck::done_tapped, this, &DayPanel::tap_done);
  connect(deck_, &DayDeck::taken_back, this, &DayPanel::take_back);
}

void DayPanel::make_entry() {
  add_gap();
  add_heading(tr("Type a reading"));
  entry_ = new ReadingEntry(this);
  add_widget(entry_);
  add_ = add_buttons({tr("Add this reading")})[0];
  connect(add_, &QPushButton::clicked, this, &DayPanel::add_typed);
  connect(entry_, &ReadingEntry::typed, this, &DayPanel::add_typed);
}

void DayPanel::make_list() {
  add_gap();
  add_heading(tr("What was read"));
  list_ = add_list(tr("Readings"), rows_seen);
  const auto buttons = add_buttons({tr("It stands"), tr("Strike through")});
  stands_ = buttons[0];
  strike_ = buttons[1];
  connect(stands_, &QPushButton::clicked, this,
          [this] { change_reading(picked(), tr("A reading stands"), [](Reading& one) { one.confirmed = true; }); });
  connect(strike_, &QPushButton::clicked, this, [this] { ask_and_strike(picked()); });
  connect(list_, &CardList::chosen, this, [this](const QString& id) {
    picked_ = id.toULongLong();
    show_picked();
  });
}

void DayPanel::make_end() {
  add_gap();
  add_heading(tr("How it ended"));
  ends_ = add_buttons(labels_of<EndHow>({{EndHow::arrived, tr("Arrived")},
                                         {EndHow::backed_out, tr("Backed out")},
                                         {EndHow::stuck, tr("Stuck")},
                                         {EndHow::daylight, tr("Came out of the ground")},
                                         {EndHow::struck, tr("Struck something")},
                                         {EndHow::lost, tr("Lost")}}));
  for (std::size_t i = 0; i < ends_.size(); ++i)
    connect(ends_[i], &QPushButton::clicked, this, [this, i] { tap_end(word_at<EndHow>(static_cast<int>(i))); });
  make_after();
}

void DayPanel::make_paper() {
  add_gap();
  add_heading(tr("Records"));
  records_ = add_combo(tr("Record"));
  connect(records_, &QComboBox::activated, this, [this](int row) {
    shown_ = records_->itemData(row).toString().toStdString();
    picked_.reset();
    refresh_now();
  });
  another_ = add_buttons({tr("Begin another record")})[0];
  connect(another_, &QPushButton::clicked, this, &DayPanel::begin);
  add_gap();
  add_heading(tr("As-built record"));
  const auto paper = add_buttons({tr("As PDF…"), tr("Print…")});
  as_pdf_ = paper[0];
  print_ = paper[1];
  as_pdf_->setToolTip(tr("Drawing of the bore as it was built, the readings as they were taken, lines to sign on"));
  print_->setToolTip(as_pdf_->toolTip());
  const auto want = [this](bool printed) {
    if (const DayRecord* now = record(); now && !now->readings.empty()) Q_EMIT as_built_wanted(now->id, printed);
  };
  connect(as_pdf_, &QPushButton::clicked, this, [want] { want(false); });
  connect(print_, &QPushButton::clicked, this, [want] { want(true); });
  add_gap();
  add_heading(tr("Learning"));
  learn_ = new LearnBox(document_, this);
  add_widget(learn_);
}

const DayRecord* DayPanel::record() const {
  return find_by_id(document_.crossing().record, shown_);
}

bool DayPanel::under_way() const {
  const DayRecord* now = record();
  return now && !ended(*now);
}

bool DayPanel::resting() const {
  return last_tap_.isValid() && clock_() < last_tap_.addMSecs(rest_ms) && clock_() >= last_tap_;
}

StartGate DayPanel::gate_now() const {
  const QDate day = clock_().date();
  return start_gate(document_.crossing(), document_.assessment(), {{day.year(), day.month(), day.day()}});
}

double DayPanel::seconds_now() const {
  const DayRecord* now = record();
  return now ? seconds_since_start(*now, clock_()) : 0;
}

/// A verdict that is against it wants a named person; what nobody can take on is only recorded.
void DayPanel::begin() {
  // One after the other: with a second one open nobody would know whose advice it is.
  if (const DayRecord* open = open_record(document_.crossing()); locked() || (open && !open->readings.empty())) return;
  const StartGate gate = gate_now();
  if (gate.gate != Gate::take_on) return start({});
  ask_->ask(tr("The verdict is against it: %1").arg(text_from(headline(document_.assessment(), units_))),
            tr("Who takes it on, by name"), tr("Why it is started all the same"), tr("Take it on and start"),
            [this, gate](const QString& by, const QString& why) {
              start(TakenOn{by.toStdString(),
                            why.toStdString(),
                            clock_().date().toString(Qt::ISODate).toStdString(),
                            gate.to_take_on,
                            {}});
            });
  bring_into_view(ask_);
}

void DayPanel::start(std::optional<TakenOn> taken_on) {
  const DayRecord begun = new_record(document_.crossing(), clock_(), std::move(taken_on));
  shown_ = begun.id;
  picked_.reset();
  card_ = false;
  change(tr("Start a record"), [&](Crossing& c) { c.record.push_back(begun); });
}

void DayPanel::put_in(const Reading& reading, const QString& step_name) {
  if (!record() || locked()) return;
  picked_.reset();
  change(step_name, [&](Crossing& c) { add_reading(*find_by_id(c.record, shown_), reading); });
}

void DayPanel::change_reading(std::size_t at, const QString& step_name, const std::function<void(Reading&)>& edit) {
  if (!record() || locked() || at >= record()->readings.size()) return;
  change(step_name, [&](Crossing& c) { edit(find_by_id(c.record, shown_)->readings[at]); });
}

void DayPanel::tap(ReadingKind kind) {
  if (!under_way() || (kind == ReadingKind::mark && resting())) return;
  const Reading reading = tapped(kind, seconds_now(), document_.crossing(), document_.tables(), *record());
  if (kind == ReadingKind::mark) {
    last_tap_ = clock_();
    QTimer::singleShot(rest_ms, this, [this] { refresh_soon(); });
  }
  put_in(reading, kind == ReadingKind::mark   ? tr("Hose mark")
                  : kind == ReadingKind::stop ? tr("Air off")
                                              : tr("Goes on"));
}

void DayPanel::tap_done() {
  if (!under_way()) return;
  if (const std::optional<Reading> reading = tasks_done(day_, seconds_now())) put_in(*reading, tr("Tasks done"));
}

void DayPanel::tap_end(EndHow how) {
  if (!under_way()) return;
  Reading reading;
  reading.kind = ReadingKind::end;
  reading.time = Duration{seconds_now()};
  reading.how = how;
  put_in(reading, tr("End of the bore"));
}

/// Struck through, it stays in the record. What is grave, and the start, want a reason.
void DayPanel::take_back(std::size_t at) {
  if (!record() || locked() || at >= record()->readings.size()) return;
  if (wants_reason(record()->readings[at], day_)) return ask_and_strike(at);
  change_reading(at, tr("Strike a reading through"), [](Reading& one) { one.cancelled = std::string(); });
}

void DayPanel::ask_and_strike(std::size_t at) {
  if (!record() || locked() || at >= record()->readings.size()) return;
  ask_->ask(tr("Strike through: %1").arg(text_from(reading_line(record()->readings[at], units_))),
            tr("Why, and who says so"), {}, tr("Strike through"), [this, at](const QString& why, const QString&) {
              change_reading(at, tr("Strike a reading through"),
                             [&](Reading& one) { one.cancelled = why.toStdString(); });
            });
  bring_into_view(ask_);
}

void DayPanel::add_typed() {
  if (!record()) return entry_->complain(tr("Start a record first."));
  if (locked()) return;
  const Result<Reading> reading =
      typed_reading(*entry_, seconds_now(), document_.crossing(), document_.tables(), *record(), units_);
  if (!reading)
    return entry_->complain(
        tr("%1: %2 required").arg(text_from(reading.error().place), text_from(reading.error().expected)));
  const std::size_t before = record()->readings.size();
  put_in(*reading, tr("Add %1").arg(text_from(translated_label(entry_->form().name))));
  if (record() && record()->readings.size() == before) return;  // not taken: the typing stays
  entry_->clear_form();
}

QLineEdit* DayPanel::input(const QString& label) const {
  return entry_->input(label);
}

QPushButton* DayPanel::button(const QString& begins_with) const {
  QPushButton* hidden = nullptr;
  for (QPushButton* one : findChildren<QPushButton*>()) {
    if (!one->text().startsWith(begins_with)) continue;
    if (one->isVisibleTo(this)) return one;
    hidden = one;
  }
  return hidden;
}

QLabel* DayPanel::advice() const {
  return deck_->advice();
}

QString DayPanel::advice_text() const {
  return plain(deck_->advice());
}

QString DayPanel::visible_text() const {
  return advice_text() + plain(deck_->pace()) + plain(facts_) + plain(why_) + plain(danger_);
}

/// On a low screen the block at the top leaves room for what is typed below it.
void DayPanel::resizeEvent(QResizeEvent* event) {
  constexpr int low_px = 700;
  deck_->set_low(height() < low_px);
  FormPanel::resizeEvent(event);
}

void DayPanel::set_theme(const Theme& theme) {
  deck_->set_theme(theme);
  up_->set_theme(theme);
  sideways_->set_theme(theme);
  FormPanel::set_theme(theme);
}

void DayPanel::refresh() {
  const std::vector<DayRecord>& all = document_.crossing().record;
  if (!record()) shown_ = all.empty() ? std::string() : all.back().id;
  fill_records(*records_, all, shown_);
  records_->setEnabled(!all.empty());
  const DayRecord* open = open_record(document_.crossing());
  another_->setEnabled(!all.empty() && (!open || open->readings.empty()) && !locked());
  const bool going = under_way() && !locked();
  for (QPushButton* one : ends_) one->setEnabled(going);
  add_->setEnabled(record() && !locked());
  const DayRecord* now = record();
  day_ = now && !now->readings.empty()
             ? day_of_record(document_.crossing(), document_.tables(), *now, document_.assessment())
             : DayAnswer();
  show_deck();
  show_readings();
  show_rest();
  learn_->catch_up();
}

void DayPanel::show_deck() {
  const StartGate gate = gate_now();
  deck_->show_state(deck_state({document_.crossing(), document_.assessment(), document_.tables(), record(), day_, gate,
                                theme_, units_, seconds_now(), locked(), resting(), card_}));
}

void DayPanel::show_readings() {
  const DayRecord* now = record();
  std::vector<Card> cards = reading_cards(now, units_);
  list_->setVisible(!cards.empty());
  for (QPushButton* button : {as_pdf_, print_}) button->setEnabled(!cards.empty());
  list_->show_cards(std::move(cards), std::to_string(picked()));
  show_picked();
}

void DayPanel::show_picked() {
  const DayRecord* now = record();
  const Reading* one = now && picked() < now->readings.size() ? &now->readings[picked()] : nullptr;
  strike_->setEnabled(one && !locked() && !one->cancelled);
  stands_->setEnabled(one && !locked() && !one->cancelled && !one->confirmed.value_or(false));
}

void DayPanel::show_rest() {
  const DayRecord* now = record();
  const bool drawn = now && !now->readings.empty();
  for (QWidget* widget : {static_cast<QWidget*>(facts_), static_cast<QWidget*>(why_), static_cast<QWidget*>(up_),
                          static_cast<QWidget*>(sideways_)})
    widget->setVisible(drawn);
  const bool told = drawn && day_.advice == Advice::get_out, danger = told || card_;
  for (QWidget* widget : danger_widgets_) widget->setVisible(danger);
  for (QWidget* widget : sign_widgets_) widget->setVisible(told && danger_told(*now) && !locked());
  close_card_->setVisible(card_);
  danger_->setText(danger ? danger_html(document_.crossing()) : QString());
  show_after();
  if (!drawn) {
    facts_->clear();
    why_->clear();
    Q_EMIT read_path_changed({}, 0);
    return;
  }
  const DayTexts texts = day_texts(day_, document_.crossing(), units_);
  facts_->setText(facts_html(texts.facts));
  why_->setText(texts.why.join(QLatin1Char('\n')));
  Assessment as_read;
  as_read.bore = day_.smoothed;
  up_->show_path(document_.crossing(), as_read, units_);
  sideways_->show_path(document_.crossing(), as_read, units_);
  Q_EMIT read_path_changed(day_.smoothed.points, day_.furthest_m);
}

}  // namespace burrow
