#include "monkey/monkey.h"

#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QDialog>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QMenu>
#include <QPrintDialog>
#include <QTabBar>
#include <QTest>
#include <QThread>
#include <QTimer>
#include <array>
#include <utility>

namespace burrow {

namespace {

constexpr int events_remembered = 60;

const std::array keys_of_a_person{Qt::Key_Tab,       Qt::Key_Backtab, Qt::Key_Left,     Qt::Key_Right,  Qt::Key_Up,
                                  Qt::Key_Down,      Qt::Key_Return,  Qt::Key_Enter,    Qt::Key_Escape, Qt::Key_Space,
                                  Qt::Key_Delete,    Qt::Key_Home,    Qt::Key_End,      Qt::Key_PageUp, Qt::Key_F1,
                                  Qt::Key_F2,        Qt::Key_F10,     Qt::Key_PageDown, Qt::Key_Insert, Qt::Key_Menu,
                                  Qt::Key_Backspace, Qt::Key_Plus,    Qt::Key_Minus,    Qt::Key_Comma};

/// With Ctrl: all but what ends the program.
const std::array with_control{Qt::Key_Z, Qt::Key_Y, Qt::Key_Z, Qt::Key_Y, Qt::Key_U, Qt::Key_D, Qt::Key_T, Qt::Key_S,
                              Qt::Key_N, Qt::Key_O, Qt::Key_I, Qt::Key_R, Qt::Key_E, Qt::Key_0, Qt::Key_A, Qt::Key_C,
                              Qt::Key_V, Qt::Key_X, Qt::Key_P, Qt::Key_1, Qt::Key_2, Qt::Key_3, Qt::Key_4, Qt::Key_5,
                              Qt::Key_6, Qt::Key_7, Qt::Key_8, Qt::Key_9, Qt::Key_F, Qt::Key_G, Qt::Key_L};

const std::array menu_letters{Qt::Key_F, Qt::Key_E, Qt::Key_I, Qt::Key_V, Qt::Key_G, Qt::Key_H};

const QStringList& typed_texts() {
  static const QStringList texts{
      QStringLiteral("0"),           QStringLiteral("-1"),           QStringLiteral("1e9"),
      QStringLiteral("12.5"),        QStringLiteral("0,35 m"),       QStringLiteral("3 ft 4 in"),
      QStringLiteral("5'6\""),       QStringLiteral("nan"),          QStringLiteral("1e-300"),
      QStringLiteral("99999999999"), QStringLiteral("2 %"),          QStringLiteral("12.5 mm"),
      QStringLiteral(" "),           QStringLiteral("gas main"),     QStringLiteral("2026-03-02"),
      QStringLiteral("Größe ½ €"),   QString(200, QLatin1Char('x')), QStringLiteral("1.5"),
      QStringLiteral("-0.75"),       QStringLiteral("100.2"),        QStringLiteral("=2*3")};
  return texts;
}

/// Left at once: it would reach for printers.
bool to_be_left(const QWidget& window) {
  return qobject_cast<const QPrintDialog*>(&window) != nullptr;
}

void turn_wheel(QWindow& window, const QPoint& at, int eighths, Qt::KeyboardModifiers modifiers) {
  QWheelEvent turn(at, window.mapToGlobal(QPointF(at)), {}, QPoint(0, eighths), Qt::NoButton, modifiers,
                   Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(&window, &turn);
}

}  // namespace

QString MonkeyEvent::line() const {
  return QStringLiteral("%1 %2 %3 %4 %5 %6")
      .arg(static_cast<int>(kind))
      .arg(at.x())
      .arg(at.y())
      .arg(number)
      .arg(modifiers)
      .arg(QString::fromLatin1(text.toUtf8().toHex()));
}

MonkeyEvent MonkeyEvent::from_line(const QString& line) {
  const QStringList words = line.split(QLatin1Char(' '));
  if (words.size() < 5) return {};
  return {static_cast<Kind>(words[0].toInt()),
          {words[1].toInt(), words[2].toInt()},
          words[3].toInt(),
          words[4].toInt(),
          words.size() > 5 ? QString::fromUtf8(QByteArray::fromHex(words[5].toLatin1())) : QString()};
}

Monkey::Monkey(QWidget& window, unsigned seed, QString folder)
    : window_(window), folder_(std::move(folder)), random_(seed) {}

/// A timer of its own each time: one that is being handled, as while a dialog runs its own loop, is not fired again.
void Monkey::step_soon() {
  QTimer::singleShot(0, this, [this] {
    if (!done_) step();
  });
}

void Monkey::log_to(const QString& path, const QString& sample) {
  log_file_ = std::make_unique<QFile>(path);
  if (!log_file_->open(QIODevice::WriteOnly | QIODevice::Unbuffered)) qFatal("the monkey's log cannot be written");
  log_ = std::make_unique<QTextStream>(log_file_.get());
  *log_ << "# " << sample << '\n';
  log_->flush();
}

QString Monkey::sample_of(const QString& log) {
  QFile file(log);
  if (!file.open(QIODevice::ReadOnly)) qFatal("there is no such log");
  const QString first = QString::fromUtf8(file.readLine()).trimmed();
  return first.startsWith(QStringLiteral("# ")) ? first.mid(2) : QString();
}

void Monkey::run(int events) {
  left_ = events;
  done_ = false;
  step_soon();
  loop_.exec();
}

void Monkey::play(const QString& log) {
  QFile file(log);
  if (!file.open(QIODevice::ReadOnly)) qFatal("there is no such log");
  for (const QByteArray& line : file.readAll().split('\n'))
    if (!line.isEmpty() && !line.startsWith('#')) next_.push_back(MonkeyEvent::from_line(QString::fromLatin1(line)));
  playing_ = true;
  run(static_cast<int>(next_.size()));
}

QString Monkey::last_events() const {
  QString all;
  for (const QString& event : last_) all += event + QLatin1Char('\n');
  return all;
}

/// Where a person's next event would go.
QWidget* Monkey::target() const {
  if (QWidget* popup = QApplication::activePopupWidget()) return popup;
  if (QWidget* modal = QApplication::activeModalWidget()) return modal;
  QWidget* active = QApplication::activeWindow();
  return active && active->isVisible() ? active : &window_;
}

void Monkey::step() {
  step_soon();
  // Sending looks after waiting events too; only a loop of its own, as of a dialog, takes the next step.
  const int level = QThread::currentThread()->loopLevel();
  if (level <= sending_at_level_) return;
  if (left_ <= 0) return finish();
  --left_;
  if (!window_.isVisible()) window_.show();  // it closed the window: a person starts again
  QWidget* to = target();
  if (!to || !to->windowHandle()) return;
  if (next_.empty()) {
    if (playing_) return finish();
    if (auto* files = qobject_cast<QFileDialog*>(to))
      invent_for_files(*files);
    else if (to_be_left(*to) || qobject_cast<QFileDialog*>(to->parentWidget()))
      next_.push_back({MonkeyEvent::Kind::dismiss, {}, 0, 0, {}});
    else
      invent(*to);
  }
  const MonkeyEvent event = next_.front();
  next_.pop_front();
  // What was meant for another window is not carried over into a dialog for files.
  if (!playing_ && qobject_cast<QFileDialog*>(to) && event.kind != MonkeyEvent::Kind::key &&
      event.kind != MonkeyEvent::Kind::dismiss) {
    next_.clear();
    let_go();
    return;
  }
  if (log_) {
    *log_ << event.line() << '\n';
    log_->flush();
  }
  last_.push_back(event.line() + QLatin1String("  to ") + QLatin1String(to->metaObject()->className()));
  if (last_.size() > events_remembered) last_.pop_front();
  ++sent_;
  ++windows_[QLatin1String(to->metaObject()->className())];
  const int outer = std::exchange(sending_at_level_, level);
  send(*to, event);
  sending_at_level_ = outer;
}

/// Nobody holds a button down for ever.
void Monkey::let_go() {
  const Qt::MouseButton held = std::exchange(held_, Qt::NoButton);
  if (held != Qt::NoButton && held_in_) QTest::mouseRelease(held_in_, held, {}, held_at_);
}

/// Dialogs and menus are left from the innermost outward; each gives its loop back before the next is asked.
void Monkey::finish() {
  let_go();
  if (QWidget* popup = QApplication::activePopupWidget()) {
    popup->close();
    return;
  }
  if (QWidget* modal = QApplication::activeModalWidget()) {
    if (auto* dialog = qobject_cast<QDialog*>(modal))
      dialog->reject();
    else
      modal->close();
    return;
  }
  done_ = true;
  loop_.quit();
}

QPoint Monkey::somewhere(const QWidget& in) {
  return {below(std::max(1, in.width())), below(std::max(1, in.height()))};
}

void Monkey::invent(QWidget& at) {
  // A window beside the program's, as the help, is looked at for a while and closed.
  if (&at != &window_ && at.isWindow() && chance(8)) {
    next_.push_back({MonkeyEvent::Kind::dismiss, {}, 0, 0, {}});
    return;
  }
  const int draw = below(100);
  if (draw < 20) return click(at);
  if (draw < 45) return click_on_control(at);
  if (draw < 60) return drag(at);
  if (draw < 80) return press_key();
  if (draw < 87) return type();
  if (draw < 91) {
    next_.push_back({MonkeyEvent::Kind::wheel,
                     somewhere(at),
                     (chance(50) ? 120 : -120) * (1 + below(4)),
                     chance(30) ? static_cast<int>(Qt::ControlModifier) : 0,
                     {}});
    return;
  }
  if (draw < 92 && &at == &window_) {
    constexpr std::array<QPoint, 4> sizes{QPoint(1600, 900), QPoint(1280, 720), QPoint(1366, 768), QPoint(700, 400)};
    next_.push_back({MonkeyEvent::Kind::resize, sizes[static_cast<std::size_t>(below(4))], 0, 0, {}});
    return;
  }
  use_menu();
}

/// Down to some entry, perhaps into its submenu, and takes it.
void Monkey::use_menu() {
  add_key(menu_letters[static_cast<std::size_t>(below(static_cast<int>(menu_letters.size())))], Qt::AltModifier);
  for (int down = below(16); down > 0; --down) add_key(Qt::Key_Down, 0);
  if (chance(30)) add_key(Qt::Key_Right, 0);
  for (int down = below(3); down > 0; --down) add_key(Qt::Key_Down, 0);
  add_key(chance(80) ? Qt::Key_Return : Qt::Key_Escape, 0);
}

/// Only names in its own folder: never a click on what is listed there.
void Monkey::invent_for_files(QFileDialog& dialog) {
  if (chance(60) || dialog.fileMode() == QFileDialog::Directory) {
    next_.push_back({MonkeyEvent::Kind::dismiss, {}, 0, 0, {}});
    return;
  }
  const QStringList names{
      QStringLiteral("a.crossing"),         QStringLiteral("b.crossing"),           QStringLiteral("c"),
      QStringLiteral("missing/d.crossing"), QStringLiteral("no crossing.crossing"), QStringLiteral("points.csv")};
  if (auto* name = dialog.findChild<QLineEdit*>()) name->setFocus();
  add_key(Qt::Key_A, Qt::ControlModifier);
  add_key(0, 0, folder_ + QLatin1Char('/') + names[below(static_cast<int>(names.size()))]);
  add_key(Qt::Key_Return, 0);
}

void Monkey::click(QWidget& at) {
  const QPoint place = somewhere(at);
  const int button = chance(85) ? Qt::LeftButton : Qt::RightButton;
  const int modifiers = chance(10) ? static_cast<int>(Qt::ShiftModifier) : 0;
  next_.push_back({MonkeyEvent::Kind::move, place, 0, 0, {}});
  if (chance(15)) {
    next_.push_back({MonkeyEvent::Kind::double_click, place, button, modifiers, {}});
    return;
  }
  next_.push_back({MonkeyEvent::Kind::press, place, button, modifiers, {}});
  next_.push_back({MonkeyEvent::Kind::release, place, button, modifiers, {}});
}

void Monkey::click_on_control(QWidget& at) {
  std::vector<QWidget*> controls;
  for (QWidget* one : at.findChildren<QWidget*>())
    if (one->isVisible() && one->isEnabled() && one->window() == &at &&
        (qobject_cast<QAbstractButton*>(one) || qobject_cast<QComboBox*>(one) || qobject_cast<QLineEdit*>(one) ||
         qobject_cast<QTabBar*>(one)))
      controls.push_back(one);
  if (controls.empty()) return click(at);
  QWidget* control = controls[static_cast<std::size_t>(below(static_cast<int>(controls.size())))];
  const QPoint place = control->mapTo(&at, somewhere(*control));
  next_.push_back({MonkeyEvent::Kind::press, place, Qt::LeftButton, 0, {}});
  next_.push_back({MonkeyEvent::Kind::release, place, Qt::LeftButton, 0, {}});
  if (qobject_cast<QLineEdit*>(control) && chance(70)) {
    add_key(Qt::Key_A, Qt::ControlModifier);
    type();
  }
}

void Monkey::drag(QWidget& at) {
  const QPoint from = somewhere(at);
  const QPoint to = chance(50) ? somewhere(at) : from + QPoint(below(61) - 30, below(61) - 30);
  const int modifiers = chance(15) ? static_cast<int>(Qt::ShiftModifier) : 0;
  const int steps = 2 + below(6);
  next_.push_back({MonkeyEvent::Kind::move, from, 0, 0, {}});
  next_.push_back({MonkeyEvent::Kind::press, from, Qt::LeftButton, modifiers, {}});
  for (int i = 1; i <= steps; ++i)
    next_.push_back({MonkeyEvent::Kind::move, from + (to - from) * i / steps, Qt::LeftButton, modifiers, {}});
  if (chance(10)) add_key(Qt::Key_Escape, 0);
  next_.push_back({MonkeyEvent::Kind::release, to, Qt::LeftButton, modifiers, {}});
}

void Monkey::press_key() {
  if (chance(35)) {
    add_key(with_control[static_cast<std::size_t>(below(static_cast<int>(with_control.size())))],
            Qt::ControlModifier | (chance(15) ? static_cast<int>(Qt::ShiftModifier) : 0));
    return;
  }
  const int key = keys_of_a_person[static_cast<std::size_t>(below(static_cast<int>(keys_of_a_person.size())))];
  const int modifiers = chance(20) ? static_cast<int>(Qt::ShiftModifier) : 0;
  for (int times = chance(20) ? 1 + below(12) : 1; times > 0; --times) add_key(key, modifiers);
}

void Monkey::type() {
  add_key(0, 0, typed_texts()[below(static_cast<int>(typed_texts().size()))]);
  if (chance(70)) add_key(chance(70) ? Qt::Key_Return : Qt::Key_Tab, 0);
  if (chance(20)) add_key(Qt::Key_Z, Qt::ControlModifier);
}

void Monkey::add_key(int key, int modifiers, const QString& text) {
  next_.push_back({MonkeyEvent::Kind::key, {}, key, modifiers, text});
}

/// What the key writes, as the screen's system would say it.
static QString text_of(const MonkeyEvent& event) {
  if (!event.text.isEmpty()) return event.text;
  if (event.modifiers & (Qt::ControlModifier | Qt::AltModifier)) return {};
  const char letter = QTest::keyToAscii(static_cast<Qt::Key>(event.number));
  return letter ? QString(QLatin1Char(letter)) : QString();
}

void Monkey::send(QWidget& to, const MonkeyEvent& event) {
  QWindow* window = to.windowHandle();
  const QPointer<QWindow> alive = window;  // a press may close it before the release
  const auto modifiers = static_cast<Qt::KeyboardModifiers>(event.modifiers);
  const auto button = static_cast<Qt::MouseButton>(event.number);
  switch (event.kind) {
    case MonkeyEvent::Kind::move:
      QTest::mouseMove(window, event.at);
      break;
    case MonkeyEvent::Kind::press:
      held_ = button;
      held_in_ = window;
      held_at_ = event.at;
      QTest::mousePress(window, button, modifiers, event.at);
      break;
    case MonkeyEvent::Kind::release:
      held_ = Qt::NoButton;
      QTest::mouseRelease(window, button, modifiers, event.at);
      break;
    case MonkeyEvent::Kind::double_click:
      for (int press = 0; press < 2; ++press) {
        if (alive) QTest::mousePress(alive, button, modifiers, event.at);
        if (alive) QTest::mouseRelease(alive, button, modifiers, event.at);
      }
      break;
    case MonkeyEvent::Kind::key:
      for (const QEvent::Type type : {QEvent::KeyPress, QEvent::KeyRelease})
        if (alive)
          qt_handleKeyEvent(alive, type, event.text.isEmpty() ? event.number : static_cast<int>(Qt::Key_unknown),
                            modifiers, text_of(event), false, 1);
      break;
    case MonkeyEvent::Kind::wheel:
      turn_wheel(*window, event.at, event.number, modifiers);
      break;
    case MonkeyEvent::Kind::resize:
      to.resize(event.at.x(), event.at.y());
      break;
    case MonkeyEvent::Kind::dismiss:
      if (auto* dialog = qobject_cast<QDialog*>(&to))
        dialog->reject();
      else
        to.close();
      break;
  }
}

}  // namespace burrow
