#include "burrow/panels/limits_panel.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

#include "burrow/check/limits.h"
#include "burrow/document/limit_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "burrow/words/working_text.h"
#include "statement_fields.h"

namespace burrow {

namespace {
constexpr std::size_t limit_rows = 5;
}

LimitsPanel::LimitsPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Limits of this crossing"));
  summary_ = add_text(tr("How many limits are set here"));
  words_ = new QLineEdit(this);
  words_->setPlaceholderText(tr("Words, as “gas” or “heave”"));
  words_->setClearButtonEnabled(true);
  words_->setAccessibleName(tr("Words that the limit must hold"));
  add_widget(words_);
  set_only_ = new QCheckBox(tr("only those set in this crossing"), this);
  add_widget(set_only_);
  list_ = add_list(tr("Limits"), limit_rows);
  add_gap();
  heading_ = add_heading(QString());
  value_ = add_entries(tr("table"), true);
  reason_ = add_texts([this] { return part(); });
  const auto member = [this](std::string LimitOverride::*of) {
    return [this, of](auto& c) {
      const auto at = c.limits.find(picked_);
      return at == c.limits.end() ? nullptr : &(at->second.*of);
    };
  };
  reason_->add(text_field(document_, tr("why, and by which document"), member(&LimitOverride::why)),
               tr("As: letter of the owner of 2026-03-02"), true);
  reason_->add(text_field(document_, tr("set by"), member(&LimitOverride::by), TextKind::name));
  state_ = add_text(tr("What becomes of it"));
  source_ = add_text(tr("Where the table's value comes from"), true);
  add_end();
  picked_ = document_.tables().limits.front().id;
  point_form();
  connect(list_, &CardList::chosen, this, [this](const QString& id) {
    picked_ = id.toStdString();
    point_form();
    refresh_soon();
  });
  connect(words_, &QLineEdit::textChanged, this, [this] { refresh(); });
  connect(set_only_, &QCheckBox::toggled, this, [this] { refresh(); });
  refresh_now();
}

const LimitRow* LimitsPanel::row() const {
  return find_limit(document_.tables(), picked_);
}

ItemRef LimitsPanel::part() const {
  return {ItemKind::limit, picked_, -1};
}

void LimitsPanel::point_form() {
  value_->show_part(part(), [this]() -> std::vector<Field> {
    const LimitRow* limit = row();
    return limit ? std::vector<Field>{limit_field(document_.crossing(), *limit, units_)} : std::vector<Field>{};
  });
}

void LimitsPanel::set_units(UnitSystem units) {
  FormPanel::set_units(units);
  point_form();
}

void LimitsPanel::pick(const std::string& id) {
  if (!find_limit(document_.tables(), id)) return;
  words_->clear();
  set_only_->setChecked(false);
  picked_ = id;
  point_form();
  refresh_now();
}

bool LimitsPanel::is_set(const LimitRow& row) const {
  return document_.crossing().limits.contains(row.id);
}

/// In the unit in which it is typed.
QString LimitsPanel::number_of(double value, const LimitRow& row) const {
  if (row.unit == "m/s") return text_from(limit_number(value, row.unit, units_));
  return text_of(value, limit_dimension(row));
}

QString LimitsPanel::state_of(const LimitRow& row) const {
  const auto typed = document_.crossing().limits.find(row.id);
  if (typed == document_.crossing().limits.end()) return tr("The table's value counts.");
  switch (judge_typed(row, typed->second)) {
    case TypedLimit::counts:
      return tr("Set here, as strict as the table's or stricter: it counts.");
    case TypedLimit::loosened:
      return tr("Looser than the table's, with a reason: it counts, and is named in the verdict, on sheet and card.");
    case TypedLimit::no_reason:
      return tr(
          "Looser than the table's and without a reason: the table's value goes on counting until a reason is "
          "typed.");
    case TypedLimit::impossible:
      break;
  }
  return tr("Nobody may set this value: it is a stop until it is taken out.");
}

Card LimitsPanel::card_of(const LimitRow& row) const {
  Card card;
  card.id = row.id;
  card.title = text_from(translated_phrase(row.name));
  const Limit now = limit_of(document_.crossing(), document_.tables(), row.id);
  const QString sense = row.at_least ? tr("at least %1") : tr("at most %1");
  card.facts = sense.arg(number_of(now.value, row));
  const auto typed = document_.crossing().limits.find(row.id);
  if (typed == document_.crossing().limits.end()) return card;
  card.facts += QStringLiteral(" · ") + tr("table %1").arg(number_of(row.value, row));
  switch (judge_typed(row, typed->second)) {
    case TypedLimit::counts:
      card.tag = tr("set here");
      break;
    case TypedLimit::loosened:
      card.tag = tr("looser");
      break;
    case TypedLimit::no_reason:
      card.tag = tr("no reason");
      break;
    case TypedLimit::impossible:
      card.tag = tr("not possible");
      break;
  }
  return card;
}

void LimitsPanel::list_cards() {
  const QStringList wanted = words_->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
  std::vector<Card> cards;
  for (const LimitRow& row : document_.tables().limits) {
    if (set_only_->isChecked() && !is_set(row)) continue;
    Card card = card_of(row);
    const bool found = std::all_of(wanted.begin(), wanted.end(), [&](const QString& word) {
      return (card.title + QLatin1Char(' ') + card.tag).contains(word, Qt::CaseInsensitive);
    });
    if (found) cards.push_back(std::move(card));
  }
  list_->show_cards(std::move(cards), picked_);
}

void LimitsPanel::refresh() {
  const std::map<std::string, LimitOverride>& set = document_.crossing().limits;
  const auto looser = std::count_if(set.begin(), set.end(), [this](const auto& entry) {
    const LimitRow* limit = find_limit(document_.tables(), entry.first);
    return limit && judge_typed(*limit, entry.second) != TypedLimit::counts;
  });
  QStringList told;
  told << (set.empty() ? tr("All %n limits are those of the table.", nullptr,
                            static_cast<int>(document_.tables().limits.size()))
                       : tr("%n limits are set here.", nullptr, static_cast<int>(set.size())));
  if (looser > 0) told << tr("%n are looser than the table's.", nullptr, static_cast<int>(looser));
  // Those typed on a road or track, on its own page.
  for (const LoosenedLimit& typed : document_.assessment().loosened)
    if (!typed.subject.empty())
      told << tr("On its own page: %1 %2 instead of %3.")
                  .arg(text_from(translated_phrase(typed.name)),
                       text_from(limit_number(typed.value, typed.unit, units_)),
                       text_from(limit_number(typed.table_value, typed.unit, units_)));
  summary_->setText(told.join(QLatin1Char(' ')));
  list_cards();
  const LimitRow* limit = row();
  if (!limit) return;
  heading_->setText(text_from(translated_phrase(limit->name)));
  value_->catch_up();
  reason_->setVisible(is_set(*limit));
  reason_->catch_up();
  state_->setText(state_of(*limit));
  source_->setText(tr("The table has %1: %2 [%3]")
                       .arg(number_of(limit->value, *limit), text_from(translated_phrase(limit->source.text)),
                            text_from(burrow::label_text(limit->source.label))));
}

QString LimitsPanel::visible_text() const {
  return plain(summary_) + plain(heading_) + plain(state_) + plain(source_);
}

}  // namespace burrow
