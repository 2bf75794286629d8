#include "burrow/widgets/name_entry.h"

#include <QKeyEvent>
#include <algorithm>
#include <utility>

namespace burrow {

namespace {
constexpr int longest = 400, letters_wide = 28, edge_px = 4;
}

NameEntry::NameEntry(QWidget* parent) : QLineEdit(parent) {
  setObjectName(QStringLiteral("nameEntry"));
  setMaxLength(longest);
  hide();
}

void NameEntry::open(const QString& name, const QString& what, const QPoint& at,
                     std::function<void(const QString&)> take) {
  take_ = std::move(take);
  setText(name);
  setAccessibleName(tr("Name of %1").arg(what));
  setPlaceholderText(tr("name"));
  resize(fontMetrics().averageCharWidth() * letters_wide, sizeHint().height());
  const QSize room = parentWidget()->size();
  move(std::clamp(at.x(), edge_px, std::max(edge_px, room.width() - width() - edge_px)),
       std::clamp(at.y(), edge_px, std::max(edge_px, room.height() - height() - edge_px)));
  show();
  raise();
  setFocus(Qt::PopupFocusReason);
  selectAll();
}

void NameEntry::close_entry(bool take_over) {
  const auto take = std::exchange(take_, {});
  if (!take) return;
  hide();
  if (take_over) take(text().trimmed());
  Q_EMIT closed();
}

bool NameEntry::take_typing() {
  close_entry(true);
  return true;
}

void NameEntry::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    close_entry(false);
  else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    close_entry(true);
  else
    QLineEdit::keyPressEvent(event);
}

void NameEntry::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) close_entry(true);
}

}  // namespace burrow
