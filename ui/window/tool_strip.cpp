#include "burrow/window/tool_strip.h"

#include <QAction>
#include <QEvent>
#include <QFrame>
#include <QHBoxLayout>
#include <QMenu>
#include <QToolButton>
#include <algorithm>

#include "burrow/drawing/line_icon.h"

namespace burrow {

namespace {

constexpr int icon_px = 20;
constexpr int least_height = 40;
constexpr int gap_px = 2, gap_width = 11;

QString style_of(const Theme& theme) {
  return QStringLiteral(
             "#tools { background: %1; border: none; }"
             "QToolButton { border: 1px solid transparent; border-radius: 6px; padding: 4px 7px; color: %2; }"
             "QToolButton:hover { background: %3; }"
             "QToolButton:checked, QToolButton:pressed { background: %4; }"
             "QToolButton:focus { border: 2px solid %5; padding: 3px 6px; }"
             "QToolButton:disabled { color: %6; }"
             "QToolButton::menu-indicator { image: none; width: 0; }"
             "#gap { background: %7; margin: 8px 5px; }"
             "#find { background: %3; border: 1px solid %8; padding: 4px 10px; color: %6; }"
             "#find:focus { border: 2px solid %5; padding: 3px 9px; }")
      .arg(theme.panel.name(), theme.ink.name(), theme.field.name(), theme.select.name(), theme.focus.name(),
           theme.ink_soft.name(), theme.line.name(), theme.note.name());
}

}  // namespace

ToolStrip::ToolStrip(QWidget* parent)
    : QStackedWidget(parent),
      tools_(new QWidget(this)),
      row_(new QHBoxLayout(tools_)),
      find_button_(new QToolButton(tools_)),
      more_(new QToolButton(tools_)),
      readout_(new ReadoutRow(this)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  tools_->setObjectName(QStringLiteral("tools"));
  tools_->setAccessibleName(tr("Tools"));
  tools_->setMinimumWidth(1);  // what finds no room yields
  row_->setContentsMargins(8, 0, 12, 0);
  row_->setSpacing(gap_px);
  more_->setIcon(line_icon(QStringLiteral("more")));
  more_->setIconSize(QSize(icon_px, icon_px));
  more_->setFocusPolicy(Qt::TabFocus);
  more_->setPopupMode(QToolButton::InstantPopup);
  more_->setAccessibleName(tr("More tools"));
  more_->setToolTip(tr("More tools"));
  more_->setMenu(new QMenu(more_));
  more_->hide();
  connect(more_->menu(), &QMenu::aboutToShow, this, &ToolStrip::fill_more);
  find_button_->setObjectName(QStringLiteral("find"));
  find_button_->setFocusPolicy(Qt::TabFocus);
  find_button_->setIconSize(QSize(16, 16));
  row_->addWidget(more_);
  row_->addStretch(1);
  row_->addWidget(find_button_);
  tools_->installEventFilter(this);
  addWidget(tools_);
  addWidget(readout_);
  fit_height();
}

QToolButton* ToolStrip::add_button(const Tool& tool) {
  auto* button = static_cast<QToolButton*>(tool.widget);
  button->setIconSize(QSize(icon_px, icon_px));
  button->setFocusPolicy(Qt::TabFocus);
  row_->insertWidget(static_cast<int>(all_.size()), button);
  all_.push_back(tool);
  return button;
}

void ToolStrip::add(QAction* action, Yields yields) {
  QToolButton* button = add_button({new QToolButton(tools_), action, nullptr, yields});
  button->setDefaultAction(action);
  button->setToolButtonStyle(Qt::ToolButtonIconOnly);
  // What it does and its key: a menu says it with an ampersand and an ellipsis.
  const auto tell = [action, button] {
    const QString name = action->iconText();
    const QString keys = action->shortcut().toString(QKeySequence::NativeText);
    button->setAccessibleName(name);
    button->setToolTip(keys.isEmpty() ? name : QStringLiteral("%1 (%2)").arg(name, keys));
  };
  connect(action, &QAction::changed, button, tell);
  tell();
}

QToolButton* ToolStrip::add_menu(QMenu* menu, const QString& icon, const QString& name, const QString& text) {
  QToolButton* button = add_button({new QToolButton(tools_), nullptr, menu, Yields::late});
  button->setIcon(line_icon(icon));
  button->setText(text);
  button->setToolButtonStyle(text.isEmpty() ? Qt::ToolButtonIconOnly : Qt::ToolButtonTextBesideIcon);
  button->setMenu(menu);
  button->setPopupMode(QToolButton::InstantPopup);
  button->setToolTip(name);
  button->setAccessibleName(name);
  return button;
}

void ToolStrip::add_gap() {
  auto* line = new QFrame(tools_);
  line->setObjectName(QStringLiteral("gap"));
  line->setFixedWidth(gap_width);
  row_->insertWidget(static_cast<int>(all_.size()), line);
  all_.push_back({line, nullptr, nullptr, Yields::late});
}

void ToolStrip::offer(const QAction* action, bool on) {
  for (Tool& tool : all_)
    if (tool.action == action && tool.offered != on) {
      tool.offered = on;
      fit_width();
    }
}

std::vector<QToolButton*> ToolStrip::buttons() const {
  std::vector<QToolButton*> all;
  for (const Tool& tool : all_)
    if (!tool.gap()) all.push_back(static_cast<QToolButton*>(tool.widget));
  return all;
}

/// First the search field gives up its words, then tools yield until the rest finds room.
void ToolStrip::fit_width() {
  const QMargins margins = row_->contentsMargins();
  constexpr int air_px = 16;
  const int room = width() - margins.left() - margins.right() - air_px;
  std::vector<bool> shown;
  for (const Tool& tool : all_) {
    tool.widget->ensurePolished();  // its style decides its size
    shown.push_back(tool.offered);
  }
  more_->ensurePolished();
  find_button_->ensurePolished();
  const auto tools_width = [&] {
    int wide = 0;
    for (std::size_t i = 0; i < all_.size(); ++i)
      if (shown[i]) wide += (all_[i].gap() ? gap_width : all_[i].widget->sizeHint().width()) + gap_px;
    return wide;
  };
  const int asked = tools_width();
  if (fitted_ == std::pair(room, asked)) return;
  fitted_ = {room, asked};
  find_button_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  if (asked + find_button_->sizeHint().width() > room) find_button_->setToolButtonStyle(Qt::ToolButtonIconOnly);
  const int others = find_button_->sizeHint().width() + more_->sizeHint().width() + 2 * gap_px;
  bool folded = false;
  if (tools_width() + find_button_->sizeHint().width() > room)
    for (const Yields now : {Yields::early, Yields::late})
      for (std::size_t i = all_.size(); i-- > 0 && tools_width() + others > room;)
        if (shown[i] && !all_[i].gap() && all_[i].yields == now) {
          shown[i] = false;
          folded = true;
        }
  for (std::size_t i = 0; i < all_.size(); ++i)
    if (!all_[i].gap()) all_[i].widget->setVisible(shown[i]);
  show_gaps(shown);
  more_->setVisible(folded);
}

/// A line stands only between tools.
void ToolStrip::show_gaps(const std::vector<bool>& shown) {
  bool before = false;
  QWidget* waiting = nullptr;
  for (std::size_t i = 0; i < all_.size(); ++i) {
    if (all_[i].gap()) {
      all_[i].widget->hide();
      if (before) waiting = all_[i].widget;
      before = false;
    } else if (shown[i]) {
      if (waiting) waiting->show();
      waiting = nullptr;
      before = true;
    }
  }
}

void ToolStrip::fill_more() {
  QMenu* menu = more_->menu();
  menu->clear();
  for (const Tool& tool : all_) {
    if (tool.gap()) {
      menu->addSeparator();
      continue;
    }
    if (!tool.widget->isHidden() || !tool.offered) continue;
    if (tool.action) menu->addAction(tool.action);
    if (tool.menu) menu->addMenu(tool.menu);
  }
}

void ToolStrip::set_find(QAction* action) {
  find_button_->setIcon(action->icon());
  find_button_->setText(
      tr("Find a command or a thing   %1").arg(action->shortcut().toString(QKeySequence::NativeText)));
  find_button_->setAccessibleName(action->iconText());
  connect(find_button_, &QToolButton::clicked, action, &QAction::trigger);
}

void ToolStrip::set_theme(const Theme& theme) {
  setStyleSheet(style_of(theme));
  readout_->set_theme(theme);
}

void ToolStrip::show_readout(const Readout& readout) {
  readout_->show_readout(readout);
  if (!reads_out()) setCurrentIndex(1);
}

void ToolStrip::end_readout() {
  setCurrentIndex(0);
}

void ToolStrip::fit_height() {
  setFixedHeight(std::max(least_height, fontMetrics().height() * 9 / 4));
}

void ToolStrip::changeEvent(QEvent* event) {
  QStackedWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange && event->type() != QEvent::StyleChange) return;
  fit_height();
  fitted_ = {};
  fit_width();
}

void ToolStrip::resizeEvent(QResizeEvent* event) {
  QStackedWidget::resizeEvent(event);
  fit_width();
}

/// A button whose text changes may need more room.
bool ToolStrip::eventFilter(QObject* watched, QEvent* event) {
  if (watched == tools_ && event->type() == QEvent::LayoutRequest) fit_width();
  return QStackedWidget::eventFilter(watched, event);
}

}  // namespace burrow
