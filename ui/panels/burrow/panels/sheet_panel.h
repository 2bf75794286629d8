#pragma once
/// What stands on the paper besides the drawing: the name of the crossing, notes, number, revision, who drew and
/// checked it, the paper, its scale and units. Everything goes into the file.

#include "burrow/panels/form_panel.h"
#include "burrow/widgets/typing.h"

class QPlainTextEdit;

namespace burrow {

/// The papers that can be chosen, as the file names them.   Evidence: SheetPage.*
QStringList offered_papers();

class SheetPanel : public FormPanel, public HoldsTyping {
  Q_OBJECT

 public:
  explicit SheetPanel(Document& document, QWidget* parent = nullptr);
  [[nodiscard]] TextForm* texts() const { return texts_; }
  [[nodiscard]] EntryForm* values() const { return values_; }
  [[nodiscard]] QPlainTextEdit* notes() const { return notes_; }
  [[nodiscard]] QComboBox* paper() const { return paper_; }
  [[nodiscard]] QComboBox* units() const { return sheet_units_; }
  [[nodiscard]] QString visible_text() const;
  bool take_typing() override;  ///< of the notes

 protected:
  void refresh() override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void make_texts();
  void make_paper();
  void take_notes();

  TextForm* texts_ = nullptr;
  EntryForm* values_ = nullptr;
  QPlainTextEdit* notes_ = nullptr;
  QComboBox *paper_ = nullptr, *sheet_units_ = nullptr;
  QLabel* hint_ = nullptr;
};

}  // namespace burrow
