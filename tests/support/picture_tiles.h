#pragma once
/// Two pictures compared as a person would: by small squares, so that one label that is gone is seen in a large
/// picture, and so that the edges of letters, which another build of the typeface's renderer draws a shade lighter or a
/// pixel aside, are not.

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

namespace burrow {

/// A square of a picture that looks different, and how many of its pixels do.
struct DifferingTile {
  QRect where;
  int pixels = 0;
};

namespace tiles {

constexpr int size_px = 32;
/// Of the 1024 pixels of a square. Measured on the kept picture of the opened window: a digit that is gone makes 45,
/// the word of a label 60 to 130; a drawing a pixel aside at most 6, edges of all letters softer by a tenth none. A
/// share of 30 % of the square, which is 307, would let each of these labels go.
constexpr int allowed_pixels = 12;
/// Of 255, in any of the three colours.
constexpr int allowed_shades = 32;

using Colours = std::array<int, 3>;

inline Colours colours_of(QRgb pixel) {
  return {qRed(pixel), qGreen(pixel), qBlue(pixel)};
}

inline const QRgb* row(const QImage& picture, int y) {
  return reinterpret_cast<const QRgb*>(picture.constScanLine(y));
}

/// Whether a colour lies within those that the other picture has there and one pixel around.
inline bool like_around(QRgb pixel, const QImage& other, int x, int y) {
  Colours least{255, 255, 255}, most{0, 0, 0};
  for (int v = std::max(0, y - 1); v <= std::min(other.height() - 1, y + 1); ++v)
    for (int u = std::max(0, x - 1); u <= std::min(other.width() - 1, x + 1); ++u) {
      const Colours there = colours_of(row(other, v)[u]);
      for (std::size_t i = 0; i < there.size(); ++i) {
        least[i] = std::min(least[i], there[i]);
        most[i] = std::max(most[i], there[i]);
      }
    }
  const Colours mine = colours_of(pixel);
  for (std::size_t i = 0; i < mine.size(); ++i)
    if (mine[i] < least[i] - allowed_shades || mine[i] > most[i] + allowed_shades) return false;
  return true;
}

}  // namespace tiles

/// The squares that look different; where the sizes differ, the whole.   Evidence: PictureTiles.*
inline std::vector<DifferingTile> differing_tiles(const QImage& kept, const QImage& now) {
  if (kept.size() != now.size()) return {{kept.rect().united(now.rect()), kept.width() * kept.height()}};
  const QImage a = kept.convertToFormat(QImage::Format_RGB32), b = now.convertToFormat(QImage::Format_RGB32);
  std::vector<DifferingTile> found;
  for (int top = 0; top < a.height(); top += tiles::size_px)
    for (int left = 0; left < a.width(); left += tiles::size_px) {
      DifferingTile tile{QRect(left, top, tiles::size_px, tiles::size_px).intersected(a.rect())};
      for (int y = tile.where.top(); y <= tile.where.bottom(); ++y)
        for (int x = left; x <= tile.where.right(); ++x) {
          const QRgb p = tiles::row(a, y)[x], q = tiles::row(b, y)[x];
          if (p != q && !(tiles::like_around(p, b, x, y) && tiles::like_around(q, a, x, y))) ++tile.pixels;
        }
      if (tile.pixels > tiles::allowed_pixels) found.push_back(tile);
    }
  return found;
}

/// The picture with a frame around each of these squares, for whoever looks.
inline QImage with_frames(const QImage& picture, const std::vector<DifferingTile>& found) {
  QImage framed = picture.convertToFormat(QImage::Format_RGB32);
  QPainter painter(&framed);
  painter.setPen(QPen(Qt::magenta, 2));
  for (const DifferingTile& tile : found) painter.drawRect(tile.where);
  return framed;
}

}  // namespace burrow
