#pragma once
/// What somebody vouches for, as entries: how he knows it, who, when; name and day are offered.

#include "burrow/crossing/site.h"
#include "burrow/document/lens.h"
#include "burrow/panels/text_form.h"

namespace burrow {

/// An entry for one text of a crossing.
TextField text_field(Document& document, const QString& label, Lens<std::string> place,
                     TextKind kind = TextKind::words);
/// An empty entry is no day.
TextField day_field(Document& document, const QString& label, Lens<std::optional<std::string>> place);

struct StatementLabels {
  QString how, how_hint, by, date;
};

/// Three entries.   Evidence: UtilitiesEntry.EndsTracerAndAbandonment_*
void add_statement(TextForm& form, Document& document, const StatementLabels& labels, const Lens<Statement>& place);

}  // namespace burrow
