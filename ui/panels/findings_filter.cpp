#include "burrow/panels/findings_filter.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/check/mute.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/panels/verdict_bar.h"
#include "flow_row.h"

namespace burrow {

namespace {

constexpr int side_px = 10;

bool is_note(const Finding& f) {
  return f.severity == Severity::note && !f.missing;
}

/// What is accepted and does not count is of that kind alone: the numbers are those of the verdict bar.
bool is_of(const Finding& f, FindingKind kind) {
  if (kind == FindingKind::all) return true;
  if (kind == FindingKind::muted) return f.muted.has_value();
  if (f.muted && !counts_in_verdict(f)) return false;
  const FindingMark mark = mark_of(f);
  return (kind == FindingKind::stop && mark == FindingMark::stop) ||
         (kind == FindingKind::missing && mark == FindingMark::missing) ||
         (kind == FindingKind::caution && mark == FindingMark::caution) ||
         (kind == FindingKind::note && mark == FindingMark::note);
}

/// Its height is set by what stands in it; to the layout around it that is no height for a width, or the narrowest
/// column would ask for the highest window.
class KindRow : public QWidget {
 public:
  using QWidget::QWidget;
  [[nodiscard]] bool hasHeightForWidth() const override { return false; }
};

QString chip_style(const Theme& theme) {
  return QStringLiteral(
             "QPushButton { background: %1; color: %2; border: 1px solid %3; border-radius: 6px; padding: 3px 8px; }"
             "QPushButton:hover { background: %4; }"
             "QPushButton:checked { background: %5; color: %2; border-color: %6; font-weight: bold; }"
             "QPushButton:focus { border: 2px solid %6; padding: 2px 7px; }")
      .arg(theme.panel.name(), theme.ink.name(), theme.note.name(), theme.field.name(), theme.select.name(),
           theme.focus.name());
}

}  // namespace

FindingsFilter::FindingsFilter(FindingsModel& model, QObject* parent) : QSortFilterProxyModel(parent), model_(model) {
  setSourceModel(&model);
}

void FindingsFilter::choose(const FindingChoice& choice) {
  if (choice == choice_) return;
  choice_ = choice;
  invalidateFilter();
}

int FindingsFilter::whole_row(const QModelIndex& shown) const {
  return shown.isValid() ? mapToSource(shown).row() : -1;
}

int FindingsFilter::count_of(FindingKind kind) const {
  int count = 0;
  for (int row = 0; row < model_.rowCount(); ++row) count += is_of(model_.finding(row), kind);
  return count;
}

int FindingsFilter::notes() const {
  int count = 0;
  for (int row = 0; row < model_.rowCount(); ++row) count += is_note(model_.finding(row));
  return count;
}

QModelIndex FindingsFilter::shown(int whole_row) const {
  return mapFromSource(model_.index(whole_row));
}

bool FindingsFilter::filterAcceptsRow(int row, const QModelIndex&) const {
  const Finding& f = model_.finding(row);
  if (!is_of(f, choice_.kind)) return false;
  if (!choice_.notes && is_note(f)) return false;
  if (choice_.picked_only &&
      std::find(choice_.subjects.begin(), choice_.subjects.end(), f.subject) == choice_.subjects.end())
    return false;
  if (choice_.words.trimmed().isEmpty()) return true;
  const QString text = model_.words(row);
  const QStringList wanted = choice_.words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  return std::all_of(wanted.begin(), wanted.end(),
                     [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); });
}

FilterBar::FilterBar(FindingsFilter& filter, QWidget* parent)
    : QWidget(parent),
      filter_(filter),
      words_(new QLineEdit(this)),
      kind_row_(new KindRow(this)),
      picked_only_(new QCheckBox(this)),
      count_(new QLabel(this)),
      all_(new QPushButton(tr("Show all"), this)),
      notes_(new QPushButton(parent)) {
  notes_->setCheckable(true);
  notes_->setFlat(true);
  notes_->setAutoDefault(false);
  notes_->setIcon(line_icon(QStringLiteral("note")));
  connect(notes_, &QPushButton::toggled, this, &FilterBar::take);
  words_->setPlaceholderText(tr("Words, as “gas” or “heave”"));
  words_->setClearButtonEnabled(true);
  words_->setAccessibleName(tr("Words that the finding must hold"));
  new FlowRow(kind_row_);
  kind_row_->setAccessibleName(tr("Kind of the findings"));
  add_kind(FindingKind::all, "");
  add_kind(FindingKind::stop, "stop");
  add_kind(FindingKind::missing, "help");
  add_kind(FindingKind::caution, "caution");
  add_kind(FindingKind::note, "note");
  add_kind(FindingKind::muted, "accept");
  kind(FindingKind::all)->setChecked(true);
  picked_only_->setToolTip(tr("Only findings about what is selected on the drawing"));
  all_->setAutoDefault(false);
  all_->setAccessibleName(tr("Show all findings"));
  count_->setWordWrap(true);

  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(side_px, 0, side_px, 0);
  rows->setSpacing(4);
  rows->addWidget(words_);
  rows->addWidget(kind_row_);
  rows->addWidget(picked_only_);
  auto* last = new QHBoxLayout;
  last->addWidget(count_, 1);
  last->addWidget(all_);
  rows->addLayout(last);

  connect(words_, &QLineEdit::textChanged, this, &FilterBar::take);
  connect(picked_only_, &QCheckBox::toggled, this, &FilterBar::take);
  connect(all_, &QPushButton::clicked, this, &FilterBar::show_all);
  set_picked({}, {});
}

void FilterBar::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  QPalette soft = colours;
  soft.setColor(QPalette::WindowText, theme.ink_soft);
  count_->setPalette(soft);
  kind_row_->setStyleSheet(chip_style(theme));
}

void FilterBar::set_picked(const QString& name, std::vector<std::string> subjects) {
  picked_name_ = name;
  subjects_ = std::move(subjects);
  picked_only_->setText(name.isEmpty() ? tr("only about the selected item (nothing is selected)")
                                       : tr("only about the selected item: %1").arg(name));
  picked_only_->setVisible(!name.isEmpty() || picked_only_->isChecked());
  take();
}

void FilterBar::show_all() {
  {
    const QSignalBlocker no_words(words_), no_pick(picked_only_);
    words_->clear();
    choose_kind(FindingKind::all);
    picked_only_->setChecked(false);
    const QSignalBlocker no_notes(notes_);
    notes_->setChecked(true);
  }
  take();
}

QPushButton* FilterBar::kind(FindingKind kind) const {
  return kinds_[static_cast<std::size_t>(kind)];
}

void FilterBar::add_kind(FindingKind kind, const char* icon) {
  auto* chip = new QPushButton(kind_row_);
  chip->setCheckable(true);
  chip->setAutoDefault(false);
  chip->setFocusPolicy(Qt::StrongFocus);
  if (*icon) chip->setIcon(line_icon(QString::fromLatin1(icon)));
  chip->setIconSize(QSize(14, 14));
  kind_row_->layout()->addWidget(chip);
  kinds_.push_back(chip);
  connect(chip, &QPushButton::clicked, this, [this, kind] {
    choose_kind(kind);
    take();
  });
}

/// One of them is checked; a group of Qt's would take all others from the Tab key.
void FilterBar::choose_kind(FindingKind kind) {
  for (std::size_t i = 0; i < kinds_.size(); ++i) kinds_[i]->setChecked(i == static_cast<std::size_t>(kind));
}

FindingKind FilterBar::chosen_kind() const {
  for (std::size_t i = 0; i < kinds_.size(); ++i)
    if (kinds_[i]->isChecked()) return static_cast<FindingKind>(i);
  return FindingKind::all;
}

QString FilterBar::kind_words(FindingKind kind, int count) const {
  switch (kind) {
    case FindingKind::stop:
      return count_words({FindingMark::stop, count});
    case FindingKind::missing:
      return count_words({FindingMark::missing, count});
    case FindingKind::caution:
      return count_words({FindingMark::caution, count});
    case FindingKind::note:
      return count_words({FindingMark::note, count});
    case FindingKind::muted:
      return tr("%n accepted", nullptr, count);
    case FindingKind::all:
      break;
  }
  return tr("all %n", nullptr, count);
}

FindingChoice FilterBar::chosen() const {
  FindingChoice choice;
  choice.words = words_->text();
  choice.kind = chosen_kind();
  choice.picked_only = picked_only_->isChecked();
  if (choice.picked_only) choice.subjects = subjects_;
  const bool only_notes = filter_.notes() == filter_.count_of(FindingKind::all);
  choice.notes = notes_->isChecked() || !choice.all() || only_notes;
  return choice;
}

void FilterBar::fit_kinds() {
  const int wide = width() - 2 * side_px;
  if (wide > 0) kind_row_->setFixedHeight(kind_row_->layout()->heightForWidth(wide));
}

void FilterBar::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fit_kinds();
}

void FilterBar::take() {
  tell();
  Q_EMIT changed();
}

void FilterBar::tell() {
  filter_.choose(chosen());
  for (std::size_t i = 0; i < kinds_.size(); ++i) {
    QPushButton* chip = kinds_[i];
    const auto kind = static_cast<FindingKind>(i);
    const int count = filter_.count_of(kind);
    chip->setText(kind_words(kind, count));
    chip->setAccessibleName(chip->text());
    chip->setVisible(count > 0 || chip->isChecked());
  }
  fit_kinds();
  const int notes = filter_.notes();
  const bool only = notes == filter_.count_of(FindingKind::all);
  notes_->setText(notes_->isChecked() ? tr("Fold %n notes", nullptr, notes) : tr("Show %n notes", nullptr, notes));
  notes_->setVisible(notes > 0 && !only && filter_.choice().all());
  const bool filtered = !filter_.choice().all();
  const int shown = filter_.rowCount();
  const int whole = shown + filter_.hidden();
  const QString hidden = filter_.hidden() == 0 ? tr("none hidden") : tr("%n hidden", nullptr, filter_.hidden());
  count_->setText(tr("%1 of %n shown, %2", nullptr, whole).arg(shown).arg(hidden));
  count_->setVisible(filtered);
  all_->setVisible(filtered);
}

QString FilterBar::empty_words() const {
  if (filter_.rowCount() > 0) return {};
  if (filter_.hidden() == 0) return tr("No findings: everything judged here is entered and within its limits.");
  QStringList ways;
  const FindingChoice& now = filter_.choice();
  if (!now.words.trimmed().isEmpty()) ways << tr("delete words");
  if (now.kind != FindingKind::all) ways << tr("choose “all”");
  if (now.picked_only)
    ways << (subjects_.empty() ? tr("select something on the drawing")
                               : tr("take the tick off “only about the selected item”"));
  return tr("No finding fits this choice; %n hidden by it.", nullptr, filter_.hidden()) + QLatin1Char('\n') +
         tr("To see more: %1, or “Show all”.").arg(ways.join(QStringLiteral(", ")));
}

}  // namespace burrow
