#include "burrow/window/import_screen.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"
#include "burrow/window/field_choices.h"
#include "burrow/window/import_texts.h"

namespace burrow {

namespace {

/// A coordinate as the file has it: more digits for degrees.
QString coordinate(double value, bool degrees) {
  return QString::number(value, 'f', degrees ? 8 : 3);
}

std::optional<PlanPoint> point_in(const QString& text) {
  std::vector<double> values;
  for (const QString& part : text.split(QRegularExpression(QStringLiteral("[,;\\s]+")), Qt::SkipEmptyParts)) {
    bool good = false;
    values.push_back(QLocale::c().toDouble(part, &good));
    if (!good) return std::nullopt;
  }
  if (values.size() != 2) return std::nullopt;
  return PlanPoint{values[0], values[1]};
}

}  // namespace

ImportFile* ImportScreen::current() {
  const int at = file_box_->currentIndex();
  return at >= 0 && static_cast<std::size_t>(at) < files_.size() ? &files_[static_cast<std::size_t>(at)] : nullptr;
}

void ImportScreen::say(const QString& text, bool wrong) {
  message_->setText(text);
  QPalette colours = palette();
  if (wrong) colours.setColor(QPalette::WindowText, theme_.stop);
  message_->setPalette(colours);
  message_->setVisible(!text.isEmpty());
}

void ImportScreen::add_file(const QString& path) {
  if (reading_) {
    waiting_ << path;
    return;
  }
  reading_ = true;
  say(tr("Reading %1 …").arg(QFileInfo(path).fileName()), false);
  progress_->setValue(0);
  progress_->show();
  read(path, {});
}

void ImportScreen::read(const QString& path, const ImportJob::Manner& manner) {
  const bool first = files_.empty() || reading_again_ == std::size_t{0};
  job_.read(path.toStdString(), manner, first ? nullptr : files_.front().found);
}

/// The file that is shown. False: another one is being read.
bool ImportScreen::read_again(const ImportJob::Manner& manner) {
  if (reading_) return false;
  reading_ = true;
  reading_again_ = static_cast<std::size_t>(file_box_->currentIndex());
  say(tr("Reading again …"), false);
  imported_.reset();
  read(text_from(current()->found->file), manner);
  return true;
}

void ImportScreen::take_found(const Result<Found>& found, std::shared_ptr<const Found> seen) {
  progress_->hide();
  reading_ = false;
  const auto again = std::exchange(reading_again_, std::nullopt);
  if (!found) {
    const QString why = text_from(translated_error(found.error()));
    say(tr("Not read. %1").arg(why), true);
    Q_EMIT refused(why);
  } else {
    say({}, false);
    ImportFile file =
        import_file(std::make_shared<const Found>(*found), joined(kept_.meanings, built_in_), kept_.shapes);
    file.seen = std::move(seen);
    if (again) {
      // Meanings and units stay as they were said; layers are told by their names.
      const ImportFile& before = files_[*again];
      file.unit = before.unit;
      file.height_unit = before.height_unit;
      file.said_frame = before.said_frame;
      for (std::size_t i = 0; i < file.layers.size(); ++i)
        for (std::size_t k = 0; k < before.layers.size(); ++k)
          if (file.found->layers[i] == before.found->layers[k]) file.layers[i] = before.layers[k];
      files_[*again] = std::move(file);
    } else {
      files_.push_back(std::move(file));
      file_box_->addItem(QFileInfo(text_from(found->file)).fileName());
      file_box_->setCurrentIndex(file_box_->count() - 1);
    }
    const bool first = files_.size() == 1;
    preview_->set_files(&files_, first);
    if (first && !again) {
      line_.reset();
      preview_->set_line(line_);
      propose_line();
    }
    show_file();
    cut_soon();
  }
  if (!waiting_.isEmpty()) add_file(waiting_.takeFirst());
}

void ImportScreen::set_open_crossing(const std::optional<Georeference>& place, Length length) {
  open_place_ = place;
  open_length_ = length;
}

void ImportScreen::propose_line() {
  const FoundFrame& frame = frame_of(files_.front());
  // Without a stated unit nobody can tell where metres lie in the file.
  if (!open_place_ || open_place_->crs != frame.crs || !frame.unit || frame.unit_is_doubtful) return;
  const double metres = metres_in(*frame.unit);
  const PlanPoint& from = open_place_->origin;
  const double away = open_length_.m, azimuth = open_place_->azimuth->rad;
  set_line({{from.x_m / metres, from.y_m / metres},
            {(from.x_m + away * std::sin(azimuth)) / metres, (from.y_m + away * std::cos(azimuth)) / metres}});
}

void ImportScreen::show_file() {
  filling_ = true;
  ImportFile* file = current();
  layers_->set_file(file);
  for (QWidget* w : {static_cast<QWidget*>(unit_), static_cast<QWidget*>(height_unit_), static_cast<QWidget*>(table_)})
    w->setEnabled(file);
  const bool survey = file && !file->found->order.empty();
  order_->setVisible(survey);
  order_label_->setVisible(survey);
  fields_button_->setVisible(file && !file->fields.empty());
  system_->setEnabled(file);
  if (file) {
    order_->setEditText(text_from(file->found->order).toUpper());
    const FoundFrame& frame = frame_of(*file);
    const std::string& stated = file->found->frame.crs;
    system_->setPlaceholderText(stated.empty() ? tr("not stated: EPSG:…")
                                               : tr("as the file says: %1").arg(text_from(name_of_crs(stated))));
    system_->setText(file->said_frame ? text_from(file->said_frame->crs) : QString());
    fields_button_->setText(fields_in_words(file->fields));
    unit_->setItemText(0, frame.unit
                              ? tr("as the file says: %1").arg(QString::fromUtf8(translated_word(*frame.unit).data()))
                          : frame.geographic ? tr("degrees")
                                             : tr("not stated: metres?"));
    unit_->setEnabled(!frame.geographic && stated.empty());
    height_unit_->setItemText(
        0, frame.height_unit
               ? tr("as the file says: %1").arg(QString::fromUtf8(translated_word(*frame.height_unit).data()))
           : frame.crs.empty() ? tr("not stated: as the plan?")
                               : tr("not stated: metres?"));
    unit_->setCurrentIndex(unit_->findData(file->unit ? static_cast<int>(*file->unit) : -1));
    height_unit_->setCurrentIndex(
        height_unit_->findData(file->height_unit ? static_cast<int>(*file->height_unit) : -1));
  }
  table_->resizeColumnsToContents();
  for (const auto& [section, most] : {std::pair<int, int>{LayerModel::layer, 150}, {LayerModel::holds, 130}})
    if (table_->columnWidth(section) > most) table_->setColumnWidth(section, most);
  filling_ = false;
  show_consequence();
  show_left_out();
  show_likely_system();
}

void ImportScreen::show_consequence() {
  const ImportFile* file = current();
  if (!file) {
    consequence_->setText(
        tr("Survey points (CSV, text), DXF, GeoJSON, Shapefile (also zipped), GeoPackage, KML, LandXML or a grid of "
           "heights."));
    return;
  }
  const bool first = file == &files_.front();
  consequence_->setText(consequence_text(*file, first ? line_ : std::nullopt, units_));
  show_doubt();
}

std::optional<ImportScreen::Doubt> ImportScreen::first_doubt() const {
  const auto open = open_place_ ? std::optional(open_length_) : std::nullopt;
  for (std::size_t i = 0; i < files_.size(); ++i) {
    const std::string name = QFileInfo(text_from(files_[i].found->file)).fileName().toStdString() + ": ";
    if (auto why = scale_doubt(files_, i, line_, open)) return Doubt{i, name + *why, false};
    if (heights_in_doubt(files_[i]))
      return Doubt{i, name + tr("the unit of its heights must be said").toStdString(), true};
  }
  return std::nullopt;
}

std::optional<std::string> ImportScreen::doubt() const {
  const auto first = first_doubt();
  return first ? std::optional(first->why) : std::nullopt;
}

/// What was doubted, of whichever file: the lengths taken are right.
void ImportScreen::confirm_lengths(bool right) {
  if (const auto first = first_doubt(); right && first && !first->of_heights)
    files_[first->file].unit_is_confirmed = true;
  else if (ImportFile* file = current(); file && !right)
    file->unit_is_confirmed = false;
  show_consequence();
}

void ImportScreen::show_doubt() {
  const auto why = first_doubt();
  const ImportFile* file = current();
  const bool confirmed = file && file->unit_is_confirmed, of_lengths = why && !why->of_heights;
  confirm_->setVisible(of_lengths || confirmed);
  confirm_->setChecked(confirmed && !of_lengths);
  if (of_lengths) confirm_->setText(tr("The lengths are right (%1)").arg(text_from(why->why)));
  if (why && why->of_heights) say(text_from(why->why), true);
  const bool ready = imported_ && cut_is_fresh_ && !why;
  new_button_->setEnabled(ready);
  into_button_->setEnabled(ready);
}

void ImportScreen::show_left_out() {
  left_out_label_->setText(left_out_->show_all(current(), imported_));
}

void ImportScreen::set_fields(const std::vector<FieldChoice>& choices) {
  ImportFile* file = current();
  if (!file || choices.size() != file->fields.size()) return;
  file->fields = choices;
  fields_were_said_ = true;
  kept_.shapes = remembered(std::move(kept_.shapes), file->found->table, choices);
  show_file();
  cut_soon();
}

void ImportScreen::choose_units() {
  ImportFile* file = current();
  if (!file || filling_) return;
  const auto unit_of = [](const QComboBox* box) {
    const int unit = box->currentData().toInt();
    return unit < 0 ? std::optional<FileUnit>() : std::optional(static_cast<FileUnit>(unit));
  };
  const bool other_unit = std::exchange(file->unit, unit_of(unit_)) != file->unit;
  file->height_unit = unit_of(height_unit_);
  file->unit_is_confirmed = false;
  // How finely the curves of a drawing are cut depends on it.
  const bool drawing = text_from(file->found->file).endsWith(QLatin1String(".dxf"), Qt::CaseInsensitive);
  if (other_unit && drawing) read_again({{}, file->unit});
  preview_->refresh();
  show_consequence();
  cut_soon();
}

void ImportScreen::read_order() {
  const ImportFile* file = current();
  if (!file || filling_ || file->found->order.empty()) return;
  const auto order = survey_order(order_->currentText().trimmed().toStdString());
  if (!order) {
    say(text_from(translated_error(order.error())), true);
    return;
  }
  if (*order == file->found->order) return;
  if (!read_again({*order, {}})) return;
  // Places in the other order are other places.
  line_.reset();
  preview_->set_line(line_);
}

void ImportScreen::set_line(const CrossingLine& line) {
  line_ = line;
  preview_->set_line(line);
  const bool degrees = !files_.empty() && frame_of(files_.front()).geographic;
  launch_->setText(coordinate(line.launch.x_m, degrees) + QStringLiteral(", ") + coordinate(line.launch.y_m, degrees));
  exit_->setText(coordinate(line.exit.x_m, degrees) + QStringLiteral(", ") + coordinate(line.exit.y_m, degrees));
  cut_soon();
}

void ImportScreen::read_typed_line() {
  const auto launch = point_in(launch_->text()), exit = point_in(exit_->text());
  if (!launch || !exit) {
    if (!launch_->text().isEmpty() && !exit_->text().isEmpty())
      say(tr("A point is two numbers, east and north: 455530.25, 538470.5"), true);
    return;
  }
  line_ = CrossingLine{*launch, *exit};
  preview_->set_line(line_);
  cut_soon();
}

void ImportScreen::cut_soon() {
  cut_is_fresh_ = false;
  new_button_->setEnabled(false);
  into_button_->setEnabled(false);
  if (line_) later_.start();
  if (!files_.empty()) show_consequence();
  if (!line_) result_->setText(tr("Click the launch pit on the plan, then the exit pit."));
}

void ImportScreen::take_imported(const Result<Imported>& imported) {
  imported_.reset();
  if (!imported) {
    result_->setText(tr("This line does not do. %1").arg(text_from(translated_error(imported.error()))));
    cut_->set_imported(std::nullopt);
    show_left_out();
    return;
  }
  say({}, false);
  imported_ = *imported;
  cut_is_fresh_ = true;
  cut_->set_imported(imported_);
  result_->setText(result_text(*imported_, units_));
  show_left_out();
  show_doubt();
}

void ImportScreen::edit_table() {
  const auto rows = edit_meanings(kept_.meanings, tables_, this);
  if (!rows) return;
  kept_.meanings = *rows;
  learn();
  for (ImportFile& file : files_) {
    const ImportFile fresh = import_file(file.found, joined(kept_.meanings, built_in_));
    for (std::size_t i = 0; i < file.layers.size(); ++i) {
      file.layers[i].meaning = fresh.layers[i].meaning;
      file.layers[i].on_ground = fresh.layers[i].on_ground;
    }
  }
  show_file();
  preview_->refresh();
  cut_soon();
}

/// Writes the person's own tables; a failure is said, the import goes on.
void ImportScreen::learn() {
  for (const auto& [layer, meaning] : result_text_) kept_.meanings = learned(kept_.meanings, built_in_, layer, meaning);
  result_text_.clear();
  if (own_path_.isEmpty()) return;
  if (const auto why = kept_.write(own_path_)) say(*why, true);
}

void ImportScreen::finish(bool as_new) {
  if (!imported_ || !cut_is_fresh_ || busy() || doubt()) return;
  as_new_ = as_new;
  if (!result_text_.empty() || fields_were_said_) learn();
  accept();
}

void ImportScreen::keyPressEvent(QKeyEvent* event) {
  // Esc stops what is being read before it closes the screen.
  if (event->key() == Qt::Key_Escape && reading_) {
    job_.stop();
    reading_ = false;
    reading_again_.reset();
    waiting_.clear();
    progress_->hide();
    say(tr("Stopped."), false);
    return;
  }
  QDialog::keyPressEvent(event);
}

}  // namespace burrow
