#include "burrow/window/hints.h"

#include <QApplication>
#include <QEvent>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

namespace burrow {

Hints::Hints(std::vector<Hint> hints, const Theme& theme, QWidget* window)
    : QWidget(window),
      hints_(std::move(hints)),
      theme_(theme),
      box_(new QWidget(window)),
      text_(new QLabel(box_)),
      count_(new QLabel(box_)),
      next_(new QPushButton(box_)) {
  setAttribute(Qt::WA_TransparentForMouseEvents);
  setAttribute(Qt::WA_DeleteOnClose);
  setFocusPolicy(Qt::NoFocus);
  box_->setObjectName(QStringLiteral("hint"));
  box_->setAttribute(Qt::WA_StyledBackground);
  box_->setStyleSheet(QStringLiteral("#hint { background: %1; border: 2px solid %2; border-radius: 6px; } "
                                     "#hint QLabel { color: %3; background: transparent; }")
                          .arg(theme.panel.name(), theme.focus.name(), theme.ink.name()));
  text_->setWordWrap(true);
  text_->setAccessibleName(tr("Hint"));
  auto* end_button = new QPushButton(tr("No more hints"), box_);
  end_button->setFlat(true);
  auto* row = new QHBoxLayout;
  row->addWidget(count_);
  row->addStretch(1);
  row->addWidget(end_button);
  row->addWidget(next_);
  auto* column = new QVBoxLayout(box_);
  column->addWidget(text_);
  column->addLayout(row);
  connect(end_button, &QPushButton::clicked, this, &Hints::end);
  connect(next_, &QPushButton::clicked, this, [this] {
    if (at_ + 1 < static_cast<int>(hints_.size()))
      show_hint(at_ + 1);
    else
      end();
  });
  qApp->installEventFilter(this);  // Esc ends them wherever the focus is
  show_hint(0);
  show();
  box_->show();
  raise();
  box_->raise();
  next_->setFocus();
}

QString Hints::text() const {
  return text_->text();
}

QRect Hints::box() const {
  return box_->geometry();
}

void Hints::show_hint(int at) {
  if (hints_.empty()) return end();
  at_ = at;
  text_->setText(hints_[static_cast<std::size_t>(at)].text);
  count_->setText(tr("%1 of %2").arg(at + 1).arg(hints_.size()));
  next_->setText(at + 1 < static_cast<int>(hints_.size()) ? tr("Next hint") : tr("Begin"));
  place();
}

/// Nearest point of the thing to the box.
QPoint Hints::tip() const {
  const QRect about = hints_[static_cast<std::size_t>(at_)].about();
  if (about.isEmpty()) return {};
  const QPoint from = box_->geometry().center();
  return {std::clamp(from.x(), about.left(), about.right()), std::clamp(from.y(), about.top(), about.bottom())};
}

/// Beside what it is about, on the side where there is most room, and never over it.
void Hints::place() {
  const QRect window = parentWidget()->rect();
  setGeometry(window);
  constexpr int away = 46, wide = 330;
  box_->setFixedWidth(std::min(wide, window.width() - 20));
  box_->adjustSize();
  const QSize size = box_->size();
  const QRect about = hints_[static_cast<std::size_t>(at_)].about();
  QRect at(window.center() - QPoint(size.width() / 2, size.height() / 2), size);
  if (!about.isEmpty()) {
    const int left = about.left(), right = window.width() - about.right(), above = about.top(),
              below = window.height() - about.bottom();
    at.moveCenter(about.center());
    const int most =
        std::max({left - size.width(), right - size.width(), above - size.height(), below - size.height()});
    if (most == left - size.width())
      at.moveRight(about.left() - away);
    else if (most == right - size.width())
      at.moveLeft(about.right() + away);
    else if (most == below - size.height())
      at.moveTop(about.bottom() + away);
    else
      at.moveBottom(about.top() - away);
  }
  // Lower than what it is about: less of the drawing there.
  constexpr int lower = 90;
  if (!about.isEmpty() && (at.left() > about.right() || at.right() < about.left())) at.translate(0, lower);
  at.moveLeft(std::clamp(at.left(), 10, std::max(10, window.width() - size.width() - 10)));
  at.moveTop(std::clamp(at.top(), 10, std::max(10, window.height() - size.height() - 10)));
  box_->setGeometry(at);
  update();
}

void Hints::end() {
  box_->hide();
  box_->deleteLater();
  Q_EMIT ended();
  close();
}

/// A drag, a dialog and what is being typed come first.
bool Hints::nothing_else_ends_with_escape() const {
  return QGuiApplication::mouseButtons() == Qt::NoButton && !QApplication::activeModalWidget() &&
         !QApplication::activePopupWidget() && !qobject_cast<QLineEdit*>(QApplication::focusWidget());
}

bool Hints::eventFilter(QObject* watched, QEvent* event) {
  if (watched == parent() && event->type() == QEvent::Resize) place();
  if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape &&
      box_->isVisible() && nothing_else_ends_with_escape()) {
    end();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

void Hints::paintEvent(QPaintEvent*) {
  const QPoint to = tip();
  if (to.isNull()) return;
  const QRect box = box_->geometry();
  const QPointF from(std::clamp(to.x(), box.left() + 12, box.right() - 12),
                     std::clamp(to.y(), box.top() + 12, box.bottom() - 12));
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(theme_.panel, 6));
  painter.drawLine(from, QPointF(to));
  painter.setPen(QPen(theme_.focus, 2.5));
  painter.drawLine(from, QPointF(to));
  painter.setBrush(theme_.panel);
  painter.drawEllipse(QPointF(to), 6, 6);
}

}  // namespace burrow
