/// make: a crossing for each line of a table.

#include <algorithm>
#include <filesystem>
#include <ostream>
#include <set>

#include "burrow/file/changed_values.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "csv_table.h"
#include "options.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

constexpr const char* name_column = "file";

/// Where the crossings come from and go to.
struct Making {
  CsvContent table;
  ChangedValues pattern;
  fs::path folder;
  std::string stem;  ///< of names that the table does not give
  bool force = false;
};

tl::unexpected<Error> at_file(const std::string& file, Error error) {
  error.place = error.place.empty() ? Phrase(file) : phrase("{}: {}", file, error.place);
  return tl::unexpected(std::move(error));
}

/// A name within the folder, with its ending.
Result<std::string> file_name(const Making& making, const CsvRow& row, std::size_t number) {
  const auto column = std::find(making.table.names.begin(), making.table.names.end(), name_column);
  if (column == making.table.names.end()) {
    std::string digits = std::to_string(number + 1);
    digits.insert(
        0, std::max<std::size_t>(std::to_string(making.table.rows.size()).size(), digits.size()) - digits.size(), '0');
    return making.stem + "-" + digits + ".crossing";
  }
  std::string name = row.cells[static_cast<std::size_t>(column - making.table.names.begin())];
  if (name.empty() || name.front() == '.' || name.find_first_of(std::string("/\\\0", 3)) != std::string::npos)
    return fail(name_column, name.empty() ? Phrase(translatable("nothing")) : Phrase(name),
                translatable("a file's name, without a folder and without a dot in front"));
  if (!name.ends_with(".crossing")) name += ".crossing";
  return name;
}

Result<std::string> make_one(const Making& making, const CsvRow& row, std::size_t number, std::set<std::string>& used) {
  const std::size_t wanted = making.table.names.size();
  if (row.cells.size() != wanted)
    return fail("", phrase_count("one cell", "{} cells", row.cells.size()),
                phrase_count("one cell, as many as names", "{} cells, as many as names", wanted));
  const Result<std::string> name = file_name(making, row, number);
  if (!name) return tl::unexpected(name.error());
  if (!used.insert(*name).second) return fail(name_column, *name, translatable("a name that no other line has"));
  std::vector<NewValue> values;
  for (std::size_t i = 0; i < wanted; ++i)
    if (making.table.names[i] != name_column) values.push_back({making.table.names[i], row.cells[i]});
  const Result<std::string> text = making.pattern.with(values, EmptyText::not_known);
  if (!text) return tl::unexpected(text.error());
  const fs::path path = making.folder / *name;
  std::error_code ignored;
  if (!making.force && fs::exists(fs::symlink_status(path, ignored)))
    return fail(path.string(), translatable("a file that is there"), translatable("--force to replace it"));
  const Result<void> saved = save_atomically(path.string(), *text);
  if (!saved) return tl::unexpected(saved.error());
  return path.string();
}

Result<Making> prepare(const Options& options, const Tables& tables, std::ostream& err) {
  const std::string &table = options.files[0], &pattern = options.files[1];
  const Result<std::string> table_text = read_text_file(table);
  if (!table_text) return tl::unexpected(table_text.error());
  Result<CsvContent> content = read_csv_content(*table_text);
  if (!content) return at_file(table, content.error());
  if (content->rows.empty())
    return at_file(table, Error{"", translatable("no line below the names"), translatable("a line for each crossing")});
  const Result<std::string> pattern_text = read_text_file(pattern);
  if (!pattern_text) return tl::unexpected(pattern_text.error());
  Result<ChangedValues> changed = ChangedValues::open(*pattern_text, tables);
  if (!changed) return at_file(pattern, changed.error());
  const std::vector<std::string> left_out = changed->leave_out_evidence();
  for (const std::string& name : content->names)
    if (name != name_column)
      if (const Result<void> known = changed->check(name); !known)
        return at_file(table, Error{known.error().place, known.error().found, known.error().expected});
  if (!left_out.empty()) {
    std::string all;
    for (const std::string& pointer : left_out) all += (all.empty() ? "" : ", ") + pointer;
    err << say("not taken over, since it was established at the place of {}: {}", pattern, all) << "\n";
  }
  const fs::path folder = options.value("-o", "");
  std::error_code failed;
  fs::create_directories(folder, failed);
  if (!fs::is_directory(folder, failed))
    return fail("-o", folder.string(), translatable("a folder that is there or can be made"));
  return Making{std::move(*content), std::move(*changed), folder, fs::path(pattern).stem().string(),
                options.has("--force")};
}

}  // namespace

int make_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline make: " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {{"-o", true}, {"--force", false}});
  if (!options) return refuse(options.error());
  if (options->files.size() != 2)
    return refuse(Error{"", std::to_string(options->files.size()) + " files", "TABLE.csv TEMPLATE.crossing"});
  if (!options->has("-o")) return refuse(Error{"-o", "nothing", "-o FOLDER"});
  const Tables tables = load_tables();
  const Result<Making> making = prepare(*options, tables, streams.err);
  if (!making) return refuse(making.error());
  std::set<std::string> used;
  std::size_t made = 0;
  const auto& rows = making->table.rows;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Result<std::string> one = make_one(*making, rows[i], i, used);
    if (one) {
      ++made;
      streams.out << *one << "\n";
    } else {
      streams.err << say("{} line {}: {}", options->files[0], rows[i].line, translated_error(one.error())) << "\n";
    }
  }
  streams.err << say_count("{} crossing made", "{} crossings made", made);
  if (made < rows.size())
    streams.err << ", " << say_count("{} line without one", "{} lines without one", rows.size() - made);
  streams.err << "\n";
  return made == rows.size() ? 0 : 2;
}

}  // namespace burrow
