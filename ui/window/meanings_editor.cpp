#include <QComboBox>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/window/import_screen.h"

namespace burrow {

std::optional<MeaningTable> edit_meanings(const MeaningTable& rows, const Tables& tables, QWidget* parent) {
  QDialog dialog(parent);
  dialog.setWindowTitle(QObject::tr("Own meanings of layers and codes"));
  dialog.resize(560, 420);
  auto* column = new QVBoxLayout(&dialog);
  auto* hint = new QLabel(
      QObject::tr("The first row that fits counts, before the program's own table. * stands for any text."), &dialog);
  hint->setWordWrap(true);
  column->addWidget(hint);
  auto* table = new QTableWidget(0, 2, &dialog);
  table->setHorizontalHeaderLabels({QObject::tr("layer or code"), QObject::tr("means")});
  table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  table->verticalHeader()->hide();
  column->addWidget(table, 1);
  const auto add = [&](const QString& match, Meaning meaning) {
    const int row = table->rowCount();
    table->insertRow(row);
    table->setItem(row, 0, new QTableWidgetItem(match));
    auto* box = new QComboBox(table);
    for (const auto& [value, word] : EnumNames<Meaning>::list)
      box->addItem(meaning_name(value, tables), static_cast<int>(value));
    box->setCurrentIndex(box->findData(static_cast<int>(meaning)));
    table->setCellWidget(row, 1, box);
  };
  for (const MeaningRow& row : rows) add(text_from(row.match), row.meaning);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, &dialog);
  QPushButton* more = buttons->addButton(QObject::tr("Add a row"), QDialogButtonBox::ActionRole);
  QPushButton* less = buttons->addButton(QObject::tr("Remove the row"), QDialogButtonBox::ActionRole);
  QObject::connect(more, &QPushButton::clicked, &dialog, [&] {
    add(QString(), Meaning::background);
    table->setCurrentCell(table->rowCount() - 1, 0);
    table->editItem(table->currentItem());
  });
  QObject::connect(less, &QPushButton::clicked, &dialog, [&] { table->removeRow(table->currentRow()); });
  QObject::connect(buttons, &QDialogButtonBox::accepted, &dialog, &QDialog::accept);
  QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
  column->addWidget(buttons);
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  MeaningTable out;
  for (int row = 0; row < table->rowCount(); ++row) {
    const std::string match = table->item(row, 0) ? table->item(row, 0)->text().trimmed().toStdString() : std::string();
    if (match.empty()) continue;
    const auto* box = qobject_cast<QComboBox*>(table->cellWidget(row, 1));
    out.push_back({match, static_cast<Meaning>(box->currentData().toInt()), {"", SourceLabel::owners_setting}});
  }
  return out;
}

}  // namespace burrow
