#pragma once
/// Saving a file that has several names (hard links), without a moment at which a kill loses both contents.

#include <string>
#include <string_view>

#include "burrow/file/disk.h"

namespace burrow {

/// Where old and new content wait while a file is written in place.
std::string safety_of(const std::string& target);

/// What a file holds by what waits beside it: the new content where `text`, as read, is half old and half new.
std::string settled(const std::string& target, std::string text);

/// Writes over the file itself; `target` has no symbolic link at its end, `path` is what the person calls it.
Result<Written> save_in_place(const std::string& path, const std::string& target, std::string_view text);

/// Bytes of a file, however many. False: `errno` says why.
bool read_all(const std::string& path, std::size_t at_most, std::string& text);

}  // namespace burrow
