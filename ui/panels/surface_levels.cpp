/// Levels of a road or track before and after the bore.

#include <QLabel>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "burrow/document/utility_fields.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/surface_panel.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
constexpr std::size_t most_pegs = 4;
constexpr double next_peg_m = 2.0;  ///< a new peg stands so far on from the last
constexpr double farthest_m = 1e5;  // what the file format accepts
}  // namespace

void SurfacePanel::make_levels() {
  add_gap();
  add_heading(tr("Levels before and after"));
  levels_text_ = add_text(tr("What the levels say"));
  dates_ = add_texts([this] { return part(); });
  const auto date = [this](const QString& label, std::optional<std::string> LevelRecord::*member) {
    dates_->add(day_field(document_, label, in_feature([member](auto& f) { return &(f.levels.*member); })),
                tr("As 2026-03-14"));
  };
  date(tr("taken before, on"), &LevelRecord::before_date);
  date(tr("taken after, on"), &LevelRecord::after_date);
  date(tr("when settled, on"), &LevelRecord::settled_date);
  pegs_ = add_list(tr("Pegs"), most_pegs);
  const auto buttons = add_buttons({tr("Add a peg"), tr("Remove this peg")});
  add_peg_ = buttons[0];
  remove_peg_ = buttons[1];
  add_peg_->setToolTip(tr("A place where the level is watched: first over the bore, then further along"));
  peg_values_ = add_entries(tr("default"), true);
  connect(add_peg_, &QPushButton::clicked, this, &SurfacePanel::add_peg);
  connect(remove_peg_, &QPushButton::clicked, this, &SurfacePanel::remove_peg);
  connect(pegs_, &CardList::chosen, this, [this](const QString& id) {
    peg_ = static_cast<std::size_t>(id.toInt());
    point_form();
    show_levels();
    order_tabs();
  });
}

void SurfacePanel::add_peg() {
  const SurfaceFeature* feature = current();
  if (!feature || locked()) return;
  LevelPeg peg;
  if (!feature->levels.pegs.empty()) {
    peg.station.m = feature->levels.pegs.back().station.m + next_peg_m;
    if (peg.station.m > farthest_m) peg.station.m = feature->levels.pegs.back().station.m;
    peg.offset = feature->levels.pegs.back().offset;
  } else if (feature->from && feature->to) {
    peg.station.m = (feature->from->m + feature->to->m) / 2;
  } else {
    peg.station.m = document_.crossing().bore.launch.station.m;
  }
  peg_ = feature->levels.pegs.size();
  edit(tr("Add a peg"), [&](SurfaceFeature& f) { f.levels.pegs.push_back(peg); });
  refresh_now();
}

void SurfacePanel::remove_peg() {
  const SurfaceFeature* feature = current();
  if (!feature || locked() || peg_ >= feature->levels.pegs.size()) return;
  edit(tr("Remove a peg"),
       [this](SurfaceFeature& f) { f.levels.pegs.erase(f.levels.pegs.begin() + static_cast<std::ptrdiff_t>(peg_)); });
  refresh_now();
}

QString SurfacePanel::moved_words(const LevelPeg& peg) const {
  if (!peg.before) return tr("level before not entered");
  const auto moved = [&](const QString& when, const std::optional<Length>& then) {
    if (!then) return QString();
    const double by = then->m - peg.before->m;
    const QString much = text_of(std::abs(by), Dimension::small_length);
    return by < 0 ? tr("%1 sunk %2").arg(when, much) : tr("%1 risen %2").arg(when, much);
  };
  QStringList shown_text;
  for (const QString& words : {moved(tr("after:"), peg.after), moved(tr("settled:"), peg.settled)})
    if (!words.isEmpty()) shown_text << words;
  return shown_text.isEmpty() ? tr("before: level %1").arg(text_of(peg.before->m, Dimension::station))
                              : shown_text.join(QStringLiteral(" · "));
}

void SurfacePanel::show_levels() {
  const std::vector<LevelPeg>& all = current()->levels.pegs;
  peg_ = std::min(peg_, all.empty() ? 0 : all.size() - 1);
  levels_text_->setText(all.empty()
                            ? tr("Road and rail owners want levels before, right after, and about 30 days after the "
                                 "bore. Add a peg over it.")
                            : tr("Movement is judged by the heave that is allowed above."));
  std::vector<Card> cards;
  for (std::size_t i = 0; i < all.size(); ++i) {
    Card card;
    card.id = std::to_string(i);
    card.title = tr("station %1, offset %2")
                     .arg(text_of(all[i].station.m, Dimension::station), text_of(all[i].offset.m, Dimension::station));
    card.facts = moved_words(all[i]);
    cards.push_back(std::move(card));
  }
  dates_->catch_up();
  peg_values_->catch_up();
  const bool any = !cards.empty();
  pegs_->show_cards(std::move(cards), std::to_string(peg_));
  for (QWidget* widget :
       {static_cast<QWidget*>(pegs_), static_cast<QWidget*>(peg_values_), static_cast<QWidget*>(dates_)})
    widget->setVisible(any);
  add_peg_->setEnabled(!locked());
  remove_peg_->setEnabled(any && !locked());
}

}  // namespace burrow
