/// What follows for the picked utility, and its test holes.

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/panels/utilities_panel.h"
#include "choice_words.h"

namespace burrow {

namespace {
constexpr std::size_t most_holes = 3;
constexpr double least_shown_chance = 1e-9;  ///< reads "< 0.01 %"
}  // namespace

void UtilitiesPanel::make_answers() {
  add_gap();
  add_heading(tr("What follows"));
  answer_ = add_text(tr("What follows for this utility"));
  trench_text_ = add_text(tr("The trench it was laid in"));
  add_trench_ = add_buttons({tr("Take its trench as softer ground")}).front();
  connect(add_trench_, &QPushButton::clicked, this, &UtilitiesPanel::take_trench);
  add_gap();
  add_heading(tr("Test holes"));
  hole_text_ = add_text(tr("Where to dig a test hole, and what it buys"));
  measured_ = new QLineEdit(this);
  measured_->setAccessibleName(tr("What was measured in the hole"));
  measured_name_ = add_labelled(QString(), measured_);
  measured_wrong_ = add_text(tr("What is wrong with the measured level"));
  add_hole_ = add_buttons({tr("Add a test hole here")}).front();
  holes_ = add_list(tr("Test holes"), most_holes);
  hole_values_ = add_entries(tr("default"), true);
  make_hole_texts();
  remove_hole_ = add_buttons({tr("Remove this test hole")}).front();
  lone_hole_ = add_buttons({QString()}).front();
  lone_hole_->setToolTip(tr("A test hole of the file that belongs to no utility; Undo takes it back"));
  connect(lone_hole_, &QPushButton::clicked, this, &UtilitiesPanel::take_lone_hole);
  connect(add_hole_, &QPushButton::clicked, this, &UtilitiesPanel::add_hole);
  connect(measured_, &QLineEdit::returnPressed, this, &UtilitiesPanel::add_hole);
  connect(remove_hole_, &QPushButton::clicked, this, &UtilitiesPanel::remove_hole);
  connect(holes_, &CardList::chosen, this, [this](const QString& id) {
    hole_ = id.toStdString();
    point_forms();
    show_holes();
    order_tabs();
  });
}

void UtilitiesPanel::show_answer() {
  const UtilityAnswer* answer = answer_of(picked_);
  Facts facts;
  const auto add = [&](const QString& name, const std::optional<double>& value, Dimension dimension) {
    if (value) facts.emplace_back(name, text_of(*value, dimension));
  };
  if (!answer || !answer->separation_m) {
    facts.emplace_back(tr("clear gap"), answer && answer->station_m
                                            ? tr("not known: its depth at the bore is not entered")
                                            : tr("not known: there is no path beside it"));
  } else {
    add(tr("clear gap, outside to outside"), answer->separation_m, Dimension::length);
    add(tr("19 times in 20 more than"), answer->gap_low_m, Dimension::length);
    add(tr("required"), answer->required_m, Dimension::length);
    const bool least = answer->by == ContactBy::bound;
    const auto add_chance = [&](const QString& name, const std::optional<double>& chance) {
      if (chance) facts.emplace_back(least ? tr("%1, at least").arg(name) : name, chance_text(*chance));
    };
    add_chance(tr("chance of touching"), answer->contact_chance);
    add_chance(tr("the same, however it is located"), answer->contact_chance_worst);
    add_chance(tr("chance of coming nearer than its fixed gap"), answer->encroachment_chance);
    add(tr("angle between the lines"), answer->angle_rad, Dimension::angle);
    add(tr("the ground moves there by"), answer->ground_movement_m, Dimension::small_length);
    if (answer->strain)
      facts.emplace_back(tr("strained by that, up to"), tr("%1 microstrain").arg(std::lround(*answer->strain * 1e6)));
    if (answer->vibration_m_s)
      facts.emplace_back(tr("shaken by blows, up to"),
                         units_ == UnitSystem::us ? tr("%1 in/s").arg(decimals(*answer->vibration_m_s / 0.0254, 2))
                                                  : tr("%1 mm/s").arg(decimals(*answer->vibration_m_s * 1e3, 1)));
  }
  QString html = facts_html(facts);
  for (const Working& working : document_.assessment().working)
    if (working.code == "utility.separation" && working.subject == picked_ && working.limit_source)
      html += QStringLiteral("<p>%1</p>")
                  .arg(tr("Gap from: %1 [%2]")
                           .arg(text_from(working.limit_source->text),
                                text_from(burrow::label_text(working.limit_source->label)))
                           .toHtmlEscaped());
  if (answer && answer->expose) html += QStringLiteral("<p><b>%1</b></p>").arg(tr("Expose it before the tool passes."));
  answer_->setText(html);
}

/// Of a computed chance nobody can say that it is none.
QString UtilitiesPanel::chance_text(double chance) const {
  return text_of(std::max(chance, least_shown_chance), Dimension::chance);
}

QString UtilitiesPanel::hole_words() const {
  const Utility* utility = current();
  const UtilityAnswer* answer = answer_of(picked_);
  if (!answer || !answer->station_m) return tr("The bore does not come near: no place for a test hole follows.");
  const PassingPlace here = place();
  QStringList shown_text;
  if (answer->expose_rank)
    shown_text << tr("Hole number %1 of those worth digging.").arg(static_cast<int>(*answer->expose_rank));
  shown_text << tr("Dig it at station %1, offset %2.")
                    .arg(text_of(answer->hole_station_m.value_or(here.station_m), Dimension::station),
                         text_of(answer->hole_offset_m.value_or(here.offset_m), Dimension::station));
  if (answer->hole_depth_low_m && answer->hole_depth_high_m)
    shown_text << tr("Its crown is expected %1 to %2 below ground (nine times in ten).")
                      .arg(text_of(std::max(*answer->hole_depth_low_m, 0.0), Dimension::length),
                           text_of(std::max(*answer->hole_depth_high_m, 0.0), Dimension::length));
  else if (here.axis_m && here.ground_m)
    if (const auto above = above_centre_m(*utility, LevelMeant::crown))
      shown_text << tr("Its crown is drawn %1 below ground; how well that is known is not entered.")
                        .arg(text_of(std::max(*here.ground_m - *here.axis_m - *above, 0.0), Dimension::length));
  if (answer->chance_after_hole && answer->chance_to_go_on && answer->contact_chance)
    shown_text
        << tr("What it buys: in %1 of cases what is found lets the bore go on as it is laid out. Of all bores %2 then "
              "go "
              "on and touch it, %3 without the hole.")
               .arg(text_of(*answer->chance_to_go_on, Dimension::chance), chance_text(*answer->chance_after_hole),
                    chance_text(*answer->contact_chance));
  else if (answer->expose_rank)
    shown_text << tr(
        "What it buys cannot be told: where it lies, or how well that is known, is not entered. That is why it "
        "comes first.");
  return shown_text.join(QLatin1Char(' '));
}

void UtilitiesPanel::take_trench() {
  const TrenchOffer offer = trench_offer(document_.crossing(), picked_);
  if (!offer.strip || locked()) return;
  const QString name = text_from(part_name(document_.crossing(), part()));
  change((offer.taken ? tr("Leave out the trench of %1") : tr("Take the trench of %1 as softer ground")).arg(name),
         [&](Crossing& c) {
           if (offer.taken)
             std::erase_if(c.site.strips, [&](const Strip& s) { return s.outline == offer.strip->outline; });
           else
             c.site.strips.push_back(*offer.strip);
         });
}

void UtilitiesPanel::show_trench() {
  const TrenchOffer offer = trench_offer(document_.crossing(), picked_);
  trench_text_->setText(
      offer.taken ? tr("Its trench is taken as a strip of softer ground.")
      : offer.strip
          ? tr("Laid in a trench? Its backfill can stop, turn or let down the tool. Taken as %1 wide, down "
               "to %2 below it.")
                .arg(text_of(offer.width_m, Dimension::length), text_of(offer.below_m, Dimension::length))
          : tr("No trench follows: its diameter or depth is not entered, or its line runs back over itself."));
  add_trench_->setText(offer.taken ? tr("Leave its trench out again") : tr("Take its trench as softer ground"));
  add_trench_->setEnabled(offer.strip && !locked());
}

void UtilitiesPanel::show_holes() {
  hole_text_->setText(hole_words());
  const Field field = new_hole_field(document_.crossing(), picked_, place());
  const UtilityAnswer* answer = answer_of(picked_);
  const bool possible = answer && answer->station_m;
  measured_name_->setText(text_from(translated_label(field.label)));
  measured_->setAccessibleName(text_from(translated_label(field.label)));
  measured_->setReadOnly(locked());
  measured_wrong_->setVisible(!measured_wrong_->text().isEmpty());
  for (QWidget* widget : {static_cast<QWidget*>(measured_name_), static_cast<QWidget*>(measured_)})
    widget->setVisible(possible);
  add_hole_->setEnabled(possible && !locked());

  std::vector<Card> cards;
  bool found = false;
  for (const TestHole& hole : document_.crossing().site.test_holes) {
    if (hole.utility != picked_) continue;
    Card card;
    card.id = hole.id;
    card.title = tr("station %1, offset %2")
                     .arg(text_of(hole.station.m, Dimension::station), text_of(hole.offset.m, Dimension::station));
    card.facts = hole.elevation
                     ? tr("%1 at level %2")
                           .arg(text_from(translated_word(*hole.level)), text_of(hole.elevation->m, Dimension::station))
                     : tr("level not measured");
    found = found || card.id == hole_;
    cards.push_back(std::move(card));
  }
  if (!found) {
    hole_ = cards.empty() ? std::string() : cards.front().id;
    point_forms();
  }
  const bool any = !cards.empty();
  holes_->show_cards(std::move(cards), hole_);
  hole_values_->catch_up();
  hole_texts_->catch_up();
  for (QWidget* widget : {static_cast<QWidget*>(holes_), static_cast<QWidget*>(hole_values_),
                          static_cast<QWidget*>(hole_texts_), static_cast<QWidget*>(remove_hole_->parentWidget())})
    widget->setVisible(any);
  remove_hole_->setEnabled(!locked());
  show_lone_holes();
}

void UtilitiesPanel::add_hole() {
  if (!current() || locked()) return;
  const Field field = new_hole_field(document_.crossing(), picked_, place());
  const Result<std::optional<double>> value = read_field(field, measured_->text().toStdString(), units_);
  const QString fault = value ? QString() : tr("Not added: %1 required").arg(text_from(value.error().expected));
  measured_wrong_->setText(fault);
  measured_wrong_->setVisible(!fault.isEmpty());
  measured_->setAccessibleDescription(fault);
  if (!value) {
    measured_->setFocus();
    return;
  }
  const std::string id = free_id(document_.crossing(), "h");
  hole_ = id;
  change(tr("Add a test hole on %1").arg(text_from(part_name(document_.crossing(), part()))),
         [&](Crossing& c) { field.apply(c, *value); });
  if (hole_ == id) measured_->clear();
  hole_values_->show_part({ItemKind::test_holes, hole_, -1},
                          [this] { return hole_fields(document_.crossing(), hole_); });
}

void UtilitiesPanel::remove_hole() {
  change(tr("Remove a test hole"), [gone = hole_](Crossing& c) {
    std::erase_if(c.site.test_holes, [&](const TestHole& hole) { return hole.id == gone; });
  });
}

}  // namespace burrow
