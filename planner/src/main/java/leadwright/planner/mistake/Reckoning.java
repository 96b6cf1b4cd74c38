package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Component;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.circuit.Element;
import leadwright.planner.circuit.Solved;
import leadwright.planner.foresee.Assumed;
import leadwright.planner.foresee.Bands;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.Meter;
import leadwright.planner.foresee.Setup;
import leadwright.planner.foresee.Setups;
import leadwright.planner.foresee.Situation;
import leadwright.planner.foresee.Template;
import leadwright.planner.foresee.Variation;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * What each reading shows, as planned and with each cause at work, with nominal values; in A or Ω.
 *
 * <p>One reading after another: the circuit of each is solved once, and a slip of the wiring changes some of its conductances.
 */
final class Reckoning {
    /** Stands for a path that is not there; Ω. */
    static final double OPEN = 1e9;

    /** A second way to earth: some metres of a cable's screen; Ω. Common practice, no source. */
    static final double SECOND_WAY = 0.2;

    /** A tool between the jaws and the part; Ω. Common practice, no source. */
    private static final double TOOL = 0.05;

    /** By what leads have more resistance that are 50 K warmer: 0.39 % a kelvin. */
    private static final double WARMING = 0.2;

    /** Doubt of a mains voltage that was read. */
    private static final double KNOWN_MAINS = 0.01;

    /** A worn earth conductor or joint adds so much; Ω. Common practice, no source. */
    private static final double WORN = 0.4;

    private final Plan plan;
    private final Setups setups;
    private final Situation situation;

    private record Base(
            Reading reading, Setup setup, Solved solved, double value, Map<String, Template.Branch> branches) {}

    /**
     * A reading with all slips.
     *
     * @param planned empty where the model does not know the reading
     * @param shown by the cause's place in the list; those that do not touch the reading are absent
     */
    record Row(Reading reading, Optional<Double> planned, Map<Integer, Double> shown) {}

    Reckoning(Plan plan, Situation situation) {
        this.plan = plan;
        this.situation = situation;
        this.setups = new Setups(plan.device(), plan.kit(), situation);
    }

    Row row(Reading reading, List<? extends Cause> causes) {
        Optional<Base> base = setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup))
                .map(setup -> base(reading, setup));
        Optional<EarthBudget> budget = EarthBudget.of(plan, reading, situation);
        Map<Integer, Double> shown = new LinkedHashMap<>();
        for (int i = 0; i < causes.size(); i++) {
            Cause cause = causes.get(i);
            if (cause.hookup().isEmpty() || cause.hookup().equals(reading.hookup())) {
                Optional<Double> value = cause.effect() instanceof Effect.EarthPath path
                        ? earth(path.how(), cause, reading, budget)
                        : base.flatMap(each -> value(cause.effect(), each));
                if (value.isPresent()) {
                    shown.put(i, value.get());
                }
            }
        }
        return new Row(reading, base.map(Base::value).or(() -> budget.map(EarthBudget::nominal)), shown);
    }

    private static Base base(Reading reading, Setup setup) {
        Solved solved = setup.circuit().solve(setup.hertz());
        Map<String, Template.Branch> branches = new HashMap<>();
        setup.template().branches().forEach(branch -> branches.put(branch.name(), branch));
        return new Base(reading, setup, solved, setup.meter().read(solved), branches);
    }

    private Optional<Double> value(Effect effect, Base base) {
        if (effect instanceof Effect.Scaled scaled) {
            return base.setup().meter() instanceof Meter.Insulation
                    ? Optional.empty()
                    : Optional.of(base.value() * scaled.factor());
        }
        if (effect instanceof Effect.Arrangement arrangement) {
            Variation variation = arrangement.variation();
            return !concerns(variation, base.reading().obligation())
                    ? Optional.empty()
                    : still(base) && variation != Variation.AC_FOR_DC
                            ? Optional.of(base.value())
                            : varied(base.reading(), variation).map(Setup::nominal);
        }
        return Optional.of(
                effect instanceof Effect.Wires wires && !still(base) ? rewired(base, wires.edits()) : base.value());
    }

    /** Nothing that is modelled drives a direct current. */
    private static boolean still(Base base) {
        return base.setup().hertz() == 0 && base.value() == 0;
    }

    private Optional<Setup> varied(Reading reading, Variation variation) {
        return setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup), variation);
    }

    /**
     * Between what a reading lies with a cause at work and each value anywhere in its span, the mains voltage included; what the tester
     * adds to that is not in it.
     *
     * @return empty where the cause does not touch the reading or the model does not know it
     */
    Optional<Bands.Band> band(Reading reading, Cause cause) {
        if (cause.effect() instanceof Effect.EarthPath path) {
            return EarthBudget.of(plan, reading, situation)
                    .flatMap(budget -> earth(path.how(), cause, reading, Optional.of(budget))
                            .map(shown -> new Bands.Band(
                                    shown - budget.nominal() + budget.least(), shown, Double.POSITIVE_INFINITY)));
        }
        Optional<Bands.Band> circuit = changed(reading, cause.effect()).map(Bands::of);
        double factor = cause.effect() instanceof Effect.Scaled scaled ? scaled.factor() : 1;
        return circuit.map(each -> reading.obligation().quantity() == QuantityKind.INSULATION_RESISTANCE
                ? each
                : new Bands.Band(
                        each.low() * factor * leastMains(),
                        each.nominal() * factor,
                        each.high() * factor * mostMains()));
    }

    private double leastMains() {
        return situation.volts().isPresent() ? 1 - KNOWN_MAINS : Assumed.MAINS.low();
    }

    private double mostMains() {
        return situation.volts().isPresent() ? 1 + KNOWN_MAINS : Assumed.MAINS.high();
    }

    /** The circuit of a reading with an effect in it. */
    Optional<Setup> changed(Reading reading, Effect effect) {
        if (effect instanceof Effect.Arrangement arrangement) {
            return concerns(arrangement.variation(), reading.obligation())
                    ? varied(reading, arrangement.variation())
                    : Optional.empty();
        }
        return varied(reading, Variation.NONE)
                .map(setup -> effect instanceof Effect.Wires wires ? rebuilt(setup, wires.edits()) : setup);
    }

    /** States in which an arrangement differs from the plan's. */
    private static boolean concerns(Variation variation, Obligation what) {
        MainsState state = what.state();
        boolean mains = state.polarity() != MainsState.Polarity.NONE;
        return switch (variation) {
            case NONE -> false;
            case SWITCH_OFF, IDLE_JACKS_EARTHED -> true;
            case POLARITY_STUCK -> state.polarity() == MainsState.Polarity.REVERSED;
            case SUPPLY_NOT_OPENED -> state.fault() == MainsState.Fault.SUPPLY_OPEN;
            case SUPPLY_LEFT_OPEN -> mains && state.fault() == MainsState.Fault.NONE;
            case EARTH_NOT_OPENED -> state.fault() == MainsState.Fault.EARTH_OPEN;
            case EARTH_LEFT_OPEN -> mains && state.fault() != MainsState.Fault.EARTH_OPEN;
            case SUPPLY_NOT_EARTHED, WALL_EXCHANGED, SECOND_DEVICE, ON_BATTERY -> mains;
            case AC_FOR_DC -> what.component().equals(Optional.of(Component.DC));
        };
    }

    /** By changes of conductances where the reading is a voltage, else by solving the changed circuit. */
    private static double rewired(Base base, List<Effect.Edit> edits) {
        return base.setup()
                .meter()
                .pair()
                .map(pair -> base.solved().voltsWith(changes(base, edits), pair.above(), pair.below()) * pair.factor())
                .orElseGet(() -> rebuilt(base.setup(), edits).nominal());
    }

    private static List<Solved.Change> changes(Base base, List<Effect.Edit> edits) {
        List<Solved.Change> changes = new ArrayList<>();
        for (Effect.Edit edit : edits) {
            if (edit instanceof Effect.Edit.Part part) {
                Template.Branch branch = base.branches().get(part.resistance());
                if (branch != null) {
                    changes.add(
                            new Solved.Change(branch.from(), branch.to(), -1 / branch.value(each -> each.nominal())));
                }
            } else if (edit instanceof Effect.Edit.Join join) {
                String a = base.setup().node(join.a());
                String b = base.setup().node(join.b());
                if (!a.equals(b)) {
                    changes.add(new Solved.Change(a, b, 1 / join.ohms()));
                }
            }
        }
        return changes;
    }

    /** The circuit with the edits made in it. */
    static Setup rebuilt(Setup setup, List<Effect.Edit> edits) {
        List<Template.Branch> branches = new ArrayList<>(setup.template().branches());
        List<Element> fixed = new ArrayList<>(setup.template().fixed());
        for (Effect.Edit edit : edits) {
            if (edit instanceof Effect.Edit.Part part) {
                branches.removeIf(branch -> branch.name().equals(part.resistance()));
            } else if (edit instanceof Effect.Edit.Join join) {
                String a = setup.node(join.a());
                String b = setup.node(join.b());
                if (!a.equals(b)) {
                    fixed.add(new Element.Resistance("R:slip-" + fixed.size(), a, b, join.ohms()));
                }
            }
        }
        return new Setup(new Template(branches, fixed), setup.meter(), setup.hertz(), setup.ties());
    }

    private static Optional<Double> earth(
            Effect.Earth how, Cause cause, Reading reading, Optional<EarthBudget> budget) {
        boolean every = switch (how) {
            case SHUNTED, CORD_NULLED, CORD_WORN, WARMED, NULLED_OPEN -> true;
            case OPEN, ELSEWHERE, LONGER, JOINT_WORN -> false;
        };
        if (reading.obligation().quantity() != QuantityKind.EARTH_RESISTANCE
                || !every && !cause.things().contains(reading.id())) {
            return Optional.empty();
        }
        if (how == Effect.Earth.OPEN) {
            return Optional.of(OPEN);
        }
        return budget.map(each -> {
            double right = each.nominal();
            return switch (how) {
                case SHUNTED -> right * SECOND_WAY / (right + SECOND_WAY);
                case CORD_NULLED -> right - each.cordNominal();
                case LONGER -> right + TOOL;
                case WARMED -> right + WARMING * each.leadsNominal();
                case NULLED_OPEN ->
                    right + each.leadsNominal() - each.nullUpTo().orElse(0.0);
                case CORD_WORN -> each.cordNominal() > 0 ? right + WORN : right;
                case JOINT_WORN -> right + WORN;
                default -> right;
            };
        });
    }
}
