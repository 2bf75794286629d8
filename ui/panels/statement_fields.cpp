#include "statement_fields.h"

#include "choice_words.h"

namespace burrow {

TextField text_field(Document& document, const QString& label, Lens<std::string> place, TextKind kind) {
  return {label,
          [&document, place] {
            const std::string* text = place(document.crossing());
            return text ? text_from(*text) : QString();
          },
          [place](Crossing& crossing, const QString& typed) {
            if (std::string* text = place(crossing)) *text = typed.trimmed().toStdString();
          },
          kind};
}

TextField day_field(Document& document, const QString& label, Lens<std::optional<std::string>> place) {
  return {label,
          [&document, place] {
            const std::optional<std::string>* day = place(document.crossing());
            return day ? text_from(day->value_or(std::string())) : QString();
          },
          [place](Crossing& crossing, const QString& typed) {
            std::optional<std::string>* day = place(crossing);
            if (!day) return;
            day->reset();
            if (!typed.trimmed().isEmpty()) *day = typed.trimmed().toStdString();
          },
          TextKind::day};
}

void add_statement(TextForm& form, Document& document, const StatementLabels& labels, const Lens<Statement>& place) {
  const auto member = [&place](auto Statement::*of) {
    return [place, of](auto& c) {
      auto* statement = place(c);
      return statement ? &(statement->*of) : nullptr;
    };
  };
  form.add(text_field(document, labels.how, member(&Statement::how)), labels.how_hint, true);
  form.add(text_field(document, labels.by, member(&Statement::by), TextKind::name));
  form.add(day_field(document, labels.date, member(&Statement::date)));
}

}  // namespace burrow
