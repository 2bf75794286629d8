/// Lines that are drawn only: of each, or of all at once, somebody says that it is no service.

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

#include "burrow/crossing/statement.h"
#include "burrow/document/answers_at_once.h"
#include "burrow/panels/at_once_form.h"
#include "burrow/panels/card_list.h"
#include "burrow/panels/utilities_panel.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
constexpr std::size_t most_lines = 3;
}  // namespace

void UtilitiesPanel::make_background() {
  add_gap();
  add_heading(tr("Lines that are drawn only"));
  background_text_ = add_text(tr("What the lines drawn only are"));
  background_ = add_list(tr("Lines that are drawn only"), most_lines);
  background_texts_ = add_texts([] { return ItemRef{ItemKind::site, {}, -1}; });
  const QString how = tr("it is no service: how that is known"), hint = tr("As: kerbs and walls of the survey");
  add_statement(*background_texts_, document_, {how, hint, tr("said by"), tr("said on")}, [this](auto& c) {
    auto* line = find_by_id(c.site.background, line_);
    return line ? &line->not_a_service : nullptr;
  });
  const auto buttons = add_buttons({tr("It is a service: make it a utility"), tr("None of these is a service…")});
  make_service_ = buttons[0];
  background_button_ = buttons[1];
  connect(make_service_, &QPushButton::clicked, this, [this] {
    change(tr("Make a line drawn only a utility"), [line = line_](Crossing& c) { c.site = with_service(c, line); });
  });
  background_form_ = new AtOnceForm(document_, tr("None is a service"), this);
  add_widget(background_form_);
  QLineEdit* all_how = background_form_->add_text(tr("how that is known"), TextKind::words, hint);
  QLineEdit* by = background_form_->add_text(tr("who says so"), TextKind::name);
  QLineEdit* date = background_form_->add_text(tr("on which day"), TextKind::day);
  connect(background_, &CardList::chosen, this, [this](const QString& id) {
    line_ = id.toStdString();
    background_texts_->drop_typing();
    show_background();
    order_tabs();
  });
  connect(background_button_, &QPushButton::clicked, background_form_, &AtOnceForm::open);
  connect(background_form_, &AtOnceForm::given, this, [=, this] {
    const Statement shown_text{all_how->text().trimmed().toStdString(),
                               by->text().trimmed().toStdString(),
                               date->text().trimmed().toStdString(),
                               {}};
    const std::optional<Date>& on = document_.tables().judged_on;
    if (!declared(shown_text, on)) {
      background_form_->complain(tr("Not taken: it counts only with a name and a day up to today."));
      return;
    }
    change(tr("Declare: no line drawn only is a service"),
           [&](Crossing& c) { c.site = with_no_services(c, shown_text, on); });
    background_form_->close_form();
  });
}

void UtilitiesPanel::show_background() {
  const std::vector<Background>& all = document_.crossing().site.background;
  const std::optional<Date>& on = document_.tables().judged_on;
  if (!find_by_id(all, line_)) {
    line_ = all.empty() ? std::string() : all.front().id;
    background_texts_->drop_typing();
  }
  std::vector<Card> cards;
  for (const Background& line : all) {
    Card card;
    card.id = line.id;
    card.title = text_from(!line.name.empty() ? line.name : !line.layer.empty() ? line.layer : line.id);
    card.facts = declared(line.not_a_service, on) ? tr("no service, says %1").arg(text_from(line.not_a_service.by))
                                                  : tr("nobody said that it is no service");
    cards.push_back(std::move(card));
  }
  const std::size_t open = open_background(document_.crossing(), on).size();
  background_text_->setText(all.empty() ? tr("None.")
                            : open == 0 ? tr("Of each somebody says that it is no service.")
                                        : tr("Of %1 nobody said that it is no service.").arg(open));
  background_->show_cards(std::move(cards), line_);
  background_texts_->catch_up();
  for (QWidget* widget : {static_cast<QWidget*>(background_), static_cast<QWidget*>(background_texts_)})
    widget->setVisible(!all.empty());
  background_button_->parentWidget()->setVisible(!all.empty());
  make_service_->setEnabled(!locked());
  background_button_->setEnabled(!locked() && open > 0);
  background_form_->set_locked(locked());
  if (open == 0) background_form_->close_form();
}

}  // namespace burrow
