#include "burrow/drawing/line_icon.h"

#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QPalette>
#include <QSvgRenderer>
#include <algorithm>
#include <map>
#include <memory>

#include "burrow/drawing/theme.h"

namespace burrow {

namespace {

constexpr double disabled_strength = 0.42;

/// Read once in each thread; empty where there is none of that name.
const QByteArray& drawing_of(const QString& name) {
  thread_local std::map<QString, QByteArray> read;
  const auto [at, fresh] = read.try_emplace(name);
  if (fresh) {
    register_typeface();  // the icons lie beside it
    QFile file(QStringLiteral(":/icons/%1.svg").arg(name));
    if (file.open(QIODevice::ReadOnly)) at->second = file.readAll();
  }
  return at->second;
}

QSvgRenderer& renderer_of(const QString& name, const QColor& colour) {
  thread_local std::map<std::pair<QString, QRgb>, std::unique_ptr<QSvgRenderer>> made;
  std::unique_ptr<QSvgRenderer>& renderer = made[{name, colour.rgb()}];
  if (!renderer) {
    QByteArray drawing = drawing_of(name);
    drawing.replace("currentColor", colour.name().toLatin1());
    renderer = std::make_unique<QSvgRenderer>(drawing);
  }
  return *renderer;
}

class LineIconEngine : public QIconEngine {
 public:
  explicit LineIconEngine(QString name) : name_(std::move(name)) {}

  void paint(QPainter* painter, const QRect& box, QIcon::Mode mode, QIcon::State state) override {
    const QPalette palette = QGuiApplication::palette();
    const QColor colour = mode == QIcon::Selected ? palette.color(QPalette::HighlightedText)
                          : state == QIcon::On    ? palette.color(QPalette::Link)
                                                  : palette.color(QPalette::Active, QPalette::WindowText);
    painter->save();
    if (mode == QIcon::Disabled) painter->setOpacity(painter->opacity() * disabled_strength);
    paint_line_icon(*painter, box, name_, colour);
    painter->restore();
  }

  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap pixels(size);
    pixels.fill(Qt::transparent);
    QPainter painter(&pixels);
    paint(&painter, QRect(QPoint(), size), mode, state);
    return pixels;
  }

  [[nodiscard]] QIconEngine* clone() const override { return new LineIconEngine(name_); }
  bool isNull() override { return drawing_of(name_).isEmpty(); }

 private:
  QString name_;
};

}  // namespace

QIcon line_icon(const QString& name) {
  return QIcon(new LineIconEngine(name));
}

void paint_line_icon(QPainter& painter, const QRectF& box, const QString& name, const QColor& colour) {
  const double side = std::min(box.width(), box.height());
  QRectF square(0, 0, side, side);
  square.moveCenter(box.center());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  renderer_of(name, colour).render(&painter, square);
  painter.restore();
}

}  // namespace burrow
