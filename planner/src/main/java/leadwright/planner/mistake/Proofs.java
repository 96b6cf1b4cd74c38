package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** The proof steps that would show a plan's silent slips, before the cheapest are chosen. */
final class Proofs {
    private static final Set<Step.Act> HAND = Set.of(Step.Act.TIE, Step.Act.TOUCH);

    private final Plan plan;
    private final List<Finding> silent;
    private final Inherited inherited;
    private final List<ProofStep> all = new ArrayList<>();

    private Proofs(Plan plan, List<Finding> findings) {
        this.plan = plan;
        this.inherited = new Inherited(plan);
        this.silent = findings.stream()
                .filter(each -> each.exposure() == Exposure.SILENT)
                .toList();
    }

    static List<ProofStep> of(Plan plan, List<Finding> findings) {
        Proofs proofs = new Proofs(plan, findings);
        for (ProofKind kind : ProofKind.values()) {
            switch (kind.per()) {
                case HOOKUP -> plan.hookups().forEach(hookup -> proofs.built(kind, hookup));
                case CLIPPING -> plan.hookups().forEach(hookup -> proofs.clipped(kind, hookup));
                case PLAN -> proofs.once(kind);
                case SHEET -> proofs.add(kind, Optional.empty(), List.of(), 0);
            }
        }
        return proofs.all;
    }

    private void built(ProofKind kind, Hookup hookup) {
        List<Chain> fresh = inherited.fresh(hookup);
        int things = switch (kind) {
            case PRESS_AND_LOOK -> (int) fresh.stream().filter(this::aided).count();
            case FOLLOW_TO_JACK ->
                (int) fresh.stream().map(Chain::jack).distinct().count();
            default -> fresh.size();
        };
        Set<String> exposes = new LinkedHashSet<>();
        for (Finding each : silent) {
            Slip slip = each.slip();
            if (kind.exposes(slip.kind()) && slip.hookup().isPresent() && inherited.alreadyIn(slip, hookup)) {
                exposes.add(slip.id());
            }
        }
        Optional<Integer> before = afterBuilding(hookup);
        if (before.isPresent() && !exposes.isEmpty()) {
            String text =
                    text(kind, fresh.size(), fresh.size() < hookup.chains().size());
            all.add(new ProofStep(
                    kind, Optional.of(hookup.id()), List.of(before.get()), kind.seconds(things), exposes, text));
        }
    }

    private boolean aided(Chain chain) {
        return chain.items().stream()
                .findFirst()
                .map(instance -> instance.substring(0, Math.max(0, instance.lastIndexOf('/'))))
                .flatMap(plan.kit()::item)
                .filter(item -> item.kind() == ItemKind.CONTACT_AID)
                .isPresent();
    }

    /** The step that follows the last joint of a hookup's first visit before something is read of its leads. */
    private Optional<Integer> afterBuilding(Hookup hookup) {
        Optional<String> id = Optional.of(hookup.id());
        Set<String> ofLeads = plan.readings().stream()
                .filter(each -> !each.obligation().demand().isNothing())
                .map(Reading::id)
                .collect(Collectors.toSet());
        int last = -1;
        boolean come = false;
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            if (step.hookup().equals(id)) {
                if (last >= 0 && step.reading().filter(ofLeads::contains).isPresent()) {
                    break;
                }
                come = true;
                last = step.joint().isPresent() ? i : last;
            } else if (come && step.hookup().isPresent()) {
                break;
            }
        }
        return last < 0 || last + 1 >= plan.steps().size()
                ? Optional.empty()
                : Optional.of(plan.steps().get(last + 1).number());
    }

    private void clipped(ProofKind kind, Hookup hookup) {
        List<Integer> before = steps(
                step -> step.hookup().equals(Optional.of(hookup.id())),
                what -> what.quantity() == QuantityKind.EARTH_RESISTANCE);
        if (!before.isEmpty()) {
            add(kind, Optional.of(hookup.id()), before, before.size() * kind.seconds(0));
        }
    }

    private void once(ProofKind kind) {
        Predicate<Step> when = switch (kind) {
            case DEVICE_RUNS -> Proofs::live;
            case SUPPLY_REALLY_OPENS -> step -> step.state().fault() == MainsState.Fault.SUPPLY_OPEN;
            default -> step -> true;
        };
        Predicate<Obligation> of = kind == ProofKind.COMPONENT_SHOWN
                ? what -> what.component().equals(Optional.of(Component.DC))
                : what -> what.component().isPresent() && what.phase() != Obligation.Phase.CHECK;
        Optional<Integer> reading = steps(when, of).stream().findFirst().map(this::beforeItsHand);
        // What can be seen to with the outlet off is seen to before it is switched on.
        boolean runs = kind == ProofKind.DEVICE_RUNS
                || kind == ProofKind.SUPPLY_REALLY_OPENS
                || kind == ProofKind.COMPONENT_SHOWN;
        Optional<Integer> live = runs
                ? Optional.empty()
                : plan.steps().stream()
                        .filter(step -> step.does() == Step.Act.START || live(step))
                        .map(Step::number)
                        .findFirst();
        List<Integer> before = new ArrayList<>();
        if (kind == ProofKind.NOTHING_ELSE_TOUCHES) {
            steps(step -> true, what -> what.quantity() == QuantityKind.EARTH_RESISTANCE).stream()
                    .findFirst()
                    .ifPresent(before::add);
        }
        int earth = before.isEmpty() ? 0 : before.get(0);
        reading.map(number ->
                        live.filter(first -> first < number && first > earth).orElse(number))
                .filter(number -> !before.contains(number))
                .ifPresent(before::add);
        if (!before.isEmpty()) {
            add(kind, Optional.empty(), before, before.size() * kind.seconds(0));
        }
    }

    /** Before what is selected and touched for a reading: nothing comes between a touch and its reading. */
    private int beforeItsHand(int number) {
        int at = number;
        while (at > 1 && HAND.contains(plan.steps().get(at - 2).does())) {
            at--;
        }
        return at;
    }

    private static boolean live(Step step) {
        return step.state().polarity() != MainsState.Polarity.NONE || step.state() == MainsState.INSTALLED_ON;
    }

    /** Numbers of the steps that take a reading of a kind. */
    private List<Integer> steps(Predicate<Step> which, Predicate<Obligation> what) {
        Set<String> readings = plan.readings().stream()
                .filter(each -> what.test(each.obligation()))
                .map(Reading::id)
                .collect(Collectors.toSet());
        return plan.steps().stream()
                .filter(step -> step.reading().filter(readings::contains).isPresent())
                .filter(which)
                .map(Step::number)
                .toList();
    }

    private void add(ProofKind kind, Optional<String> hookup, List<Integer> before, int seconds) {
        Set<String> exposes = new LinkedHashSet<>();
        for (Finding each : silent) {
            Slip slip = each.slip();
            if (kind.exposes(slip.kind()) && (hookup.isEmpty() || slip.hookup().equals(hookup))) {
                exposes.add(slip.id());
            }
        }
        if (!exposes.isEmpty()) {
            all.add(new ProofStep(kind, hookup, before, seconds, exposes, text(kind, 0, false)));
        }
    }

    /**
     * @param ends that it goes over
     * @param rest whether others were seen to before
     */
    private String text(ProofKind kind, int ends, boolean rest) {
        String those = rest ? "the ends that are new or moved in this hookup" : "the ends that are joined";
        String earth = plan.house().words() == EarthWord.GROUND ? "ground" : "earth";
        return switch (kind) {
            case COUNT_AND_TUG ->
                "Count " + those + ", fan-out by fan-out, against the list: " + ends
                        + "; tug each; initial. Where the device shows leads that are off, it must show none.";
            case FOLLOW_TO_JACK ->
                "Follow each trunk and each single lead to its jack with a finger, and read the jack's number against the"
                        + " drawing; initial.";
            case PRESS_AND_LOOK ->
                "Press down every foil, and look that baths and fluid contacts are wet, deep enough and without bubbles,"
                        + " and that none of them reaches "
                        + earth + "ed metal; initial.";
            case READ_BACK_BY_TWO ->
                "Two persons: one follows " + those + ", " + ends
                        + ", from the patient end over fan-outs to its jack, pressing and tugging, the other reads the"
                        + " list; both initial.";
            case LOOK_AT_CLIP ->
                "Look at the clip: on bare metal of the part that this reading names, not on a stud, paint or another"
                        + " part.";
            case NOTHING_ELSE_TOUCHES ->
                "Look round the device: it stands insulated, no cable, rail, hose, metal or " + earth
                        + " lead touches it but the hookup's own, and nothing else is on its outlet; initial.";
            case DEVICE_RUNS ->
                "See that the device is on, not in standby, and runs from the mains: its mains lamp is lit, or the current"
                        + " drawn is not zero.";
            case COMPONENT_SHOWN ->
                "See that the tester shows that it reads direct current, here and at every row that says d.c.";
            case SUPPLY_REALLY_OPENS ->
                "See that the supply is really open: the mains lamp goes out, or the current drawn falls to zero. Still"
                        + " live.";
            case IDLE_JACKS_LOOKED_UP ->
                "Look at the tester's display or in its instructions what it does with jacks that are not used: "
                        + plan.kit()
                                .tester()
                                .jacks()
                                .map(jacks -> jacks.atRest().word())
                                .orElse("open")
                        + ".";
            case STATE_TICK -> "Tick the state at the head of each group of readings when it is set.";
        };
    }
}
