#include "burrow/panels/pits_panel.h"

#include <QComboBox>
#include <QLabel>

#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/pit/proposal.h"
#include "choice_words.h"
#include "pit_view.h"
#include "statement_fields.h"

namespace burrow {

PitsPanel::PitsPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Pits"));
  pits_ = add_choice(
      tr("pit"), {tr("launch pit"), tr("exit pit")}, [this] { return which_ == WhichPit::launch ? 0 : 1; },
      [this](int row) {
        show_pit(row == 0 ? WhichPit::launch : WhichPit::exit);
        Q_EMIT picked(which_);
      });
  add_choice(
      tr("rules for both"),
      labels_of<ExcavationRules>(
          {{ExcavationRules::us_1926, tr("29 CFR 1926 P")}, {ExcavationRules::din_4124, tr("DIN 4124")}}),
      [this] { return row_of_word(document_.crossing().pits.rules.value); },
      [this](int row) {
        change(tr("Choose rules for pits"), [row](Crossing& c) { c.pits.rules.set(word_at<ExcavationRules>(row)); });
      });
  view_ = new PitView(document, this);
  add_widget(view_);
  earth_ = add_text(tr("Size and earth of the pit"));
  make_floor();
  make_sides();
  make_soil();
  make_spoil();
  add_gap();
  add_heading(tr("To be done at this pit"));
  duties_ = add_text(tr("Duties at this pit"));
  add_gap();
  add_heading(tr("Supports of the published tables"));
  supports_ = add_text(tr("Supports that fit this pit"));
  add_end();
  point_forms();
  refresh_now();
}

void PitsPanel::make_floor() {
  add_gap();
  add_heading(tr("Floor"));
  floor_ = add_entries(tr("proposed"), true);
  make_corners();
}

void PitsPanel::make_sides() {
  add_gap();
  add_heading(tr("Sides"));
  const auto add_side = [this](const QString& name, PitSide PitSides::*member) {
    add_choice(
        name,
        labels_of<SideKind>({{SideKind::upright, tr("upright, bare")},
                             {SideKind::sloped, tr("sloped")},
                             {SideKind::benched, tr("benched")},
                             {SideKind::shored, tr("shored")},
                             {SideKind::shielded, tr("shielded")}},
                            tr("as proposed")),
        [this, member] {
          const PitSide& side = pit().sides.*member;
          return left_to_program(side) ? 0 : 1 + row_of_word(side.kind.value);
        },
        [this, name, member](int row) {
          edit(tr("Choose %1").arg(name), [&](Pit& p) {
            PitSide& side = p.sides.*member;
            if (row == 0)
              side = PitSides{}.*member;
            else
              side.kind.set(word_at<SideKind>(row - 1));
          });
        });
  };
  add_side(tr("bore side"), &PitSides::bore);
  add_side(tr("back"), &PitSides::back);
  add_side(tr("left side"), &PitSides::left);
  add_side(tr("right side"), &PitSides::right);
  sides_ = add_entries(tr("by the rules"), true);
  add_choice(
      tr("shield rated for"),
      labels_of<ExcavationType>({{ExcavationType::stable_rock, tr("stable rock")},
                                 {ExcavationType::a, tr("A")},
                                 {ExcavationType::b, tr("B")},
                                 {ExcavationType::c, tr("C")}},
                                tr("not entered")),
      [this] { return row_of_word(pit().shield.soil_type); },
      [this](int row) {
        edit(tr("Choose soil of the shield"),
             [&](Pit& p) { p.shield.soil_type = word_or_none_at<ExcavationType>(row); });
      });
  shield_ = add_texts([] { return pits_part; });
  shield_->add(
      text_field(document_, tr("rating stands in"), [this](auto& c) { return &pit_of(c.pits, which_).shield.source; }),
      tr("Plate or tabulated data of the maker"));
  make_load_design();
}

void PitsPanel::add_sign(const QString& question, std::optional<bool> PitSigns::*member) {
  add_choice(
      question, {tr("nobody looked"), tr("yes"), tr("no")},
      [this, member] {
        const std::optional<bool>& sign = pit().signs.*member;
        return sign ? (*sign ? 1 : 2) : 0;
      },
      [this, question, member](int row) {
        edit(tr("Answer: %1").arg(question),
             [&](Pit& p) { p.signs.*member = row == 0 ? std::optional<bool>() : std::optional<bool>(row == 1); });
      });
}

void PitsPanel::make_soil() {
  add_gap();
  add_heading(tr("What somebody saw"));
  add_sign(tr("cracks, slumping, bulging"), &PitSigns::distress);
  add_sign(tr("fissured"), &PitSigns::fissured);
  add_sign(tr("shaken by traffic or driving"), &PitSigns::vibrated);
  add_sign(tr("dug before"), &PitSigns::disturbed);
  add_sign(tr("water seeps in"), &PitSigns::seeping);
  add_sign(tr("air may be bad"), &PitSigns::bad_air);
  soil_ = add_entries(tr("not known"), true);
  make_conditions();
  add_gap();
  add_heading(tr("Soil type"));
  soil_text_ = add_text(tr("Which soil type is proposed, and why"));
  add_choice(
      tr("taken"),
      labels_of<ExcavationType>({{ExcavationType::stable_rock, tr("stable rock")},
                                 {ExcavationType::a, tr("A")},
                                 {ExcavationType::b, tr("B")},
                                 {ExcavationType::c, tr("C")}},
                                tr("not typed: C")),
      [this] { return row_of_word(pit().soil_type); },
      [this](int row) {
        edit(tr("Choose soil type"), [&](Pit& p) { p.soil_type = word_or_none_at<ExcavationType>(row); });
      });
  confirmed_ = add_texts([] { return pits_part; });
  confirmed_->add(
      text_field(document_, tr("confirmed by"), [this](auto& c) { return &pit_of(c.pits, which_).confirmed_by; }),
      tr("Name of the competent person"), true);
}

void PitsPanel::make_spoil() {
  add_gap();
  add_heading(tr("Spoil and ladder"));
  const QStringList sides = labels_of<PitSideName>({{PitSideName::bore, tr("bore side")},
                                                    {PitSideName::back, tr("back")},
                                                    {PitSideName::left, tr("left")},
                                                    {PitSideName::right, tr("right")}});
  add_choice(
      tr("heap beside"), sides, [this] { return row_of_word(pit().spoil.side.value); },
      [this](int row) {
        edit(tr("Choose side of the heap"), [&](Pit& p) { p.spoil.side.set(word_at<PitSideName>(row)); });
      });
  add_choice(
      tr("ladder at"), sides, [this] { return row_of_word(pit().ladder.side.value); },
      [this](int row) {
        edit(tr("Choose side of the ladder"), [&](Pit& p) { p.ladder.side.set(word_at<PitSideName>(row)); });
      });
  spoil_ = add_entries(tr("default"), true);
}

const PitShape& PitsPanel::shape() const {
  const Assessment& now = document_.assessment();
  return which_ == WhichPit::launch ? now.launch_pit : now.exit_pit;
}

const PitAnswer& PitsPanel::work() const {
  const Assessment& now = document_.assessment();
  return which_ == WhichPit::launch ? now.launch_pit_work : now.exit_pit_work;
}

void PitsPanel::edit(const QString& step_name, const std::function<void(Pit&)>& change_it) {
  const QString name = which_ == WhichPit::launch ? tr("launch pit") : tr("exit pit");
  change(tr("%1, %2").arg(step_name, name), [&](Crossing& c) { change_it(pit_of(c.pits, which_)); });
}

void PitsPanel::point_forms() {
  corner_values_->show_part(pits_part, [this] { return floor_corner_fields(document_.crossing(), which_, corner_); });
  floor_->show_part(pits_part, [this] { return pit_floor_fields(document_.crossing(), which_, shape()); });
  sides_->show_part(pits_part, [this] { return pit_side_fields(document_.crossing(), which_, shape()); });
  soil_->show_part(pits_part, [this] { return pit_soil_fields(document_.crossing(), which_); });
  spoil_->show_part(pits_part, [this] { return pit_spoil_fields(document_.crossing(), which_); });
}

void PitsPanel::show_pit(WhichPit which) {
  if (which == which_) return;
  which_ = which;
  corner_ = 0;
  point_forms();
  refresh_now();
  order_tabs();
}

void PitsPanel::refresh() {
  for (EntryForm* form : {floor_, sides_, soil_, spoil_}) form->catch_up();
  for (TextForm* form : {confirmed_, conditions_, load_design_, shield_}) form->catch_up();
  sides_->setVisible(!pit_side_fields(document_.crossing(), which_, shape()).empty());
  show_corners();
  view_->show_pit(which_, units_, theme_);
  earth_->setText(earth_words());
  soil_text_->setText(soil_words());
  duties_->setText(duty_words());
  supports_->setText(support_words());
}

QString PitsPanel::visible_text() const {
  return plain(earth_) + plain(soil_text_) + plain(duties_) + plain(supports_);
}

}  // namespace burrow
