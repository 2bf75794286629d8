#pragma once
/// The samples and lessons of the program, as somebody reads them: their names and notes in the language spoken. They
/// are kept in English; the catalogues have what stands in them in the context "sample". Nothing that somebody saved
/// goes through here: what was typed is never translated.   Evidence: SampleText.*

#include <string>
#include <string_view>

namespace burrow {

/// The text of a crossing file with its names and notes in the language spoken; numbers, ids and codes as they were. A
/// text without an entry stays English, and so does the whole where English is spoken or it is no JSON.
std::string sample_in_language(std::string_view crossing_text);

}  // namespace burrow
