#pragma once
/// The day: readings as they are taken, tapped or typed; the prediction that follows them; what to do, and why.

#include <QDateTime>
#include <functional>

#include "burrow/day/day.h"
#include "burrow/day/start_gate.h"
#include "burrow/document/reading_forms.h"
#include "burrow/panels/form_panel.h"

class QLineEdit;

namespace burrow {

class AskBox;
class DayDeck;
class DeviationChart;
class LearnBox;
class ReadingEntry;

class DayPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit DayPanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  /// Whose time a tap takes; for tests.
  void set_clock(std::function<QDateTime()> clock) { clock_ = std::move(clock); }

  [[nodiscard]] QLabel* advice() const;
  /// What to do now, as plain text.
  [[nodiscard]] QString advice_text() const;
  [[nodiscard]] LearnBox* learning() const { return learn_; }
  [[nodiscard]] CardList* readings() const { return list_; }
  [[nodiscard]] QLineEdit* input(const QString& label) const;
  [[nodiscard]] QPushButton* button(const QString& begins_with) const;
  /// Whether undoing the last step would take a danger out of the record without a reason: the reason is asked for
  /// instead.   Evidence: DayPanel.Danger_*
  bool holds_back_undo();
  /// Takes a picture into the record, by its path from the folder of the crossing.
  void take_photo(const QString& path);
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// The bore as read; fewer than two points: nothing to draw.
  void read_path_changed(const std::vector<PathPoint>& points, double nose_m);
  /// The record shown is wanted on paper: to be printed, or as a PDF.
  void as_built_wanted(const std::string& record, bool printed);

 protected:
  void refresh() override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  [[nodiscard]] const DayRecord* record() const;
  [[nodiscard]] double seconds_now() const;
  [[nodiscard]] bool under_way() const;
  [[nodiscard]] std::size_t picked() const;
  [[nodiscard]] bool resting() const;
  [[nodiscard]] StartGate gate_now() const;
  void make_taps();
  void make_entry();
  void make_list();
  void make_end();
  void make_after();
  void make_paper();
  void begin();
  void start(std::optional<TakenOn> taken_on);
  void tap(ReadingKind kind);
  void tap_done();
  void tap_end(EndHow how);
  void put_in(const Reading& reading, const QString& step_name);
  void change_reading(std::size_t at, const QString& step_name, const std::function<void(Reading&)>& edit);
  void take_back(std::size_t at);
  void ask_and_strike(std::size_t at);
  void tap_danger();
  void say_what_it_was(DangerSign sign);
  void make_danger();
  void add_typed();
  void release_place();
  void add_photo(const QString& path, const QString& what);
  void show_after();
  void show_deck();
  void show_readings();
  void show_picked();
  void show_rest();

  std::function<QDateTime()> clock_;
  QDateTime last_tap_;
  std::string shown_;                  ///< id of the record
  std::optional<std::size_t> picked_;  ///< none: the newest
  bool card_ = false;                  ///< what to do in danger is shown, and cannot be written down
  DayAnswer day_;                      ///< of the record shown
  DayDeck* deck_;
  AskBox* ask_;
  QComboBox* records_ = nullptr;
  EntryForm* pull_ = nullptr;
  TextForm *pull_texts_ = nullptr, *grout_ = nullptr;
  CardList* photos_ = nullptr;
  QLabel* left_to_do_ = nullptr;
  std::size_t photo_ = 0;
  std::vector<QWidget*> after_widgets_;
  QLabel *facts_ = nullptr, *why_ = nullptr, *danger_ = nullptr, *aftermath_ = nullptr;
  QPushButton *another_ = nullptr, *add_ = nullptr, *strike_ = nullptr, *stands_ = nullptr, *release_ = nullptr,
              *close_card_ = nullptr, *as_pdf_ = nullptr, *print_ = nullptr;
  std::vector<QPushButton*> ends_, signs_;
  std::vector<QWidget*> danger_widgets_, sign_widgets_, aftermath_widgets_;
  ReadingEntry* entry_ = nullptr;
  CardList* list_ = nullptr;
  DeviationChart *up_ = nullptr, *sideways_ = nullptr;
  LearnBox* learn_ = nullptr;
};

}  // namespace burrow
