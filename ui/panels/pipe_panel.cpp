#include "burrow/panels/pipe_panel.h"

#include <QClipboard>
#include <QComboBox>
#include <QGuiApplication>
#include <QLabel>
#include <QPushButton>
#include <QSlider>
#include <cmath>

#include "burrow/charts/load_charts.h"
#include "burrow/panels/check_list.h"
#include "burrow/panels/entry_form.h"
#include "burrow/pipe/section.h"
#include "choice_words.h"

namespace burrow {

namespace {

constexpr int station_steps = 200;
constexpr double zero_celsius_K = 273.15;
/// What is offered; anything else a file holds is shown as it stands.
constexpr int offered_celsius[] = {-10, 0, 10, 20, 30, 40, 50, 60};

QString temperature_words(double kelvin) {
  const double celsius = kelvin - zero_celsius_K;
  return QObject::tr("%1 °C, %2 °F").arg(std::lround(celsius)).arg(std::lround(celsius * 1.8 + 32));
}

/// Rows put into a combo only when they differ, so that an open one does not jump.
void fill(QComboBox* combo, const QStringList& rows, int now) {
  QStringList shown;
  for (int i = 0; i < combo->count(); ++i) shown << combo->itemText(i);
  if (shown != rows) {
    combo->clear();
    combo->addItems(rows);
  }
  combo->setCurrentIndex(now);
}

}  // namespace

PipePanel::PipePanel(Document& document, QWidget* parent) : FormPanel(document, usual_page_ms, parent) {
  add_heading(tr("Pipe"));
  summary_ = add_text(tr("The checks of the pipe in one line"));
  make_size();
  make_pull();
  make_checks();
  make_charts();
  add_end();
  refresh_now();
}

void PipePanel::make_size() {
  materials_ = add_combo(tr("material"));
  sizes_ = add_combo(tr("size"));
  walls_ = add_combo(tr("wall of that size"));
  size_ = add_entries(tr("default"), true);
  source_ = add_text(tr("Where size and material values come from"), true);
  size_->show_part(pipe_part, [this] { return pipe_size_fields(document_.crossing(), document_.tables()); });
  connect(materials_, &QComboBox::activated, this, &PipePanel::choose_material);
  connect(sizes_, &QComboBox::activated, this, &PipePanel::choose_size);
  connect(walls_, &QComboBox::activated, this, &PipePanel::choose_wall);
}

void PipePanel::make_pull() {
  add_gap();
  add_heading(tr("Bringing it in"));
  add_choice(
      tr("goes in"),
      labels_of<Insertion>({{Insertion::pulled_after, tr("pulled after")},
                            {Insertion::towed, tr("towed")},
                            {Insertion::pushed, tr("pushed")}}),
      [this] { return row_of_word(*pipe_of(document_.crossing()).insertion); },
      [this](int row) {
        edit(tr("Choose how the pipe goes in"), [&](Pipe& p) { p.insertion.set(word_at<Insertion>(row)); });
      });
  add_choice(
      tr("pulled by"),
      labels_of<PullBy>({{PullBy::rope, tr("rope")}, {PullBy::hose, tr("air hose")}, {PullBy::rod, tr("rod")}}),
      [this] { return row_of_word(*pipe_of(document_.crossing()).pull_by); },
      [this](int row) {
        edit(tr("Choose what pulls the pipe"), [&](Pipe& p) { p.pull_by.set(word_at<PullBy>(row)); });
      });
  pull_ = add_entries(tr("default"), true);
  pull_->show_part(pipe_part, [this] { return pipe_pull_fields(document_.crossing()); });
  temperatures_ = add_combo(tr("temperature on the day of pulling"));
  connect(temperatures_, &QComboBox::activated, this, [this](int row) {
    if (row < 0 || row >= static_cast<int>(std::size(offered_celsius))) return;
    edit(tr("Choose temperature on the day of pulling"),
         [&](Pipe& p) { p.temperature.set(Temperature{zero_celsius_K + offered_celsius[row]}); });
  });
  add_gap();
  add_heading(tr("In use"));
  use_ = add_entries(tr("default"), true);
  use_->show_part(pipe_part, [this] { return pipe_use_fields(document_.crossing()); });
  service_ = add_combo(tr("warmest temperature in service"));
  connect(service_, &QComboBox::activated, this, [this](int row) {
    if (row < 0 || row > static_cast<int>(std::size(offered_celsius))) return;
    edit(tr("Choose warmest temperature in service"), [&](Pipe& p) {
      p.service_temperature.reset();
      if (row > 0) p.service_temperature = Temperature{zero_celsius_K + offered_celsius[row - 1]};
    });
  });
}

void PipePanel::make_checks() {
  add_gap();
  add_heading(tr("What it bears"));
  checks_ = new CheckList(tr("Checks of the pipe"), this);
  add_widget(checks_);
  connect(checks_, &CheckList::chosen, this, [this](const QString& code) {
    picked_ = code.toStdString();
    show_working();
    bring_into_view(copy_);  // below the list, which may be longer than the page shows
  });
  working_ = add_text(tr("Calculation of the selected check"));
  copy_ = add_buttons({tr("Copy the calculation")}).front();
  copy_->setToolTip(tr("Formula, numbers, result, limit and sources as text"));
  connect(copy_, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(plain_); });
}

void PipePanel::make_charts() {
  add_gap();
  add_heading(tr("What presses on it"));
  station_ = new QSlider(Qt::Horizontal, this);
  station_->setRange(0, station_steps);
  station_->setValue(station_steps / 2);
  station_text_ = add_labelled(tr("station"), station_);
  station_->setAccessibleName(tr("Station of the load chart, from launch to exit"));
  connect(station_, &QSlider::valueChanged, this, &PipePanel::show_loads);
  by_depth_ = new LoadDepthChart(this);
  add_widget(by_depth_);
  along_ = new LoadAlongChart(this);
  add_widget(along_);
}

void PipePanel::set_theme(const Theme& theme) {
  checks_->set_theme(theme);
  by_depth_->set_theme(theme);
  along_->set_theme(theme);
  FormPanel::set_theme(theme);
}

void PipePanel::edit(const QString& step_name, const std::function<void(Pipe&)>& change_it) {
  change(step_name, [&](Crossing& c) { change_it(c.pipe ? *c.pipe : c.pipe.emplace()); });
}

void PipePanel::fill_materials() {
  QStringList rows{tr("not said")};
  int now = 0;
  const Pipe pipe = pipe_of(document_.crossing());
  for (const PipeMaterial& material : document_.tables().pipes) {
    if (material.id == pipe.material) now = static_cast<int>(rows.size());
    rows << text_from(material.name);
  }
  fill(materials_, rows, now);
}

void PipePanel::choose_material(int row) {
  const auto& pipes = document_.tables().pipes;
  if (row < 0 || static_cast<std::size_t>(row) > pipes.size()) return;
  const std::string id = row == 0 ? std::string() : pipes[static_cast<std::size_t>(row) - 1].id;
  if (document_.crossing().pipe && id == document_.crossing().pipe->material) return;
  edit(tr("Choose material: %1").arg(materials_->itemText(row)), [&](Pipe& p) { p.material = id; });
}

void PipePanel::fill_sizes() {
  const Pipe pipe = pipe_of(document_.crossing());
  const PipeSize* taken =
      pipe.outside_diameter ? find_size(document_.tables(), pipe.material, *pipe.outside_diameter) : nullptr;
  const auto offered = offered_sizes(document_.tables(), pipe.material);
  QStringList rows{tr("as typed below")};
  int now = 0;
  for (const OfferedSize& one : offered) {
    const QString across = text_of(one.size->outside_diameter.m, Dimension::small_length);
    if (one.size == taken) now = static_cast<int>(rows.size());
    rows << tr("%1, %2 across, %3").arg(text_from(one.size->name), across, text_from(one.series->name));
  }
  fill(sizes_, rows, now);
  sizes_->setEnabled(!locked() && !offered.empty());
}

void PipePanel::choose_size(int row) {
  const auto offered = offered_sizes(document_.tables(), pipe_of(document_.crossing()).material);
  if (row < 1 || static_cast<std::size_t>(row) > offered.size()) {
    fill_sizes();
    return;
  }
  const PipeSize& size = *offered[static_cast<std::size_t>(row) - 1].size;
  edit(tr("Choose size: %1").arg(text_from(size.name)), [&](Pipe& p) { p = with_size(p, size); });
}

void PipePanel::fill_walls() {
  const Pipe pipe = pipe_of(document_.crossing());
  const PipeSize* size =
      pipe.outside_diameter ? find_size(document_.tables(), pipe.material, *pipe.outside_diameter) : nullptr;
  QStringList rows{tr("as typed below")};
  int now = 0;
  for (const PipeWall& wall : size ? size->walls : std::vector<PipeWall>()) {
    const QString thick = text_of(wall.wall.m, Dimension::small_length);
    const bool only = !wall.sdr && !pipe.sdr;
    if (!pipe.wall && (only || (wall.sdr && pipe.sdr && std::abs(wall.sdr->v - pipe.sdr->v) < 0.05)))
      now = static_cast<int>(rows.size());
    rows << (wall.sdr ? tr("%1, ratio %2").arg(thick, text_of(wall.sdr->v, Dimension::ratio)) : thick);
  }
  fill(walls_, rows, now);
  walls_->setEnabled(!locked() && size);
}

void PipePanel::choose_wall(int row) {
  const Pipe pipe = pipe_of(document_.crossing());
  const PipeSize* size =
      pipe.outside_diameter ? find_size(document_.tables(), pipe.material, *pipe.outside_diameter) : nullptr;
  if (!size || row < 1 || static_cast<std::size_t>(row) > size->walls.size()) {
    fill_walls();
    return;
  }
  const PipeWall wall = size->walls[static_cast<std::size_t>(row) - 1];
  edit(tr("Choose wall: %1").arg(walls_->itemText(row)), [&](Pipe& p) {
    p.sdr = wall.sdr;
    p.wall.reset();
  });
}

void PipePanel::fill_temperatures() {
  const Pipe pipe = pipe_of(document_.crossing());
  const auto offer = [this](QComboBox* combo, QStringList rows, const std::optional<Temperature>& stands) {
    int now = stands ? -1 : 0;
    for (const int celsius : offered_celsius) {
      if (stands && std::abs(stands->K - zero_celsius_K - celsius) < 0.05) now = static_cast<int>(rows.size());
      rows << temperature_words(zero_celsius_K + celsius);
    }
    if (now < 0) {
      now = static_cast<int>(rows.size());
      rows << temperature_words(stands->K);
    }
    fill(combo, rows, now);
    combo->setEnabled(!locked());
  };
  offer(temperatures_, {}, *pipe.temperature);
  offer(service_, {tr("not entered: its warmest")}, pipe.service_temperature);
}

double PipePanel::station_m() const {
  const double from = document_.crossing().bore.launch.station.m, to = document_.crossing().bore.exit.station.m;
  return from + (to - from) * station_->value() / station_steps;
}

void PipePanel::refresh() {
  fill_materials();
  fill_sizes();
  fill_walls();
  fill_temperatures();
  materials_->setEnabled(!locked());
  source_->setText(source_words());
  for (EntryForm* form : {size_, pull_, use_}) form->catch_up();
  show_checks();
  show_loads();
}

void PipePanel::show_loads() {
  const double station = station_m();
  station_text_->setText(tr("station %1").arg(text_of(station, Dimension::station)));
  by_depth_->show_profile(load_profile(document_.crossing(), document_.tables(), document_.assessment(), station),
                          station, units_);
  along_->show_loads(document_.assessment(), station, units_);
}

QString PipePanel::visible_text() const {
  return plain(source_) + plain(summary_) + plain(working_);
}

}  // namespace burrow
