#include "burrow/panels/findings_filter.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/drawing/line_icon.h"
#include "flow_row.h"

namespace burrow {

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

int FindingsFilter::notes() const {
  int count = 0;
  for (int row = 0; row < model_.rowCount(); ++row)
    count += model_.finding(row).severity == Severity::note && !model_.finding(row).missing;
  return count;
}

QModelIndex FindingsFilter::shown(int whole_row) const {
  return mapFromSource(model_.index(whole_row));
}

bool FindingsFilter::filterAcceptsRow(int row, const QModelIndex&) const {
  const Finding& f = model_.finding(row);
  const auto of_kind = [&] {
    switch (choice_.kind) {
      case FindingKind::stop:
        return f.severity == Severity::stop;
      case FindingKind::missing:
        return f.missing && f.severity != Severity::stop;
      case FindingKind::caution:
        return f.severity == Severity::caution && !f.missing;
      case FindingKind::note:
        return f.severity == Severity::note && !f.missing;
      case FindingKind::muted:
        return f.muted.has_value();
      case FindingKind::all:
        break;
    }
    return true;
  };
  if (!of_kind()) return false;
  if (!choice_.notes && f.severity == Severity::note && !f.missing) return false;
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
      kinds_(new QComboBox(this)),
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
  kinds_->addItem(tr("all kinds"), static_cast<int>(FindingKind::all));
  kinds_->addItem(tr("stops"), static_cast<int>(FindingKind::stop));
  kinds_->addItem(tr("not known"), static_cast<int>(FindingKind::missing));
  kinds_->addItem(tr("cautions"), static_cast<int>(FindingKind::caution));
  kinds_->addItem(tr("notes"), static_cast<int>(FindingKind::note));
  kinds_->addItem(tr("accepted"), static_cast<int>(FindingKind::muted));
  kinds_->setAccessibleName(tr("Kind of the findings"));
  picked_only_->setToolTip(tr("Only findings about what is selected on the drawing"));
  all_->setAutoDefault(false);
  all_->setAccessibleName(tr("Show all findings"));
  count_->setWordWrap(true);

  auto* rows = new QVBoxLayout(this);
  rows->setContentsMargins(10, 0, 10, 0);
  rows->setSpacing(4);
  auto* first = new QHBoxLayout;
  first->addWidget(words_, 1);
  first->addWidget(kinds_);
  rows->addLayout(first);
  rows->addWidget(picked_only_);
  auto* last = new QHBoxLayout;
  last->addWidget(count_, 1);
  last->addWidget(all_);
  rows->addLayout(last);

  connect(words_, &QLineEdit::textChanged, this, &FilterBar::take);
  connect(kinds_, &QComboBox::currentIndexChanged, this, &FilterBar::take);
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
    const QSignalBlocker no_words(words_), no_kind(kinds_), no_pick(picked_only_);
    words_->clear();
    kinds_->setCurrentIndex(0);
    picked_only_->setChecked(false);
    const QSignalBlocker no_notes(notes_);
    notes_->setChecked(true);
  }
  take();
}

void FilterBar::take() {
  FindingChoice choice;
  choice.words = words_->text();
  choice.kind = static_cast<FindingKind>(kinds_->currentData().toInt());
  choice.picked_only = picked_only_->isChecked();
  if (choice.picked_only) choice.subjects = subjects_;
  // Who looks for something looks among the notes too; and where there is nothing else, they are it.
  choice.notes = notes_->isChecked() || !choice.all() || filter_.notes() == filter_.hidden() + filter_.rowCount();
  filter_.choose(choice);
  tell();
  Q_EMIT changed();
}

void FilterBar::tell() {
  const int notes = filter_.notes();
  const bool only = notes == filter_.hidden() + filter_.rowCount();
  if (only != (filter_.choice().notes && !notes_->isChecked() && filter_.choice().all())) {
    FindingChoice choice = filter_.choice();
    choice.notes = notes_->isChecked() || !choice.all() || only;
    filter_.choose(choice);
  }
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
  if (now.kind != FindingKind::all) ways << tr("choose “all kinds”");
  if (now.picked_only)
    ways << (subjects_.empty() ? tr("select something on the drawing")
                               : tr("take the tick off “only about the selected item”"));
  return tr("No finding fits this choice; %n hidden by it.", nullptr, filter_.hidden()) + QLatin1Char('\n') +
         tr("To see more: %1, or “Show all”.").arg(ways.join(QStringLiteral(", ")));
}

}  // namespace burrow
