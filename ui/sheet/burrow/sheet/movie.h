#pragma once
/// The bore as it happens, as files: a folder of pictures, or a movie where ffmpeg is installed.

#include <functional>
#include <vector>

#include "burrow/bore/playback.h"
#include "burrow/sheet/image.h"

namespace burrow {

struct MovieOptions {
  ImageOptions image{QSize(1280, 720)};
  double speed = 60;  ///< times as fast as on site
  int frames_a_second = 25;
};

/// Times of the bore that its frames show: from the start to the very end, which then stands for two seconds.
/// Range: speed and rate > 0.   Evidence: Movie.Times_*
std::vector<double> frame_times(const Playback& bore, const MovieOptions& options);

/// `path` ends in .mp4 or .gif, or is a folder for numbered PNG files, which is made. A movie is there whole or not at
/// all. `told`: how many frames of how many are done.
/// Errors: nothing to play, a size, more than 20,000 frames, no ffmpeg, what ffmpeg said, a place that cannot be
/// written, a folder that is not empty.   Evidence: Movie.*
Result<void> write_movie(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const MovieOptions& options, const QString& path,
                         const std::function<void(std::size_t, std::size_t)>& told = {});

}  // namespace burrow
