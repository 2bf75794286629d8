/// Why the lines end where they end, of one and of all at once; out of use; who measured a hole.

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <algorithm>

#include "burrow/document/answers_at_once.h"
#include "burrow/panels/at_once_form.h"
#include "burrow/panels/utilities_panel.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
QStringList end_words() {
  return labels_of<LineEnd>({{LineEnd::house_connection, UtilitiesPanel::tr("house connection")},
                             {LineEnd::cap, UtilitiesPanel::tr("cap")},
                             {LineEnd::pole, UtilitiesPanel::tr("pole")},
                             {LineEnd::pit, UtilitiesPanel::tr("pit")},
                             {LineEnd::chamber, UtilitiesPanel::tr("chamber")},
                             {LineEnd::edge_of_record, UtilitiesPanel::tr("record ends there")}});
}

QString display_name(const Utility& utility) {
  return text_from(utility.name.empty() ? utility.id : utility.name);
}
}  // namespace

void UtilitiesPanel::make_ends() {
  add_gap();
  add_heading(tr("Why the line ends"));
  const QStringList words = QStringList{tr("not said")} + end_words();
  const auto end = [&](const QString& label, std::optional<LineEnd> LineEnds::*member) {
    add_choice(
        label, words, [this, member] { return current() ? row_of_word(current()->ends.*member) : -1; },
        [this, label, words, member](int row) {
          edit(tr("Choose %1: %2").arg(label, words[row]),
               [&](Utility& utility) { utility.ends.*member = word_or_none_at<LineEnd>(row); });
        },
        true);
  };
  end(tr("its first end"), &LineEnds::first);
  end(tr("its last end"), &LineEnds::last);
  ends_text_ = add_text(tr("Which end is which"), true);
}

void UtilitiesPanel::make_ends_at_once() {
  ends_button_ = add_buttons({tr("Declare all open ends…")}).front();
  ends_form_ = new AtOnceForm(document_, tr("Declare all of them"), this);
  add_widget(ends_form_);
  QComboBox* meaning = ends_form_->add_choice(tr("they end here with a"), end_words());
  connect(ends_button_, &QPushButton::clicked, this, [this, meaning] {
    meaning->setCurrentIndex(-1);  // nothing is said before somebody says it
    ends_form_->open();
  });
  connect(ends_form_, &AtOnceForm::given, this, [this, meaning] {
    if (meaning->currentIndex() < 0) {
      ends_form_->complain(tr("Choose first why they end there."));
      return;
    }
    const std::vector<OpenEnd> open = open_ends(document_.crossing(), document_.assessment().findings);
    change(tr("Declare all open ends: %1").arg(meaning->currentText()),
           [&](Crossing& c) { c.site = with_ends(c, open, word_at<LineEnd>(meaning->currentIndex())); });
    ends_form_->close_form();
  });
}

void UtilitiesPanel::show_open_ends() {
  const std::vector<OpenEnd> open = open_ends(document_.crossing(), document_.assessment().findings);
  QStringList names;
  for (const OpenEnd& end : open)
    if (const Utility* utility = find_by_id(document_.crossing().site.utilities, end.utility))
      names << tr("%1, %2").arg(display_name(*utility), end.first ? tr("first end") : tr("last end"));
  ends_form_->set_title(tr("Near the bore nobody said why these end: %1.").arg(names.join(QStringLiteral("; "))));
  ends_form_->set_locked(locked());
  ends_button_->setText(tr("Declare all open ends (%1)…").arg(open.size()));
  ends_button_->setEnabled(!locked() && !open.empty());
  ends_button_->parentWidget()->setVisible(!open.empty());
  if (open.empty()) ends_form_->close_form();
}

void UtilitiesPanel::show_ends() {
  const std::vector<PathVertex>& path = current()->path;
  ends_text_->setVisible(!path.empty());
  if (path.empty()) return;
  const auto place = [this](const PathVertex& at) {
    return tr("station %1, offset %2").arg(text_of(at.x_m, Dimension::station), text_of(at.y_m, Dimension::station));
  };
  ends_text_->setText(tr("First: %1. Last: %2.").arg(place(path.front()), place(path.back())));
  abandonment_->catch_up();
  const Statement& proof = current()->abandonment;
  const bool asked = *current()->status == UtilityStatus::abandoned || !proof.how.empty() || !proof.by.empty() ||
                     proof.date.has_value();
  abandonment_->setVisible(asked);
}

void UtilitiesPanel::make_abandonment() {
  abandonment_ = add_texts([this] { return part(); });
  add_statement(*abandonment_, document_,
                {tr("how it was proved to be out of use"), tr("As: cut and capped, seen; letter of its owner"),
                 tr("proved by"), tr("proved on")},
                in_utility([](auto& u) { return &u.abandonment; }));
}

void UtilitiesPanel::make_hole_texts() {
  const auto hole = [this](auto& c) { return find_by_id(c.site.test_holes, hole_); };
  hole_texts_ = add_texts([this] { return ItemRef{ItemKind::test_holes, hole_, -1}; });
  hole_texts_->add(text_field(
      document_, tr("measured by"), [hole](auto& c) { return hole(c) ? &hole(c)->by : nullptr; }, TextKind::name));
  hole_texts_->add(
      day_field(document_, tr("measured on"), [hole](auto& c) { return hole(c) ? &hole(c)->date : nullptr; }));
  add_statement(*hole_texts_, document_,
                {tr("where it contradicts the record: why the hole counts"),
                 tr("As: the record shows the old line; seen with its owner"), tr("agreed by"), tr("agreed on")},
                [hole](auto& c) { return hole(c) ? &hole(c)->agreed : nullptr; });
}

void UtilitiesPanel::take_lone_hole() {
  const std::vector<std::string> lone = lone_holes(document_.crossing());
  if (lone.empty() || !current()) return;
  hole_ = lone.front();
  change(tr("Give a test hole to %1").arg(display_name(*current())),
         [&](Crossing& c) { find_by_id(c.site.test_holes, lone.front())->utility = picked_; });
}

void UtilitiesPanel::show_lone_holes() {
  const std::vector<std::string> lone = lone_holes(document_.crossing());
  const TestHole* hole = lone.empty() ? nullptr : find_by_id(document_.crossing().site.test_holes, lone.front());
  lone_hole_->parentWidget()->setVisible(hole != nullptr);
  lone_hole_->setEnabled(hole && !locked());
  if (hole)
    lone_hole_->setText(tr("The hole at station %1 is of this one").arg(text_of(hole->station.m, Dimension::station)));
}

}  // namespace burrow
