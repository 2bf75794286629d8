#pragma once
/// The bar under the drawing that plays a bore: play and pause, a mark back or on, a strip of time with the hose marks,
/// how fast, which bore, and what the run sheet says at the mark at hand. It shows what is given and changes nothing.
/// Evidence: Player.*

#include <QComboBox>
#include <QElapsedTimer>
#include <QLabel>
#include <QSpinBox>
#include <QToolButton>
#include <QWidget>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "burrow/drawing/scene.h"
#include "burrow/window/time_strip.h"

class QTimer;

namespace burrow {

class PlayerBar : public QWidget {
  Q_OBJECT

 public:
  enum class Kind { predicted, tried, simulated, recorded, truth };
  struct Bore {
    Kind kind = Kind::predicted;  ///< all but the predicted one tell their miss at the end
    QString name;
    std::shared_ptr<const Playback> playback;
    /// What it passes; null: what the assessment says. With `lines_elsewhere` only that it is passed.
    std::shared_ptr<const std::vector<UtilityAnswer>> passed = {};
    bool lines_elsewhere = false;
    QString outcome = {};  ///< told once it has ended
    /// One of so many, by number from 1; `playback` and `outcome` are of the first.
    int many = 0;
    std::function<Bore(int number)> one = {};
  };

  explicit PlayerBar(QWidget* parent = nullptr);

  /// What can be played; the choice stays where the new list has it, the time too.
  void set_bores(std::vector<Bore> bores);
  /// The crossing whose run sheet is told, both to live until the next call.
  void set_tasks(const Crossing* crossing, const Assessment* assessment, UnitSystem units);
  void set_theme(const Theme& theme);

  /// From the start again once it has ended.
  void toggle();
  void pause();
  [[nodiscard]] bool playing() const;
  /// So many marks on or back; without one left, to the end or the start.
  void step(int marks);
  void set_time(double time_s);
  [[nodiscard]] double time_s() const { return time_s_; }
  /// Chooses a bore by what it is.
  void choose(Kind kind);
  /// Which one of many, where there are.
  void set_number(int number) { number_->setValue(number); }
  /// That bore is drawn beside the one played, at the same time of it; none: alone.
  void set_beside(std::optional<Kind> kind);
  /// Letters of that size, and nothing to choose; 0: as usual.
  void set_for_a_room(int letter_px);
  /// Mark by mark instead of gliding; as the desktop asks unless said.
  void set_still(bool still) { still_ = still; }
  /// One frame: tests set their own clock.
  void tick();
  void set_clock(std::function<qint64()> clock) { clock_ = std::move(clock); }
  [[nodiscard]] double speed() const;
  void set_speed(double times);

 Q_SIGNALS:
  /// What the drawing is to show; nothing once the bar is closed.
  void played_changed(const std::optional<burrow::Played>& played);
  void closed();

 protected:
  void hideEvent(QHideEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void connect_parts();
  [[nodiscard]] const Bore* now() const;
  [[nodiscard]] const Bore* beside() const;
  void take_number();
  void fill_choices(bool anew);
  [[nodiscard]] qint64 now_ms() const;
  void show_time();
  void show_playing();
  [[nodiscard]] QString task_text(const Playback& bore, double nose_m) const;
  void show_task(const QString& task);

  std::vector<Bore> bores_;
  const Crossing* crossing_ = nullptr;
  const Assessment* assessment_ = nullptr;
  UnitSystem units_ = UnitSystem::metric;
  QToolButton *play_, *back_, *on_, *close_;
  QComboBox *which_, *beside_, *speed_;
  QSpinBox* number_;
  QWidget *choices_, *settings_;  ///< which bore; how fast
  TimeStrip* strip_;
  QLabel *clock_text_, *task_;
  QTimer* timer_;
  QElapsedTimer since_start_;
  std::function<qint64()> clock_;
  double time_s_ = 0;
  qint64 last_ms_ = 0;
  bool still_;
  int lines_ = 2;  ///< of the task
};

}  // namespace burrow
