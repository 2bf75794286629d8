/// The site log when something is struck, smelt or heard: one tap, one card for all, and no step that takes it back
/// without a reason.

#include <QLabel>
#include <QPushButton>

#include "burrow/crossing/day_record.h"
#include "burrow/crossing/find.h"
#include "burrow/panels/day_panel.h"
#include "choice_words.h"
#include "day_taps.h"

namespace burrow {

/// What to do and whom to ring stands first; what it was is asked below, once everybody is out.
void DayPanel::make_danger() {
  int before = widgets_so_far();
  danger_ = add_text(tr("Emergency"));
  close_card_ = add_buttons({tr("Close this card: nothing was written down")})[0];
  connect(close_card_, &QPushButton::clicked, this, [this] {
    card_ = false;
    refresh_now();
  });
  danger_widgets_ = widgets_after(before);
  before = widgets_so_far();
  add_heading(tr("What was it? Only once everybody is out"));
  signs_ = add_buttons(labels_of<DangerSign>({{DangerSign::struck, tr("Struck")},
                                              {DangerSign::smell, tr("Smell")},
                                              {DangerSign::hiss, tr("Hiss")},
                                              {DangerSign::water, tr("Water")},
                                              {DangerSign::smoke, tr("Smoke")},
                                              {DangerSign::ground_moves, tr("Ground moves")},
                                              {DangerSign::lights_fail, tr("Lights fail")},
                                              {DangerSign::other, tr("Something else")}}));
  for (std::size_t i = 0; i < signs_.size(); ++i)
    connect(signs_[i], &QPushButton::clicked, this,
            [this, i] { say_what_it_was(word_at<DangerSign>(static_cast<int>(i))); });
  sign_widgets_ = widgets_after(before);
}

/// Before the start, while the pipe goes in and where nothing may be written: the card always comes.
void DayPanel::tap_danger() {
  // Whichever record is looked at: it is the bore under way that is in danger.
  if (const DayRecord* open = open_record(document_.crossing()); open && !open->readings.empty()) shown_ = open->id;
  if (record() && !record()->readings.empty() && !locked())
    put_in(tapped(ReadingKind::danger, seconds_now(), document_.crossing(), document_.tables(), *record()),
           tr("Danger"));
  else
    card_ = true;
  refresh_now();
  bring_to_top(danger_);
}

void DayPanel::say_what_it_was(DangerSign sign) {
  if (!record()) return;
  const std::vector<Reading>& all = record()->readings;
  for (std::size_t i = all.size(); i-- > 0;)
    if (all[i].kind == ReadingKind::danger && counts(all[i]))
      return change_reading(i, tr("What was noticed"), [sign](Reading& one) { one.sign = sign; });
}

bool DayPanel::holds_back_undo() {
  for (const DayRecord& one : document_.crossing().record) {
    const std::optional<std::size_t> at = danger_undone(document_.undo_stack(), one);
    if (!at) continue;
    shown_ = one.id;
    refresh_now();
    ask_and_strike(*at);
    return true;
  }
  return false;
}

std::size_t DayPanel::picked() const {
  const DayRecord* now = record();
  const std::size_t newest = now && !now->readings.empty() ? now->readings.size() - 1 : 0;
  return picked_ ? std::min(*picked_, newest) : newest;
}

}  // namespace burrow
