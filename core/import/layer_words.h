#pragma once
/// Names of layers and codes as words, and whether a phrase of the table stands in them. Private to this room.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace burrow {

/// A name in small letters without umlauts, cut into words: at every sign that is neither letter nor figure ("C-SSWR"),
/// and, more softly, where small letters go over into capitals and letters into figures ("GasMain", "GAS1"). A soft cut
/// may lie within a word of the table ("kV", "PEhd"), a hard one only between two.
class LayerWords {
 public:
  explicit LayerWords(std::string_view name);

  struct Piece {
    std::string text;
    bool soft_before = false;  ///< grown together with the one before
    [[nodiscard]] bool is_number() const { return !text.empty() && text[0] >= '0' && text[0] <= '9'; }
  };
  [[nodiscard]] const std::vector<Piece>& pieces() const { return pieces_; }

  /// Where a phrase stands, in pieces: the first and the one after the last. A plural in "s" fits a phrase of four
  /// letters and more.
  struct Place {
    std::size_t from = 0, to = 0;
    bool operator==(const Place&) const = default;
  };
  [[nodiscard]] std::optional<Place> find(std::string_view phrase) const;
  [[nodiscard]] std::optional<Place> at(std::size_t piece, std::string_view phrase) const;
  /// The whole name but for its figures: "GND12", "MH 3".
  [[nodiscard]] bool is_code(std::string_view code) const;
  /// The word that begins with that piece, with what is grown together with it; one after its last piece.
  [[nodiscard]] std::pair<std::string, std::size_t> word_at(std::size_t piece) const;

 private:
  std::vector<Piece> pieces_;
  std::string without_figures_;
};

/// A word put together as German does, "gasleitung", in its first part and the length of the second, which says that it
/// is a pipe or cable and not of what; nothing where it does not end so.
struct Compound {
  std::string first;
  std::size_t head_letters = 0;
};
std::optional<Compound> compound_of(std::string_view word);

}  // namespace burrow
