#pragma once
/// Work that an earlier run left behind: looked at first, then taken back, kept for later or thrown away.

#include <QDialog>
#include <optional>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/document/recovery.h"
#include "burrow/tables/tables.h"

class QLabel;
class QListWidget;
class QPlainTextEdit;
class QPushButton;

namespace burrow {

class CrossingPicture;

/// Looking changes nothing: copies are only read. Where there are several, one can be taken back; the others stay.
/// Evidence: LeftWorkTest.*
class LeftWorkDialog : public QDialog {
  Q_OBJECT

 public:
  LeftWorkDialog(const Tables& tables, std::vector<LeftWork> works, UnitSystem units, bool dark,
                 QWidget* parent = nullptr);
  /// What is to be taken back, if anything.
  [[nodiscard]] const std::optional<LeftWork>& taken() const { return taken_; }

 private:
  void lay_out();
  void show_work(int row);
  void show_differences(const LeftWork& work, const std::string& copy);
  void throw_away();

  const Tables& tables_;
  std::vector<LeftWork> works_;
  std::optional<LeftWork> taken_;
  QLabel* how_many_;
  QListWidget* list_;
  QLabel* about_;
  CrossingPicture* picture_;
  QLabel* compared_;
  QPlainTextEdit* differences_;
  QPushButton* take_;
  QPushButton* drop_;
};

}  // namespace burrow
