/// sheet, picture and movie: what needs the drawing, but no display.

#include <QString>
#include <charconv>
#include <ostream>

#include "burrow/document/text.h"
#include "burrow/sheet/image.h"
#include "burrow/sheet/movie.h"
#include "burrow/sheet/sheet.h"
#include "commands.h"
#include "opened.h"

namespace burrow {

namespace {

Result<double> positive(const std::string& name, const std::string& text, double least, double most) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size() || !(value >= least && value <= most))
    return fail(name, text, "a number from " + exact_text(least) + " to " + exact_text(most));
  return value;
}

Result<QSize> size_of(const std::string& text) {
  const auto x = text.find('x');
  const Result<double> width = positive("--size", text.substr(0, x), 200, 16000);
  const Result<double> height = positive("--size", x == std::string::npos ? "" : text.substr(x + 1), 200, 16000);
  if (!width || !height) return fail("--size", text, "WIDTHxHEIGHT in pixels, for example 1600x900");
  return QSize(static_cast<int>(*width), static_cast<int>(*height));
}

Result<void> write_sheet(const CommandArgs& args) {
  const Result<Options> options = read_options(
      args,
      {{"-o", true}, {"--paper", true}, {"--scale", true}, {"--units", true}, {"--part", true}, {"--record", true}});
  if (!options) return tl::unexpected(options.error());
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.pdf");
  const std::string part = options->value("--part", std::string(word_of(SheetPart::sheet)));
  if (!from_word<SheetPart>(part)) return fail("--part", part, known_words<SheetPart>());
  const Result<Opened> opened = open_one(*options);
  if (!opened) return tl::unexpected(opened.error());
  const Result<UnitSystem> units = sheet_units(*options, opened->crossing);
  if (!units) return tl::unexpected(units.error());
  Sheet sheet{opened->crossing, opened->assessment, opened->tables};
  sheet.units = *units;
  sheet.scale = opened->crossing.sheet.scale.value_or(0);
  const Result<QSizeF> paper =
      paper_size(text_from(options->value("--paper", opened->crossing.sheet.paper.value_or("a3"))));
  if (!paper) return tl::unexpected(paper.error());
  sheet.paper_mm = *paper;
  if (options->has("--scale")) {
    const Result<double> scale = positive("--scale", options->value("--scale", ""), 1, 10000);
    if (!scale) return tl::unexpected(scale.error());
    sheet.scale = *scale;
  }
  sheet.record = options->value("--record", "");
  const QString out = text_from(options->value("-o", ""));
  if (!out.endsWith(QLatin1String(".png"), Qt::CaseInsensitive))
    return write_sheet_pdf(sheet, out, *from_word<SheetPart>(part));
  if (part != word_of(SheetPart::card)) return fail("-o", out.toStdString(), "-o OUT.pdf, or --part card with .png");
  return write_card_png(sheet, out);
}

/// Size, theme, units and ratio.
Result<ImageOptions> image_of(const Options& options, const char* usual_size) {
  ImageOptions asked;
  const Result<UnitSystem> units = units_of(options);
  if (!units) return tl::unexpected(units.error());
  asked.units = *units;
  const Result<QSize> size = size_of(options.value("--size", usual_size));
  if (!size) return tl::unexpected(size.error());
  asked.size = *size;
  const std::string theme = options.value("--theme", "light");
  if (theme != "light" && theme != "dark") return fail("--theme", theme, "light, dark");
  asked.dark = theme == "dark";
  const Result<double> ratio = positive("--ratio", options.value("--ratio", "1"), 0.25, 8);
  if (!ratio) return tl::unexpected(ratio.error());
  asked.ratio = *ratio;
  return asked;
}

Result<void> write_picture(const CommandArgs& args) {
  const Result<Options> options =
      read_options(args, {{"-o", true}, {"--size", true}, {"--theme", true}, {"--units", true}, {"--ratio", true}});
  if (!options) return tl::unexpected(options.error());
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.png");
  const Result<ImageOptions> asked = image_of(*options, "1600x900");
  if (!asked) return tl::unexpected(asked.error());
  const Result<Opened> opened = open_one(*options);
  if (!opened) return tl::unexpected(opened.error());
  return write_image(opened->crossing, opened->assessment, opened->tables, *asked, text_from(options->value("-o", "")));
}

Result<void> write_movie(const CommandArgs& args, std::ostream& told) {
  const Result<Options> options = read_options(args, {{"-o", true},
                                                      {"--size", true},
                                                      {"--theme", true},
                                                      {"--units", true},
                                                      {"--ratio", true},
                                                      {"--speed", true},
                                                      {"--rate", true}});
  if (!options) return tl::unexpected(options.error());
  if (!options->has("-o")) return fail("-o", "nothing", "-o OUT.mp4, OUT.gif, or a folder for pictures");
  const Result<ImageOptions> image = image_of(*options, "1280x720");
  if (!image) return tl::unexpected(image.error());
  MovieOptions asked{*image};
  const Result<double> speed = positive("--speed", options->value("--speed", "60"), 1, 1000);
  if (!speed) return tl::unexpected(speed.error());
  asked.speed = *speed;
  const Result<long> rate = whole_number(*options, "--rate", 25, 1, 60);
  if (!rate) return tl::unexpected(rate.error());
  asked.frames_a_second = static_cast<int>(*rate);
  const Result<Opened> opened = open_one(*options);
  if (!opened) return tl::unexpected(opened.error());
  std::size_t tenths = 0;
  return write_movie(opened->crossing, opened->assessment, opened->tables, asked, text_from(options->value("-o", "")),
                     [&](std::size_t done, std::size_t all) {
                       if (done * 10 / all <= tenths) return;
                       tenths = done * 10 / all;
                       told << tenths * 10 << " %\n" << std::flush;
                     });
}

int end(const char* command, const Result<void>& done, Streams streams) {
  if (done) return 0;
  streams.err << "burrowline " << command << ": " << translated_error(done.error()) << "\n";
  return 2;
}

}  // namespace

int sheet_command(const CommandArgs& args, Streams streams) {
  return end("sheet", write_sheet(args), streams);
}
int movie_command(const CommandArgs& args, Streams streams) {
  return end("movie", write_movie(args, streams.err), streams);
}
int picture_command(const CommandArgs& args, Streams streams) {
  return end("picture", write_picture(args), streams);
}

}  // namespace burrow
