/// What each part of the drawing costs to paint, on a 1600 × 900 picture with 60 utilities; the baseline is an empty
/// fill.

#include <benchmark/benchmark.h>

#include "burrow/drawing/labels.h"
#include "burrow/drawing/paint_apart.h"
#include "burrow/drawing/scene.h"
#include "support/window_for_tests.h"

namespace {

using namespace burrow;

struct Stage {
  Stage() : crossing(*opened()), assessment(assess(crossing, tables_for_tests())) {
    look.text = 12;
    lay_out(frame, QRectF(0, 0, 1160, 820), 0.58, lane_sizes(look, 820));
    fit(frame, crossing, assessment, true);
    labels = with_labels(bare()).labels;
  }
  static Result<Crossing> opened() {
    Document document(tables_for_tests());
    static_cast<void>(document.open(sample_path("sixty-utilities")));
    return document.crossing();
  }
  [[nodiscard]] Scene bare() const { return {crossing, assessment, tables_for_tests(), frame, look, Interaction{}}; }
  [[nodiscard]] Scene picture() const {
    Scene scene = bare();
    scene.labels = labels;
    return scene;
  }
  Crossing crossing;
  Assessment assessment;
  Style look;
  Frame frame;
  std::shared_ptr<const Labels> labels;
  QImage image{1160, 820, QImage::Format_RGB32};
};

Stage& stage() {
  static Stage all;
  return all;
}

void run(benchmark::State& state, void (*paint)(QPainter&, const Scene&)) {
  Stage& s = stage();
  for (auto _ : state) {
    QPainter painter(&s.image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(drawing_font(s.look.text));
    paint_apart([&] { paint(painter, s.picture()); });  // as the window does
  }
}

#define BURROW_PAINT_BENCH(name)              \
  void name##_part(benchmark::State& state) { \
    run(state, &name);                        \
  }                                           \
  BENCHMARK(name##_part)->Unit(benchmark::kMicrosecond)

void empty_fill(QPainter& painter, const Scene& picture) {
  painter.fillRect(picture.frame.elevation, Qt::white);
}
BURROW_PAINT_BENCH(empty_fill);
BURROW_PAINT_BENCH(paint_ground);
BURROW_PAINT_BENCH(paint_surface);
BURROW_PAINT_BENCH(paint_pits_side);
BURROW_PAINT_BENCH(paint_bore_side);
BURROW_PAINT_BENCH(paint_utilities_side);
BURROW_PAINT_BENCH(paint_plan_base);
BURROW_PAINT_BENCH(paint_utilities_plan);
BURROW_PAINT_BENCH(paint_bore_plan);
BURROW_PAINT_BENCH(paint_pits_plan);
BURROW_PAINT_BENCH(paint_ruler);
BURROW_PAINT_BENCH(paint_axes);
BURROW_PAINT_BENCH(paint_handles);
BURROW_PAINT_BENCH(paint_flags);
BURROW_PAINT_BENCH(paint_side_texts);
BURROW_PAINT_BENCH(paint_utility_chips);
BURROW_PAINT_BENCH(paint_scene);
void placing(QPainter&, const Scene&) {
  benchmark::DoNotOptimize(place_labels(stage().bare()));
}
BURROW_PAINT_BENCH(placing);

}  // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
