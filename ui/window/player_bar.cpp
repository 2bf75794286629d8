#include "burrow/window/player_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/drawing/glide.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/drawing/played_text.h"
#include "burrow/words/run_text.h"

namespace burrow {

namespace {

constexpr int frame_ms = 16;
constexpr std::array speeds{1.0, 5.0, 20.0, 60.0};
constexpr int usual_speed = 2;
constexpr double at_end_s = 1e-6;
constexpr int alone = -1;  // no bore beside the one played

}  // namespace

PlayerBar::PlayerBar(QWidget* parent)
    : QWidget(parent),
      play_(new QToolButton(this)),
      back_(new QToolButton(this)),
      on_(new QToolButton(this)),
      close_(new QToolButton(this)),
      which_(new QComboBox(this)),
      beside_(new QComboBox(this)),
      speed_(new QComboBox(this)),
      number_(new QSpinBox(this)),
      choices_(new QWidget(this)),
      settings_(new QWidget(this)),
      strip_(new TimeStrip(this)),
      clock_text_(new QLabel(this)),
      task_(new QLabel(this)),
      timer_(new QTimer(this)),
      still_(desktop_wants_stillness()) {
  setAccessibleName(tr("Player of the bore"));
  setAutoFillBackground(true);
  const auto dress = [](QToolButton* button, const char* icon, const QString& name) {
    button->setIcon(line_icon(QString::fromLatin1(icon)));
    button->setIconSize(QSize(22, 22));
    button->setMinimumSize(36, 36);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::TabFocus);
    button->setAccessibleName(name);
    button->setToolTip(name);
  };
  dress(play_, "play", tr("Play (Space in the drawing)"));
  dress(back_, "step-back", tr("A mark back (,)"));
  dress(on_, "step-forward", tr("A mark on (.)"));
  dress(close_, "close", tr("Close the player"));
  which_->setAccessibleName(tr("Which bore is played"));
  which_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  beside_->setAccessibleName(tr("Which bore is drawn beside it"));
  beside_->setToolTip(beside_->accessibleName());
  beside_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);  // the strip wants the room
  beside_->setMinimumContentsLength(8);
  number_->setAccessibleName(tr("Which of the simulated bores"));
  number_->setToolTip(number_->accessibleName());
  number_->setFocusPolicy(Qt::StrongFocus);
  speed_->setAccessibleName(tr("How many times as fast as on site"));
  speed_->setToolTip(speed_->accessibleName());
  for (const double times : speeds) speed_->addItem(QStringLiteral("×%1").arg(times_text(times)), times);
  speed_->setCurrentIndex(usual_speed);
  task_->setTextFormat(Qt::PlainText);
  task_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  task_->setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  const auto fill = [](QWidget* box, std::initializer_list<QWidget*> widgets) {
    auto* inside = new QHBoxLayout(box);
    inside->setContentsMargins(0, 0, 0, 0);
    inside->setSpacing(4);
    for (QWidget* widget : widgets) inside->addWidget(widget);
  };
  fill(choices_, {which_, number_, beside_});
  fill(settings_, {speed_, close_});
  for (QWidget* widget : std::initializer_list<QWidget*>{play_, back_, on_, choices_}) row->addWidget(widget);
  row->addWidget(strip_, 1);
  for (QWidget* widget : std::initializer_list<QWidget*>{clock_text_, settings_}) row->addWidget(widget);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 4, 8, 4);
  column->setSpacing(0);
  column->addLayout(row);
  column->addWidget(task_);

  timer_->setTimerType(Qt::PreciseTimer);
  timer_->setInterval(frame_ms);
  since_start_.start();
  connect_parts();
  set_for_a_room(0);
  hide();
}

void PlayerBar::set_for_a_room(int letter_px) {
  const bool room = letter_px > 0;
  QFont letters = font();
  if (room) letters.setPixelSize(letter_px);
  for (QWidget* text : std::initializer_list<QWidget*>{strip_, clock_text_, task_}) text->setFont(letters);
  lines_ = room ? 1 : 2;
  task_->setFixedHeight(task_->fontMetrics().height() * lines_ + 4);  // the drawing above keeps its size while it plays
  choices_->setVisible(!room);
  settings_->setVisible(!room);
  show_time();
}

void PlayerBar::connect_parts() {
  connect(timer_, &QTimer::timeout, this, &PlayerBar::tick);
  connect(play_, &QToolButton::clicked, this, &PlayerBar::toggle);
  connect(back_, &QToolButton::clicked, this, [this] { step(-1); });
  connect(on_, &QToolButton::clicked, this, [this] { step(1); });
  connect(close_, &QToolButton::clicked, this, &PlayerBar::closed);
  connect(strip_, &QSlider::valueChanged, this, [this](int value) {
    time_s_ = static_cast<double>(value) / TimeStrip::parts_of_second;
    show_time();
  });
  connect(which_, &QComboBox::currentIndexChanged, this, [this] {
    pause();
    fill_choices(false);
    if (const Bore* bore = now()) strip_->set_bore(bore->playback);
    set_time(0);
  });
  connect(beside_, &QComboBox::currentIndexChanged, this, &PlayerBar::show_time);
  connect(number_, &QSpinBox::valueChanged, this, [this] {
    pause();
    take_number();
    if (const Bore* bore = now()) strip_->set_bore(bore->playback);
    set_time(0);
  });
}

const PlayerBar::Bore* PlayerBar::now() const {
  const int at = which_->currentIndex();
  return at >= 0 && at < static_cast<int>(bores_.size()) ? &bores_[static_cast<std::size_t>(at)] : nullptr;
}

const PlayerBar::Bore* PlayerBar::beside() const {
  const int kind = beside_->currentData().toInt();
  for (const Bore& bore : bores_)
    if (static_cast<int>(bore.kind) == kind && &bore != now()) return &bore;
  return nullptr;
}

/// Of many, the one whose number stands in the field.
void PlayerBar::take_number() {
  const int at = which_->currentIndex();
  if (at < 0 || at >= static_cast<int>(bores_.size())) return;
  Bore& bore = bores_[static_cast<std::size_t>(at)];
  if (!bore.one) return;
  const Bore one = bore.one(number_->value());
  bore.playback = one.playback;
  bore.outcome = one.outcome;
}

/// The number where there are many, and what can be drawn beside the bore that is played.
void PlayerBar::fill_choices(bool anew) {
  const Bore* bore = now();
  {
    const QSignalBlocker quiet(number_);
    number_->setRange(1, std::max(1, bore ? bore->many : 1));
  }
  number_->setVisible(bore && bore->many > 1);
  take_number();
  const int kept = beside_->count() > 0 ? beside_->currentData().toInt() : alone;
  const QSignalBlocker quiet(beside_);
  if (anew || beside_->count() != static_cast<int>(bores_.size())) beside_->setVisible(bores_.size() > 1);
  beside_->clear();
  beside_->addItem(tr("alone"), alone);
  for (const Bore& other : bores_)
    if (&other != bore) beside_->addItem(tr("beside: %1").arg(other.name), static_cast<int>(other.kind));
  beside_->setCurrentIndex(std::max(0, beside_->findData(kept)));
}

void PlayerBar::set_bores(std::vector<Bore> bores) {
  const int before = which_->currentIndex();
  const bool same_list =
      bores.size() == bores_.size() && std::equal(bores.begin(), bores.end(), bores_.begin(),
                                                  [](const Bore& a, const Bore& b) { return a.kind == b.kind; });
  const Kind kind = before >= 0 && before < static_cast<int>(bores_.size())
                        ? bores_[static_cast<std::size_t>(before)].kind
                        : Kind::predicted;
  bores_ = std::move(bores);
  if (!same_list) {
    const QSignalBlocker quiet(which_);
    which_->clear();
    for (const Bore& bore : bores_) which_->addItem(bore.name);
    const auto again = std::find_if(bores_.begin(), bores_.end(), [&](const Bore& bore) { return bore.kind == kind; });
    which_->setCurrentIndex(bores_.empty() ? -1 : again == bores_.end() ? 0 : static_cast<int>(again - bores_.begin()));
  }
  which_->setVisible(bores_.size() > 1);
  fill_choices(!same_list);
  const Bore* bore = now();
  {
    const QSignalBlocker quiet(strip_);
    strip_->set_bore(bore ? bore->playback : nullptr);
  }
  if (!bore) pause();
  set_time(bore ? std::min(time_s_, bore->playback->end_s()) : 0);
}

void PlayerBar::set_tasks(const Crossing* crossing, const Assessment* assessment, UnitSystem units) {
  crossing_ = crossing;
  assessment_ = assessment;
  units_ = units;
}

void PlayerBar::set_theme(const Theme& theme) {
  strip_->set_theme(theme);
}

bool PlayerBar::playing() const {
  return timer_->isActive();
}

double PlayerBar::speed() const {
  return speed_->currentData().toDouble();
}

void PlayerBar::set_speed(double times) {
  speed_->setCurrentIndex(speed_->findData(times));
}

void PlayerBar::choose(Kind kind) {
  for (std::size_t i = 0; i < bores_.size(); ++i)
    if (bores_[i].kind == kind) which_->setCurrentIndex(static_cast<int>(i));
}

void PlayerBar::set_beside(std::optional<Kind> kind) {
  beside_->setCurrentIndex(std::max(0, beside_->findData(kind ? static_cast<int>(*kind) : alone)));
}

void PlayerBar::toggle() {
  const Bore* bore = now();
  if (!bore) return;
  if (playing()) return pause();
  if (time_s_ >= bore->playback->end_s() - at_end_s) set_time(0);
  last_ms_ = now_ms();
  timer_->start();
  show_playing();
}

void PlayerBar::pause() {
  timer_->stop();
  show_playing();
}

void PlayerBar::show_playing() {
  play_->setIcon(line_icon(playing() ? QStringLiteral("pause") : QStringLiteral("play")));
  const QString name = playing() ? tr("Pause (Space in the drawing)") : tr("Play (Space in the drawing)");
  play_->setAccessibleName(name);
  play_->setToolTip(name);
}

qint64 PlayerBar::now_ms() const {
  return clock_ ? clock_() : since_start_.elapsed();
}

void PlayerBar::tick() {
  if (!playing()) return;
  const Bore* bore = now();
  if (!bore || !isVisible() || window()->isMinimized()) return pause();
  const qint64 ms = now_ms();
  time_s_ = std::min(bore->playback->end_s(), time_s_ + static_cast<double>(ms - last_ms_) / 1000 * speed());
  last_ms_ = ms;
  show_time();
  if (time_s_ >= bore->playback->end_s() - at_end_s) pause();
}

void PlayerBar::step(int marks) {
  const Bore* bore = now();
  if (!bore) return;
  pause();
  const Playback& playback = *bore->playback;
  const double nose_m = nose_at(playback, time_s_);
  int mark = marks > 0 ? next_mark(playback, nose_m) : last_mark(playback, nose_m - 1e-3);
  const int last = static_cast<int>(playback.marks_m.size()) - 1;
  if (marks > 0 && mark >= 0) mark = std::min(last, mark + marks - 1);
  if (marks < 0 && mark >= 0) mark = std::max(-1, mark + marks + 1);
  if (mark >= 0) return set_time(time_at(playback, playback.marks_m[static_cast<std::size_t>(mark)]));
  set_time(marks > 0 ? playback.end_s() : 0);
}

void PlayerBar::set_time(double time_s) {
  const Bore* bore = now();
  time_s_ = std::clamp(time_s, 0.0, bore ? bore->playback->end_s() : 0.0);
  show_time();
}

/// What the run sheet says at the mark that was passed last, then the next one.
QString PlayerBar::task_text(const Playback& bore, double nose_m) const {
  if (!crossing_ || !assessment_) return {};
  const auto& marks = assessment_->marks;
  const auto words = [&](int at) {
    if (at < 0 || at >= static_cast<int>(marks.size())) return QString();
    const Mark& mark = marks[static_cast<std::size_t>(at)];
    const QString task = text_from(task_words(mark, *crossing_));
    const QString place = mark.hose_m ? text_from(format(*mark.hose_m, Dimension::length, units_)) : tr("tool in");
    return task.isEmpty() ? place : tr("%1: %2").arg(place, task);
  };
  QStringList lines;
  if (const QString last = words(last_mark(bore, nose_m)); !last.isEmpty()) lines << tr("Now: %1").arg(last);
  if (const QString next = words(next_mark(bore, nose_m)); !next.isEmpty()) lines << tr("Next: %1").arg(next);
  return lines.join(QLatin1Char('\n'));
}

/// A line each, shortened where the bar is narrow; whole under the pointer.
void PlayerBar::show_task(const QString& task) {
  QStringList lines;
  for (const QString& line : task.split(QLatin1Char('\n')).mid(0, lines_))
    lines << task_->fontMetrics().elidedText(line, Qt::ElideRight, std::max(100, width() - 20));
  const QString shown = lines.join(QLatin1Char('\n'));
  if (task_->text() == shown) return;
  task_->setText(shown);
  task_->setToolTip(shown == task ? QString() : task);
  task_->setAccessibleName(task);
}

void PlayerBar::show_time() {
  const Bore* bore = now();
  if (!bore) {
    clock_text_->clear();
    show_task(tr("Nothing to play: there is no predicted bore yet."));
    if (isVisible()) Q_EMIT played_changed(std::nullopt);
    return;
  }
  const Playback& playback = *bore->playback;
  double shown_s = time_s_;
  if (still_ && playing() && time_s_ < playback.end_s()) {
    const int mark = last_mark(playback, nose_at(playback, time_s_));
    shown_s = mark < 0 ? 0 : time_at(playback, playback.marks_m[static_cast<std::size_t>(mark)]);
  }
  {
    const QSignalBlocker quiet(strip_);
    strip_->setValue(static_cast<int>(std::lround(shown_s * TimeStrip::parts_of_second)));
  }
  const double nose_m = nose_at(playback, shown_s);
  clock_text_->setText(played_text(playback, shown_s, units_));
  const bool ended = shown_s >= playback.end_s() - at_end_s;
  show_task(ended && !bore->outcome.isEmpty() ? bore->outcome : task_text(playback, nose_m));
  if (!isVisible()) return;
  Played played{bore->playback, shown_s, bore->kind == Kind::truth};
  played.tells_miss = bore->kind != Kind::predicted;
  played.passed = bore->passed;
  played.lines_elsewhere = bore->lines_elsewhere;
  if (const Bore* other = beside()) played.beside = other->playback;
  Q_EMIT played_changed(played);
}

void PlayerBar::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  show_time();
}

void PlayerBar::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  if (event->spontaneous()) return pause();  // the window went, not the bar
  pause();
  Q_EMIT played_changed(std::nullopt);
}

void PlayerBar::keyPressEvent(QKeyEvent* event) {
  switch (event->key()) {
    case Qt::Key_Space:
      return toggle();
    case Qt::Key_Comma:
      return step(-1);
    case Qt::Key_Period:
      return step(1);
    case Qt::Key_Escape:
      return Q_EMIT closed();
    default:
      QWidget::keyPressEvent(event);
  }
}

}  // namespace burrow
