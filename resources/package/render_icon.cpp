/// render_icon IN.svg SIZE OUT.png: an icon of one size, for the build.

#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QSvgRenderer>
#include <cstdio>

int main(int argc, char** argv) {
  QGuiApplication app(argc, argv);
  const QStringList args = QGuiApplication::arguments();
  const int size = args.size() == 4 ? args[2].toInt() : 0;
  QSvgRenderer drawing;
  if (size < 1 || size > 4096 || !drawing.load(args[1])) {
    std::fputs("render_icon IN.svg SIZE OUT.png: no such drawing, or no size\n", stderr);
    return 2;
  }
  QImage image(size, size, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  drawing.render(&painter);
  painter.end();
  QDir().mkpath(QFileInfo(args[3]).path());
  if (image.save(args[3])) return 0;
  std::fputs("render_icon: the picture could not be written\n", stderr);
  return 2;
}
