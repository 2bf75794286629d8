/// How the import screen is laid out.

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QGridLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QScreen>
#include <QSplitter>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/window/field_choices.h"
#include "burrow/window/import_screen.h"

namespace burrow {

namespace {

void fill_units(QComboBox* box, const QString& first) {
  box->addItem(first, -1);
  box->addItem(QObject::tr("metres"), static_cast<int>(FileUnit::metre));
  box->addItem(QObject::tr("feet (0.3048 m)"), static_cast<int>(FileUnit::foot));
  box->addItem(QObject::tr("US survey feet (1200/3937 m)"), static_cast<int>(FileUnit::us_survey_foot));
  box->addItem(QObject::tr("millimetres"), static_cast<int>(FileUnit::millimetre));
  box->addItem(QObject::tr("centimetres"), static_cast<int>(FileUnit::centimetre));
  box->addItem(QObject::tr("inches"), static_cast<int>(FileUnit::inch));
}

QLabel* wrapped(QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setWordWrap(true);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  return label;
}

}  // namespace

ImportScreen::ImportScreen(const Tables& tables, const Theme& theme, UnitSystem units, const QString& own_table,
                           QWidget* parent)
    : QDialog(parent),
      tables_(tables),
      theme_(theme),
      units_(units),
      own_path_(own_table),
      built_in_(built_in_meanings()) {
  setWindowTitle(tr("Import"));
  setSizeGripEnabled(true);
  auto* column = new QVBoxLayout(this);
  auto* splitter = new QSplitter(Qt::Horizontal, this);
  splitter->setChildrenCollapsible(false);
  auto* left = new QWidget(splitter);
  auto* right = new QWidget(splitter);
  make_left(left);
  make_right(right);
  splitter->setStretchFactor(0, 1);
  splitter->setStretchFactor(1, 1);
  splitter->setSizes({660, 640});
  column->addWidget(splitter, 1);
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 1000);
  progress_->setTextVisible(false);
  progress_->hide();
  message_ = wrapped(this);
  column->addWidget(message_);
  column->addWidget(progress_);
  auto* buttons = new QDialogButtonBox(this);
  new_button_ = buttons->addButton(tr("&New crossing from this"), QDialogButtonBox::AcceptRole);
  into_button_ = buttons->addButton(tr("Into the &open crossing"), QDialogButtonBox::ActionRole);
  buttons->addButton(QDialogButtonBox::Cancel);
  into_button_->setToolTip(
      tr("Ground and place are replaced, utilities and drawings added; the bore stays. One step of undo."));
  new_button_->setEnabled(false);
  into_button_->setEnabled(false);
  column->addWidget(buttons);

  connect(new_button_, &QPushButton::clicked, this, [this] { finish(true); });
  connect(into_button_, &QPushButton::clicked, this, [this] { finish(false); });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(&job_, &ImportJob::progressed, progress_,
          [this](double share) { progress_->setValue(static_cast<int>(1000 * share)); });
  connect(&job_, &ImportJob::read_done, this,
          [this](const auto& found, const auto& seen) { take_found(*found, seen); });
  connect(&job_, &ImportJob::cut_done, this, [this](const auto& imported) { take_imported(*imported); });
  connect(&job_, &ImportJob::seen_done, this, &ImportScreen::take_seen);
  later_.setSingleShot(true);
  later_.setInterval(120);
  connect(&later_, &QTimer::timeout, this, [this] {
    if (line_ && !files_.empty() && !reading_) job_.cut(files_, *line_);
  });
  preview_->set_theme(theme);
  preview_->set_units(units);
  cut_->set_theme(theme);
  cut_->set_units(units);
  layers_->set_theme(theme);
  layers_->set_units(units);
  if (!own_path_.isEmpty())
    if (const auto why = kept_.read(own_path_)) say(*why, true);
  // On a small screen the buttons at the lower edge would lie below it.
  const QSize title_bar(16, 48);
  resize(QSize(1320, 800).boundedTo((parent ? parent : this)->screen()->availableSize() - title_bar));
  show_file();
}

void ImportScreen::make_left(QWidget* left) {
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 6, 0);
  auto* grid = new QGridLayout;
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  file_box_ = new QComboBox(left);
  file_box_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  file_box_->setMinimumContentsLength(12);
  auto* more = new QPushButton(tr("&Add a file…"), left);
  more->setObjectName(QStringLiteral("addFile"));
  more->setAutoDefault(false);
  order_ = new QComboBox(left);
  order_->setEditable(true);
  order_->addItems({QStringLiteral("PNEZD"), QStringLiteral("PENZD"), QStringLiteral("NEZD"), QStringLiteral("ENZD"),
                    QStringLiteral("PNEZ"), QStringLiteral("PENZ"), QStringLiteral("NEZ"), QStringLiteral("ENZ")});
  order_->setToolTip(tr("Columns from the left: P point, N north, E east, Z height, D description, - not used"));
  unit_ = new QComboBox(left);
  height_unit_ = new QComboBox(left);
  fill_units(unit_, tr("as the file says"));
  fill_units(height_unit_, tr("as the file says"));
  for (QComboBox* box : {order_, unit_, height_unit_}) {
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(10);
  }
  const auto label = [&](const QString& text, QWidget* buddy) {
    auto* made = new QLabel(text, left);
    made->setBuddy(buddy);
    return made;
  };
  grid->addWidget(label(tr("&File"), file_box_), 0, 0);
  grid->addWidget(file_box_, 0, 1, 1, 2);
  grid->addWidget(more, 0, 3);
  grid->addWidget(label(tr("P&lan in"), unit_), 1, 0);
  grid->addWidget(unit_, 1, 1);
  grid->addWidget(label(tr("&Heights in"), height_unit_), 1, 2);
  grid->addWidget(height_unit_, 1, 3);
  system_ = new QLineEdit(left);
  system_->setToolTip(tr("Coordinate system as a code, EPSG:25832; empty: as the file says"));
  grid->addWidget(label(tr("&System"), system_), 2, 0);
  grid->addWidget(system_, 2, 1);
  order_label_ = label(tr("&Columns"), order_);
  grid->addWidget(order_label_, 2, 2);
  grid->addWidget(order_, 2, 3);
  column->addLayout(grid);
  consequence_ = wrapped(left);
  column->addWidget(consequence_);
  confirm_ = new QCheckBox(left);
  confirm_->setObjectName(QStringLiteral("confirmUnit"));
  confirm_->hide();
  column->addWidget(confirm_);
  same_system_ = new QPushButton(left);
  same_system_->setObjectName(QStringLiteral("sameSystem"));
  same_system_->setAutoDefault(false);
  same_system_->hide();
  column->addWidget(same_system_);

  layers_ = new LayerModel(tables_, this);
  table_ = new QTableView(left);
  table_->setModel(layers_);
  table_->setItemDelegate(new ChoiceDelegate(tables_, table_));
  table_->verticalHeader()->hide();
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::SelectedClicked |
                          QAbstractItemView::EditKeyPressed | QAbstractItemView::AnyKeyPressed);
  table_->setAlternatingRowColors(true);
  table_->setShowGrid(false);
  table_->setWordWrap(false);
  table_->setTabKeyNavigation(false);
  table_->horizontalHeader()->setStretchLastSection(false);
  table_->setAccessibleName(tr("Layers and codes of the file"));
  column->addWidget(table_, 3);
  auto* table_button = new QPushButton(tr("&Table of meanings…"), left);
  table_button->setAutoDefault(false);
  left_out_label_ = new QLabel(left);
  fields_button_ = new QPushButton(left);
  fields_button_->setObjectName(QStringLiteral("attributes"));
  fields_button_->setAutoDefault(false);
  auto* row = new QHBoxLayout;
  row->addWidget(left_out_label_, 1);
  row->addWidget(fields_button_);
  row->addWidget(table_button);
  column->addLayout(row);
  left_out_ = new LeftOutList(left);
  column->addWidget(left_out_, 1);

  const auto stand_out = [this] {
    const QModelIndex at = table_->selectionModel()->currentIndex();
    const bool any = at.isValid() && table_->selectionModel()->hasSelection() && file_box_->currentIndex() >= 0;
    preview_->set_highlight(any ? std::optional(std::pair(static_cast<std::size_t>(file_box_->currentIndex()),
                                                          static_cast<std::uint32_t>(at.row())))
                                : std::nullopt);
  };
  connect(table_->selectionModel(), &QItemSelectionModel::selectionChanged, this, stand_out);
  connect(layers_, &LayerModel::modelReset, this, [this] { preview_->set_highlight({}); });
  connect(more, &QPushButton::clicked, this, [this] {
    for (const QString& path : QFileDialog::getOpenFileNames(this, tr("Add a file"), QString(), tr("All files (*)")))
      add_file(path);
  });
  connect(table_button, &QPushButton::clicked, this, &ImportScreen::edit_table);
  connect(fields_button_, &QPushButton::clicked, this, [this] {
    if (const ImportFile* file = current())
      if (const auto chosen = choose_fields(*file, this)) set_fields(*chosen);
  });
  connect(system_, &QLineEdit::editingFinished, this, [this] { state_system(system_->text()); });
  connect(same_system_, &QPushButton::clicked, this, &ImportScreen::take_likely_system);
  connect(confirm_, &QCheckBox::clicked, this, &ImportScreen::confirm_lengths);
  connect(file_box_, &QComboBox::activated, this, [this] { show_file(); });
  connect(unit_, &QComboBox::activated, this, &ImportScreen::choose_units);
  connect(height_unit_, &QComboBox::activated, this, &ImportScreen::choose_units);
  connect(order_, &QComboBox::activated, this, &ImportScreen::read_order);
  connect(order_->lineEdit(), &QLineEdit::editingFinished, this, &ImportScreen::read_order);
  connect(layers_, &LayerModel::chosen, this, [this](const QString& name) {
    if (!name.isEmpty())
      if (const ImportFile* file = current())
        for (std::size_t i = 0; i < file->layers.size(); ++i)
          if (file->found->layers[i] == name.toStdString())
            result_text_.emplace_back(name.toStdString(), file->layers[i].meaning);
    preview_->refresh();
    cut_soon();
  });
}

void ImportScreen::make_right(QWidget* right) {
  auto* column = new QVBoxLayout(right);
  column->setContentsMargins(6, 0, 0, 0);
  preview_ = new ImportPreview(tables_, right);
  column->addWidget(preview_, 3);
  auto* grid = new QGridLayout;
  launch_ = new QLineEdit(right);
  exit_ = new QLineEdit(right);
  for (QLineEdit* edit : {launch_, exit_}) edit->setPlaceholderText(tr("east, north"));
  auto* launch_label = new QLabel(tr("La&unch at"), right);
  auto* exit_label = new QLabel(tr("&Exit at"), right);
  launch_label->setBuddy(launch_);
  exit_label->setBuddy(exit_);
  grid->addWidget(launch_label, 0, 0);
  grid->addWidget(launch_, 0, 1);
  grid->addWidget(exit_label, 0, 2);
  grid->addWidget(exit_, 0, 3);
  grid->setColumnStretch(1, 1);
  grid->setColumnStretch(3, 1);
  column->addLayout(grid);
  cut_ = new CutPreview(tables_, right);
  column->addWidget(cut_, 1);
  result_ = wrapped(right);
  column->addWidget(result_);
  connect(preview_, &ImportPreview::line_drawn, this, &ImportScreen::set_line);
  connect(launch_, &QLineEdit::editingFinished, this, &ImportScreen::read_typed_line);
  connect(exit_, &QLineEdit::editingFinished, this, &ImportScreen::read_typed_line);
}

}  // namespace burrow
