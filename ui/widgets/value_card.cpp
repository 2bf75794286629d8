#include "burrow/widgets/value_card.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/widgets/field_lock.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>

namespace burrow {

ValueCard::ValueCard(Document& document, QWidget* parent) : QFrame(parent), document_(document) {
  setObjectName(QStringLiteral("valueCard"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  hide();
  connect(&document_, &Document::replaced, this, &ValueCard::close_card);
  connect(&document_, &Document::changed, this, [this] {
    if (isVisible() && !exists_in(document_.crossing(), part_)) close_card();
  });
}

void ValueCard::clear() {
  entries_.clear();
  shown_.clear();
  wrong_ = nullptr;
  delete layout();
  qDeleteAll(findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
}

void ValueCard::open_for(const ItemRef& part, const QPoint& at, UnitSystem units) {
  open_fields(
      text_from(part_name(document_.crossing(), part)), part, [part](const Crossing& c) { return fields_of(c, part); },
      at, units);
}

void ValueCard::open_fields(const QString& title, const ItemRef& part,
                            std::function<std::vector<Field>(const Crossing&)> fields, const QPoint& at,
                            UnitSystem units) {
  clear();
  part_ = part;
  title_ = title;
  make_ = std::move(fields);
  units_ = units;
  fields_ = make_(document_.crossing());
  if (fields_.empty()) {
    close_card();
    return;
  }
  auto* form = new QFormLayout(this);
  form->setContentsMargins(12, 10, 12, 10);
  form->setVerticalSpacing(5);
  auto* heading = new QLabel(title, this);
  QFont bold = heading->font();
  bold.setBold(true);
  heading->setFont(bold);
  form->addRow(heading);
  const bool locked = !document_.read_only_because().isEmpty() && document_.crossing().version > known_file_version;
  for (const Field& field : fields_) {
    auto* entry = new QLineEdit(this);
    const QString text = field.value ? text_from(format(*field.value, field.dimension, units)) : QString();
    entry->setText(text);
    entry->setReadOnly(locked);
    entry->setPlaceholderText(!field.may_be_empty   ? QString()
                              : field.default_value ? text_from(format(*field.default_value, field.dimension, units))
                                                    : tr("not known"));
    entry->setAccessibleName(text_from(translated_label(field.label)));
    entry->setMinimumWidth(entry->fontMetrics().averageCharWidth() * 18);
    if (!field.entered) entry->setToolTip(tr("A default stands here; it was not entered."));
    const QString name = text_from(translated_label(field.label));
    auto* label = new QLabel(field.entered ? name : tr("%1 (default)").arg(name), this);
    label->setBuddy(entry);
    (new FieldLock(document_, entry))->show_place(field.lock, name);
    form->addRow(label, entry);
    entries_.push_back(entry);
    shown_.push_back(text);
  }
  wrong_ = new QLabel(this);
  wrong_->setObjectName(QStringLiteral("wrongEntry"));
  wrong_->setWordWrap(true);
  wrong_->hide();
  form->addRow(wrong_);
  auto* buttons = new QHBoxLayout;
  buttons->addStretch();
  auto* leave = new QPushButton(tr("Leave as it was"), this);
  auto* take = new QPushButton(tr("Set"), this);
  take->setDefault(true);
  buttons->addWidget(leave);
  buttons->addWidget(take);
  form->addRow(buttons);
  connect(leave, &QPushButton::clicked, this, &ValueCard::close_card);
  connect(take, &QPushButton::clicked, this, &ValueCard::take_over);

  adjustSize();
  QPoint corner = at + QPoint(16, 12);
  const QSize room = parentWidget()->size();
  corner.setX(std::clamp(corner.x(), 4, std::max(4, room.width() - width() - 4)));
  corner.setY(std::clamp(corner.y(), 4, std::max(4, room.height() - height() - 4)));
  move(corner);
  show();
  raise();
  entries_.front()->setFocus(Qt::PopupFocusReason);
  entries_.front()->selectAll();
}

void ValueCard::take_over() {
  // Every entry is read before any is taken, so that a wrong one leaves all as it was.
  const std::vector<Field> live = make_(document_.crossing());
  if (live.size() != fields_.size()) {  // the thing has gone meanwhile
    close_card();
    return;
  }
  std::vector<std::pair<std::size_t, std::optional<double>>> changes;
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    if (entries_[i]->text() == shown_[i]) continue;
    const Result<std::optional<double>> value = read_field(live[i], entries_[i]->text().toStdString(), units_);
    if (!value) {
      complain(i, value.error());
      return;
    }
    if (live[i].validate)
      if (const Result<void> stands = live[i].validate(document_.crossing(), *value); !stands) {
        complain(i, stands.error());
        return;
      }
    changes.emplace_back(i, *value);
  }
  const QString name = tr("Type %1").arg(title_);
  if (!changes.empty()) {
    // All that was typed here is one step: each field is set on the crossing that the one before left.
    document_.change(name, [&](Crossing& c) {
      for (const auto& [i, value] : changes) make_(c)[i].apply(c, value);
    });
  }
  close_card();
}

void ValueCard::complain(std::size_t row, const Error& error) {
  wrong_->setText(
      tr("%1: %2").arg(
          text_from(translated_label(fields_[row].label)),
          text_from(error.found.empty() ? translated_phrase(error.expected)
                                        : translated_phrase(error.found) + " – " + translated_phrase(error.expected))) +
      QLatin1Char('\n') + (shown_[row].isEmpty() ? tr("In force: not known") : tr("In force: %1").arg(shown_[row])));
  wrong_->show();
  adjustSize();
  entries_[row]->setFocus();
  entries_[row]->selectAll();
}

void ValueCard::close_card() {
  if (!isVisible()) return;
  hide();
  Q_EMIT closed();
}

void ValueCard::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape)
    close_card();
  else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
    take_over();
  else
    QFrame::keyPressEvent(event);
}

}  // namespace burrow
