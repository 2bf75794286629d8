#pragma once
/// One screen for everything that comes from foreign files: what was found, what it means, where the crossing line
/// lies, what was left out.

#include <QDialog>
#include <QTimer>

#include "burrow/drawing/theme.h"
#include "burrow/tables/tables.h"
#include "burrow/window/import_job.h"
#include "burrow/window/import_preview.h"
#include "burrow/window/kept_choices.h"
#include "burrow/window/layer_choices.h"
#include "burrow/window/left_out_list.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QProgressBar;
class QPushButton;

namespace burrow {

class ImportScreen : public QDialog {
  Q_OBJECT

 public:
  /// `own_table`: file of the person's own meanings, read now and written when something was learned; empty: none.
  ImportScreen(const Tables& tables, const Theme& theme, UnitSystem units, const QString& own_table, QWidget* parent);

  void add_file(const QString& path);
  /// Where the open crossing lies: its line is proposed where the first file is in the same coordinates.
  void set_open_crossing(const std::optional<Georeference>& place, Length length);
  /// What came out, once accepted.
  [[nodiscard]] const Imported& imported() const { return *imported_; }
  [[nodiscard]] bool as_new_crossing() const { return as_new_; }

  [[nodiscard]] bool busy() const { return job_.running() || later_.isActive(); }
  [[nodiscard]] const std::vector<ImportFile>& files() const { return files_; }
  ImportPreview& preview() { return *preview_; }
  LayerModel& layers() { return *layers_; }
  void set_line(const CrossingLine& line);
  /// What must be confirmed before anything is taken over; empty: nothing.
  [[nodiscard]] std::optional<std::string> doubt() const;
  /// "EPSG:25832" of the file that is shown; empty: as the file says.
  void state_system(const QString& typed);
  void set_fields(const std::vector<FieldChoice>& choices);

 Q_SIGNALS:
  /// A file could not be read; the screen says so too.
  void refused(const QString& why);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void make_left(QWidget* left);
  void make_right(QWidget* right);
  void take_found(const Result<Found>& found, std::shared_ptr<const Found> seen);
  void read(const QString& path, const ImportJob::Manner& manner);
  bool read_again(const ImportJob::Manner& manner);
  void take_imported(const Result<Imported>& imported);
  void show_file();
  void show_consequence();
  void show_left_out();
  void show_doubt();
  /// The first file of which the unit of the plan, or that of the heights, cannot be believed.
  struct Doubt {
    std::size_t file = 0;
    std::string why;
    bool of_heights = false;
  };
  [[nodiscard]] std::optional<Doubt> first_doubt() const;
  void confirm_lengths(bool right);
  void see_in_place();
  void take_seen(const std::vector<std::pair<std::shared_ptr<const Found>, std::shared_ptr<const Found>>>& seen);
  void show_likely_system();
  void take_likely_system();
  void choose_units();
  void read_order();
  void read_typed_line();
  void cut_soon();
  void propose_line();
  void edit_table();
  void learn();
  void finish(bool as_new);
  void say(const QString& text, bool wrong);
  ImportFile* current();

  const Tables& tables_;
  Theme theme_;
  UnitSystem units_;
  QString own_path_;
  MeaningTable built_in_;
  KeptChoices kept_;
  bool fields_were_said_ = false;
  bool cut_is_fresh_ = false;  ///< `imported_` is of the files and the line as they are
  std::vector<ImportFile> files_;
  std::vector<std::pair<std::string, Meaning>> result_text_;  ///< choices of a meaning, to be learned
  std::optional<CrossingLine> line_;
  std::optional<Imported> imported_;
  std::optional<std::size_t> reading_again_;  ///< the file that is being read in another order or unit
  QStringList waiting_;
  std::optional<Georeference> open_place_;
  Length open_length_;
  bool reading_ = false;
  bool as_new_ = true;
  bool filling_ = false;

  ImportJob job_;
  QTimer later_{this};
  QComboBox* file_box_ = nullptr;
  QComboBox* order_ = nullptr;
  QLabel* order_label_ = nullptr;
  QComboBox* unit_ = nullptr;
  QComboBox* height_unit_ = nullptr;
  QLabel* consequence_ = nullptr;
  QTableView* table_ = nullptr;
  LayerModel* layers_ = nullptr;
  QLineEdit* system_ = nullptr;
  QCheckBox* confirm_ = nullptr;
  QPushButton* same_system_ = nullptr;  ///< a guess, taken by one click
  QPushButton* fields_button_ = nullptr;
  LeftOutList* left_out_ = nullptr;
  QLabel* left_out_label_ = nullptr;
  ImportPreview* preview_ = nullptr;
  CutPreview* cut_ = nullptr;
  QLabel* result_ = nullptr;
  QLineEdit* launch_ = nullptr;
  QLineEdit* exit_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QLabel* message_ = nullptr;
  QPushButton* new_button_ = nullptr;
  QPushButton* into_button_ = nullptr;
};

/// The person's own table of meanings in a small editor: rows of layer or code and meaning.
std::optional<MeaningTable> edit_meanings(const MeaningTable& rows, const Tables& tables, QWidget* parent);

}  // namespace burrow
