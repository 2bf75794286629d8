/// set: values of a crossing changed by their JSON pointer.

#include <algorithm>
#include <ostream>

#include "burrow/file/changed_values.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "options.h"

namespace burrow {

namespace {

/// "/bore/launch/grade=-2 %". A key of the file may hold "=" no more than a blank; a value may.
Result<std::vector<NewValue>> values_of(const Options& options) {
  std::vector<NewValue> values;
  for (std::size_t i = 1; i < options.files.size(); ++i) {
    const std::string& word = options.files[i];
    const std::size_t at = word.find('=');
    if (!word.starts_with('/') || at == std::string::npos)
      return fail("", word, "/POINTER=VALUE, for example /bore/launch/elevation_m=100.8");
    const std::string pointer = word.substr(0, at);
    if (std::any_of(values.begin(), values.end(), [&](const NewValue& one) { return one.pointer == pointer; }))
      return fail(pointer, translatable("given twice"), translatable("once"));
    values.push_back({pointer, word.substr(at + 1)});
  }
  if (values.empty()) return fail("", translatable("nothing to set"), "/POINTER=VALUE");
  return values;
}

Result<void> set_all(const CommandArgs& args, Streams streams) {
  const Result<Options> options = read_options(args, {{"-o", true}});
  if (!options) return tl::unexpected(options.error());
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.crossing");
  if (options->files.empty()) return fail("", "no file", "FILE /POINTER=VALUE…");
  const Result<std::vector<NewValue>> values = values_of(*options);
  if (!values) return tl::unexpected(values.error());
  const std::string& file = options->files.front();
  const Result<std::string> text = read_text_file(file);
  if (!text) return tl::unexpected(text.error());
  const Tables tables = load_tables();
  const auto of_file = [&](Error error) {
    error.place = phrase("{}: {}", file, error.place);
    return tl::unexpected(std::move(error));
  };
  const Result<ChangedValues> changed = ChangedValues::open(*text, tables);
  if (!changed) return of_file(changed.error());
  const Result<std::string> written = changed->with(*values, EmptyText::refused);
  if (!written) return of_file(written.error());
  const std::string out = options->value("-o", "");
  if (out != "-") return save_atomically(out, *written);
  streams.out << *written;
  return {};
}

}  // namespace

int set_command(const CommandArgs& args, Streams streams) {
  const Result<void> done = set_all(args, streams);
  if (done) return 0;
  streams.err << "burrowline set: " << translated_error(done.error()) << "\n";
  return 2;
}

}  // namespace burrow
