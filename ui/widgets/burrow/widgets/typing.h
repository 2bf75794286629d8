#pragma once
/// What is being typed and not yet entered: a field takes it over when it is left, and nobody leaves a field to save.

class QWidget;

namespace burrow {

/// An entry, or a column of them, whose text goes into the crossing.
class HoldsTyping {
 public:
  HoldsTyping() = default;
  HoldsTyping(const HoldsTyping&) = delete;
  HoldsTyping& operator=(const HoldsTyping&) = delete;
  virtual ~HoldsTyping() = default;
  /// Takes it over as if the entry were left. False: it cannot be taken; it stays, and the entry says why.
  virtual bool take_typing() = 0;
};

/// All that is being typed in a window. False: some of what is shown was not taken.   Evidence: Saving.Typing_*
bool take_typing_in(const QWidget& window);

}  // namespace burrow
