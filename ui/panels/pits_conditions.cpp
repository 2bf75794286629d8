/// What German slopes want answered of a pit, and the design of a support for the loads beside it.

#include "burrow/panels/pits_panel.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

void PitsPanel::make_conditions() {
  add_gap();
  add_heading(tr("Asked by DIN 4124 of sides without support"));
  add_sign(tr("faults or joints"), &PitSigns::joints);
  add_sign(tr("layers dip into it"), &PitSigns::dips_inward);
  add_sign(tr("loose fill"), &PitSigns::loose_fill);
  add_sign(tr("soft organic soil or lake clay"), &PitSigns::soft_deposit);
  add_sign(tr("open dewatering in fine sand or silt"), &PitSigns::open_drainage);
  add_sign(tr("soil that flows"), &PitSigns::flowing);
  add_sign(tr("heap steeper than 1 : 2, or a stack over 10 kN/m²"), &PitSigns::steep_heap);
  add_sign(tr("ground beside steeper than 1 : 10, stiff clay 1 : 2"), &PitSigns::steep_ground);
  const auto none = [this](auto& c) { return &pit_of(c.pits, which_).signs.none_seen; };
  conditions_ = add_texts([] { return pits_part; });
  conditions_->add(text_field(
      document_, tr("none of these seen, says"), [none](auto& c) { return &none(c)->by; }, TextKind::name));
  conditions_->add(day_field(document_, tr("none seen on"), [none](auto& c) { return &none(c)->date; }));
}

void PitsPanel::make_load_design() {
  load_design_ = add_texts([] { return pits_part; });
  add_statement(*load_design_, document_,
                {tr("support sized for loads beside it: by what"), tr("As: maker's table, sheet 4"), tr("sized by"),
                 tr("sized on")},
                [this](auto& c) { return &pit_of(c.pits, which_).load_design; });
  add_choice(
      tr("berms"), {tr("not said"), tr("only walked on"), tr("catch slides")},
      [this] {
        const std::optional<bool>& walked = pit().sides.left.benches_only_walked;
        return walked ? (*walked ? 1 : 2) : 0;
      },
      [this](int row) {
        edit(tr("Choose what berms are for"), [&](Pit& p) {
          for (PitSide* side : {&p.sides.bore, &p.sides.back, &p.sides.left, &p.sides.right})
            side->benches_only_walked = row == 0 ? std::optional<bool>() : std::optional<bool>(row == 1);
        });
      });
}

}  // namespace burrow
