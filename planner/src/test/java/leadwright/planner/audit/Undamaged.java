package leadwright.planner.audit;

import java.nio.charset.StandardCharsets;
import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.planner.SamplePlans;
import leadwright.planner.SamplePlans.Sample;

/** The good plans that are damaged. */
final class Undamaged {
    private static final String K1 = "k1-marrowgate-bench.yaml";
    private static final String MONITOR = "brindlewick-ward-monitor.yaml";
    private static final String RECURRENT = "iec-62353-2014";
    private static final String OPEN = "earth-jack: {socket: lab-4mm-socket-recessed, at-rest: open}";

    private Undamaged() {}

    /** Every quantity, both faults, mains on parts, seven hookups. */
    static final Sample WARD = SamplePlans.brindlewickTypeTest();

    /** Three therapy outputs, one of them with a wait. */
    static final Sample RESCUE = SamplePlans.oddlebar();

    /** A bench whose earth jack is earthed at rest: the earth lead comes off before leakage. */
    static final Sample RESTS_EARTHED = SamplePlans.plan(
            SamplePlans.device(MONITOR),
            SamplePlans.kitWith(K1, OPEN, OPEN.replace("open}", "earthed}")),
            RECURRENT,
            House.defaults());

    /** A bench that reads touch current through the earth lead. */
    static final Sample THROUGH_LEAD = SamplePlans.plan(
            SamplePlans.device("dovecote-infant-warmer.yaml"),
            SamplePlans.kitWith(K1, "touch-through: own", "touch-through: earth-lead"),
            "iec-60601-1-ed3",
            House.defaults());

    /** A tester without an outlet: only its second lead ties it to earth. */
    static final Sample SECOND_LEAD =
            SamplePlans.plan("slaterow-tilt-table.yaml", "k3-fixed-plant-case.yaml", RECURRENT);

    /** Three parts on one jack: leads are moved under power, after mains was on the parts. */
    static final Sample UNDER_POWER = SamplePlans.plan(
            replugged(),
            SamplePlans.kitWith(K1, "count: 6", "count: 1"),
            RECURRENT,
            house("replug-under-power: after-earth-and-touch"));

    static List<Sample> all() {
        return List.of(WARD, RESCUE, RESTS_EARTHED, THROUGH_LEAD, SECOND_LEAD, UNDER_POWER);
    }

    private static House house(String line) {
        return HouseReader.read("house", ("leadwright: house/1\n" + line + "\n").getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    private static Device replugged() {
        String text = """
                leadwright: device/1
                name: Coltsfoot recorder
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V,
                  frequency: 50 Hz, current: 0.5 A}
                protection: class-2
                battery: none
                mains-switch: both-poles
                start-up: 75 s
                shut-down: 20 s
                tolerates-power-cut: yes
                applied-parts:
                  - {id: p0, name: First, type: BF, connections: [{id: w1, terminal: snap-socket}]}
                  - {id: p1, name: Second, type: BF, connections: [{id: w1, terminal: snap-socket}]}
                  - {id: p2, name: Third, type: BF, connections: [{id: w1, terminal: snap-socket}]}
                """;
        return DeviceReader.read("device", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }
}
