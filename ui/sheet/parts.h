#pragma once
/// The parts of the paper, and the words that they share.

#include "burrow/sheet/sheet.h"
#include "flow.h"

namespace burrow {

/// Setup card: both sides, further ones where the run sheet is long. A5, of American papers half a letter.
/// Type is never smaller than 11 pt, the numbers to be set 20 pt.   Evidence: Card.*
std::vector<Page> card_pages(const Sheet& sheet);

/// The crossing sheet. Errors: a scale at which the drawing does not fit.
Result<std::vector<Page>> crossing_pages(const Sheet& sheet);

/// The permit to bore: every line with what was entered, what is open to be filled in by hand, signatures.
/// Evidence: PermitPaper.*
std::vector<Page> permit_pages(const Sheet& sheet);

/// The working appendix.
std::vector<Page> working_pages(const Sheet& sheet);

/// The bore as it was built, by the readings of a day: drawing, facts, lines to sign on; then the readings as they were
/// taken, the line as built, the utilities passed. Of the layout that was bored.
/// Errors: no record with readings; the paper is too small.   Evidence: AsBuilt.*
Result<std::vector<Page>> as_built_pages(const Sheet& sheet);

/// Everything that follows the drawing: tables in columns on further pages, which are added to `pages`. `levels`: those
/// along the bore are among them, since the drawing had no room.
void add_tables(std::vector<Page>& pages, const Sheet& sheet, bool levels);

/// Columns as wide as tables want them, or two even on the smallest paper.
enum class TextColumns { wide, two };
/// A page with frame and head line, and the columns of text in it.
std::vector<Flow::Area> new_text_page(std::vector<Page>& pages, const Sheet& sheet, const QString& title,
                                      TextColumns columns = TextColumns::wide);
/// Every limit in force, with document and clause.   Evidence: SheetLimits.*
void add_limits(Flow& flow, const Sheet& sheet);
/// Those that nobody looked up.
int unverified_limits(const Sheet& sheet);
/// Says at the foot of each page how many these are.
void count_unverified(std::vector<Page>& pages, const Sheet& sheet);
/// "page 2 of 5" and what identifies the sheet, at the foot of each page.
void number_pages(std::vector<Page>& pages, const Sheet& sheet);

/// Launch pit and exit pit beside each other, obliquely from above and square across the bore, each under its name.
void draw_pits(Page& page, const QRectF& box, const Sheet& sheet, double text_mm, bool across);

/// A dash where it is not known.
QString shown(const std::optional<double>& value, Dimension dimension, UnitSystem units);
QString utility_name(const Utility& utility);

}  // namespace burrow
