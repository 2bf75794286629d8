#pragma once
/// What the records of a crossing, or a library, say about the constants of the model; taken into the crossing on
/// request.

#include <QWidget>

#include "burrow/day/learn.h"
#include "burrow/document/document.h"

class QCheckBox;
class QLabel;
class QPushButton;

namespace burrow {

class LearnBox : public QWidget {
  Q_OBJECT

 public:
  LearnBox(Document& document, QWidget* parent);
  /// The records may have changed: what was learnt before is no more shown.
  void catch_up();

  void learn_here();
  /// False: it could not be read; what was wrong is said.
  bool open_library(const QString& path);
  bool save_library(const QString& path);
  /// Model and wander of the strata, as one undo step.
  void take_over();
  [[nodiscard]] const LearnLibrary& library() const { return library_; }
  [[nodiscard]] QString visible_text() const;

 private:
  void show_library();

  Document& document_;
  LearnLibrary library_;
  std::vector<DayRecord> of_;  ///< the records it was learnt from; empty: a file
  QLabel* result_text_;
  QPushButton *learn_, *open_, *save_, *take_;
  QCheckBox* backed_out_;
};

}  // namespace burrow
