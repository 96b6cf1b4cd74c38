package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.circuit.Element;
import leadwright.planner.circuit.Solved;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.Meter;
import leadwright.planner.foresee.Setup;
import leadwright.planner.foresee.Setups;
import leadwright.planner.foresee.Situation;
import leadwright.planner.foresee.Template;
import leadwright.planner.foresee.Variation;
import leadwright.planner.plan.MainsState;
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
        boolean still = base.setup().hertz() == 0 && base.value() == 0;
        if (effect instanceof Effect.None || still) {
            // Nothing that is modelled drives a direct current.
            return Optional.of(base.value());
        }
        if (effect instanceof Effect.Wires wires) {
            return Optional.of(rewired(base, wires.edits()));
        }
        Variation variation = ((Effect.Arrangement) effect).variation();
        return concerns(variation, base.reading().obligation().state()) ? varied(base, variation) : Optional.empty();
    }

    private Optional<Double> varied(Base base, Variation variation) {
        return setups.of(base.reading().obligation(), base.reading().hookup().flatMap(plan::hookup), variation)
                .map(Setup::nominal);
    }

    /** States in which an arrangement differs from the plan's. */
    private static boolean concerns(Variation variation, MainsState state) {
        boolean mains = state.polarity() != MainsState.Polarity.NONE;
        return switch (variation) {
            case NONE -> false;
            case SWITCH_OFF, IDLE_JACKS_EARTHED -> true;
            case POLARITY_STUCK -> state.polarity() == MainsState.Polarity.REVERSED;
            case SUPPLY_NOT_OPENED -> state.fault() == MainsState.Fault.SUPPLY_OPEN;
            case SUPPLY_LEFT_OPEN -> mains && state.fault() == MainsState.Fault.NONE;
            case EARTH_NOT_OPENED -> state.fault() == MainsState.Fault.EARTH_OPEN;
            case EARTH_LEFT_OPEN -> mains && state.fault() != MainsState.Fault.EARTH_OPEN;
            case SUPPLY_NOT_EARTHED, WALL_EXCHANGED, SECOND_DEVICE -> mains;
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
            case SHUNTED, CORD_NULLED, CORD_WORN -> true;
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
                case CORD_WORN -> each.cordNominal() > 0 ? right + WORN : right;
                case JOINT_WORN -> right + WORN;
                default -> right;
            };
        });
    }
}
