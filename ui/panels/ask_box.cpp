#include "ask_box.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <utility>

namespace burrow {

AskBox::AskBox(QWidget* parent)
    : QWidget(parent),
      question_(new QLabel(this)),
      first_label_(new QLabel(this)),
      second_label_(new QLabel(this)),
      complaint_(new QLabel(this)),
      first_(new QLineEdit(this)),
      second_(new QLineEdit(this)),
      button_(new QPushButton(this)),
      close_(new QPushButton(tr("Not now"), this)) {
  constexpr int glove = 48;
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  for (QLabel* label : {question_, first_label_, second_label_, complaint_}) {
    label->setWordWrap(true);
    label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Minimum);
  }
  grid->addWidget(question_, 0, 0, 1, 2);
  grid->addWidget(first_label_, 1, 0);
  grid->addWidget(first_, 1, 1);
  grid->addWidget(second_label_, 2, 0);
  grid->addWidget(second_, 2, 1);
  grid->addWidget(complaint_, 3, 0, 1, 2);
  grid->addWidget(button_, 4, 0);
  grid->addWidget(close_, 4, 1);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(1, 1);
  for (QPushButton* one : {button_, close_}) {
    one->setAutoDefault(false);
    one->setMinimumHeight(glove);
    one->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  }
  connect(button_, &QPushButton::clicked, this, &AskBox::answer);
  connect(close_, &QPushButton::clicked, this, &AskBox::close_it);
  for (QLineEdit* entry : {first_, second_}) connect(entry, &QLineEdit::returnPressed, this, &AskBox::answer);
  hide();
}

void AskBox::ask(const QString& question, const QString& first, const QString& second, const QString& button,
                 Answer answer) {
  question_->setText(question);
  first_label_->setText(first);
  first_->setAccessibleName(first);
  second_label_->setText(second);
  second_->setAccessibleName(second);
  second_label_->setVisible(!second.isEmpty());
  second_->setVisible(!second.isEmpty());
  first_->clear();
  second_->clear();
  complaint_->hide();
  button_->setText(button);
  answer_ = std::move(answer);
  show();
  first_->setFocus();
}

void AskBox::close_it() {
  hide();
  answer_ = {};
}

void AskBox::answer() {
  const QString first = first_->text().trimmed(), second = second_->text().trimmed();
  if (first.isEmpty() || (second_->isVisibleTo(this) && second.isEmpty())) {
    complaint_->setText(tr("Nothing is taken without it."));
    complaint_->show();
    return;
  }
  const Answer taken = std::exchange(answer_, {});
  hide();
  if (taken) taken(first, second);
}

}  // namespace burrow
