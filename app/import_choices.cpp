#include "import_choices.h"

#include <algorithm>
#include <charconv>

#include "burrow/file/disk.h"

namespace burrow {

namespace {

std::optional<double> number(std::string_view text) {
  double value = 0;
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || stop != text.data() + text.size()) return std::nullopt;
  return value;
}

std::string in_small_letters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

template <class E>
Result<void> take_word(const Options& options, const char* name, std::optional<E>& into) {
  if (!options.has(name)) return {};
  const std::string text = options.value(name, "");
  into = from_word<E>(text);
  if (!into) return fail(name, text, known_words<E>());
  return {};
}

}  // namespace

std::vector<std::string> split_words(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t end = std::min(text.find(at), text.size());
    parts.emplace_back(text.substr(0, end));
    if (end == text.size()) return parts;
    text.remove_prefix(end + 1);
  }
}

Result<std::optional<CrossingLine>> import_line_of(const Options& options) {
  if (!options.has("--line")) return std::optional<CrossingLine>();
  const std::string text = options.value("--line", "");
  std::vector<double> values;
  for (const std::string& part : split_words(text, ','))
    if (const auto value = number(part)) values.push_back(*value);
  if (values.size() != 4 || split_words(text, ',').size() != 4)
    return fail("--line", text, "X1,Y1,X2,Y2: launch pit and exit pit in the coordinates of the first file");
  return std::optional(CrossingLine{{values[0], values[1]}, {values[2], values[3]}});
}

Result<MeaningTable> import_meanings(const Options& options) {
  const MeaningTable built_in = built_in_meanings();
  if (!options.has("--meanings")) return built_in;
  const std::string path = options.value("--meanings", "");
  const Result<std::string> text = read_text_file(path);
  if (!text) return tl::unexpected(text.error());
  const Result<MeaningTable> own = read_meanings(*text);
  if (!own) return fail(phrase("{}{}", path, own.error().place), own.error().found, own.error().expected);
  return joined(*own, built_in);
}

Result<ImportChoices> ImportChoices::read(const Options& options) {
  ImportChoices choices;
  Result<void> done = take_word(options, "--units", choices.unit_);
  if (done) done = take_word(options, "--height-units", choices.height_unit_);
  if (done) done = take_word(options, "--heights", choices.from_);
  if (done) done = take_word(options, "--level", choices.level_);
  if (done) done = choices.read_pairs(options);
  if (!done) return tl::unexpected(done.error());
  if (options.has("--join")) choices.join_ = split_words(options.value("--join", ""), ',');
  if (options.has("--field")) choices.fields_ = split_words(options.value("--field", ""), ',');
  return choices;
}

Result<void> ImportChoices::read_pairs(const Options& options) {
  for (const auto& [name, pairs] : {std::pair{"--meaning", &meanings_}, {"--diameter", &diameters_}}) {
    if (!options.has(name)) continue;
    for (const std::string& pair : split_words(options.value(name, ""), ',')) {
      const std::size_t at = pair.find_last_of('=');
      if (at == std::string::npos) return fail(name, pair, "LAYER=VALUE,… ; * stands for any text");
      pairs->emplace_back(pair.substr(0, at), pair.substr(at + 1));
    }
  }
  for (const auto& [layer, text] : meanings_)
    if (!from_word<Meaning>(text)) return fail("--meaning", text, known_words<Meaning>());
  for (const auto& [layer, text] : diameters_)
    if (const auto d = number(text); !d || !(*d > 0 && *d <= 5))
      return fail("--diameter", text, "an outside diameter in metres, above 0 and up to 5");
  if (options.has("--crs"))
    for (const std::string& word : split_words(options.value("--crs", ""), ',')) {
      const std::size_t at = word.find_last_of('=');
      const bool of_one = at != std::string::npos;
      systems_.emplace_back(of_one ? word.substr(0, at) : std::string(), of_one ? word.substr(at + 1) : word);
    }
  return {};
}

namespace {

bool is_file(const std::string& path, const std::string& name) {
  return path == name || path.ends_with("/" + name);
}

/// Of "diameter=DIAMETER:mm".
std::string column_in(const std::string& word) {
  const std::size_t is = word.find('=');
  return is == std::string::npos ? std::string() : split_words(word.substr(is + 1), ':').front();
}

}  // namespace

std::optional<Error> ImportChoices::of_no_use(const std::vector<ImportFile>& files) const {
  for (const auto& [name, crs] : systems_) {
    const bool known = name.empty() || std::any_of(files.begin(), files.end(), [&name = name](const ImportFile& file) {
                         return is_file(file.found->file, name);
                       });
    if (!known) return Error{"--crs", name, "the name of one of the files"};
  }
  for (const std::string& word : fields_) {
    const std::string column = in_small_letters(column_in(word));
    std::string columns;
    bool known = column.empty();  // what is wrong with that was said when it was taken
    for (const ImportFile& file : files)
      for (const FoundField& field : file.found->table.fields) {
        known = known || in_small_letters(field.name) == column;
        columns += (columns.empty() ? "" : ", ") + field.name;
      }
    if (!known) return Error{"--field", word, columns.empty() ? "a file with attributes" : "a column: " + columns};
  }
  return std::nullopt;
}

std::vector<std::string> ImportChoices::idle_patterns(const std::vector<ImportFile>& files) const {
  std::vector<std::string> idle;
  const auto look = [&](const std::string& match) {
    for (const ImportFile& file : files)
      for (const std::string& layer : file.found->layers)
        if (fits(match, layer)) return;
    idle.push_back(match);
  };
  for (const auto& [match, text] : meanings_) look(match);
  for (const auto& [match, text] : diameters_) look(match);
  for (const std::string& match : join_) look(match);
  return idle;
}

/// Said of this file; else said of all and the file says none.
std::string ImportChoices::crs_for(const ImportFile& file) const {
  const std::string& path = file.found->file;
  std::string of_all;
  for (const auto& [name, crs] : systems_) {
    if (name.empty()) of_all = crs;
    if (!name.empty() && is_file(path, name)) return crs;
  }
  return file.found->frame.crs.empty() ? of_all : std::string();
}

Result<ImportFile> ImportChoices::apply(ImportFile file) const {
  // A unit is said of plans that do not lie in a coordinate system, which has its own.
  if (file.found->frame.crs.empty()) file.unit = unit_;
  file.height_unit = height_unit_;
  if (const std::string crs = crs_for(file); !crs.empty()) {
    Result<ImportFile> placed = in_system(std::move(file), crs);
    if (!placed) return fail("--crs", placed.error().found, placed.error().expected);
    file = std::move(*placed);
  }
  for (std::size_t i = 0; i < file.layers.size(); ++i) {
    LayerChoice& choice = file.layers[i];
    const std::string& name = file.found->layers[i];
    choice.heights_from = from_;
    choice.level = level_;
    for (const auto& [match, text] : meanings_)
      if (fits(match, name)) {
        choice.meaning = *from_word<Meaning>(text);
        choice.on_ground = choice.on_ground && choice.meaning == Meaning::road_edge;
      }
    for (const auto& [match, text] : diameters_)
      if (fits(match, name)) choice.diameter = Length{*number(text)};
    for (const std::string& match : join_) choice.join_points = choice.join_points || fits(match, name);
  }
  auto fields = with_fields(file.found->table, std::move(file.fields), fields_);
  if (!fields) return tl::unexpected(fields.error());
  file.fields = std::move(*fields);
  return file;
}

}  // namespace burrow
