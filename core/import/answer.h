#pragma once
/// What the program asks of the process that reads foreign files, and what that says. The process has met a foreign
/// file: whatever it answers is checked before anybody relies on it. Private to this room.

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// Changes with every change of what goes between the two.
inline constexpr std::uint32_t answer_version = 5;

struct RequestText {
  std::string english;
  std::string translated;
};

/// A counted text with its forms, for one and for more; of a language with another rule they stay English.
struct RequestCounted {
  std::string english;
  std::vector<std::string> forms;
};

struct ReaderRequest {
  std::uint32_t version = answer_version;
  std::int64_t program = 0;  ///< process id of the one that asks; without it nobody waits for the answer
  std::string path;          ///< the one file that may be read, with its companions
  std::string order;         ///< as in `ReadOptions`, and so on
  std::optional<FileUnit> unit;
  std::uint64_t most_vertices = 0;
  std::uint64_t most_unpacked_bytes = 0;
  std::uint64_t most_memory_bytes = 0;
  double most_seconds = 0;
  std::uint64_t most_layers = 0;
  double most_cells = 0;
  std::string language;
  std::vector<RequestText> texts;  ///< of the dictionary
  std::vector<RequestCounted> counted;
  /// Heights of this raster at these points are wanted; absent: the file is to be read.
  std::optional<FoundRaster> raster;
  std::vector<PlanPoint> points;
};

/// An error in the language of the request.
struct ErrorInWords {
  std::string place, found, expected;
  bool operator==(const ErrorInWords&) const = default;
  static ErrorInWords of(const Error& error);
  [[nodiscard]] Error as_error() const { return {place, found, expected}; }
};

/// One of the three.
struct ReaderAnswer {
  std::uint32_t version = answer_version;
  std::optional<ErrorInWords> error;
  std::optional<Found> found;
  std::optional<std::vector<std::optional<double>>> heights;
  bool operator==(const ReaderAnswer&) const = default;
};

/// Where the process finds the request, as a file, and where it writes, to a pipe: any number of 'p' and a double, the
/// share that is read; then 'a', the size of the answer (64 bits), the answer.
inline constexpr int request_file = 0, answer_pipe = 3;
/// How it ends where there is no answer.
inline constexpr int reader_bad_request = 70, reader_not_confined = 71, reader_no_memory = 72;

std::string packed(const ReaderRequest& request);
std::optional<ReaderRequest> unpacked_request(std::string_view bytes);

std::uint64_t size_of(const ReaderAnswer& answer);
std::string packed(const ReaderAnswer& answer);
/// Hands the answer out in pieces of at most 64 kB, so that it need not be there twice. `send` says whether to go on.
bool send_packed(const ReaderAnswer& answer, const std::function<bool(std::string_view)>& send);

/// The checked answer to that request. Everything is looked at: each index lies within its list, each number is one
/// and within what a reader may give, texts are UTF-8 without control signs, grids lie in the file that was asked for.
/// Empty: it cannot have come from a sound reader.   Evidence: Answer.*, AnswerLong.*
std::optional<ReaderAnswer> checked_answer(std::string_view bytes, const ReaderRequest& request);

}  // namespace burrow
