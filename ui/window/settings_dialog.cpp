#include "burrow/window/settings_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QDir>
#include <QFile>
#include <QFormLayout>
#include <QGroupBox>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "burrow/base/quantity_text.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/crew_defaults.h"
#include "burrow/document/language.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"

namespace burrow {

QString CrewDefaults::path() const {
  return folder_ + QStringLiteral("/own-start.crossing");
}

std::optional<Crossing> CrewDefaults::kept() const {
  if (folder_.isEmpty()) return std::nullopt;
  const Result<std::string> text = read_regular_file(path().toStdString());
  if (!text) return std::nullopt;
  Result<Crossing> crossing = read_crossing(*text, tables_);
  return crossing ? std::optional(std::move(*crossing)) : std::nullopt;
}

Result<void> CrewDefaults::keep(const Crossing& crossing) const {
  if (folder_.isEmpty()) return fail("own start", "no folder to keep it in", "a folder of one's own");
  QDir().mkpath(folder_);
  return save_atomically(path().toStdString(), write_crossing(own_start_of(crossing)));
}

Result<void> CrewDefaults::forget() const {
  QFile file(path());
  if (!file.exists() || file.remove()) return {};
  return fail(path().toStdString(), file.errorString().toStdString(), "a file that may be removed");
}

SettingsDialog::SettingsDialog(const SettingsNow& now, const CrewDefaults& own, const Crossing& open, QWidget* parent)
    : QDialog(parent),
      own_(own),
      units_(now.units),
      result_text_(new QLabel(this)),
      wrong_(new QLabel(this)),
      forget_(new QPushButton(tr("&Forget it"), this)) {
  setWindowTitle(tr("Settings"));
  auto* units = new QComboBox(this);
  units->addItem(tr("metric"), static_cast<int>(UnitSystem::metric));
  units->addItem(tr("US customary"), static_cast<int>(UnitSystem::us));
  units->setCurrentIndex(units->findData(static_cast<int>(now.units)));
  auto* colours = new QComboBox(this);
  colours->addItem(tr("light"), static_cast<int>(Colours::light));
  colours->addItem(tr("dark"), static_cast<int>(Colours::dark));
  colours->addItem(tr("high contrast, for sunlight"), static_cast<int>(Colours::sunlight));
  colours->addItem(tr("as the desktop has them"), static_cast<int>(Colours::as_desktop));
  colours->setCurrentIndex(colours->findData(static_cast<int>(now.colours)));
  auto* language = new QComboBox(this);
  language->addItem(tr("as the desktop has it"), QStringLiteral("as-desktop"));
  for (const QString& one : languages()) language->addItem(language_name(one), one);
  language->setCurrentIndex(std::max(0, language->findData(now.language)));
  auto* from_next_start = new QLabel(tr("The language changes when the program starts the next time."), this);
  from_next_start->setWordWrap(true);
  from_next_start->hide();
  auto* fineness = new QComboBox(this);
  fineness->addItem(tr("usual: 1 cm, 0.1 in, 0.01 %"), static_cast<int>(DisplayPrecision::usual));
  fineness->addItem(tr("fine: 1 mm, 0.01 in, 0.001 %"), static_cast<int>(DisplayPrecision::fine));
  fineness->setCurrentIndex(fineness->findData(static_cast<int>(now.fineness)));
  fineness->setToolTip(tr("How finely lengths, levels, grades and angles are shown. What is computed is the same."));
  auto* form = new QFormLayout;
  form->addRow(tr("&Units"), units);
  form->addRow(tr("&Numbers"), fineness);
  form->addRow(tr("&Colours"), colours);
  form->addRow(tr("&Language"), language);
  form->addRow(from_next_start);
  auto* hints = new QPushButton(tr("Show the three &hints again"), this);
  form->addRow(hints);

  auto* start = new QGroupBox(tr("New crossings begin with"), this);
  result_text_->setWordWrap(true);
  result_text_->setMinimumHeight(3 * fontMetrics().lineSpacing());
  result_text_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  result_text_->setAccessibleName(tr("What new crossings begin with"));
  wrong_->setWordWrap(true);
  auto* take = new QPushButton(tr("&Take tool, air and limits of the open crossing"), start);
  auto* column = new QVBoxLayout(start);
  column->addWidget(result_text_);
  column->addWidget(take);
  column->addWidget(forget_);
  column->addWidget(wrong_);

  // Enter closes; it neither keeps nor forgets.
  for (QPushButton* b : {hints, take, forget_}) b->setAutoDefault(false);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  buttons->button(QDialogButtonBox::Close)->setDefault(true);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::accept);
  auto* all = new QVBoxLayout(this);
  all->addLayout(form);
  all->addWidget(start);
  all->addStretch(1);
  all->addWidget(buttons);
  setMinimumWidth(440);

  connect(units, &QComboBox::currentIndexChanged, this, [this, units] {
    units_ = static_cast<UnitSystem>(units->currentData().toInt());
    Q_EMIT units_wanted(units_);
    show_own();
  });
  connect(colours, &QComboBox::currentIndexChanged, this,
          [this, colours] { Q_EMIT colours_wanted(static_cast<Colours>(colours->currentData().toInt())); });
  connect(fineness, &QComboBox::currentIndexChanged, this,
          [this, fineness] { Q_EMIT fineness_wanted(static_cast<DisplayPrecision>(fineness->currentData().toInt())); });
  connect(language, &QComboBox::currentIndexChanged, this, [this, language, from_next_start] {
    from_next_start->show();
    Q_EMIT language_wanted(language->currentData().toString());
  });
  connect(hints, &QPushButton::clicked, this, [this] {
    accept();
    Q_EMIT hints_wanted();
  });
  const auto tell = [this](const Result<void>& done) {
    wrong_->setText(done ? QString() : text_from(translated_error(done.error())));
    wrong_->setVisible(!done);
    show_own();
  };
  connect(take, &QPushButton::clicked, this, [this, tell, open] { tell(own_.keep(open)); });
  connect(forget_, &QPushButton::clicked, this, [this, tell] { tell(own_.forget()); });
  wrong_->hide();
  show_own();
}

void SettingsDialog::show_own() {
  const std::optional<Crossing> own = own_.kept();
  forget_->setEnabled(own.has_value());
  if (!own) {
    result_text_->setText(tr("The program's own start: the 65 mm tool, no compressor, the limits of the tables."));
    return;
  }
  QStringList parts;
  parts << tr("the %1 tool")
               .arg(text_from(
                   format(resolve_tool(own->bore.tool, own_.tables()).diameter, units_, Dimension::small_length)));
  if (own->air.compressor.free_air)
    parts
        << tr("a compressor of %1").arg(text_from(format(own->air.compressor.free_air->m3_s, Dimension::flow, units_)));
  if (!own->air.line.empty()) parts << tr("an air line of %n parts", nullptr, static_cast<int>(own->air.line.size()));
  parts << (own->limits.empty() ? tr("the limits of the tables")
                                : tr("%n limits of your own", nullptr, static_cast<int>(own->limits.size())));
  result_text_->setText(tr("Your own start: %1.").arg(parts.join(QStringLiteral(", "))));
}

}  // namespace burrow
