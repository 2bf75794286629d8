#include "burrow/window/page_bar.h"

#include <QButtonGroup>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <algorithm>

namespace burrow {

namespace {
constexpr int to_a_row = 5;
constexpr int bar_height = 3;
constexpr double least_text = 0.7;  ///< of the usual size, in a column too narrow for it

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
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  setAccessibleName(name);
}

void PageButton::set_theme(const Theme& theme) {
  theme_ = theme;
  update();
}

QSize PageButton::sizeHint() const {
  const QFontMetrics metrics(bold(font()));
  return {metrics.horizontalAdvance(text()) + 10, metrics.height() + 10 + bar_height};
}

QSize PageButton::minimumSizeHint() const {
  return {40, sizeHint().height()};
}

void PageButton::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const bool here = isChecked();
  if (here || underMouse() || isDown()) painter.fillRect(rect(), theme_.field);
  QFont font = here ? bold(this->font()) : this->font();
  const QRect room = rect().adjusted(2, 2, -2, -bar_height - 2);
  const int wide = QFontMetrics(font).horizontalAdvance(text());
  if (wide > room.width()) {
    const double share = std::max(least_text, static_cast<double>(room.width()) / wide);
    font.setPointSizeF(font.pointSizeF() * share);
  }
  painter.setFont(font);
  painter.setPen(theme_.ink);
  painter.drawText(room, Qt::AlignCenter, text());
  if (here) painter.fillRect(QRect(0, height() - bar_height, width(), bar_height), theme_.focus);
  if (hasFocus()) {
    painter.setPen(QPen(theme_.focus, 2));
    painter.drawRect(rect().adjusted(2, 2, -2, -bar_height - 2));
  }
}

PageBar::PageBar(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)), group_(new QButtonGroup(this)) {
  grid_->setContentsMargins(0, 0, 0, 1);
  grid_->setSpacing(0);
  for (int column = 1; column <= to_a_row; ++column) grid_->setColumnStretch(column, 1);
  setAccessibleName(tr("Pages"));
  group_->setExclusive(true);
  connect(group_, &QButtonGroup::idToggled, this, [this](int page, bool on) {
    if (on) Q_EMIT wanted(page);
  });
}

void PageBar::begin_row(const QString& name) {
  auto* label = new QLabel(name, this);
  QFont small = label->font();
  small.setPointSizeF(small.pointSizeF() * 0.85);
  label->setFont(small);
  label->setContentsMargins(8, 0, 6, bar_height);
  grid_->addWidget(label, ++row_, 0);
  row_names_.push_back(label);
  column_ = 0;
}

void PageBar::add(const QString& name, const QString& hint) {
  const int page = static_cast<int>(buttons_.size());
  auto* button = new PageButton(name, this);
  button->setToolTip(hint);
  button->setAccessibleDescription(hint);
  grid_->addWidget(button, std::max(row_, 0), ++column_);
  group_->addButton(button, page);
  buttons_.push_back(button);
}

void PageBar::set_theme(const Theme& theme) {
  theme_ = theme;
  for (PageButton* button : buttons_) button->set_theme(theme);
  for (QLabel* name : row_names_) {
    QPalette palette = name->palette();
    palette.setColor(QPalette::WindowText, theme.ink_soft);
    name->setPalette(palette);
  }
  update();
}

void PageBar::check(int page) {
  button(page)->setChecked(true);
}

void PageBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme_.panel);
  QColor line = theme_.ink;
  line.setAlpha(70);
  painter.fillRect(QRect(0, height() - 1, width(), 1), line);
}

}  // namespace burrow
