#include "burrow/panels/surface_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSlider>
#include <algorithm>

#include "burrow/charts/bore_charts.h"
#include "burrow/crossing/statement.h"
#include "burrow/document/surroundings.h"
#include "burrow/document/text.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/load/live.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/corner_form.h"
#include "burrow/panels/entry_form.h"
#include "burrow/tables/material_rows.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
constexpr std::size_t most_rows = 4;
constexpr int tip_steps = 100;
constexpr std::size_t least_corners = 3;

QString kind_words(SurfaceKind kind) {
  return text_from(translated_word(kind));
}

QString name_of(const SurfaceFeature& feature) {
  return feature.name.empty() ? kind_words(feature.kind) : text_from(feature.name);
}
}  // namespace

SurfacePanel::SurfacePanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("On top of the bore"));
  list_ = add_list(tr("Things on top"), most_rows);
  const auto buttons = add_buttons({tr("Add"), tr("Remove")});
  add_ = buttons[0];
  remove_ = buttons[1];
  add_->setToolTip(tr("A new road over the middle of the bore"));
  remove_->setToolTip(tr("Takes out the selected one; Undo brings it back"));
  nothing_ = add_text(tr("What is missing"));
  make_nothing_above();
  heave_ = new HeaveChart(this);
  add_widget(heave_);
  tip_ = new QSlider(Qt::Horizontal, this);
  tip_->setRange(0, tip_steps);
  tip_->setValue(tip_steps / 2);
  tip_text_ = add_labelled(tr("tip of the tool"), tip_);
  tip_->setAccessibleName(tr("Where the tip of the tool is, from launch to exit"));
  connect(tip_, &QSlider::valueChanged, this, &SurfacePanel::show_heave);
  const int then = widgets_so_far();
  make_values();
  make_rule();
  make_rescue();
  make_levels();
  of_item_ = widgets_after(then);
  add_end();
  connect(list_, &CardList::chosen, this, &SurfacePanel::choose);
  connect(add_, &QPushButton::clicked, this, &SurfacePanel::add);
  connect(remove_, &QPushButton::clicked, this, &SurfacePanel::remove);
  connect(rules_, &QComboBox::activated, this, &SurfacePanel::choose_rule);
  refresh_now();
}

void SurfacePanel::make_values() {
  add_gap();
  heading_ = add_heading(QString());
  QStringList kinds;
  for (const auto& [kind, word] : EnumNames<SurfaceKind>::list) kinds << kind_words(kind);
  add_choice(
      tr("kind"), kinds, [this] { return current() ? row_of_word(current()->kind) : -1; },
      [this, kinds](int row) {
        edit(tr("Choose kind: %1").arg(kinds[row]), [&](SurfaceFeature& f) { f.kind = word_at<SurfaceKind>(row); });
      });
  names_ = add_texts([this] { return part(); });
  names_->add(text_field(document_, tr("name"), in_feature([](auto& f) { return &f.name; })), {}, true);
  add_choice(
      tr("what runs on it"),
      labels_of<Traffic>({{Traffic::highway, tr("highway trucks")},
                          {Traffic::european, tr("EN 1991-2 lorries")},
                          {Traffic::light, tr("light vehicles to 16 t")},
                          {Traffic::cars, tr("cars")},
                          {Traffic::cooper_e80, tr("trains, Cooper E80")},
                          {Traffic::none, tr("nothing")}},
                         tr("not said: heaviest usual")),
      [this] {
        if (!current() || !current()->traffic || current()->traffic->empty()) return current() ? 0 : -1;
        const auto traffic = from_word<Traffic>(*current()->traffic);
        return traffic ? row_of_word(*traffic) + 1 : -1;
      },
      [this](int row) {
        edit(tr("Choose what runs on it"), [&](SurfaceFeature& f) {
          const auto traffic = word_or_none_at<Traffic>(row);
          f.traffic = traffic ? std::optional(std::string(word_of(*traffic))) : std::nullopt;
        });
      },
      true);
  QStringList structures{tr("not known: the strictest counts")};
  for (const StructureRow& row : document_.tables().structures) structures << text_from(row.name);
  structure_ = add_choice(
      tr("kind of building"), structures,
      [this] {
        if (!current()) return -1;
        const StructureRow* row = find_structure(document_.tables(), current()->structure.value_or(""));
        return row ? static_cast<int>(row - document_.tables().structures.data()) + 1 : 0;
      },
      [this, structures](int row) {
        edit(tr("Choose kind of building: %1").arg(structures[row]), [&](SurfaceFeature& f) {
          f.structure.reset();
          if (row > 0) f.structure = document_.tables().structures[static_cast<std::size_t>(row) - 1].id;
        });
      },
      true);
  values_ = add_entries(tr("default"), true);
  place_text_ = add_text(tr("Where it lies"), true);
  corners_ = new CornerForm(document_, least_corners, this);
  add_widget(corners_);
}

void SurfacePanel::make_rule() {
  add_gap();
  add_heading(tr("What its owner asks for"));
  rules_ = add_combo(tr("rule of the owner"));
  rule_text_ = add_text(tr("What the rule asks, and where it comes from"));
  limits_ = add_entries(tr("default"), true);
  add_gap();
  add_heading(tr("Whether its owner allows it"));
  add_choice(
      tr("permission"),
      labels_of<Permission>({{Permission::allowed, tr("allowed")},
                             {Permission::refused, tr("refused")},
                             {Permission::not_asked, tr("not asked")}}),
      [this] { return current() ? row_of_word(*current()->permission) : -1; },
      [this](int row) {
        edit(tr("Answer: permission"), [&](SurfaceFeature& f) { f.permission.set(word_at<Permission>(row)); });
      });
  permit_ = add_texts([this] { return part(); });
  permit_->add(text_field(document_, tr("permit"), in_feature([](auto& f) { return &f.permit; })),
               tr("Number, date, or who said so"), true);
}

void SurfacePanel::make_nothing_above() {
  nothing_said_ = add_texts([] { return ItemRef{ItemKind::site, {}, -1}; });
  add_statement(*nothing_said_, document_,
                {tr("nothing on top: how that is known"), tr("As: walked over; the survey shows a field"),
                 tr("nothing on top, says"), tr("as seen on")},
                [](auto& c) { return &c.site.nothing_above; });
}

void SurfacePanel::make_rescue() {
  add_gap();
  add_heading(tr("A tool stuck under it"));
  rescue_ = add_texts([this] { return part(); });
  rescue_->add(text_field(document_, tr("how it would be got out"), in_feature([](auto& f) { return &f.rescue.how; })),
               tr("As: one lane closed at night, pit of 1.5 m"), true);
  rescue_->add(text_field(document_, tr("agreed with"), in_feature([](auto& f) { return &f.rescue.agreed_with; })));
  rescue_->add(day_field(document_, tr("agreed on"), in_feature([](auto& f) { return &f.rescue.date; })));
}

const SurfaceFeature* SurfacePanel::current() const {
  return find_by_id(document_.crossing().site.surface, picked_);
}

void SurfacePanel::edit(const QString& step_name, const std::function<void(SurfaceFeature&)>& change_it) {
  if (current()) change(step_name, [&](Crossing& c) { change_it(*find_by_id(c.site.surface, picked_)); });
}

void SurfacePanel::pick(const std::string& id) {
  if (id == picked_) return;
  const auto& all = document_.crossing().site.surface;
  if (std::none_of(all.begin(), all.end(), [&](const SurfaceFeature& f) { return f.id == id; })) return;
  picked_ = id;
  peg_ = 0;
  point_form();
  refresh_soon();
}

void SurfacePanel::choose(const QString& id) {
  pick(id.toStdString());
  Q_EMIT picked(id);
}

void SurfacePanel::add() {
  const Crossing& crossing = document_.crossing();
  SurfaceFeature feature;
  feature.id = free_id(crossing, "f");
  feature.name = tr("new road").toStdString();
  const double from = crossing.bore.launch.station.m, length = crossing.bore.exit.station.m - from;
  feature.from = Length{from + length / 3};
  feature.to = Length{from + 2 * length / 3};
  const std::string id = feature.id;
  change(tr("Add a road"), [&](Crossing& c) { c.site.surface.push_back(feature); });
  choose(text_from(id));
}

void SurfacePanel::remove() {
  const SurfaceFeature* feature = current();
  if (!feature) return;
  change(tr("Remove %1").arg(name_of(*feature)), [id = picked_](Crossing& c) {
    std::erase_if(c.site.surface, [&](const SurfaceFeature& f) { return f.id == id; });
  });
}

void SurfacePanel::point_form() {
  const auto only = [this](bool limits) {
    std::vector<Field> some;
    for (Field& field : fields_of(document_.crossing(), part())) {
      const bool limit = field.label.starts_with("cover") || field.label.starts_with("heave");
      if (limit == limits) some.push_back(std::move(field));
    }
    return some;
  };
  values_->show_part(part(), [only] { return only(false); });
  corners_->show_line(part(), outline_of(picked_));
  limits_->show_part(part(), [only] { return only(true); });
  peg_values_->show_part(part(), [this] { return peg_fields(document_.crossing(), picked_, peg_); });
}

void SurfacePanel::list_cards() {
  const auto& all = document_.crossing().site.surface;
  if (!current()) {
    picked_ = all.empty() ? std::string() : all.front().id;
    point_form();
  }
  std::vector<Card> cards;
  for (const SurfaceFeature& feature : all) {
    Card card;
    card.id = feature.id;
    card.title = feature.name.empty() ? kind_words(feature.kind)
                                      : tr("%1, %2").arg(text_from(feature.name), kind_words(feature.kind));
    card.facts = place_words(feature);
    const bool asked = feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track;
    if (feature.permission.entered || asked)
      card.facts += QStringLiteral(" · ") + (*feature.permission == Permission::allowed   ? tr("allowed")
                                             : *feature.permission == Permission::refused ? tr("refused")
                                                                                          : tr("not asked"));
    cards.push_back(std::move(card));
  }
  list_->setVisible(!all.empty());
  nothing_->setVisible(all.empty());
  const Statement& shown_text = document_.crossing().site.nothing_above;
  nothing_->setText(
      declared(shown_text, document_.tables().judged_on)
          ? tr("No road, track, ditch or building is entered; %1 says that there is none.")
                .arg(text_from(shown_text.by))
          : tr("No road, track, ditch or building is entered. Add what lies on top, or say that there is nothing:"));
  nothing_said_->setVisible(all.empty());
  nothing_said_->catch_up();
  list_->show_cards(std::move(cards), picked_);
  add_->setEnabled(!locked());
  remove_->setEnabled(!locked() && current());
}

QString SurfacePanel::place_words(const SurfaceFeature& feature) const {
  if (feature.from && feature.to)
    return tr("station %1 to %2")
        .arg(text_of(feature.from->m, Dimension::station), text_of(feature.to->m, Dimension::station));
  if (feature.outline.size() > 2)
    return tr("outline of %n points in plan", nullptr, static_cast<int>(feature.outline.size()));
  return tr("place not entered");
}

void SurfacePanel::fill_rules() {
  const SurfaceFeature* feature = current();
  const QSignalBlocker blocker(rules_);
  QStringList ids{QString()};
  for (const SurfaceRule& rule : document_.tables().surface_rules)
    if (rule.kind == feature->kind || (feature->rule && *feature->rule == rule.id)) ids << text_from(rule.id);
  bool same = rules_->count() == ids.size();
  for (int i = 0; same && i < rules_->count(); ++i) same = rules_->itemData(i).toString() == ids[i];
  if (!same) {
    rules_->clear();
    rules_->addItem(tr("none"), QString());
    for (const SurfaceRule& rule : document_.tables().surface_rules)
      if (ids.contains(text_from(rule.id))) rules_->addItem(text_from(rule.name), text_from(rule.id));
  }
  rules_->setCurrentIndex(feature->rule ? rules_->findData(text_from(*feature->rule)) : 0);
  rules_->setEnabled(!locked());
}

void SurfacePanel::choose_rule(int row) {
  const std::string id = rules_->itemData(row).toString().toStdString();
  edit(tr("Choose rule: %1").arg(rules_->itemText(row)), [&](SurfaceFeature& feature) {
    feature.rule.reset();
    if (!id.empty()) feature.rule = id;
  });
}

QString SurfacePanel::rule_words(const SurfaceRule& rule) const {
  QStringList asks;
  const auto ask = [&](const QString& what, const auto& value, auto number, Dimension dimension) {
    if (value) asks << what.arg(text_of((*value).*number, dimension));
  };
  ask(tr("cover %1"), rule.cover, &Length::m, Dimension::length);
  ask(tr("heave told from %1"), rule.heave_caution, &Length::m, Dimension::small_length);
  ask(tr("heave at most %1"), rule.heave_stop, &Length::m, Dimension::small_length);
  ask(tr("angle of the crossing at least %1"), rule.least_angle, &Angle::rad, Dimension::angle);
  const bool to_centre = rule.setback_span == SetbackSpan::excavation_to_centre;
  ask(to_centre ? tr("pits %1 off its centreline") : tr("pits %1 off its edge"), rule.pit_setback, &Length::m,
      Dimension::length);
  if (rule.unshored_adds_depth) asks << tr("without shoring by their depth more");
  ask(tr("pipe ends %1 off its edge"), rule.pipe_end_setback, &Length::m, Dimension::length);
  ask(tr("nothing within %1 of its centreline"), rule.clear_of_centre, &Length::m, Dimension::length);
  ask(tr("hole driven without taking soil out at most %1"), rule.largest_driven, &Length::m, Dimension::small_length);
  QString text = tr("%1: %2.").arg(text_from(rule.name), asks.join(QStringLiteral(", ")));
  if (current()->required_cover && rule.cover) text += QLatin1Char(' ') + tr("The cover typed below goes before it.");
  if (!rule.note.empty()) text += QLatin1Char(' ') + text_from(rule.note);
  if (rule.kind != current()->kind) text += QLatin1Char(' ') + tr("It is a rule for a %1.").arg(kind_words(rule.kind));
  return text + QLatin1Char('\n') +
         tr("Source: %1 [%2]").arg(text_from(rule.source.text), text_from(burrow::label_text(rule.source.label)));
}

void SurfacePanel::show_rule() {
  const SurfaceFeature* feature = current();
  const bool stands = feature->kind == SurfaceKind::building || feature->kind == SurfaceKind::footing ||
                      feature->kind == SurfaceKind::wall;
  structure_->parentWidget()->setVisible(stands);
  const SurfaceRule* rule = feature->rule ? find_rule(document_.tables(), *feature->rule) : nullptr;
  rule_text_->setText(rule ? rule_words(*rule)
                           : tr("No rule: ask the owner, then choose it here or type the cover. The rules are examples "
                                "with their sources; the permit goes before them."));
  const bool outline = feature->outline.size() > 2;
  place_text_->setText(outline && feature->from && feature->to
                           ? tr("The file holds an outline in plan too; the stations go before it.")
                       : outline ? tr("The file holds an outline in plan; stations typed here would go before it.")
                                 : QString());
  place_text_->setVisible(outline);
  corners_->setVisible(!feature->outline.empty());
}

void SurfacePanel::set_theme(const Theme& theme) {
  FormPanel::set_theme(theme);
  heave_->set_theme(theme);
  corners_->set_theme(theme);
}

void SurfacePanel::set_units(UnitSystem units) {
  FormPanel::set_units(units);
  corners_->set_units(units);
}

void SurfacePanel::show_heave() {
  const std::vector<HeavePoint>& heave = document_.assessment().heave;
  for (QWidget* widget : {static_cast<QWidget*>(heave_), static_cast<QWidget*>(tip_), static_cast<QWidget*>(tip_text_)})
    widget->setVisible(!heave.empty());
  if (heave.empty()) return;
  const double from = heave.front().station_m, to = heave.back().station_m;
  const double tip = from + (to - from) * tip_->value() / tip_steps;
  heave_->show_heave(document_.assessment(), tip, units_);
  tip_text_->setText(tr("tip of the tool at station %1").arg(text_of(tip, Dimension::station)));
}

void SurfacePanel::refresh() {
  list_cards();
  show_heave();
  const SurfaceFeature* feature = current();
  for (QWidget* widget : of_item_) widget->setVisible(feature != nullptr);
  if (!feature) return;
  heading_->setText(name_of(*feature));
  names_->catch_up();
  permit_->catch_up();
  rescue_->catch_up();
  values_->catch_up();
  corners_->catch_up();
  limits_->catch_up();
  fill_rules();
  show_rule();
  show_levels();
}

QString SurfacePanel::visible_text() const {
  return plain(nothing_) + plain(place_text_) + plain(rule_text_) + plain(levels_text_);
}

}  // namespace burrow
