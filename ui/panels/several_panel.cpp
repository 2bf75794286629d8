#include "burrow/panels/several_panel.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/panels/live_panel.h"
#include "choice_words.h"
#include "flow_row.h"

namespace burrow {

namespace {
const ItemRef whole_site{ItemKind::site, {}, -1};

/// As high as what it holds, or as there is room.
class BodyScroll : public QScrollArea {
 public:
  explicit BodyScroll(QWidget* parent) : QScrollArea(parent) {
    setFrameShape(QFrame::NoFrame);
    setWidgetResizable(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  }
  [[nodiscard]] QSize sizeHint() const override { return {200, widget() ? widget()->sizeHint().height() + 2 : 60}; }
  [[nodiscard]] QSize minimumSizeHint() const override { return {60, 40}; }
};

const Utility* utility_of(const Site& site, const std::string& id) {
  for (const Utility& utility : site.utilities)
    if (utility.id == id) return &utility;
  return nullptr;
}
}  // namespace

SeveralPanel::SeveralPanel(Document& document, QWidget* parent)
    : QFrame(parent),
      document_(document),
      heading_(new QLabel(this)),
      choices_(new QWidget(this)),
      kinds_(new QComboBox(choices_)),
      statuses_(new QComboBox(choices_)),
      nothing_(new QLabel(
          tr("These share no value that could be set for all of them. Select items of one kind for that."), this)),
      values_(new EntryForm(document, tr("default"), this)),
      duplicate_(new QPushButton(tr("Duplicate all"), this)),
      remove_(new QPushButton(tr("Remove all"), this)),
      leave_(new QPushButton(tr("Let go"), this)),
      later_(new QTimer(this)) {
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setAccessibleName(tr("Several selected items"));
  QFont bold = heading_->font();
  bold.setBold(true);
  heading_->setFont(bold);
  heading_->setWordWrap(true);
  nothing_->setWordWrap(true);
  kinds_->setAccessibleName(tr("Kind of all selected utilities"));
  statuses_->setAccessibleName(tr("Status of all selected utilities"));
  kinds_->addItem(tr("various"));
  for (const UtilityKindRow& row : document.tables().utilities) kinds_->addItem(text_from(row.name));
  statuses_->addItem(tr("various"));
  for (const auto& [status, word] : EnumNames<UtilityStatus>::list) statuses_->addItem(text_from(word));
  auto* form = new QFormLayout(choices_);
  form->setContentsMargins(0, 0, 0, 0);
  form->addRow(tr("kind"), kinds_);
  form->addRow(tr("status"), statuses_);
  duplicate_->setToolTip(tr("Each of them once more, a little further along, as one step"));
  remove_->setToolTip(tr("Takes all of them out, utilities with their test holes, as one step"));
  auto* buttons = new FlowRow(nullptr);
  for (QPushButton* button : {duplicate_, remove_, leave_}) {
    button->setAutoDefault(false);
    buttons->addWidget(button);
  }
  // Neither wider nor higher than there is room for: the drawing beside it must not move when it appears.
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  auto* body = new QWidget(this);
  auto* rows = new QVBoxLayout(body);
  rows->setContentsMargins(0, 0, 0, 0);
  rows->addWidget(choices_);
  rows->addWidget(nothing_);
  rows->addWidget(values_);
  auto* scroll = new BodyScroll(this);
  scroll->setWidget(body);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 8, 10, 8);
  column->addWidget(heading_);
  column->addWidget(scroll, 1);
  column->addLayout(buttons);
  connect(kinds_, &QComboBox::activated, this, &SeveralPanel::set_kind);
  connect(statuses_, &QComboBox::activated, this, &SeveralPanel::set_status);
  connect(duplicate_, &QPushButton::clicked, this, &SeveralPanel::duplicate);
  connect(remove_, &QPushButton::clicked, this, &SeveralPanel::remove);
  connect(leave_, &QPushButton::clicked, this, [this] { Q_EMIT pick_wanted({}); });
  later_->setSingleShot(true);
  later_->setInterval(light_page_ms);
  connect(later_, &QTimer::timeout, this, &SeveralPanel::refresh_now);
  connect(&document_, &Document::changed, this, [this] {
    if (!parts_.empty() && !later_->isActive()) later_->start();
  });
  connect(&document_, &Document::replaced, this, [this] { show_parts({}); });
  hide();
}

void SeveralPanel::set_theme(const Theme& theme) {
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::WindowText, theme.ink);
  setPalette(colours);
  values_->set_theme(theme);
}

void SeveralPanel::show_parts(std::vector<ItemRef> parts) {
  if (parts.size() < 2) parts.clear();
  if (parts == parts_) return;
  values_->drop_typing();
  parts_ = std::move(parts);
  setVisible(!parts_.empty());
  refresh_now();
}

bool SeveralPanel::all_utilities() const {
  return std::all_of(parts_.begin(), parts_.end(), [](const ItemRef& p) { return p.kind == ItemKind::utility; });
}

void SeveralPanel::refresh_now() {
  if (parts_.empty()) return;
  const Crossing& crossing = document_.crossing();
  // The drawing lets go of what has gone; until it says so nothing is shown of it.
  if (!std::all_of(parts_.begin(), parts_.end(), [&](const ItemRef& p) { return there_is(crossing, p); })) return;
  heading_->setText(tr("Picked: %1").arg(text_from(several_name(crossing, parts_))));
  const std::vector<ItemRef> parts = parts_;
  values_->show_part(whole_site,
                     [this, parts] { return shared_fields(document_.crossing(), parts, document_.tables()); });
  nothing_->setVisible(values_->count() == 0 && !all_utilities());
  refresh_choices();
  if (auto* scroll = findChild<QScrollArea*>()) scroll->updateGeometry();
  const bool may = crossing.version <= known_file_version;
  for (QWidget* widget : {static_cast<QWidget*>(kinds_), static_cast<QWidget*>(statuses_),
                          static_cast<QWidget*>(duplicate_), static_cast<QWidget*>(remove_)})
    widget->setEnabled(may);
}

void SeveralPanel::refresh_choices() {
  choices_->setVisible(all_utilities());
  if (!all_utilities()) return;
  std::optional<int> kind, status;
  for (const ItemRef& part : parts_) {
    const Utility& utility = *utility_of(document_.crossing().site, part.id);
    int row = 0;
    for (std::size_t i = 0; i < document_.tables().utilities.size(); ++i)
      if (document_.tables().utilities[i].kind == utility.kind) row = static_cast<int>(i) + 1;
    kind = !kind || *kind == row ? row : 0;
    const int known = row_of_word(utility.status.value) + 1;
    status = !status || *status == known ? known : 0;
  }
  kinds_->setCurrentIndex(kind.value_or(0));
  statuses_->setCurrentIndex(status.value_or(0));
}

template <class Set>
void SeveralPanel::change_utilities(const QString& step, Set set) {
  document_.change(step, [&](Crossing& c) {
    for (Utility& utility : c.site.utilities)
      if (std::find(parts_.begin(), parts_.end(), ItemRef{ItemKind::utility, utility.id, -1}) != parts_.end())
        set(utility);
  });
  refresh_now();
}

void SeveralPanel::set_kind(int row) {
  if (row > 0) {
    const UtilityKind kind = document_.tables().utilities[static_cast<std::size_t>(row - 1)].kind;
    change_utilities(tr("Set the kind of several utilities"), [kind](Utility& u) { u.kind = kind; });
  }
  refresh_now();
}

void SeveralPanel::set_status(int row) {
  if (row > 0)
    change_utilities(tr("Set the status of several utilities"),
                     [row](Utility& u) { u.status.set(word_at<UtilityStatus>(row - 1)); });
  refresh_now();
}

void SeveralPanel::begin_typing() {
  if (values_->count() == 0) return;
  values_->entry(0)->setFocus(Qt::OtherFocusReason);
  values_->entry(0)->selectAll();
}

void SeveralPanel::duplicate() {
  if (parts_.empty()) return;
  Copies copies = site_with_copies(document_.crossing(), parts_);
  const QString name = text_from(several_name(document_.crossing(), parts_));
  if (document_.change(tr("Duplicate %1").arg(name), [&](Crossing& c) { c.site = std::move(copies.site); }))
    Q_EMIT pick_wanted(copies.parts);
}

void SeveralPanel::remove() {
  if (parts_.empty()) return;
  const QString name = text_from(several_name(document_.crossing(), parts_));
  const std::vector<ItemRef> parts = parts_;
  if (document_.change(tr("Remove %1").arg(name), [&](Crossing& c) { c.site = site_without(c, parts); }))
    Q_EMIT pick_wanted({});
}

}  // namespace burrow
