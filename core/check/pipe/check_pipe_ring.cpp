/// The ring of the pipe under ground, traffic and water, once before and once after the ground has closed on it.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pipe/ring.h"
#include "pipe_check.h"

namespace burrow {

namespace {

struct RingPlace {
  const LoadPoint* load = nullptr;
  double value = 0, limit = 0, used = -1;
};

class RingUnderLoad {
 public:
  RingUnderLoad(CheckRun& run, const PipeUnderCheck& pipe, double long_Pa, double short_Pa)
      : run_(run),
        pipe_(pipe),
        long_{pipe.section->ratio, long_Pa, pipe.strength->poisson_ratio.v},
        deep_(safety_of("pipe_buckling_safety")),
        shallow_(safety_of("pipe_buckling_safety_shallow")) {
    short_ = long_;
    short_.modulus_Pa = short_Pa;
    for (const PathPoint* p : pipe.places)
      soil_moduli_.push_back(soil_support_modulus(run.ground.soil_at(p->x_m, p->y_m, p->z_m)));
  }

  void judge_all() {
    judge_deflection(false);
    judge_deflection(true);
    judge_compression();
    judge_buckling_bare();
    judge_buckling();
    judge_pressure();
  }

 private:
  /// Deflection by ground that lasts and traffic that passes.
  [[nodiscard]] double deflection(const LoadPoint& load, bool supported) const {
    const Pressure earth{supported ? load.earth_Pa : load.earth_arched_Pa}, live{load.live_Pa};
    const Pressure soil = soil_modulus(load);
    const auto by_earth = supported ? supported_deflection(long_, earth, soil) : bare_deflection(long_, earth);
    const auto by_live = supported ? supported_deflection(short_, live, soil) : bare_deflection(short_, live);
    return by_earth && by_live ? by_earth->v + by_live->v : 0;
  }

  [[nodiscard]] Pressure soil_modulus(const LoadPoint& load) const {
    return soil_moduli_[static_cast<std::size_t>(&load - run_.answer.loads.data())];
  }

  template <class Value>
  [[nodiscard]] RingPlace worst(Value value_and_limit) const {
    RingPlace worst;
    for (const LoadPoint& load : run_.answer.loads) {
      const auto [value, limit] = value_and_limit(load);
      if (limit > 0 && value / limit > worst.used) worst = {&load, value, limit, value / limit};
    }
    return worst;
  }

  [[nodiscard]] Limit deflection_limit() const {
    const bool pressed = pipe_.pipe.operating_pressure->Pa > 0;
    const DeflectionRow* row = deflection_row(*pipe_.strength, long_.ratio);
    if (pressed && row) return {row->share.v, false, row->source};
    return {pipe_.strength->deflection_free.v, false, pipe_.strength->source};
  }

  void judge_deflection(bool supported) {
    const Limit limit = deflection_limit();
    const RingPlace w =
        worst([&](const LoadPoint& load) { return std::pair(deflection(load, supported), limit.value); });
    if (!w.load) return;
    const double earth = supported ? w.load->earth_Pa : w.load->earth_arched_Pa;
    std::vector<WorkingInput> inputs{{"P_ground", earth, "Pa"},
                                     {"P_traffic", w.load->live_Pa, "Pa"},
                                     {"T_service", pipe_.in_service().K, "K"},
                                     {"E_long", long_.modulus_Pa, "Pa"},
                                     {"E_short", short_.modulus_Pa, "Pa"},
                                     {"DR", long_.ratio, ""}};
    if (supported) inputs.push_back({"E′", soil_modulus(*w.load).Pa, "Pa"});
    judge_pipe(
        run_, pipe_,
        {supported ? "pipe.deflection" : "pipe.deflection-bare",
         supported ? translatable("flattening, ground closed on it") : translatable("flattening, hole still open"),
         w.value, "", place_of(run_, pipe_, *w.load),
         supported ? translatable("All of the ground's weight, with the support of the ground beside.")
                   : translatable("The ground that arches over the hole, and all of the traffic; no support beside.")},
        {limit.value, false, supported ? Severity::stop : Severity::caution, limit.source},
        {{},
         {},
         supported ? "d = 0.1 P_ground/(⅔ E_long/(DR − 1)³ + 0.061 E′) + 0.1 P_traffic/(⅔ E_short/(DR − 1)³ + 0.061 E′)"
                   : "d = 0.15 (DR − 1)³ (P_ground/E_long + P_traffic/E_short)",
         std::move(inputs),
         "d",
         0,
         {},
         std::nullopt,
         supported
             ? Source{"modified Iowa, lag 1; E′ of native soil a class lower: our model", SourceLabel::second_hand}
             : Source{"ASTM F1962, ring without support", SourceLabel::from_memory}});
  }

  void judge_compression() {
    constexpr std::string_view code = "pipe.ring";
    const std::string_view name = translatable("compression around the ring");
    const auto warm = strength_derating(*pipe_.strength, pipe_.in_service());
    if (!pipe_.strength->ring_stress || !warm)
      return leave_out(run_, code, name, translatable("What the material bears is not known."));
    const double limit = pipe_.strength->ring_stress->Pa * warm->v;
    const RingPlace w = worst([&](const LoadPoint& load) {
      const auto s = ring_compression(long_.ratio, Pressure{load.earth_Pa + load.live_Pa});
      return std::pair(s ? s->Pa : 0.0, limit);
    });
    if (!w.load) return;
    judge_pipe(run_, pipe_, {code, name, w.value, "Pa", place_of(run_, pipe_, *w.load)},
               {limit,
                false,
                Severity::stop,
                {translatable("long-term compression of the material, times its temperature factor"), ring_label()}},
               {{},
                {},
                "S = (P_ground + P_traffic) DR/2",
                {{"P_ground", w.load->earth_Pa, "Pa"}, {"P_traffic", w.load->live_Pa, "Pa"}, {"DR", long_.ratio, ""}},
                "S",
                0,
                {},
                std::nullopt,
                {"thin ring under even pressure", SourceLabel::derived}});
  }

  /// 6,000 psi of copper is read, 2,000 psi of PVC second-hand; for the other materials nobody looked it up.
  [[nodiscard]] SourceLabel ring_label() const {
    return pipe_.strength->strain_limit == "strain_copper" ? SourceLabel::read : SourceLabel::from_memory;
  }
  [[nodiscard]] SourceLabel pressure_label() const {
    return pipe_.strength->law == PipeLaw::pvc ? SourceLabel::second_hand : SourceLabel::from_memory;
  }

  /// By its own stiffness, long-term, at the flattening it has there.
  [[nodiscard]] double collapse(const LoadPoint& load) const {
    const auto oval = ovality_factor(Ratio{std::min(deflection(load, false), 0.5)});
    const auto collapse_Pa = oval ? collapse_pressure(long_, *oval) : Result<Pressure>(Pressure{0});
    return collapse_Pa ? collapse_Pa->Pa : 0;
  }

  /// A person may set any number; no safety at all would make the limit endless.
  [[nodiscard]] Limit safety_of(std::string_view id) const {
    Limit safety = run_.limit(id);
    safety.value = std::max(safety.value, 0.1);
    return safety;
  }

  [[nodiscard]] double cover_diameters(const LoadPoint& load) const { return load.depth_m / pipe_.section->diameter_m; }
  [[nodiscard]] const Limit& safety_at(const LoadPoint& load) const {
    return cover_diameters(load) >= deep_cover_diameters ? deep_ : shallow_;
  }

  void judge_buckling_bare() {
    constexpr std::string_view code = "pipe.buckling-bare";
    const std::string_view name = translatable("buckling, hole still open");
    if (!pipe_.water_known) return leave_out(run_, code, name, translatable("The water level is not entered."));
    const double quick = long_.modulus_Pa / short_.modulus_Pa;
    const RingPlace w = worst([&](const LoadPoint& load) {
      return std::pair(load.water_Pa + load.earth_arched_Pa + quick * load.live_Pa,
                       collapse(load) / safety_at(load).value);
    });
    if (!w.load) return;
    const Limit& safety = safety_at(*w.load);
    judge_pipe(
        run_, pipe_,
        {code, name, w.value, "Pa", place_of(run_, pipe_, *w.load),
         translatable(
             "Water outside, arching ground and traffic, put together as a pressure that lasts; the pipe empty.")},
        {w.limit, false, Severity::caution, safety.source},
        {{},
         {},
         "p = u + P_ground + P_traffic E_long/E_short; limit 2 E_long f_o/((1 − ν²)(DR − 1)³ N)",
         {{"u", w.load->water_Pa, "Pa"},
          {"P_ground", w.load->earth_arched_Pa, "Pa"},
          {"P_traffic", w.load->live_Pa, "Pa"},
          {"E_long", long_.modulus_Pa, "Pa"},
          {"E_short", short_.modulus_Pa, "Pa"},
          {"DR", long_.ratio, ""},
          {"ν", long_.poisson, ""},
          {"d", std::min(deflection(*w.load, false), 0.5), ""},
          {"H/D", cover_diameters(*w.load), ""},
          {"N", safety.value, ""}},
         "p",
         0,
         {},
         std::nullopt,
         {"Levy, ring without support, as ASTM F1962; f_o by ASTM F1216", SourceLabel::read}});
  }

  void judge_buckling() {
    constexpr std::string_view code = "pipe.buckling";
    const std::string_view name = translatable("buckling, ground closed on it");
    if (!pipe_.water_known) return leave_out(run_, code, name, translatable("The water level is not entered."));
    const auto of = [&](const LoadPoint& load) {
      struct {
        double water_m, rw, support, soil_Pa, value, limit;
      } r{};
      r.water_m = std::clamp(load.water_Pa / water_unit_weight_N_m3 - run_.tool.diameter.m / 2, 0.0, load.depth_m);
      r.rw = buoyancy_factor(Length{r.water_m}, Length{load.depth_m}).value_or(Ratio{0.67}).v;
      const auto support = elastic_support(Length{load.depth_m}, Length{long_.ratio * pipe_.section->wall_m});
      r.support = support ? support->value : 0;
      r.soil_Pa = soil_modulus(load).Pa;
      r.value = load.water_Pa + r.rw * load.earth_Pa + load.live_Pa;
      const double n = safety_at(load).value;
      const auto held = supported_buckling(long_, r.support, r.rw, Pressure{r.soil_Pa}, n);
      r.limit = std::max(held ? held->Pa : 0.0, collapse(load) / n);  // support takes nothing away
      return r;
    };
    const RingPlace w = worst([&](const LoadPoint& load) {
      const auto r = of(load);
      return std::pair(r.value, r.limit);
    });
    if (!w.load) return;
    const auto r = of(*w.load);
    const Limit& safety = safety_at(*w.load);
    judge_pipe(
        run_, pipe_,
        {code, name, w.value, "Pa", place_of(run_, pipe_, *w.load),
         translatable("Water outside, all of the ground's weight and the traffic; the pipe empty.")},
        {w.limit, false, Severity::stop, safety.source},
        {{},
         {},
         translatable(
             "p = u + R_w P_ground + P_traffic; limit (5.65/N) √(R_w B′ E′ E_long/(12 (DR − 1)³)), or bare if more"),
         {{"u", w.load->water_Pa, "Pa"},
          {"R_w", r.rw, ""},
          {"P_ground", w.load->earth_Pa, "Pa"},
          {"P_traffic", w.load->live_Pa, "Pa"},
          {"B′", r.support, ""},
          {"E′", r.soil_Pa, "Pa"},
          {"E_long", long_.modulus_Pa, "Pa"},
          {"DR", long_.ratio, ""},
          {"H/D", cover_diameters(*w.load), ""},
          {"N", safety.value, ""}},
         "p",
         0,
         {},
         std::nullopt,
         {"AWWA/Luscher, Buried Pipe Design p 139 (read); B′ the smaller of two, of which the one by cover is "
          "second-hand",
          SourceLabel::second_hand}});
  }

  void judge_pressure() {
    const double pressure = pipe_.pipe.operating_pressure->Pa;
    if (!(pressure > 0)) return;
    constexpr std::string_view code = "pipe.pressure";
    const std::string_view name = translatable("tension around the ring by the pressure inside");
    const auto warm = strength_derating(*pipe_.strength, pipe_.in_service());
    const double stress = pressure * (long_.ratio - 1) / 2;
    if (!pipe_.strength->pressure_stress || !warm || !std::isfinite(stress))
      return leave_out(run_, code, name,
                       translatable("What the material bears inside is not known: see the rating of the pipe."));
    judge_pipe(run_, pipe_, {code, name, stress, "Pa", nullptr},
               {pipe_.strength->pressure_stress->Pa * warm->v,
                false,
                Severity::stop,
                {translatable("long-term design stress of the material for water, times its temperature factor"),
                 pressure_label()}},
               {{},
                {},
                "σ = p (DR − 1)/2",
                {{"p", pressure, "Pa"}, {"DR", long_.ratio, ""}},
                "σ",
                0,
                {},
                std::nullopt,
                {"ISO 12162 and ASTM D2837 form", SourceLabel::from_memory}});
  }

  CheckRun& run_;
  const PipeUnderCheck& pipe_;
  Ring long_, short_;
  Limit deep_, shallow_;               ///< safety against buckling by cover
  std::vector<Pressure> soil_moduli_;  ///< of each of the loads
};

}  // namespace

void check_pipe_ring(CheckRun& run, const PipeUnderCheck& pipe) {
  constexpr std::string_view code = "pipe.ring";
  const std::string_view name = translatable("flattening, compression and buckling of the ring");
  if (run.answer.loads.empty()) return leave_out(run, code, name, translatable("There is no path under ground."));
  if (!pipe.section) return leave_out(run, code, name, translatable("The wall of the pipe is not known."));
  if (!pipe.strength) return leave_out(run, code, name, translatable("How the material bears is not known."));
  const auto long_term = modulus(*pipe.strength, design_life, pipe.in_service());
  const auto quick = modulus(*pipe.strength, short_term, pipe.in_service());
  if (!long_term || !quick) return leave_out(run, code, name, (long_term ? quick : long_term).error().line());
  RingUnderLoad(run, pipe, long_term->Pa, quick->Pa).judge_all();
}

}  // namespace burrow
