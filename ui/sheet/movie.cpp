#include "burrow/sheet/movie.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>

#include "burrow/bore/tool.h"
#include "burrow/check/predicted_playback.h"
#include "burrow/document/text.h"
#include "burrow/drawing/layer_cache.h"
#include "burrow/file/disk.h"

namespace burrow {

namespace {

constexpr std::size_t most_frames = 20'000;
constexpr double end_stands_s = 2;

QString frame_name(std::size_t number) {
  return QStringLiteral("frame-%1.png").arg(number + 1, 5, 10, QLatin1Char('0'));
}

/// Each frame as a picture of its own in the folder.
Result<void> write_frames(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                          const MovieOptions& options, const std::shared_ptr<const Playback>& bore, const QDir& folder,
                          const std::function<void(std::size_t, std::size_t)>& told) {
  const std::vector<double> times = frame_times(*bore, options);
  LayerCache kept;
  QByteArray last;
  for (std::size_t i = 0; i < times.size(); ++i) {
    if (i == 0 || times[i] != times[i - 1]) {
      const Result<QByteArray> bytes =
          png_of(render_image(crossing, assessment, tables, options.image, Played{bore, times[i], false}, &kept));
      if (!bytes) return tl::unexpected(bytes.error());
      last = *bytes;
    }
    const std::string path = folder.filePath(frame_name(i)).toStdString();
    if (Result<void> saved =
            save_atomically(path, std::string_view(last.constData(), static_cast<std::size_t>(last.size())));
        !saved)
      return saved;
    if (told) told(i + 1, times.size());
  }
  return {};
}

/// By the program that joins pictures, into a file beside them.
Result<void> join(const QString& program, const QDir& folder, const MovieOptions& options, const QString& made) {
  QStringList words{QStringLiteral("-nostdin"),   QStringLiteral("-y"),
                    QStringLiteral("-loglevel"),  QStringLiteral("error"),
                    QStringLiteral("-framerate"), QString::number(options.frames_a_second),
                    QStringLiteral("-i"),         folder.filePath(QStringLiteral("frame-%05d.png")),
                    QStringLiteral("-vf")};
  if (made.endsWith(QStringLiteral(".gif")))
    words << QStringLiteral("split[a][b];[a]palettegen[p];[b][p]paletteuse");
  else  // whole pairs of pixels, as players want them
    words << QStringLiteral("pad=ceil(iw/2)*2:ceil(ih/2)*2") << QStringLiteral("-pix_fmt") << QStringLiteral("yuv420p");
  words << made;
  QProcess process;
  process.setStandardInputFile(QProcess::nullDevice());
  process.start(program, words);
  if (!process.waitForFinished(-1) || process.exitStatus() != QProcess::NormalExit || process.exitCode() != 0)
    return fail("ffmpeg", QString::fromUtf8(process.readAllStandardError()).trimmed().left(400).toStdString(),
                "a movie of the pictures");
  return {};
}

}  // namespace

std::vector<double> frame_times(const Playback& bore, const MovieOptions& options) {
  std::vector<double> times;
  const double step = options.speed / options.frames_a_second, end = bore.end_s();
  for (std::size_t i = 0; static_cast<double>(i) * step < end && times.size() <= most_frames; ++i)
    times.push_back(static_cast<double>(i) * step);
  const auto still = static_cast<std::size_t>(std::lround(end_stands_s * options.frames_a_second));
  times.insert(times.end(), std::max<std::size_t>(still, 1), end);
  return times;
}

Result<void> write_movie(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const MovieOptions& options, const QString& path,
                         const std::function<void(std::size_t, std::size_t)>& told) {
  if (Result<void> fits = fit_for_a_picture(options.image); !fits) return fits;
  const auto bore =
      std::make_shared<const Playback>(predicted_playback(assessment, resolve_tool(crossing.bore.tool, tables)));
  if (bore->empty()) return fail("bore", "nothing to play", "a path, and a tool and soil whose pace is known");
  const std::size_t frames = frame_times(*bore, options).size();
  if (frames > most_frames)
    return fail("--speed", std::to_string(frames) + " frames",
                "at most " + std::to_string(most_frames) + " frames: a higher speed or fewer frames a second");
  const QString ending = QFileInfo(path).suffix().toLower();
  if (ending.isEmpty()) {
    const QDir folder(path);
    if (folder.exists() && !folder.isEmpty())
      return fail(path.toStdString(), "a folder that is not empty", "a new or an empty folder");
    if (!QDir().mkpath(path)) return fail(path.toStdString(), "cannot be made", "a folder that can be written");
    return write_frames(crossing, assessment, tables, options, bore, folder, told);
  }
  if (ending != QStringLiteral("mp4") && ending != QStringLiteral("gif"))
    return fail("-o", path.toStdString(), "OUT.mp4, OUT.gif, or a folder for pictures");
  const QString program = QStandardPaths::findExecutable(QStringLiteral("ffmpeg"));
  if (program.isEmpty())
    return fail("-o", path.toStdString() + ": ffmpeg is not installed",
                "ffmpeg (Debian: apt-get install ffmpeg), or a folder for pictures");
  const QTemporaryDir work;
  if (!work.isValid()) return fail("movie", work.errorString().toStdString(), "room for the pictures");
  const QDir folder(work.path());
  if (Result<void> written = write_frames(crossing, assessment, tables, options, bore, folder, told); !written)
    return written;
  const QString made = folder.filePath(QStringLiteral("bore.") + ending);
  if (Result<void> joined = join(program, folder, options, made); !joined) return joined;
  QFile file(made);
  if (!file.open(QIODevice::ReadOnly)) return fail("ffmpeg", file.errorString().toStdString(), "a movie");
  const QByteArray bytes = file.readAll();
  if (bytes.isEmpty()) return fail("ffmpeg", "an empty file", "a movie");
  return save_atomically(path.toStdString(),
                         std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

}  // namespace burrow
