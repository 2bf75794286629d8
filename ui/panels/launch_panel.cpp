#include "burrow/panels/launch_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLocale>
#include <QProgressBar>
#include <QPushButton>
#include <cmath>

#include "burrow/charts/launch_map_view.h"
#include "burrow/document/text.h"
#include "burrow/language/say.h"
#include "burrow/words/headline.h"
#include "burrow/words/launch_text.h"

namespace burrow {

namespace {
const ItemRef launch_part{ItemKind::launch, {}, -1};

/// A number stays with its per cent.
QString kept_together(const std::string& text) {
  return text_from(text).replace(QStringLiteral(" %"), QStringLiteral("\u00a0%"));
}

QString verdict_words(const LaunchCell& cell) {
  return text_from(verdict_text(cell));
}
}  // namespace

LaunchPanel::LaunchPanel(Document& document, LaunchSearchJob& job, QWidget* parent)
    : FormPanel(document, light_page_ms, parent), job_(job) {
  add_heading(tr("Which launch works"));
  add_choice(
      tr("map over"), {tr("depth and grade"), tr("station and offset")},
      [this] { return job_.over() == MapOver::depth_and_grade ? 0 : 1; },
      [this](int row) { job_.set_over(row == 0 ? MapOver::depth_and_grade : MapOver::station_and_offset); });
  state_ = add_text(tr("State of the search"), true);
  progress_ = new QProgressBar(this);
  progress_->setRange(0, 1000);
  progress_->setTextVisible(false);
  progress_->setFixedHeight(6);
  progress_->setAccessibleName(tr("Progress of the search"));
  add_widget(progress_);
  view_ = new LaunchMapView(this);
  add_widget(view_);
  pointed_ = add_text(tr("The launch under the pointer, else the one as it stands"));
  const std::vector<QPushButton*> buttons = add_buttons({tr("Take the best launch"), tr("Search again")});
  take_best_ = buttons[0];
  search_ = buttons[1];
  answer_ = add_text(tr("Best launch"));
  way_out_ = add_text(tr("What would open a launch, and what is not in the map"));
  add_gap();
  add_heading(tr("What the colours mean"));
  key_ = add_text(tr("Key of the map"));
  make_tools();
  add_end();
  wire();
  refresh_now();
}

LaunchPanel::~LaunchPanel() = default;

void LaunchPanel::make_tools() {
  add_gap();
  add_heading(tr("Other tools"));
  tools_state_ = add_text(tr("State of the comparison of tools"), true);
  ask_tools_ = add_buttons({tr("Try all tools")}).front();
  ask_tools_->setToolTip(tr("The same search for each class of tool and each way of putting the pipe in"));
  tools_ = add_text(tr("Tools compared"));
}

void LaunchPanel::wire() {
  connect(&job_, &LaunchSearchJob::changed, this, &LaunchPanel::refresh_later);
  // At once: nothing is taken from a map that is no longer of this crossing.
  connect(&job_, &LaunchSearchJob::changed, this, &LaunchPanel::show_state);
  connect(&job_, &LaunchSearchJob::progressed, this,
          [this](double share) { progress_->setValue(static_cast<int>(share * 1000)); });
  connect(search_, &QPushButton::clicked, this, [this] { job_.running() ? job_.cancel() : job_.run(); });
  connect(ask_tools_, &QPushButton::clicked, this, [this] { job_.tools_running() ? job_.cancel() : job_.ask_tools(); });
  connect(take_best_, &QPushButton::clicked, this, &LaunchPanel::take);
  connect(view_, &LaunchMapView::hovered, this, [this](int cell) {
    hovered_ = cell;
    show_pointed();
  });
  connect(view_, &LaunchMapView::drag_started, this, &LaunchPanel::begin_drag);
  connect(view_, &LaunchMapView::dragged, this, &LaunchPanel::drag_to);
  connect(view_, &LaunchMapView::drag_ended, this, &LaunchPanel::end_drag);
  connect(view_, &LaunchMapView::nudged, this, &LaunchPanel::nudge);
}

void LaunchPanel::set_units(UnitSystem units) {
  view_->set_units(units);
  FormPanel::set_units(units);
}

void LaunchPanel::set_theme(const Theme& theme) {
  view_->set_theme(theme);
  FormPanel::set_theme(theme);
}

void LaunchPanel::showEvent(QShowEvent* event) {
  FormPanel::showEvent(event);
  job_.set_wanted(true);
}

void LaunchPanel::hideEvent(QHideEvent* event) {
  end_drag(false);
  job_.set_wanted(false);
  FormPanel::hideEvent(event);
}

/// A centimetre or half an inch; a thousandth of grade. A locked value stays as it is.
MapPlace LaunchPanel::rounded(const MapPlace& place) const {
  const double length = units_ == UnitSystem::us ? 0.0127 : 0.01;
  const double across = job_.over() == MapOver::depth_and_grade ? 0.001 : length;
  const LaunchMap& map = *job_.map();
  const MapPlace here = place_of(document_.crossing(), map.over);
  return {map.across.locked ? here.across : std::round(place.across / across) * across,
          map.down.locked ? here.down : std::round(place.down / length) * length};
}

void LaunchPanel::begin_drag() {
  if (!job_.map() || locked() || document_.in_session()) return;
  session_ = std::make_unique<EditSession>(document_, launch_part);
}

void LaunchPanel::drag_to(const MapPlace& place) {
  if (!session_ || !job_.map()) return;
  const MapPlace there = rounded(place);
  session_->preview([&](Crossing& c) { c.bore.launch = launch_at(c, job_.map()->over, there); });
}

void LaunchPanel::end_drag(bool keep) {
  if (!session_) return;
  if (keep) session_->finish(tr("Move the launch on the map"));
  session_.reset();
}

void LaunchPanel::nudge(int right, int down) {
  if (!job_.map()) return;
  const bool depth = job_.map()->over == MapOver::depth_and_grade;
  const double length = units_ == UnitSystem::us ? 0.0127 : 0.01;
  const MapPlace here = place_of(document_.crossing(), job_.map()->over);
  const MapPlace there = rounded({here.across + right * (depth ? 0.001 : length), here.down + down * length});
  change(tr("Move the launch on the map"), [&](Crossing& c) { c.bore.launch = launch_at(c, job_.map()->over, there); });
}

void LaunchPanel::take() {
  const LaunchMap* map = job_.map().get();
  if (!map || !map->best || !job_.current()) return;
  Launch launch = launch_at(document_.crossing(), map->over, map->best->place);
  // To the millimetre and the ten-thousandth: finer is nobody's setting.
  const auto to = [](double value, double step) { return std::round(value / step) * step; };
  if (!map->down.locked && map->over == MapOver::depth_and_grade) launch.elevation.m = to(launch.elevation.m, 1e-3);
  if (!map->across.locked && map->over == MapOver::depth_and_grade) launch.grade.v = to(launch.grade.v, 1e-4);
  if (map->over == MapOver::station_and_offset) {
    if (!map->across.locked) launch.station.m = to(launch.station.m, 1e-3);
    if (!map->down.locked) launch.offset.value.m = to(launch.offset->m, 1e-3);
  }
  change(tr("Take the best launch"), [&](Crossing& c) { c.bore.launch = launch; });
}

void LaunchPanel::refresh() {
  if (document_.crossing().bore.exit.station.m < document_.crossing().bore.launch.station.m) return;
  view_->show_map(job_.map(), job_.current(), place_of(document_.crossing(), job_.over()));
  show_state();
  show_pointed();
  show_words();
  show_tools();
}

void LaunchPanel::show_state() {
  const LaunchMap* map = job_.map().get();
  const bool searching = job_.running() && !job_.tools_running();
  progress_->setVisible(job_.running());
  if (!job_.running()) progress_->setValue(0);
  search_->setText(searching ? tr("Cancel") : tr("Search again"));
  search_->setEnabled(!job_.tools_running());
  take_best_->setEnabled(map && map->best && job_.current() && !job_.coarse() && !locked());
  if (searching)
    state_->setText(map && job_.coarse() ? tr("A coarse map; the full one follows.") : tr("Searching…"));
  else if (!map)
    state_->setText(tr("Nothing searched yet."));
  else if (!job_.current())
    state_->setText(tr("The crossing has changed since."));
  else
    state_->setText(tr("%1 launches judged.").arg(QLocale(text_from(dictionary().language)).toString(map->judged)));
}

QString LaunchPanel::cell_words(const LaunchCell& cell) const {
  const LaunchMap& map = *job_.map();
  QString text = kept_together(place_text(map.over, cell.place, units_)) + QStringLiteral(": ") + verdict_words(cell);
  if (cell.binds >= 0)
    text += QStringLiteral(", ") + kept_together(margin_text(cell)) + QStringLiteral("\n") +
            kept_together(binding_text(map, cell, units_));
  if (cell.also >= 0 && cell.verdict == Verdict::caution)
    text += QStringLiteral("\n") +
            tr("also: %1").arg(text_from(limit_title(map.limits[static_cast<std::size_t>(cell.also)])));
  text += QStringLiteral("\n") +
          (cell.chance_clean
               ? tr("chance to arrive %1, lines not counted").arg(text_of(*cell.chance_clean, Dimension::chance))
               : tr("chance to arrive not known"));
  return text;
}

void LaunchPanel::show_pointed() {
  const LaunchMap* map = job_.map().get();
  if (!map || map->cells.empty()) {
    pointed_->setText(QString());
    return;
  }
  if (hovered_ >= 0 && hovered_ < static_cast<int>(map->cells.size()) && !view_->dragging()) {
    pointed_->setText(tr("Here: %1").arg(cell_words(map->cells[static_cast<std::size_t>(hovered_)])));
    return;
  }
  const MapPlace here = place_of(document_.crossing(), map->over);
  if (here == map->here.place) {
    pointed_->setText(tr("As it stands: %1").arg(cell_words(map->here)));
    return;
  }
  // Moved since it was searched: what the bar says, at once. No other launch speaks for it.
  pointed_->setText(tr("As it stands: %1").arg(text_from(headline(document_.assessment(), units_))));
}

QString LaunchPanel::key_html() const {
  QString html = QStringLiteral("<table cellspacing='2' cellpadding='2' width='100%'>");
  for (const MapRegion& region : view_->regions())
    html +=
        QStringLiteral(
            "<tr><td width='26' align='center' bgcolor='%1'><b><font color='%2'>%3</font></b></td>"
            "<td>%4</td><td align='right'>%5</td></tr>")
            .arg(region.colour.name(),
                 contrast(region.colour, Qt::black) > contrast(region.colour, Qt::white) ? QStringLiteral("#000000")
                                                                                         : QStringLiteral("#ffffff"),
                 region.letter, region.title.toHtmlEscaped(),
                 region.share < 0.005 ? QStringLiteral("&lt;&nbsp;1&nbsp;%")
                                      : QStringLiteral("%1&nbsp;%").arg(std::lround(100 * region.share)));
  html += QStringLiteral("</table>");
  return html +
         tr("Each colour is the limit that comes nearest to being broken, or is broken most. Strong and hatched: a "
            "limit is broken that is a stop. Medium: a caution. Pale: all limits judged are kept. Dotted: data are "
            "missing, so the launch is incomplete. The thick line bounds what breaks no stop, the dashed one what is "
            "without caution. Dot: as it stands; drag it. Ring: the best launch.");
}

QString LaunchPanel::way_out_html() const {
  const LaunchMap& map = *job_.map();
  const auto esc = [](const std::string& text) { return kept_together(text).toHtmlEscaped(); };
  QString html;
  if (const std::string conflict = conflict_text(map); !conflict.empty())
    html += tr("<p><b>Limits that stand against one another:</b> %1.</p>").arg(esc(conflict));
  for (const Relaxation& relaxation : map.relaxations) {
    html += tr("<p>%1 would do if this were allowed:").arg(esc(place_text(map.over, relaxation.place, units_)));
    for (const std::string& line : relaxation_lines(relaxation, units_)) html += QStringLiteral("<br>• ") + esc(line);
    html += QStringLiteral("</p>");
  }
  for (const Exposure& exposure : job_.exposures())
    html += QStringLiteral("<p>%1</p>").arg(esc(exposure_text(exposure, map.over, units_)));
  const auto list = [&](const QString& title, const std::vector<Finding>& findings) {
    if (findings.empty()) return;
    html += QStringLiteral("<p><b>%1</b>").arg(title);
    for (const Finding& f : findings) html += QStringLiteral("<br>• ") + esc(finding_text(f, units_));
    html += QStringLiteral("</p>");
  };
  list(tr("The same at every launch:"), map.everywhere);
  list(tr("Not known, and so not in the map:"), map.missing);
  return html;
}

void LaunchPanel::show_words() {
  const LaunchMap* map = job_.map().get();
  if (!map || map->cells.empty()) {
    for (QLabel* label : {answer_, way_out_, key_}) label->setText(QString());
    return;
  }
  answer_->setText(kept_together(search_headline(*map, units_)));
  view_->setAccessibleDescription(answer_->text());
  way_out_->setText(way_out_html());
  way_out_->setVisible(!way_out_->text().isEmpty());
  key_->setText(key_html());
}

void LaunchPanel::show_tools() {
  const std::vector<ToolRow>* rows = job_.tools();
  ask_tools_->setText(job_.tools_running() ? tr("Cancel") : tr("Try all tools"));
  if (job_.tools_running())
    tools_state_->setText(tr("Trying them, one after the other…"));
  else if (!rows)
    tools_state_->setText(tr("The same search for each class of tool and each way of putting the pipe in."));
  else
    tools_state_->setText(job_.tools_current() ? tr("Each at its own best launch.")
                                               : tr("Of the crossing as it stood before."));
  tools_->setVisible(rows != nullptr);
  if (!rows) return;
  QString html = QStringLiteral("<table cellspacing='0' cellpadding='3' width='100%'>");
  for (std::size_t i = 0; i < rows->size(); ++i) {
    const ToolRow& row = (*rows)[i];
    QString ways = text_from(insertion_words(row.insertion));
    bool in_force = row.in_force;
    // Ways that fare alike share a row.
    const std::size_t first = i;
    while (i + 1 < rows->size() && (*rows)[i + 1].tool == row.tool && (*rows)[i + 1].works == row.works &&
           tool_text((*rows)[i + 1], units_) == tool_text(row, units_)) {
      ways += QStringLiteral(", ") + text_from(insertion_words((*rows)[++i].insertion));
      in_force = in_force || (*rows)[i].in_force;
    }
    const bool last_of_tool = i + 1 == rows->size() || (*rows)[i + 1].tool != row.tool;
    const bool first_of_tool = first == 0 || (*rows)[first - 1].tool != row.tool;
    if (i > first && first_of_tool && last_of_tool) ways = tr("pipe put in any way");
    const QColor colour = !row.works || !row.best ? theme_.stop : theme_.verdict(row.best->assessed);
    html += QStringLiteral(
                "<tr><td valign='top'><b>%1</b>%2<br><font color='%3'>%4</font></td>"
                "<td valign='top'><font color='%5'>■</font> %6<br>%7</td></tr>")
                .arg(text_of(row.diameter_m, Dimension::small_length),
                     in_force ? QLatin1Char(' ') + tr("(now)") : QString(), theme_.ink_soft.name(),
                     ways.toHtmlEscaped(), colour.name(), row.works ? verdict_words(*row.best) : tr("no launch"),
                     kept_together(tool_text(row, units_)).toHtmlEscaped());
  }
  tools_->setText(html + QStringLiteral("</table>"));
}

QString LaunchPanel::visible_text() const {
  return plain(state_) + plain(pointed_) + plain(answer_) + plain(way_out_) + plain(key_) + plain(tools_state_) +
         plain(tools_);
}

}  // namespace burrow
