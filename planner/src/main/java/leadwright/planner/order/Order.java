package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * The door of this package: hookups and readings in, steps in the order of least bench time out.
 *
 * <p>The phases, each in its own file: joints ({@link Arrangement}), pairing of like items ({@link Likeness}), re-plugging
 * times ({@link Replugs}), states of mains and device ({@link Poses}), classes of readings ({@link Units}), the problem in
 * numbers ({@link Problem}), the solver ({@link Solver}) with its {@link Bound} and {@link Search}, selections
 * ({@link Selections}), and the steps ({@link StepWriter}).
 */
public final class Order {
    private final Scene scene;
    private final List<Hookup> hookups;
    private final boolean none;
    private final List<Obligation> checks = new ArrayList<>();
    private final List<Obligation> proofs = new ArrayList<>();
    private final List<Obligation> earth = new ArrayList<>();
    private final List<Obligation> leakage = new ArrayList<>();
    private final List<BitSet> takenIn = new ArrayList<>();

    private Order(Scene scene, List<Hookup> given, Map<String, List<String>> takenIn, List<Obligation> wanted) {
        this.scene = scene;
        this.none = given.isEmpty();
        // Readings that ask nothing of the wiring need no hookup, but they need a place to be taken in.
        this.hookups = none ? List.of(new Hookup("none", List.of(), List.of(), List.of())) : given;
        for (Obligation each : wanted) {
            switch (each.phase()) {
                case CHECK -> (each.quantity() == QuantityKind.PROOF ? proofs : checks).add(each);
                case EARTH -> {
                    if (hookups.stream().anyMatch(hookup -> !hookup.earth().isEmpty())) {
                        earth.add(each);
                    }
                }
                default -> {
                    BitSet set = hookupsOf(each, takenIn);
                    if (!set.isEmpty()) {
                        leakage.add(each);
                        this.takenIn.add(set);
                    }
                }
            }
        }
    }

    /**
     * The order of least bench time.
     *
     * @param takenIn obligation key to ids of the hookups that may take it; a reading that asks nothing of the wiring and is
     *     not listed may be taken in any; one that asks something and has no hookup is left out
     * @param wanted obligations in clause order
     */
    public static Ordering order(
            Device device,
            Kit kit,
            House house,
            Connectors connectors,
            List<Hookup> hookups,
            Map<String, List<String>> takenIn,
            List<Obligation> wanted) {
        return new Order(Scene.of(device, kit, house, connectors), hookups, takenIn, wanted).run();
    }

    private BitSet hookupsOf(Obligation reading, Map<String, List<String>> table) {
        BitSet set = new BitSet();
        List<String> ids = table.getOrDefault(reading.key(), List.of());
        for (int h = 0; h < hookups.size(); h++) {
            boolean any = reading.demand().isNothing() && ids.isEmpty();
            if (any || ids.contains(hookups.get(h).id())) {
                set.set(h);
            }
        }
        return set;
    }

    /** What the solver works on. */
    record Setting(Poses poses, Replugs replugs, List<List<Draft>> earthWork, Solver solver) {}

    /** The setting of {@link #order}, for tests that look at the solver from nearer by. */
    static Setting setting(
            Scene scene, List<Hookup> hookups, Map<String, List<String>> takenIn, List<Obligation> wanted) {
        return new Order(scene, hookups, takenIn, wanted).setting();
    }

    private Setting setting() {
        Set<MainsState> states = new LinkedHashSet<>();
        leakage.forEach(each -> states.add(each.state()));
        boolean handled = !earth.isEmpty()
                || states.contains(MainsState.OFF)
                || states.contains(MainsState.ISOLATED)
                || hookups.stream().anyMatch(hookup -> !hookup.chains().isEmpty());
        Poses poses = new Poses(scene, states, modes(), scene.permanent() && !handled && !states.isEmpty());
        Replugs replugs = new Replugs(hookups, scene, !earth.isEmpty());
        int n = hookups.size();
        int[] opening = new int[n];
        int[] firstSite = new int[n];
        List<List<Draft>> earthWork = new ArrayList<>();
        for (int h = 0; h < n; h++) {
            boolean may = earth.isEmpty() || !hookups.get(h).earth().isEmpty();
            List<Draft> work = EarthWork.steps(
                    scene,
                    h,
                    hookups.get(h),
                    may ? earth : List.of(),
                    proofs,
                    leakage,
                    poses.get(poses.start()).state());
            earthWork.add(work);
            opening[h] = may
                    ? replugs.first(h).seconds()
                            + work.stream().mapToInt(Draft::seconds).sum()
                    : -1;
            firstSite[h] = earth.isEmpty() ? h : n + h;
        }
        Solver solver = new Solver(scene, poses, replugs, leakage, takenIn, opening, firstSite);
        return new Setting(poses, replugs, earthWork, solver);
    }

    private Ordering run() {
        Setting setting = setting();
        Poses poses = setting.poses();
        Replugs replugs = setting.replugs();
        int n = hookups.size();
        Solver.Answer answer = setting.solver().solve();
        Labels labels = Labels.along(answer.route().sites(), replugs);
        if (!orderly(answer.route(), labels, poses)) {
            answer = setting.solver().strict(answer);
            labels = Labels.along(answer.route().sites(), replugs);
        }
        List<Integer> sites = answer.route().sites();
        int first = sites.get(0) % n;
        MainsState start = poses.get(poses.start()).state();
        Framing framing = new Framing(scene, checks);
        List<Draft> drafts = new ArrayList<>(framing.before(start));
        int framed = seconds(drafts);
        drafts.addAll(new StepWriter(answer.problem(), hookups, leakage)
                .write(answer.route(), labels, setting.earthWork().get(first)));
        int inner = seconds(drafts) - framed;
        List<Draft> closing = framing.after(last(answer, poses));
        drafts.addAll(closing);
        framed += seconds(closing);
        if (inner < answer.problem().base() + answer.least()) {
            throw new IllegalStateException("the steps take " + inner + " s where the search proved more");
        }
        int total = inner + framed;
        int least = answer.problem().base() + answer.least() + framed;
        Proof proof = new Proof(total, least, argument(answer, total, least, sites.size()));
        int plain = framed + Plain.seconds(answer.problem(), leakage);
        return finish(sites, labels, drafts, plain, proof);
    }

    /** Whether every joint is one that a hand may move in the pose in which it is moved. */
    private boolean orderly(Route route, Labels labels, Poses poses) {
        int site = -1;
        int pose = poses.start();
        for (Route.Leg leg : route.legs()) {
            if (leg.plugged() && ++site > 0) {
                Pose at = poses.get(pose);
                for (Contact each : labels.changed(site)) {
                    boolean therapy = each.connections().stream().anyMatch(scene.therapy()::containsKey);
                    if (!at.dead() && !each.insulated() || at.on() && therapy) {
                        return false;
                    }
                }
            }
            pose = leg.pose();
        }
        return true;
    }

    private static int seconds(List<Draft> drafts) {
        return drafts.stream().mapToInt(Draft::seconds).sum();
    }

    private static MainsState last(Solver.Answer answer, Poses poses) {
        List<Route.Leg> legs = answer.route().legs();
        return poses.get(legs.get(legs.size() - 1).pose()).state();
    }

    /** Operating modes of the readings, the one that the device starts in first. */
    private List<String> modes() {
        Set<String> modes = new LinkedHashSet<>(List.of("on"));
        leakage.stream()
                .map(Obligation::mode)
                .filter(mode -> !mode.equals("off"))
                .forEach(modes::add);
        return List.copyOf(modes);
    }

    private static String argument(Solver.Answer answer, int total, int least, int stays) {
        String size = answer.problem().units().size() + " classes of readings in "
                + answer.problem().hookups() + " hookups and "
                + answer.problem().poses().all().size()
                + " states of mains and device";
        if (total == least) {
            return String.format(
                    Locale.ROOT,
                    "No order of %s takes less than %d s: a best-first search settled every partial order that a lower bound"
                            + " did not rule out (%d of them); the order found sets up or re-plugs %d times. Proven for these"
                            + " hookups.",
                    size,
                    least,
                    answer.settled(),
                    stays);
        }
        return String.format(
                Locale.ROOT,
                "No order of %s takes less than %d s; the order found takes %d s. The gap of %d s is open: the search settled"
                        + " %d partial orders and ended there.",
                size,
                least,
                total,
                total - least,
                answer.settled());
    }

    private Ordering finish(List<Integer> sites, Labels labels, List<Draft> drafts, int plain, Proof proof) {
        int n = hookups.size();
        Map<Integer, String> ids = new HashMap<>();
        List<Hookup> named = new ArrayList<>();
        for (int site : sites) {
            int hookup = site % n;
            if (!none && !ids.containsKey(hookup)) {
                String id = "H" + (ids.size() + 1);
                ids.put(hookup, id);
                named.add(labels.named(hookups.get(hookup), hookup, id, !earth.isEmpty() && site >= n));
            }
        }
        long reads = drafts.stream().filter(each -> each.reading().isPresent()).count();
        int width = Math.max(2, String.valueOf(reads).length());
        Map<String, Hookup> byId = new HashMap<>();
        named.forEach(each -> byId.put(each.id(), each));
        List<Reading> readings = new ArrayList<>();
        List<Step> steps = new ArrayList<>();
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        int total = 0;
        int startUps = 0;
        for (Draft draft : drafts) {
            Optional<String> hookup = id(draft.hookup(), ids);
            Optional<String> reading = Optional.empty();
            if (draft.reading().isPresent()) {
                String id = String.format(Locale.ROOT, "R%0" + width + "d", readings.size() + 1);
                readings.add(FloatingJoined.noted(id, draft.reading().get(), hookup.map(byId::get)));
                reading = Optional.of(id);
            }
            steps.add(new Step(
                    steps.size() + 1,
                    draft.does(),
                    draft.text(),
                    reading,
                    draft.state(),
                    hookup,
                    draft.joint(),
                    draft.place(),
                    draft.seconds(),
                    draft.account(),
                    draft.writing(),
                    draft.caution(),
                    draft.onFail(),
                    draft.because()));
            parts.merge(draft.account(), draft.seconds() - draft.writing(), Integer::sum);
            if (draft.writing() > 0) {
                parts.merge(Step.Account.WRITE, draft.writing(), Integer::sum);
            }
            total += draft.seconds();
            startUps += draft.does() == Step.Act.START ? 1 : 0;
        }
        return new Ordering(named, readings, steps, new TimeSplit(total, parts, plain, startUps), proof);
    }

    private static Optional<String> id(OptionalInt hookup, Map<Integer, String> ids) {
        return hookup.isPresent() ? Optional.ofNullable(ids.get(hookup.getAsInt())) : Optional.empty();
    }
}
