#pragma once
/// Which findings the list shows: by words, by kind, by what is picked on the drawing. It hides nothing from the
/// verdict, and says how many it hides.

#include <QFrame>
#include <QSortFilterProxyModel>
#include <string>
#include <vector>

#include "burrow/drawing/theme.h"
#include "burrow/panels/findings_model.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace burrow {

/// `muted`: what is accepted. The others leave that out where it does not count, as the verdict bar does.
enum class FindingKind { all, stop, missing, caution, note, muted };

struct FindingChoice {
  QString words;  ///< each word must occur
  FindingKind kind = FindingKind::all;
  bool picked_only = false;
  bool notes = false;                 ///< shown too; otherwise they are folded away below what counts
  std::vector<std::string> subjects;  ///< of the picked thing; empty: nothing is picked
  bool operator==(const FindingChoice&) const = default;
  [[nodiscard]] bool all() const { return words.trimmed().isEmpty() && kind == FindingKind::all && !picked_only; }
};

class FindingsFilter : public QSortFilterProxyModel {
  Q_OBJECT

 public:
  FindingsFilter(FindingsModel& model, QObject* parent);
  void choose(const FindingChoice& choice);
  [[nodiscard]] const FindingChoice& choice() const { return choice_; }
  /// Row of the whole list for a row shown; −1 for none.
  [[nodiscard]] int whole_row(const QModelIndex& shown) const;
  /// Invalid where the filter hides it.
  [[nodiscard]] QModelIndex shown(int whole_row) const;
  /// Of the whole list, how many are of a kind.
  [[nodiscard]] int count_of(FindingKind kind) const;
  /// Notes in the whole list, accepted ones too.
  [[nodiscard]] int notes() const;
  [[nodiscard]] int hidden() const { return model_.rowCount() - rowCount(); }

 protected:
  [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;

 private:
  FindingsModel& model_;
  FindingChoice choice_;
};

/// The entries over the list, and a line that says how many are hidden.
class FilterBar : public QWidget {
  Q_OBJECT

 public:
  explicit FilterBar(FindingsFilter& filter, QWidget* parent);
  void set_theme(const Theme& theme);
  /// What the picked thing is called and which findings are about it.
  void set_picked(const QString& name, std::vector<std::string> subjects);
  void show_all();
  void tell();  ///< counts again
  /// Folds and unfolds the notes; stands below the list.
  [[nodiscard]] QPushButton* notes() const { return notes_; }
  /// Nothing is shown: why, and how to see more. Empty while something is shown.
  [[nodiscard]] QString empty_words() const;

  [[nodiscard]] QLineEdit* words() const { return words_; }
  /// The button of a kind; those of which there are none are hidden.
  [[nodiscard]] QPushButton* kind(FindingKind kind) const;
  [[nodiscard]] QCheckBox* picked_only() const { return picked_only_; }
  [[nodiscard]] QLabel* count() const { return count_; }
  [[nodiscard]] QPushButton* all() const { return all_; }

 Q_SIGNALS:
  void changed();

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fit_kinds();
  void take();
  void add_kind(FindingKind kind, const char* icon);
  void choose_kind(FindingKind kind);
  [[nodiscard]] FindingKind chosen_kind() const;
  [[nodiscard]] QString kind_words(FindingKind kind, int count) const;
  /// What the entries say. Who looks for something looks among the notes too; and where there is nothing else, they
  /// are shown.
  [[nodiscard]] FindingChoice chosen() const;

  FindingsFilter& filter_;
  QLineEdit* words_;
  QWidget* kind_row_;
  std::vector<QPushButton*> kinds_;  ///< in the order of `FindingKind`; one of them is checked
  QCheckBox* picked_only_;
  QLabel* count_;
  QPushButton* all_;
  QPushButton* notes_;
  QString picked_name_;
  std::vector<std::string> subjects_;
};

}  // namespace burrow
