#include "burrow/panels/soil_panel.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <algorithm>

#include "burrow/crossing/find.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/text.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/panels/entry_form.h"
#include "burrow/soil/mistaken_soils.h"
#include "burrow/words/trials_text.h"
#include "choice_words.h"
#include "soil_choice.h"

namespace burrow {

namespace {
constexpr double seen_m = 0.0005;     ///< a shift below this is none
constexpr std::size_t most_rows = 5;  ///< of the list; more are scrolled to
constexpr StratumEvidence known_rows[] = {StratumEvidence::seen, StratumEvidence::borehole, StratumEvidence::guess};

}  // namespace

SoilPanel::SoilPanel(Document& document, QWidget* parent) : FormPanel(document, light_page_ms, parent) {
  add_heading(tr("Ground, from the surface down"));
  strata_ = new QListWidget(this);
  strata_->setAccessibleName(tr("Strata"));
  strata_->setWordWrap(true);
  strata_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  strata_->setTabKeyNavigation(false);
  add_widget(strata_);
  classes_ = add_combo(tr("class of soil"));
  classes_->setItemDelegate(new SoilChoiceDelegate(classes_));
  class_text_ = add_text(tr("What the class is"));
  known_ = add_combo(tr("how it is known"));
  known_text_ = add_text(tr("What it does that it is known so"));
  add_gap();
  add_heading(tr("Values of this stratum"));
  values_ = add_entries(tr("class"));
  make_choices();
  more_ = add_text(tr("More values of this stratum"), true);
  back_ = new QPushButton(tr("Back to the class values"), this);
  back_->setToolTip(tr("Takes out the values typed above; one undo step."));
  add_widget(back_);
  add_gap();
  add_heading(tr("Ground water"));
  water_ = add_entries(tr("default"));
  water_->show_part({ItemKind::water, {}, -1}, [this] { return water_fields(document_.crossing()); });
  add_gap();
  add_heading(tr("Path model"));
  status_ = add_text(tr("Status of the path model"));
  model_ = add_entries(tr("default"));
  model_->show_part({ItemKind::model, {}, -1}, [this] { return model_fields(document_.crossing()); });
  add_end();

  for (const SoilClass& row : document_.tables().soils) {
    classes_->addItem(text_from(row.name), text_from(row.id));
    classes_->setItemData(classes_->count() - 1, text_from(row.thumb), SoilChoiceDelegate::sign_role);
    classes_->setItemData(classes_->count() - 1, text_from(row.thumb), Qt::ToolTipRole);
    classes_->setItemData(classes_->count() - 1, tr("%1: %2").arg(text_from(row.name), text_from(row.thumb)),
                          Qt::AccessibleTextRole);
  }
  classes_->view()->setMinimumWidth(fontMetrics().averageCharWidth() * 58);
  classes_->setMaxVisibleItems(9);
  known_->addItems({tr("seen in a pit or a trench"), tr("borehole or probing"), tr("a guess")});

  connect(strata_, &QListWidget::currentRowChanged, this, [this](int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= document_.crossing().site.strata.size()) return;
    picked_ = document_.crossing().site.strata[static_cast<std::size_t>(row)].id;
    point_form();
    show_stratum();
    order_tabs();
  });
  connect(classes_, &QComboBox::activated, this, &SoilPanel::choose_class);
  connect(known_, &QComboBox::activated, this, &SoilPanel::choose_known);
  connect(back_, &QPushButton::clicked, this, &SoilPanel::take_typed_values_out);
  refresh_now();
}

/// What the class says of drainage and of the excavation rules, where somebody knows better.
void SoilPanel::make_choices() {
  drained_ = add_choice(
      tr("how it drains while a pipe is pushed aside"), {tr("as its class"), tr("drained"), tr("undrained")},
      [this] {
        const Stratum* stratum = picked();
        return !stratum ? -1 : !stratum->values.drained ? 0 : *stratum->values.drained ? 1 : 2;
      },
      [this](int row) {
        change(tr("Choose how the stratum drains"), [&](Crossing& c) {
          std::optional<bool>& drained = find_by_id(c.site.strata, picked_)->values.drained;
          drained = row > 0 ? std::optional(row == 1) : std::nullopt;
        });
      },
      true);
  excavation_ = add_choice(
      tr("soil type of the excavation rules"),
      labels_of<ExcavationType>({{ExcavationType::stable_rock, tr("stable rock")},
                                 {ExcavationType::a, tr("A")},
                                 {ExcavationType::b, tr("B")},
                                 {ExcavationType::c, tr("C")}},
                                tr("as its class")),
      [this] { return picked() ? row_of_word(picked()->values.excavation_type) : -1; },
      [this](int row) {
        change(tr("Choose the soil type of the excavation rules"), [&](Crossing& c) {
          find_by_id(c.site.strata, picked_)->values.excavation_type = word_or_none_at<ExcavationType>(row);
        });
      },
      true);
}

const Stratum* SoilPanel::picked() const {
  return find_by_id(document_.crossing().site.strata, picked_);
}

void SoilPanel::pick(const std::string& stratum) {
  const auto& all = document_.crossing().site.strata;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].id == stratum) strata_->setCurrentRow(static_cast<int>(i));
}

void SoilPanel::point_form() {
  values_->show_part(part(), [this] { return soil_fields(document_.crossing(), picked_, document_.tables()); });
}

void SoilPanel::list_strata() {
  const Crossing& crossing = document_.crossing();
  const auto& all = crossing.site.strata;
  const QSignalBlocker blocker(strata_);
  while (strata_->count() > static_cast<int>(all.size())) delete strata_->takeItem(strata_->count() - 1);
  while (strata_->count() < static_cast<int>(all.size())) strata_->addItem(QString());
  if (!picked() && !all.empty()) {
    picked_ = all.front().id;
    point_form();
  }
  const int inner = std::max(strata_->viewport()->width(), 120) - 10;
  int height = 2 * strata_->frameWidth() + 2;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const SoilClass* soil = find_soil(document_.tables(), all[i].soil);
    const QString name = soil ? text_from(soil->name) : text_from(all[i].soil);
    const auto from = std::find(std::begin(known_rows), std::end(known_rows), all[i].known.value) - known_rows;
    const QString top =
        all[i].top && !all[i].top->empty()
            ? tr("top at level %1 at the launch")
                  .arg(text_of(elevation_at(*all[i].top, crossing.bore.launch.station.m), Dimension::station))
            : tr("from the ground line");
    auto* item = strata_->item(static_cast<int>(i));
    item->setText(tr("%1. %2, %3\n%4").arg(i + 1).arg(name, known_->itemText(static_cast<int>(from)), top));
    if (all[i].id == picked_) strata_->setCurrentRow(static_cast<int>(i));
    const QRect room = strata_->fontMetrics().boundingRect(0, 0, inner, 10000, Qt::TextWordWrap, item->text());
    item->setSizeHint({inner, room.height() + 6});
    if (i < most_rows) height += item->sizeHint().height();
  }
  strata_->setFixedHeight(std::max(height, fontMetrics().height() * 2));
}

void SoilPanel::show_stratum() {
  const Stratum* stratum = picked();
  for (QWidget* widget : {static_cast<QWidget*>(classes_), static_cast<QWidget*>(known_)})
    widget->setEnabled(stratum && !locked());
  back_->setEnabled(false);
  if (!stratum) {
    class_text_->setText(tr("No stratum is entered."));
    known_text_->clear();
    more_->hide();
    return;
  }
  classes_->setCurrentIndex(classes_->findData(text_from(stratum->soil)));
  known_->setCurrentIndex(
      static_cast<int>(std::find(std::begin(known_rows), std::end(known_rows), stratum->known.value) - known_rows));
  if (const SoilClass* soil = find_soil(document_.tables(), stratum->soil)) {
    const QString type =
        tr("soil type %1 of the excavation rules").arg(text_from(translated_word(soil->excavation_type)));
    class_text_->setText(
        QStringLiteral("<p>%1 <b>%2</b></p>").arg(tr("Sign by hand:"), text_from(soil->thumb).toHtmlEscaped()) +
        facts_html({{tr("for the tool"), text_from(soil->use)},
                    {tr("a cut or hole stands open"), text_from(soil->stands_open)},
                    {tr("in a pit"), type}}) +
        QStringLiteral("<p>%1</p>")
            .arg(tr("Source: %1 [%2]")
                     .arg(text_from(soil->source.text), text_from(burrow::label_text(soil->source.label)))
                     .toHtmlEscaped()));
  }
  known_text_->setText(known_words(*stratum));
  values_->catch_up();
  Crossing bare = document_.crossing();
  for (const Field& field : soil_fields(bare, picked_, document_.tables())) field.apply(bare, std::nullopt);
  Stratum& without = *find_by_id(bare.site.strata, picked_);
  without.values.drained.reset();
  without.values.excavation_type.reset();
  back_->setEnabled(!locked() && !(without == *stratum));
  const bool more = !(without.values == SoilOverrides{});
  more_->setText(tr("The file holds more values of this stratum. They count, and stay as they are."));
  more_->setVisible(more);
}

QString SoilPanel::known_words(const Stratum& stratum) const {
  switch (stratum.known.value) {
    case StratumEvidence::seen:
      return tr("Seen: the class counts as known, nothing is added to the band.");
    case StratumEvidence::borehole:
      return tr(
          "Borehole or probing: the class counts as known along the whole line, nothing is added to the band. Look "
          "again when the pits are open.");
    case StratumEvidence::guess:
      break;
  }
  const auto& strata = document_.crossing().site.strata;
  for (const GuessEffect& effect : document_.assessment().guesses)
    if (effect.stratum < strata.size() && strata[effect.stratum].id == stratum.id) return guess_words(effect, stratum);
  const QString nothing = soil_mistaken_for(stratum.soil, document_.tables()).size() < 2
                              ? tr("A guess, but no class stands beside this one: nothing is added to the band.")
                              : tr("A guess, but out of reach of the bore: nothing is added to the band.");
  return stratum.known.entered ? nothing : tr("Nothing is entered. %1").arg(nothing);
}

QString SoilPanel::guess_words(const GuessEffect& effect, const Stratum& stratum) const {
  QStringList names;
  for (const SoilGuess& other : soil_mistaken_for(stratum.soil, document_.tables()))
    if (const SoilClass* soil = find_soil(document_.tables(), other.soil); soil && other.soil != stratum.soil)
      names << text_from(soil->name);
  const auto size_of = [&](double v) { return text_of(std::abs(v), Dimension::small_length); };
  const bool lower = effect.shift_low_m<-seen_m, higher = effect.shift_high_m> seen_m;
  const QString where =
      lower && higher
          ? tr("between %1 lower and %2 higher").arg(size_of(effect.shift_low_m), size_of(effect.shift_high_m))
      : lower  ? tr("up to %1 lower").arg(size_of(effect.shift_low_m))
      : higher ? tr("up to %1 higher").arg(size_of(effect.shift_high_m))
               : tr("at the same level");
  QString classes;
  for (const QString& name : names) classes = classes.isEmpty() ? name : tr("%1 or %2").arg(classes, name);
  QString text = stratum.known.entered ? tr("A guess: it may as well be %1.").arg(classes)
                                       : tr("Nothing is entered, so a guess: it may as well be %1.").arg(classes);
  text += QLatin1Char(' ') + tr("There the bore would end %1.").arg(where);
  for (const Finding& finding : document_.assessment().findings)
    if (finding.code == "site.soil-guessed" && finding.subject == stratum.id && finding.measured &&
        *finding.measured > seen_m)
      text += QLatin1Char(' ') + tr("The 90 % band at its end is %1 wider up and down.")
                                     .arg(text_of(*finding.measured, Dimension::small_length));
  if (effect.chance_of_loss > 0)
    text += QLatin1Char(' ') +
            tr("Chance that the bore does not get there: %1.").arg(text_of(effect.chance_of_loss, Dimension::chance));
  return text + QLatin1Char(' ') + tr("Look in the pit or drive a rod.");
}

void SoilPanel::choose_class(int row) {
  if (!picked() || row < 0) return;
  change(tr("Choose soil: %1").arg(classes_->itemText(row)), [&](Crossing& c) {
    find_by_id(c.site.strata, picked_)->soil = classes_->itemData(row).toString().toStdString();
  });
}

void SoilPanel::choose_known(int row) {
  if (!picked() || row < 0) return;
  change(tr("How the ground is known: %1").arg(known_->itemText(row)),
         [&](Crossing& c) { find_by_id(c.site.strata, picked_)->known.set(known_rows[row]); });
}

void SoilPanel::take_typed_values_out() {
  change(tr("Back to the class values of the stratum"), [this](Crossing& c) {
    for (const Field& field : soil_fields(c, picked_, document_.tables())) field.apply(c, std::nullopt);
    SoilOverrides& values = find_by_id(c.site.strata, picked_)->values;
    values.drained.reset();
    values.excavation_type.reset();
  });
}

void SoilPanel::resizeEvent(QResizeEvent* event) {
  FormPanel::resizeEvent(event);
  list_strata();  // its rows wrap
}

void SoilPanel::refresh() {
  list_strata();
  show_stratum();
  water_->catch_up();
  status_->setText(text_from(model_status(document_.crossing().bore.model)));
  model_->catch_up();
}

QString SoilPanel::visible_text() const {
  return plain(class_text_) + plain(known_text_) + plain(status_);
}

}  // namespace burrow
