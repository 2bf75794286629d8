#include "burrow/window/left_out_list.h"

#include <algorithm>

#include "burrow/document/text.h"

namespace burrow {

LeftOutList::LeftOutList(QWidget* parent) : QTreeWidget(parent) {
  setRootIsDecorated(false);
  setUniformRowHeights(true);
  setTextElideMode(Qt::ElideMiddle);
  setHeaderLabels({tr("where"), tr("what"), tr("why")});
  setAccessibleName(tr("What was left out, and why"));
  setMinimumHeight(90);
}

void LeftOutList::add(const QString& place, const QString& text, const QString& reason, bool is_question) {
  auto* item = new QTreeWidgetItem(this, {place, text, reason});
  QFont font = item->font(0);
  font.setBold(is_question);
  for (int c = 0; c < 3; ++c) {
    item->setToolTip(c, item->text(c));
    item->setFont(c, font);
  }
}

QString LeftOutList::show_all(const ImportFile* file, const std::optional<Imported>& imported) {
  clear();
  std::size_t count = 0, asked = 0;
  const auto add_all = [&](const std::vector<LeftOut>& list, bool is_question) {
    for (const LeftOut& l : list) add(text_from(l.place), text_from(l.text), text_from(l.reason), is_question);
    (is_question ? asked : count) += list.size();
  };
  if (imported) add_all(imported->asked, true);
  if (file) add_all(file->found->left_out, false);
  if (imported) add_all(imported->left_out, false);
  if (file) count += file->found->left_out_more;
  if (imported) count += imported->left_out_more;
  for (const auto* notes : {file ? &file->found->notes : nullptr, imported ? &imported->notes : nullptr})
    if (notes)
      for (const std::string& text : *notes) add(tr("note"), QString(), text_from(text), false);
  resizeColumnToContents(0);
  setColumnWidth(0, std::min(columnWidth(0), 150));
  setColumnWidth(1, 150);
  if (asked > 0) return tr("Asked: %1, left out: %2").arg(asked).arg(count);
  return count == 0 ? tr("Nothing was left out.") : tr("Left out: %1").arg(count);
}

}  // namespace burrow
