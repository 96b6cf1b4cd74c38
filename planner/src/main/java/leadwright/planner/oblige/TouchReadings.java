package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.EarthedParts;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** Touch current at each accessible part and port, and between unearthed parts. */
final class TouchReadings {
    private static final String REFERENCE = Obligation.EarthSubject.REFERENCE_TO_PART.word();

    private final Asking asking;
    private final Remarks remarks;

    private TouchReadings(Asking asking, Remarks remarks) {
        this.asking = asking;
        this.remarks = remarks;
    }

    static List<Draft> toEarth(Asking asking, Remarks remarks) {
        List<Draft> all = new ArrayList<>();
        for (TestRow row : asking.tests(QuantityKind.TOUCH_CURRENT)) {
            all.addAll(new TouchReadings(asking, remarks).toEarth(row));
        }
        return all;
    }

    private List<Draft> toEarth(TestRow row) {
        List<Draft> all = new ArrayList<>();
        for (TouchPoint point : asking.device().touchPoints()) {
            if (point.earthed() != Earthed.YES) {
                all.addAll(ofPart(row, point.connection()));
            } else if (row.earthedParts() == EarthedParts.ALWAYS
                    || row.earthedParts() == EarthedParts.WITH_EARTH_OPEN
                            && row.scope().conditions().contains(Condition.EARTH_OPEN)) {
                all.addAll(ofEarthed(row, point));
            }
        }
        for (Port port : asking.device().ports()) {
            all.addAll(ofPart(row, port.connection()));
        }
        return all;
    }

    /** An unearthed part or a port: in every state; what the probe cannot touch is wired. */
    private List<Draft> ofPart(TestRow row, Connection connection) {
        boolean bare = connection.terminal().equals(Surface.METAL.word());
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            all.addAll(bare ? probed(row, connection, state) : wired(row, connection, state));
        }
        return all;
    }

    /** A part that is earthed in normal use: by most rule sets only while its earth is open. */
    private List<Draft> ofEarthed(TestRow row, TouchPoint point) {
        if (point.surface() != Surface.METAL) {
            remarks.notApplicable(
                    "touch-current of " + point.id(),
                    "its surface is " + point.surface().word()
                            + ": the probe does not read through it; a bare point of the same metal would do",
                    row.basis().clause());
            return List.of();
        }
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            if (row.earthedParts() == EarthedParts.ALWAYS || state.state().fault() == MainsState.Fault.EARTH_OPEN) {
                all.addAll(probed(row, point.connection(), state));
            }
        }
        return all;
    }

    private List<Draft> probed(TestRow row, Connection connection, StateInMode state) {
        Demand demand = asking.tester().touchThrough().equals(Optional.of(TouchThrough.JACK))
                ? Demand.of(List.of(Device.TOUCH_PROBE))
                : Demand.NOTHING;
        return readings(row, connection.name(), List.of(connection.part()), state).stream()
                .map(draft -> draft.demand(demand).place(connection.part()))
                .toList();
    }

    private List<Draft> wired(TestRow row, Connection connection, StateInMode state) {
        return readings(row, connection.name(), List.of(connection.part()), state).stream()
                .map(draft -> draft.demand(Demand.of(List.of(connection.name()))))
                .toList();
    }

    private List<Draft> readings(TestRow row, String subject, List<String> of, StateInMode state) {
        List<Draft> all = new ArrayList<>();
        for (Component component : row.scope().components()) {
            all.add(Draft.of(row.quantity(), row.basis().clause(), subject, of, state)
                    .component(Optional.of(component))
                    .limitCase(asking.asked(row.quantity())
                            .condition(state.condition())
                            .component(Optional.of(component))));
        }
        return all;
    }

    /** Voltage between the reference earth and each accessible metal part of wired equipment, through the 1 kohm network. */
    static List<Draft> bondingVoltage(Asking asking, Remarks remarks) {
        TouchReadings readings = new TouchReadings(asking, remarks);
        List<Draft> all = new ArrayList<>();
        for (TestRow row : asking.tests(QuantityKind.BONDING_VOLTAGE)) {
            for (TouchPoint point : asking.device().touchPoints()) {
                if (point.surface() == Surface.METAL) {
                    all.addAll(readings.voltage(row, point.connection()));
                } else {
                    remarks.notApplicable(
                            row.quantity().word() + " of " + point.id(),
                            "its surface is " + point.surface().word() + ": nothing is read through it",
                            row.basis().clause());
                }
            }
        }
        return all;
    }

    private List<Draft> voltage(TestRow row, Connection connection) {
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            for (Draft draft : probed(row, connection, state)) {
                all.add(draft.limitCase(draft.limitCase().orElseThrow().subject(REFERENCE))
                        .note(
                                "between the reference earth and the part, on the running installation, through the 1 kohm"
                                        + " of the measuring network: one microampere is one millivolt"));
            }
        }
        return all;
    }

    /** Between each two unearthed parts, sockets included, both wired. */
    static List<Draft> between(Asking asking, Remarks remarks) {
        TouchReadings readings = new TouchReadings(asking, remarks);
        List<Draft> all = new ArrayList<>();
        for (TestRow row : asking.tests(QuantityKind.TOUCH_CURRENT_BETWEEN)) {
            List<Connection> parts = new ArrayList<>(asking.facts().housing());
            if (!added(row)) {
                parts.addAll(asking.facts().ports());
            }
            for (int i = 0; i < parts.size(); i++) {
                for (int j = i + 1; j < parts.size(); j++) {
                    if (readings.asked(row, parts.get(i), parts.get(j))) {
                        all.addAll(readings.between(row, parts.get(i), parts.get(j)));
                    }
                }
            }
        }
        return all;
    }

    /** In a system whose rule set does not ask for it, between members only. */
    private boolean asked(TestRow row, Connection one, Connection other) {
        return !added(row)
                || asking.device()
                        .system()
                        .filter(system -> !system.memberOf(one.part()).equals(system.memberOf(other.part())))
                        .isPresent();
    }

    /** Whether it is the project's own row for systems, not the rule set's. */
    private static boolean added(TestRow row) {
        return row.basis().clause().startsWith("bench practice");
    }

    private List<Draft> between(TestRow row, Connection one, Connection other) {
        Demand demand = Demand.of(List.of(one.name()), List.of(other.name()), List.of());
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            readings(row, one.name() + "-" + other.name(), List.of(one.part(), other.part()), state)
                    .forEach(draft -> all.add(draft.demand(demand)));
        }
        return all;
    }
}
