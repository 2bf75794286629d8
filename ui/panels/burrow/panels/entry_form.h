#pragma once
/// A column of entries in which the values of one part are typed in any unit, each one undo step. What is typed is
/// never altered silently: a wrong entry says what is wrong and stays until it is mended or Esc puts the old one back.

#include <QWidget>
#include <functional>
#include <vector>

#include "burrow/document/document.h"
#include "burrow/document/fields.h"
#include "burrow/drawing/theme.h"
#include "burrow/widgets/typing.h"

class QGridLayout;
class QLabel;
class QLineEdit;

namespace burrow {

class FieldLock;

class EntryForm : public QWidget, public HoldsTyping {
  Q_OBJECT

 public:
  using Fields = std::function<std::vector<Field>()>;

  /// `standing_word` says whose value stands where nothing is typed: "class", "default".
  EntryForm(Document& document, QString standing_word, QWidget* parent);

  /// Shows these fields of a part; typing that is under way for another part is dropped.
  void show_part(const ItemRef& part, Fields fields);
  /// How label and entry share the width; half and half if not told.
  void set_shares(int label, int entry);
  void set_standing_word(const QString& word) { standing_word_ = word; }
  void set_units(UnitSystem units);
  void set_theme(const Theme& theme);
  /// Brings what is shown up to date with the crossing; typing under way stays.
  void catch_up();
  bool take_typing() override;
  /// Takes away typing under way: another crossing was opened.
  void drop_typing();

  /// Number of the entry whose label begins with this, −1 if there is none.
  [[nodiscard]] int find(const QString& label) const;
  [[nodiscard]] QLineEdit* entry(int row) const { return rows_[static_cast<std::size_t>(row)].entry; }
  [[nodiscard]] FieldLock* lock(int row) const { return rows_[static_cast<std::size_t>(row)].lock; }
  [[nodiscard]] QString complaint(int row) const;
  [[nodiscard]] int count() const { return static_cast<int>(rows_.size()); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  /// What was refused does not wait on a page that nobody sees.
  void hideEvent(QHideEvent* event) override;

 private:
  struct Row {
    std::string label;
    QLabel* name = nullptr;
    QLineEdit* entry = nullptr;
    QLabel* wrong = nullptr;
    FieldLock* lock = nullptr;
    QString shown;
  };
  void rebuild(const std::vector<Field>& fields);
  void clear_rows();
  void fill(Row& row, const Field& field);
  void take_over(std::size_t at);
  void put_back(Row& row);
  void complain(Row& row, const QString& what);
  /// "In force: 1.33 m": what stands while another text does.
  [[nodiscard]] QString in_force(const Field& field) const;
  /// What is wrong with the text of the row, empty if nothing is.
  [[nodiscard]] QString fault_of(const Row& row, const Field& field) const;
  [[nodiscard]] bool locked() const;

  Document& document_;
  QString standing_word_;
  ItemRef part_;
  Fields fields_;
  UnitSystem units_ = UnitSystem::metric;
  Theme theme_ = Theme::light();
  QGridLayout* grid_;
  std::vector<Row> rows_;
};

}  // namespace burrow
