#include "burrow/panels/surroundings_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/document/map_fields.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/corner_form.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {

constexpr std::size_t around_rows = 6, least_corners = 2;

QString around_kind_words(AroundKind kind) {
  switch (kind) {
    case AroundKind::boundary:
      return SurroundingsPanel::tr("boundary");
    case AroundKind::tree:
      return SurroundingsPanel::tr("tree");
    case AroundKind::machine:
      return SurroundingsPanel::tr("machine");
    case AroundKind::trench:
      break;
  }
  return SurroundingsPanel::tr("old trench");
}

TextField map_text_field(Document& document, const QString& label, std::string Georeference::*member) {
  return {label,
          [&document, member] {
            const auto& map = document.crossing().site.georeference;
            return map ? text_from((*map).*member) : QString();
          },
          [member](Crossing& crossing, const QString& typed) {
            set_map_text(crossing, member, typed.trimmed().toStdString());
          },
          TextKind::words};
}

}  // namespace

SurroundingsPanel::SurroundingsPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Beside the bore"));
  nothing_ = add_text(tr("What is missing"));
  list_ = add_list(tr("Boundaries, trees, machines, trenches"), around_rows);
  buttons_ = add_buttons({tr("+ Boundary"), tr("+ Tree"), tr("+ Machine"), tr("+ Old trench"), tr("Remove")});
  for (std::size_t i = 0; i + 1 < buttons_.size(); ++i) {
    const auto kind = static_cast<AroundKind>(i);
    buttons_[i]->setToolTip(tr("Adds it across the line in the middle of the bore; type where it is"));
    connect(buttons_[i], &QPushButton::clicked, this, [this, kind] { add(kind); });
  }
  connect(buttons_.back(), &QPushButton::clicked, this, &SurroundingsPanel::remove);
  add_gap();
  heading_ = add_heading(QString());
  name_ = add_texts([this] { return part(); });
  name_->add(text_field(document_, tr("name"), [this](auto& c) { return around_name(picked_)(c); }), {}, true);
  make_choices();
  values_ = add_entries(tr("ground line"), true);
  soil_values_ = add_entries(tr("class"), true);
  corners_ = new CornerForm(document_, least_corners, this);
  add_widget(corners_);
  make_map();
  add_end();
  connect(list_, &CardList::chosen, this, [this](const QString& id) {
    for (const Around& one : surroundings(document_.crossing()))
      if (text_from(one.id) == id) pick(one);
  });
  point_form();
  refresh_now();
}

void SurroundingsPanel::make_choices() {
  boundary_kind_ = add_choice(
      tr("kind of boundary"),
      labels_of<BoundaryKind>({{BoundaryKind::property, tr("property")}, {BoundaryKind::easement, tr("easement")}}),
      [this] {
        const Boundary* b = find_by_id(document_.crossing().site.boundaries, picked_.id);
        return b ? row_of_word(b->kind) : -1;
      },
      [this](int row) {
        change(tr("Choose the kind of boundary"), [this, row](Crossing& c) {
          if (Boundary* b = find_by_id(c.site.boundaries, picked_.id)) b->kind = word_at<BoundaryKind>(row);
        });
      });
  QStringList soils;
  for (const SoilClass& soil : document_.tables().soils) soils << text_from(translated_phrase(soil.name));
  soil_ = add_choice(
      tr("soil in the trench"), soils,
      [this] {
        const Strip* strip = find_by_id(document_.crossing().site.strips, picked_.id);
        const SoilClass* soil = strip ? find_soil(document_.tables(), strip->soil) : nullptr;
        return soil ? static_cast<int>(soil - document_.tables().soils.data()) : -1;
      },
      [this](int row) {
        change(tr("Choose the soil in the trench"), [this, row](Crossing& c) {
          if (Strip* strip = find_by_id(c.site.strips, picked_.id))
            strip->soil = document_.tables().soils[static_cast<std::size_t>(row)].id;
        });
      },
      true);
}

void SurroundingsPanel::make_map() {
  add_gap();
  add_heading(tr("Where the site lies in a map"));
  map_hint_ = add_text(tr("What the map is for"), true);
  map_hint_->setText(
      tr("Coordinates of station 0 on the line and the direction of the line. Import enters them; exports in map "
         "coordinates need them."));
  const ItemRef site{ItemKind::site, {}, -1};
  map_texts_ = add_texts([site] { return site; });
  const auto text = [this](const QString& label, std::string Georeference::*member, const QString& hint) {
    map_texts_->add(map_text_field(document_, label, member), hint, true);
  };
  text(tr("coordinate system"), &Georeference::crs, tr("As: EPSG:25832"));
  text(tr("height system"), &Georeference::vertical, tr("As: DHHN2016"));
  map_ = add_entries(tr("not entered"), true);
  map_->show_part(site, [this] { return map_fields(document_.crossing()); });
}

ItemRef SurroundingsPanel::part() const {
  return {ItemKind::around, picked_.id, -1};
}

void SurroundingsPanel::set_units(UnitSystem units) {
  FormPanel::set_units(units);
  corners_->set_units(units);
}

void SurroundingsPanel::set_theme(const Theme& theme) {
  FormPanel::set_theme(theme);
  corners_->set_theme(theme);
}

void SurroundingsPanel::pick(const Around& which) {
  picked_ = which;
  point_form();
  refresh_now();
}

void SurroundingsPanel::add(AroundKind kind) {
  std::string id;
  change(tr("Add: %1").arg(around_kind_words(kind)), [&](Crossing& c) { id = add_around(c, kind); });
  if (!id.empty()) pick({kind, id});
}

void SurroundingsPanel::remove() {
  change(tr("Remove %1").arg(title_of(picked_)), [this](Crossing& c) { remove_around(c, picked_); });
}

void SurroundingsPanel::point_form() {
  values_->show_part(part(), [this] { return around_fields(document_.crossing(), picked_); });
  soil_values_->show_part(part(),
                          [this] { return trench_soil_fields(document_.crossing(), picked_.id, document_.tables()); });
  corners_->show_line(part(), around_line(picked_));
}

QString SurroundingsPanel::title_of(const Around& which) const {
  const std::string* name = around_name(which)(document_.crossing());
  const QString kind = around_kind_words(which.kind);
  return name && !name->empty() ? tr("%1, %2").arg(text_from(*name), kind) : tr("%1 %2").arg(kind, text_from(which.id));
}

QString SurroundingsPanel::facts_of(const Around& which) const {
  if (const PlanLine* line = around_line(which)(document_.crossing()); line && !line->empty()) {
    const auto [first, last] = std::minmax_element(
        line->begin(), line->end(), [](const PlanPoint& a, const PlanPoint& b) { return a.x_m < b.x_m; });
    return tr("station %1 to %2").arg(text_of(first->x_m, Dimension::station), text_of(last->x_m, Dimension::station));
  }
  const std::vector<Field> fields = around_fields(document_.crossing(), which);
  if (fields.size() < 2) return {};
  return tr("station %1, offset %2")
      .arg(text_of(*fields[0].value, Dimension::station), text_of(*fields[1].value, Dimension::station));
}

void SurroundingsPanel::list_cards() {
  const std::vector<Around> all = surroundings(document_.crossing());
  if (std::find(all.begin(), all.end(), picked_) == all.end()) {
    picked_ = all.empty() ? Around{} : all.front();
    point_form();
  }
  std::vector<Card> cards;
  for (const Around& one : all) {
    Card card;
    card.id = one.id;
    card.title = title_of(one);
    card.facts = facts_of(one);
    cards.push_back(std::move(card));
  }
  list_->setVisible(!all.empty());
  nothing_->setVisible(all.empty());
  nothing_->setText(
      tr("No boundary, tree, machine or old trench is entered. Add what there is: pits, loads and the "
         "path are judged by it."));
  list_->show_cards(std::move(cards), picked_.id);
  for (QPushButton* button : buttons_) button->setEnabled(!locked());
  buttons_.back()->setEnabled(!locked() && !all.empty());
}

void SurroundingsPanel::refresh() {
  list_cards();
  const bool any = !picked_.id.empty();
  heading_->setVisible(any);
  name_->setVisible(any);
  values_->setVisible(any && picked_.kind != AroundKind::boundary);
  boundary_kind_->parentWidget()->setVisible(any && picked_.kind == AroundKind::boundary);
  soil_->parentWidget()->setVisible(any && picked_.kind == AroundKind::trench);
  if (any) heading_->setText(title_of(picked_));
  name_->catch_up();
  values_->catch_up();
  soil_values_->setVisible(any && picked_.kind == AroundKind::trench);
  soil_values_->catch_up();
  corners_->catch_up();
  map_texts_->catch_up();
  map_->catch_up();
}

QString SurroundingsPanel::visible_text() const {
  return plain(nothing_) + plain(heading_) + plain(map_hint_);
}

}  // namespace burrow
