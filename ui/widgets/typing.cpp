#include "burrow/widgets/typing.h"

#include <QWidget>

namespace burrow {

bool take_typing_in(const QWidget& window) {
  bool all = true;
  const auto children = window.findChildren<QWidget*>();
  for (QWidget* child : children)
    if (auto* entry = dynamic_cast<HoldsTyping*>(child))
      // What was refused on a page that nobody sees contradicts nothing, and nobody could mend it there.
      all = (entry->take_typing() || !child->isVisibleTo(&window)) && all;
  return all;
}

}  // namespace burrow
