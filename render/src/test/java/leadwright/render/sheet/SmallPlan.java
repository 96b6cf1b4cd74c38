package leadwright.render.sheet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Foresight;
import leadwright.planner.Plan;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
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
        Device device = SmallBench.device(deviceName);
        SmallSteps steps = new SmallSteps();
        steps.look();
        steps.read(MainsState.OFF, check(QuantityKind.TESTER_CHECK, "known-resistor"), Optional.empty());
        for (String pair : List.of("line-to-earth", "neutral-to-earth", "line-to-neutral")) {
            steps.read(MainsState.OFF, check(QuantityKind.SUPPLY_VOLTAGE, pair), Optional.empty());
        }
        steps.joints(SmallBench.hookup(device));
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
        int total = steps.steps().stream().mapToInt(Step::seconds).sum();
        return new Plan(
                "1a2b3c4d5e6f708192a3b4c5d6e7f8091a2b3c4d5e6f708192a3b4c5d6e7f809",
                partial,
                training,
                device,
                SmallBench.kit(),
                SmallBench.house(labels, paper, words),
                new Plan.RulesInfo("iec-62353-2014", "IEC 62353", "2014"),
                "recurrent",
                Optional.empty(),
                List.of(SmallBench.hookup(device)),
                steps.readings(),
                steps.steps(),
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
                Optional.empty(),
                List.of("The start-up time is the device file's own statement."),
                new TimeSplit(total, Map.of(Step.Account.READ, total), total, 1),
                new Proof(1, 1, "one hookup is needed and one suffices"),
                new Proof(total, total, "made by hand"),
                Foresight.none());
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
