#include "burrow/window/presentation.h"

#include <QApplication>
#include <QCursor>
#include <QKeyEvent>
#include <QMainWindow>
#include <QMenuBar>
#include <QPainter>
#include <QStatusBar>
#include <algorithm>
#include <cmath>

#include "burrow/drawing/drawing_view.h"
#include "burrow/window/player_bar.h"

namespace burrow {

namespace {

constexpr int ring_px = 96;
constexpr double largest_times = 2.8;  ///< of the usual type

/// A ring that follows the pointer and takes nothing from it.
class PointerRing : public QWidget {
 public:
  explicit PointerRing(QWidget* parent) : QWidget(parent) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_NoSystemBackground);
    setFocusPolicy(Qt::NoFocus);
    resize(ring_px, ring_px);
    hide();
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(6, 6, -6, -6);
    painter.setPen(QPen(QColor(0, 0, 0, 160), 9));
    painter.drawEllipse(box);
    painter.setPen(QPen(QColor(255, 214, 0), 5));
    painter.drawEllipse(box);
  }
};

class DarkSheet : public QWidget {
 public:
  explicit DarkSheet(QWidget* parent) : QWidget(parent) {
    setAutoFillBackground(true);
    QPalette black;
    black.setColor(QPalette::Window, Qt::black);
    setPalette(black);
    setAccessibleName(Presentation::tr("The screen is dark: press B"));
    hide();
  }
};

/// Of that font the size at which capital letters are so high.
int pixels_for_caps(const QFont& font, double caps_px) {
  QFont tried = font;
  tried.setPixelSize(100);
  return static_cast<int>(std::ceil(100 * caps_px / std::max(1.0, QFontMetricsF(tried).capHeight())));
}

}  // namespace

Presentation::Presentation(QMainWindow& window, DrawingView& drawing, PlayerBar& player, std::vector<QWidget*> others,
                           std::function<void(bool on)> dress)
    : QObject(&window),
      window_(window),
      drawing_(drawing),
      player_(player),
      others_(std::move(others)),
      dress_(std::move(dress)),
      ring_(new PointerRing(&window)),
      dark_(new DarkSheet(&window)) {}

void Presentation::set_on(bool on) {
  if (on == on_) return;
  on_ = on;
  on ? begin() : end();
  Q_EMIT changed(on);
}

void Presentation::begin() {
  were_shown_.clear();
  for (QWidget* other : others_) {
    were_shown_.emplace_back(other, !other->isHidden());
    other->hide();
  }
  // Its commands keep their keys, so it is folded and not hidden.
  window_.menuBar()->setMaximumHeight(0);
  window_.statusBar()->hide();
  was_full_ = window_.isFullScreen();
  window_.setWindowState(window_.windowState() | Qt::WindowFullScreen);
  dress_(true);
  drawing_font_ = drawing_.font();
  player_font_ = player_.font();
  QFont large = drawing_font_;
  const double usual = drawing_.style().text;
  const double wanted = std::min(pixels_for_caps(drawing_font_, cap_height_px) * 1.0, largest_times * usual);
  // The drawing takes seven tenths of the height of its font for its texts.
  large.setPixelSize(100);
  large.setPixelSize(static_cast<int>(std::ceil(wanted / 0.70 * 100 / QFontMetricsF(large).height())));
  drawing_.setFont(large);
  player_.set_for_a_room(pixels_for_caps(player_font_, cap_height_px));
  drawing_.zoom_to_fit();
  drawing_.setFocus();
  qApp->installEventFilter(this);
  move_ring();
  ring_->show();
  ring_->raise();
}

void Presentation::end() {
  qApp->removeEventFilter(this);
  ring_->hide();
  darken(false);
  player_.set_for_a_room(0);
  drawing_.setFont(drawing_font_);
  dress_(false);
  window_.menuBar()->setMaximumHeight(QWIDGETSIZE_MAX);
  window_.statusBar()->show();
  for (const auto& [other, shown] : were_shown_) other->setVisible(shown);
  if (!was_full_) window_.setWindowState(window_.windowState() & ~Qt::WindowFullScreen);
  drawing_.zoom_to_fit();
}

bool Presentation::darkened() const {
  return !dark_->isHidden();
}

void Presentation::darken(bool on) {
  dark_->setGeometry(window_.rect());
  dark_->setVisible(on);
  if (on) dark_->raise();
}

void Presentation::move_ring() {
  const QPoint at = window_.mapFromGlobal(QCursor::pos());
  ring_->move(at.x() - ring_px / 2, at.y() - ring_px / 2);
}

bool Presentation::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::MouseMove) move_ring();
  if (event->type() == QEvent::Resize && watched == &window_ && darkened()) darken(true);
  if (event->type() != QEvent::KeyPress && event->type() != QEvent::ShortcutOverride) return false;
  const auto* key = static_cast<QKeyEvent*>(event);
  const bool plain = (key->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
  const bool away = key->key() == Qt::Key_Escape && !drawing_.dragging();
  if (!plain || !(away || key->key() == Qt::Key_B)) return false;
  event->accept();
  if (event->type() == QEvent::KeyPress) away ? set_on(false) : darken(!darkened());
  return true;
}

}  // namespace burrow
