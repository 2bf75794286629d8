#include "burrow/panels/layouts_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>

#include "burrow/crossing/find.h"
#include "burrow/document/text.h"
#include "choice_words.h"

namespace burrow {

namespace {

QString verdict_text(const LayoutSummary& sum) {
  switch (sum.verdict) {
    case Verdict::stop:
      return LayoutsPanel::tr("stop: %n broken", nullptr, static_cast<int>(sum.stops));
    case Verdict::incomplete:
      return LayoutsPanel::tr("incomplete: %n not known", nullptr, static_cast<int>(sum.missing));
    case Verdict::caution:
      return LayoutsPanel::tr("caution: %1").arg(sum.cautions);
    case Verdict::within_limits:
      return LayoutsPanel::tr("within limits");
  }
  return {};
}

}  // namespace

LayoutsPanel::LayoutsPanel(Document& document, QWidget* parent) : FormPanel(document, heavy_page_ms, parent) {
  add_heading(tr("Layouts of this crossing"));
  empty_ = add_text(tr("What layouts are for"), true);
  empty_->setText(
      tr("Keep the layout as it stands under a name, change it, and compare. Bore, pipe, pits, air and locks belong to "
         "the layout; the site is the same for all."));
  table_ = add_text(tr("Comparison of the layouts"));
  add_gap();
  add_heading(tr("The current layout"));
  name_ = new QLineEdit(this);
  name_->setAccessibleName(tr("Name of the layout"));
  name_->setPlaceholderText(tr("from the north side"));
  add_labelled(tr("name"), name_);
  keep_ = add_buttons({tr("Keep it under this name")}).front();
  add_gap();
  add_heading(tr("Another layout"));
  other_ = add_combo(tr("Which other layout"));
  const std::vector<QPushButton*> buttons =
      add_buttons({tr("Make current"), tr("Draw dashed"), tr("Rename"), tr("Remove")});
  take_ = buttons[0];
  ghost_ = buttons[1];
  rename_ = buttons[2];
  remove_ = buttons[3];
  ghost_->setCheckable(true);
  take_->setToolTip(tr("What is current now takes its place in the list"));
  rename_->setToolTip(tr("To the name typed above"));
  add_end();

  const auto typed = [this] { return name_->text().trimmed(); };
  connect(keep_, &QPushButton::clicked, this, [this, typed] {
    const std::size_t next = document_.crossing().alternatives.size() + 1;
    const QString name = typed().isEmpty() ? tr("layout %1").arg(next) : typed();
    put(tr("Keep layout %1").arg(name),
        [&](Crossing& c) { c.alternatives.push_back(kept_layout(c, name.toStdString())); });
    name_->clear();
  });
  connect(take_, &QPushButton::clicked, this, [this, typed] {
    const Crossing before = document_.crossing();
    const QString name = other_->currentText();
    const QString left = typed().isEmpty() ? tr("before %1").arg(name) : typed();
    put(tr("Make %1 current").arg(name),
        [&](Crossing& c) { c = with_layout_in_force(c, picked_id(), left.toStdString()); });
    if (document_.crossing() != before) name_->clear();
  });
  connect(rename_, &QPushButton::clicked, this, [this, typed] {
    if (typed().isEmpty()) {
      name_->setFocus();
      return;
    }
    put(tr("Rename layout"), [&](Crossing& c) {
      if (Alternative* picked = find_by_id(c.alternatives, picked_id())) picked->name = typed().toStdString();
    });
    name_->clear();
  });
  connect(remove_, &QPushButton::clicked, this, [this] {
    put(tr("Remove layout %1").arg(other_->currentText()), [gone = picked_id()](Crossing& c) {
      std::erase_if(c.alternatives, [&](const Alternative& a) { return a.id == gone; });
    });
  });
  connect(ghost_, &QPushButton::toggled, this, &LayoutsPanel::say_ghost);
  connect(other_, &QComboBox::currentIndexChanged, this, &LayoutsPanel::say_ghost);
  connect(&document_, &Document::replaced, this, [this] { ghost_->setChecked(false); });
  refresh_now();
}

std::string LayoutsPanel::picked_id() const {
  return other_->currentData().toString().toStdString();
}

void LayoutsPanel::say_ghost() {
  if (!ghost_->isChecked() || picked_id().empty()) {
    Q_EMIT ghost_changed(nullptr);
    return;
  }
  auto ghost = std::make_shared<GhostLayout>();
  ghost->crossing = with_alternative(document_.crossing(), picked_id());
  ghost->assessment = assess(ghost->crossing, document_.tables(), document_.assessment().ground_surface);
  Q_EMIT ghost_changed(std::move(ghost));
}

void LayoutsPanel::put(const QString& step_name, const Edit& edit) {
  change(step_name, edit);
}

QString LayoutsPanel::table_html(const std::vector<LayoutSummary>& all) const {
  using Cell = std::function<QString(const LayoutSummary&)>;
  const auto number = [this](const std::optional<double>& v, Dimension d) {
    return v ? text_of(*v, d).toHtmlEscaped() : QStringLiteral("–");  // "< 0.01 %"
  };
  const std::vector<std::pair<QString, Cell>> rows{
      {tr("verdict"), [](const LayoutSummary& s) { return verdict_text(s); }},
      {tr("launch depth, grade"),
       [&](const LayoutSummary& s) {
         return number(s.launch_depth_m, Dimension::length) + QStringLiteral(", ") + number(s.grade, Dimension::grade);
       }},
      {tr("length"), [&](const LayoutSummary& s) { return number(s.length_m, Dimension::length); }},
      {tr("least cover"), [&](const LayoutSummary& s) { return number(s.least_cover_m, Dimension::length); }},
      {tr("tightest gap"),
       [&](const LayoutSummary& s) {
         return s.least_gap_m ? tr("%1, %2").arg(number(s.least_gap_m, Dimension::length),
                                                 text_from(s.least_gap_utility).toHtmlEscaped())
                              : QStringLiteral("–");
       }},
      {tr("beyond the gap required"),
       [&](const LayoutSummary& s) { return number(s.least_gap_over_m, Dimension::length); }},
      {tr("chance to touch a service"),
       [&](const LayoutSummary& s) { return number(s.contact_chance, Dimension::chance); }},
      {tr("chance to arrive"),
       [&](const LayoutSummary& s) { return number(s.chance_inside_exit_pit, Dimension::chance); }},
      {tr("heave, high"), [&](const LayoutSummary& s) { return number(s.heave_high_m, Dimension::small_length); }},
      {tr("earth to dig"), [&](const LayoutSummary& s) { return text_of(s.dig_m3, Dimension::volume); }},
      {tr("time"), [&](const LayoutSummary& s) { return number(s.time_s, Dimension::duration); }}};
  // One layout below the other would not compare; side by side the column shows two, more run on to the right.
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='3'><tr><td></td>");
  for (const LayoutSummary& s : all)
    html +=
        QStringLiteral("<td><b>%1</b></td>").arg((s.id.empty() ? tr("current") : text_from(s.name)).toHtmlEscaped());
  html += QStringLiteral("</tr>");
  for (const auto& [name, cell] : rows) {
    html += QStringLiteral("<tr><td>%1</td>").arg(name.toHtmlEscaped());
    for (const LayoutSummary& s : all) html += QStringLiteral("<td valign='top'>%1</td>").arg(cell(s));
    html += QStringLiteral("</tr>");
  }
  return html + QStringLiteral("</table>");
}

void LayoutsPanel::refresh() {
  const Crossing& crossing = document_.crossing();
  const std::vector<LayoutSummary> all = compare_layouts(crossing, document_.assessment(), document_.tables());
  table_->setText(table_html(all));
  const QString before = other_->currentData().toString();
  {
    const QSignalBlocker blocker(other_);
    other_->clear();
    for (const Alternative& a : crossing.alternatives)
      other_->addItem(text_from(a.name.empty() ? a.id : a.name), text_from(a.id));
    other_->setCurrentIndex(std::max(other_->findData(before), other_->count() > 0 ? 0 : -1));
  }
  const bool some = other_->count() > 0;
  for (QPushButton* button : {take_, rename_, remove_}) button->setEnabled(some && !locked());
  ghost_->setEnabled(some);
  if (!some) ghost_->setChecked(false);
  keep_->setEnabled(!locked());
  other_->setEnabled(some);
  if (ghost_->isChecked()) say_ghost();
}

QString LayoutsPanel::visible_text() const {
  return plain(empty_) + plain(table_);
}

}  // namespace burrow
