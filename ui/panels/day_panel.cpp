#include "burrow/panels/day_panel.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "burrow/charts/bore_charts.h"
#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/learn_box.h"
#include "burrow/words/day_text.h"
#include "choice_words.h"

namespace burrow {

namespace {
constexpr std::size_t rows_seen = 6;

}  // namespace

DayPanel::DayPanel(Document& document, QWidget* parent)
    : FormPanel(document, heavy_page_ms, parent), clock_([] { return QDateTime::currentDateTime(); }) {
  add_heading(tr("The day"));
  records_ = add_combo(tr("Record"));
  advice_ = add_text(tr("Advice"));
  advice_->setMargin(6);
  QFont bold = advice_->font();
  bold.setBold(true);
  advice_->setFont(bold);
  facts_ = add_text(tr("Where it is and where it goes"));
  why_ = add_text(tr("The numbers that decide"));
  add_gap();
  const auto taps = add_buttons({tr("Start"), tr("Mark"), tr("Stop"), tr("Go on")});
  begin_ = taps[0];
  mark_ = taps[1];
  stop_ = taps[2];
  go_ = taps[3];
  connect(begin_, &QPushButton::clicked, this, &DayPanel::begin);
  connect(mark_, &QPushButton::clicked, this, [this] { tap(ReadingKind::mark); });
  connect(stop_, &QPushButton::clicked, this, [this] { tap(ReadingKind::stop); });
  connect(go_, &QPushButton::clicked, this, [this] { tap(ReadingKind::go); });
  make_entry();
  add_gap();
  add_heading(tr("What was read"));
  list_ = add_list(tr("Readings"), rows_seen);
  remove_ = add_buttons({tr("Remove this reading")})[0];
  connect(remove_, &QPushButton::clicked, this, &DayPanel::remove_picked);
  connect(list_, &CardList::chosen, this, [this](const QString& id) { picked_ = id.toULongLong(); });
  up_ = new DeviationChart(Across::up, this);
  sideways_ = new DeviationChart(Across::sideways, this);
  add_widget(up_);
  add_widget(sideways_);
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
  learn_ = new LearnBox(document, this);
  add_widget(learn_);
  add_end();
  connect(records_, &QComboBox::activated, this, [this](int row) {
    shown_ = records_->itemData(row).toString().toStdString();
    refresh_now();
  });
  connect(&document, &Document::replaced, this, [this] {
    shown_.clear();
    typed_.clear();
    for (QLineEdit* input : inputs_) input->clear();
    time_->clear();
    words_->clear();
  });
}

void DayPanel::make_entry() {
  add_gap();
  add_heading(tr("Type a reading"));
  forms_ = reading_forms(0);
  kinds_ = add_combo(tr("Kind"));
  for (const ReadingForm& form : forms_) kinds_->addItem(text_from(translated_label(form.name)));
  entry_ = new QWidget(this);
  grid_ = new QGridLayout(entry_);
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setColumnStretch(0, 1);
  grid_->setColumnStretch(1, 1);
  add_widget(entry_);
  time_ = new QLineEdit(this);
  time_->setAccessibleName(tr("time since the start"));
  time_->setPlaceholderText(tr("now"));
  words_ = new QLineEdit(this);
  words_->setAccessibleName(tr("in words"));
  words_->hide();
  add_ = add_buttons({tr("Add this reading")})[0];
  complaint_ = add_text(tr("What is wrong with it"));
  connect(kinds_, &QComboBox::activated, this, [this](int row) {
    keep_typing();
    show_form(row);
  });
  connect(add_, &QPushButton::clicked, this, &DayPanel::add_typed);
  connect(time_, &QLineEdit::returnPressed, this, &DayPanel::add_typed);
  connect(words_, &QLineEdit::returnPressed, this, &DayPanel::add_typed);
  show_form(0);
}

void DayPanel::keep_typing() {
  QStringList texts;
  for (const QLineEdit* input : inputs_) texts << input->text();
  texts << words_->text();
  typed_[form_] = texts;
}

/// The inputs of one kind, with what was begun there before.
void DayPanel::show_form(int form) {
  form_ = std::clamp(form, 0, static_cast<int>(forms_.size()) - 1);
  grid_->removeWidget(time_);
  grid_->removeWidget(words_);
  while (QLayoutItem* item = grid_->takeAt(0)) {
    if (QWidget* widget = item->widget(); widget && widget != time_ && widget != words_) widget->deleteLater();
    delete item;
  }
  inputs_.clear();
  int row = 0;
  const auto add = [&](const QString& label, QLineEdit* input) {
    auto* name = new QLabel(label, entry_);
    name->setWordWrap(true);
    name->setBuddy(input);
    input->setAccessibleName(label);
    grid_->addWidget(name, row, 0);
    grid_->addWidget(input, row++, 1);
    input->show();
  };
  const ReadingForm& shown = forms_[static_cast<std::size_t>(form_)];
  const QStringList begun = typed_[form_];
  for (const ReadingInput& input : shown.inputs) {
    auto* edit = new QLineEdit(entry_);
    edit->setPlaceholderText(text_from(input.hint));
    edit->setText(begun.value(static_cast<int>(inputs_.size())));
    add(text_from(translated_label(input.label)), edit);
    connect(edit, &QLineEdit::returnPressed, this, &DayPanel::add_typed);
    inputs_.push_back(edit);
  }
  words_->setVisible(shown.words);
  if (shown.words) {
    words_->setText(begun.value(static_cast<int>(inputs_.size())));
    add(tr("in words"), words_);
  }
  add(tr("time since the start"), time_);
  complaint_->clear();
  complaint_->hide();
}

const DayRecord* DayPanel::record() const {
  for (const DayRecord& one : document_.crossing().record)
    if (one.id == shown_) return &one;
  return nullptr;
}

bool DayPanel::under_way() const {
  const DayRecord* now = record();
  return now && std::none_of(now->readings.begin(), now->readings.end(),
                             [](const Reading& r) { return r.kind == ReadingKind::end; });
}

double DayPanel::seconds_now() const {
  const DayRecord* now = record();
  if (!now) return 0;
  const QDateTime started = QDateTime::fromString(text_from(now->started.value_or("")), Qt::ISODate);
  const double last = now->readings.empty() ? 0 : now->readings.back().time.s;
  const double since = started.isValid() ? static_cast<double>(started.msecsTo(clock_())) / 1000 : last;
  // A record of another day, or a clock that was set back: after what stands there.
  constexpr double a_day_s = 86400;
  return since >= 0 && since < a_day_s ? std::max(since, last) : last;
}

void DayPanel::begin() {
  if (locked()) return;
  const std::string id = free_id(document_.crossing(), "d");
  DayRecord begun;
  begun.id = id;
  begun.started = clock_().toString(Qt::ISODate).toStdString();
  begun.readings.emplace_back().kind = ReadingKind::start;
  shown_ = id;
  change(tr("Start a record"), [&](Crossing& c) { c.record.push_back(begun); });
}

void DayPanel::put_in(const Reading& reading, const QString& step_name) {
  if (!record() || locked()) return;
  change(step_name, [&](Crossing& c) { add_reading(*find_by_id(c.record, shown_), reading); });
}

void DayPanel::tap(ReadingKind kind) {
  if (!under_way()) return;
  Reading reading;
  reading.kind = kind;
  reading.time = Duration{seconds_now()};
  if (kind == ReadingKind::mark) reading.nose = Length{next_mark(document_.crossing(), document_.tables(), *record())};
  put_in(reading, kind == ReadingKind::mark ? tr("Hose mark") : kind == ReadingKind::stop ? tr("Stop") : tr("Go on"));
}

void DayPanel::tap_end(EndHow how) {
  if (!under_way()) return;
  Reading reading;
  reading.kind = ReadingKind::end;
  reading.time = Duration{seconds_now()};
  reading.how = how;
  put_in(reading, tr("End of the bore"));
}

void DayPanel::add_typed() {
  const auto complain = [this](const QString& text) {
    complaint_->setText(text);
    complaint_->show();
  };
  if (!record()) return complain(tr("Start a record first."));
  if (locked()) return;
  double time = seconds_now();
  if (!time_->text().trimmed().isEmpty()) {
    const Result<double> typed = parse(time_->text().toStdString(), Dimension::duration, units_);
    if (!typed) return complain(tr("time since the start: %1").arg(text_from(typed.error().expected)));
    time = *typed;
  }
  std::vector<std::string> texts;
  for (const QLineEdit* input : inputs_) texts.push_back(input->text().toStdString());
  const std::vector<ReadingForm> forms = reading_forms(tail_to_nose(document_.crossing(), document_.tables()));
  const ReadingForm& form = forms[static_cast<std::size_t>(form_)];
  const Result<Reading> reading = reading_from(form, texts, words_->text().toStdString(), time, units_);
  if (!reading)
    return complain(tr("%1: %2 required").arg(text_from(reading.error().place), text_from(reading.error().expected)));
  complaint_->hide();
  complaint_->clear();
  const std::size_t before = record()->readings.size();
  put_in(*reading, tr("Add %1").arg(text_from(translated_label(form.name))));
  if (record() && record()->readings.size() == before) return;  // not taken: the typing stays
  for (QLineEdit* input : inputs_) input->clear();
  words_->clear();
  time_->clear();
  typed_.erase(form_);
}

void DayPanel::remove_picked() {
  if (!record() || locked() || picked_ >= record()->readings.size()) return;
  change(tr("Remove a reading"), [this](Crossing& c) {
    std::vector<Reading>& readings = find_by_id(c.record, shown_)->readings;
    readings.erase(readings.begin() + static_cast<std::ptrdiff_t>(picked_));
  });
}

QLineEdit* DayPanel::input(const QString& label) const {
  for (QLineEdit* one : entry_->findChildren<QLineEdit*>())
    if (one->accessibleName().startsWith(label)) return one;
  return nullptr;
}

QPushButton* DayPanel::button(const QString& begins_with) const {
  for (QPushButton* one : findChildren<QPushButton*>())
    if (one->text().startsWith(begins_with)) return one;
  return nullptr;
}

QString DayPanel::visible_text() const {
  return plain(advice_) + plain(facts_) + plain(why_);
}

void DayPanel::set_theme(const Theme& theme) {
  up_->set_theme(theme);
  sideways_->set_theme(theme);
  FormPanel::set_theme(theme);
}

void DayPanel::set_units(UnitSystem units) {
  FormPanel::set_units(units);
}

void DayPanel::refresh() {
  const std::vector<DayRecord>& all = document_.crossing().record;
  if (!record()) shown_ = all.empty() ? std::string() : all.back().id;
  records_->clear();
  for (const DayRecord& one : all) {
    const QString when = text_from(one.started.value_or("")).left(16).replace(QLatin1Char('T'), QLatin1Char(' '));
    records_->addItem(when.isEmpty() ? text_from(one.id) : when, text_from(one.id));
  }
  records_->setCurrentIndex(records_->findData(text_from(shown_)));
  records_->setEnabled(!all.empty());
  const bool going = under_way() && !locked();
  begin_->setText(all.empty() ? tr("Start") : tr("Start another"));
  begin_->setEnabled(!locked());
  mark_->setText(
      going ? tr("Mark, nose at %1")
                  .arg(text_of(next_mark(document_.crossing(), document_.tables(), *record()), Dimension::station))
            : tr("Mark"));
  for (QPushButton* one : {mark_, stop_, go_}) one->setEnabled(going);
  for (QPushButton* one : ends_) one->setEnabled(going);
  add_->setEnabled(record() && !locked());
  show_readings();
  show_answer();
  learn_->catch_up();
}

void DayPanel::show_readings() {
  std::vector<Card> cards;
  const DayRecord* now = record();
  if (now)
    for (std::size_t i = now->readings.size(); i-- > 0;) {  // the newest first
      Card card;
      card.id = std::to_string(i);
      const std::string line = reading_line(now->readings[i], units_);
      card.title = text_from(line);
      cards.push_back(std::move(card));
    }
  if (now && !now->readings.empty()) picked_ = std::min(picked_, now->readings.size() - 1);
  list_->setVisible(!cards.empty());
  remove_->setVisible(!cards.empty());
  for (QPushButton* button : {as_pdf_, print_}) button->setEnabled(!cards.empty());
  remove_->setEnabled(!locked());
  list_->show_cards(std::move(cards), std::to_string(picked_));
}

void DayPanel::show_answer() {
  const DayRecord* now = record();
  const bool drawn = now && !now->readings.empty();
  for (QWidget* widget : {static_cast<QWidget*>(facts_), static_cast<QWidget*>(why_), static_cast<QWidget*>(up_),
                          static_cast<QWidget*>(sideways_)})
    widget->setVisible(drawn);
  QPalette colours = palette();
  if (!drawn) {
    advice_->setText(
        tr("Nothing started. Start when the tool is set and the air is on; then tap each hose mark as it "
           "goes in, or type it with its time."));
    advice_->setAutoFillBackground(false);
    advice_->setPalette(colours);
    Q_EMIT read_path_changed({}, 0);
    return;
  }
  const DayAnswer day = now->alternative
                            ? day_answer(document_.crossing(), document_.tables(), *now)
                            : day_answer(document_.crossing(), document_.tables(), *now, document_.assessment());
  const Theme& theme = theme_;
  const auto colour = [&](Advice advice) {
    return advice == Advice::go_on           ? std::pair(theme.fine, theme.on_fine)
           : advice == Advice::stop_and_look ? std::pair(theme.caution, theme.on_caution)
                                             : std::pair(theme.stop, theme.on_stop);
  };
  const std::string sentence = advice_text(day, units_);
  advice_->setText(text_from(day.advice ? advice_title(*day.advice) + ". " + sentence : sentence));
  advice_->setAutoFillBackground(day.advice.has_value());
  if (day.advice) {
    const auto [ground, ink] = colour(*day.advice);
    colours.setColor(QPalette::Window, ground);
    colours.setColor(QPalette::WindowText, ink);
  }
  advice_->setPalette(colours);
  Facts facts;
  QStringList why;
  for (const DayLine& line : day_lines(day, document_.crossing(), units_)) {
    if (line.what == burrow::translated("advice")) continue;
    if (line.what == burrow::translated("against") || line.what == burrow::translated("for") ||
        line.what == burrow::translated("worth knowing") || line.what == burrow::translated("not used") ||
        line.what.empty() || line.what == burrow::translated("the rate may mean"))
      why << (line.what == burrow::translated("for") || line.what.empty()
                  ? QString()
                  : text_from(line.what) + QStringLiteral(": ")) +
                 text_from(line.value);
    else
      facts.emplace_back(text_from(line.what), text_from(line.value));
  }
  facts_->setText(facts_html(facts));
  why_->setText(why.join(QLatin1Char('\n')));
  Assessment as_read;
  as_read.bore = day.smoothed;
  up_->show_path(document_.crossing(), as_read, units_);
  sideways_->show_path(document_.crossing(), as_read, units_);
  Q_EMIT read_path_changed(day.smoothed.points, day.furthest_m);
}

}  // namespace burrow
