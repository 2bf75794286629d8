/// What hides in the ground of a practice bore, set by the trainer: stones, an old trench, a service off its mark.

#include <QComboBox>
#include <QPushButton>

#include "burrow/document/practice_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/practice_panel.h"

namespace burrow {

namespace {
constexpr std::size_t most_stones = 8;
}  // namespace

void PracticePanel::make_hidden() {
  QStringList soils{tr("none")};
  for (const SoilClass& soil : document_.tables().soils) soils << text_from(soil.name);
  trench_ = add_choice(
      tr("old trench across, filled with"), soils,
      [this] {
        const PracticeTruth truth = practice_of(document_.crossing(), document_.tables()).truth;
        if (truth.trenches.empty()) return 0;
        for (std::size_t i = 0; i < document_.tables().soils.size(); ++i)
          if (document_.tables().soils[i].id == truth.trenches.front().soil) return static_cast<int>(i) + 1;
        return 0;
      },
      [this](int row) {
        edit_truth(row == 0 ? tr("Take the trench away") : tr("Put an old trench"), [&](Practice& practice) {
          std::vector<Strip>& trenches = practice.truth.trenches;
          if (row == 0) {
            trenches.clear();
            return;
          }
          const std::string& soil = document_.tables().soils[static_cast<std::size_t>(row - 1)].id;
          if (trenches.empty())
            trenches.push_back(trench_half_way(document_.crossing(), soil));
          else
            trenches.front().soil = soil;
        });
        refresh_now();
      },
      true);
  const auto buttons = add_buttons({tr("Add a stone"), tr("Remove the last stone")});
  add_stone_ = buttons[0];
  remove_stone_ = buttons[1];
  add_stone_->setToolTip(tr("Half way along the bore; then type where it lies and how it turns the nose"));
  connect(add_stone_, &QPushButton::clicked, this, [this] {
    edit_truth(tr("Add a stone"), [&](Practice& practice) {
      if (practice.truth.stones.size() < most_stones)
        practice.truth.stones.push_back(stone_half_way(document_.crossing()));
    });
    refresh_now();
  });
  connect(remove_stone_, &QPushButton::clicked, this, [this] {
    edit_truth(tr("Remove a stone"), [](Practice& practice) {
      if (!practice.truth.stones.empty()) practice.truth.stones.pop_back();
    });
    refresh_now();
  });
  hidden_ = add_entries(tr("default"));
  hidden_->show_part(practice_part, [this] { return hidden_fields(document_.crossing(), document_.tables()); });
}

}  // namespace burrow
