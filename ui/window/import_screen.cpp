#include "burrow/window/import_screen.h"

#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QTreeWidget>
#include <cmath>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"

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

void ImportScreen::read(const QString& path, const std::string& order) {
  const bool first = files_.empty() || reading_again_ == std::size_t{0};
  job_.read(path.toStdString(), order, first ? nullptr : files_.front().found);
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
    ImportFile file = import_file(std::make_shared<const Found>(*found), joined(own_, built_in_));
    file.seen = std::move(seen);
    if (again) {
      // Meanings and units stay as they were said; layers are told by their names.
      const ImportFile& before = files_[*again];
      file.unit = before.unit;
      file.height_unit = before.height_unit;
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
  const FoundFrame& frame = files_.front().found->frame;
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
  if (file) {
    order_->setEditText(text_from(file->found->order).toUpper());
    const FoundFrame& frame = file->found->frame;
    unit_->setItemText(0, frame.unit
                              ? tr("as the file says: %1").arg(QString::fromUtf8(translated_word(*frame.unit).data()))
                          : frame.geographic ? tr("degrees")
                                             : tr("not stated: metres?"));
    unit_->setEnabled(!frame.geographic && frame.crs.empty());
    height_unit_->setItemText(
        0, frame.height_unit
               ? tr("as the file says: %1").arg(QString::fromUtf8(translated_word(*frame.height_unit).data()))
               : tr("not stated: as the plan?"));
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
}

void ImportScreen::show_consequence() {
  const ImportFile* file = current();
  if (!file) {
    consequence_->setText(
        tr("Survey points (CSV, text), DXF, GeoJSON, Shapefile (also zipped), GeoPackage, KML, LandXML or a grid of "
           "heights."));
    return;
  }
  const Found& found = *file->found;
  QStringList lines;
  const auto extent = extent_of(found);
  if (extent && found.frame.geographic) {
    lines << tr("%1: degrees, from %2, %3 to %4, %5.")
                 .arg(text_from(found.format))
                 .arg(extent->low_x)
                 .arg(extent->low_y)
                 .arg(extent->high_x)
                 .arg(extent->high_y);
  } else if (extent) {
    const double metres = metres_in(file->unit.value_or(found.frame.unit.value_or(FileUnit::metre)));
    const auto length = [&](double units) {
      return text_from(format(Length{units * metres}, units_, Dimension::station));
    };
    lines << tr("%1: %2 from west to east, %3 from south to north.")
                 .arg(text_from(found.format), length(extent->high_x - extent->low_x),
                      length(extent->high_y - extent->low_y));
  }
  double low = 1e300, high = -1e300;
  const auto take = [&](double z) {
    low = std::min(low, z);
    high = std::max(high, z);
  };
  for (const FoundVertex& v : found.vertices)
    if (v.z_m) take(*v.z_m);
  for (const FoundSurface& s : found.surfaces)
    for (const Point3& p : s.points) take(p.z_m);
  for (const FoundRaster& r : found.rasters) {
    take(r.least_z.value_or(0));
    take(r.most_z.value_or(0));
  }
  if (low <= high) {
    const auto unit = file->height_unit         ? file->height_unit
                      : found.frame.height_unit ? found.frame.height_unit
                      : file->unit              ? file->unit
                      : found.frame.crs.empty() ? found.frame.unit
                                                : std::nullopt;
    const double metres = metres_in(unit.value_or(FileUnit::metre));
    lines << tr("Heights from %1 to %2.")
                 .arg(text_from(format(Length{low * metres}, units_, Dimension::station)),
                      text_from(format(Length{high * metres}, units_, Dimension::station)));
  } else {
    lines << tr("No heights.");
  }
  if (!found.order_is_known) lines << tr("The order of the columns is not stated: does the plan look right?");
  if (!file->unit && !found.frame.unit && !found.frame.geographic)
    lines << tr("The unit is not stated: are these lengths right?");
  if (!file->unit && found.frame.unit && found.frame.unit_is_doubtful)
    lines << tr("Units in drawings are often wrong: are these lengths right?");
  if (!file->height_unit && !found.frame.height_unit && !found.frame.crs.empty() && low <= high)
    lines << tr("The unit of heights is not stated: taken as metres.");
  consequence_->setText(lines.join(QLatin1Char(' ')));
}

void ImportScreen::show_left_out() {
  left_out_->clear();
  std::size_t count = 0;
  const auto add = [&](const std::vector<LeftOut>& list) {
    for (const LeftOut& l : list) {
      auto* item = new QTreeWidgetItem(left_out_, {text_from(l.place), text_from(l.text), text_from(l.reason)});
      for (int c = 0; c < 3; ++c) item->setToolTip(c, item->text(c));
    }
    count += list.size();
  };
  const auto note = [&](const std::vector<std::string>& notes) {
    for (const std::string& text : notes) {
      auto* item = new QTreeWidgetItem(left_out_, {tr("note"), QString(), text_from(text)});
      item->setToolTip(2, text_from(text));
    }
  };
  std::size_t more = 0;
  if (const ImportFile* file = current()) {
    add(file->found->left_out);
    note(file->found->notes);
    more = file->found->left_out_more;
  }
  if (imported_) {
    add(imported_->left_out);
    note(imported_->notes);
  }
  left_out_label_->setText(count + more == 0 ? tr("Nothing was left out.") : tr("Left out: %1").arg(count + more));
  left_out_->resizeColumnToContents(0);
  left_out_->setColumnWidth(0, std::min(left_out_->columnWidth(0), 130));
  left_out_->setColumnWidth(1, 130);
}

void ImportScreen::choose_units() {
  ImportFile* file = current();
  if (!file || filling_) return;
  const auto unit_of = [](const QComboBox* box) {
    const int unit = box->currentData().toInt();
    return unit < 0 ? std::optional<FileUnit>() : std::optional(static_cast<FileUnit>(unit));
  };
  file->unit = unit_of(unit_);
  file->height_unit = unit_of(height_unit_);
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
  if (reading_) return;
  reading_ = true;
  reading_again_ = static_cast<std::size_t>(file_box_->currentIndex());
  say(tr("Reading again …"), false);
  // Places in the other order are other places.
  line_.reset();
  imported_.reset();
  preview_->set_line(line_);
  read(text_from(file->found->file), *order);
}

void ImportScreen::set_line(const CrossingLine& line) {
  line_ = line;
  preview_->set_line(line);
  const bool degrees = !files_.empty() && files_.front().found->frame.geographic;
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
  new_button_->setEnabled(false);
  into_button_->setEnabled(false);
  if (line_) later_.start();
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
  cut_->set_imported(imported_);
  const auto without = std::count_if(imported_->utilities.begin(), imported_->utilities.end(), [](const Utility& u) {
    return std::none_of(u.path.begin(), u.path.end(), [](const PathVertex& v) { return v.z_m.has_value(); });
  });
  QStringList parts{tr("Crossing line %1").arg(text_from(format(imported_->length, units_, Dimension::station)))};
  const auto size = [](const auto& list) { return static_cast<int>(list.size()); };
  parts << (imported_->ground.empty() ? tr("no ground")
                                      : tr("ground line of %n points", nullptr, size(imported_->ground)));
  const QString utilities = tr("%n utilities", nullptr, size(imported_->utilities));
  parts << (without > 0 ? tr("%1, %n without depth", nullptr, static_cast<int>(without)).arg(utilities) : utilities);
  if (!imported_->surface.empty()) parts << tr("%n roads and buildings", nullptr, size(imported_->surface));
  if (!imported_->background.empty()) parts << tr("background of %n layers", nullptr, size(imported_->background));
  result_->setText(parts.join(QStringLiteral(" · ")) + QLatin1Char('.'));
  show_left_out();
  new_button_->setEnabled(true);
  into_button_->setEnabled(true);
}

void ImportScreen::edit_table() {
  const auto rows = edit_meanings(own_, tables_, this);
  if (!rows) return;
  own_ = *rows;
  learn();
  for (ImportFile& file : files_) {
    const ImportFile fresh = import_file(file.found, joined(own_, built_in_));
    for (std::size_t i = 0; i < file.layers.size(); ++i) file.layers[i].meaning = fresh.layers[i].meaning;
  }
  show_file();
  preview_->refresh();
  cut_soon();
}

/// Writes the person's own table; a failure is said, the import goes on.
void ImportScreen::learn() {
  for (const auto& [layer, meaning] : result_text_) own_ = learned(own_, built_in_, layer, meaning);
  result_text_.clear();
  if (own_path_.isEmpty()) return;
  QDir().mkpath(QFileInfo(own_path_).absolutePath());
  const Result<void> saved = save_atomically(own_path_.toStdString(), write_meanings(own_));
  if (!saved)
    say(tr("The own table of meanings was not written: %1").arg(text_from(translated_error(saved.error()))), true);
}

void ImportScreen::finish(bool as_new) {
  if (!imported_ || busy()) return;
  as_new_ = as_new;
  if (!result_text_.empty()) learn();
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
