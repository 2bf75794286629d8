// Edges of fields, boxes and tracks on dark ground.

#include "burrow/widgets/edge_style.h"

#include <gtest/gtest.h>

#include <QCheckBox>
#include <QComboBox>
#include <QImage>
#include <QLineEdit>
#include <QSlider>
#include <QSpinBox>
#include <QStyleFactory>
#include <QStyleOption>
#include <QVBoxLayout>
#include <memory>

#include "burrow/drawing/theme.h"

namespace burrow {
namespace {

QPalette page_of(const Theme& theme) {
  QPalette colours;
  colours.setColor(QPalette::Window, theme.panel);
  colours.setColor(QPalette::Base, theme.field);
  colours.setColor(QPalette::Button, theme.panel);
  for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    colours.setColor(role, theme.ink);
  return colours;
}

QImage picture_of(QWidget& control, QStyle& style, const QPalette& colours) {
  QWidget page;
  auto* column = new QVBoxLayout(&page);
  column->addWidget(&control);
  page.setPalette(colours);
  control.setStyle(&style);
  control.setPalette(colours);
  page.resize(220, 60);
  page.ensurePolished();
  page.layout()->activate();
  const QImage picture = control.grab().toImage().convertToFormat(QImage::Format_RGB32);
  column->removeWidget(&control);
  control.setParent(nullptr);
  return picture;
}

/// The strongest contrast with the page among the pixels of one row or column at the edge.
double strongest(const QImage& picture, const QColor& page, const QRect& strip) {
  double most = 0;
  for (int y = strip.top(); y <= strip.bottom(); ++y)
    for (int x = strip.left(); x <= strip.right(); ++x)
      most = std::max(most, contrast(QColor(picture.pixel(x, y)), page));
  return most;
}

// WCAG 2.2, 1.4.11 (from memory): 3 to 1 against what is beside it.
TEST(EdgeStyle, Wcag22_DarkEdgesAreSeen) {
  const QPalette dark = page_of(Theme::night());
  const QColor page = dark.color(QPalette::Window);
  EdgeStyle style;
  QLineEdit field;
  QImage picture = picture_of(field, style, dark);
  EXPECT_GE(strongest(picture, page, {10, 0, 1, 2}), 3) << "the upper edge of a field";
  QComboBox choice;
  choice.addItem(QStringLiteral("firm clay"));
  picture = picture_of(choice, style, dark);
  EXPECT_GE(strongest(picture, page, {10, 0, 1, 2}), 3);
  QSpinBox number;
  picture = picture_of(number, style, dark);
  EXPECT_GE(strongest(picture, page, {10, 0, 1, 2}), 3);
  QCheckBox box;
  picture = picture_of(box, style, dark);
  EXPECT_GE(strongest(picture, page, {0, 0, 20, picture.height()}), 3);
  QSlider track(Qt::Horizontal);
  track.setRange(0, 100);
  picture = picture_of(track, style, dark);
  const int middle = picture.height() / 2;
  EXPECT_GE(strongest(picture, page, {picture.width() - 30, middle - 3, 8, 7}), 3) << "far from the handle";
}

// On a light page it is Fusion, pixel by pixel.
TEST(EdgeStyle, Fusion_OnLightGroundNothingIsAdded) {
  const QPalette light = page_of(Theme::light());
  EdgeStyle style;
  const std::unique_ptr<QStyle> fusion(QStyleFactory::create(QStringLiteral("Fusion")));
  QLineEdit field;
  const QImage ours = picture_of(field, style, light), theirs = picture_of(field, *fusion, light);
  EXPECT_EQ(ours, theirs);
}

}  // namespace
}  // namespace burrow
