#include "burrow/sheet/image.h"

#include <QBuffer>
#include <QImageWriter>

#include "burrow/check/headline.h"
#include "burrow/file/disk.h"

namespace burrow {

QImage render_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const ImageWish& wish) {
  QImage image(wish.size * wish.ratio, QImage::Format_ARGB32_Premultiplied);
  image.setDevicePixelRatio(wish.ratio);
  Look look;
  look.theme = wish.dark ? Theme::night() : Theme::light();
  look.units = wish.units;
  look.text = 13;
  look.handles = false;
  image.fill(look.theme.panel);

  const double bar = 38;
  const QRectF area(0, bar, wish.size.width(), wish.size.height() - bar);
  Frame frame;
  lay_out(frame, area, 0.58, gutter_width(look), ruler_height(look));
  fit(frame, crossing, assessment, look.text * 9.5);

  QPainter painter(&image);
  paint_picture(painter, Picture{crossing, assessment, tables, frame, look, Focus{}});
  const std::string_view title = verdict_title(assessment.verdict);
  painter.setFont(drawing_font(16, QFont::Bold));
  const QString word = QString::fromUtf8(title.data(), static_cast<qsizetype>(title.size()));
  const QRectF block(0, 0, QFontMetricsF(painter.font()).horizontalAdvance(word) + 32, bar);
  painter.fillRect(QRectF(0, 0, wish.size.width(), bar), look.theme.field);
  painter.fillRect(block, look.theme.verdict(assessment.verdict));
  painter.setPen(look.theme.on_verdict(assessment.verdict));
  painter.drawText(block, Qt::AlignCenter, word);
  painter.setFont(drawing_font(14));
  painter.setPen(look.theme.ink);
  const QRectF room(block.right() + 16, 0, wish.size.width() - block.right() - 32, bar);
  const QString sentence = QString::fromStdString(headline(assessment, wish.units));
  painter.drawText(room, Qt::AlignVCenter | Qt::AlignLeft,
                   QFontMetricsF(painter.font()).elidedText(sentence, Qt::ElideRight, room.width()));
  return image;
}

Result<void> write_image(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                         const ImageWish& wish, const QString& path) {
  const QSizeF pixels = QSizeF(wish.size) * wish.ratio;
  if (!(wish.ratio > 0) || wish.size.width() < 200 || wish.size.height() < 200 || pixels.width() > 16000 ||
      pixels.height() > 16000)
    return fail("size",
                QStringLiteral("%1x%2 at ratio %3")
                    .arg(wish.size.width())
                    .arg(wish.size.height())
                    .arg(wish.ratio)
                    .toStdString(),
                "200 to 16000 pixels a side, for example 1600x900");
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QImageWriter writer(&buffer, "png");
  if (!writer.write(render_image(crossing, assessment, tables, wish)))
    return fail(path.toStdString(), writer.errorString().toStdString(), "more memory");
  return save_atomically(path.toStdString(),
                         std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

}  // namespace burrow
