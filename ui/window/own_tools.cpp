#include "burrow/window/own_tools.h"

#include <QDialogButtonBox>
#include <QDir>
#include <QFile>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QRegularExpression>
#include <QVBoxLayout>

#include "burrow/bore/tool.h"
#include "burrow/crossing/crew_defaults.h"
#include "burrow/crossing/day_record.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
const QString ending = QStringLiteral(".crossing");
}

QString OwnTools::path(const QString& name) const {
  return folder_ + QStringLiteral("/own-tools/") + name + ending;
}

QStringList OwnTools::names() const {
  if (folder_.isEmpty()) return {};
  QStringList all;
  const QDir folder(folder_ + QStringLiteral("/own-tools"));
  for (const QString& file : folder.entryList({QLatin1Char('*') + ending}, QDir::Files, QDir::Name | QDir::IgnoreCase))
    all << file.chopped(ending.size());
  return all;
}

std::optional<Crossing> OwnTools::of(const QString& name) const {
  if (folder_.isEmpty()) return std::nullopt;
  const Result<std::string> text = read_regular_file(path(name).toStdString());
  if (!text) return std::nullopt;
  Result<Crossing> crossing = read_crossing(*text, tables_);
  return crossing ? std::optional(std::move(*crossing)) : std::nullopt;
}

Result<void> OwnTools::keep(const QString& name, const Crossing& crossing) const {
  static const QRegularExpression may_be(QStringLiteral("^[^/\\\\:*?\"<>|.][^/\\\\:*?\"<>|]{0,79}$"));
  if (!may_be.match(name).hasMatch())
    return fail(translated("name"), name.toStdString(),
                translated("a name of 1 to 80 letters, without / \\ : * ? \" < > | and no dot in front"));
  if (folder_.isEmpty())
    return fail(translated("own tools"), translated("no folder to keep them in"), translated("a folder of one's own"));
  QDir().mkpath(folder_ + QStringLiteral("/own-tools"));
  Crossing own = own_start_of(crossing);
  own.name = name.toStdString();
  own.limits.clear();
  return save_atomically(path(name).toStdString(), write_crossing(own));
}

Result<void> OwnTools::forget(const QString& name) const {
  QFile file(path(name));
  if (!file.exists() || file.remove()) return {};
  return fail(path(name).toStdString(), file.errorString().toStdString(), translated("a file that may be removed"));
}

OwnToolsDialog::OwnToolsDialog(Document& document, OwnTools own, QWidget* parent)
    : QDialog(parent),
      document_(document),
      own_(std::move(own)),
      list_(new QListWidget(this)),
      name_(new QLineEdit(this)),
      message_(new QLabel(this)),
      use_(new QPushButton(tr("&Use it for this crossing"), this)),
      keep_(new QPushButton(tr("&Keep those of this crossing"), this)),
      forget_(new QPushButton(tr("&Forget it"), this)) {
  setWindowTitle(tr("Own tools and compressors"));
  auto* column = new QVBoxLayout(this);
  auto* hint = new QLabel(tr("Tool, compressor, air line, oil and hose marks, kept on this machine by name."), this);
  hint->setWordWrap(true);
  column->addWidget(hint);
  list_->setAccessibleName(tr("Own tools and compressors"));
  column->addWidget(list_, 1);
  auto* row = new QHBoxLayout;
  row->addWidget(use_);
  row->addWidget(forget_);
  column->addLayout(row);
  auto* name_row = new QHBoxLayout;
  auto* label = new QLabel(tr("&name"), this);
  label->setBuddy(name_);
  name_->setAccessibleName(tr("Name to keep it by"));
  name_row->addWidget(label);
  name_row->addWidget(name_, 1);
  name_row->addWidget(keep_);
  column->addLayout(name_row);
  message_->setWordWrap(true);
  message_->setAccessibleName(tr("What was done"));
  column->addWidget(message_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  column->addWidget(buttons);
  for (QPushButton* one : {use_, keep_, forget_}) one->setAutoDefault(false);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(use_, &QPushButton::clicked, this, &OwnToolsDialog::use);
  connect(keep_, &QPushButton::clicked, this, &OwnToolsDialog::keep);
  connect(forget_, &QPushButton::clicked, this, &OwnToolsDialog::forget);
  connect(list_, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* item) {
    use_->setEnabled(item);
    forget_->setEnabled(item);
  });
  fill();
}

void OwnToolsDialog::fill() {
  list_->clear();
  for (const QString& name : own_.names()) {
    auto* item = new QListWidgetItem(list_);
    item->setData(Qt::UserRole, name);
    const std::optional<Crossing> kept = own_.of(name);
    QString facts = tr("cannot be read");
    if (kept) {
      const auto text = [](double value, Dimension dimension) {
        return text_from(format(value, dimension, UnitSystem::metric));
      };
      facts = tr("tool %1").arg(
          text(resolve_tool(kept->bore.tool, document_.tables()).diameter.m, Dimension::small_length));
      if (const auto& air = kept->air.compressor.free_air)
        facts += QStringLiteral(" · ") + tr("compressor %1").arg(text(air->m3_s, Dimension::flow));
    }
    item->setText(name + QStringLiteral("\n") + facts);
  }
  use_->setEnabled(list_->currentItem());
  forget_->setEnabled(list_->currentItem());
}

QString OwnToolsDialog::message() const {
  return message_->text();
}

void OwnToolsDialog::say_so(const QString& text) {
  message_->setText(text);
}

void OwnToolsDialog::use() {
  if (!list_->currentItem()) return;
  const QString name = list_->currentItem()->data(Qt::UserRole).toString();
  const std::optional<Crossing> kept = own_.of(name);
  if (!kept) return say_so(tr("%1 cannot be read; it was left where it is.").arg(name));
  if (open_record(document_.crossing()))
    return say_so(tr("A bore is under way with the tool that was set at its start: end its record first."));
  if (!document_.change(tr("Use %1").arg(name), [&](Crossing& c) { c = with_own_tool(std::move(c), *kept); }))
    return say_so(tr("Nothing was changed: this crossing is read-only, or something is being dragged."));
  say_so(tr("%1 is used for this crossing now.").arg(name));
}

void OwnToolsDialog::keep() {
  const QString name = name_->text().trimmed();
  const bool there = own_.names().contains(name);
  // What was kept by that name would be gone.
  if (there && asked_ != name) {
    asked_ = name;
    return say_so(tr("%1 is kept already: once more replaces it.").arg(name));
  }
  asked_.clear();
  if (const Result<void> kept = own_.keep(name, document_.crossing()); !kept)
    return say_so(tr("Nothing was kept: %1").arg(text_from(translated_error(kept.error()))));
  fill();
  say_so(there ? tr("%1 was replaced.").arg(name) : tr("%1 is kept.").arg(name));
}

void OwnToolsDialog::forget() {
  if (!list_->currentItem()) return;
  const QString name = list_->currentItem()->data(Qt::UserRole).toString();
  if (const Result<void> gone = own_.forget(name); !gone)
    return say_so(tr("It was not forgotten: %1").arg(text_from(translated_error(gone.error()))));
  fill();
  say_so(tr("%1 was forgotten.").arg(name));
}

}  // namespace burrow
