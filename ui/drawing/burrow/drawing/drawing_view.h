#pragma once
/// The drawing on the screen: side elevation above, plan below, one station ruler between them. Everything on it can be
/// picked, dragged, nudged and typed. It reads the document's values and emits edits; it computes nothing.

#include <QAbstractScrollArea>
#include <QElapsedTimer>
#include <QImage>
#include <functional>
#include <memory>
#include <optional>

#include "burrow/document/document.h"
#include "burrow/drawing/glide.h"
#include "burrow/drawing/layer_cache.h"
#include "burrow/drawing/move.h"
#include "burrow/drawing/readout.h"
#include "burrow/drawing/scene.h"
#include "burrow/drawing/sketch.h"

class QCursor;
class QTimer;

namespace burrow {

/// Another layout of the crossing, drawn dashed behind the one in force.
struct GhostLayout {
  Crossing crossing;
  Assessment assessment;
};

class DrawingView : public QAbstractScrollArea {
  Q_OBJECT

 public:
  explicit DrawingView(Document& document, QWidget* parent = nullptr);
  ~DrawingView() override;

  [[nodiscard]] const Style& style() const { return style_; }
  void set_theme(const Theme& theme);
  void set_units(UnitSystem units);
  [[nodiscard]] double exaggeration() const { return frame_.exaggeration; }
  void set_exaggeration(double times);
  /// Heights are exaggerated as far as the levels worth showing fit, chosen anew whenever the whole bore is shown.
  void set_automatic_heights();
  [[nodiscard]] bool automatic_heights() const { return automatic_heights_; }
  [[nodiscard]] const Frame& frame() const { return frame_; }

  /// Too low for both views: side elevation and plan take turns.
  [[nodiscard]] bool one_at_a_time() const;
  [[nodiscard]] Views views() const;
  /// The other of the two, where they take turns.
  void swap_views();

  /// What is shown on demand.
  [[nodiscard]] const VisibleLayers& layers() const { return layers_; }
  /// Why the tool turns: a strip under the side elevation.
  void set_turning_strip(bool on);
  [[nodiscard]] bool turning_strip() const { return layers_.turning; }
  /// The level at which a level tool runs straight.
  void set_neutral_line(bool on);
  [[nodiscard]] bool neutral_line() const { return layers_.neutral_line; }
  /// Where owners' rules let neither bore nor pit be.
  void set_zones(bool on);
  [[nodiscard]] bool zones() const { return layers_.zones; }
  /// Lines with a number and a grip: length, depths, cover, gap, floor.
  void set_dimensions(bool on);
  [[nodiscard]] bool dimensions() const { return layers_.dimensions; }
  /// Those on the screen now.
  [[nodiscard]] std::vector<DimensionLine> dimension_lines_shown();
  /// The dimension line that is picked by click or key.
  [[nodiscard]] const std::optional<MeasureRef>& picked_measure() const { return focus_.measure; }
  /// How the surface rises over the bore: profile and lines of equal rise.
  void set_rise(bool on);
  [[nodiscard]] bool rise() const { return layers_.rise; }
  /// The paths of the random trials, once there are some.
  void set_cloud(bool on);
  [[nodiscard]] bool cloud() const { return layers_.cloud; }
  /// The trials must live until the next call; to be called whenever they change, and with `current` false once the
  /// crossing is no longer theirs. Another crossing takes them away.
  void set_trials(const Trials* trials, bool current);
  /// The pit by which a stuck tool would be dug out. Another crossing takes it away.
  void set_rescue(std::optional<PitShape> pit);
  /// The bore as read on the day, and the truth of a practice bore. Another crossing takes both away.
  void set_read_path(std::optional<ReadPath> read);
  void set_truth(std::optional<TrueLine> truth);
  /// A bore as it happens; none takes it away, and so does another crossing.
  void set_played(std::optional<Played> played);
  /// The bore with something set wrong. Heights that are automatic grow until its miss can be seen, and are as they
  /// were once it is gone.
  void set_tried(std::shared_ptr<const BorePath> tried);

  /// Path and pits of another layout; none takes it away. Another crossing does too.
  void set_ghost_layout(std::shared_ptr<const GhostLayout> ghost);
  /// A section across the line; its station follows the pointer.
  void set_across(bool on);
  [[nodiscard]] bool across() const { return layers_.across_station_m.has_value(); }

  /// The whole bore at once; `glide_to_fit` the same smoothly.
  void zoom_to_fit();
  void glide_to_fit();
  void zoom_by(double factor);
  /// These stations fill the width; heights and offsets in the middle stay.
  void show_stations(double from_m, double to_m, bool smoothly);
  /// How long a glide takes, 0: at once; tests set their own clock. Never during a drag; any input ends it.
  void set_glide(int milliseconds, std::function<qint64()> clock = {});
  [[nodiscard]] bool gliding() const { return gliding_; }
  /// One frame of a glide under way.
  void step_glide();
  [[nodiscard]] const ItemRef& picked() const { return focus_.picked; }
  void pick(const ItemRef& part);
  /// Two or more things picked at once; fewer pick one, or none.
  void pick_several(std::vector<ItemRef> parts);
  [[nodiscard]] const std::vector<ItemRef>& several() const { return focus_.several; }
  /// The picked thing, or the several.
  [[nodiscard]] std::vector<ItemRef> all_picked() const;
  /// Brings what is picked into view.
  void show_picked();
  /// Texts as they stand on the screen; placed anew where nothing was painted yet.
  [[nodiscard]] std::shared_ptr<const Labels> labels();
  /// Brings the place of a finding into view and marks its flag.
  void go_to_finding(int index);
  /// In the order in which N and P, and screen readers, walk them.
  [[nodiscard]] std::vector<ItemRef> items() const;
  [[nodiscard]] QString item_name(const ItemRef& part) const;
  /// "axis level 100.95 m, depth at face 1.33 m": what a person who does not see it is told.
  [[nodiscard]] QString item_numbers(const ItemRef& part) const;
  /// What lies under a point: for its menu.
  struct Under {
    ItemRef part;
    int finding = -1;                   ///< of a flag or dot
    std::optional<MeasureRef> measure;  ///< of a dimension line
    std::optional<double> station_m;    ///< within the views
  };
  [[nodiscard]] Under under(const QPointF& at);
  /// Where a part's grip or mark stands in the viewport, for typing beside it.
  [[nodiscard]] QPointF place_of(const ItemRef& part);
  [[nodiscard]] bool dragging() const { return session_ != nullptr; }
  /// Ends what is under way: a nudge counts, a drag and what is being drawn go back.
  void settle();
  /// From now on clicks draw a thing, until it is finished or Esc. `soil`: of a stratum.   Evidence: Sketch.*
  void begin_sketch(SketchKind kind, const std::string& soil = {});
  [[nodiscard]] const Sketch* sketch() const { return sketch_.get(); }
  /// Its first point, as a click there would set it.
  void sketch_at(const QPointF& at);
  /// One more point on the line that lies there: of ground, stratum, water; a bend, a corner. False: no line is there.
  bool add_point(const ItemRef& line, const QPointF& at);

  bool event(QEvent* event) override;

 Q_SIGNALS:
  void picked_changed();
  void finding_picked(int index);
  /// "station 12.30 m · level 101.02 m · 1.21 m deep", empty outside the panes.
  void pointer_moved(const QString& where);
  /// Something is being dragged: what that does to the numbers, once a frame; then that it is over.
  void readout_changed(const burrow::Readout& readout);
  void readout_ended();
  /// It shows another stretch, or looks otherwise: told at most once a frame.
  void view_changed();
  /// The chip that says how much heights are exaggerated was clicked, there.
  void heights_wanted(const QPoint& at);
  /// The right button without a drag, the Menu key: what can be done there.
  void menu_wanted(const QPoint& at);
  /// Double-click or Enter: the value is to be typed at this place of the viewport.
  void typing_wanted(const QPoint& at);
  /// Space, pressed and let go without a drag.
  void play_wanted();
  /// "," and ".": a mark back or on.
  void step_wanted(int marks);
  /// The name in one of the lanes, double-clicked: it is to be typed there.
  void rename_wanted(const burrow::ItemRef& part);
  /// Drawn and entered.
  void sketch_done(const burrow::ItemRef& part);
  /// What was not done, and why: for the status line.
  void refused(const QString& why);
  /// Enter with several things picked.
  void several_typing_wanted();
  /// The same for a dimension line.
  void measure_typing_wanted(const MeasureRef& measure, const QPoint& at);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  enum class Gesture { none, waiting, part, pan, split, tape, measure, held, box };

  [[nodiscard]] Scene scene();
  void lay_out_again();
  void choose_flag_rows();
  [[nodiscard]] qint64 now_ms() const;
  [[nodiscard]] Frame goal() const;
  void glide_to(const Frame& to);
  void stop_glide();
  void interrupt_glide(int key = 0);  ///< stays where it has come to
  void bring_into_view(double station_m, std::optional<double> elevation_m, std::optional<double> offset_m);
  void schedule();      ///< one step of the gesture and one repaint per frame
  void step_gesture();  ///< applies the newest pointer position
  [[nodiscard]] Move move_in(Pane pane);
  void show_pointer(const QPointF& at);
  void start_tape(const QPointF& at);
  void pull_tape(const QPointF& at);
  void hover(const QPointF& at);
  [[nodiscard]] int finding_at(const QPointF& at);
  [[nodiscard]] QString tip_at(const QPointF& at, const ItemRef& under);
  [[nodiscard]] Readout readout() const;
  [[nodiscard]] std::optional<double> dragged_level();
  void report_pointer();  ///< the numbers of the strip and the words of the ruler beside the pointer
  void cancel_gesture();
  void show_miss();
  void paint_pixels(const Scene& now);
  void finish_nudge();
  void let_go(Qt::MouseButton button);
  bool nudge(QKeyEvent* event);
  void pick_next(int direction);
  void tell_screen_reader(bool moved);
  void toggle_picked(const ItemRef& part);
  void take_box();
  void forget_gone();  ///< what the crossing no longer holds is not picked
  bool press_dimension(const QPointF& at);
  void start_dimension();
  void pull_dimension();
  void pick_next_dimension(int direction);
  bool type_dimension(const QPointF& at);
  [[nodiscard]] double snap_step(Qt::KeyboardModifiers modifiers) const;
  void press_part(const QPointF& at);
  void start_moving();
  void move_parts(const QPointF& to);
  [[nodiscard]] bool picked_already(const ItemRef& part) const;
  [[nodiscard]] Edit moved_now(const Crossing& before, const Move& move) const;
  [[nodiscard]] QString step_now() const;
  bool press_sketch(QMouseEvent* event);
  void release_sketch();
  bool key_sketch(QKeyEvent* event);
  void end_sketch();
  void drop_sketch();
  void tell_sketch();
  [[nodiscard]] SketchPoint sketch_point(const QPointF& at) const;
  [[nodiscard]] QCursor cursor_for(const ItemRef& part, const QPointF& at);

  Document& document_;
  Style style_;
  Frame frame_;
  Interaction focus_;
  VisibleLayers layers_;
  LayerCache layer_cache_;
  QImage pixels_;  ///< of the last frame
  std::optional<Frame> frame_before_tried_;
  double split_ = 0.58;
  bool plan_shown_ = false;  ///< of the two that take turns
  bool fitted_ = false;      ///< until the user zooms or pans, resizing fits again
  Gesture gesture_ = Gesture::none;
  QPointF press_at_;
  QPointF last_at_;
  bool pointer_here_ = false;
  Qt::KeyboardModifiers modifiers_;
  Frame press_frame_;
  bool scheduled_ = false;
  std::unique_ptr<EditSession> session_;
  std::shared_ptr<const GhostLayout> ghost_layout_;
  std::vector<SnapLine> snap_lines_;  ///< of the drag under way
  ItemRef shift_pressed_;             ///< under Shift and the button: a click adds it, a drag moves it
  bool box_adds_ = false;
  bool space_down_ = false;
  bool space_pans_ = false;                       ///< something was dragged while it was down
  std::shared_ptr<const Labels> painted_labels_;  ///< as they stand on the screen
  std::shared_ptr<const Labels> last_labels_;     ///< of the last frame painted, while something is dragged
  Frame last_frame_;
  bool automatic_heights_ = true;
  int flag_rows_ = 1;                  ///< of the lane of findings, chosen with the whole bore
  std::optional<DimensionLine> held_;  ///< the dimension line under the button
  ItemRef nudged_;
  std::vector<ItemRef> group_;        ///< that the drag or the held key moves together; empty: one thing alone
  Pane last_pane_ = Pane::elevation;  ///< clicked last: arrow keys move in it
  ItemRef pressed_;                   ///< what lay under the button
  bool was_picked_ = false;           ///< and was selected before
  QString held_words_;                ///< why it does not move, while it is held
  std::unique_ptr<Sketch> sketch_;
  QString sketch_trouble_;
  QTimer* nudge_over_;  ///< a key whose release never came is let go
  Move nudge_move_;
  bool told_readout_ = false;
  bool focus_by_key_ = false;  ///< then a ring shows it
  Frame told_;                 ///< with the last `view_changed`
  bool gliding_ = false;
  Frame glide_from_, glide_to_;
  qint64 glide_start_ms_ = 0;
  int glide_ms_;
  QTimer* glide_timer_;
  QElapsedTimer since_start_;
  std::function<qint64()> clock_;
};

}  // namespace burrow
