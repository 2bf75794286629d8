#include "burrow/panels/utilities_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>
#include <limits>

#include "burrow/document/several.h"
#include "burrow/document/text.h"
#include "burrow/document/utility_entry.h"
#include "burrow/panels/at_once_form.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"

namespace burrow {

namespace {
constexpr std::size_t most_rows = 4;  ///< of the list; more are scrolled to
constexpr double beside_m = 1.0;      ///< a copy lies so far along the line
constexpr double farthest_m = 1e5;    // what the file format accepts

/// The first to be exposed stands first: by the rank if there is one, then those of which nothing is known, then by
/// what is left over the gap that is wanted.
double order_of(const UtilityAnswer* answer) {
  constexpr double ranked = -1e9, unknown = -1e6;
  if (!answer) return unknown;
  if (answer->expose_rank) return ranked + *answer->expose_rank;
  if (!answer->separation_m || !answer->required_m) return unknown;
  return *answer->separation_m - *answer->required_m;
}
}  // namespace

UtilitiesPanel::UtilitiesPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Utilities, to expose first on top"));
  list_ = add_list(tr("Utilities"), most_rows);
  const auto buttons = add_buttons({tr("Add"), tr("Duplicate"), tr("Remove")});
  add_ = buttons[0];
  duplicate_ = buttons[1];
  remove_ = buttons[2];
  add_->setToolTip(tr("A new utility across the middle of the bore"));
  duplicate_->setToolTip(tr("The selected one once more, a little further along"));
  remove_->setToolTip(tr("Takes out the selected one with its test holes; Undo brings both back"));
  whole_bore_ = add_text(tr("Chances of the whole bore"));
  search_state_ = add_text(tr("Utility search"));
  search_state_->setTextInteractionFlags(Qt::TextBrowserInteraction);
  make_ends_at_once();
  const int then = widgets_so_far();
  make_values();
  make_ends();
  make_place();
  make_answers();
  of_utility_ = widgets_after(then);
  make_search();
  make_background();
  add_end();
  connect(list_, &CardList::chosen, this, &UtilitiesPanel::choose);
  connect(add_, &QPushButton::clicked, this, &UtilitiesPanel::add);
  connect(duplicate_, &QPushButton::clicked, this, &UtilitiesPanel::duplicate);
  connect(remove_, &QPushButton::clicked, this, &UtilitiesPanel::remove);
  connect(search_state_, &QLabel::linkActivated, this, [this] { bring_into_view(search_heading_); });
  connect(&document_, &Document::replaced, this, [this] {
    measured_->clear();
    for (AtOnceForm* form : {ends_form_, search_form_, background_form_}) form->close_form();
  });
  refresh_now();
}

void UtilitiesPanel::set_theme(const Theme& theme) {
  FormPanel::set_theme(theme);
  QPalette colours = palette();
  colours.setColor(QPalette::WindowText, theme.stop);
  measured_wrong_->setPalette(colours);
  QPalette links = palette();
  links.setColor(QPalette::Link, theme.focus);
  search_state_->setPalette(links);
  for (AtOnceForm* form : {ends_form_, search_form_, background_form_}) form->set_theme(theme);
  show_search();
}

const Utility* UtilitiesPanel::current() const {
  for (const Utility& utility : document_.crossing().site.utilities)
    if (utility.id == picked_) return &utility;
  return nullptr;
}

const UtilityAnswer* UtilitiesPanel::answer_of(const std::string& id) const {
  for (const UtilityAnswer& answer : document_.assessment().utilities)
    if (answer.id == id) return &answer;
  return nullptr;
}

PassingPlace UtilitiesPanel::place() const {
  const Utility* utility = current();
  return utility ? passing_place(document_.crossing(), *utility, answer_of(picked_)) : PassingPlace{};
}

void UtilitiesPanel::pick(const std::string& id) {
  if (id == picked_) return;
  const auto& all = document_.crossing().site.utilities;
  if (std::none_of(all.begin(), all.end(), [&](const Utility& u) { return u.id == id; })) return;
  picked_ = id;
  hole_.clear();
  measured_->clear();
  measured_wrong_->hide();
  reset_.reset();
  point_forms();
  refresh_soon();
}

void UtilitiesPanel::choose(const QString& id) {
  pick(id.toStdString());
  Q_EMIT picked(id);
}

void UtilitiesPanel::edit(const QString& step_name, const std::function<void(Utility&)>& change_it) {
  if (current()) change(step_name, [&](Crossing& c) { change_it(*find_by_id(c.site.utilities, picked_)); });
}

void UtilitiesPanel::edit_search(const QString& step_name, const std::function<void(UtilitySearch&)>& change_it) {
  change(step_name, [&](Crossing& c) { change_it(c.site.utility_search); });
}

void UtilitiesPanel::add() {
  const Utility utility = new_utility(document_.crossing(), tr("new utility").toStdString());
  change(tr("Add a utility"), [&](Crossing& c) { c.site.utilities.push_back(utility); });
  choose(text_from(utility.id));
}

void UtilitiesPanel::duplicate() {
  const Utility* utility = current();
  if (!utility) return;
  Utility copy = *utility;
  copy.id = free_id(document_.crossing(), "u");
  copy.name = tr("%1 (copy)").arg(text_from(copy.name)).toStdString();
  const bool room = std::all_of(copy.path.begin(), copy.path.end(),
                                [](const PathVertex& p) { return p.x_m + beside_m <= farthest_m; });
  for (PathVertex& p : copy.path) p.x_m += room ? beside_m : -beside_m;
  change(tr("Duplicate %1").arg(text_from(utility->name)), [&](Crossing& c) { c.site.utilities.push_back(copy); });
  choose(text_from(copy.id));
}

void UtilitiesPanel::remove() {
  if (!current()) return;
  const QString name = text_from(part_name(document_.crossing(), part()));
  change(tr("Remove %1").arg(name), [gone = part()](Crossing& c) { c.site = site_without(c, {gone}); });
}

Card UtilitiesPanel::row_of_utility(const Utility& utility) const {
  const UtilityKindRow& kind = burrow::row_of(document_.tables(), utility.kind);
  Card card;
  card.id = utility.id;
  const QString name = utility.name.empty() ? text_from(utility.id) : text_from(utility.name);
  card.title = tr("%1, %2").arg(name, text_from(kind.name));
  card.badge = text_from(kind.letter_code);
  card.badge_colour = QColor(text_from(theme_.dark ? kind.colour_dark : kind.colour));
  const UtilityAnswer* answer = answer_of(utility.id);
  if (!answer || !answer->separation_m) {
    card.facts = tr("clear gap not known");
  } else {
    QStringList facts{tr("%1 clear").arg(text_of(*answer->separation_m, Dimension::length))};
    if (answer->required_m) facts << tr("%1 required").arg(text_of(*answer->required_m, Dimension::length));
    if (answer->contact_chance_worst) facts << tr("%1 to touch").arg(chance_text(*answer->contact_chance_worst));
    card.facts = facts.join(QStringLiteral(" · "));
  }
  if (answer && answer->expose_rank) card.tag = tr("expose %1").arg(static_cast<int>(*answer->expose_rank));
  return card;
}

void UtilitiesPanel::list_utilities() {
  const auto& all = document_.crossing().site.utilities;
  std::vector<std::pair<double, const Utility*>> order;
  order.reserve(all.size());
  for (const Utility& utility : all) order.emplace_back(order_of(answer_of(utility.id)), &utility);
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
  if (!current()) {
    picked_ = order.empty() ? std::string() : order.front().second->id;
    hole_.clear();
    point_forms();
  }
  std::vector<Card> cards;
  cards.reserve(order.size());
  for (const auto& [margin, utility] : order) cards.push_back(row_of_utility(*utility));
  list_->show_cards(std::move(cards), picked_);
  add_->setEnabled(!locked());
  duplicate_->setEnabled(!locked() && current());
  remove_->setEnabled(!locked() && current());
}

void UtilitiesPanel::show_whole_bore() {
  const Assessment& assessment = document_.assessment();
  QStringList shown_text;
  if (!assessment.utilities.empty())
    shown_text << (assessment.contact_chance_any
                       ? tr("Touching any of them: %1.").arg(chance_text(*assessment.contact_chance_any))
                       : tr("Touching any of them: not known, one of them has no chance."));
  if (assessment.chance_unknown_service && *assessment.chance_unknown_service > 0)
    shown_text << tr("Meeting one that nobody drew: %1.").arg(chance_text(*assessment.chance_unknown_service));
  else
    shown_text << tr("What nobody drew is not counted: no rate is entered.");
  whole_bore_->setText(shown_text.join(QLatin1Char(' ')));
}

void UtilitiesPanel::refresh() {
  list_utilities();
  show_whole_bore();
  const Utility* utility = current();
  for (QWidget* widget : of_utility_) widget->setVisible(utility != nullptr);
  if (utility) {
    heading_->setText(utility->name.empty() ? text_from(utility->id) : text_from(utility->name));
    for (TextForm* form : {names_, date_, precaution_}) form->catch_up();
    for (EntryForm* form : {size_, level_, location_, gap_}) form->catch_up();
    show_place();
    show_located();
    show_ends();
    show_answer();
    show_trench();
    show_holes();
  }
  show_open_ends();
  show_search();
  show_background();
}

QString UtilitiesPanel::visible_text() const {
  return plain(whole_bore_) + plain(level_text_) + plain(located_text_) + plain(preset_text_) + plain(answer_) +
         plain(trench_text_) + plain(hole_text_) + plain(search_state_);
}

}  // namespace burrow
