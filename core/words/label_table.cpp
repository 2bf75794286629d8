#include "burrow/words/label_table.h"

#include "burrow/language/label_text.h"
#include "burrow/language/say.h"

namespace burrow {

std::string label_table(const Tables& tables) {
  const std::vector<LabelCounts> counts = label_counts(tables);
  std::string text = std::string("| ") + translated("label") + " |", rule = "| --- |";
  for (const LabelCounts& one : counts) {
    text += std::string(" ") + translated(one.table) + " |";
    rule += " --- |";
  }
  text += std::string(" ") + translated("all") + " |\n" + rule + " --- |\n";
  for (std::size_t i = 0; i < all_source_labels.size(); ++i) {
    std::size_t all = 0;
    text += "| " + label_text(all_source_labels[i]) + " |";
    for (const LabelCounts& one : counts) {
      text += " " + std::to_string(one.by_label[i]) + " |";
      all += one.by_label[i];
    }
    text += " " + std::to_string(all) + " |\n";
  }
  return text;
}

}  // namespace burrow
