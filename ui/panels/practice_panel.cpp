#include "burrow/panels/practice_panel.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRandomGenerator>
#include <QSlider>
#include <QTableWidget>
#include <QTimer>
#include <algorithm>

#include "burrow/bore/point_on_path.h"
#include "burrow/document/practice_fields.h"
#include "burrow/document/text.h"
#include "burrow/file/practice_file.h"
#include "burrow/language/say.h"
#include "burrow/panels/entry_form.h"
#include "practice_words.h"

namespace burrow {

namespace {
constexpr int frame_ms = 40;
constexpr double slowest_m_s = 0.2;  ///< of the reveal at the left end of the slider; each step is as much more
}  // namespace

PracticePanel::PracticePanel(Document& document, QWidget* parent)
    : FormPanel(document, heavy_page_ms, parent), slow_(new QTimer(this)) {
  slow_->setInterval(frame_ms);
  connect(slow_, &QTimer::timeout, this, &PracticePanel::step_reveal);
  add_heading(tr("Practice bore"));
  lessons_ = add_combo(tr("Lesson"));
  for (const Lesson& lesson : all_lessons()) lessons_->addItem(tr(lesson.title), QString::fromLatin1(lesson.sample));
  const auto open = add_buttons({tr("Open this lesson"), tr("Random practice bore")});
  connect(open[0], &QPushButton::clicked, this, [this] { Q_EMIT lesson_wanted(lessons_->currentData().toString()); });
  connect(open[1], &QPushButton::clicked, this, &PracticePanel::draw_random);
  lesson_ = add_text(tr("Aim and question"));
  add_gap();
  start_ = add_buttons({tr("Start boring")})[0];
  start_->setToolTip(tr("With the layout as it is drawn now"));
  connect(start_, &QPushButton::clicked, this, &PracticePanel::start);
  state_ = add_text(tr("What the crew sees"));
  state_->setMinimumHeight(4 * fontMetrics().height());  // the buttons below keep their places
  state_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  QStringList words;
  for (const auto& [choice, word] : EnumNames<PracticeChoice>::list) words << choice_words(choice);
  choices_ = add_buttons(words);
  for (std::size_t i = 0; i < choices_.size(); ++i)
    connect(choices_[i], &QPushButton::clicked, this, [this, i] { choose(word_at_row(i)); });
  log_ = add_text(tr("Log of the stops"));
  reveal_ = add_buttons({tr("Show the true bore")})[0];
  connect(reveal_, &QPushButton::clicked, this, &PracticePanel::reveal);
  speed_ = new QSlider(Qt::Horizontal, this);
  speed_->setRange(1, 20);
  speed_->setValue(4);
  speed_->setAccessibleName(tr("Speed of showing it"));
  add_labelled(tr("speed of showing it"), speed_);
  result_text_ = add_text(tr("Debrief"));
  make_results();
  make_truth();
  add_gap();
  add_heading(tr("Try an error"));
  add_text(tr("Try an error"))
      ->setText(tr("Level, sight, depth, soil or tool set wrong, and where the bore comes out then, on the drawing."));
  connect(add_buttons({tr("Try it on the drawing")})[0], &QPushButton::clicked, this, &PracticePanel::try_wanted);
  add_end();
  connect(&document, &Document::replaced, this, &PracticePanel::forget);
}

void PracticePanel::make_results() {
  add_gap();
  add_heading(tr("Class table"));
  results_ = new QTableWidget(this);
  results_->setAccessibleName(tr("Class table"));
  results_->setColumnCount(5);
  results_->setHorizontalHeaderLabels({tr("who"), tr("end"), tr("across"), tr("up"), tr("correct")});
  results_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  results_->setFrameShape(QFrame::NoFrame);
  results_->setMinimumHeight(fontMetrics().height() * 7);
  add_widget(results_);
  name_ = new QLineEdit(this);
  name_->setAccessibleName(tr("name for the table"));
  add_labelled(tr("name"), name_);
  const auto buttons = add_buttons({tr("Enter in the table"), tr("Same bore again")});
  enter_ = buttons[0];
  again_ = buttons[1];
  connect(enter_, &QPushButton::clicked, this, &PracticePanel::enter_result);
  connect(name_, &QLineEdit::returnPressed, this, &PracticePanel::enter_result);
  connect(again_, &QPushButton::clicked, this, &PracticePanel::start_anew);
}

void PracticePanel::make_truth() {
  add_gap();
  trainer_ = new QCheckBox(tr("Trainer: hidden conditions"), this);
  add_widget(trainer_);
  const int before = widgets_so_far();
  truth_ = add_entries(tr("default"));
  truth_->show_part(practice_part, [this] { return truth_fields(document_.crossing(), document_.tables()); });
  const auto soil_at_launch = [this]() -> const Stratum* {
    const auto& strata = document_.crossing().site.strata;
    return strata.empty() ? nullptr : &strata.back();
  };
  QStringList soils{tr("as drawn")};
  for (const SoilClass& soil : document_.tables().soils) soils << text_from(soil.name);
  true_soil_ = add_choice(
      tr("lowest stratum is really"), soils,
      [this, soil_at_launch] {
        const PracticeTruth truth = practice_of(document_.crossing(), document_.tables()).truth;
        for (const TrueSoil& one : truth.soils)
          if (soil_at_launch() && one.stratum == soil_at_launch()->id)
            for (std::size_t i = 0; i < document_.tables().soils.size(); ++i)
              if (document_.tables().soils[i].id == one.soil) return static_cast<int>(i) + 1;
        return 0;
      },
      [this, soil_at_launch](int row) {
        if (!soil_at_launch()) return;
        const std::string id = soil_at_launch()->id;
        edit_truth(tr("True soil"), [&](Practice& practice) {
          std::erase_if(practice.truth.soils, [&](const TrueSoil& one) { return one.stratum == id; });
          if (row > 0)
            practice.truth.soils.push_back({id, document_.tables().soils[static_cast<std::size_t>(row - 1)].id});
        });
      },
      true);
  moved_ = add_combo(tr("service that lies off its mark"));
  connect(moved_, &QComboBox::activated, this, [this](int row) {
    const std::string id = moved_->itemData(row).toString().toStdString();
    edit_truth(tr("Move a service"), [&](Practice& practice) {
      std::vector<MovedService>& services = practice.truth.services;
      const MovedService as_before = services.empty() ? MovedService{{}, 0, 0.3} : services.front();
      services.clear();
      if (!id.empty()) services.push_back({id, as_before.across_m, as_before.up_m});
    });
  });
  make_hidden();
  trainers_ = widgets_after(before);
  connect(trainer_, &QCheckBox::toggled, this, [this](bool on) {
    for (QWidget* widget : trainers_) widget->setVisible(on);
  });
  for (QWidget* widget : trainers_) widget->setVisible(false);
}

void PracticePanel::edit_truth(const QString& step_name, const std::function<void(Practice&)>& edit) {
  if (locked()) return;
  change(step_name, [&](Crossing& c) {
    Practice practice = practice_of(c, document_.tables());
    edit(practice);
    c.practice = write_practice(practice);
  });
}

void PracticePanel::forget() {
  slow_->stop();
  run_.reset();
  debrief_.reset();
  asked_twice_.reset();
  entered_ = false;
  revealed_m_ = -1;
  Q_EMIT truth_changed(std::nullopt);
  Q_EMIT read_path_changed({}, 0);
  if (isVisible()) refresh_now();
}

/// A crossing of its own for each who asks: no lesson's words stay with it.
void PracticePanel::draw_random() {
  const auto seed = static_cast<std::uint64_t>(QRandomGenerator::global()->bounded(1, 1000000));
  edit_truth(tr("Random bore"), [&](Practice& practice) {
    practice.title = tr("Random bore no. %1").arg(seed).toStdString();
    practice.aim.clear();
    practice.question.clear();
    practice.rule.clear();
    practice.truth = draw_truth(document_.crossing(), document_.tables(), seed);
  });
  forget();
}

/// A layout that must stop is started in training only, and is asked about once.
void PracticePanel::start() {
  const bool stops = document_.assessment().verdict == Verdict::stop;
  if (stops && asked_twice_ != PracticeChoice::go_on) {
    forget();
    asked_twice_ = PracticeChoice::go_on;
    return show_run();
  }
  start_anew();
}

void PracticePanel::start_anew() {
  forget();
  const Practice practice = practice_of(document_.crossing(), document_.tables());
  run_ = std::make_unique<PracticeRun>(document_.crossing(), document_.tables(), practice.truth);
  show_run();
  if (isVisible()) choices_.front()->setFocus();
}

/// What ends the bore is pressed twice.
void PracticePanel::choose(PracticeChoice choice) {
  if (!run_ || run_->over()) return;
  const bool ends = choice == PracticeChoice::stop_and_look || choice == PracticeChoice::leave_and_expose ||
                    choice == PracticeChoice::back_out;
  if (ends && asked_twice_ != choice) {
    asked_twice_ = choice;
    return show_run();
  }
  asked_twice_.reset();
  run_->choose(choice);
  show_run();
  for (std::size_t i = 0; i < choices_.size(); ++i)
    if (word_at_row(i) == choice && choices_[i]->isVisible() && choices_[i]->isEnabled()) choices_[i]->setFocus();
  if (run_->over() && reveal_->isVisible()) reveal_->setFocus();
}

void PracticePanel::reveal() {
  if (!run_ || !run_->over()) return;
  if (!debrief_) debrief_ = debrief(run_->layout(), document_.tables(), run_->conditions());
  revealed_m_ = 0;
  slow_->start();
  show_run();
}

void PracticePanel::step_reveal() {
  if (!run_ || !run_->over()) return slow_->stop();
  revealed_m_ += slowest_m_s * speed_->value() * frame_ms / 1000;
  if (revealed_m_ >= run_->truth().bore.path.length_m) {
    revealed_m_ = run_->truth().bore.path.length_m;
    slow_->stop();
    show_run();
  }
  report_truth();
}

void PracticePanel::finish_reveal() {
  reveal();
  if (!run_ || !run_->over()) return;
  revealed_m_ = run_->truth().bore.path.length_m;
  slow_->stop();
  report_truth();
  show_run();
}

std::shared_ptr<const Playback> PracticePanel::shown_truth() const {
  if (!run_ || !run_->over() || revealed_m_ < 0 || slow_->isActive()) return nullptr;
  const Tool tool = resolve_tool(run_->layout().bore.tool, document_.tables());
  const Playback played = true_playback(run_->truth(), tool);
  return played.empty() ? nullptr : std::make_shared<const Playback>(played);
}

/// As much of the hidden bore as is revealed so far.
void PracticePanel::report_truth() {
  if (!run_ || !run_->over() || revealed_m_ < 0) return;
  const PracticeBore& bore = run_->truth();
  TrueLine line;
  for (const PathPoint& p : bore.bore.path.points)
    if (p.s_m < revealed_m_) line.points.push_back({p.x_m, p.y_m, p.z_m});
  const PathPoint tip = point_at(bore.bore.path, revealed_m_);
  line.points.push_back({tip.x_m, tip.y_m, tip.z_m});
  for (const StoneHit& stone : bore.bore.stones)
    if (stone.s_m <= revealed_m_) {
      const PathPoint p = point_at(bore.bore.path, stone.s_m);
      line.stones.push_back({p.x_m, p.y_m, p.z_m});
    }
  if (!slow_->isActive()) {
    const PracticeTruth& truth = run_->conditions();
    const Crossing real = true_crossing(run_->layout(), truth);
    for (const MovedService& moved : truth.services)
      for (const Utility& utility : real.site.utilities) {
        if (utility.id != moved.utility) continue;
        std::vector<Point3> points;
        for (const PathVertex& v : utility.path) points.push_back({v.x_m, v.y_m, v.z_m.value_or(tip.z_m)});
        line.services.push_back(std::move(points));
      }
  }
  Q_EMIT truth_changed(line);
}

void PracticePanel::enter_result() {
  if (!run_ || !run_->over() || !debrief_ || entered_ || locked()) return;
  const std::string name = name_->text().trimmed().toStdString();
  const PracticeResult result = run_->result(name.empty() ? "–" : name, *debrief_);
  edit_truth(tr("Enter a result"), [&](Practice& practice) { practice.results.push_back(result); });
  name_->clear();
  entered_ = true;
  show_run();
  show_results();
}

QPushButton* PracticePanel::button(const QString& begins_with) const {
  for (QPushButton* one : findChildren<QPushButton*>())
    if (one->text().startsWith(begins_with)) return one;
  return nullptr;
}

QString PracticePanel::visible_text() const {
  return plain(lesson_) + plain(state_) + plain(result_text_);
}

void PracticePanel::set_theme(const Theme& theme) {
  FormPanel::set_theme(theme);
  results_->setPalette(palette());
}

void PracticePanel::refresh() {
  const Practice practice = practice_of(document_.crossing(), document_.tables());
  QStringList lines;
  for (const std::string& text : {practice.title, practice.aim, practice.question})
    if (!text.empty()) lines << text_from(text);
  lesson_->setText(
      lines.isEmpty()
          ? tr("No lesson is set here: open one, or try a random practice bore for this crossing and see how it goes.")
          : lines.join(QStringLiteral("\n\n")));
  if (const QString title = text_from(practice.title); title != shown_lesson_) {
    shown_lesson_ = title;  // the list names the lesson that was opened
    if (const int row = lessons_->findText(title); row >= 0) lessons_->setCurrentIndex(row);
  }
  truth_->catch_up();
  hidden_->catch_up();
  add_stone_->setEnabled(!locked());
  remove_stone_->setEnabled(!locked() && !practice.truth.stones.empty());
  moved_->clear();
  moved_->addItem(tr("none"), QString());
  for (const Utility& utility : document_.crossing().site.utilities)
    moved_->addItem(text_from(utility.name.empty() ? utility.id : utility.name), text_from(utility.id));
  const auto& services = practice.truth.services;
  moved_->setCurrentIndex(services.empty() ? 0 : std::max(0, moved_->findData(text_from(services.front().utility))));
  for (QWidget* widget : trainers_) widget->setVisible(trainer_->isChecked());
  show_run();
  show_results();
}

}  // namespace burrow
