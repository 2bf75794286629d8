#pragma once
/// Files on disk: read whole, replaced whole.

#include <string>
#include <string_view>

#include "burrow/base/result.h"

namespace burrow {

/// The bytes of a file. Errors (`place` is the path): no such file, a folder, no permission, over 64 MB, failure of the
/// disk. Evidence: Disk.*
Result<std::string> read_text_file(const std::string& path);

/// Replaces the content of a file, or makes it: at every moment, also after a crash or a power cut, the path holds
/// either all of the old content or all of the new. Writes beside it, flushes to the disk, renames over it. Permissions
/// are kept; of a symbolic link the target is replaced, the link stays.
/// Errors (`place` is the path): no permission, no such folder, disk full …; the old file is untouched then and nothing
/// is left behind. Evidence: Disk.*, KillDuringSave.*
Result<void> save_atomically(const std::string& path, std::string_view text);

}  // namespace burrow
