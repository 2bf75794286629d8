#include "burrow/window/start_page.h"

#include <QFile>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPainterPath>
#include <QScrollArea>
#include <QStyle>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/check/assess.h"
#include "burrow/document/text.h"
#include "burrow/drawing/line_icon.h"
#include "burrow/drawing/small_picture.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/sample_text.h"
#include "burrow/panels/verdict_bar.h"
#include "burrow/words/after_text.h"
#include "samples.h"

namespace burrow {

namespace {

constexpr int ways_width = 380, card_gap = 20, least_card = 240, most_across = 3, picture_px = 132;
constexpr int most_recent_cards = 5;
constexpr QSize thumbnail{72, 40};
constexpr qint64 most_bytes_looked_at = 2'000'000;  ///< a larger crossing is listed without a picture

QFont sized(QFont font, double times, bool bold) {
  font.setPointSizeF(font.pointSizeF() * times);
  font.setBold(bold);
  return font;
}

std::shared_ptr<const CardPicture> picture_of(const Result<Crossing>& crossing, const Tables& tables) {
  if (!crossing) return nullptr;
  return std::make_shared<const CardPicture>(CardPicture{*crossing, assess(*crossing, tables)});
}

/// "14 m · 2 stops".
QString facts_of(const CardPicture& picture, UnitSystem units) {
  const Bore& bore = picture.crossing.bore;
  QString text = text_from(format(bore.exit.station.m - bore.launch.station.m, Dimension::length, units));
  // What is under way, and how a bore ended, comes before what was predicted of it.
  if (const std::string state = record_state(picture.crossing, units); !state.empty())
    return text + QStringLiteral(" · ") + text_from(state);
  const std::vector<FindingCount> counts = finding_counts(picture.assessment.findings);
  if (!counts.empty()) text += QStringLiteral(" · ") + count_words(counts.front());
  return text;
}

}  // namespace

StartCard::StartCard(Kind kind, const Tables& tables, const QString& title, const QString& below, QWidget* parent)
    : QAbstractButton(parent), kind_(kind), tables_(tables), below_(below) {
  setText(title);
  setAccessibleName(title);
  setAccessibleDescription(below);
  setFocusPolicy(Qt::StrongFocus);
  setAttribute(Qt::WA_Hover);
  setCursor(Qt::PointingHandCursor);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void StartCard::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QSize StartCard::minimumSizeHint() const {
  return {200, sizeHint().height()};
}

QSize StartCard::sizeHint() const {
  const int words = fontMetrics().height() * 2 + 24;
  return kind_ == Kind::picture ? QSize(300, picture_px + words) : QSize(300, words + 4);
}

void StartCard::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  switch (kind_) {
    case Kind::way:
      paint_way(painter);
      break;
    case Kind::picture:
      paint_picture(painter);
      break;
    case Kind::lesson:
      paint_lesson(painter);
      break;
  }
  painter.setBrush(Qt::NoBrush);
  const bool marked = hasFocus() || (underMouse() && kind_ != Kind::way);
  if (!marked && kind_ == Kind::way) return;
  painter.setPen(QPen(marked ? theme_.focus : theme_.line, marked ? 2 : 1));
  painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
}

void StartCard::paint_words(QPainter& painter, const QRectF& room, const QColor& ink, const QColor& soft) const {
  const double half = room.height() / 2;
  painter.setFont(sized(font(), 1.05, true));
  painter.setPen(ink);
  const QFontMetricsF strong(painter.font());
  painter.drawText(QRectF(room.left(), room.top(), room.width(), half), Qt::AlignLeft | Qt::AlignBottom,
                   strong.elidedText(text(), Qt::ElideRight, room.width()));
  painter.setFont(sized(font(), 0.93, false));
  painter.setPen(soft);
  const QFontMetricsF plain(painter.font());
  painter.drawText(QRectF(room.left(), room.top() + half, room.width(), half), Qt::AlignLeft | Qt::AlignTop,
                   plain.elidedText(below_, picture_ ? Qt::ElideRight : Qt::ElideMiddle, room.width()));
}

void StartCard::paint_way(QPainter& painter) const {
  const QColor ink = main_ ? (theme_.dark ? theme_.paper : QColor(Qt::white)) : theme_.ink;
  if (main_ || underMouse() || isDown()) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(main_ ? theme_.focus : theme_.select);
    painter.drawRoundedRect(QRectF(rect()), 8, 8);
  }
  const QRectF small_area(QPointF(8, (height() - thumbnail.height()) / 2.0), thumbnail);
  if (picture_) {
    paint_crossing(painter, small_area, 3);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme_.line, 1));
    painter.drawRect(small_area);
  } else {
    paint_line_icon(painter, QRectF(14, height() / 2.0 - 11, 22, 22), icon_, ink);
  }
  const double left = picture_ ? small_area.right() + 10 : 52;
  const QFontMetricsF small(sized(font(), 0.85, true));
  const double keys = keys_.isEmpty() ? 0 : small.horizontalAdvance(keys_) + 14;
  paint_words(painter, QRectF(left, 6, width() - 18 - left - keys, height() - 12), ink, main_ ? ink : theme_.ink_soft);
  if (keys_.isEmpty()) return;
  const QRectF plate(width() - keys - 12, height() / 2.0 - 10, keys, 20);
  painter.setFont(sized(font(), 0.85, true));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(ink, 1));
  painter.drawRoundedRect(plate, 4, 4);
  painter.drawText(plate, Qt::AlignCenter, keys_);
}

/// `coarser` times smaller than a card has room for.
void StartCard::paint_crossing(QPainter& painter, const QRectF& area, double coarser) const {
  Style style;
  style.theme = theme_;
  const Scene scene{picture_->crossing, picture_->assessment, tables_, Frame{}, style, Interaction{}};
  painter.save();
  painter.setClipRect(area, Qt::IntersectClip);
  painter.fillRect(area, theme_.sky);
  painter.translate(area.topLeft());
  painter.scale(1 / coarser, 1 / coarser);
  const QRectF room(QPointF(0, 0), area.size() * coarser);
  OverviewScale scale = overview_scale(room, picture_->crossing, picture_->assessment);
  const double more = 0.25 * (scale.high_m - scale.low_m);
  scale.high_m += more;
  scale.low_m -= more;
  paint_small_picture(painter, scale, scene, {});
  painter.restore();
}

void StartCard::show_facts(std::shared_ptr<const CardPicture> picture, const QString& facts) {
  picture_ = std::move(picture);
  below_ = facts + QStringLiteral(" · ") + below_;
  setAccessibleDescription(below_);
  update();
}

void StartCard::paint_picture(QPainter& painter) const {
  QPainterPath round;
  round.addRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
  painter.save();
  painter.setClipPath(round);
  painter.fillRect(rect(), theme_.field);
  const QRectF area(1, 1, width() - 2, picture_px);
  painter.fillRect(area, theme_.sky);
  if (picture_) paint_crossing(painter, area, 1);
  painter.restore();
  QRectF room(14, picture_px + 8, width() - 28, height() - picture_px - 14);
  paint_words(painter, room, theme_.ink, theme_.ink_soft);
}

void StartCard::paint_lesson(QPainter& painter) const {
  painter.setPen(Qt::NoPen);
  painter.setBrush(theme_.field);
  painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
  paint_line_icon(painter, QRectF(14, height() / 2.0 - 11, 22, 22), QStringLiteral("lesson"), theme_.ink_soft);
  paint_words(painter, QRectF(50, 6, width() - 62, height() - 12), theme_.ink, theme_.ink_soft);
}

StartPage::StartPage(const Tables& tables, UnitSystem units, QWidget* parent)
    : QWidget(parent), tables_(tables), units_(units) {
  setAccessibleName(tr("Start page"));
  ways_ = make_ways();
  auto* scroll = new QScrollArea(this);
  samples_ = make_samples();
  scroll->setWidget(samples_);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFocusPolicy(Qt::NoFocus);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  auto* left = new QScrollArea(this);
  left->setWidget(ways_);
  left->setWidgetResizable(true);
  left->setFrameShape(QFrame::NoFrame);
  left->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  left->setFocusPolicy(Qt::NoFocus);
  left->setFixedWidth(ways_width);
  row->addWidget(left);
  row->addWidget(scroll, 1);
}

StartCard* StartPage::add_card(StartCard::Kind kind, const QString& title, const QString& below, QWidget* parent) {
  auto* card = new StartCard(kind, tables_, title, below, parent);
  cards_.push_back(card);
  return card;
}

QWidget* StartPage::make_ways() {
  auto* column = new QWidget(this);
  column->setAutoFillBackground(true);
  column->setBackgroundRole(QPalette::Base);
  auto* rows = new QVBoxLayout(column);
  rows->setContentsMargins(28, 32, 24, 20);
  auto* name = new QLabel(tr("Burrowline"), column);
  name->setFont(sized(font(), 2.4, false));
  auto* what =
      new QLabel(tr("Lay out a crossing. See where the bore goes, how sure that is, and what it passes."), column);
  what->setWordWrap(true);
  rows->addWidget(name);
  rows->addWidget(what);
  rows->addSpacing(14);
  const auto way = [&](const QString& title, const QString& below, const char* icon, const QString& keys, auto wanted) {
    StartCard* card = add_card(StartCard::Kind::way, title, below, column);
    card->set_icon(QString::fromLatin1(icon));
    card->set_keys(keys);
    connect(card, &QAbstractButton::clicked, this, wanted);
    rows->addWidget(card);
    return card;
  };
  const auto keys = [](Qt::Key key) { return QKeySequence(Qt::CTRL | key).toString(QKeySequence::NativeText); };
  way(tr("New crossing"), tr("a few questions, then the drawing"), "new", keys(Qt::Key_N), &StartPage::new_wanted)
      ->set_main(true);
  way(tr("Open"), tr("a crossing file"), "open", keys(Qt::Key_O), &StartPage::open_wanted);
  way(tr("Import a survey"), tr("points, drawing, map or heights"), "import", keys(Qt::Key_I),
      &StartPage::import_wanted);
  way(tr("Blank crossing"), tr("level ground, nothing in it"), "add", {}, &StartPage::blank_wanted);
  rows->addSpacing(10);
  auto* head = new QLabel(tr("Open recent"), column);
  head->setFont(sized(font(), 1, true));
  rows->addWidget(head);
  recent_ = new QVBoxLayout;
  recent_->setSpacing(2);
  rows->addLayout(recent_);
  none_recent_ = new QLabel(tr("Crossings you open are listed here."), column);
  none_recent_->setWordWrap(true);
  rows->addWidget(none_recent_);
  rows->addStretch(1);
  auto* foot = new QLabel(tr("Nothing is sent anywhere. Files stay on this computer."), column);
  foot->setFont(sized(font(), 0.9, false));
  foot->setWordWrap(true);
  rows->addWidget(foot);
  column->setMinimumWidth(ways_width - style()->pixelMetric(QStyle::PM_ScrollBarExtent));
  return column;
}

QWidget* StartPage::make_samples() {
  auto* page = new QWidget(this);
  samples_head_ = new QLabel(tr("Samples: open one and drag the round grips"), page);
  lessons_head_ = new QLabel(tr("Lessons: bore as on site, then see what the tool really did"), page);
  for (QLabel* head : {samples_head_, lessons_head_}) head->setFont(sized(font(), 1.25, true));
  for (const Sample& sample : samples_of_the_program()) {
    QFile file(QStringLiteral(":/samples/%1.crossing").arg(sample.key()));
    if (!file.open(QIODevice::ReadOnly)) continue;
    const auto picture = picture_of(read_crossing(sample_in_language(file.readAll().toStdString()), tables_), tables_);
    const auto kind = sample.lesson ? StartCard::Kind::lesson : StartCard::Kind::picture;
    StartCard* card = add_card(kind, sample.title(), picture ? facts_of(*picture, units_) : QString(), page);
    if (!sample.lesson) card->set_picture(picture);
    connect(card, &QAbstractButton::clicked, this, [this, name = sample.key()] { Q_EMIT sample_wanted(name); });
    (sample.lesson ? lesson_cards_ : sample_cards_).push_back(card);
  }
  return page;
}

/// In as many columns as find room, at most three; the widget grows downward and scrolls.
void StartPage::place_samples() {
  constexpr int margin = 36;
  const int wide = width() - ways_width;
  const int across = std::clamp((wide - 2 * margin + card_gap) / (least_card + card_gap), 1, most_across);
  const int card = (wide - 2 * margin - (across - 1) * card_gap) / across;
  int y = margin;
  const auto place = [&](QLabel* head, const std::vector<StartCard*>& cards, int gap) {
    head->setGeometry(margin, y, wide - 2 * margin, head->sizeHint().height());
    y += head->height() + 12;
    for (std::size_t i = 0; i < cards.size(); ++i) {
      const int column = static_cast<int>(i) % across;
      const int high = cards[i]->sizeHint().height();
      cards[i]->setGeometry(margin + column * (card + card_gap), y, card, high);
      if (column == across - 1 || i + 1 == cards.size()) y += high + gap;
    }
    y += 20;
  };
  place(samples_head_, sample_cards_, card_gap);
  place(lessons_head_, lesson_cards_, 12);
  samples_->setMinimumHeight(y);
}

void StartPage::show_recent(const QStringList& paths) {
  for (StartCard* card : recent_cards_) {
    std::erase(cards_, card);
    card->deleteLater();
  }
  recent_cards_.clear();
  recent_paths_ = paths.mid(0, most_recent_cards);
  for (const QString& path : recent_paths_) {
    const QFileInfo info(path);
    const bool there = info.exists();
    StartCard* card = add_card(StartCard::Kind::way, info.completeBaseName(),
                               there ? info.absolutePath() : tr("no longer there: %1").arg(info.absolutePath()), ways_);
    card->set_icon(QStringLiteral("sheet"));
    card->set_theme(theme_);
    card->setEnabled(there);
    connect(card, &QAbstractButton::clicked, this, [this, path] { Q_EMIT file_wanted(path); });
    recent_->addWidget(card);
    recent_cards_.push_back(card);
  }
  none_recent_->setVisible(recent_cards_.empty());
  looked_at_ = 0;
  QTimer::singleShot(0, this, &StartPage::look_at_next);
}

/// One file a turn of the event loop, so that the page is there at once. What cannot be read keeps its sign: opening it
/// says why.
void StartPage::look_at_next() {
  while (looked_at_ < recent_cards_.size()) {
    StartCard* card = recent_cards_[looked_at_];
    const QString& path = recent_paths_[static_cast<qsizetype>(looked_at_)];
    ++looked_at_;
    const QFileInfo info(path);
    if (!info.isFile() || info.size() > most_bytes_looked_at) continue;
    const Result<std::string> text = read_regular_file(path.toStdString());
    if (!text) continue;
    if (const auto picture = picture_of(read_crossing(*text, tables_), tables_))
      card->show_facts(picture, facts_of(*picture, units_));
    QTimer::singleShot(0, this, &StartPage::look_at_next);
    return;
  }
}

void StartPage::set_theme(const Theme& theme) {
  theme_ = theme;
  for (StartCard* card : cards_) card->set_theme(theme);
  update();
}

void StartPage::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  place_samples();
}

void StartPage::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.panel);
}

}  // namespace burrow
