/// The answers of the utility search: one by one, or what stands on one paper at once; and of the camera.

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "burrow/panels/at_once_form.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/utilities_panel.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
const ItemRef search_part{ItemKind::utility_search, {}, -1};

QStringList marks_words() {
  return {UtilitiesPanel::tr("not answered"), UtilitiesPanel::tr("can be seen"), UtilitiesPanel::tr("cannot be seen")};
}

std::optional<bool> yes_or_no_at(int row) {
  return row > 0 ? std::optional<bool>(row == 1) : std::nullopt;
}
}  // namespace

void UtilitiesPanel::make_search() {
  add_gap();
  search_heading_ = add_heading(tr("Utility search of the site"));
  const auto search = [this]() -> const UtilitySearch& { return document_.crossing().site.utility_search; };
  add_choice(
      tr("asked for and searched"), {tr("not answered"), tr("yes"), tr("no")},
      [search] { return search().done ? (*search().done ? 1 : 2) : 0; },
      [this](int row) {
        edit_search(tr("Answer: utility search"), [&](UtilitySearch& s) {
          s.done = row == 0 ? std::optional<bool>() : std::optional<bool>(row == 1);
        });
      });
  add_choice(
      tr("and found"), {tr("not answered"), tr("nothing there"), tr("what is entered")},
      [search] { return search().none_found.entered ? (*search().none_found ? 1 : 2) : 0; },
      [this](int row) {
        edit_search(tr("Answer: what the search found"), [&](UtilitySearch& s) {
          s.none_found = UtilitySearch{}.none_found;
          if (row > 0) s.none_found.set(row == 1);
        });
      });
  add_choice(
      tr("house connections"),
      labels_of<Laterals>({{Laterals::entered, tr("entered")},
                           {Laterals::none_here, tr("none here")},
                           {Laterals::not_checked, tr("not checked")}},
                          tr("not answered")),
      [search] { return row_of_word(search().laterals); },
      [this](int row) {
        edit_search(tr("Answer: house connections"),
                    [&](UtilitySearch& s) { s.laterals = word_or_none_at<Laterals>(row); });
      });
  search_texts_ = add_texts([] { return search_part; });
  search_texts_->add(text_field(document_, tr("reference"), [](auto& c) { return &c.site.utility_search.reference; }),
                     tr("Number of the enquiry or ticket"));
  const auto day = [&](const QString& label, std::optional<std::string> UtilitySearch::*member) {
    search_texts_->add(day_field(document_, label, [member](auto& c) { return &(c.site.utility_search.*member); }),
                       tr("As 2026-03-14"));
  };
  day(tr("date of the search"), &UtilitySearch::date);
  day(tr("valid from"), &UtilitySearch::valid_from);
  day(tr("valid to"), &UtilitySearch::valid_to);
  add_choice(
      tr("marks on the ground"), marks_words(),
      [search] { return search().marks_visible ? (*search().marks_visible ? 1 : 2) : 0; },
      [this](int row) {
        edit_search(tr("Answer: marks on the ground"), [&](UtilitySearch& s) { s.marks_visible = yes_or_no_at(row); });
      });
  make_search_at_once();
  rate_ = add_entries(tr("default"), true);
  make_camera();
  make_head_located();
  rate_->show_part(search_part, [this] { return search_fields(document_.crossing()); });
}

void UtilitiesPanel::make_head_located() {
  add_gap();
  add_heading(tr("The head while it runs"));
  head_located_ = add_texts([] { return ItemRef{ItemKind::head_located, {}, -1}; });
  add_statement(*head_located_, document_,
                {tr("how it is located all the while"), tr("As: transmitter in the head, receiver above it"),
                 tr("located by"), tr("stated on")},
                [](auto& c) { return &c.bore.head_located; });
}

void UtilitiesPanel::make_search_at_once() {
  search_button_ = add_buttons({tr("Answer these at once…")}).front();
  search_form_ = new AtOnceForm(document_, tr("Enter the answers"), this);
  add_widget(search_form_);
  search_form_->set_title(tr("As the answer of the locating service says:"));
  QLineEdit* reference = search_form_->add_text(tr("reference of the answer"), TextKind::words);
  QLineEdit* date = search_form_->add_text(tr("date of the answer"), TextKind::day);
  QLineEdit* from = search_form_->add_text(tr("it is valid from"), TextKind::day);
  QLineEdit* to = search_form_->add_text(tr("it is valid to"), TextKind::day);
  QComboBox* marks = search_form_->add_choice(tr("the marks can"), marks_words());
  connect(search_button_, &QPushButton::clicked, this, [=, this] {
    const UtilitySearch& now = document_.crossing().site.utility_search;
    reference->setText(text_from(now.reference));
    date->setText(text_from(now.date.value_or(std::string())));
    from->setText(text_from(now.valid_from.value_or(std::string())));
    to->setText(text_from(now.valid_to.value_or(std::string())));
    marks->setCurrentIndex(now.marks_visible ? (*now.marks_visible ? 1 : 2) : 0);
    search_form_->open();
  });
  connect(search_form_, &AtOnceForm::given, this, [=, this] {
    const auto some = [](const QLineEdit* entry) {
      const std::string text = entry->text().trimmed().toStdString();
      return text.empty() ? std::optional<std::string>() : text;
    };
    edit_search(tr("Answer the search at once"), [&](UtilitySearch& s) {
      s.reference = some(reference).value_or(std::string());
      s.date = some(date);
      s.valid_from = some(from);
      s.valid_to = some(to);
      s.marks_visible = yes_or_no_at(marks->currentIndex());
    });
    search_form_->close_form();
  });
}

void UtilitiesPanel::make_camera() {
  add_gap();
  add_heading(tr("Sewers and drains seen by camera"));
  const auto survey = [this](const QString& when, const QString& report, const QString& date,
                             CameraSurvey UtilitySearch::*member) {
    add_choice(
        when,
        labels_of<CameraResult>(
            {{CameraResult::nothing_found, tr("all clear")}, {CameraResult::something_found, tr("not clear")}},
            tr("not answered")),
        [this, member] { return row_of_word((document_.crossing().site.utility_search.*member).result); },
        [this, when, member](int row) {
          edit_search(tr("Answer: camera %1").arg(when),
                      [&](UtilitySearch& s) { (s.*member).result = word_or_none_at<CameraResult>(row); });
        });
    TextForm* texts = add_texts([] { return search_part; });
    texts->add(text_field(document_, report, [member](auto& c) { return &(c.site.utility_search.*member).reference; }),
               tr("Film, report or who looked"));
    texts->add(day_field(document_, date, [member](auto& c) { return &(c.site.utility_search.*member).date; }),
               tr("As 2026-03-14"));
    return texts;
  };
  camera_texts_ = {survey(tr("before the bore"), tr("report before"), tr("date before"), &UtilitySearch::camera_before),
                   survey(tr("after the bore"), tr("report after"), tr("date after"), &UtilitySearch::camera_after)};
}

void UtilitiesPanel::show_search() {
  search_texts_->catch_up();
  for (TextForm* texts : camera_texts_) texts->catch_up();
  head_located_->catch_up();
  search_button_->setEnabled(!locked());
  search_form_->set_locked(locked());
  rate_->catch_up();
  const UtilitySearch& search = document_.crossing().site.utility_search;
  const bool nothing_told = document_.crossing().site.utilities.empty() && !*search.none_found;
  const QString state = !search.done                       ? tr("not answered")
                        : !*search.done                    ? tr("not done")
                        : nothing_told || !search.laterals ? tr("done, what it found is not answered")
                                                           : tr("done");
  search_state_->setText(
      tr("Utility search: %1").arg(state) +
      QStringLiteral(" <a href=\"search\" style=\"color:%1\">%2</a>").arg(theme_.focus.name(), tr("answer below")));
}

}  // namespace burrow
