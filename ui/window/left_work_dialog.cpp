#include "burrow/window/left_work_dialog.h"

#include <QDialogButtonBox>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScreen>
#include <QSplitter>
#include <QVBoxLayout>

#include "burrow/check/assess.h"
#include "burrow/document/text.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/sheet/image.h"
#include "differences_text.h"

namespace burrow {

namespace {

QString file_name(const LeftWork& work) {
  return work.original.isEmpty() ? LeftWorkDialog::tr("a crossing that was never saved")
                                 : QFileInfo(work.original).fileName();
}

QString moment(const QDateTime& when) {
  return QLocale().toString(when, QLocale::ShortFormat);
}

}  // namespace

/// The crossing drawn as the workbench draws it, without a hand to move anything.
class CrossingPicture : public QWidget {
 public:
  CrossingPicture(const Tables& tables, UnitSystem units, bool dark, QWidget* parent)
      : QWidget(parent), tables_(tables) {
    options_.units = units;
    options_.dark = dark;
    // Less has no room for both views with their rulers; but the buttons below must stay on a small screen.
    setMinimumSize(QSize(480, 330).boundedTo(parent->screen()->availableSize() / 3));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(LeftWorkDialog::tr("Picture of the kept crossing"));
  }
  [[nodiscard]] QSize sizeHint() const override { return {960, 420}; }
  void set_crossing(std::optional<Crossing> crossing) {
    crossing_ = std::move(crossing);
    if (crossing_) assessment_ = assess(*crossing_, tables_);
    drawn_ = {};
    update();
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    if (!crossing_) return;
    if (drawn_.isNull() || options_.size != size() || options_.ratio != devicePixelRatioF()) {
      options_.size = size();
      options_.ratio = devicePixelRatioF();
      drawn_ = render_image(*crossing_, assessment_, tables_, options_);
    }
    QPainter(this).drawImage(0, 0, drawn_);
  }

 private:
  const Tables& tables_;
  std::optional<Crossing> crossing_;
  Assessment assessment_;
  ImageOptions options_;
  QImage drawn_;
};

LeftWorkDialog::LeftWorkDialog(const Tables& tables, std::vector<LeftWork> works, UnitSystem units, bool dark,
                               QWidget* parent)
    : QDialog(parent),
      tables_(tables),
      works_(std::move(works)),
      how_many_(new QLabel(this)),
      list_(new QListWidget(this)),
      about_(new QLabel(this)),
      picture_(new CrossingPicture(tables, units, dark, this)),
      compared_(new QLabel(this)),
      differences_(new QPlainTextEdit(this)),
      take_(new QPushButton(tr("&Recover"), this)),
      drop_(new QPushButton(tr("&Discard"), this)) {
  setWindowTitle(tr("Unsaved work"));
  lay_out();
  for (const LeftWork& work : works_) list_->addItem(file_name(work) + QLatin1Char('\n') + moment(work.when));
  connect(list_, &QListWidget::currentRowChanged, this, &LeftWorkDialog::show_work);
  connect(drop_, &QPushButton::clicked, this, &LeftWorkDialog::throw_away);
  connect(take_, &QPushButton::clicked, this, [this] {
    taken_ = works_[static_cast<std::size_t>(list_->currentRow())];
    accept();
  });
  list_->setCurrentRow(0);
  resize(QSize(1040, 680).boundedTo(screen()->availableSize() * 0.95));
}

void LeftWorkDialog::lay_out() {
  for (QLabel* label : {how_many_, about_, compared_}) {
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
  }
  list_->setAccessibleName(tr("Unsaved work"));
  differences_->setReadOnly(true);
  differences_->setAccessibleName(tr("Differences from the file"));
  differences_->setMinimumHeight(4 * fontMetrics().lineSpacing());
  compared_->setBuddy(differences_);
  take_->setDefault(true);
  drop_->setAutoDefault(false);
  auto* right = new QWidget(this);
  auto* column = new QVBoxLayout(right);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(about_);
  column->addWidget(picture_, 4);
  column->addWidget(compared_);
  column->addWidget(differences_, 1);
  auto* splitter = new QSplitter(this);
  splitter->addWidget(list_);
  splitter->addWidget(right);
  splitter->setStretchFactor(1, 1);
  splitter->setSizes({200, 800});
  splitter->setChildrenCollapsible(false);
  auto* buttons = new QDialogButtonBox(this);
  buttons->addButton(take_, QDialogButtonBox::AcceptRole);
  buttons->addButton(drop_, QDialogButtonBox::DestructiveRole);
  QPushButton* later = buttons->addButton(tr("Decide &later"), QDialogButtonBox::RejectRole);
  later->setAutoDefault(false);
  connect(later, &QPushButton::clicked, this, &QDialog::reject);
  auto* all = new QVBoxLayout(this);
  all->addWidget(how_many_);
  all->addWidget(splitter, 1);
  all->addWidget(buttons);
}

void LeftWorkDialog::show_work(int row) {
  list_->setVisible(works_.size() > 1);
  how_many_->setText(works_.size() > 1
                         ? tr("The program ended with unsaved work on %n crossings. One can be taken back "
                              "now; the others are offered again at the next start.",
                              nullptr, static_cast<int>(works_.size()))
                         : tr("The program ended with unsaved work."));
  if (row < 0) return;
  const LeftWork& work = works_[static_cast<std::size_t>(row)];
  const QString name = work.original.isEmpty() ? file_name(work) : work.original;
  const Result<std::string> copy = read_regular_file(work.copy.toStdString());
  Result<Crossing> crossing = copy ? read_crossing(*copy, tables_) : tl::unexpected(copy.error());
  take_->setEnabled(crossing.has_value());
  about_->setText(crossing ? tr("%1, kept at %2").arg(name, moment(work.when))
                           : tr("%1, kept at %2, cannot be read: %3")
                                 .arg(name, moment(work.when), text_from(translated_error(crossing.error()))));
  picture_->set_crossing(crossing ? std::optional(std::move(*crossing)) : std::nullopt);
  show_differences(work, copy.value_or(std::string()));
}

void LeftWorkDialog::show_differences(const LeftWork& work, const std::string& copy) {
  const QFileInfo file(work.original);
  const Result<std::string> there = read_regular_file(work.original.toStdString());
  const bool comparable = !work.original.isEmpty() && there && !copy.empty();
  differences_->setVisible(comparable);
  if (work.original.isEmpty()) {
    compared_->setText(tr("There is no file to compare it with."));
  } else if (!there) {
    compared_->setText(tr("Its file cannot be read: %1").arg(text_from(translated_error(there.error()))));
  } else if (file.lastModified() > work.when) {
    compared_->setText(tr("The file itself is newer: %1. Taking the work back leaves it as it is until you save.")
                           .arg(moment(file.lastModified())));
  } else if (Document::hash_on_disk(work.original) != work.known) {
    compared_->setText(tr("Somebody changed the file at %1, before this was kept and without this run. Taking the work "
                          "back leaves it as it is until you save.")
                           .arg(moment(file.lastModified())));
  } else {
    compared_->setText(
        tr("Differences from the file on the disk, which was saved at %1:").arg(moment(file.lastModified())));
  }
  if (comparable) differences_->setPlainText(differences_text(copy, *there, tr("kept"), tr("file")));
}

void LeftWorkDialog::throw_away() {
  const int row = list_->currentRow();
  Recovery::discard(works_[static_cast<std::size_t>(row)]);
  works_.erase(works_.begin() + row);
  if (works_.empty()) return reject();
  const QSignalBlocker blocker(list_);
  delete list_->takeItem(row);
  list_->setCurrentRow(std::min(row, static_cast<int>(works_.size()) - 1));
  show_work(list_->currentRow());
}

}  // namespace burrow
