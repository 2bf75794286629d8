#include "burrow/panels/corner_form.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/document/surroundings.h"
#include "burrow/document/text.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"

namespace burrow {

namespace {
constexpr std::size_t corner_rows = 4;
const auto no_line = [](auto& c) { return decltype(&c.site.boundaries.front().line)(nullptr); };
}  // namespace

CornerForm::CornerForm(Document& document, std::size_t least, QWidget* parent)
    : QWidget(parent),
      document_(document),
      least_(least),
      line_(no_line),
      list_(new CardList(tr("Corners in plan"), corner_rows, this)),
      values_(new EntryForm(document, tr("default"), this)),
      add_(new QPushButton(tr("Add a corner"), this)),
      remove_(new QPushButton(tr("Remove the corner"), this)) {
  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->addWidget(list_);
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(add_);
  buttons->addWidget(remove_);
  buttons->addStretch(1);
  rows->addLayout(buttons);
  rows->addWidget(values_);
  for (QPushButton* button : {add_, remove_}) button->setAutoDefault(false);
  connect(list_, &CardList::chosen, this, [this](const QString& id) {
    corner_ = static_cast<std::size_t>(std::max(0, id.toInt()));
    point_form();
    catch_up();
  });
  connect(add_, &QPushButton::clicked, this, [this] {
    change_line(tr("Add a corner"), [this](PlanLine& line) { add_corner(line, corner_); });
    ++corner_;
    point_form();
    catch_up();
  });
  connect(remove_, &QPushButton::clicked, this, [this] {
    change_line(tr("Remove the corner"), [this](PlanLine& line) {
      if (corner_ < line.size() && line.size() > least_)
        line.erase(line.begin() + static_cast<std::ptrdiff_t>(corner_));
    });
    if (corner_ > 0) --corner_;
    point_form();
    catch_up();
  });
}

void CornerForm::change_line(const QString& step_name, const std::function<void(PlanLine&)>& change_it) {
  document_.change(step_name, [&](Crossing& c) {
    if (PlanLine* line = line_(c)) change_it(*line);
  });
}

void CornerForm::show_line(const ItemRef& part, const Lens<PlanLine>& line) {
  if (!(part == part_)) corner_ = 0;
  part_ = part;
  line_ = line;
  point_form();
  catch_up();
}

void CornerForm::point_form() {
  ItemRef corner = part_;
  corner.index = static_cast<int>(corner_);
  values_->show_part(corner, [this] { return corner_fields(document_.crossing(), line_, corner_); });
}

void CornerForm::set_units(UnitSystem units) {
  units_ = units;
  values_->set_units(units);
  catch_up();
}

void CornerForm::set_theme(const Theme& theme) {
  values_->set_theme(theme);
  list_->set_theme(theme);
}

void CornerForm::catch_up() {
  const PlanLine* line = line_(document_.crossing());
  setVisible(line != nullptr);
  if (!line) return;
  corner_ = std::min(corner_, line->empty() ? 0 : line->size() - 1);
  std::vector<Card> cards;
  for (std::size_t i = 0; i < line->size(); ++i) {
    Card card;
    card.id = std::to_string(i);
    card.title = tr("corner %1").arg(i + 1);
    card.facts = tr("station %1, offset %2")
                     .arg(text_from(format((*line)[i].x_m, Dimension::station, units_)),
                          text_from(format((*line)[i].y_m, Dimension::station, units_)));
    cards.push_back(std::move(card));
  }
  list_->show_cards(std::move(cards), std::to_string(corner_));
  const bool locked = document_.crossing().version > known_file_version;
  add_->setEnabled(!locked);
  remove_->setEnabled(!locked && line->size() > least_);
  values_->setVisible(!line->empty());
  values_->catch_up();
}

}  // namespace burrow
