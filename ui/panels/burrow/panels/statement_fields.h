#pragma once
/// What somebody vouches for, as entries: how he knows it, who, when; name and day are offered.

#include "burrow/crossing/site.h"
#include "burrow/panels/text_form.h"

namespace burrow {

/// Where it stands in a crossing; null: there is none.
using FindText = std::function<const std::string*(const Crossing&)>;
using FindDay = std::function<const std::optional<std::string>*(const Crossing&)>;
using FindStatement = std::function<const Statement*(const Crossing&)>;

/// An entry for one text of a part.
TextField text_field(Document& document, const QString& label, std::function<ItemRef()> part, FindText find,
                     TextKind kind = TextKind::words);
/// An empty entry is no day.
TextField day_field(Document& document, const QString& label, std::function<ItemRef()> part, FindDay find);

struct StatementLabels {
  QString how, how_hint, by, date;
};

/// Three entries.   Evidence: UtilitiesEntry.EndsTracerAndAbandonment_*
void add_statement(TextForm& form, Document& document, const StatementLabels& labels,
                   const std::function<ItemRef()>& part, const FindStatement& find);

}  // namespace burrow
