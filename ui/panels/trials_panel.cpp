#include "burrow/panels/trials_panel.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QIntValidator>
#include <QLabel>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include "burrow/charts/bore_charts.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/trials_text.h"

namespace burrow {

namespace {
constexpr int most_trials = 1000000;

}  // namespace

TrialsPanel::TrialsPanel(Document& document, TrialsJob& job, QWidget* parent)
    : LivePanel(document, light_page_ms, parent),
      job_(job),
      button_(new QPushButton(this)),
      progress_(new QProgressBar(this)),
      count_(new QLineEdit(this)),
      seed_(new QLineEdit(this)),
      following_(new QCheckBox(tr("Count again after each change"), this)),
      cloud_(new QCheckBox(tr("Draw 200 of their paths"), this)),
      state_(new QLabel(this)),
      chart_(new ArrivalChart(this)),
      table_(new QTableWidget(this)) {
  state_->setWordWrap(true);
  progress_->setRange(0, 1000);
  progress_->setTextVisible(false);
  progress_->setAccessibleName(tr("Progress of the simulation"));
  count_->setAccessibleName(tr("Number of runs"));
  seed_->setAccessibleName(tr("Seed of the simulation"));
  seed_->setToolTip(tr("The same seed gives the same runs on any machine"));
  count_->setValidator(new QIntValidator(1, most_trials, count_));
  seed_->setValidator(new QIntValidator(0, 2147483647, seed_));
  table_->setColumnCount(3);
  table_->setHorizontalHeaderLabels({tr("of all bores"), tr("runs"), tr("closed form")});
  table_->verticalHeader()->hide();
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table_->setSelectionMode(QAbstractItemView::ContiguousSelection);
  table_->setWordWrap(true);
  table_->setShowGrid(false);
  table_->setAlternatingRowColors(true);
  table_->setFrameShape(QFrame::NoFrame);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
  table_->horizontalHeader()->setStretchLastSection(true);
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  table_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);  // so that the rows keep their height
  table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  table_->setAccessibleName(tr("What the simulation counted"));

  auto* top = new QHBoxLayout;
  top->addWidget(button_);
  top->addWidget(progress_, 1);
  auto* numbers = new QHBoxLayout;
  auto* count_label = new QLabel(tr("bores:"), this);
  count_label->setBuddy(count_);
  auto* seed_label = new QLabel(tr("seed:"), this);
  seed_label->setBuddy(seed_);
  numbers->addWidget(count_label);
  numbers->addWidget(count_, 2);
  numbers->addWidget(seed_label);
  numbers->addWidget(seed_, 1);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(10, 8, 8, 8);
  layout->setSpacing(6);
  layout->addLayout(top);
  layout->addLayout(numbers);
  layout->addWidget(following_);
  layout->addWidget(cloud_);
  layout->addWidget(state_);
  layout->addWidget(chart_);
  layout->addWidget(table_, 1);

  connect(button_, &QPushButton::clicked, this, [this] {
    if (job_.running())
      job_.cancel();
    else
      job_.run();
  });
  connect(following_, &QCheckBox::toggled, this, [this](bool on) { job_.set_following(on); });
  connect(cloud_, &QCheckBox::toggled, this, &TrialsPanel::cloud_toggled);
  connect(cloud_, &QCheckBox::toggled, this, [this](bool on) {
    if (on && !job_.trials() && !job_.running()) job_.run();
  });
  connect(count_, &QLineEdit::editingFinished, this, &TrialsPanel::take_count);
  connect(seed_, &QLineEdit::editingFinished, this, &TrialsPanel::take_count);
  connect(&job_, &TrialsJob::changed, this, &TrialsPanel::refresh_later);
  connect(&job_, &TrialsJob::changed, this, &TrialsPanel::show_state);
  connect(&job_, &TrialsJob::progressed, this,
          [this](double share) { progress_->setValue(static_cast<int>(share * 1000)); });
  show_state();
}

void TrialsPanel::set_theme(const Theme& theme) {
  LivePanel::set_theme(theme);
  chart_->set_theme(theme);
  table_->setPalette(palette());
}

void TrialsPanel::take_count() {
  TrialsRequest wanted = document_.crossing().bore.trials;
  bool counted = false, seeded = false;
  const int count = count_->text().toInt(&counted), seed = seed_->text().toInt(&seeded);
  if (counted && count >= 1 && count <= most_trials && count != *wanted.count) wanted.count.set(count);
  if (seeded && seed >= 0 && seed != *wanted.seed) wanted.seed.set(seed);
  document_.change(tr("Change the simulation"), [&](Crossing& c) { c.bore.trials = wanted; });
  refresh_later();
}

void TrialsPanel::show_state() {
  const bool running = job_.running();
  button_->setText(running ? tr("Cancel") : tr("Run simulation"));
  button_->setToolTip(running ? tr("Stop counting; what was counted before stays")
                              : tr("Follow many bores, each with its own errors, stones and soil"));
  progress_->setVisible(running);
  if (!running) progress_->setValue(0);
  const Trials* trials = job_.trials();
  if (running)
    state_->setText(tr("Counting %L1 bores…").arg(*document_.crossing().bore.trials.count));
  else if (!trials)
    state_->setText(
        tr("Nothing counted yet. The simulation follows many bores, each with its own errors of setting, stones and "
           "soil, and counts what becomes of them."));
  else if (!job_.current())
    state_->setText(tr("The crossing has changed since: these are the runs of how it stood before."));
  else
    state_->setText(
        tr("%L1 bores. Status: %2.").arg(trials->count).arg(text_from(model_status(document_.crossing().bore.model))));
}

void TrialsPanel::refresh() {
  show_state();
  const TrialsRequest& wanted = document_.crossing().bore.trials;
  if (!count_->hasFocus()) count_->setText(QString::number(*wanted.count));
  if (!seed_->hasFocus()) seed_->setText(QString::number(*wanted.seed));
  const Trials* trials = job_.trials();
  // Of another crossing than the one counted: the closed forms would be compared with what they do not belong to.
  chart_->show_arrivals(trials, job_.setup().window, job_.current() ? &document_.assessment() : nullptr, units_);
  chart_->setVisible(trials != nullptr);
  const std::vector<TrialsLine> lines =
      trials ? trials_lines(*trials, document_.assessment(), units_) : std::vector<TrialsLine>();
  table_->setVisible(trials != nullptr);
  table_->setRowCount(static_cast<int>(lines.size()));
  // What is not up to date looks not up to date.
  const QColor ink = job_.current() ? theme_.ink : theme_.ink_soft;
  for (int row = 0; row < table_->rowCount(); ++row) {
    const TrialsLine& line = lines[static_cast<std::size_t>(row)];
    int column = 0;
    for (const std::string& text : {line.what, line.value, job_.current() ? line.closed : std::string()}) {
      auto* item = new QTableWidgetItem(text.empty() ? QStringLiteral("–") : text_from(text));
      item->setForeground(ink);
      item->setToolTip(text_from(column == 1 && line.none_seen ? say("{} with 95 % confidence", text) : text));
      table_->setItem(row, column++, item);
    }
  }
  fit_table();
}

void TrialsPanel::resizeEvent(QResizeEvent* event) {
  LivePanel::resizeEvent(event);
  fit_table();
}

/// What is counted gets most of the room, the numbers what they need.
void TrialsPanel::fit_table() {
  const int room = table_->viewport()->width();
  table_->setColumnWidth(0, room * 42 / 100);
  table_->setColumnWidth(1, room * 36 / 100);
  table_->resizeRowsToContents();
}

}  // namespace burrow
