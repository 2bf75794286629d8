#include "burrow/window/tool_strip.h"

#include <QAction>
#include <QEvent>
#include <QHBoxLayout>
#include <QMenu>
#include <QToolBar>
#include <QToolButton>
#include <algorithm>

#include "burrow/drawing/line_icon.h"

namespace burrow {

namespace {

constexpr int icon_px = 20;
constexpr int least_height = 40;

QString style_of(const Theme& theme) {
  return QStringLiteral(
             "#tools, QToolBar { background: %1; border: none; spacing: 2px; }"
             "QToolButton { border: 1px solid transparent; border-radius: 6px; padding: 4px 7px; color: %2; }"
             "QToolButton:hover { background: %3; }"
             "QToolButton:checked, QToolButton:pressed { background: %4; }"
             "QToolButton:focus { border: 2px solid %5; padding: 3px 6px; }"
             "QToolButton:disabled { color: %6; }"
             "QToolButton::menu-indicator { image: none; width: 0; }"
             "QToolBar::separator { background: %7; width: 1px; margin: 8px 5px; }"
             "#finder { background: %3; border: 1px solid %8; padding: 4px 10px; color: %6; }"
             "#finder:focus { border: 2px solid %5; padding: 3px 9px; }")
      .arg(theme.panel.name(), theme.ink.name(), theme.field.name(), theme.select.name(), theme.focus.name(),
           theme.ink_soft.name(), theme.line.name(), theme.note.name());
}

}  // namespace

ToolStrip::ToolStrip(QWidget* parent)
    : QStackedWidget(parent), bar_(new QToolBar(this)), finder_(new QToolButton(this)), readout_(new ReadoutRow(this)) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  bar_->setMovable(false);
  bar_->setFloatable(false);
  bar_->setIconSize(QSize(icon_px, icon_px));
  bar_->setAccessibleName(tr("Tools"));
  bar_->setContextMenuPolicy(Qt::PreventContextMenu);
  finder_->setObjectName(QStringLiteral("finder"));
  finder_->setFocusPolicy(Qt::TabFocus);
  finder_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  finder_->setIconSize(QSize(16, 16));
  auto* tools = new QWidget(this);
  tools->setObjectName(QStringLiteral("tools"));
  auto* row = new QHBoxLayout(tools);
  row->setContentsMargins(8, 0, 12, 0);
  row->addWidget(bar_, 1);
  row->addWidget(finder_);
  addWidget(tools);
  addWidget(readout_);
  fit_height();
  if (auto* more = bar_->findChild<QToolButton*>(QStringLiteral("qt_toolbar_ext_button"))) {
    more->setAccessibleName(tr("More tools"));
    more->setFocusPolicy(Qt::TabFocus);
  }
}

void ToolStrip::add(QAction* action) {
  bar_->addAction(action);
  auto* button = qobject_cast<QToolButton*>(bar_->widgetForAction(action));
  button->setFocusPolicy(Qt::TabFocus);
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
  auto* button = new QToolButton(bar_);
  button->setIcon(line_icon(icon));
  button->setIconSize(QSize(icon_px, icon_px));
  button->setText(text);
  button->setToolButtonStyle(text.isEmpty() ? Qt::ToolButtonIconOnly : Qt::ToolButtonTextBesideIcon);
  button->setMenu(menu);
  button->setPopupMode(QToolButton::InstantPopup);
  button->setFocusPolicy(Qt::TabFocus);
  button->setToolTip(name);
  button->setAccessibleName(name);
  bar_->addWidget(button);
  return button;
}

void ToolStrip::add_gap() {
  bar_->addSeparator();
}

void ToolStrip::set_finder(QAction* action) {
  finder_->setIcon(action->icon());
  finder_->setText(tr("Find a command or a thing   %1").arg(action->shortcut().toString(QKeySequence::NativeText)));
  finder_->setAccessibleName(action->iconText());
  connect(finder_, &QToolButton::clicked, action, &QAction::trigger);
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
  if (event->type() == QEvent::FontChange) fit_height();
}

}  // namespace burrow
