#pragma once
/// Where two versions of a crossing differ, as lines to read: what a person sees who has to choose between them.

#include <QString>
#include <string>

namespace burrow {

/// Place by place, with what stands in the one and in the other; `one_name`: "mine", "on the disk".
QString differences_text(const std::string& one, const std::string& other, const QString& one_name,
                         const QString& other_name);

}  // namespace burrow
