#include "day_deck.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QTextDocument>
#include <algorithm>

namespace burrow {

namespace {

constexpr int usual_px = 13, least_px = 10;
constexpr int large = 64, glove = 48, usual_advice = 150, low_advice = 128, gap = 6;

QString key_in(const QString& words, const char* key) {
  return QStringLiteral("%1 [%2]").arg(words, QLatin1String(key));
}

/// Colours by a style sheet: the platform's style draws no palette on a button.
void paint(QPushButton* button, const QColor& ground, const QColor& ink, const QColor& off) {
  button->setStyleSheet(
      QStringLiteral("QPushButton { background: %1; color: %2; border: 1px solid %2; border-radius: 10px; "
                     "font-weight: bold; padding: 2px; } QPushButton:disabled { background: transparent; "
                     "color: %3; border: 1px solid %3; } QPushButton:focus { border: 3px solid %2; }")
          .arg(ground.name(), ink.name(), off.name()));
}

}  // namespace

DayDeck::DayDeck(QWidget* parent)
    : QWidget(parent),
      advice_(new QLabel(this)),
      nose_(new QLabel(this)),
      pace_(new QLabel(this)),
      start_(new QPushButton(this)),
      mark_(new QPushButton(this)),
      stop_(new QPushButton(key_in(tr("AIR OFF"), "S") + QLatin1Char('\n') + tr("log stop"), this)),
      done_(new QPushButton(key_in(tr("Done"), "K"), this)),
      go_(new QPushButton(key_in(tr("Goes on"), "G"), this)),
      danger_(new QPushButton(key_in(tr("DANGER"), "X"), this)) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(10, 8, 8, 4);
  grid->setSpacing(gap);
  advice_->setWordWrap(true);
  advice_->setMargin(6);
  advice_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  advice_->setFixedHeight(advice_height());
  advice_->setAccessibleName(tr("Advice"));
  advice_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  advice_->setFocusPolicy(Qt::NoFocus);
  advice_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  grid->addWidget(advice_, 0, 0, 1, 6);
  nose_->setAccessibleName(tr("Nose"));
  pace_->setAccessibleName(tr("Pace"));
  QFont bold = nose_->font();
  bold.setBold(true);
  nose_->setFont(bold);
  for (QLabel* line : {nose_, pace_}) {
    line->setWordWrap(true);
    line->setFixedHeight((line == pace_ ? 2 : 1) * line->fontMetrics().lineSpacing() + 4);
    line->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  }
  grid->addWidget(nose_, 1, 0, 1, 6);
  grid->addWidget(pace_, 2, 0, 1, 6);
  for (QPushButton* button : {start_, mark_, stop_}) button->setFixedHeight(large);
  for (QPushButton* button : {done_, go_, danger_}) button->setFixedHeight(glove);
  for (QPushButton* button : {start_, mark_, stop_, done_, go_, danger_}) {
    button->setAutoDefault(false);
    button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  }
  grid->addWidget(start_, 3, 0, 1, 3);
  grid->addWidget(mark_, 3, 0, 1, 3);
  grid->addWidget(stop_, 3, 3, 1, 3);
  grid->addWidget(done_, 4, 0, 1, 2);
  grid->addWidget(go_, 4, 2, 1, 2);
  grid->addWidget(danger_, 4, 4, 1, 2);
  for (int column = 0; column < 6; ++column) grid->setColumnStretch(column, 1);
  make_rows();
  grid->addLayout(rows_, 5, 0, 1, 6);

  const auto taps = [this](QPushButton* button, const char* key, void (DayDeck::*signal)()) {
    connect(button, &QPushButton::clicked, this, signal);
    // Nothing is taken from who types: an entry that has the focus gets its letters first.
    auto* shortcut = new QShortcut(QKeySequence(QLatin1String(key)), this);
    connect(shortcut, &QShortcut::activated, button, [button] {
      if (button->isVisible()) button->click();
    });
  };
  taps(start_, "B", &DayDeck::start_tapped);
  taps(mark_, "M", &DayDeck::mark_tapped);
  taps(stop_, "S", &DayDeck::stop_tapped);
  taps(done_, "K", &DayDeck::done_tapped);
  taps(go_, "G", &DayDeck::go_tapped);
  taps(danger_, "X", &DayDeck::danger_tapped);
  danger_->setToolTip(tr("Struck, smell, hiss, water, smoke, ground moves, lights fail: one tap, then everybody out"));
  stop_->setToolTip(tr("The button shuts no air: a hand does. It writes down that the tool has stopped."));
}

void DayDeck::make_rows() {
  rows_ = new QGridLayout;
  rows_->setSpacing(2);
  for (std::size_t i = 0; i < rows_shown; ++i) {
    Cell& cell = cells_[i];
    cell.text = new QLabel(this);
    cell.text->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    cell.undo = new QPushButton(this);
    cell.undo->setAutoDefault(false);
    cell.text->setFixedHeight(glove);
    cell.undo->setFixedHeight(glove);
    connect(cell.undo, &QPushButton::clicked, this, [this, i] {
      if (i < state_.rows.size()) Q_EMIT taken_back(state_.rows[i].reading);
    });
  }
  place_rows();
}

/// Two beside each other with their crosses; on a low screen all five beside each other, each a cross with its words.
void DayDeck::place_rows() {
  while (QLayoutItem* item = rows_->takeAt(0)) delete item;
  for (int column = 0; column < static_cast<int>(rows_shown); ++column) rows_->setColumnStretch(column, low_ ? 1 : 0);
  for (std::size_t i = 0; i < rows_shown; ++i) {
    Cell& cell = cells_[i];
    const int at = static_cast<int>(i);
    cell.text->setVisible(!low_);
    cell.undo->setMinimumWidth(glove);
    cell.undo->setMaximumWidth(low_ ? QWIDGETSIZE_MAX : glove);
    cell.undo->setSizePolicy(low_ ? QSizePolicy::Ignored : QSizePolicy::Fixed, QSizePolicy::Fixed);
    if (low_) {
      rows_->addWidget(cell.undo, 0, at);
      continue;
    }
    rows_->addWidget(cell.text, at / 2, at % 2 * 2);
    rows_->addWidget(cell.undo, at / 2, at % 2 * 2 + 1);
  }
  if (!low_)
    for (const int words : {0, 2}) rows_->setColumnStretch(words, 1);
}

int DayDeck::advice_height() const {
  return low_ ? low_advice : usual_advice;
}

void DayDeck::set_low(bool low) {
  if (low == low_) return;
  low_ = low;
  advice_->setFixedHeight(advice_height());
  place_rows();
  show_advice();
  show_rows();
}

void DayDeck::set_theme(const Theme& theme) {
  theme_ = theme;
  colour();
}

void DayDeck::colour() {
  QColor off = theme_.ink_soft;
  // What nobody advises does not look like the thing to do.
  for (QPushButton* on : {start_, mark_})
    paint(on, state_.advised ? theme_.focus : theme_.field, state_.advised ? theme_.field : theme_.ink, off);
  for (QPushButton* red : {stop_, danger_}) paint(red, theme_.stop, theme_.on_stop, off);
  for (QPushButton* plain : {done_, go_}) paint(plain, theme_.field, theme_.ink, off);
  colour_advice();
}

void DayDeck::show_state(const State& state) {
  state_ = state;
  start_->setText(key_in(state.start, "B"));
  start_->setVisible(state.may_start);
  start_->setEnabled(state.may_start);
  mark_->setVisible(!state.may_start);
  mark_->setText(state.mark.isEmpty() ? key_in(tr("Mark"), "M")
                                      : key_in(tr("Mark"), "M") + QLatin1Char('\n') + tr("nose at %1").arg(state.mark));
  mark_->setEnabled(state.may_mark);
  stop_->setEnabled(state.may_stop);
  done_->setEnabled(state.may_tick);
  go_->setEnabled(state.may_go);
  nose_->setText(state.nose);
  pace_->setText(state.pace);
  show_advice();
  show_rows();
  colour();
}

/// The reason goes with it, in one line where there is no room for all of it; the block never grows.
void DayDeck::show_advice() {
  const auto html = [&](const QString& reason, int px) {
    QString text =
        QStringLiteral("<p style='font-size:%1px; margin:0'><b>%2</b></p><p style='font-size:%3px; margin:0'>%4</p>")
            .arg(px + 3)
            .arg(state_.title.toHtmlEscaped())
            .arg(px)
            .arg(state_.text.toHtmlEscaped());
    if (!reason.isEmpty())
      text += QStringLiteral("<p style='font-size:%1px; margin-top:4px; margin-bottom:0'>%2</p>")
                  .arg(px)
                  .arg(reason.toHtmlEscaped());
    return text;
  };
  const auto fits = [&](const QString& text) {
    QTextDocument page;
    page.setDefaultFont(advice_->font());
    page.setDocumentMargin(0);
    page.setHtml(text);
    page.setTextWidth(std::max(100, width() - 18 - 2 * advice_->margin()));
    return page.size().height() <= advice_height() - 2 * advice_->margin();
  };
  advice_->setToolTip(state_.reason);
  QFont small = advice_->font();
  small.setPixelSize(usual_px);
  const int room = std::max(100, width() - 18 - 2 * advice_->margin());
  const QString one_line = QFontMetrics(small).elidedText(state_.reason, Qt::ElideRight, room);
  QString shown;
  for (const QString& reason : {state_.reason, one_line, QString()})
    if (shown = html(reason, usual_px); fits(shown)) return advice_->setText(shown);
  // What to do is never cut: in a language of long words it gets smaller first.
  for (int px = usual_px - 1; px >= least_px; --px)
    if (shown = html({}, px); fits(shown)) break;
  advice_->setText(shown);
}

void DayDeck::colour_advice() {
  QPalette colours = palette();
  if (state_.ground.isValid()) {
    colours.setColor(QPalette::Window, state_.ground);
    colours.setColor(QPalette::WindowText, state_.ink);
  }
  advice_->setAutoFillBackground(state_.ground.isValid());
  advice_->setPalette(colours);
}

void DayDeck::show_row(std::size_t i) {
  const Row& row = state_.rows[i];
  const Cell& cell = cells_[i];
  const QString what = (row.asked ? QStringLiteral("? ") : QString()) + row.what;
  cell.undo->setEnabled(!row.struck);
  cell.undo->setAccessibleName(tr("Take back: %1").arg(what));
  cell.undo->setToolTip(cell.undo->accessibleName());
  if (low_) {
    const int room = std::max(20, width() / static_cast<int>(rows_shown) - 12);
    cell.undo->setText(QStringLiteral("✕ ") + row.when + QLatin1Char('\n') +
                       cell.undo->fontMetrics().elidedText(what, Qt::ElideRight, room));
    return;
  }
  cell.undo->setText(QStringLiteral("✕"));
  const int room = std::max(20, (width() - 18) / 2 - glove - 8);
  const QString shown = cell.text->fontMetrics().elidedText(what, Qt::ElideRight, room).toHtmlEscaped();
  cell.text->setText(QStringLiteral("<b>%1</b><br>%2")
                         .arg(row.when.toHtmlEscaped(), row.struck ? QStringLiteral("<s>%1</s>").arg(shown) : shown));
  cell.text->setToolTip(what);
}

void DayDeck::show_rows() {
  for (std::size_t i = 0; i < rows_shown; ++i) {
    const bool any = i < state_.rows.size();
    cells_[i].undo->setVisible(any);
    cells_[i].text->setText({});
    if (any) show_row(i);
  }
}

void DayDeck::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  show_advice();
  show_rows();
}

}  // namespace burrow
