#pragma once
/// Files on disk: read whole, replaced whole.

#include <string>
#include <string_view>

#include "burrow/base/result.h"

namespace burrow {

/// The bytes of a file. Of one whose writing in place was cut short (see `replace_file`) the new content, which waits
/// beside it. Errors (`place` is the path): no such file, a folder, no permission, over 64 MB, failure of the disk.
/// Evidence: Disk.*
Result<std::string> read_text_file(const std::string& path);

/// The same, of a file alone: a pipe, for which a window would wait, is an error.   Evidence: Disk.Pipe_*
Result<std::string> read_regular_file(const std::string& path);

/// Unconfirmed: the new content stands there and is read, but the folder was not confirmed; a power cut may bring the
/// old content back.
enum class Written { surely, unconfirmed };

/// Replaces the content of a file, or makes it. Writes beside it, flushes to the disk, renames over it: at every
/// moment, also after a crash or a power cut, the path holds all of the old content or all of the new. Permissions,
/// access lists and other attributes are kept, owner and group where the system lets this user give them away; where
/// the group cannot be kept, the new one may do no more than everybody. Of a symbolic link the target is replaced.
///
/// A file with several names (hard links) is written in place, since a rename would leave the other names with the old
/// content; so is one of another owner, who would lose it. Old and new content wait together beside it (".NAME.saving")
/// until the disk has confirmed the new one, so there is no moment at which a kill loses both: before that file is
/// whole the old one is untouched; after it, both are kept. Cut short, `read_text_file` gives the new content under
/// this name; `mend_killed_save` puts it in place.
///
/// Errors (`place` is the path): no permission, no such folder, disk full, the disk does not confirm …; the old content
/// is there then and nothing is left behind, or the message says where both wait.
/// Evidence: Disk.*, DiskFaults.*, KillDuringSave.*
Result<Written> replace_file(const std::string& path, std::string_view text);

/// The same for what is only written and never asked again: what is unconfirmed is an error that says so.
Result<void> save_atomically(const std::string& path, std::string_view text);

/// Ends a writing in place that was cut short. Nothing happens where none was, or where another program is at it.
/// Evidence: KillDuringSave.LinkedFile_*
void mend_killed_save(const std::string& path);

/// Removes what killed saves left in a folder; what another program is writing now stays.   Evidence:
/// DiskFaults.Leftovers_*
void clean_leftovers(const std::string& folder);

}  // namespace burrow
