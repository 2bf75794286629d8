#pragma once
/// A new crossing in six questions, each with a default and the picture of what follows from the answers so far.

#include <QDialog>

#include "burrow/check/assessment.h"
#include "burrow/drawing/scene.h"
#include "burrow/panels/text_form.h"
#include "burrow/search/first_layout.h"
#include "burrow/tables/tables.h"

class QComboBox;
class QFormLayout;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace burrow {

/// The crossing as the answers make it.
class GuidedPicture : public QWidget {
  Q_OBJECT

 public:
  GuidedPicture(const Tables& tables, const Theme& theme, UnitSystem units, QWidget* parent);
  void show_crossing(const Crossing& crossing, const Assessment& assessment, const ItemRef& asked_about);
  [[nodiscard]] QSize sizeHint() const override { return {620, 470}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  const Tables& tables_;
  Style style_;
  Crossing crossing_;
  Assessment assessment_;
  ItemRef picked_;
};

class GuidedCrossing : public QDialog {
  Q_OBJECT

 public:
  /// `own`: what the crew brings to every crossing (`with_own_start`).
  GuidedCrossing(const Tables& tables, const Theme& theme, UnitSystem units, std::optional<Crossing> own,
                 QWidget* parent);

  /// What came out, once accepted.
  [[nodiscard]] const Crossing& crossing() const { return crossing_; }
  [[nodiscard]] const Assessment& assessment() const { return assessment_; }
  [[nodiscard]] int question() const;
  void go_to(int question);

 private:
  QFormLayout* ask(const QString& title, const QString& why);
  /// An entry of a length; an empty one means that nobody knows, where that is allowed.
  QLineEdit* length_entry(const QString& label, std::optional<double> value, Dimension dimension, bool may_be_empty,
                          std::function<void(std::optional<double>)> take);
  /// An entry of words; of a day, what is none is told and not taken. Empty where nobody knows.
  QLineEdit* text_entry(const QString& label, TextKind kind, std::function<void(std::optional<std::string>)> take);
  void ask_what_is_crossed();
  void ask_how_far();
  void ask_ground();
  void ask_lines();
  void ask_rescue(QFormLayout* form);
  void ask_nothing_above(QFormLayout* form);
  void ask_search(QFormLayout* form);
  void ask_exposed(QFormLayout* form);
  void show_what_is_asked();
  void ask_pipe();
  void ask_depth();
  void fill_rules();
  void add_line();
  void show_lines();
  void catch_up();
  void propose_depth();
  void show_step();

  const Tables& tables_;
  Theme theme_;
  UnitSystem units_;
  std::optional<Crossing> own_;
  FirstAnswers answers_;
  bool propose_ = true;
  Crossing crossing_;
  Assessment assessment_;
  std::string stands_;  ///< what is wrong with the answers; empty: nothing

  QStackedWidget* pages_;
  GuidedPicture* picture_;
  QLabel* step_;
  QLabel* fault_;
  QLabel* outcome_;
  QPushButton* back_;
  QPushButton* next_;
  QComboBox* rule_ = nullptr;
  QLabel* thumb_ = nullptr;
  QWidget* lines_ = nullptr;
  QFormLayout* crossed_form_ = nullptr;
  std::vector<QWidget*> of_crossed_, of_nothing_, of_search_, of_exposed_;  ///< asked only where it matters
  QFormLayout* lines_form_ = nullptr;
  QLabel* proposal_ = nullptr;
  QLineEdit* depth_ = nullptr;
  std::vector<OfferedText*> offers_;
  QString last_name_;              ///< typed last, to be offered
  std::vector<QLineEdit*> wrong_;  ///< entries that cannot be read
};

}  // namespace burrow
