#pragma once
/// What an open row of the findings shows: what to do, buttons that do it, the calculation, how far the number is from
/// its limit, and the reason with which it may stand.

#include <QFrame>
#include <memory>
#include <optional>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/document/latest_job.h"
#include "burrow/document/remedies.h"
#include "burrow/drawing/drawing_view.h"
#include "burrow/panels/mute_form.h"
#include "measure_bar.h"

class QLabel;
class QPushButton;
class QTextBrowser;

namespace burrow {

class FlowRow;

/// What is about something that may hurt people, and counts, is not accepted: it is mended, or seen first. An
/// acceptance that stands in the file can be changed and taken back.   Evidence: Muting.WhatMayHurt_*
bool may_be_accepted(const Crossing& crossing, const Finding& finding);

class FindingDetails : public QFrame {
  Q_OBJECT

 public:
  FindingDetails(Document& document, QWidget* parent);
  /// None: nothing is open.
  void show_finding(const std::optional<Finding>& finding);
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);

  [[nodiscard]] QTextBrowser* working() const { return working_; }
  [[nodiscard]] QPushButton* copy() const { return copy_; }
  [[nodiscard]] QPushButton* mute() const { return mute_; }
  [[nodiscard]] QPushButton* unmute() const { return unmute_; }
  [[nodiscard]] MuteForm* form() const { return form_; }
  /// Buttons that mend it, once they are found.
  [[nodiscard]] const std::vector<QPushButton*>& actions() const { return actions_; }

 Q_SIGNALS:
  void resized();
  /// What a button would do, dashed on the drawing while the pointer or the focus is on it; null: no longer.
  void preview_changed(const std::shared_ptr<const burrow::GhostLayout>& layout);
  /// Where to dig a test hole is on the page of the utilities.
  void hole_wanted(const QString& utility);
  void refused(const QString& why);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void show_working();
  void fit_working();
  void show_bar(const Finding& finding);
  void seek_remedies();
  void show_remedies(std::vector<Remedy> found);
  void clear_actions();
  QPushButton* add_action(const QString& text, const QString& icon);
  [[nodiscard]] bool found_old() const;
  void apply(std::size_t remedy);

  Document& document_;
  Tables tables_;  ///< the worker's own
  std::optional<Finding> finding_;
  QLabel* to_do_;
  FlowRow* actions_row_;
  std::vector<QPushButton*> actions_;
  std::vector<Remedy> remedies_;
  std::optional<Crossing> sought_for_;
  QTextBrowser* working_;
  MeasureBar* bar_;
  QPushButton* mute_;
  QPushButton* unmute_;
  QPushButton* copy_;
  MuteForm* form_;
  QString plain_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
  LatestJob job_;  ///< last: ends before the rest goes
};

}  // namespace burrow
