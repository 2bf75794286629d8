#pragma once
/// Somebody who knows nothing of the window: seeded mouse and key events at random places, one at a time from the event
/// loop, through dialogs and menus as they come. The same seed makes the same choices; each event is logged before it
/// is sent, so that what led to a fault can be read, and played again from the log.

#include <QEventLoop>
#include <QObject>
#include <QPoint>
#include <QPointer>
#include <QString>
#include <QTextStream>
#include <QWindow>
#include <deque>
#include <map>
#include <memory>
#include <random>

class QWidget;
class QFileDialog;

namespace burrow {

struct MonkeyEvent {
  enum class Kind { move, press, release, double_click, key, wheel, resize, dismiss };
  Kind kind = Kind::move;
  QPoint at;       ///< in the window; wheel: and `number` eighths of a degree; resize: the new size
  int number = 0;  ///< button, key or turn
  int modifiers = 0;
  QString text;  ///< of a key

  [[nodiscard]] QString line() const;
  static MonkeyEvent from_line(const QString& line);
};

class Monkey : public QObject {
 public:
  /// `folder`: the only place where it may write when a dialog asks for a file.
  Monkey(QWidget& window, unsigned seed, QString folder);

  /// Sends that many events, then dismisses what is open and waits until it is gone.
  void run(int events);
  /// The events of a log, in place of own ones.
  void play(const QString& log);
  /// The sample that the events are sent on stands in its first line.
  void log_to(const QString& path, const QString& sample);
  static QString sample_of(const QString& log);  ///< empty: an older log, which does not say
  [[nodiscard]] QString last_events() const;
  [[nodiscard]] int sent() const { return sent_; }
  /// How many events each kind of window got: whether it got about.
  [[nodiscard]] const std::map<QString, int>& windows() const { return windows_; }

 private:
  void step();
  void step_soon();
  void finish();
  void let_go();
  QWidget* target() const;
  void invent(QWidget& at);
  void invent_for_files(QFileDialog& dialog);
  void click(QWidget& at);
  void click_on_control(QWidget& at);
  void drag(QWidget& at);
  void press_key();
  void use_menu();
  void type();
  void add_key(int key, int modifiers, const QString& text = {});
  void send(QWidget& to, const MonkeyEvent& event);
  int below(int end) { return static_cast<int>(random_() % static_cast<unsigned>(end)); }
  bool chance(int percent) { return below(100) < percent; }
  QPoint somewhere(const QWidget& in);

  QWidget& window_;
  QString folder_;
  std::mt19937 random_;
  std::deque<MonkeyEvent> next_;
  std::deque<QString> last_;
  std::map<QString, int> windows_;
  QEventLoop loop_;
  std::unique_ptr<QTextStream> log_;
  std::unique_ptr<QIODevice> log_file_;
  QPointer<QWindow> held_in_;
  QPoint held_at_;
  Qt::MouseButton held_ = Qt::NoButton;
  int left_ = 0;
  int sent_ = 0;
  bool playing_ = false;
  bool done_ = false;
  int sending_at_level_ = -1;  ///< of the event loops, while an event is being sent
};

}  // namespace burrow
