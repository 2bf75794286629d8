#include "burrow/sheet/image.h"

#include <QBuffer>
#include <QImageWriter>

#include "burrow/document/text.h"
#include "burrow/drawing/layer_cache.h"
#include "burrow/drawing/played_text.h"
#include "burrow/file/disk.h"
#include "burrow/words/headline.h"

namespace burrow {

QImage render_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const ImageOptions& options, const std::optional<Played>& played, LayerCache* kept) {
  QImage image(options.size * options.ratio, QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(options.ratio);
  Style style;
  style.theme = options.dark ? Theme::night() : Theme::light();
  style.units = options.units;
  style.text = 13;
  style.handles = false;
  image.fill(style.theme.panel);

  const double bar = 38;
  const QRectF area(0, bar, options.size.width(), options.size.height() - bar);
  Frame frame;
  lay_out(frame, area, 0.58, lane_sizes(style, area.height()));
  fit(frame, crossing, assessment, true);

  Scene scene{crossing, assessment, tables, frame, style, Interaction{}, kept};
  scene.layers.played = played;
  QPainter painter(&image);
  paint_scene(painter, scene);
  const std::string_view title = verdict_title(assessment.verdict);
  painter.setFont(drawing_font(16, QFont::Bold));
  const QString word = QString::fromUtf8(title.data(), static_cast<qsizetype>(title.size()));
  const QRectF block(0, 0, QFontMetricsF(painter.font()).horizontalAdvance(word) + 32, bar);
  painter.fillRect(QRectF(0, 0, options.size.width(), bar), style.theme.field);
  painter.fillRect(block, style.theme.verdict(assessment.verdict));
  painter.setPen(style.theme.on_verdict(assessment.verdict));
  painter.drawText(block, Qt::AlignCenter, word);
  painter.setFont(drawing_font(14));
  painter.setPen(style.theme.ink);
  QRectF room(block.right() + 16, 0, options.size.width() - block.right() - 32, bar);
  if (played && played->bore) {
    const QString time = played_text(*played->bore, played->time_s, options.units);
    painter.drawText(room, Qt::AlignVCenter | Qt::AlignRight, time);
    room.setRight(room.right() - QFontMetricsF(painter.font()).horizontalAdvance(time) - 24);
  }
  const QString sentence = text_from(headline(assessment, options.units));
  painter.drawText(room, Qt::AlignVCenter | Qt::AlignLeft,
                   QFontMetricsF(painter.font()).elidedText(sentence, Qt::ElideRight, room.width()));
  return image;
}

Result<void> fit_for_a_picture(const ImageOptions& options) {
  const QSizeF pixels = QSizeF(options.size) * options.ratio;
  if (options.ratio > 0 && options.size.width() >= 200 && options.size.height() >= 200 && pixels.width() <= 16000 &&
      pixels.height() <= 16000)
    return {};
  return fail("size",
              QStringLiteral("%1x%2 at ratio %3")
                  .arg(options.size.width())
                  .arg(options.size.height())
                  .arg(options.ratio)
                  .toStdString(),
              "200 to 16000 pixels a side, for example 1600x900");
}

Result<QByteArray> png_of(const QImage& image) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QImageWriter writer(&buffer, "png");
  if (!writer.write(image)) return fail("png", writer.errorString().toStdString(), "more memory");
  return bytes;
}

Result<void> write_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const ImageOptions& options, const QString& path) {
  if (Result<void> fits = fit_for_a_picture(options); !fits) return fits;
  const Result<QByteArray> bytes = png_of(render_image(crossing, assessment, tables, options));
  if (!bytes) return tl::unexpected(bytes.error());
  return save_atomically(path.toStdString(),
                         std::string_view(bytes->constData(), static_cast<std::size_t>(bytes->size())));
}

}  // namespace burrow
