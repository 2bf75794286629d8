#include "burrow/panels/entry_form.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/widgets/field_lock.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <algorithm>

namespace burrow {

namespace {
/// The value as text, where a person typed one.
QString typed_text(const Field& field, UnitSystem units) {
  if (!field.value || (!field.entered && field.default_value)) return {};
  return text_from(format(*field.value, field.dimension, units));
}
}  // namespace

EntryForm::EntryForm(Document& document, QString standing_word, QWidget* parent)
    : QWidget(parent), document_(document), standing_word_(std::move(standing_word)), grid_(new QGridLayout(this)) {
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setHorizontalSpacing(8);
  grid_->setVerticalSpacing(4);
  grid_->setColumnStretch(0, 1);
  grid_->setColumnStretch(1, 1);
}

void EntryForm::set_shares(int label, int entry) {
  grid_->setColumnStretch(0, label);
  grid_->setColumnStretch(1, entry);
}

bool EntryForm::locked() const {
  return document_.crossing().version > known_file_version;
}

void EntryForm::show_part(const ItemRef& part, Fields fields) {
  if (!(part == part_)) drop_typing();
  part_ = part;
  fields_ = std::move(fields);
  catch_up();
}

void EntryForm::set_units(UnitSystem units) {
  units_ = units;
  catch_up();
}

void EntryForm::set_theme(const Theme& theme) {
  theme_ = theme;
  for (Row& row : rows_) {
    QPalette colours = row.wrong->palette();
    colours.setColor(QPalette::WindowText, theme_.stop);
    row.wrong->setPalette(colours);
  }
  catch_up();
}

void EntryForm::catch_up() {
  if (!fields_) return;
  const std::vector<Field> fields = fields_();
  const bool same = std::equal(fields.begin(), fields.end(), rows_.begin(), rows_.end(),
                               [](const Field& field, const Row& row) { return field.label == row.label; });
  if (!same) rebuild(fields);
  for (std::size_t i = 0; i < fields.size(); ++i) fill(rows_[i], fields[i]);
}

void EntryForm::clear_rows() {
  // An entry may be the one whose signal is being answered: it goes when that is over.
  for (Row& row : rows_)
    for (QWidget* widget :
         {static_cast<QWidget*>(row.name), static_cast<QWidget*>(row.entry), static_cast<QWidget*>(row.wrong)}) {
      widget->hide();
      widget->disconnect(this);
      widget->deleteLater();
    }
  rows_.clear();
}

void EntryForm::rebuild(const std::vector<Field>& fields) {
  clear_rows();
  for (std::size_t i = 0; i < fields.size(); ++i) {
    Row row;
    row.label = fields[i].label;
    row.name = new QLabel(this);
    row.name->setWordWrap(true);
    row.entry = new QLineEdit(this);
    row.entry->setAccessibleName(text_from(translated_label(row.label)));
    constexpr int air_px = 8, lock_px = 22;
    row.entry->setMinimumWidth(row.entry->fontMetrics().horizontalAdvance(QStringLiteral("00.00 m³/min ")) + air_px +
                               (fields[i].lock.empty() ? 0 : lock_px));
    row.entry->installEventFilter(this);
    row.lock = new FieldLock(document_, row.entry);
    row.name->setBuddy(row.entry);
    row.wrong = new QLabel(this);
    row.wrong->setWordWrap(true);
    row.wrong->hide();
    QPalette colours = row.wrong->palette();
    colours.setColor(QPalette::WindowText, theme_.stop);
    row.wrong->setPalette(colours);
    const int line = static_cast<int>(2 * i);
    grid_->addWidget(row.name, line, 0);
    grid_->addWidget(row.entry, line, 1, Qt::AlignTop);
    grid_->addWidget(row.wrong, line + 1, 0, 1, 2);
    if (i > 0) setTabOrder(rows_.back().entry, row.entry);
    connect(row.entry, &QLineEdit::editingFinished, this, [this, i] { take_over(i); });
    connect(row.entry, &QLineEdit::textEdited, this, [this, i] {
      // Once it has been called wrong, it is told at every key whether it still is.
      const std::vector<Field> live = fields_();
      if (i < live.size() && i < rows_.size() && !rows_[i].wrong->isHidden())
        complain(rows_[i], fault_of(rows_[i], live[i]));
    });
    rows_.push_back(row);
  }
}

void EntryForm::fill(Row& row, const Field& field) {
  const bool stands = field.default_value && (!field.value || !field.entered);
  const QString name = stands ? tr("%1 (%2)").arg(text_from(translated_label(field.label)), standing_word_)
                              : text_from(translated_label(field.label));
  if (row.name->text() != name) row.name->setText(name);
  row.entry->setReadOnly(locked());
  row.lock->show_place(field.lock, text_from(translated_label(field.label)));
  row.entry->setPlaceholderText(field.mixed           ? tr("various")
                                : field.default_value ? text_from(format(*field.default_value, field.dimension, units_))
                                : field.may_be_empty  ? tr("not known")
                                                      : QString());
  const QString way_back =
      field.mixed           ? tr("They differ. What is typed goes to all of them.")
      : field.default_value ? tr("Empty: back to %1 (%2).")
                                  .arg(text_from(format(*field.default_value, field.dimension, units_)), standing_word_)
      : field.may_be_empty ? tr("Empty: not known.")
                           : tr("Cannot be left empty.");
  row.entry->setToolTip(way_back);
  row.entry->setAccessibleDescription(stands ? tr("Nothing typed. %1").arg(way_back) : way_back);
  if (row.entry->isModified()) {
    if (!row.wrong->isHidden()) complain(row, fault_of(row, field));  // in the units shown, with what stands now
    return;
  }
  row.shown = typed_text(field, units_);
  if (row.entry->text() != row.shown) {
    row.entry->setText(row.shown);
    row.entry->setCursorPosition(0);
  }
}

QString EntryForm::fault_of(const Row& row, const Field& field) const {
  Result<std::optional<double>> value = read_field(field, row.entry->text().toStdString(), units_);
  if (value && field.validate)
    if (const Result<void> fault = field.validate(document_.crossing(), *value); !fault)
      value = tl::unexpected(fault.error());
  if (value) return {};
  const QString fault =
      value.error().found.empty()
          ? tr("Not taken: %1 required").arg(text_from(value.error().expected))
          : tr("Not taken: %1. Wanted: %2").arg(text_from(value.error().found), text_from(value.error().expected));
  return fault + QLatin1Char('\n') + in_force(field);
}

QString EntryForm::in_force(const Field& field) const {
  if (field.mixed) return tr("In force: various");
  const std::optional<double>& stands = field.value ? field.value : field.default_value;
  return stands ? tr("In force: %1").arg(text_from(format(*stands, field.dimension, units_)))
                : tr("In force: not known");
}

void EntryForm::complain(Row& row, const QString& what) {
  row.wrong->setText(what);
  row.wrong->setVisible(!what.isEmpty());
  row.entry->setAccessibleDescription(what);
}

void EntryForm::put_back(Row& row) {
  row.entry->setText(row.shown);
  row.entry->setModified(false);
  complain(row, {});
}

bool EntryForm::take_typing() {
  for (std::size_t i = 0; i < rows_.size(); ++i) take_over(i);
  return std::none_of(rows_.begin(), rows_.end(), [](const Row& row) { return row.entry->isModified(); });
}

void EntryForm::drop_typing() {
  for (Row& row : rows_) put_back(row);
}

void EntryForm::hideEvent(QHideEvent* event) {
  QWidget::hideEvent(event);
  if (event->spontaneous()) return;  // the window is away, not the page
  for (Row& row : rows_)
    if (!row.wrong->isHidden()) put_back(row);
}

void EntryForm::take_over(std::size_t at) {
  if (at >= rows_.size() || !rows_[at].entry->isModified()) return;
  Row& row = rows_[at];
  if (row.entry->text() == row.shown) {
    put_back(row);
    return;
  }
  const std::vector<Field> live = fields_();
  if (at >= live.size() || live[at].label != row.label) return;
  if (const QString fault = fault_of(row, live[at]); !fault.isEmpty()) {
    complain(row, fault);
    return;
  }
  const std::optional<double> value = *read_field(live[at], row.entry->text().toStdString(), units_);
  const QString whose = text_from(part_name(document_.crossing(), part_));
  if (!document_.change(tr("Type %1 of %2").arg(text_from(translated_label(row.label)), whose),
                        [&](Crossing& c) { live[at].apply(c, value); })) {
    complain(row, locked() ? tr("Not taken: %1").arg(document_.read_only_because())
                  : document_.in_session()
                      ? tr("Not taken while something is being dragged.")
                      : tr("Not taken: a bore is under way with the layout of its start. End its record first."));
    return;
  }
  row.entry->setModified(false);
  complain(row, {});
  catch_up();
}

bool EntryForm::eventFilter(QObject* watched, QEvent* event) {
  const auto it = std::find_if(rows_.begin(), rows_.end(), [&](const Row& r) { return r.entry == watched; });
  const bool key = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
  if (it != rows_.end() && key && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && it->entry->isModified()) {
    if (event->type() == QEvent::KeyPress) {
      put_back(*it);
      catch_up();
      it->entry->selectAll();
    }
    event->accept();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

int EntryForm::find(const QString& label) const {
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (text_from(rows_[i].label).startsWith(label)) return static_cast<int>(i);
  return -1;
}

QString EntryForm::complaint(int row) const {
  const QLabel* wrong = rows_[static_cast<std::size_t>(row)].wrong;
  return wrong->isHidden() ? QString() : wrong->text();
}

}  // namespace burrow
