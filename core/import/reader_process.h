#pragma once
/// The process in which foreign files are read: `burrowline-reader`, beside the program or in ../lib/burrowline. It is
/// started for one file, confined, and gone afterwards, whatever the file does to it. Private to this room.

#include <filesystem>
#include <functional>
#include <optional>

#include "answer.h"
#include "burrow/base/result.h"

namespace burrow {

/// A request in the words of `options` and in the language spoken.
ReaderRequest request_for(const std::string& path, const ReadOptions& options);

/// Asks a process and waits for its answer; `progress` is asked all the while, and at false the process is killed at
/// once. Returns with the process ended and waited for. From any thread.
/// Errors: `stopped_by_person`; no such program; more time, more memory than the request allows; broke down; ended from
/// outside; an answer that cannot be right; what the reader says about the file.   Evidence: ReaderProcess.*
Result<ReaderAnswer> ask_reader(const ReaderRequest& request, const std::function<bool(double)>& progress);

/// The same with another program in its place, for tests.
Result<ReaderAnswer> ask_reader(const std::filesystem::path& program, const ReaderRequest& request,
                                const std::function<bool(double)>& progress);

/// Heights of a raster of a file that was read, at points of its own plan coordinates; none outside it and where it has
/// no data. The file is opened in a process as well; `go_on` is asked while it is.
Result<std::vector<std::optional<double>>> heights_of(const Found& found, const FoundRaster& raster,
                                                      const std::vector<PlanPoint>& points,
                                                      const std::function<bool()>& go_on);

/// Version of Landlock that the kernel has, by which the files that a reader may open are bounded; 0: none.
int landlock_version();
/// What is said of each file read where there is none.   Evidence: ReaderProcess.WithoutABoundOnFiles_ItIsSaid
std::optional<std::string> note_without_bound(int landlock_version);

}  // namespace burrow
