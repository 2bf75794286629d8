#include "burrow/panels/findings_panel.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QSplitter>
#include <QTextBrowser>
#include <QTimer>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/live_panel.h"
#include "burrow/words/headline.h"
#include "burrow/words/working_text.h"
#include "flow_row.h"

namespace burrow {

namespace {
QString working_html(const Working& w, UnitSystem units) {
  QString html = QStringLiteral("<p><i>%1</i></p><table cellspacing='0' cellpadding='2'>")
                     .arg(text_from(translated(w.formula)).toHtmlEscaped());
  const auto line = [&](std::string_view symbol, double value, std::string_view unit, bool strong) {
    const QString number =
        text_from(working_number(value, unit, units, symbol == "limit" ? w.symbol : symbol)).toHtmlEscaped();
    const QString row = strong ? QStringLiteral("<tr><td>%1</td><td>=</td><td><b>%2</b></td></tr>")
                               : QStringLiteral("<tr><td>%1</td><td>=</td><td>%2</td></tr>");
    html += row.arg(text_from(symbol).toHtmlEscaped(), number);
  };
  for (const WorkingInput& input : w.inputs) line(input.symbol, input.value, input.unit, false);
  line(w.symbol, w.value, w.unit, true);
  if (w.limit) line("limit", *w.limit, w.unit, false);
  html += QStringLiteral("</table><p>%1 %2 [%3]</p>")
              .arg(QObject::tr("Formula from:"), text_from(w.source.text).toHtmlEscaped(),
                   text_from(burrow::label_text(w.source.label)).toHtmlEscaped());
  return html;
}

}  // namespace

FindingsPanel::FindingsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      model_(new FindingsModel(document, this)),
      filter_(new FindingsFilter(*model_, this)),
      delegate_(new FindingDelegate(this)),
      heading_(new QLabel(tr("Findings, worst first"), this)),
      bar_(new FilterBar(*filter_, this)),
      list_(new QListView(this)),
      empty_(new QLabel(this)),
      working_heading_(new QLabel(tr("Working"), this)),
      working_(new QTextBrowser(this)),
      mute_(new QPushButton(tr("Mute…"), this)),
      unmute_(new QPushButton(tr("Unmute"), this)),
      copy_(new QPushButton(tr("Copy"), this)),
      form_(new MuteForm(this)),
      later_(new QTimer(this)) {
  setAutoFillBackground(true);
  QFont bold = heading_->font();
  bold.setBold(true);
  heading_->setFont(bold);
  working_heading_->setFont(bold);
  list_->setModel(filter_);
  list_->setItemDelegate(delegate_);
  list_->setFrameShape(QFrame::NoFrame);
  list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setResizeMode(QListView::Adjust);
  list_->setAccessibleName(tr("Findings"));
  list_->setAccessibleDescription(tr("Enter goes to the place, M mutes with a reason, U takes the mute off."));
  list_->setContextMenuPolicy(Qt::CustomContextMenu);
  list_->installEventFilter(this);
  empty_->setWordWrap(true);
  empty_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  empty_->setContentsMargins(10, 10, 10, 10);
  empty_->setAccessibleName(tr("Why no finding is shown"));
  empty_->hide();
  working_->setFrameShape(QFrame::NoFrame);
  working_->setAccessibleName(tr("Working of the picked finding"));
  working_->setOpenLinks(false);
  for (QPushButton* button : {mute_, unmute_, copy_}) button->setAutoDefault(false);
  mute_->setToolTip(tr("Say why it may stand (M). It stays in the list and on the sheet."));
  mute_->setAccessibleName(tr("Mute the finding with a reason"));
  unmute_->setToolTip(tr("Lets it count again (U)"));
  unmute_->setAccessibleName(tr("Take the mute off the finding"));
  copy_->setToolTip(tr("Copies the finding and its working as text"));
  copy_->setAccessibleName(tr("Copy the working"));
  connect(mute_, &QPushButton::clicked, this, &FindingsPanel::open_form);
  connect(unmute_, &QPushButton::clicked, this, &FindingsPanel::take_unmute);
  connect(form_, &MuteForm::given, this, &FindingsPanel::take_mute);
  connect(form_, &MuteForm::left, this, [this] {
    muting_.reset();
    list_->setFocus();
  });
  connect(bar_, &FilterBar::changed, this, &FindingsPanel::show_list_or_note);
  connect(list_, &QWidget::customContextMenuRequested, this, &FindingsPanel::open_menu);
  connect(copy_, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(plain_); });

  auto* splitter = new QSplitter(Qt::Vertical, this);
  auto* lower = new QWidget(splitter);
  auto* lower_layout = new QVBoxLayout(lower);
  lower_layout->setContentsMargins(10, 6, 6, 6);
  lower_layout->addWidget(working_heading_);
  auto* buttons = new FlowRow(nullptr);
  for (QPushButton* button : {mute_, unmute_, copy_}) buttons->addWidget(button);
  lower_layout->addLayout(buttons);
  lower_layout->addWidget(form_);
  lower_layout->addWidget(working_);
  auto* upper = new QWidget(splitter);
  auto* upper_layout = new QVBoxLayout(upper);
  upper_layout->setContentsMargins(0, 0, 0, 0);
  upper_layout->addWidget(list_, 1);
  upper_layout->addWidget(empty_, 1);
  splitter->addWidget(upper);
  splitter->addWidget(lower);
  splitter->setStretchFactor(0, 3);
  splitter->setStretchFactor(1, 2);
  splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 8, 0, 0);
  layout->setSpacing(6);
  heading_->setContentsMargins(10, 0, 0, 0);
  layout->addWidget(heading_);
  layout->addWidget(bar_);
  layout->addWidget(splitter, 1);

  later_->setSingleShot(true);
  later_->setInterval(light_page_ms);
  connect(later_, &QTimer::timeout, this, &FindingsPanel::refresh);
  connect(&document_, &Document::changed, this, [this] {
    if (!later_->isActive()) later_->start();
  });
  connect(&document_, &Document::replaced, this, [this] {
    form_->close_form();
    muting_.reset();
    list_->clearSelection();
    list_->setCurrentIndex({});
    refresh();
    show_working(-1);
  });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
    show_working(filter_->whole_row(now));
    if (now.isValid() && !quiet_) Q_EMIT picked(filter_->whole_row(now));
  });
  connect(list_, &QListView::clicked, this, [this](const QModelIndex& now) { Q_EMIT picked(filter_->whole_row(now)); });
  connect(list_, &QListView::activated, this,
          [this](const QModelIndex& now) { Q_EMIT jump_wanted(filter_->whole_row(now)); });
  refresh();
  show_working(-1);
}

int FindingsPanel::picked_row() const {
  return filter_->whole_row(list_->currentIndex());
}

void FindingsPanel::set_units(UnitSystem units) {
  units_ = units;
  model_->set_units(units);
  show_working(picked_row());
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
  form_->set_theme(theme);
  list_->setPalette(colours);
  working_->setPalette(colours);
  list_->viewport()->update();
  show_working(picked_row());
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
  show_working(picked_row());
}

void FindingsPanel::show_list_or_note() {
  const QString why = bar_->empty_words();
  empty_->setText(why);
  empty_->setVisible(!why.isEmpty());
  list_->setVisible(why.isEmpty());
}

void FindingsPanel::pick(int row) {
  if (row < 0 || row >= model_->rowCount()) return;
  if (!filter_->shown(row).isValid()) bar_->show_all();
  list_->setCurrentIndex(filter_->shown(row));
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
  if (names.size() > 2) names = QStringList{tr("%n things", nullptr, static_cast<int>(names.size()))};
  bar_->set_picked(names.join(QStringLiteral(", ")), std::move(subjects));
}

QString FindingsPanel::working() const {
  return working_->toPlainText();
}

void FindingsPanel::show_working(int row) {
  if (row < 0 || row >= model_->rowCount()) {
    copy_->setEnabled(false);
    mute_->setEnabled(false);
    unmute_->setVisible(false);
    working_->setPlainText(
        tr("Pick a finding, here or by its flag, to see how its number came about and where its limit comes from."));
    return;
  }
  const Finding& finding = model_->finding(row);
  QString html = QStringLiteral("<p>%1</p>").arg(text_from(finding_text(finding, units_)).toHtmlEscaped());
  if (const QString what = text_from(advice(finding)); !what.isEmpty())
    html += QStringLiteral("<p><b>%1</b> %2</p>").arg(tr("To do:"), what.toHtmlEscaped());
  if (finding.muted)
    html += QStringLiteral("<p><b>%1</b> %2</p>").arg(tr("Muted:"), text_from(finding.muted->reason).toHtmlEscaped());
  const Working* step = working_of(document_.assessment(), finding);
  if (step) html += working_html(*step, units_);
  plain_ = text_from(finding_text(finding, units_));
  if (step) plain_ += QLatin1Char('\n') + text_from(working_text(*step, units_));
  copy_->setEnabled(true);
  const Mute* shown_text = mute_of(document_.crossing(), finding);
  mute_->setEnabled(true);
  mute_->setText(shown_text ? tr("Change the reason…") : tr("Mute…"));
  unmute_->setVisible(shown_text != nullptr);
  if (finding.limit)
    html += QStringLiteral("<p>%1 %2 [%3]</p>")
                .arg(tr("Limit from:"), text_from(finding.source.text).toHtmlEscaped(),
                     text_from(burrow::label_text(finding.source.label)).toHtmlEscaped());
  working_->setHtml(html);
}

}  // namespace burrow
