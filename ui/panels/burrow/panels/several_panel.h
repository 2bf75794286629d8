#pragma once
/// The several things that are picked at once: what they share, typed or chosen for all of them, and what is done to
/// all of them. Each change is one step of undo.

#include <QFrame>
#include <vector>

#include "burrow/document/several.h"
#include "burrow/panels/entry_form.h"

class QComboBox;
class QLabel;
class QPushButton;
class QTimer;

namespace burrow {

class SeveralPanel : public QFrame {
  Q_OBJECT

 public:
  SeveralPanel(Document& document, QWidget* parent = nullptr);
  /// Fewer than two: the panel is put away.
  void show_parts(std::vector<ItemRef> parts);
  void set_units(UnitSystem units) { values_->set_units(units); }
  void set_theme(const Theme& theme);
  void refresh_now();
  /// To the first entry.
  void begin_typing();

  void duplicate();
  void remove();

  [[nodiscard]] QLabel* heading() const { return heading_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] QComboBox* kinds() const { return kinds_; }
  [[nodiscard]] QComboBox* statuses() const { return statuses_; }
  [[nodiscard]] QLabel* nothing_shared() const { return nothing_; }
  [[nodiscard]] QPushButton* button_duplicate() const { return duplicate_; }
  [[nodiscard]] QPushButton* button_remove() const { return remove_; }

 Q_SIGNALS:
  /// These are to be picked now: the copies, or none.
  void pick_wanted(const std::vector<ItemRef>& parts);

 private:
  [[nodiscard]] bool all_utilities() const;
  void set_kind(int row);
  void set_status(int row);
  template <class Set>
  void change_utilities(const QString& step, Set set);
  void refresh_choices();

  Document& document_;
  std::vector<ItemRef> parts_;
  QLabel* heading_;
  QWidget* choices_;
  QComboBox* kinds_;
  QComboBox* statuses_;
  QLabel* nothing_;
  EntryForm* values_;
  QPushButton* duplicate_;
  QPushButton* remove_;
  QPushButton* leave_;
  QTimer* later_;
};

}  // namespace burrow
