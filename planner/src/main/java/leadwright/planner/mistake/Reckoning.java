package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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

/** What each reading would show with a slip made, with nominal values; in A or Ω. */
final class Reckoning {
    /** Stands for a path that is not there; Ω. */
    static final double OPEN = 1e9;

    /** A second way to earth: some metres of a cable's screen; Ω. Common practice, no source. */
    private static final double SECOND_WAY = 0.2;

    private final Plan plan;
    private final Situation situation;
    private final Setups setups;
    private final Map<String, Base> bases = new LinkedHashMap<>();
    private final Map<String, EarthBudget> budgets = new LinkedHashMap<>();

    private record Base(
            Reading reading, Setup setup, Solved solved, double value, Map<String, Template.Branch> branches) {}

    Reckoning(Plan plan, Situation situation) {
        this.plan = plan;
        this.situation = situation;
        this.setups = new Setups(plan.device(), plan.kit(), situation);
        for (Reading reading : plan.readings()) {
            setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup))
                    .ifPresent(setup -> bases.put(reading.id(), base(reading, setup)));
            EarthBudget.of(plan, reading, situation).ifPresent(budget -> budgets.put(reading.id(), budget));
        }
    }

    private static Base base(Reading reading, Setup setup) {
        Solved solved = setup.circuit().solve(setup.hertz());
        Map<String, Template.Branch> branches = new HashMap<>();
        setup.template().branches().forEach(branch -> branches.put(branch.name(), branch));
        return new Base(reading, setup, solved, setup.meter().read(solved), branches);
    }

    /** What the reading shows with nothing done wrong. */
    Optional<Double> planned(String reading) {
        return Optional.ofNullable(bases.get(reading))
                .map(Base::value)
                .or(() -> Optional.ofNullable(budgets.get(reading)).map(EarthBudget::nominal));
    }

    /** Whether a slip may change what this reading shows. */
    private static boolean touches(Slip slip, Reading reading) {
        return slip.hookup().isEmpty() || slip.hookup().equals(reading.hookup());
    }

    /** Readings that the slip touches, with what each would then show. */
    Map<String, Double> with(Slip slip) {
        Map<String, Double> shown = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            if (touches(slip, reading)) {
                value(slip, reading).ifPresent(value -> shown.put(reading.id(), value));
            }
        }
        return shown;
    }

    private Optional<Double> value(Slip slip, Reading reading) {
        if (slip.effect() instanceof Effect.EarthPath path) {
            boolean one = slip.things().contains(reading.id());
            boolean every = path.how() == Effect.Earth.SHUNTED || path.how() == Effect.Earth.CORD_NULLED;
            return Optional.ofNullable(budgets.get(reading.id()))
                    .filter(budget -> one || every)
                    .map(budget -> earth(path.how(), budget));
        }
        Optional<Base> base = Optional.ofNullable(bases.get(reading.id()));
        if (slip.effect() instanceof Effect.None) {
            return base.map(Base::value);
        }
        if (slip.effect() instanceof Effect.Scaled scaled) {
            return base.filter(each -> !(each.setup().meter() instanceof Meter.Insulation))
                    .map(each -> each.value() * scaled.factor());
        }
        if (base.filter(each -> each.setup().hertz() == 0 && each.value() == 0).isPresent()) {
            // Nothing that is modelled drives a direct current.
            return base.map(Base::value);
        }
        if (slip.effect() instanceof Effect.Wires wires) {
            return base.map(each -> rewired(each, wires.edits()));
        }
        Variation variation = ((Effect.Arrangement) slip.effect()).variation();
        return base.filter(
                        each -> concerns(variation, each.reading().obligation().state()))
                .flatMap(each -> varied(each, variation));
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
            case SWITCH_OFF, SECOND_WAY_TO_EARTH, IDLE_JACKS_EARTHED -> true;
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
                .map(pair -> base.solved()
                                .voltageWith(changes(base, edits), pair.above(), pair.below())
                                .getMagnitude()
                        * pair.factor())
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

    private double earth(Effect.Earth how, EarthBudget budget) {
        double right = budget.nominal();
        return switch (how) {
            case OPEN -> OPEN;
            case ELSEWHERE -> right;
            case SHUNTED -> right * SECOND_WAY / (right + SECOND_WAY);
            case CORD_NULLED -> right - budget.cordNominal();
            case LONGER -> right + 0.05;
        };
    }
}
