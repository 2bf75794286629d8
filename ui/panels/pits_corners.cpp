/// A floor that is no rectangle, by its corners.

#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "burrow/crossing/floor_outline.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/pits_panel.h"

namespace burrow {

namespace {
constexpr std::size_t most_corners_seen = 6;
}  // namespace

void PitsPanel::make_corners() {
  corners_text_ = add_text(tr("How the outline of the floor is entered"), true);
  const auto shape_buttons = add_buttons({tr("Give it corners"), tr("Back to a rectangle")});
  shape_it_ = shape_buttons[0];
  rectangle_ = shape_buttons[1];
  shape_it_->setToolTip(tr("Any outline instead of a rectangle: begins with the rectangle's corners"));
  rectangle_->setToolTip(tr("Length and width count again; the corners go"));
  corners_ = add_list(tr("Corners of the floor"), most_corners_seen);
  const auto buttons = add_buttons({tr("Add a corner"), tr("Remove this corner")});
  add_corner_ = buttons[0];
  remove_corner_ = buttons[1];
  add_corner_->setToolTip(tr("Half way to the next corner; then drag it in the plan, or type where it lies"));
  corner_values_ = add_entries(QString(), true);
  connect(shape_it_, &QPushButton::clicked, this,
          [this] { set_outline(tr("Give the floor corners"), outline_of_rectangle(shape())); });
  connect(rectangle_, &QPushButton::clicked, this, [this] { set_outline(tr("Make the floor a rectangle"), {}); });
  connect(add_corner_, &QPushButton::clicked, this, [this] {
    const PlanLine& now = pit().floor_outline;
    if (corner_ >= now.size()) return;
    PlanLine more = with_corner_after(now, corner_);
    if (fault_of_floor(more)) return;
    ++corner_;
    set_outline(tr("Add a corner of the floor"), std::move(more));
  });
  connect(remove_corner_, &QPushButton::clicked, this, [this] {
    const PlanLine& now = pit().floor_outline;
    if (corner_ >= now.size()) return;
    PlanLine fewer = without_corner(now, corner_);
    if (!fault_of_floor(fewer)) set_outline(tr("Remove a corner of the floor"), std::move(fewer));
  });
  connect(corners_, &CardList::chosen, this, [this](const QString& id) {
    corner_ = static_cast<std::size_t>(id.toInt());
    point_forms();
    show_corners();
    order_tabs();
  });
}

void PitsPanel::set_outline(const QString& step_name, PlanLine outline) {
  if (locked()) return;
  edit(step_name, [&](Pit& p) { p.floor_outline = std::move(outline); });
  point_forms();
  refresh_now();
  order_tabs();
}

void PitsPanel::show_corners() {
  const PlanLine& outline = pit().floor_outline;
  const bool any = !outline.empty();
  corner_ = std::min(corner_, any ? outline.size() - 1 : 0);
  corners_text_->setText(
      any ? tr("Corners of the floor, each from the face into the pit, and left (+) or right (−) of its middle. Drag "
               "them in the plan while the pit is selected. Each edge has the side it looks to most.")
          : tr("The floor is a rectangle."));
  std::vector<Card> cards;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    Card card;
    card.id = std::to_string(i);
    card.title = tr("corner %1").arg(i + 1);
    card.facts = tr("%1 from the face, %2 left")
                     .arg(text_of(outline[i].x_m, Dimension::length), text_of(outline[i].y_m, Dimension::station));
    cards.push_back(std::move(card));
  }
  corner_values_->catch_up();
  corners_->show_cards(std::move(cards), std::to_string(corner_));
  for (QWidget* widget : {static_cast<QWidget*>(corners_), static_cast<QWidget*>(corner_values_),
                          static_cast<QWidget*>(add_corner_), static_cast<QWidget*>(remove_corner_)})
    widget->setVisible(any);
  shape_it_->setVisible(!any);
  rectangle_->setVisible(any);
  const bool free = !locked();
  shape_it_->setEnabled(free && shape().floor_length_m > 0);
  rectangle_->setEnabled(free);
  add_corner_->setEnabled(free && any && !fault_of_floor(with_corner_after(outline, corner_)));
  remove_corner_->setEnabled(free && any && !fault_of_floor(without_corner(outline, corner_)));
}

}  // namespace burrow
