#pragma once
/// What is typed of a reading: its kind, its numbers, its time. What is begun for one kind stays while another is
/// shown.

#include <QStringList>
#include <QWidget>
#include <map>
#include <optional>
#include <vector>

#include "burrow/document/reading_forms.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QVBoxLayout;

namespace burrow {

class ReadingEntry : public QWidget {
  Q_OBJECT

 public:
  explicit ReadingEntry(QWidget* parent);
  [[nodiscard]] const ReadingForm& form() const { return forms_[static_cast<std::size_t>(form_)]; }
  [[nodiscard]] int form_number() const { return form_; }
  [[nodiscard]] std::vector<std::string> numbers() const;
  [[nodiscard]] std::string words() const;
  [[nodiscard]] std::string time() const;
  [[nodiscard]] QLineEdit* input(const QString& label) const;
  void complain(const QString& text);
  /// It was taken: this kind begins anew.
  void clear_form();
  /// Another crossing: all of it.
  void clear_all();

 Q_SIGNALS:
  void typed();

 private:
  void make_kinds(QVBoxLayout* column);
  void begin(ReadingKind kind);
  void show_form(int form);
  void keep_typing();
  bool eventFilter(QObject* watched, QEvent* event) override;

  QComboBox* kinds_;
  QWidget* entry_;
  QGridLayout* grid_;
  QLineEdit *time_, *words_;
  QLabel* complaint_;
  std::vector<QLineEdit*> inputs_;
  std::vector<ReadingForm> forms_;
  int form_ = 0;
  std::map<int, QStringList> typed_;
};

}  // namespace burrow
