#include "burrow/panels/air_panel.h"

#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "burrow/language/say.h"
#include "burrow/panels/air_view.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
constexpr std::size_t most_rows = 5;  ///< of the list; more are scrolled to
constexpr std::size_t most_parts = 100;

int part_of_id(const QString& id) {
  bool is_number = false;
  const int part = id.toInt(&is_number);
  return is_number ? part : -1;
}
}  // namespace

AirPanel::AirPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Pressure at the tool"));
  pressure_ = add_text(tr("Pressure at the tool, and what holds it"));
  view_ = new AirView(this);
  add_widget(view_);
  add_gap();
  add_heading(tr("What to change, the most telling first"));
  changes_ = add_text(tr("What to change"));
  add_gap();
  add_heading(tr("Compressor"));
  compressor_ = add_entries(tr("not entered"), true);
  compressor_->show_part(air_part, [this] { return compressor_fields(document_.crossing()); });
  name_ = add_texts([] { return air_part; });
  name_->add(text_field(document_, tr("name"), [](auto& c) { return &c.air.compressor.name; }),
             tr("Name of the compressor"));
  add_gap();
  add_heading(tr("Air drawn in"));
  site_ = add_entries(tr("default"), true);
  site_->show_part(air_part, [this] { return site_air_fields(document_.crossing()); });
  make_line();
  add_gap();
  add_heading(tr("Oil and water"));
  oil_text_ = add_text(tr("Oil for this bore, and water in the line"));
  oil_ = add_entries(tr("default"), true);
  oil_->show_part(air_part, [this] { return oil_fields(document_.crossing(), document_.assessment().air); });
  add_gap();
  add_heading(tr("Marks on the hose"));
  marks_ = add_entries(tr("default"), true);
  marks_->show_part(air_part, [this] { return hose_mark_fields(document_.crossing()); });
  add_end();
  connect(&document_, &Document::replaced, this, [this] { pick(-1); });
  pick(document_.crossing().air.line.empty() ? -1 : 0);
  refresh_now();
}

void AirPanel::make_line() {
  add_gap();
  add_heading(tr("Parts of the line, from the compressor to the tool"));
  list_ = add_list(tr("Parts of the air line"), most_rows);
  buttons_ = add_buttons({tr("Hose"), tr("Coupling"), tr("Lubricator")});
  for (QPushButton* more : add_buttons({tr("Up"), tr("Down"), tr("Remove")})) buttons_.push_back(more);
  buttons_[0]->setToolTip(tr("A hose behind the selected part"));
  buttons_[1]->setToolTip(tr("A coupling behind the selected part"));
  buttons_[2]->setToolTip(tr("A lubricator behind the selected part"));
  for (std::size_t i = 0; i < 3; ++i) buttons_[i]->setAccessibleName(tr("Add: %1").arg(buttons_[i]->text()));
  for (std::size_t i = 0; i < 3; ++i) buttons_[i]->setText(QStringLiteral("+ ") + buttons_[i]->text());
  buttons_[3]->setToolTip(tr("Moves the selected part toward the compressor"));
  buttons_[4]->setToolTip(tr("Moves the selected part toward the tool"));
  buttons_[5]->setToolTip(tr("Takes out the selected part; Undo brings it back"));
  part_heading_ = add_text(tr("The selected part"));
  part_ = add_entries(tr("default"), true);
  connect(list_, &CardList::chosen, this, [this](const QString& id) { pick(part_of_id(id)); });
  connect(buttons_[0], &QPushButton::clicked, this, [this] { add(AirPartKind::hose); });
  connect(buttons_[1], &QPushButton::clicked, this, [this] { add(AirPartKind::coupling); });
  connect(buttons_[2], &QPushButton::clicked, this, [this] { add(AirPartKind::lubricator); });
  connect(buttons_[3], &QPushButton::clicked, this, [this] { move(-1); });
  connect(buttons_[4], &QPushButton::clicked, this, [this] { move(1); });
  connect(buttons_[5], &QPushButton::clicked, this, &AirPanel::remove);
}

void AirPanel::pick(int part) {
  const int count = static_cast<int>(document_.crossing().air.line.size());
  part = std::clamp(part, -1, count - 1);
  const bool other = part != picked_;
  picked_ = part;
  if (other || part_->count() == 0) point_part();
  if (other) refresh_soon();
}

void AirPanel::point_part() {
  part_->show_part(air_part, [this] {
    return picked_ < 0 ? std::vector<Field>()
                       : air_part_fields(document_.crossing(), static_cast<std::size_t>(picked_));
  });
}

void AirPanel::edit(const QString& step_name, const std::function<void(Air&)>& change_it) {
  change(step_name, [&](Crossing& c) { change_it(c.air); });
}

void AirPanel::add(AirPartKind kind) {
  const std::size_t count = document_.crossing().air.line.size();
  if (count >= most_parts) return;
  const std::size_t at = picked_ < 0 ? count : static_cast<std::size_t>(picked_) + 1;
  edit(tr("Add a %1").arg(text_from(translated_word(kind))),
       [&](Air& air) { air.line.insert(air.line.begin() + static_cast<std::ptrdiff_t>(at), new_air_part(air, kind)); });
  if (document_.crossing().air.line.size() > count) pick(static_cast<int>(at));
}

void AirPanel::move(int by) {
  const int to = picked_ + by;
  if (picked_ < 0 || to < 0 || to >= static_cast<int>(document_.crossing().air.line.size())) return;
  const auto from = static_cast<std::size_t>(picked_), other = static_cast<std::size_t>(to);
  const Air before = document_.crossing().air;
  edit(tr("Move a part of the air line"), [&](Air& air) { std::swap(air.line[from], air.line[other]); });
  if (!(document_.crossing().air == before)) pick(to);
}

void AirPanel::remove() {
  if (picked_ < 0) return;
  const auto at = static_cast<std::size_t>(picked_);
  if (at >= document_.crossing().air.line.size()) return;
  const QString name = text_from(translated_word(document_.crossing().air.line[at].kind));
  edit(tr("Remove a %1").arg(name),
       [&](Air& air) { air.line.erase(air.line.begin() + static_cast<std::ptrdiff_t>(at)); });
  const int count = static_cast<int>(document_.crossing().air.line.size());
  pick(std::min(picked_, count - 1));
  point_part();
  refresh_soon();
}

void AirPanel::show_line() {
  const std::vector<AirPart>& line = document_.crossing().air.line;
  if (picked_ >= static_cast<int>(line.size())) pick(static_cast<int>(line.size()) - 1);
  std::vector<Card> cards;
  for (std::size_t i = 0; i < line.size(); ++i) cards.push_back(card(i));
  list_->show_cards(std::move(cards), picked_ < 0 ? std::string() : std::to_string(picked_));
  for (std::size_t i = 0; i < 3; ++i) buttons_[i]->setEnabled(!locked() && line.size() < most_parts);
  buttons_[3]->setEnabled(!locked() && picked_ > 0);
  buttons_[4]->setEnabled(!locked() && picked_ >= 0 && picked_ + 1 < static_cast<int>(line.size()));
  buttons_[5]->setEnabled(!locked() && picked_ >= 0);
  part_heading_->setVisible(picked_ >= 0 || line.empty());
  part_heading_->setText(picked_ >= 0 ? part_words(line[static_cast<std::size_t>(picked_)])
                                      : tr("No part is entered: begin with the hose at the compressor."));
  part_->setVisible(picked_ >= 0);
}

void AirPanel::refresh() {
  show_line();
  for (EntryForm* form : {compressor_, site_, part_, oil_, marks_}) form->catch_up();
  name_->catch_up();
  pressure_->setText(pressure_words());
  show_bars();
  changes_->setText(change_words());
  oil_text_->setText(oil_words());
}

QString AirPanel::visible_text() const {
  return plain(pressure_) + plain(changes_) + plain(oil_text_);
}

}  // namespace burrow
