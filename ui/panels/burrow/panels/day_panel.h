#pragma once
/// The day: readings as they are taken, tapped or typed; the prediction that follows them; what to do, and why.

#include <QDateTime>
#include <functional>
#include <map>

#include "burrow/day/day.h"
#include "burrow/document/reading_forms.h"
#include "burrow/panels/form_panel.h"

class QGridLayout;
class QLineEdit;

namespace burrow {

class DeviationChart;
class LearnBox;

class DayPanel : public FormPanel {
  Q_OBJECT

 public:
  explicit DayPanel(Document& document, QWidget* parent = nullptr);
  void set_theme(const Theme& theme) override;
  void set_units(UnitSystem units) override;
  /// Whose time a tap takes; for tests.
  void set_clock(std::function<QDateTime()> clock) { clock_ = std::move(clock); }

  [[nodiscard]] QLabel* advice() const { return advice_; }
  [[nodiscard]] LearnBox* learning() const { return learn_; }
  [[nodiscard]] CardList* readings() const { return list_; }
  [[nodiscard]] QLineEdit* input(const QString& label) const;
  [[nodiscard]] QPushButton* button(const QString& begins_with) const;
  /// All that is said, as plain text.
  [[nodiscard]] QString visible_text() const;

 Q_SIGNALS:
  /// The bore as read; fewer than two points: nothing to draw.
  void read_path_changed(const std::vector<PathPoint>& points, double nose_m);
  /// The record shown is wanted on paper: to be printed, or as a PDF.
  void as_built_wanted(const std::string& record, bool printed);

 protected:
  void refresh() override;

 private:
  [[nodiscard]] const DayRecord* record() const;
  [[nodiscard]] double seconds_now() const;
  [[nodiscard]] bool under_way() const;
  void begin();
  void tap(ReadingKind kind);
  void tap_end(EndHow how);
  void put_in(const Reading& reading, const QString& step_name);
  void add_typed();
  void remove_picked();
  void make_entry();
  void show_form(int form);
  void keep_typing();
  void show_answer();
  void show_readings();

  std::function<QDateTime()> clock_;
  std::string shown_;  ///< id of the record
  std::size_t picked_ = 0;
  QComboBox *records_ = nullptr, *kinds_ = nullptr;
  QLabel *advice_ = nullptr, *facts_ = nullptr, *why_ = nullptr, *complaint_ = nullptr;
  QPushButton *begin_ = nullptr, *mark_ = nullptr, *stop_ = nullptr, *go_ = nullptr, *add_ = nullptr,
              *remove_ = nullptr, *as_pdf_ = nullptr, *print_ = nullptr;
  std::vector<QPushButton*> ends_;
  QWidget* entry_ = nullptr;
  QGridLayout* grid_ = nullptr;
  QLineEdit *time_ = nullptr, *words_ = nullptr;
  std::vector<QLineEdit*> inputs_;
  std::vector<ReadingForm> forms_;
  int form_ = 0;
  std::map<int, QStringList> typed_;  ///< what was begun for each kind: changing the kind loses nothing
  CardList* list_ = nullptr;
  DeviationChart *up_ = nullptr, *sideways_ = nullptr;
  LearnBox* learn_ = nullptr;
};

}  // namespace burrow
