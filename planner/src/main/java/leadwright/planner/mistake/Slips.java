package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.foresee.Mains;
import leadwright.planner.foresee.Nodes;
import leadwright.planner.foresee.Stretch;
import leadwright.planner.foresee.Variation;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Every single slip of the kinds of {@link SlipKind} that can be made with a plan. */
public final class Slips {
    /** A contact that is plugged by mistake is as good as one that is plugged rightly; Ω. */
    private static final double CONTACT = 0.02;

    /** Skin through a dry foil or a bubble; Ω. Common practice, no source. */
    private static final double POOR = 10e6;

    private static final Mains HIGH = new Mains(230, 50);
    private static final Mains LOW = new Mains(120, 60);

    /** Parts the low supplies from the high ones; V. */
    private static final double BETWEEN = 160;

    private final Plan plan;
    private final List<Slip> all = new ArrayList<>();

    private Slips(Plan plan) {
        this.plan = plan;
    }

    /** In the order hookup by hookup, then those that concern every reading. */
    public static List<Slip> of(Plan plan) {
        Slips slips = new Slips(plan);
        plan.hookups().forEach(slips::wiring);
        slips.earth();
        slips.arrangements();
        return List.copyOf(slips.all);
    }

    private void wiring(Hookup hookup) {
        boolean leaks = plan.readings().stream()
                .anyMatch(each -> each.hookup().equals(Optional.of(hookup.id()))
                        && !each.obligation().demand().isNothing());
        if (!leaks) {
            return;
        }
        List<Stretch> stretches = Stretch.of(hookup);
        for (Chain chain : hookup.chains()) {
            Stretch own = first(stretches, chain.connection());
            add(hookup, SlipKind.WIRE_OFF, List.of(chain.connection()), parted(own));
            for (int jack : otherBundles(hookup, chain)) {
                List<Effect.Edit> edits = List.of(
                        new Effect.Edit.Part(own.resistance()),
                        new Effect.Edit.Join(chain.connection(), Nodes.jack(jack), CONTACT));
                add(
                        hookup,
                        SlipKind.WRONG_BUNDLE,
                        List.of(chain.connection(), "jack " + jack),
                        new Effect.Wires(edits));
            }
            if (aided(chain)) {
                List<Effect.Edit> edits = List.of(
                        new Effect.Edit.Part(own.resistance()), new Effect.Edit.Join(own.from(), own.to(), POOR));
                add(hookup, SlipKind.POOR_CONTACT, List.of(chain.connection()), new Effect.Wires(edits));
                add(
                        hookup,
                        SlipKind.FOIL_ON_METAL,
                        List.of(chain.connection()),
                        new Effect.Wires(List.of(new Effect.Edit.Join(chain.connection(), Nodes.CHASSIS, CONTACT))));
            }
        }
        for (Stretch each : stretches) {
            if (each.from().startsWith(Nodes.item(""))) {
                String item = each.from().substring(Nodes.item("").length());
                add(hookup, SlipKind.TRUNK_OFF, List.of(item), parted(each));
                add(hookup, SlipKind.NEIGHBOUR_BRANCH, List.of(item), new Effect.None());
            }
        }
        swaps(hookup, stretches);
        boolean open = plan.kit()
                .tester()
                .jacks()
                .filter(jacks -> jacks.atRest() == AtRest.EARTHED)
                .isEmpty();
        if (open && hookup.chains().stream().map(Chain::jack).distinct().count() > 1) {
            add(hookup, SlipKind.IDLE_JACKS_EARTHED, List.of(), new Effect.Arrangement(Variation.IDLE_JACKS_EARTHED));
        }
    }

    private void swaps(Hookup hookup, List<Stretch> stretches) {
        Map<String, List<Stretch>> into = new TreeMap<>();
        stretches.stream()
                .filter(each -> each.to().startsWith("jack-"))
                .forEach(each -> into.computeIfAbsent(each.to(), jack -> new ArrayList<>())
                        .add(each));
        List<String> jacks = new ArrayList<>(into.keySet());
        for (int i = 0; i < jacks.size(); i++) {
            for (int j = i + 1; j < jacks.size(); j++) {
                List<Effect.Edit> edits = new ArrayList<>();
                move(into.get(jacks.get(i)), jacks.get(j), edits);
                move(into.get(jacks.get(j)), jacks.get(i), edits);
                add(
                        hookup,
                        SlipKind.BUNDLES_SWAPPED,
                        List.of(jacks.get(i).replace('-', ' '), jacks.get(j).replace('-', ' ')),
                        new Effect.Wires(edits));
            }
        }
    }

    private static void move(List<Stretch> stretches, String jack, List<Effect.Edit> edits) {
        for (Stretch each : stretches) {
            edits.add(new Effect.Edit.Part(each.resistance()));
            edits.add(new Effect.Edit.Join(each.from(), jack, CONTACT));
        }
    }

    private static Effect parted(Stretch stretch) {
        return new Effect.Wires(List.of(new Effect.Edit.Part(stretch.resistance())));
    }

    private static Stretch first(List<Stretch> stretches, String connection) {
        return stretches.stream()
                .filter(each -> each.from().equals(connection))
                .findFirst()
                .orElseThrow();
    }

    private static List<Integer> otherBundles(Hookup hookup, Chain chain) {
        TreeSet<Integer> jacks =
                hookup.chains().stream().map(Chain::jack).collect(Collectors.toCollection(TreeSet::new));
        jacks.removeAll(hookup.bundleOf(chain.connection())
                .map(bundle -> bundle.jacks())
                .orElse(List.of(chain.jack())));
        return List.copyOf(jacks);
    }

    private boolean aided(Chain chain) {
        return !chain.items().isEmpty()
                && plan.kit()
                        .item(kind(chain.items().get(0)))
                        .filter(item -> item.kind() == ItemKind.CONTACT_AID)
                        .isPresent();
    }

    private static String kind(String instance) {
        int slash = instance.lastIndexOf('/');
        return slash < 0 ? instance : instance.substring(0, slash);
    }

    private void earth() {
        Map<String, List<String>> places = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            Obligation what = reading.obligation();
            if (what.quantity() == QuantityKind.EARTH_RESISTANCE
                    && reading.hookup().isPresent()) {
                places.computeIfAbsent(reading.hookup().get(), each -> new ArrayList<>())
                        .add(reading.id());
            }
        }
        places.forEach((hookup, readings) -> {
            for (String reading : readings) {
                earth(hookup, SlipKind.CLIP_ON_PAINT, reading, Effect.Earth.OPEN);
                earth(hookup, SlipKind.CLIP_ELSEWHERE, reading, Effect.Earth.ELSEWHERE);
                earth(hookup, SlipKind.TOOL_IN_JAWS, reading, Effect.Earth.LONGER);
            }
            earth(hookup, SlipKind.LEADS_WARM, "leads", Effect.Earth.WARMED);
            if (nulls()) {
                earth(hookup, SlipKind.NULL_WITH_CORD, "leads", Effect.Earth.CORD_NULLED);
                earth(hookup, SlipKind.NULL_TIPS_APART, "leads", Effect.Earth.NULLED_OPEN);
            }
            earth(hookup, SlipKind.SECOND_WAY_TO_EARTH, "earth readings", Effect.Earth.SHUNTED);
        });
    }

    private boolean nulls() {
        return plan.steps().stream().anyMatch(step -> step.does() == Step.Act.NULL);
    }

    private void earth(String hookup, SlipKind kind, String thing, Effect.Earth how) {
        all.add(new Slip(
                hookup + "/" + kind.word() + "/" + thing,
                kind,
                Optional.of(hookup),
                List.of(thing),
                new Effect.EarthPath(how)));
    }

    private void arrangements() {
        Device device = plan.device();
        boolean powered = plan.readings().stream()
                .anyMatch(each -> each.obligation().state().polarity() != MainsState.Polarity.NONE);
        boolean leaks = plan.readings().stream()
                .map(Reading::obligation)
                .anyMatch(each -> each.component().isPresent() && each.phase() != Obligation.Phase.CHECK);
        boolean inside = leaks
                || plan.readings().stream()
                        .anyMatch(each -> each.obligation().quantity() == QuantityKind.INSULATION_RESISTANCE);
        if (device.mainsSwitch() == MainsSwitch.BOTH_POLES || device.mainsSwitch() == MainsSwitch.ONE_POLE) {
            everywhere(SlipKind.SWITCH_OFF, Variation.SWITCH_OFF, device.runsOnMains() && inside);
        }
        everywhere(SlipKind.STANDBY, new Effect.None(), powered);
        everywhere(SlipKind.ON_BATTERY, Variation.ON_BATTERY, powered && device.battery() != Battery.NONE);
        everywhere(SlipKind.POLARITY_NOT_TURNED, Variation.POLARITY_STUCK, any(MainsState.Polarity.REVERSED));
        everywhere(SlipKind.SUPPLY_NOT_OPENED, Variation.SUPPLY_NOT_OPENED, any(MainsState.Fault.SUPPLY_OPEN));
        everywhere(SlipKind.SUPPLY_LEFT_OPEN, Variation.SUPPLY_LEFT_OPEN, any(MainsState.Fault.SUPPLY_OPEN));
        everywhere(SlipKind.EARTH_NOT_OPENED, Variation.EARTH_NOT_OPENED, any(MainsState.Fault.EARTH_OPEN));
        everywhere(SlipKind.EARTH_LEFT_OPEN, Variation.EARTH_LEFT_OPEN, any(MainsState.Fault.EARTH_OPEN));
        Effect secondWay =
                new Effect.Wires(List.of(new Effect.Edit.Join(Nodes.CHASSIS, Circuit.EARTH, Reckoning.SECOND_WAY)));
        everywhere(
                SlipKind.SECOND_WAY_TO_EARTH,
                secondWay,
                leaks && device.supply().connection() != SupplyConnection.PERMANENT);
        everywhere(SlipKind.SUPPLY_NOT_EARTHED, Variation.SUPPLY_NOT_EARTHED, powered);
        everywhere(SlipKind.WALL_EXCHANGED, Variation.WALL_EXCHANGED, powered);
        everywhere(SlipKind.SECOND_DEVICE, Variation.SECOND_DEVICE, powered);
        everywhere(SlipKind.WRONG_VOLTAGE, new Effect.Scaled(otherSupply()), powered);
        everywhere(SlipKind.SUPPLY_TRIPPED, new Effect.Scaled(0), powered);
        everywhere(
                SlipKind.AC_FOR_DC,
                Variation.AC_FOR_DC,
                plan.readings().stream()
                        .anyMatch(each -> each.obligation().component().equals(Optional.of(Component.DC))));
        everywhere(SlipKind.FUSE_BLOWN, new Effect.Scaled(0), leaks);
    }

    /** The current changes with voltage and frequency together: 230 V 50 Hz for 120 V 60 Hz, or the other way. */
    private double otherSupply() {
        Mains planned = Mains.of(plan.device(), plan.kit()).orElse(HIGH);
        return planned.ratioTo(planned.volts() < BETWEEN ? HIGH : LOW);
    }

    private boolean any(MainsState.Polarity polarity) {
        return plan.readings().stream()
                .anyMatch(each -> each.obligation().state().polarity() == polarity);
    }

    private boolean any(MainsState.Fault fault) {
        return plan.readings().stream()
                .anyMatch(each -> each.obligation().state().fault() == fault);
    }

    private void everywhere(SlipKind kind, Variation variation, boolean possible) {
        everywhere(kind, new Effect.Arrangement(variation), possible);
    }

    private void everywhere(SlipKind kind, Effect effect, boolean possible) {
        if (possible) {
            all.add(new Slip(kind.word(), kind, Optional.empty(), List.of(), effect));
        }
    }

    private void add(Hookup hookup, SlipKind kind, List<String> things, Effect effect) {
        String id = hookup.id() + "/" + kind.word() + (things.isEmpty() ? "" : "/" + String.join(",", things));
        all.add(new Slip(id, kind, Optional.of(hookup.id()), things, effect));
    }
}
