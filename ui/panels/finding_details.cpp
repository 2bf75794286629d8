#include "finding_details.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QPushButton>
#include <QRegularExpression>
#include <QTextBrowser>
#include <QTextDocument>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/check/mute.h"
#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "burrow/words/working_text.h"
#include "flow_row.h"

namespace burrow {

namespace {

/// A symbol as it is set in print: its letter slanted, what stands behind "_" lowered.
QString symbol_html(const QString& symbol) {
  const qsizetype low = symbol.indexOf(QLatin1Char('_'));
  const QString letter = symbol.left(low).toHtmlEscaped();
  const QString set = QStringLiteral("<i>%1</i>").arg(letter);
  return low < 0 ? set : set + QStringLiteral("<sub>%1</sub>").arg(symbol.mid(low + 1).toHtmlEscaped());
}

/// Single letters, pairs with a capital or a Greek one, and what has a lower index are symbols; the rest are words.
bool is_symbol(const QString& letters, bool lowered) {
  const auto plain = [](QChar c) { return c >= QLatin1Char('a') && c <= QLatin1Char('z'); };
  return lowered || letters.size() == 1 || (letters.size() == 2 && !std::all_of(letters.begin(), letters.end(), plain));
}

QString formula_html(const QString& formula) {
  static const QRegularExpression name(QStringLiteral("(\\p{L}+′*)(_[\\p{L}\\d,]+)?"),
                                       QRegularExpression::UseUnicodePropertiesOption);
  QString html;
  qsizetype from = 0;
  for (auto it = name.globalMatch(formula); it.hasNext();) {
    const QRegularExpressionMatch match = it.next();
    html += formula.mid(from, match.capturedStart() - from).toHtmlEscaped();
    const bool symbol = is_symbol(match.captured(1), match.capturedLength(2) > 0);
    html += symbol ? symbol_html(match.captured()) : match.captured().toHtmlEscaped();
    from = match.capturedEnd();
  }
  return html + formula.mid(from).toHtmlEscaped();
}

QString calculation_html(const Working& w, UnitSystem units) {
  const QString formula = text_from(working_formula(w));
  QString html = QStringLiteral("<p>%1</p><table cellspacing='0' cellpadding='3' width='100%'>")
                     .arg(formula_html(formula).replace(QStringLiteral("; "), QStringLiteral("<br>")));
  const auto line = [&](std::string_view symbol, const std::string& text, bool strong) {
    const QString number = text_from(text).toHtmlEscaped();
    const QString row = strong ? QStringLiteral("<tr><td>%1</td><td align='right'><b>%2</b></td></tr>")
                               : QStringLiteral("<tr><td>%1</td><td align='right'>%2</td></tr>");
    html += row.arg(symbol == "limit" ? QObject::tr("limit") : symbol_html(text_from(symbol)), number);
  };
  for (const WorkingInput& input : w.inputs) line(input.symbol, working_input(input, units), false);
  line(w.symbol, working_number(w.value, w.unit, units, w.symbol), true);
  if (w.limit) line("limit", working_number(*w.limit, w.unit, units, w.symbol), false);
  html += QStringLiteral("</table><p>%1 %2 [%3]</p>")
              .arg(QObject::tr("Formula from:"), text_from(w.source.text).toHtmlEscaped(),
                   text_from(burrow::label_text(w.source.label)).toHtmlEscaped());
  return html;
}

QString remedy_words(const Remedy& remedy, UnitSystem units) {
  const QString level = text_from(format(remedy.value_m, Dimension::station, units));
  const QString size = text_from(format(remedy.value_m, Dimension::length, units));
  switch (remedy.kind) {
    case RemedyKind::lower:
      return QObject::tr("Lower the launch to %1").arg(level);
    case RemedyKind::raise:
      return QObject::tr("Raise the launch to %1").arg(level);
    case RemedyKind::longer_floor:
      return QObject::tr("Make the floor %1 long").arg(size);
    case RemedyKind::wider_floor:
      break;
  }
  return QObject::tr("Make the floor %1 wide").arg(size);
}

/// In which a finding about a line asks for it to be seen.
bool asks_for_a_hole(const Finding& finding) {
  return finding.code == "utility.expose" || finding.code == "utility.separation" ||
         finding.code == "utility.contact" || finding.code == "utility.encroachment" ||
         finding.code == "missing.exposure";
}

}  // namespace

FindingDetails::FindingDetails(Document& document, QWidget* parent)
    : QFrame(parent),
      document_(document),
      tables_(document.tables()),
      to_do_(new QLabel(this)),
      actions_row_(new FlowRow(nullptr)),
      working_(new QTextBrowser(this)),
      bar_(new MeasureBar(this)),
      mute_(new QPushButton(tr("Accept with reason…"), this)),
      unmute_(new QPushButton(tr("No longer accept"), this)),
      copy_(new QPushButton(tr("Copy"), this)),
      form_(new MuteForm(this)) {
  setObjectName(QStringLiteral("details"));
  setAutoFillBackground(true);
  to_do_->setWordWrap(true);
  working_->setFrameShape(QFrame::NoFrame);
  working_->setAccessibleName(tr("Calculation of the selected finding"));
  working_->setOpenLinks(false);
  working_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  working_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  working_->document()->setDocumentMargin(0);
  for (QPushButton* button : {mute_, unmute_, copy_}) button->setAutoDefault(false);
  mute_->setIcon(line_icon(QStringLiteral("accept")));
  mute_->setToolTip(tr("Say why it may stand (M). It stays in the list and on the sheet."));
  mute_->setAccessibleName(tr("Accept the finding with a reason"));
  unmute_->setToolTip(tr("Lets it count again (U)"));
  unmute_->setAccessibleName(tr("No longer accept the finding"));
  copy_->setIcon(line_icon(QStringLiteral("duplicate")));
  copy_->setToolTip(tr("Copies the finding and its calculation as text"));
  copy_->setAccessibleName(tr("Copy the calculation"));
  connect(copy_, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(plain_); });
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 8);
  column->setSpacing(6);
  column->addWidget(to_do_);
  column->addLayout(actions_row_);
  column->addWidget(working_);
  column->addWidget(bar_);
  auto* buttons = new FlowRow(nullptr);
  for (QPushButton* button : {mute_, unmute_, copy_}) buttons->addWidget(button);
  column->addLayout(buttons);
  column->addWidget(form_);
  form_->hide();
  form_->installEventFilter(this);
}

void FindingDetails::set_units(UnitSystem units) {
  units_ = units;
  show_finding(finding_);
}

void FindingDetails::set_theme(const Theme& theme) {
  theme_ = theme;
  QPalette colours = palette();
  colours.setColor(QPalette::Window, theme.field);
  colours.setColor(QPalette::WindowText, theme.ink);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Text, theme.ink);
  setPalette(colours);
  working_->setPalette(colours);
  bar_->set_theme(theme);
  form_->set_theme(theme);
}

void FindingDetails::show_finding(const std::optional<Finding>& finding) {
  const bool same = finding && finding_ && finding->code == finding_->code && finding->subject == finding_->subject;
  finding_ = finding;
  if (!same) clear_actions();
  show_working();
  if (!finding_) return;
  show_bar(*finding_);
  if (!document_.in_session() && found_old()) seek_remedies();
  Q_EMIT resized();
}

void FindingDetails::show_working() {
  if (!finding_) {
    for (QPushButton* button : {copy_, mute_}) button->setEnabled(false);
    unmute_->setVisible(false);
    to_do_->hide();
    bar_->show_measure(std::nullopt);
    working_->setPlainText(
        tr("Select a finding, here or by its flag, to see how its number came about and where its limit comes from."));
    fit_working();
    return;
  }
  const QString what = text_from(advice(*finding_));
  to_do_->setText(what);
  to_do_->setVisible(!what.isEmpty());
  QString html;
  if (finding_->muted)
    html +=
        QStringLiteral("<p><b>%1</b> %2</p>").arg(tr("Accepted:"), text_from(finding_->muted->reason).toHtmlEscaped());
  const Working* step = working_of(document_.assessment(), *finding_);
  if (step) html += calculation_html(*step, units_);
  if (finding_->limit)
    html += QStringLiteral("<p>%1 %2 [%3]</p>")
                .arg(tr("Limit from:"), text_from(finding_->source.text).toHtmlEscaped(),
                     text_from(burrow::label_text(finding_->source.label)).toHtmlEscaped());
  if (html.isEmpty()) html = QStringLiteral("<p>%1</p>").arg(tr("Nothing was calculated for it."));
  plain_ = text_from(finding_text(*finding_, units_));
  if (step) plain_ += QLatin1Char('\n') + text_from(working_text(*step, units_));
  working_->setHtml(html);
  fit_working();
  const Mute* said = mute_of(document_.crossing(), *finding_);
  copy_->setEnabled(true);
  mute_->setEnabled(true);
  mute_->setVisible(may_be_accepted(document_.crossing(), *finding_));
  mute_->setText(said ? tr("Change the reason…") : tr("Accept with reason…"));
  unmute_->setVisible(said != nullptr);
}

/// As high as its text: it does not scroll by itself.
void FindingDetails::fit_working() {
  QTextDocument* text = working_->document();
  text->setTextWidth(std::max(120, width() - 20));
  working_->setFixedHeight(static_cast<int>(std::ceil(text->size().height())) + 2);
}

void FindingDetails::show_bar(const Finding& finding) {
  if (!finding.measured || !finding.limit || !std::isfinite(*finding.measured) || !std::isfinite(*finding.limit)) {
    bar_->show_measure(std::nullopt);
    return;
  }
  const auto text = [&](double value) { return text_from(working_number(value, finding.unit, units_, "")); };
  const double m = *finding.measured, l = *finding.limit;
  bar_->show_measure(MeasureBar::Shown{m, l, finding.at_least ? m >= l : m <= l, text(m), text(l)});
}

void FindingDetails::clear_actions() {
  for (QPushButton* button : actions_) button->deleteLater();
  actions_.clear();
  remedies_.clear();
  sought_for_.reset();
  Q_EMIT preview_changed(nullptr);
}

void FindingDetails::seek_remedies() {
  sought_for_ = document_.crossing();
  const Finding finding = *finding_;
  job_.start([this, crossing = *sought_for_, now = document_.assessment(),
              finding](const LatestJob::Work& work) -> LatestJob::OnScreen {
    std::vector<Remedy> found = remedies(crossing, tables_, now, finding, work.stop());
    return [this, found = std::move(found)]() mutable { show_remedies(std::move(found)); };
  });
}

QPushButton* FindingDetails::add_action(const QString& text, const QString& icon) {
  auto* button = new QPushButton(line_icon(icon), text, this);
  button->setAutoDefault(false);
  actions_row_->addWidget(button);
  actions_.push_back(button);
  button->show();
  return button;
}

void FindingDetails::show_remedies(std::vector<Remedy> found) {
  for (QPushButton* button : actions_) button->deleteLater();
  actions_.clear();
  remedies_ = std::move(found);
  if (!finding_) return;
  if (found_old()) remedies_.clear();
  // At a line that can hurt, seeing it comes first.
  if (asks_for_a_hole(*finding_)) {
    QPushButton* hole = add_action(tr("Test hole: where to dig"), QStringLiteral("test-hole"));
    connect(hole, &QPushButton::clicked, this, [this] { Q_EMIT hole_wanted(text_from(finding_->subject)); });
  }
  for (std::size_t i = 0; i < remedies_.size(); ++i) {
    QPushButton* button = add_action(remedy_words(remedies_[i], units_), QStringLiteral("bore"));
    QStringList tip{tr("One step, which can be undone; shown on the drawing while the pointer is here")};
    for (const Finding& f : remedies_[i].brings) tip << tr("brings: %1").arg(text_from(finding_text(f, units_)));
    button->setToolTip(tip.join(QLatin1Char('\n')));
    button->setProperty("remedy", static_cast<int>(i));
    button->installEventFilter(this);
    connect(button, &QPushButton::clicked, this, [this, i] { apply(i); });
  }
  Q_EMIT resized();
}

/// None was sought, or the crossing is another by now.
bool FindingDetails::found_old() const {
  return !sought_for_ || *sought_for_ != document_.crossing();
}

void FindingDetails::apply(std::size_t remedy) {
  Q_EMIT preview_changed(nullptr);
  // Found for a crossing that has changed since: it would take the change back, and may mend nothing.
  if (found_old()) {
    if (finding_) seek_remedies();
    return;
  }
  const Crossing after = remedies_[remedy].after;
  const QString step = remedy_words(remedies_[remedy], units_);
  if (!document_.change(step, [&](Crossing& c) {
        c.bore = after.bore;
        c.pits = after.pits;
      }))
    Q_EMIT refused(tr("Nothing may be changed: %1").arg(document_.read_only_because()));
}

bool FindingDetails::eventFilter(QObject* watched, QEvent* event) {
  if (watched == form_ && (event->type() == QEvent::Show || event->type() == QEvent::Hide)) Q_EMIT resized();
  const bool on = event->type() == QEvent::Enter || event->type() == QEvent::FocusIn;
  const bool off = event->type() == QEvent::Leave || event->type() == QEvent::FocusOut;
  if ((on || off) && watched->property("remedy").isValid()) {
    const auto at = static_cast<std::size_t>(watched->property("remedy").toInt());
    std::shared_ptr<const GhostLayout> layout;
    if (on && at < remedies_.size() && !found_old())
      layout = std::make_shared<const GhostLayout>(GhostLayout{
          remedies_[at].after, assess(remedies_[at].after, document_.tables(), document_.assessment().ground_surface)});
    Q_EMIT preview_changed(layout);
  }
  return QFrame::eventFilter(watched, event);
}

void FindingDetails::resizeEvent(QResizeEvent* event) {
  QFrame::resizeEvent(event);
  if (event->oldSize().width() != event->size().width()) fit_working();
}

}  // namespace burrow
