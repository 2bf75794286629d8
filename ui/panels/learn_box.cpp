#include "burrow/panels/learn_box.h"

#include <QCheckBox>
#include <QFileDialog>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "burrow/document/text.h"
#include "burrow/file/disk.h"
#include "burrow/file/library_file.h"
#include "burrow/words/learn_text.h"
#include "flow_row.h"

namespace burrow {

LearnBox::LearnBox(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      result_text_(new QLabel(this)),
      learn_(new QPushButton(tr("Learn from these records"), this)),
      open_(new QPushButton(tr("Open a library…"), this)),
      save_(new QPushButton(tr("Save as a library…"), this)),
      take_(new QPushButton(tr("Take into this crossing"), this)),
      backed_out_(new QCheckBox(tr("bores that were backed out too"), this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  auto* row = new QWidget(this);
  auto* flow = new FlowRow(row);
  QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  row->setSizePolicy(policy);
  for (QPushButton* button : {learn_, open_, save_, take_}) {
    button->setAutoDefault(false);
    flow->addWidget(button);
  }
  result_text_->setWordWrap(true);
  result_text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(row);
  column->addWidget(backed_out_);
  column->addWidget(result_text_);
  connect(learn_, &QPushButton::clicked, this, &LearnBox::learn_here);
  connect(open_, &QPushButton::clicked, this, [this] {
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a library"), {}, tr("Libraries (*.json)"));
    if (!path.isEmpty()) open_library(path);
  });
  connect(save_, &QPushButton::clicked, this, [this] {
    const QString path = QFileDialog::getSaveFileName(this, tr("Save as a library"), {}, tr("Libraries (*.json)"));
    if (!path.isEmpty()) save_library(path);
  });
  connect(take_, &QPushButton::clicked, this, &LearnBox::take_over);
  show_library();
}

void LearnBox::catch_up() {
  if (!of_.empty() && of_ != document_.crossing().record) {
    of_.clear();
    library_ = {};
  }
  learn_->setEnabled(!document_.crossing().record.empty());
  show_library();
}

void LearnBox::learn_here() {
  const Evidence evidence = evidence_of(document_.crossing(), document_.tables(), {}, {backed_out_->isChecked()});
  library_ = learn(evidence);
  of_ = document_.crossing().record;
  show_library();
  QStringList lines;
  for (const NotLearnt& one : evidence.not_learnt)
    lines << tr("Not used, %1: %2.").arg(text_from(one.record), text_from(one.why));
  if (!lines.isEmpty()) result_text_->setText(result_text_->text() + QLatin1Char('\n') + lines.join(QLatin1Char('\n')));
}

bool LearnBox::open_library(const QString& path) {
  const Result<std::string> text = read_regular_file(path.toStdString());
  const Result<LearnLibrary> read =
      text ? read_library(*text, document_.tables()) : Result<LearnLibrary>(tl::unexpected<Error>(text.error()));
  if (!read) {
    result_text_->setText(tr("The library could not be read: %1").arg(text_from(translated_error(read.error()))));
    return false;
  }
  library_ = *read;
  of_.clear();
  show_library();
  return true;
}

bool LearnBox::save_library(const QString& path) {
  const Result<void> saved = save_atomically(path.toStdString(), write_library(library_));
  if (!saved)
    result_text_->setText(tr("The library could not be saved: %1").arg(text_from(translated_error(saved.error()))));
  return saved.has_value();
}

void LearnBox::take_over() {
  const Crossing now = document_.crossing();
  const Crossing learned = with_library(now, document_.tables(), library_);
  if (learned == now || now.version > known_file_version || document_.in_session()) return;
  document_.change(tr("Take learnt constants"), [&](Crossing& c) { c = learned; });
}

QString LearnBox::visible_text() const {
  return result_text_->text();
}

void LearnBox::show_library() {
  const bool any = !library_.soils.empty();
  save_->setEnabled(any);
  take_->setEnabled(any && document_.crossing().version <= known_file_version);
  if (!any) {
    result_text_->setText(document_.crossing().record.empty()
                              ? tr("Records of many bores tell the constants of the model. None is kept here yet.")
                              : tr("Nothing learnt yet."));
    return;
  }
  QStringList lines;
  for (const LearnRow& row : learn_rows(library_, document_.tables()))
    lines << tr("%1, %2: %3; before %4; from %5")
                 .arg(text_from(row.soil), text_from(row.what), text_from(row.learnt), text_from(row.before),
                      text_from(row.from));
  result_text_->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace burrow
