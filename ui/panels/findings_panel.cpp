#include "burrow/panels/findings_panel.h"

#include <QCheckBox>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QTextBrowser>
#include <QTimer>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/panels/live_panel.h"
#include "finding_details.h"
#include "findings_list.h"

namespace burrow {

FindingsPanel::FindingsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      model_(new FindingsModel(document, this)),
      filter_(new FindingsFilter(*model_, this)),
      delegate_(new FindingDelegate(this)),
      bar_(new FilterBar(*filter_, this)),
      area_(new QWidget(this)),
      list_(new FindingsList(area_)),
      empty_(new QLabel(this)),
      details_(new FindingDetails(document, area_)),
      later_(new QTimer(this)) {
  setAutoFillBackground(true);
  list_->setModel(filter_);
  list_->setItemDelegate(delegate_);
  list_->setFrameShape(QFrame::NoFrame);
  list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setResizeMode(QListView::Adjust);
  list_->setAccessibleName(tr("Findings"));
  list_->setAccessibleDescription(
      tr("Enter goes to the place, Right unfolds the calculation, Left folds it, M accepts with a reason, U takes that "
         "back."));
  list_->setContextMenuPolicy(Qt::CustomContextMenu);
  list_->installEventFilter(this);
  list_->viewport()->installEventFilter(this);
  area_->installEventFilter(this);
  list_->set_foldout(details_);
  empty_->setWordWrap(true);
  empty_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  empty_->setContentsMargins(10, 10, 10, 10);
  empty_->setAccessibleName(tr("Why no finding is shown"));
  empty_->hide();
  auto* over = new QVBoxLayout(area_);
  over->setContentsMargins(0, 0, 0, 0);
  over->addWidget(list_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 8, 0, 0);
  layout->setSpacing(6);
  layout->addWidget(bar_);
  layout->addWidget(area_, 1);
  layout->addWidget(empty_, 1);
  layout->addWidget(bar_->notes());
  later_->setSingleShot(true);
  later_->setInterval(light_page_ms);
  wire();
  refresh();
  show_working();
}

void FindingsPanel::wire() {
  connect(details_->mute(), &QPushButton::clicked, this, &FindingsPanel::open_form);
  connect(details_->unmute(), &QPushButton::clicked, this, &FindingsPanel::take_unmute);
  connect(details_->form(), &MuteForm::given, this, &FindingsPanel::take_mute);
  connect(details_->form(), &MuteForm::left, this, [this] {
    muting_.reset();
    list_->setFocus();
  });
  connect(details_, &FindingDetails::resized, list_, &FindingsList::foldout_changed);
  connect(details_, &FindingDetails::preview_changed, this, &FindingsPanel::preview_changed);
  connect(details_, &FindingDetails::hole_wanted, this, &FindingsPanel::hole_wanted);
  connect(details_, &FindingDetails::refused, this, &FindingsPanel::refused);
  connect(bar_, &FilterBar::changed, this, &FindingsPanel::show_list_or_note);
  connect(list_, &QWidget::customContextMenuRequested, this, &FindingsPanel::open_menu);
  connect(later_, &QTimer::timeout, this, &FindingsPanel::refresh);
  connect(&document_, &Document::changed, this, [this] {
    if (!later_->isActive()) later_->start();
  });
  connect(&document_, &Document::replaced, this, [this] {
    details_->form()->close_form();
    muting_.reset();
    list_->clearSelection();
    list_->setCurrentIndex({});
    refresh();
    show_working();
  });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
    show_working();
    if (now.isValid() && !quiet_) Q_EMIT picked(filter_->whole_row(now));
  });
  // A click on the row that is open folds it.
  connect(list_, &QListView::clicked, this, [this](const QModelIndex& now) {
    unfold(!(open_at_press_.isValid() && open_at_press_ == now));
    Q_EMIT picked(filter_->whole_row(now));
  });
  connect(list_, &QListView::activated, this,
          [this](const QModelIndex& now) { Q_EMIT jump_wanted(filter_->whole_row(now)); });
}

void FindingsPanel::unfold(bool on) {
  unfolded_ = on;
  show_working();
}

int FindingsPanel::picked_row() const {
  return filter_->whole_row(list_->currentIndex());
}

void FindingsPanel::set_units(UnitSystem units) {
  units_ = units;
  model_->set_units(units);
  details_->set_units(units);
  show_working();
}

void FindingsPanel::set_theme(const Theme& theme) {
  theme_ = theme;
  delegate_->set_theme(theme);
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.panel);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  bar_->set_theme(theme);
  details_->set_theme(theme);
  list_->setPalette(colours);
  list_->viewport()->update();
  show_working();
}

void FindingsPanel::refresh() {
  // What is picked stays picked, though the order changes.
  const int row = picked_row();
  std::optional<Finding> kept;
  if (row >= 0 && row < model_->rowCount()) kept = model_->finding(row);
  quiet_ = true;
  model_->refresh();
  const int now = kept ? model_->row_like(*kept, row) : -1;
  const QModelIndex index = now >= 0 ? filter_->shown(now) : QModelIndex();
  if (index != list_->currentIndex()) list_->setCurrentIndex(index);
  quiet_ = false;
  bar_->tell();
  show_list_or_note();
  show_working();
}

void FindingsPanel::show_list_or_note() {
  const QString why = bar_->empty_words();
  empty_->setText(why);
  empty_->setVisible(!why.isEmpty());
  area_->setVisible(why.isEmpty());
}

void FindingsPanel::pick(int row) {
  if (row < 0 || row >= model_->rowCount()) return;
  if (!filter_->shown(row).isValid()) bar_->show_all();
  unfolded_ = true;
  list_->setCurrentIndex(filter_->shown(row));
  show_working();
  list_->scrollTo(filter_->shown(row));
}

void FindingsPanel::set_picked_things(const std::vector<ItemRef>& parts) {
  std::vector<std::string> subjects;
  QStringList names;
  for (const ItemRef& part : parts) {
    const std::string own = part_subject(part);
    // What the bore does follows from where it starts and ends.
    if (part.kind == ItemKind::launch || part.kind == ItemKind::exit) subjects.emplace_back("bore");
    if (own.empty()) continue;
    subjects.push_back(own);
    names << text_from(part_name(document_.crossing(), part));
  }
  if (names.size() > 2) names = QStringList{tr("%n items", nullptr, static_cast<int>(names.size()))};
  bar_->set_picked(names.join(QStringLiteral(", ")), std::move(subjects));
}

void FindingsPanel::show_about_selected() {
  bar_->show_all();
  bar_->picked_only()->setChecked(true);
}

QString FindingsPanel::working() const {
  return picked_row() < 0 ? details_->working()->toPlainText()
                          : text_from(finding_text(model_->finding(picked_row()), units_)) + QLatin1Char('\n') +
                                details_->working()->toPlainText();
}

QPushButton* FindingsPanel::copy() const {
  return details_->copy();
}
QPushButton* FindingsPanel::mute() const {
  return details_->mute();
}
QPushButton* FindingsPanel::unmute() const {
  return details_->unmute();
}
MuteForm* FindingsPanel::mute_form() const {
  return details_->form();
}
QListView* FindingsPanel::list() const {
  return list_;
}

/// What is open is the selected row, unless it was folded.
void FindingsPanel::show_working() {
  const int row = picked_row();
  const bool there = row >= 0 && row < model_->rowCount();
  details_->show_finding(there ? std::optional(model_->finding(row)) : std::nullopt);
  list_->open(there && unfolded_ ? list_->currentIndex() : QModelIndex());
}

}  // namespace burrow
