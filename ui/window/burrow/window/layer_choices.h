#pragma once
/// The layers or codes of an imported file in a table, with what a person says about each.

#include <QAbstractTableModel>
#include <QStyledItemDelegate>
#include <QTableView>

#include "burrow/base/quantity_text.h"
#include "burrow/drawing/theme.h"
#include "burrow/import/into_crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// What a person calls a meaning: "gas main or service", "not used".
QString meaning_name(Meaning meaning, const Tables& tables);

/// What the heights of a utility are, as one choice.
struct HeightsChoice {
  std::optional<DepthFrom> from;
  std::optional<LevelMeant> level;
  bool operator==(const HeightsChoice&) const = default;
};
const std::vector<std::pair<HeightsChoice, QString>>& heights_choices();

class LayerModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  enum Column { layer, holds, meaning, heights, diameter, ground, join, column_count };

  LayerModel(const Tables& tables, QObject* parent);
  void set_file(ImportFile* file);
  void set_theme(const Theme& theme);
  void set_units(UnitSystem units);

  [[nodiscard]] int rowCount(const QModelIndex& parent) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

 Q_SIGNALS:
  void chosen(const QString& layer);

 private:
  [[nodiscard]] QString words(const LayerSummary& what) const;
  [[nodiscard]] bool is_utility(int row) const;

  const Tables& tables_;
  Theme theme_ = Theme::light();
  UnitSystem units_ = UnitSystem::metric;
  ImportFile* file_ = nullptr;
  std::vector<LayerSummary> layers_;
};

/// Opens the choices of a cell as a list.
class ChoiceDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  ChoiceDelegate(const Tables& tables, QObject* parent);
  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  void setEditorData(QWidget* editor, const QModelIndex& index) const override;
  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;

 private:
  const Tables& tables_;
};

}  // namespace burrow
