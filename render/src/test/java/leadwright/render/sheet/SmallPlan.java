package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.House;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * A plan made by hand: one hookup, twelve wires (ECG of ten, a sensor, a probe), twelve readings. Its names can be
 * anything, so that tests can see that names stay data. It is no answer of the planner; it only has the shape of one.
 *
 * <pre>
 *  ecg R L F N C1..C6 --snap-pin-- spread 1 --- jack 1
 *  sensor ------------- wrap ------------------ jack 2
 *  probe -------------- wrap ------------------ jack 3
 *  pole clamp --------- jaw, lead-earth ------- earth jack
 * </pre>
 */
public final class SmallPlan {

    private static final Optional<Quantity> NONE = Optional.empty();
    private static final List<String> ECG = List.of("R", "L", "F", "N", "C1", "C2", "C3", "C4", "C5", "C6");

    private String deviceName = "Brindlewick ward monitor";
    private LabelCode labels = LabelCode.IEC;
    private Paper paper = Paper.A4;
    private EarthWord words = EarthWord.EARTH;
    private boolean partial;
    private boolean training;
    private Mark mark = Mark.C;
    private int rounds = 1;

    public SmallPlan named(String name) {
        deviceName = name;
        return this;
    }

    public SmallPlan on(Paper size) {
        paper = size;
        return this;
    }

    public SmallPlan grounded() {
        words = EarthWord.GROUND;
        labels = LabelCode.AHA;
        return this;
    }

    public SmallPlan partial() {
        partial = true;
        return this;
    }

    public SmallPlan training() {
        training = true;
        return this;
    }

    /** All limits marked B, so that none is unconfirmed. */
    public SmallPlan confirmed() {
        mark = Mark.B;
        return this;
    }

    /** Repeats the powered readings so many times: a plan of many pages. */
    public SmallPlan rounds(int times) {
        rounds = times;
        return this;
    }

    public Plan plan() {
        Device device = device();
        Steps steps = new Steps();
        steps.look();
        steps.read(MainsState.OFF, check(QuantityKind.TESTER_CHECK, "known-resistor"), Optional.empty());
        for (String pair : List.of("line-to-earth", "neutral-to-earth", "line-to-neutral")) {
            steps.read(MainsState.OFF, check(QuantityKind.SUPPLY_VOLTAGE, pair), Optional.empty());
        }
        steps.joints(hookup(device));
        steps.nulled();
        steps.clip("pole-clamp");
        steps.read(MainsState.OFF, earth("pole-clamp"), Optional.of("H1"));
        steps.clip("back-plate");
        steps.read(MainsState.OFF, earth("back-plate"), Optional.of("H1"));
        steps.nulled();
        for (int round = 0; round < rounds; round++) {
            for (MainsState state : List.of(MainsState.NORMAL, MainsState.REVERSED)) {
                steps.state(state);
                for (String part : List.of("ecg", "spo2", "temp")) {
                    steps.read(state, part(device, part, state), Optional.of("H1"));
                }
            }
        }
        steps.state(MainsState.OFF);
        steps.restore();
        int total = steps.steps.stream().mapToInt(Step::seconds).sum();
        return new Plan(
                "1a2b3c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e6f708192a3b4c5d6e7f809",
                partial,
                training,
                device,
                kit(),
                house(),
                new Plan.RulesInfo("iec-62353-2014", "IEC 62353", "2014"),
                "recurrent",
                Optional.empty(),
                List.of(hookup(device)),
                steps.readings,
                steps.steps,
                List.of(
                        new NotApplicable("insulation-resistance", "the house asks for it never", "5.3.3"),
                        new NotApplicable("functional-earth-leakage", "the device has no functional earth", "-")),
                partial
                        ? List.of(new Shortfall(
                                "fluid-electrode",
                                List.of("spo2.sensor"),
                                "no item of the kit meets a liquid column",
                                List.of("1 contact aid with a fluid electrode")))
                        : List.of(),
                List.of("The start-up time is the device file's own statement."),
                new TimeSplit(total, Map.of(Step.Account.READ, total), total, 1),
                new Proof(1, 1, "one hookup is needed and one suffices"),
                new Proof(total, total, "made by hand"));
    }

    private final class Steps {
        private final List<Step> steps = new ArrayList<>();
        private final List<Reading> readings = new ArrayList<>();

        private void add(Step.Act does, String text, MainsState state, Optional<String> place, Step.Account account) {
            Optional<String> hookup = readings.size() < 1 ? Optional.empty() : Optional.of("H1");
            steps.add(new Step(
                    steps.size() + 1,
                    does,
                    text,
                    Optional.empty(),
                    state,
                    hookup,
                    Optional.empty(),
                    place,
                    10,
                    account,
                    0,
                    Optional.empty(),
                    Optional.empty(),
                    "made by hand"));
        }

        void look() {
            add(Step.Act.LOOK, "Look over", MainsState.OFF, Optional.empty(), Step.Account.PREPARE);
        }

        void joints(Hookup hookup) {
            Set<Joint> joints = new LinkedHashSet<>();
            for (Chain chain : hookup.chains()) {
                List<String> ends = new ArrayList<>(List.of(chain.connection()));
                ends.addAll(chain.items());
                ends.add("jack-" + chain.jack());
                for (int i = ends.size() - 1; i > 0; i--) {
                    joints.add(new Joint(ends.get(i - 1), ends.get(i)));
                }
            }
            joints.add(new Joint("lead-earth/1", "earth-jack"));
            joints.add(new Joint("jaw/1", "lead-earth/1"));
            joints.forEach(joint -> {
                add(Step.Act.JOIN, "Join " + joint.from(), MainsState.OFF, Optional.empty(), Step.Account.REPLUG);
                Step last = steps.remove(steps.size() - 1);
                steps.add(new Step(
                        last.number(),
                        last.does(),
                        last.text(),
                        last.reading(),
                        last.state(),
                        Optional.of("H1"),
                        Optional.of(joint),
                        last.place(),
                        last.seconds(),
                        last.account(),
                        last.writing(),
                        last.caution(),
                        last.onFail(),
                        last.because()));
            });
        }

        void nulled() {
            add(Step.Act.NULL, "Null the lead", MainsState.OFF, Optional.empty(), Step.Account.NULL);
        }

        void clip(String place) {
            add(Step.Act.CLIP, "Clip to " + place, MainsState.OFF, Optional.of(place), Step.Account.EARTH_LEAD);
        }

        void state(MainsState state) {
            boolean first = steps.stream().noneMatch(step -> step.does() == Step.Act.SWITCH);
            add(Step.Act.SWITCH, "Set " + state.word(), state, Optional.empty(), Step.Account.SWITCH);
            if (first) {
                add(Step.Act.START, "Start the device and wait 75 s.", state, Optional.empty(), Step.Account.START_UP);
            }
        }

        void restore() {
            add(
                    Step.Act.SHUT_DOWN,
                    "Shut the device down, 20 s.",
                    MainsState.OFF,
                    Optional.empty(),
                    Step.Account.SHUT_DOWN);
            add(Step.Act.RESTORE, "Put back", MainsState.OFF, Optional.empty(), Step.Account.PREPARE);
        }

        void read(MainsState state, Obligation what, Optional<String> hookup) {
            String id = String.format("R%02d", readings.size() + 1);
            readings.add(new Reading(id, what, hookup));
            steps.add(new Step(
                    steps.size() + 1,
                    Step.Act.READ,
                    "Read " + what.key(),
                    Optional.of(id),
                    state,
                    hookup,
                    Optional.empty(),
                    Optional.empty(),
                    10,
                    Step.Account.READ,
                    5,
                    Optional.empty(),
                    Optional.empty(),
                    "asked for"));
        }
    }

    private Device device() {
        List<PatientConnection> ecg = ECG.stream()
                .map(id -> new PatientConnection(id, "snap-socket", Optional.of(id)))
                .toList();
        return new Device(
                deviceName,
                new Supply(
                        SupplyConnection.DETACHABLE_CORD,
                        Optional.of("iec-60320-c14"),
                        Optional.of("bs-1363"),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.volts(230)),
                        NONE,
                        NONE),
                Protection.CLASS_1,
                FunctionalEarth.NONE,
                Battery.BACKS_UP,
                MainsSwitch.BOTH_POLES,
                Quantity.seconds(75),
                Quantity.seconds(20),
                true,
                Optional.of(true),
                Optional.empty(),
                List.of(),
                List.of(
                        part("ecg", "ECG", PartType.CF, ecg, Optional.of("ecg-10")),
                        part("spo2", "Pulse oximetry", PartType.BF, one("sensor"), Optional.empty()),
                        part("temp", "Temperature", PartType.CF, one("probe"), Optional.empty())),
                List.of(new Port("lan", "Network", "metal")),
                List.of(),
                List.of(touch("pole-clamp", "Pole clamp"), touch("back-plate", "Back plate")),
                List.of(),
                List.of("ecg", "spo2", "temp"),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of());
    }

    private static List<PatientConnection> one(String id) {
        return List.of(new PatientConnection(id, "skin-surface", Optional.empty()));
    }

    private static AppliedPart part(
            String id, String name, PartType type, List<PatientConnection> wires, Optional<String> set) {
        return new AppliedPart(id, name, type, false, List.of(new PartFunction(id, wires)), false, set, NONE, NONE);
    }

    private static TouchPoint touch(String id, String name) {
        return new TouchPoint(
                id, name, Earthed.YES, Surface.METAL, Optional.of(Quantity.millimetres(500)), Optional.empty());
    }

    private static Kit kit() {
        return new Kit(
                "Marrowgate bench",
                new Tester(
                        "Marrowgate bench tester",
                        Optional.of(new Jacks(6, "lab-4mm-socket-recessed", Ties.ANY, AtRest.OPEN)),
                        Optional.of(new EarthJack("lab-4mm-socket-recessed", Optional.of(AtRest.OPEN))),
                        Optional.of(TouchThrough.OWN),
                        Optional.empty(),
                        List.of(new Outlet("bs-1363", SupplySystem.LINE_NEUTRAL, Quantity.volts(230), amperes(13))),
                        Set.of(TesterSwitch.EARTH, TesterSwitch.SUPPLY, TesterSwitch.POLARITY),
                        List.of(MeasuringNetwork.IEC_60601),
                        List.of(Method.DIRECT),
                        List.of(Component.AC),
                        Optional.empty(),
                        List.of(),
                        Optional.empty(),
                        Map.of("earth", new Accuracy(Quantity.of(Dimension.RATIO, 20_000), Quantity.milliOhms(10))),
                        Optional.of(java.time.LocalDate.of(2027, 8, 31))),
                List.of(
                        item("snap-pin", ItemKind.ADAPTER, 0, 12),
                        item("spread", ItemKind.FAN_OUT, 10, 2),
                        item("wrap", ItemKind.CONTACT_AID, 0, 10),
                        item("lead-earth", ItemKind.LEAD, 0, 2),
                        item("jaw", ItemKind.CLIP, 0, 8)),
                List.of(new KnownResistor(
                        "known-resistor",
                        Quantity.of(Dimension.RESISTANCE, 2_300_000_000_000L),
                        Quantity.of(Dimension.RATIO, 50_000),
                        NONE)),
                List.of());
    }

    private static Quantity amperes(long amperes) {
        return Quantity.of(Dimension.CURRENT, amperes * 1_000_000_000L);
    }

    private static KitItem item(String id, ItemKind kind, int branches, int stock) {
        return new KitItem(
                id,
                kind,
                List.of("lab-4mm-plug-shrouded", "lab-4mm-socket-recessed"),
                branches,
                List.of(),
                NONE,
                Optional.empty(),
                NONE,
                NONE,
                NONE,
                stock,
                Optional.empty());
    }

    private House house() {
        House usual = House.defaults();
        return new House(
                usual.rules(),
                usual.methods(),
                usual.insulation(),
                labels,
                paper,
                words,
                usual.aim(),
                usual.replugUnderPower(),
                usual.capacitanceShare(),
                usual.capacitanceLimit(),
                usual.pastDue(),
                usual.decision(),
                usual.times(),
                List.of(),
                List.of(),
                List.of(),
                List.of("technician"),
                List.of(),
                Optional.of("Marrowgate, Ambersluice Infirmary"));
    }

    private static Hookup hookup(Device device) {
        List<Chain> chains = new ArrayList<>();
        int adapter = 0;
        for (Connection each : device.patientConnections()) {
            adapter++;
            if (each.part().equals("ecg")) {
                chains.add(new Chain(each.name(), List.of("snap-pin/" + adapter, "spread/1"), 1, 3));
            } else {
                int jack = adapter - 9;
                chains.add(new Chain(each.name(), List.of("wrap/" + (adapter - 10)), jack, 2));
            }
        }
        return new Hookup(
                "H1",
                List.of(
                        new Bundle("H1.b1", ECG.stream().map(id -> "ecg." + id).toList(), List.of(1), List.of()),
                        new Bundle("H1.b2", List.of("spo2.sensor"), List.of(2), List.of()),
                        new Bundle("H1.b3", List.of("temp.probe"), List.of(3), List.of())),
                chains,
                List.of(new EarthPath("part", "pole-clamp", "earth-jack", List.of("lead-earth/1", "jaw/1"))));
    }

    private Limit limit(String id, Quantity value, String clause) {
        return new Limit(id, Limit.Bound.AT_MOST, value, clause, mark, List.of("S1"), false);
    }

    private static Obligation obligation(
            String key,
            QuantityKind quantity,
            List<String> of,
            Demand demand,
            Optional<String> place,
            Optional<Obligation.EarthSubject> subject,
            MainsState state,
            Optional<Limit> limit) {
        boolean leakage = quantity == QuantityKind.PATIENT_LEAKAGE;
        return new Obligation(
                key,
                quantity,
                "5.3",
                of,
                demand,
                place,
                subject,
                state,
                state == MainsState.OFF ? "off" : "on",
                Optional.empty(),
                leakage ? Optional.of(Method.DIRECT) : Optional.empty(),
                leakage ? Optional.of(Component.AC) : Optional.empty(),
                leakage ? Optional.of(MeasuringNetwork.IEC_60601) : Optional.empty(),
                limit,
                Optional.empty());
    }

    private Obligation check(QuantityKind kind, String subject) {
        return obligation(
                kind.word() + "/" + subject + "/off",
                kind,
                List.of(subject),
                Demand.NOTHING,
                Optional.empty(),
                Optional.empty(),
                MainsState.OFF,
                Optional.empty());
    }

    private Obligation earth(String place) {
        return obligation(
                "earth-resistance/" + place + "/off",
                QuantityKind.EARTH_RESISTANCE,
                List.of(place),
                Demand.NOTHING,
                Optional.of(place),
                Optional.of(Obligation.EarthSubject.PLUG_TO_PART),
                MainsState.OFF,
                Optional.of(limit("earth-cord-fitted", Quantity.milliOhms(300), "5.3.2.2")));
    }

    private Obligation part(Device device, String part, MainsState state) {
        List<String> wires = device.part(part).orElseThrow().connections().stream()
                .map(Connection::name)
                .toList();
        return obligation(
                "patient-leakage/" + part + "/" + state.word() + "/ac",
                QuantityKind.PATIENT_LEAKAGE,
                List.of(part),
                Demand.of(wires),
                Optional.empty(),
                Optional.empty(),
                state,
                Optional.of(limit("patient-" + part, Quantity.microAmperes(50), "Table 2")));
    }
}
