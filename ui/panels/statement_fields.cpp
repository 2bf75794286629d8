#include "burrow/panels/statement_fields.h"

#include "burrow/panels/choice_words.h"

namespace burrow {

namespace {
/// The part with another text in the place that `find` gives.
template <class Find, class Text>
ItemValue with_text(const Crossing& crossing, const ItemRef& part, const Find& find, Text text) {
  Crossing copy = crossing;
  // What is found lies in the copy, which may be changed.
  if (const auto* place = find(copy)) const_cast<Text&>(*place) = std::move(text);
  return value_of(copy, part);
}
}  // namespace

TextField text_field(Document& document, const QString& label, std::function<ItemRef()> part, FindText find,
                     TextKind kind) {
  return {label,
          [&document, find] {
            const std::string* text = find(document.crossing());
            return text ? text_from(*text) : QString();
          },
          [part = std::move(part), find](const Crossing& crossing, const QString& typed) {
            return with_text(crossing, part(), find, typed.trimmed().toStdString());
          },
          kind};
}

TextField day_field(Document& document, const QString& label, std::function<ItemRef()> part, FindDay find) {
  return {label,
          [&document, find] {
            const std::optional<std::string>* day = find(document.crossing());
            return day ? text_from(day->value_or(std::string())) : QString();
          },
          [part = std::move(part), find](const Crossing& crossing, const QString& typed) {
            std::optional<std::string> day;
            if (!typed.trimmed().isEmpty()) day = typed.trimmed().toStdString();
            return with_text(crossing, part(), find, std::move(day));
          },
          TextKind::day};
}

void add_statement(TextForm& form, Document& document, const StatementLabels& labels,
                   const std::function<ItemRef()>& part, const FindStatement& find) {
  form.add(text_field(document, labels.how, part,
                      [find](const Crossing& c) {
                        const Statement* statement = find(c);
                        return statement ? &statement->how : nullptr;
                      }),
           labels.how_hint, true);
  form.add(text_field(
      document, labels.by, part,
      [find](const Crossing& c) {
        const Statement* statement = find(c);
        return statement ? &statement->by : nullptr;
      },
      TextKind::name));
  form.add(day_field(document, labels.date, part, [find](const Crossing& c) {
    const Statement* statement = find(c);
    return statement ? &statement->date : nullptr;
  }));
}

}  // namespace burrow
