#include "burrow/window/guided_crossing.h"

#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "burrow/check/assess.h"
#include "burrow/crossing/crew_defaults.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/search/launch_map.h"
#include "burrow/widgets/offered_text.h"
#include "burrow/words/headline.h"

namespace burrow {

GuidedPicture::GuidedPicture(const Tables& tables, const Theme& theme, UnitSystem units, QWidget* parent)
    : QWidget(parent), tables_(tables) {
  style_.theme = theme;
  style_.units = units;
  style_.handles = false;
  setMinimumSize(360, 300);
  setAccessibleName(tr("Picture of the crossing so far"));
}

void GuidedPicture::show_crossing(const Crossing& crossing, const Assessment& assessment, const ItemRef& asked_about) {
  crossing_ = crossing;
  assessment_ = assessment;
  picked_ = asked_about;
  update();
}

void GuidedPicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), style_.theme.panel);
  if (crossing_.site.ground.empty()) return;
  Frame frame;
  lay_out(frame, QRectF(rect()), 0.6, lane_sizes(style_, height()));
  fit(frame, crossing_, assessment_, true);
  Interaction focus;
  focus.picked = picked_;
  paint_scene(painter, Scene{crossing_, assessment_, tables_, frame, style_, focus});
}

GuidedCrossing::GuidedCrossing(const Tables& tables, const Theme& theme, UnitSystem units, std::optional<Crossing> own,
                               QWidget* parent)
    : QDialog(parent),
      tables_(tables),
      theme_(theme),
      units_(units),
      own_(std::move(own)),
      pages_(new QStackedWidget(this)),
      picture_(new GuidedPicture(tables, theme, units, this)),
      step_(new QLabel(this)),
      fault_(new QLabel(this)),
      outcome_(new QLabel(this)),
      back_(new QPushButton(tr("&Back"), this)),
      next_(new QPushButton(this)) {
  setWindowTitle(tr("New crossing, step by step"));
  if (units == UnitSystem::us) {
    // Round numbers to begin with in feet and inches, too.
    answers_.crossed_width = Length{24 * 0.3048};
    answers_.length = Length{40 * 0.3048};
  }
  pages_->setMinimumWidth(400);
  fault_->setWordWrap(true);
  fault_->setAccessibleName(tr("What is wrong with the answers"));
  QPalette red = palette();
  red.setColor(QPalette::WindowText, theme.stop);
  fault_->setPalette(red);
  outcome_->setWordWrap(true);
  outcome_->setAccessibleName(tr("How the crossing stands"));
  step_->setAccessibleName(tr("Step"));

  auto* left = new QVBoxLayout;
  left->addWidget(step_);
  left->addWidget(pages_, 1);
  left->addWidget(fault_);
  auto* right = new QVBoxLayout;
  right->addWidget(picture_, 1);
  right->addWidget(outcome_);
  auto* columns = new QHBoxLayout;
  columns->addLayout(left);
  columns->addSpacing(12);
  columns->addLayout(right, 1);
  auto* buttons = new QHBoxLayout;
  auto* cancel = new QPushButton(tr("Cancel"), this);
  buttons->addWidget(cancel);
  buttons->addStretch(1);
  buttons->addWidget(back_);
  buttons->addWidget(next_);
  auto* all = new QVBoxLayout(this);
  all->addLayout(columns, 1);
  all->addLayout(buttons);
  connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
  connect(back_, &QPushButton::clicked, this, [this] { go_to(question() - 1); });
  connect(next_, &QPushButton::clicked, this, [this] {
    if (question() + 1 < pages_->count())
      go_to(question() + 1);
    else if (stands_.empty() && wrong_.empty())
      accept();
  });
  next_->setDefault(true);

  ask_what_is_crossed();
  ask_how_far();
  ask_ground();
  ask_lines();
  ask_pipe();
  ask_depth();
  go_to(0);
  resize(1120, 640);
}

int GuidedCrossing::question() const {
  return pages_->currentIndex();
}

void GuidedCrossing::go_to(int question) {
  pages_->setCurrentIndex(std::clamp(question, 0, pages_->count() - 1));
  catch_up();
  for (QWidget* entry : pages_->currentWidget()->findChildren<QWidget*>())
    if (entry->focusPolicy() & Qt::TabFocus) return entry->setFocus();
}

QFormLayout* GuidedCrossing::ask(const QString& title, const QString& why) {
  auto* page = new QWidget(pages_);
  auto* column = new QVBoxLayout(page);
  column->setContentsMargins(0, 0, 0, 0);
  auto* head = new QLabel(title, page);
  QFont large = head->font();
  large.setPointSizeF(large.pointSizeF() * 1.35);
  large.setBold(true);
  head->setFont(large);
  head->setWordWrap(true);
  auto* reason = new QLabel(why, page);
  reason->setWordWrap(true);
  column->addWidget(head);
  column->addWidget(reason);
  column->addSpacing(8);
  auto* form = new QFormLayout;
  form->setRowWrapPolicy(QFormLayout::WrapLongRows);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  column->addLayout(form);
  column->addStretch(1);
  pages_->addWidget(page);
  return form;
}

QLineEdit* GuidedCrossing::length_entry(const QString& label, std::optional<double> value, Dimension dimension,
                                        bool may_be_empty, std::function<void(std::optional<double>)> take) {
  auto* entry = new QLineEdit(value ? text_from(format(*value, dimension, units_)) : QString(), this);
  entry->setAccessibleName(label);
  if (may_be_empty) entry->setPlaceholderText(tr("not known"));
  connect(entry, &QLineEdit::textEdited, this, [this, entry, dimension, may_be_empty, label, take = std::move(take)] {
    std::erase(wrong_, entry);
    const QString text = entry->text().trimmed();
    if (text.isEmpty() && may_be_empty) {
      take(std::nullopt);
    } else if (const Result<double> read = parse(text.toStdString(), dimension, units_)) {
      take(*read);
    } else {
      wrong_.push_back(entry);
      stands_ = tr("%1: %2").arg(label, text_from(translated_error(read.error()))).toStdString();
      fault_->setText(text_from(stands_));
      next_->setEnabled(false);
      return;
    }
    catch_up();
  });
  return entry;
}

QLineEdit* GuidedCrossing::text_entry(const QString& label, TextKind kind,
                                      std::function<void(std::optional<std::string>)> take) {
  auto* entry = new QLineEdit(this);
  entry->setAccessibleName(label);
  const auto read = [this, entry, kind, label, take = std::move(take)] {
    std::erase(wrong_, entry);
    const QString text = entry->text().trimmed();
    if (const QString fault = fault_of_text(kind, text); !fault.isEmpty()) {
      wrong_.push_back(entry);
      stands_ = tr("%1: %2").arg(label, fault).toStdString();
      fault_->setText(text_from(stands_));
      next_->setEnabled(false);
      return;
    }
    if (kind == TextKind::name && !text.isEmpty()) last_name_ = text;
    take(text.isEmpty() ? std::optional<std::string>() : text.toStdString());
    catch_up();
  };
  connect(entry, &QLineEdit::textEdited, this, read);
  if (kind == TextKind::words) return entry;
  auto* offer = new OfferedText(entry, [this, kind] {
    const std::optional<Date>& today = tables_.judged_on;
    if (kind == TextKind::name) return last_name_;
    return today ? text_from(text_of(*today)) : QString();
  });
  connect(offer, &OfferedText::taken, this, read);
  offers_.push_back(offer);
  return entry;
}

/// A coarse search is a matter of hundredths of a second with the lines of one road.
void GuidedCrossing::propose_depth() {
  LaunchMapOptions options;
  options.cells = 16;
  const LaunchMap map = search_launches(crossing_, tables_, options);
  if (!map.best || !map.works) {
    proposal_->setText(
        tr("No launch keeps every limit. The crossing begins at the usual depth; its findings say what is "
           "in the way, and the page Launches what would have to give."));
    return;
  }
  // Nobody chose the usual depth: how clean a bore from there would be does not bind.
  const LaunchCell& best = map.best_by_limits ? *map.best_by_limits : *map.best;
  crossing_.bore.launch = launch_at(crossing_, map.over, best.place);
  const double deep =
      elevation_at(crossing_.site.ground, crossing_.bore.launch.station.m) - crossing_.bore.launch.elevation.m;
  proposal_->setText(tr("Proposed: axis %1 deep, grade %2.")
                         .arg(text_from(format(deep, Dimension::length, units_)),
                              text_from(format(crossing_.bore.launch.grade.v, Dimension::grade, units_))));
}

void GuidedCrossing::catch_up() {
  show_what_is_asked();
  if (!wrong_.empty()) return;
  FirstAnswers answers = answers_;
  if (propose_) answers.depth.reset();
  Result<Crossing> made = first_layout(answers, tables_, translated_phrase);
  stands_ = made ? std::string() : translated_error(made.error());
  if (made) {
    crossing_ = std::move(*made);
    if (own_) {
      const ToolChoice chosen = crossing_.bore.tool;
      crossing_ = with_own_start(std::move(crossing_), *own_);
      if (!answers_.tool.empty()) crossing_.bore.tool = chosen;
    }
    if (propose_ && question() == pages_->count() - 1) propose_depth();
    assessment_ = assess(crossing_, tables_);
  }
  if (const SoilClass* soil = find_soil(tables_, answers_.soil); soil && thumb_)
    thumb_->setText(soil->use.empty() ? text_from(soil->thumb)
                                      : tr("%1. For the tool: %2.").arg(text_from(soil->thumb), text_from(soil->use)));
  show_step();
}

void GuidedCrossing::show_what_is_asked() {
  const auto show = [this](QFormLayout* form, const std::vector<QWidget*>& entries, bool on) {
    for (QWidget* entry : entries) {
      form->setRowVisible(entry, on);
      auto* text = qobject_cast<QLineEdit*>(entry);
      if (on || std::find(wrong_.begin(), wrong_.end(), text) == wrong_.end()) continue;
      // A mistake in what is not asked any more goes with it, and nothing is left of that answer.
      text->clear();
      Q_EMIT text->textEdited(QString());
    }
  };
  if (!lines_form_) return;  // not all questions are made yet
  show(crossed_form_, of_crossed_, answers_.crossed && answers_.permission == Permission::allowed);
  show(crossed_form_, of_nothing_, !answers_.crossed);
  show(lines_form_, of_search_, answers_.searched);
  show(lines_form_, of_exposed_, std::any_of(answers_.lines.begin(), answers_.lines.end(), [](const MarkedLine& line) {
         return line.how == LocatedHow::exposed;
       }));
  for (OfferedText* offer : offers_) offer->refresh();
}

void GuidedCrossing::show_step() {
  const int at = question(), last = pages_->count() - 1;
  step_->setText(tr("Question %1 of %2").arg(at + 1).arg(last + 1));
  fault_->setText(text_from(stands_));
  back_->setEnabled(at > 0);
  next_->setText(at == last ? tr("&Make this crossing") : tr("&Next"));
  next_->setEnabled(stands_.empty());
  static const ItemRef about[] = {{ItemKind::surface, "f1", -1}, {ItemKind::exit, {}, -1},
                                  {ItemKind::stratum, "l1", -1}, {ItemKind::none, {}, -1},
                                  {ItemKind::tool, {}, -1},      {ItemKind::launch, {}, -1}};
  ItemRef asked = about[std::clamp(at, 0, 5)];
  if (at == 3 && !crossing_.site.utilities.empty()) asked = {ItemKind::utility, crossing_.site.utilities.back().id, -1};
  picture_->show_crossing(crossing_, assessment_, asked);
  QString words = tr("<b>%1.</b> %2")
                      .arg(text_from(verdict_title(assessment_.verdict)).toHtmlEscaped(),
                           text_from(headline(assessment_, units_)).toHtmlEscaped());
  QStringList missing;
  for (const Finding& f : assessment_.findings)
    if (f.missing) missing << text_from(f.name);
  missing.removeDuplicates();
  if (!missing.isEmpty()) words += tr("<br>Still open: %1.").arg(missing.join(QStringLiteral(", ")).toHtmlEscaped());
  outcome_->setText(words);
}

}  // namespace burrow
