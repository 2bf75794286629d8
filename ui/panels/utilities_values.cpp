/// The entries of the picked utility, and what is said about its level and its preset.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/document/utility_entry.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/panels/utilities_panel.h"
#include "burrow/tables/material_rows.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

template <class Read, class Write>
QComboBox* UtilitiesPanel::utility_choice(const QString& label, const QStringList& words, Read read, Write write,
                                          bool long_words) {
  return add_choice(
      label, words,
      [this, read] {
        const Utility* utility = current();
        return utility ? read(*utility) : -1;
      },
      [this, label, words, write](int row) {
        edit(tr("Choose %1: %2").arg(label, words[row]), [&](Utility& utility) { write(utility, row); });
      },
      long_words);
}

void UtilitiesPanel::make_values() {
  add_gap();
  heading_ = add_heading(QString());
  names_ = add_texts([this] { return part(); });
  names_->add(text_field(document_, tr("name"), in_utility([](auto& u) { return &u.name; })), {}, true);
  names_->add(text_field(document_, tr("owner"), in_utility([](auto& u) { return &u.owner; })));
  QStringList kinds;
  for (const auto& [kind, word] : EnumNames<UtilityKind>::list)
    kinds << tr("%1  %2").arg(text_from(burrow::row_of(document_.tables(), kind).letter_code),
                              text_from(burrow::row_of(document_.tables(), kind).name));
  utility_choice(
      tr("kind"), kinds, [](const Utility& u) { return row_of_word(u.kind); },
      [](Utility& u, int row) { u.kind = word_at<UtilityKind>(row); }, true);
  utility_choice(
      tr("status"),
      labels_of<UtilityStatus>({{UtilityStatus::live, tr("live")},
                                {UtilityStatus::abandoned, tr("abandoned")},
                                {UtilityStatus::proposed, tr("proposed")},
                                {UtilityStatus::unknown, tr("not known")}}),
      [](const Utility& u) { return row_of_word(u.status.value); },
      [](Utility& u, int row) { u.status.set(word_at<UtilityStatus>(row)); });
  make_material();
  make_abandonment();
  add_gap();
  add_heading(tr("Size and level"));
  utility_choice(
      tr("diameter of the record"),
      labels_of<DiameterMeant>({{DiameterMeant::outside, tr("outside")},
                                {DiameterMeant::inside, tr("inside")},
                                {DiameterMeant::nominal, tr("nominal")}},
                               tr("not said")),
      [](const Utility& u) { return row_of_word(u.recorded.diameter); },
      [](Utility& u, int row) { u.recorded.diameter = word_or_none_at<DiameterMeant>(row); });
  size_ = add_entries(tr("default"), true);
  utility_choice(
      tr("level of the record"),
      labels_of<LevelMeant>(
          {{LevelMeant::crown, tr("crown")}, {LevelMeant::centre, tr("centre")}, {LevelMeant::invert, tr("invert")}},
          tr("not said")),
      [](const Utility& u) { return row_of_word(u.recorded.level); },
      [](Utility& u, int row) { u.recorded.level = word_or_none_at<LevelMeant>(row); });
  utility_choice(
      tr("measured from"),
      labels_of<DepthFrom>({{DepthFrom::ground, tr("ground", "measured from")}, {DepthFrom::datum, tr("datum")}},
                           tr("not said")),
      [](const Utility& u) { return row_of_word(u.recorded.from); },
      [](Utility& u, int row) { u.recorded.from = word_or_none_at<DepthFrom>(row); });
  level_ = add_entries(tr("default"), true);
  level_text_ = add_text(tr("What the level means"), true);
}

void UtilitiesPanel::make_material() {
  QStringList materials{tr("not known: counts as brittle")};
  for (const UtilityMaterialRow& row : document_.tables().utility_materials) materials << text_from(row.name);
  const auto row_of = [this](const Utility& u) {
    const UtilityMaterialRow* row = find_material(document_.tables(), u.material, u.kind);
    return row ? static_cast<int>(row - document_.tables().utility_materials.data()) + 1 : 0;
  };
  const auto choose = [this](Utility& u, int row) {
    u.material = row > 0 ? document_.tables().utility_materials[static_cast<std::size_t>(row) - 1].id : std::string();
  };
  utility_choice(tr("material"), materials, row_of, choose, true);
  material_text_ = add_text(tr("What the record says about the material"), true);
}

/// Words of an older file or of a record, and a material that the kind is not made of.
void UtilitiesPanel::show_material() {
  const Utility& utility = *current();
  const auto& rows = document_.tables().utility_materials;
  const bool id = std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return row.id == utility.material; });
  const UtilityMaterialRow* known = find_material(document_.tables(), utility.material, utility.kind);
  const QString said = text_from(utility.material);
  material_text_->setText(
      id      ? tr("A line of this kind is not made of what is entered: it counts as not known.")
      : known ? tr("The record says “%1”: taken as %2.").arg(said, text_from(known->name))
              : tr("The record says “%1”, which is not in the list: it counts as not known.").arg(said));
  material_text_->setVisible(!utility.material.empty() && !(id && known));
}

void UtilitiesPanel::make_place() {
  const auto whose = [this] { return part(); };
  add_gap();
  add_heading(tr("How its place is known"));
  const QStringList ways = labels_of<LocatedHow>({{LocatedHow::exposed, tr("exposed")},
                                                  {LocatedHow::traced_twice, tr("traced twice")},
                                                  {LocatedHow::traced, tr("traced")},
                                                  {LocatedHow::records, tr("records")},
                                                  {LocatedHow::unknown, tr("not known")}});
  add_choice(
      tr("located by"), ways, [this] { return current() ? row_of_word(*current()->located.how) : -1; },
      [this, ways](int row) { choose_located(word_at<LocatedHow>(row), ways[row]); });
  located_text_ = add_text(tr("What the way of locating brought with it"));
  tracer_ = utility_choice(
      tr("the tracing followed"),
      labels_of<TracedBy>(
          {{TracedBy::wire, tr("a wire")}, {TracedBy::sonde, tr("a sonde")}, {TracedBy::none, tr("nothing")}},
          tr("not said")),
      [](const Utility& u) { return row_of_word(u.located.tracer); },
      [](Utility& u, int row) { u.located.tracer = word_or_none_at<TracedBy>(row); });
  date_ = add_texts(whose);
  date_->add(day_field(document_, tr("date"), in_utility([](auto& u) { return &u.located.date; })),
             tr("When it was located, as 2026-03-14"));
  presets_ = add_combo(tr("quality level of the survey"));
  presets_->addItem(tr("none"));
  for (const LocatingPreset& preset : document_.tables().locating)
    presets_->addItem(text_from(preset.name), text_from(preset.id));
  connect(presets_, &QComboBox::activated, this, [this](int row) {
    const Utility* utility = current();
    if (!utility) return;
    const bool of_95 = preset_reading(*utility, place(), document_.tables()) == PresetReading::of_95_percent;
    choose_preset(row, of_95 ? PresetReading::of_95_percent : PresetReading::one_sd);
  });
  add_choice(
      tr("its ± is"), {tr("1σ (safe)"), tr("95 % of cases"), tr("not used")},
      [this] {
        const Utility* utility = current();
        return utility ? static_cast<int>(preset_reading(*utility, place(), document_.tables())) : -1;
      },
      [this](int row) { choose_preset(presets_->currentIndex(), static_cast<PresetReading>(row)); });
  preset_text_ = add_text(tr("What the quality level states"), true);
  location_ = add_entries(tr("quality level"), true);
  add_gap();
  add_heading(tr("What its owner asks for"));
  gap_ = add_entries(tr("default"), true);
  precaution_ = add_texts(whose);
  precaution_->add(text_field(document_, tr("precaution"), in_utility([](auto& u) { return &u.precaution; })), {},
                   true);
  precaution_->add(text_field(document_, tr("gap agreed with"), in_utility([](auto& u) { return &u.agreed.with; })),
                   tr("As: the water company, its inspector"));
  precaution_->add(day_field(document_, tr("agreed on"), in_utility([](auto& u) { return &u.agreed.date; })));
}

void UtilitiesPanel::choose_located(LocatedHow how, const QString& word) {
  if (!current()) return;
  edit(tr("Choose %1: %2").arg(tr("located by"), word),
       [&](Utility& utility) { utility = located_by(std::move(utility), how, document_.tables()); });
  if (current()->located.how == Given<LocatedHow>::enter(how)) reset_ = current()->located;
  show_located();
}

void UtilitiesPanel::show_located() {
  const Located& located = current()->located;
  if (reset_ && !(*reset_ == located)) reset_.reset();
  QString level = tr("none");
  for (const LocatingPreset& preset : document_.tables().locating)
    if (located.level && preset.id == *located.level) level = text_from(preset.name);
  located_text_->setText(
      reset_ ? tr("Quality level now: %1. Errors typed before gave way; Undo brings them back.").arg(level)
             : QString());
  located_text_->setVisible(reset_.has_value());
  const bool traced = *located.how == LocatedHow::traced || *located.how == LocatedHow::traced_twice;
  tracer_->parentWidget()->setVisible(traced || located.tracer);
}

void UtilitiesPanel::choose_preset(int row, PresetReading reading) {
  const Utility* utility = current();
  if (!utility || row < 0) return;
  const std::string preset = presets_->itemData(row).toString().toStdString();
  if (preset.empty() && !utility->located.level) return;
  edit(tr("Choose quality level: %1").arg(presets_->itemText(row)),
       [&](Utility& changed) { changed = with_preset(changed, preset, reading, place(), document_.tables()); });
}

void UtilitiesPanel::point_forms() {
  size_->show_part(part(), [this] { return utility_size_fields(document_.crossing(), picked_); });
  level_->show_part(part(), [this] { return utility_level_fields(document_.crossing(), picked_, place()); });
  location_->show_part(
      part(), [this] { return utility_location_fields(document_.crossing(), picked_, place(), document_.tables()); });
  gap_->show_part(part(), [this] { return utility_gap_fields(document_.crossing(), picked_); });
  hole_values_->show_part({ItemKind::test_holes, hole_, -1},
                          [this] { return hole_fields(document_.crossing(), hole_); });
}

void UtilitiesPanel::show_place() {
  show_material();
  const Utility* utility = current();
  const PassingPlace here = place();
  const LevelMeant level = level_meant(*utility);
  QStringList shown_text;
  if (!utility->recorded.level || !utility->recorded.from)
    shown_text << tr("What the record leaves open counts as: below ground, to the crown.");
  if (utility->recorded.diameter && *utility->recorded.diameter != DiameterMeant::outside)
    shown_text << tr("The bore passes the outside: add the walls to what the record says.");
  if (!above_centre_m(*utility, level))
    shown_text << tr("Type the outside diameter first: %1 and centre lie half of it apart.")
                      .arg(text_from(translated_word(level)));
  else if (!here.axis_m)
    shown_text << tr("Its depth at the bore is not known.");
  else if (level == LevelMeant::invert)
    shown_text << tr("The invert is taken at half the outside diameter below the centre; a thick wall puts it higher.");
  if (here.axis_m && here.ground_m && above_centre_m(*utility, LevelMeant::crown))
    shown_text << tr("At station %1: centre at level %2, crown %3 below ground.")
                      .arg(text_of(here.station_m, Dimension::station), text_of(*here.axis_m, Dimension::station),
                           text_of(*here.ground_m - *here.axis_m - *above_centre_m(*utility, LevelMeant::crown),
                                   Dimension::length));
  level_text_->setText(shown_text.join(QLatin1Char(' ')));
  level_text_->setVisible(!shown_text.isEmpty());

  const int row = utility->located.level ? presets_->findData(text_from(*utility->located.level)) : 0;
  presets_->setCurrentIndex(row);
  presets_->setEnabled(!locked());
  QString words = tr("No quality level: type both errors, or choose one.");
  for (const LocatingPreset& preset : document_.tables().locating) {
    if (!utility->located.level || preset.id != *utility->located.level) continue;
    const bool across = preset.lateral || preset.lateral_of_depth, up = preset.vertical || preset.vertical_of_depth;
    const bool of_depth = preset.lateral_of_depth || preset.vertical_of_depth;
    QStringList parts{tr("%1.").arg(text_from(preset.name))};
    if (!across && !up) parts << tr("It carries no number: type both errors yourself.");
    if (across && !up) parts << tr("It carries no number in height: type that error yourself.");
    if (of_depth && !here.depth_m()) parts << tr("It is a share of the depth, which is not known here.");
    if (of_depth && here.depth_m())
      parts << tr("Taken at a depth of %1.").arg(text_of(*here.depth_m(), Dimension::length));
    parts
        << tr("Source: %1 [%2]").arg(text_from(preset.source.text), text_from(burrow::label_text(preset.source.label)));
    words = parts.join(QLatin1Char(' '));
  }
  preset_text_->setText(words);
}

}  // namespace burrow
