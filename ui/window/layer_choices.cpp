#include "burrow/window/layer_choices.h"

#include <QComboBox>
#include <QPainter>

#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/window/import_preview.h"

namespace burrow {

QString meaning_name(Meaning meaning, const Tables& tables) {
  if (const auto kind = utility_kind(meaning))
    return *kind == UtilityKind::unknown ? QObject::tr("utility, kind not known")
                                         : QObject::tr("utility: %1").arg(text_from(row_of(tables, *kind).name));
  switch (meaning) {
    case Meaning::ground:
      return QObject::tr("ground");
    case Meaning::road_edge:
      return QObject::tr("edge of a road");
    case Meaning::building:
      return QObject::tr("building");
    case Meaning::boundary:
      return QObject::tr("boundary");
    case Meaning::background:
      return QObject::tr("background");
    case Meaning::undecided:
      return QObject::tr("? not decided");
    default:
      return QObject::tr("not used");
  }
}

const std::vector<std::pair<HeightsChoice, QString>>& heights_choices() {
  static const std::vector<std::pair<HeightsChoice, QString>> all{
      {{}, QObject::tr("not known")},
      {{DepthFrom::datum, LevelMeant::crown}, QObject::tr("elevation of the crown")},
      {{DepthFrom::datum, LevelMeant::centre}, QObject::tr("elevation of the centre")},
      {{DepthFrom::datum, LevelMeant::invert}, QObject::tr("elevation of the invert")},
      {{DepthFrom::ground, LevelMeant::crown}, QObject::tr("depth of the crown")},
      {{DepthFrom::ground, LevelMeant::centre}, QObject::tr("depth of the centre")},
      {{DepthFrom::ground, LevelMeant::invert}, QObject::tr("depth of the invert")}};
  return all;
}

LayerModel::LayerModel(const Tables& tables, QObject* parent) : QAbstractTableModel(parent), tables_(tables) {}

void LayerModel::set_file(ImportFile* file) {
  beginResetModel();
  file_ = file;
  layers_ = file ? summaries(*file->found) : std::vector<LayerSummary>();
  endResetModel();
}

void LayerModel::set_theme(const Theme& theme) {
  theme_ = theme;
}

void LayerModel::set_units(UnitSystem units) {
  units_ = units;
}

int LayerModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(layers_.size());
}

int LayerModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : column_count;
}

bool LayerModel::is_utility(int row) const {
  return utility_kind(file_->layers[static_cast<std::size_t>(row)].meaning).has_value();
}

QString LayerModel::words(const LayerSummary& what) const {
  QStringList parts;
  const auto n = [](std::size_t count) { return static_cast<int>(count); };
  if (what.points > 0) parts << tr("%n points", nullptr, n(what.points));
  if (what.lines > 0) parts << tr("%n lines", nullptr, n(what.lines));
  if (what.areas > 0) parts << tr("%n areas", nullptr, n(what.areas));
  if (what.faces > 0) parts << tr("%n triangles", nullptr, n(what.faces));
  if (what.rasters > 0) parts << tr("grid of heights");
  if (what.vertices > 0 && what.with_height == 0) parts << tr("no heights");
  if (what.with_height > 0 && what.with_height < what.vertices) parts << tr("some heights");
  return parts.join(QStringLiteral(", "));
}

QVariant LayerModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || !file_) return {};
  const auto row = static_cast<std::size_t>(index.row());
  const LayerSummary& summary = layers_[row];
  const LayerChoice& choice = file_->layers[row];
  if (role == Qt::DecorationRole && index.column() == meaning) {
    QPixmap swatch(14, 14);
    swatch.fill(Qt::transparent);
    QPainter painter(&swatch);
    painter.fillRect(1, 3, 12, 8, meaning_colour(choice.meaning, theme_, tables_));
    return swatch;
  }
  if (role == Qt::CheckStateRole && index.column() == ground && summary.points > 0)
    return choice.meaning == Meaning::ground || choice.on_ground ? Qt::Checked : Qt::Unchecked;
  if (role == Qt::ToolTipRole && index.column() == meaning && choice.meaning == Meaning::undecided)
    return tr("Nobody said what this is. Near the crossing line it comes in as a utility of unknown kind.");
  if (role == Qt::ToolTipRole && index.column() == ground) return tr("Its points lie on the ground.");
  if (role == Qt::CheckStateRole && index.column() == join && summary.points > 1)
    return choice.join_points ? Qt::Checked : Qt::Unchecked;
  if (role == Qt::ToolTipRole && index.column() == heights && is_utility(index.row()))
    return tr(
        "What the heights in the file are. Heights that nobody explains are not used: the depth is then missing.");
  if (role == Qt::ToolTipRole && index.column() == diameter) return tr("Outside diameter; the file rarely states it.");
  if (role == Qt::ToolTipRole && index.column() == join)
    return tr("Joins single points in the order of the file to a line; a gap of more than 30 m ends it.");
  if (role == Qt::ForegroundRole && choice.meaning == Meaning::not_used) return theme_.ink_soft;
  if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
  switch (index.column()) {
    case layer:
      return summary.name.empty() ? tr("(no code)") : text_from(summary.name);
    case holds:
      return words(summary);
    case meaning:
      return role == Qt::EditRole ? QVariant(static_cast<int>(choice.meaning))
                                  : QVariant(meaning_name(choice.meaning, tables_));
    case heights: {
      if (!is_utility(index.row()) || summary.with_height == 0) return {};
      if (summary.level_stated) return tr("as the file says");
      const auto& all = heights_choices();
      for (std::size_t i = 0; i < all.size(); ++i)
        if (all[i].first == HeightsChoice{choice.heights_from, choice.level})
          return role == Qt::EditRole ? QVariant(static_cast<int>(i)) : QVariant(all[i].second);
      return {};
    }
    case diameter:
      if (!is_utility(index.row())) return {};
      return choice.diameter        ? text_from(format(*choice.diameter, units_, Dimension::small_length))
             : role == Qt::EditRole ? QString()
                                    : tr("not known");
    default:
      return {};
  }
}

QVariant LayerModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case layer:
      return tr("layer or code");
    case holds:
      return tr("holds");
    case meaning:
      return tr("means");
    case heights:
      return tr("its heights are");
    case diameter:
      return tr("diameter");
    case ground:
      return tr("ground");
    default:
      return tr("join");
  }
}

Qt::ItemFlags LayerModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
  const LayerSummary& summary = layers_[static_cast<std::size_t>(index.row())];
  const bool utility = is_utility(index.row());
  if (index.column() == meaning || (utility && index.column() == diameter) ||
      (utility && index.column() == heights && summary.with_height > 0 && !summary.level_stated))
    flags |= Qt::ItemIsEditable;
  if (index.column() == join && summary.points > 1) flags |= Qt::ItemIsUserCheckable;
  if (index.column() == ground && summary.points > 0) flags |= Qt::ItemIsUserCheckable;
  return flags;
}

bool LayerModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid() || !file_) return false;
  LayerChoice& choice = file_->layers[static_cast<std::size_t>(index.row())];
  const LayerChoice before = choice;
  if (role == Qt::CheckStateRole && index.column() == join) {
    choice.join_points = value.toInt() == Qt::Checked;
  } else if (role == Qt::CheckStateRole && index.column() == ground) {
    const bool on = value.toInt() == Qt::Checked;
    // What means nothing else is then ground, and no longer once the tick is gone.
    if (choice.meaning == Meaning::undecided && on)
      choice.meaning = Meaning::ground;
    else if (choice.meaning == Meaning::ground && !on)
      choice.meaning = Meaning::undecided;
    else
      choice.on_ground = on;
  } else if (role == Qt::EditRole && index.column() == meaning) {
    choice.meaning = static_cast<Meaning>(value.toInt());
    choice.on_ground = false;
  } else if (role == Qt::EditRole && index.column() == heights) {
    const auto& picked = heights_choices().at(static_cast<std::size_t>(value.toInt())).first;
    choice.heights_from = picked.from;
    choice.level = picked.level;
  } else if (role == Qt::EditRole && index.column() == diameter) {
    const std::string text = value.toString().trimmed().toStdString();
    const Result<double> typed = parse(text, Dimension::small_length, units_);
    if (!text.empty() && !(typed && *typed > 0 && *typed <= 5)) return false;
    choice.diameter = text.empty() ? std::nullopt : std::optional(Length{*typed});
  } else {
    return false;
  }
  if (choice == before) return true;
  Q_EMIT dataChanged(this->index(index.row(), 0), this->index(index.row(), column_count - 1));
  Q_EMIT chosen(index.column() == meaning ? text_from(layers_[static_cast<std::size_t>(index.row())].name) : QString());
  return true;
}

ChoiceDelegate::ChoiceDelegate(const Tables& tables, QObject* parent) : QStyledItemDelegate(parent), tables_(tables) {}

QWidget* ChoiceDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                      const QModelIndex& index) const {
  if (index.column() != LayerModel::meaning && index.column() != LayerModel::heights)
    return QStyledItemDelegate::createEditor(parent, option, index);
  auto* list = new QComboBox(parent);
  if (index.column() == LayerModel::meaning) {
    for (const auto& [meaning, word] : EnumNames<Meaning>::list)
      list->addItem(meaning_name(meaning, tables_), static_cast<int>(meaning));
  } else {
    int i = 0;
    for (const auto& [choice, text] : heights_choices()) list->addItem(text, i++);
  }
  // A choice made is a choice taken: no second key or click.
  connect(list, &QComboBox::activated, this, [this, list] {
    auto* self = const_cast<ChoiceDelegate*>(this);
    Q_EMIT self->commitData(list);
    Q_EMIT self->closeEditor(list);
  });
  return list;
}

void ChoiceDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
  auto* list = qobject_cast<QComboBox*>(editor);
  if (!list) return QStyledItemDelegate::setEditorData(editor, index);
  list->setCurrentIndex(list->findData(index.data(Qt::EditRole)));
  list->showPopup();
}

void ChoiceDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
  auto* list = qobject_cast<QComboBox*>(editor);
  if (!list) return QStyledItemDelegate::setModelData(editor, model, index);
  model->setData(index, list->currentData(), Qt::EditRole);
}

}  // namespace burrow
