package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Nodes;
import leadwright.planner.plan.Reading;

/** Every single fault of the kinds of {@link FaultKind} that a plan's device can have. Sizes are common practice, no source. */
public final class Faults {
    /** Damp between mains and housing, Ω. */
    private static final double DAMP = 150e3;

    /** Between line and what is not earthed, Ω. */
    private static final double CREEPING = 1e6;

    /** Through an isolation that has failed, Ω. */
    private static final double FAILED = 20e3;

    private final Plan plan;
    private final List<Fault> all = new ArrayList<>();

    private Faults(Plan plan) {
        this.plan = plan;
    }

    public static List<Fault> of(Plan plan) {
        Faults faults = new Faults(plan);
        faults.earth();
        if (plan.device().runsOnMains()) {
            faults.mains();
        }
        faults.parts();
        return List.copyOf(faults.all);
    }

    private void earth() {
        boolean cord = false;
        for (Reading reading : plan.readings()) {
            if (reading.obligation().quantity() == QuantityKind.EARTH_RESISTANCE) {
                cord = true;
                add(FaultKind.JOINT_WORN, List.of(reading.id()), new Effect.EarthPath(Effect.Earth.JOINT_WORN));
            }
        }
        if (cord) {
            add(FaultKind.CORD_WORN, List.of(), new Effect.EarthPath(Effect.Earth.CORD_WORN));
        }
    }

    private void mains() {
        join(FaultKind.LINE_TO_HOUSING, List.of(), Nodes.LINE, Nodes.CHASSIS, DAMP);
        join(FaultKind.NEUTRAL_TO_HOUSING, List.of(), Nodes.NEUTRAL, Nodes.CHASSIS, DAMP);
        for (TouchPoint point : plan.device().touchPoints()) {
            if (point.earthed() != Earthed.YES) {
                join(
                        FaultKind.LINE_TO_METAL,
                        List.of(point.id()),
                        Nodes.LINE,
                        point.connection().name(),
                        CREEPING);
            }
        }
        for (AppliedPart part : plan.device().appliedParts()) {
            join(FaultKind.LINE_TO_PART, List.of(part.id()), Nodes.LINE, Nodes.inside(part.id()), CREEPING);
        }
    }

    private void parts() {
        Device device = plan.device();
        List<AppliedPart> isolated = device.appliedParts().stream()
                .filter(part -> part.type() != PartType.B)
                .toList();
        for (int i = 0; i < isolated.size(); i++) {
            String one = isolated.get(i).id();
            join(FaultKind.PART_TO_HOUSING, List.of(one), Nodes.inside(one), Nodes.CHASSIS, FAILED);
            for (int j = i + 1; j < isolated.size(); j++) {
                String other = isolated.get(j).id();
                join(FaultKind.PART_TO_PART, List.of(one, other), Nodes.inside(one), Nodes.inside(other), FAILED);
            }
        }
    }

    private void join(FaultKind kind, List<String> things, String a, String b, double ohms) {
        add(kind, things, new Effect.Wires(List.of(new Effect.Edit.Join(a, b, ohms))));
    }

    private void add(FaultKind kind, List<String> things, Effect effect) {
        all.add(new Fault(
                kind.word() + (things.isEmpty() ? "" : "/" + String.join(",", things)), kind, things, effect));
    }
}
