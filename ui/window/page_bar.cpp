#include "burrow/window/page_bar.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/drawing/line_icon.h"

namespace burrow {

namespace {
constexpr int bar_height = 3;
constexpr int usual_padding = 10, least_padding = 4;
constexpr double least_scale = 0.6, scale_step = 0.02;

QFont bold(QFont font) {
  font.setBold(true);
  return font;
}
}  // namespace

PageButton::PageButton(const QString& name, QWidget* parent) : QPushButton(name, parent) {
  setCheckable(true);
  setAutoDefault(false);
  setFlat(true);
  setFocusPolicy(Qt::StrongFocus);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  setAccessibleName(name);
}

void PageButton::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

void PageButton::set_padding(int px) {
  if (px == padding_) return;
  padding_ = px;
  updateGeometry();
}

void PageButton::set_scale(double scale) {
  if (scale == scale_) return;
  scale_ = scale;
  updateGeometry();
}

QFont PageButton::letters(bool strong) const {
  QFont letters = strong ? bold(font()) : font();
  if (letters.pointSizeF() > 0) letters.setPointSizeF(letters.pointSizeF() * scale_);
  return letters;
}

QSize PageButton::sizeHint() const {
  const QFontMetrics metrics(letters(true));
  return {metrics.horizontalAdvance(text()) + 2 * padding_, std::max(36, metrics.height() + 16)};
}

void PageButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const bool here = isChecked();
  if (underMouse() || isDown()) painter.fillRect(rect(), theme_.field);
  painter.setFont(letters(here));
  painter.setPen(here ? theme_.ink : theme_.ink_soft);
  painter.drawText(rect().adjusted(0, 0, 0, -bar_height), Qt::AlignCenter, text());
  if (here) painter.fillRect(QRect(0, height() - bar_height, width(), bar_height), theme_.focus);
  if (!hasFocus()) return;
  painter.setPen(QPen(theme_.focus, 2));
  painter.drawRect(rect().adjusted(2, 2, -2, -bar_height - 2));
}

PageBar::PageBar(QWidget* parent) : QWidget(parent), row_(new QHBoxLayout(this)), exclusive_(new QButtonGroup(this)) {
  row_->setContentsMargins(8, 4, 4, 1);
  row_->setSpacing(0);
  row_->addStretch(1);
  setAccessibleName(tr("Pages"));
  exclusive_->setExclusive(true);
  connect(exclusive_, &QButtonGroup::idToggled, this, [this](int page, bool on) {
    if (on) check(page);
  });
}

void PageBar::add(const QString& name, const QString& hint) {
  const int page = static_cast<int>(buttons_.size());
  auto* button = new PageButton(name, this);
  button->setToolTip(hint);
  button->setAccessibleDescription(hint);
  row_->insertWidget(row_->count() - 1, button);
  exclusive_->addButton(button, page);
  buttons_.push_back(button);
  groups_.push_back(std::max(group_, 0));
  if (last_.size() <= static_cast<std::size_t>(groups_.back())) last_.push_back(page);
  button->setVisible(false);
}

void PageBar::set_theme(const Theme& theme) {
  theme_ = theme;
  for (PageButton* button : buttons_) button->set_theme(theme);
  update();
}

void PageBar::check(int page) {
  if (!button(page)->isChecked()) {
    button(page)->setChecked(true);  // comes back here
    return;
  }
  const int group = group_of(page);
  last_[static_cast<std::size_t>(group)] = page;
  for (std::size_t i = 0; i < buttons_.size(); ++i) buttons_[i]->setVisible(groups_[i] == group);
  fit_names();
  Q_EMIT wanted(page);
}

int PageBar::after(int page) const {
  const int next = page + 1;
  if (static_cast<std::size_t>(next) < groups_.size() && group_of(next) == group_of(page)) return next;
  return static_cast<int>(std::find(groups_.begin(), groups_.end(), group_of(page)) - groups_.begin());
}

/// Names are never cut: they move together first, then their letters get smaller.
void PageBar::fit_names() {
  std::vector<const PageButton*> shown;
  for (const PageButton* button : buttons_)
    if (!button->isHidden()) shown.push_back(button);
  if (shown.empty()) return;
  const auto width_at = [&](double scale) {
    QFont letters = bold(font());
    letters.setPointSizeF(letters.pointSizeF() * scale);
    const QFontMetrics metrics(letters);
    int wide = 0;
    for (const PageButton* button : shown) wide += metrics.horizontalAdvance(button->text());
    return wide;
  };
  const QMargins margins = row_->contentsMargins();
  const int inside = width() - margins.left() - margins.right(), count = static_cast<int>(shown.size());
  double scale = 1;
  while (scale > least_scale && width_at(scale) + 2 * count * least_padding > inside) scale -= scale_step;
  const int room = (inside - width_at(scale)) / (2 * count);
  for (PageButton* button : buttons_) {
    button->set_padding(std::clamp(room, least_padding, usual_padding));
    button->set_scale(scale);
  }
}

void PageBar::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fit_names();
}

void PageBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.panel);
  painter.fillRect(QRect(0, height() - 1, width(), 1), theme_.line);
}

RailButton::RailButton(const QString& name, const QString& icon, QWidget* parent)
    : QAbstractButton(parent), icon_(icon) {
  setText(name);
  setAccessibleName(name);
  setFocusPolicy(Qt::StrongFocus);
  setAttribute(Qt::WA_Hover);
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void RailButton::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

void RailButton::set_count(int count, const QColor& ground, const QColor& ink) {
  if (count == count_ && ground == count_ground_) return;
  count_ = count;
  count_ground_ = ground;
  count_ink_ = ink;
  setAccessibleDescription(count > 0 ? tr("%n findings that count", nullptr, count) : QString());
  update();
}

void RailButton::set_with_name(bool on) {
  with_name_ = on;
  setToolTip(on ? QString() : text());
  updateGeometry();
}

QSize RailButton::sizeHint() const {
  return with_name_ ? QSize(72, std::max(60, 40 + fontMetrics().height())) : QSize(48, 48);
}

void RailButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  if (isChecked() || underMouse() || isDown()) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme_.field);
    painter.drawRoundedRect(QRectF(rect()).adjusted(4, 2, -4, -2), 6, 6);
  }
  if (isChecked()) painter.fillRect(QRect(width() - bar_height, 4, bar_height, height() - 8), theme_.focus);
  const QRectF icon((width() - 24) / 2.0, with_name_ ? 9 : (height() - 24) / 2.0, 24, 24);
  paint_line_icon(painter, icon, icon_, isChecked() ? theme_.ink : theme_.ink_soft);
  QFont small = font();
  small.setPointSizeF(small.pointSizeF() * 0.85);
  small.setBold(isChecked());
  painter.setFont(small);
  painter.setPen(isChecked() ? theme_.ink : theme_.ink_soft);
  if (with_name_) {
    // A name too long for the rail is set narrower, never cut.
    const int wide = painter.fontMetrics().horizontalAdvance(text());
    if (wide > width() - 4) {
      small.setStretch(std::max(62, 100 * (width() - 4) / wide));
      painter.setFont(small);
    }
    painter.drawText(QRectF(0, icon.bottom() + 2, width(), height() - icon.bottom() - 4), Qt::AlignCenter, text());
  }
  if (count_ > 0) {
    QFont number = font();
    number.setPointSizeF(number.pointSizeF() * 0.8);
    number.setBold(true);
    painter.setFont(number);
    const QString shown = QString::number(count_);
    const double wide = std::max(17.0, painter.fontMetrics().horizontalAdvance(shown) + 9.0);
    const QRectF plate(icon.right() - 7, icon.top() - 6, wide, 17);
    painter.setPen(Qt::NoPen);
    painter.setBrush(count_ground_);
    painter.drawRoundedRect(plate, 8.5, 8.5);
    painter.setPen(count_ink_);
    painter.drawText(plate, Qt::AlignCenter, shown);
  }
  if (!hasFocus()) return;
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(theme_.focus, 2));
  painter.drawRoundedRect(QRectF(rect()).adjusted(3, 3, -4, -3), 6, 6);
}

PageRail::PageRail(QWidget* parent)
    : QWidget(parent), column_(new QVBoxLayout(this)), exclusive_(new QButtonGroup(this)) {
  column_->setContentsMargins(0, 6, 0, 6);
  column_->setSpacing(2);
  column_->addStretch(1);
  setAccessibleName(tr("Groups of pages"));
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Expanding);
  setMinimumHeight(1);  // in a low window the names go
  connect(exclusive_, &QButtonGroup::idClicked, this, &PageRail::wanted);
}

void PageRail::add_group(const QString& name, const QString& icon) {
  auto* button = new RailButton(name, icon, this);
  button->setCheckable(true);
  column_->insertWidget(count(), button);
  exclusive_->addButton(button, count());
  groups_.push_back(button);
}

RailButton* PageRail::add_foot(const QString& name, const QString& icon) {
  auto* button = new RailButton(name, icon, this);
  button->set_with_name(false);
  column_->addWidget(button, 0, Qt::AlignHCenter);
  feet_.push_back(button);
  return button;
}

void PageRail::check(int group) {
  button(group)->setChecked(true);
}

void PageRail::set_theme(const Theme& theme) {
  theme_ = theme;
  for (RailButton* button : groups_) button->set_theme(theme);
  for (RailButton* button : feet_) button->set_theme(theme);
  update();
}

void PageRail::set_with_names(bool on) {
  for (RailButton* button : groups_) button->set_with_name(on);
}

void PageRail::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.panel);
  painter.fillRect(QRect(0, 0, 1, height()), theme_.line);
}

}  // namespace burrow
