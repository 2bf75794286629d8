#include "burrow/document/undo_step.h"

#include <utility>

#include "burrow/document/document.h"

namespace burrow {

namespace {

/// Calls `one` with each long list of a site and where a step holds it.
template <class Do>
void each_long_list(const Do& one) {
  one(&Site::ground_points, &LongLists::ground_points);
  one(&Site::background, &LongLists::background);
  one(&Site::utilities, &LongLists::utilities);
}

}  // namespace

LongLists long_lists(const Crossing& crossing, const LongLists& known) {
  LongLists lists;
  each_long_list([&](auto member, auto kept) {
    const auto& list = crossing.site.*member;
    const auto& same = known.*kept;
    lists.*kept = same && *same == list ? same : std::make_shared<std::decay_t<decltype(list)>>(list);
  });
  return lists;
}

Crossing without_long_lists(Crossing crossing) {
  each_long_list([&](auto member, auto) { (crossing.site.*member) = {}; });
  return crossing;
}

void put_back(Crossing& present, const Crossing& rest, const Crossing& wanted) {
  Crossing fresh = rest;
  each_long_list([&](auto member, auto) {
    std::swap(fresh.site.*member, present.site.*member);
    if (fresh.site.*member != wanted.site.*member) fresh.site.*member = wanted.site.*member;
  });
  present = std::move(fresh);
}

UndoStep::UndoStep(Document& document, const QString& name, Crossing rest, LongLists lists, bool done)
    : QUndoCommand(name), document_(document), rest_(std::move(rest)), lists_(std::move(lists)), done_(done) {}

void UndoStep::redo() {
  if (!std::exchange(done_, false)) swap();
}

void UndoStep::undo() {
  swap();
}

void UndoStep::swap() {
  Crossing& present = document_.crossing_;
  std::swap(present, rest_);
  each_long_list([&](auto member, auto kept) {
    std::swap(present.site.*member, rest_.site.*member);
    if (document_.lists_.*kept != lists_.*kept) present.site.*member = *(lists_.*kept);
    std::swap(document_.lists_.*kept, lists_.*kept);
  });
  document_.report_change();
}

}  // namespace burrow
