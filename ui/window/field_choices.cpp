#include "burrow/window/field_choices.h"

#include <QComboBox>
#include <QDialog>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/document/text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

enum Column { name_column, values_column, use_column, unit_column, meant_column, column_count };

bool is_length(FieldUse use) {
  return use == FieldUse::diameter || use == FieldUse::depth || use == FieldUse::elevation ||
         use == FieldUse::invert_start || use == FieldUse::invert_end;
}

/// The first three different texts of a column.
QString first_values(const FoundTable& table, std::size_t field) {
  constexpr int wanted = 3;
  QStringList values;
  const std::size_t rows = table.cells.size() / table.fields.size();
  for (std::size_t i = 0; i < rows && values.size() < wanted; ++i) {
    const QString text = text_from(std::string(table.text(i, field)));
    if (!text.isEmpty() && !values.contains(text)) values << text;
  }
  return values.isEmpty() ? QStringLiteral("–") : values.join(QStringLiteral(", "));
}

template <class E>
QComboBox* box_of(const std::optional<E>& chosen, const QString& none, QWidget* parent,
                  const std::function<QString(E)>& name) {
  auto* box = new QComboBox(parent);
  box->addItem(none, -1);
  for (const auto& [value, word] : EnumNames<E>::list) box->addItem(name(value), static_cast<int>(value));
  box->setCurrentIndex(box->findData(chosen ? static_cast<int>(*chosen) : -1));
  return box;
}

/// What a diameter or a level means, in one list.
QComboBox* meant_box(const FieldChoice& choice, QWidget* parent) {
  auto* box = new QComboBox(parent);
  const bool diameter = choice.use == FieldUse::diameter;
  box->addItem(QObject::tr("not known"), -1);
  if (diameter) {
    for (const auto& [value, word] : EnumNames<DiameterMeant>::list)
      box->addItem(QString::fromUtf8(translated_word(value).data()), static_cast<int>(value));
    box->setCurrentIndex(box->findData(choice.diameter ? static_cast<int>(*choice.diameter) : -1));
  } else {
    for (const auto& [value, word] : EnumNames<LevelMeant>::list)
      box->addItem(QString::fromUtf8(translated_word(value).data()), static_cast<int>(value));
    box->setCurrentIndex(box->findData(choice.level ? static_cast<int>(*choice.level) : -1));
  }
  return box;
}

class FieldTable : public QTableWidget {
 public:
  FieldTable(const ImportFile& file, QWidget* parent)
      : QTableWidget(static_cast<int>(file.fields.size()), column_count, parent), choices_(file.fields) {
    setHorizontalHeaderLabels({QObject::tr("column"), QObject::tr("first values"), QObject::tr("is"),
                               QObject::tr("unit"), QObject::tr("meant is")});
    verticalHeader()->hide();
    horizontalHeader()->setSectionResizeMode(values_column, QHeaderView::Stretch);
    setAccessibleName(QObject::tr("Attributes of the file"));
    for (int row = 0; row < rowCount(); ++row) {
      const auto field = static_cast<std::size_t>(row);
      for (const auto& [column, text] : {std::pair{name_column, text_from(file.found->table.fields[field].name)},
                                         {values_column, first_values(file.found->table, field)}}) {
        auto* item = new QTableWidgetItem(text);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
        item->setToolTip(text);
        setItem(row, column, item);
      }
      auto* use = new QComboBox(this);
      for (const auto& [value, word] : EnumNames<FieldUse>::list)
        use->addItem(field_use_name(value), static_cast<int>(value));
      use->setCurrentIndex(use->findData(static_cast<int>(choices_[field].use)));
      setCellWidget(row, use_column, use);
      connect(use, &QComboBox::activated, this, [this, row, use] {
        choices_[static_cast<std::size_t>(row)] = {};
        choices_[static_cast<std::size_t>(row)].use = static_cast<FieldUse>(use->currentData().toInt());
        show_details(row);
      });
      show_details(row);
    }
    resizeColumnsToContents();
  }

  [[nodiscard]] std::vector<FieldChoice> choices() const {
    std::vector<FieldChoice> all = choices_;
    for (FieldChoice& choice : all) choice.is_decided = true;
    return all;
  }

 private:
  void show_details(int row) {
    FieldChoice& choice = choices_[static_cast<std::size_t>(row)];
    removeCellWidget(row, unit_column);
    removeCellWidget(row, meant_column);
    if (!is_length(choice.use)) return;
    auto* unit = box_of<FileUnit>(choice.unit, QObject::tr("not known"), this,
                                  [](FileUnit u) { return QString::fromUtf8(translated_word(u).data()); });
    auto* meant = meant_box(choice, this);
    setCellWidget(row, unit_column, unit);
    setCellWidget(row, meant_column, meant);
    connect(unit, &QComboBox::activated, this, [&choice, unit] {
      const int value = unit->currentData().toInt();
      choice.unit = value < 0 ? std::nullopt : std::optional(static_cast<FileUnit>(value));
    });
    connect(meant, &QComboBox::activated, this, [&choice, meant] {
      const int value = meant->currentData().toInt();
      if (choice.use == FieldUse::diameter)
        choice.diameter = value < 0 ? std::nullopt : std::optional(static_cast<DiameterMeant>(value));
      else
        choice.level = value < 0 ? std::nullopt : std::optional(static_cast<LevelMeant>(value));
    });
  }

  std::vector<FieldChoice> choices_;
};

}  // namespace

QString field_use_name(FieldUse use) {
  switch (use) {
    case FieldUse::not_used:
      return QObject::tr("not used");
    case FieldUse::name:
      return QObject::tr("name");
    case FieldUse::diameter:
      return QObject::tr("diameter");
    case FieldUse::material:
      return QObject::tr("material");
    case FieldUse::depth:
      return QObject::tr("depth below the ground");
    case FieldUse::elevation:
      return QObject::tr("elevation");
    case FieldUse::invert_start:
      return QObject::tr("invert at its start");
    case FieldUse::invert_end:
      return QObject::tr("invert at its end");
    case FieldUse::status:
      return QObject::tr("status");
    case FieldUse::owner:
      return QObject::tr("owner");
    case FieldUse::date:
      return QObject::tr("date");
  }
  return {};
}

QString fields_in_words(const std::vector<FieldChoice>& choices) {
  const auto used = std::count_if(choices.begin(), choices.end(),
                                  [](const FieldChoice& c) { return c.use != FieldUse::not_used && c.is_decided; });
  const auto guessed = std::count_if(choices.begin(), choices.end(),
                                     [](const FieldChoice& c) { return c.use != FieldUse::not_used && !c.is_decided; });
  if (guessed > 0)
    return QObject::tr("Attri&butes: %1 of %2 used, %n to be confirmed…", nullptr, static_cast<int>(guessed))
        .arg(used)
        .arg(choices.size());
  return QObject::tr("Attri&butes: %1 of %2 used…").arg(used).arg(choices.size());
}

std::optional<std::vector<FieldChoice>> choose_fields(const ImportFile& file, QWidget* parent) {
  QDialog dialog(parent);
  dialog.setWindowTitle(QObject::tr("Attributes"));
  dialog.resize(820, 460);
  auto* column = new QVBoxLayout(&dialog);
  auto* hint = new QLabel(QObject::tr("What each column is. A length without a unit, and a depth of which nobody says "
                                      "what it is counted to, are not used: they are then missing."),
                          &dialog);
  hint->setWordWrap(true);
  column->addWidget(hint);
  auto* table = new FieldTable(file, &dialog);
  column->addWidget(table, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, &dialog);
  QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
  QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
  column->addWidget(buttons);
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  return table->choices();
}

}  // namespace burrow
