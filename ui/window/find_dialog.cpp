#include "burrow/window/find_dialog.h"

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

namespace burrow {

namespace {

constexpr int where_role = Qt::UserRole, keys_role = Qt::UserRole + 1, place_role = Qt::UserRole + 2;
constexpr int least_width = 620, list_height = 380;

/// The name at the left, where it is found and its key at the right.
class FindableDelegate : public QStyledItemDelegate {
 public:
  FindableDelegate(const Theme& theme, QObject* parent) : QStyledItemDelegate(parent), theme_(theme) {}

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
    return {200, option.fontMetrics.height() + 12};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const bool picked = option.state.testFlag(QStyle::State_Selected);
    painter->save();
    painter->fillRect(option.rect, picked ? theme_.select : theme_.field);
    if (picked) painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())), theme_.focus);
    const QRect room = option.rect.adjusted(12, 0, -12, 0);
    const QString keys = index.data(keys_role).toString();
    const QString right = keys.isEmpty() ? index.data(where_role).toString()
                                         : index.data(where_role).toString() + QStringLiteral("   ") + keys;
    const int wide = std::min(option.fontMetrics.horizontalAdvance(right) + 4, room.width() / 2);
    painter->setFont(option.font);
    painter->setPen(theme_.ink_soft);
    painter->drawText(room, Qt::AlignRight | Qt::AlignVCenter,
                      option.fontMetrics.elidedText(right, Qt::ElideMiddle, wide));
    painter->setPen(theme_.ink);
    painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                      option.fontMetrics.elidedText(index.data(Qt::DisplayRole).toString(), Qt::ElideRight,
                                                    room.width() - wide - 12));
    painter->restore();
  }

 private:
  Theme theme_;
};

}  // namespace

std::vector<std::size_t> matching(const std::vector<Findable>& all, const QString& typed) {
  const QString whole = typed.trimmed();
  const QStringList words = whole.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  std::array<std::vector<std::size_t>, 3> ranks;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const QString text = all[i].name + QLatin1Char(' ') + all[i].where;
    if (!std::all_of(words.begin(), words.end(),
                     [&](const QString& word) { return text.contains(word, Qt::CaseInsensitive); }))
      continue;
    const QStringList own = all[i].name.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    const bool begins = std::any_of(own.begin(), own.end(), [&](const QString& word) {
      return !words.isEmpty() && word.startsWith(words.front(), Qt::CaseInsensitive);
    });
    ranks[all[i].name.startsWith(whole, Qt::CaseInsensitive) ? 0 : begins ? 1 : 2].push_back(i);
  }
  std::vector<std::size_t> found;
  for (const std::vector<std::size_t>& rank : ranks) found.insert(found.end(), rank.begin(), rank.end());
  return found;
}

FindDialog::FindDialog(std::vector<Findable> all, const Theme& theme, QWidget* parent)
    : QDialog(parent, Qt::Popup),
      all_(std::move(all)),
      entry_(new QLineEdit(this)),
      list_(new QListWidget(this)),
      none_(new QLabel(tr("Nothing has all of these words. Try fewer."), this)) {
  setAttribute(Qt::WA_DeleteOnClose);
  setAccessibleName(tr("Find a command or a thing"));
  setObjectName(QStringLiteral("found"));
  setStyleSheet(
      QStringLiteral("#found { background: %1; border: 1px solid %2; }").arg(theme.panel.name(), theme.focus.name()));
  entry_->setPlaceholderText(tr("Command, page, utility, finding, help"));
  entry_->setClearButtonEnabled(true);
  entry_->setAccessibleName(tr("Words to find"));
  entry_->installEventFilter(this);
  list_->setAccessibleName(tr("What was found"));
  list_->setItemDelegate(new FindableDelegate(theme, list_));
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list_->setUniformItemSizes(true);
  none_->setContentsMargins(8, 8, 8, 8);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(8, 8, 8, 8);
  column->addWidget(entry_);
  column->addWidget(none_);
  column->addWidget(list_);
  connect(entry_, &QLineEdit::textChanged, this, &FindDialog::show_matching);
  connect(entry_, &QLineEdit::returnPressed, this, &FindDialog::go);
  connect(list_, &QListWidget::itemClicked, this, &FindDialog::go);
  connect(list_, &QListWidget::itemActivated, this, &FindDialog::go);
  show_matching({});
  const QWidget* window = parent ? parent->window() : nullptr;
  const int wide = window ? std::min(least_width, window->width() - 40) : least_width;
  resize(wide, list_height);
  if (window) move(window->mapToGlobal(QPoint((window->width() - wide) / 2, 72)));
  entry_->setFocus();
}

void FindDialog::show_matching(const QString& typed) {
  list_->clear();
  for (const std::size_t place : matching(all_, typed)) {
    auto* item = new QListWidgetItem(all_[place].name, list_);
    item->setData(where_role, all_[place].where);
    item->setData(keys_role, all_[place].keys);
    item->setData(place_role, static_cast<int>(place));
  }
  list_->setCurrentRow(0);
  none_->setVisible(list_->count() == 0);
}

void FindDialog::go() {
  const QListWidgetItem* item = list_->currentItem();
  if (!item) return;
  const std::function<void()> there = all_[static_cast<std::size_t>(item->data(place_role).toInt())].go;
  close();
  there();
}

/// From the entry the list is walked without leaving it.
bool FindDialog::eventFilter(QObject* watched, QEvent* event) {
  if (watched == entry_ && event->type() == QEvent::KeyPress && list_->count() > 0) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    const int page = std::max(1, list_->viewport()->height() / std::max(1, list_->sizeHintForRow(0)));
    const int step = key == Qt::Key_Down       ? 1
                     : key == Qt::Key_Up       ? -1
                     : key == Qt::Key_PageDown ? page
                     : key == Qt::Key_PageUp   ? -page
                                               : 0;
    if (step != 0) {
      list_->setCurrentRow(std::clamp(list_->currentRow() + step, 0, list_->count() - 1));
      return true;
    }
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace burrow
