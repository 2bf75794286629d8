#include "burrow/panels/sheet_panel.h"

#include <QComboBox>
#include <QKeyEvent>
#include <QLabel>
#include <QPlainTextEdit>

#include "burrow/document/sheet_fields.h"
#include "burrow/document/text.h"
#include "burrow/panels/entry_form.h"
#include "burrow/panels/text_form.h"
#include "choice_words.h"
#include "statement_fields.h"

namespace burrow {

namespace {
const ItemRef sheet_part{ItemKind::sheet, {}, -1};
constexpr int note_lines = 5;
}  // namespace

QStringList offered_papers() {
  return {QStringLiteral("a4"),     QStringLiteral("a3"),      QStringLiteral("a2"),
          QStringLiteral("letter"), QStringLiteral("tabloid"), QStringLiteral("ansi-d")};
}

SheetPanel::SheetPanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  make_texts();
  make_paper();
  connect(&document_, &Document::replaced, notes_, [this] { notes_->document()->setModified(false); });
  hint_ = add_text(tr("What is left empty"), true);
  hint_->setText(
      tr("An empty scale takes the largest of the usual series that fits. What else is left empty stays empty on the "
         "paper; the card and the calculation take the same entries."));
  add_end();
  refresh_now();
}

void SheetPanel::make_texts() {
  add_heading(tr("The crossing"));
  texts_ = add_texts([] { return sheet_part; });
  texts_->add(text_field(document_, tr("name of the crossing"), [](auto& c) { return &c.name; }), {}, true);
  texts_->add(text_field(document_, tr("number of the sheet"), [](auto& c) { return &c.sheet.number; }));
  texts_->add(text_field(document_, tr("revision"), [](auto& c) { return &c.sheet.revision; }), tr("As: B, permit"));
  texts_->add(text_field(
      document_, tr("drawn by"), [](auto& c) { return &c.sheet.drawn_by; }, TextKind::name));
  texts_->add(text_field(
      document_, tr("checked by"), [](auto& c) { return &c.sheet.checked_by; }, TextKind::name));
  texts_->add(day_field(document_, tr("date"), [](auto& c) { return &c.sheet.date; }), tr("As 2026-03-14"));
  notes_ = new QPlainTextEdit(this);
  notes_->setAccessibleName(tr("Notes about the crossing"));
  notes_->setTabChangesFocus(true);
  notes_->setFixedHeight(fontMetrics().lineSpacing() * note_lines + 12);
  notes_->installEventFilter(this);
  add_labelled(tr("notes"), notes_);
}

void SheetPanel::make_paper() {
  add_gap();
  add_heading(tr("The paper"));
  paper_ = add_choice(
      tr("paper"),
      {tr("A3 (program default)"), tr("A4"), tr("A3"), tr("A2"), tr("Letter"), tr("Tabloid"), tr("ANSI D")},
      [this] {
        const auto& chosen = document_.crossing().sheet.paper;
        return chosen ? static_cast<int>(offered_papers().indexOf(text_from(*chosen))) + 1 : 0;
      },
      [this](int row) {
        change(tr("Choose the paper"), [row](Crossing& c) {
          c.sheet.paper.reset();
          if (row > 0) c.sheet.paper = offered_papers().at(row - 1).toStdString();
        });
      });
  sheet_units_ = add_choice(
      tr("units on the paper"),
      labels_of<UnitSystem>({{UnitSystem::metric, tr("metric")}, {UnitSystem::us, tr("US customary")}},
                            tr("those of the window")),
      [this] { return row_of_word(document_.crossing().sheet.units); },
      [this](int row) {
        change(tr("Choose the units on the paper"),
               [row](Crossing& c) { c.sheet.units = word_or_none_at<UnitSystem>(row); });
      });
  values_ = add_entries(tr("default"), true);
  values_->show_part(sheet_part, [this] { return sheet_fields(document_.crossing()); });
}

/// One step when the field is left, if something was typed.
void SheetPanel::take_notes() {
  if (!notes_->document()->isModified()) return;
  const std::string typed = notes_->toPlainText().toStdString();
  notes_->document()->setModified(false);
  if (typed == document_.crossing().notes) return;
  change(tr("Type notes"), [&typed](Crossing& c) { c.notes = typed; });
}

bool SheetPanel::take_typing() {
  take_notes();
  return !notes_->document()->isModified();
}

bool SheetPanel::eventFilter(QObject* watched, QEvent* event) {
  if (watched == notes_ && event->type() == QEvent::FocusOut) take_notes();
  if (watched == notes_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    notes_->setPlainText(text_from(document_.crossing().notes));
    return true;
  }
  return FormPanel::eventFilter(watched, event);
}

void SheetPanel::refresh() {
  texts_->catch_up();
  values_->catch_up();
  notes_->setReadOnly(locked());
  const QString notes = text_from(document_.crossing().notes);
  if (!notes_->document()->isModified() && notes_->toPlainText() != notes) notes_->setPlainText(notes);
}

QString SheetPanel::visible_text() const {
  return plain(hint_);
}

}  // namespace burrow
