#include <QCoreApplication>
#include <QPainter>

#include "burrow/drawing/pit_picture.h"
#include "page_recorder.h"
#include "parts.h"

namespace burrow {

namespace {

constexpr double text_units = 12;  // of `Style::text`; the numbers of a picture are set at nine tenths of it
constexpr double numbers_units = 11;

QString tr(const char* text) {
  return QCoreApplication::translate("pits on paper", text);
}

}  // namespace

void draw_pits(Page& page, const QRectF& box, const Sheet& sheet, double text_mm, bool across) {
  const Crossing& crossing = sheet.crossing;
  const Assessment& answer = sheet.assessment;
  const Tool tool = resolve_tool(crossing.bore.tool, sheet.tables);
  Style style;
  style.units = sheet.units;
  style.text = text_units;
  const double exit_offset = answer.arrival.offset_m.value_or(crossing.bore.exit.offset->m);
  const PitPicture launch{answer.launch_pit,
                          answer.launch_pit_work,
                          crossing.site.ground,
                          crossing.bore.launch.offset->m,
                          tool.diameter.m,
                          tool.length.m,
                          style};
  const PitPicture exit{
      answer.exit_pit, answer.exit_pit_work, crossing.site.ground, exit_offset, tool.diameter.m, 0, style};
  struct One {
    const PitPicture& picture;
    bool square;
    QString name;
  };
  std::vector<One> all{{launch, false, tr("Launch pit")}};
  if (across) all.push_back({launch, true, tr("Launch pit, across the bore")});
  all.push_back({exit, false, tr("Exit pit")});
  if (across) all.push_back({exit, true, tr("Exit pit, across the bore")});
  constexpr double gap = 4;
  const double width = (box.width() - gap * static_cast<double>(all.size() - 1)) / static_cast<double>(all.size());
  const TextStyle title{text_mm, QFont::DemiBold};
  double x = box.left();
  for (const One& one : all) {
    Paper(page).short_text({x, box.top() + text_mm}, one.name, title, width);
    const QRectF room(x, box.top() + line_height_mm(title), width, box.height() - line_height_mm(title));
    PageRecorder recorder(page, room, text_mm / numbers_units);
    QPainter painter(&recorder);
    one.square ? paint_pit_across(painter, recorder.room(), one.picture)
               : paint_pit_oblique(painter, recorder.room(), one.picture);
    x += width + gap;
  }
}

}  // namespace burrow
