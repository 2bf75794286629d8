#include "burrow/panels/findings_panel.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QListView>
#include <QPushButton>
#include <QSplitter>
#include <QTextBrowser>
#include <QTimer>
#include <QVBoxLayout>

#include "burrow/check/headline.h"
#include "burrow/check/working_text.h"

namespace burrow {

namespace {
QString qs(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}
QString working_html(const Working& w, UnitSystem units) {
  QString html =
      QStringLiteral("<p><i>%1</i></p><table cellspacing='0' cellpadding='2'>").arg(qs(w.formula).toHtmlEscaped());
  const auto line = [&](std::string_view symbol, double value, std::string_view unit, bool strong) {
    const QString number =
        QString::fromStdString(working_number(value, unit, units, symbol == "limit" ? w.symbol : symbol))
            .toHtmlEscaped();
    const QString row = strong ? QStringLiteral("<tr><td>%1</td><td>=</td><td><b>%2</b></td></tr>")
                               : QStringLiteral("<tr><td>%1</td><td>=</td><td>%2</td></tr>");
    html += row.arg(qs(symbol).toHtmlEscaped(), number);
  };
  for (const WorkingInput& input : w.inputs) line(input.symbol, input.value, input.unit, false);
  line(w.symbol, w.value, w.unit, true);
  if (w.limit) line("limit", *w.limit, w.unit, false);
  html += QStringLiteral("</table><p>%1 %2 [%3]</p>")
              .arg(QObject::tr("Formula from:"), qs(w.source.text).toHtmlEscaped(),
                   qs(words(w.source.label)).toHtmlEscaped());
  return html;
}

constexpr int refresh_ms = 50;  // while dragging the list need not keep up with every frame
}  // namespace

FindingsPanel::FindingsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      model_(new FindingsModel(document, this)),
      delegate_(new FindingDelegate(this)),
      heading_(new QLabel(tr("Findings, worst first"), this)),
      list_(new QListView(this)),
      working_heading_(new QLabel(tr("Working"), this)),
      working_(new QTextBrowser(this)),
      copy_(new QPushButton(tr("Copy"), this)),
      later_(new QTimer(this)) {
  setAutoFillBackground(true);
  QFont bold = heading_->font();
  bold.setBold(true);
  heading_->setFont(bold);
  working_heading_->setFont(bold);
  list_->setModel(model_);
  list_->setItemDelegate(delegate_);
  list_->setFrameShape(QFrame::NoFrame);
  list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setResizeMode(QListView::Adjust);
  list_->setAccessibleName(tr("Findings"));
  working_->setFrameShape(QFrame::NoFrame);
  working_->setAccessibleName(tr("Working of the picked finding"));
  working_->setOpenLinks(false);
  copy_->setAutoDefault(false);
  copy_->setToolTip(tr("Copies the finding and its working as text"));
  copy_->setAccessibleName(tr("Copy the working"));
  connect(copy_, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(plain_); });

  auto* splitter = new QSplitter(Qt::Vertical, this);
  auto* lower = new QWidget(splitter);
  auto* lower_layout = new QVBoxLayout(lower);
  lower_layout->setContentsMargins(10, 6, 6, 6);
  auto* top = new QHBoxLayout;
  top->addWidget(working_heading_, 1);
  top->addWidget(copy_);
  lower_layout->addLayout(top);
  lower_layout->addWidget(working_);
  splitter->addWidget(list_);
  splitter->addWidget(lower);
  splitter->setStretchFactor(0, 3);
  splitter->setStretchFactor(1, 2);
  splitter->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 8, 0, 0);
  layout->setSpacing(6);
  heading_->setContentsMargins(10, 0, 0, 0);
  layout->addWidget(heading_);
  layout->addWidget(splitter);

  later_->setSingleShot(true);
  later_->setInterval(refresh_ms);
  connect(later_, &QTimer::timeout, this, &FindingsPanel::refresh);
  connect(&document_, &Document::changed, this, [this] {
    if (!later_->isActive()) later_->start();
  });
  connect(&document_, &Document::replaced, this, [this] {
    refresh();
    list_->clearSelection();
    show_working(-1);
  });
  connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
    show_working(now.isValid() ? now.row() : -1);
    if (now.isValid()) Q_EMIT picked(now.row());
  });
  connect(list_, &QListView::clicked, this, [this](const QModelIndex& now) { Q_EMIT picked(now.row()); });
  refresh();
  show_working(-1);
}

void FindingsPanel::set_units(UnitSystem units) {
  units_ = units;
  model_->set_units(units);
  show_working(list_->currentIndex().isValid() ? list_->currentIndex().row() : -1);
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
  list_->setPalette(colours);
  working_->setPalette(colours);
  list_->viewport()->update();
  show_working(list_->currentIndex().isValid() ? list_->currentIndex().row() : -1);
}

void FindingsPanel::refresh() {
  model_->refresh();
  show_working(list_->currentIndex().isValid() ? list_->currentIndex().row() : -1);
}

void FindingsPanel::pick(int row) {
  if (row < 0 || row >= model_->rowCount()) return;
  list_->setCurrentIndex(model_->index(row));
  list_->scrollTo(model_->index(row));
}

QString FindingsPanel::working() const {
  return working_->toPlainText();
}

void FindingsPanel::show_working(int row) {
  if (row < 0 || row >= model_->rowCount()) {
    copy_->setEnabled(false);
    working_->setPlainText(
        tr("Pick a finding, here or by its flag, to see how its number came about and where its limit comes from."));
    return;
  }
  const Finding& finding = model_->finding(row);
  QString html = QStringLiteral("<p>%1</p>").arg(QString::fromStdString(finding_text(finding, units_)).toHtmlEscaped());
  if (const QString what = qs(advice(finding)); !what.isEmpty())
    html += QStringLiteral("<p><b>%1</b> %2</p>").arg(tr("To do:"), what.toHtmlEscaped());
  const Working* step = working_of(document_.assessment(), finding);
  if (step) html += working_html(*step, units_);
  plain_ = QString::fromStdString(finding_text(finding, units_));
  if (step) plain_ += QLatin1Char('\n') + QString::fromStdString(working_text(*step, units_));
  copy_->setEnabled(true);
  if (finding.limit)
    html += QStringLiteral("<p>%1 %2 [%3]</p>")
                .arg(tr("Limit from:"), qs(finding.source.text).toHtmlEscaped(),
                     qs(words(finding.source.label)).toHtmlEscaped());
  working_->setHtml(html);
}

}  // namespace burrow
