/// Bringing the pipe in: pulled after, towed behind the tool, or pushed; hole open and hole closed on it.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pipe/along.h"
#include "burrow/pipe/pull_in.h"
#include "pipe_check.h"

namespace burrow {

namespace {

/// The hole piece by piece, with what drags in it. Unknown water: dry friction, and the greater of both weights.
struct Hole {
  std::vector<HolePiece> pieces;
  bool closes = false;  ///< somewhere along it the ground is sand or gravel
  double length_m = 0, wet_m = 0, turn_rad = 0, straight_N = 0, weight_N_m = 0, friction = friction_dry;
  double grip_N_m = 0;  ///< of the ground closed on it, the mean along it
};

/// The path turns so little that longer pieces give the same.
constexpr std::size_t most_pieces = 40;

double arched_at(const CheckRun& run, double station_m) {
  const std::vector<LoadPoint>& loads = run.answer.loads;
  const auto after = std::lower_bound(loads.begin(), loads.end(), station_m,
                                      [](const LoadPoint& p, double x) { return p.station_m < x; });
  if (after == loads.end()) return loads.empty() ? 0 : loads.back().earth_arched_Pa;
  return after == loads.begin() ? after->earth_arched_Pa
                                : std::max(after->earth_arched_Pa, std::prev(after)->earth_arched_Pa);
}

/// Share of the way from a to b at which the axis meets the water table; nothing where it does not.
std::optional<double> water_meets(const Ground& ground, const PathPoint& a, const PathPoint& b) {
  const std::optional<double> water_a = ground.water_m(a.x_m), water_b = ground.water_m(b.x_m);
  if (!water_a || !water_b) return std::nullopt;
  const double over_a = a.z_m - *water_a, over_b = b.z_m - *water_b;
  if (!((over_a < 0) != (over_b < 0))) return std::nullopt;
  return over_a / (over_a - over_b);
}

/// Puts the pieces of a hole together, each wholly above or wholly below the water table.
class HoleInPieces {
 public:
  HoleInPieces(const CheckRun& run, const PipeUnderCheck& pipe, const Floating& one, bool closed)
      : run_(run),
        pipe_(pipe),
        closed_(closed),
        weight_N_m_(one.weight_N_m * pipe.section->count),
        wet_weight_N_m_(std::abs(weight_N_m_ - one.uplift_N_m * pipe.section->count)) {}

  [[nodiscard]] Hole all() {
    const std::vector<PathPoint>& points = run_.answer.bore.points;
    const std::size_t step = 1 + points.size() / most_pieces;
    for (std::size_t i = 0; i + 1 < points.size(); i += step)
      add(points[i], points[std::min(i + step, points.size() - 1)]);
    return std::move(hole_);
  }

 private:
  void add(const PathPoint& a, const PathPoint& b) {
    const double level = std::cos(0.5 * (a.grade_rad + b.grade_rad));
    const double turn_rad = std::hypot(b.grade_rad - a.grade_rad, level * (b.heading_rad - a.heading_rad));
    const auto wet = [&](const PathPoint& p) {
      const std::optional<double> water = pipe_.water_known ? run_.ground.water_m(p.x_m) : std::nullopt;
      return water && *water > p.z_m;
    };
    const auto cut = pipe_.water_known ? water_meets(run_.ground, a, b) : std::nullopt;
    if (!cut) return add_piece(b, b.s_m - a.s_m, turn_rad, wet(b));
    add_piece(b, *cut * (b.s_m - a.s_m), *cut * turn_rad, wet(a));
    add_piece(b, (1 - *cut) * (b.s_m - a.s_m), (1 - *cut) * turn_rad, wet(b));
  }

  void add_piece(const PathPoint& b, double length_m, double turn_rad, bool wet) {
    HolePiece piece;
    piece.length_m = length_m;
    piece.turn_rad = turn_rad;
    piece.weight_N_m =
        pipe_.water_known ? (wet ? wet_weight_N_m_ : weight_N_m_) : std::max(weight_N_m_, wet_weight_N_m_);
    piece.grade_rad = b.grade_rad;
    piece.friction = wet ? friction_wet : friction_dry;
    if (closed_) {
      piece.grip_N_m = arched_at(run_, b.x_m) * pi * *pipe_.widest_m;
      hole_.closes = hole_.closes || run_.ground.soil_at(b.x_m, b.y_m, b.z_m).drained;
    }
    hole_.grip_N_m = (hole_.grip_N_m * hole_.length_m + piece.grip_N_m * piece.length_m) /
                     std::max(1e-9, hole_.length_m + piece.length_m);
    hole_.length_m += piece.length_m;
    hole_.wet_m += wet ? piece.length_m : 0;
    hole_.turn_rad += piece.turn_rad;
    hole_.straight_N += (piece.friction * (piece.weight_N_m * std::cos(piece.grade_rad) + piece.grip_N_m) +
                         piece.weight_N_m * std::abs(std::sin(piece.grade_rad))) *
                        piece.length_m;
    hole_.weight_N_m = std::max(hole_.weight_N_m, piece.weight_N_m);
    hole_.friction = wet ? std::min(hole_.friction, friction_wet) : hole_.friction;
    hole_.pieces.push_back(piece);
  }

  const CheckRun& run_;
  const PipeUnderCheck& pipe_;
  bool closed_;
  double weight_N_m_, wet_weight_N_m_;
  Hole hole_;
};

Hole hole_of(const CheckRun& run, const PipeUnderCheck& pipe, const Floating& one, bool closed) {
  return HoleInPieces(run, pipe, one, closed).all();
}

/// `gripped_m`: diameter on which the ground closes, 0: the hole stands open.
Working of_pull(const Hole& hole, double pull_N, double gripped_m = 0) {
  const bool closed = gripped_m > 0;
  Working working{
      {},
      {},
      closed ? "T = T_drag + T_turn, T_drag = Σ (μ (w cos θ + p π d) + w |sin θ|) ds"
             : "T = T_drag + T_turn, T_drag = Σ (μ w cos θ + w |sin θ|) ds",
      {{"T_drag", hole.straight_N, "N"},
       {"T_turn", pull_N - hole.straight_N, "N"},
       {"L", hole.length_m, "m"},
       {"L_wet", hole.wet_m, "m"},
       {"w", hole.weight_N_m, "N/m"},
       {"μ", hole.friction, ""},
       {"Σ|Δθ|", hole.turn_rad, "rad"}},
      "T",
      0,
      {},
      std::nullopt,
      {closed
           ? translatable(
                 "friction of weight and of the arched ground gripping the pipe all along, e^(μ Δθ) over each turn of "
                 "the predicted path; a planning bound")
           : "friction of the pipe's weight, e^(μ Δθ) over each turn of the predicted path; μ 0.5 dry, 0.3 wet",
       SourceLabel::from_memory}};
  if (closed) {
    working.inputs.push_back({"p", hole.grip_N_m / (pi * gripped_m), "Pa"});
    working.inputs.push_back({"d", gripped_m, "m"});
  }
  return working;
}

class PullingIn {
 public:
  PullingIn(CheckRun& run, const PipeUnderCheck& pipe, const Floating& one, const PullStress& stress)
      : run_(run),
        pipe_(pipe),
        one_(one),
        stress_(stress),
        safe_N_(stress.stress_Pa * pipe.section->area_m2 * pipe.section->count),
        end_(&run.answer.bore.points.back()) {}

  void judge_all() {
    report_safe_pull();
    const Hole open = hole_of(run_, pipe_, one_, false), closed = hole_of(run_, pipe_, one_, true);
    const Result<Force> open_N = pull_force(open.pieces), closed_N = pull_force(closed.pieces);
    if (!open_N || !closed_N)
      return leave_out(run_, "pipe.pull", open_name(), translatable("The path turns beyond what can be pulled."));
    if (*pipe_.pipe.insertion == Insertion::pushed)
      judge_push(open, open_N->N);
    else
      judge_open(open, open_N->N);
    const Limit full = run_.limit("pipe_pull_stop");
    judge_pipe(run_, pipe_,
               {"pipe.pull-closed", translatable("pull-in, the hole closed on it"), closed_N->N, "N", end_,
                closed.closes ? translatable("Sand and gravel close on it soon. Bring it in at once.")
                              : translatable("Where it is left lying until the hole closes: in clay after days.")},
               {full.value * safe_N_, false, Severity::caution, stress_.source, false},
               of_pull(closed, closed_N->N, *pipe_.widest_m));
    judge_hose(open_N->N);
    report_stretch(open_N->N, open.length_m);
  }

 private:
  [[nodiscard]] static std::string_view open_name() { return translatable("pull-in, hole open"); }

  void report_safe_pull() {
    report_pipe(
        run_, pipe_,
        {"pipe.safe-pull", translatable("safe pull on the pipe"), safe_N_, "N", nullptr,
         translatable("By the wall, for the time and temperature entered. Joints and pulling heads may bear less.")},
        {{},
         {},
         "F = n A f_T min(0.40 f_t T_y, σ)",
         {{"n", pipe_.section->count, ""},
          {"A", pipe_.section->area_m2, "m²"},
          {"f_T", stress_.temperature_factor, ""},
          {"f_t", stress_.time_factor, ""},
          {"T_y", pipe_.strength->yield.value_or(Pressure{0}).Pa, "Pa"},
          {"σ", stress_.by_table_Pa, "Pa"}},
         "F",
         0,
         {},
         std::nullopt,
         stress_.source});
  }

  void judge_open(const Hole& hole, double pull_N) {
    const Limit half = run_.limit("pipe_pull_caution"), full = run_.limit("pipe_pull_stop");
    const bool over = !(pull_N <= full.value * safe_N_);
    const PipeLimit limit{(over ? full.value : half.value) * safe_N_, false, over ? Severity::stop : Severity::caution,
                          over ? stress_.source : half.source};
    judge_pipe(run_, pipe_,
               {"pipe.pull", open_name(), pull_N, "N", end_,
                *pipe_.pipe.insertion == Insertion::towed
                    ? translatable("Towed: the blows shake the coupling behind the tool as well.")
                    : translatable("Against half of the safe pull, since the path is not known exactly.")},
               limit, of_pull(hole, pull_N));
  }

  void judge_push(const Hole& hole, double push_N) {
    constexpr std::string_view code = "pipe.push";
    const std::string_view name = translatable("push-in, hole open");
    const double bore = pipe_.section->bore_m(), d = pipe_.section->diameter_m;
    const auto modulus_Pa = modulus(*pipe_.strength, *pipe_.pipe.pull_time, *pipe_.pipe.temperature);
    if (!modulus_Pa) return leave_out(run_, code, name, modulus_Pa.error().line());
    const double inertia_m4 = pi / 64 * (d * d * d * d - bore * bore * bore * bore);
    const double gap_m = (run_.tool.diameter.m - *pipe_.widest_m) / 2, weight = one_.weight_N_m;
    const auto limit_N = push_limit(modulus_Pa->Pa * inertia_m4, weight, Length{gap_m});
    if (!limit_N) return leave_out(run_, code, name, translatable("The hole leaves no room around the pipe."));
    Working working = of_pull(hole, push_N);
    working.inputs.push_back({"E", modulus_Pa->Pa, "Pa"});
    working.inputs.push_back({"r", gap_m, "m"});
    judge_pipe(run_, pipe_,
               {code, name, push_N, "N", end_, translatable("Up to its limit the pipe lies straight in the hole.")},
               {limit_N->N * pipe_.section->count,
                false,
                Severity::caution,
                {"2 √(E I w/r), Dawson & Paslay 1984, a pipe lying in a level hole", SourceLabel::from_memory}},
               std::move(working));
  }

  void judge_hose(double pull_N) {
    if (*pipe_.pipe.insertion != Insertion::pulled_after || *pipe_.pipe.pull_by != PullBy::hose) return;
    constexpr std::string_view code = "pipe.hose";
    const std::string_view name = translatable("pull on the air hose");
    if (!pipe_.pipe.hose_rating) {
      Finding finding;
      finding.code = "pipe.hose-unrated";
      finding.severity = Severity::stop;
      finding.subject = pipe_.subject;
      finding.name = translatable("air hose");
      finding.station_m = end_->x_m;
      finding.source = {"a hose and its couplings carry no haul unless their maker rates them for it",
                        SourceLabel::common_practice};
      run_.add(std::move(finding));
      return leave_out(run_, code, name,
                       translatable("A hose is no tension member unless its maker rates it. Pull by a rope or a rod."));
    }
    judge_pipe(run_, pipe_,
               {code, name, pull_N, "N", end_,
                translatable("Couplings and their restraints are in the maker's rating or not: ask.")},
               {pipe_.pipe.hose_rating->N,
                false,
                Severity::stop,
                {"rating of the hose as entered", SourceLabel::owners_setting}},
               {{},
                {},
                translatable("T as for the open hole"),
                {{"T", pull_N, "N"}},
                "T",
                0,
                {},
                std::nullopt,
                {"the hose bears the whole pull", SourceLabel::derived}});
  }

  void report_stretch(double pull_N, double length_m) {
    const auto modulus_Pa = modulus(*pipe_.strength, *pipe_.pipe.pull_time, *pipe_.pipe.temperature);
    if (!modulus_Pa) return;
    const double area = pipe_.section->area_m2 * pipe_.section->count;
    const auto longer = stretch(Force{pull_N}, Length{length_m}, area, *modulus_Pa);
    if (!longer) return;
    const bool creeps = pipe_.strength->law == PipeLaw::polyethylene;
    report_pipe(
        run_, pipe_,
        {"pipe.stretch", translatable("stretch by the pull"), longer->m, "m", nullptr,
         creeps ? translatable(
                      "Pull 3 to 4 % more pipe through, and let it lie as long as the pull took, usually a day, before "
                      "it is cut and tied in (from memory).")
                : translatable("It springs back when the pull ends.")},
        {{},
         {},
         "ΔL = T L/(n A E)",
         {{"T", pull_N, "N"}, {"L", length_m, "m"}, {"n A", area, "m²"}, {"E", modulus_Pa->Pa, "Pa"}},
         "ΔL",
         0,
         {},
         std::nullopt,
         {"the whole pull all along, which it is only at the end; modulus for the time of the pull",
          SourceLabel::derived}});
  }

  CheckRun& run_;
  const PipeUnderCheck& pipe_;
  Floating one_;
  PullStress stress_;
  double safe_N_;
  const PathPoint* end_;
};

}  // namespace

void check_pipe_pull(CheckRun& run, const PipeUnderCheck& pipe) {
  constexpr std::string_view code = "pipe.pull", name = "pull-in";
  if (run.answer.bore.points.size() < 2) return leave_out(run, code, name, translatable("There is no path."));
  if (!pipe.section || !pipe.widest_m)
    return leave_out(run, code, name, translatable("The wall of the pipe is not known."));
  if (!pipe.strength) return leave_out(run, code, name, translatable("How the material bears is not known."));
  const auto stress = pull_stress(*pipe.strength, *pipe.pipe.pull_time, *pipe.pipe.temperature);
  if (!stress) return leave_out(run, code, name, stress.error().line());
  const auto one = floating(pipe.strength->unit_weight, pipe.section->area_m2, Length{pipe.section->diameter_m});
  if (!one) return;
  PullingIn(run, pipe, *one, *stress).judge_all();
}

}  // namespace burrow
