package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Obligation.EarthSubject;

/** Protective-earth and bonding readings: one for each earthed point, between the places that the supply and the tester give. */
final class EarthReadings {
    /** Place of the reading of a cord alone. */
    static final String CORD_EARTH = "cord-earth";

    private static final String SYSTEM = "system-";

    private final Asking asking;
    private final Remarks remarks;
    private final TestRow row;

    private EarthReadings(Asking asking, Remarks remarks, TestRow row) {
        this.asking = asking;
        this.remarks = remarks;
        this.row = row;
    }

    static List<Draft> of(Asking asking, Remarks remarks) {
        List<Draft> all = new ArrayList<>();
        for (QuantityKind quantity : List.of(QuantityKind.EARTH_RESISTANCE, QuantityKind.BONDING_RESISTANCE)) {
            for (TestRow row : asking.tests(quantity)) {
                all.addAll(new EarthReadings(asking, remarks, row).readings());
            }
        }
        return all;
    }

    private List<Draft> readings() {
        List<Draft> all = new ArrayList<>();
        studs();
        EarthSubject subject = subject();
        boolean painted = false;
        for (TouchPoint point : asking.device().touchPoints()) {
            if (point.earthed() != Earthed.NO) {
                if (point.surface() == Surface.METAL) {
                    all.add(toPoint(point, subject));
                } else {
                    throughPaint(point);
                    painted |= point.earthed() == Earthed.YES;
                }
            }
        }
        // Where the parts are painted the cord that comes off can still be read by itself.
        boolean cordAlone = subject == EarthSubject.INLET_TO_PART
                || subject == EarthSubject.PLUG_TO_PART && asking.facts().detachableCord() && all.isEmpty();
        if (cordAlone && (painted || !all.isEmpty())) {
            all.add(reading("cord", EarthSubject.CORD)
                    .place(CORD_EARTH)
                    .limitCase(asking.asked(row.quantity()).subject(EarthSubject.CORD.word()))
                    .note("the cord alone, flexed along its length and at both ends while reading"));
        }
        return all;
    }

    /** What the tester and the rule set's limits allow; a detachable cord stays fitted where both have that case. */
    private EarthSubject subject() {
        if (asking.facts().fixedPlant()) {
            return EarthSubject.REFERENCE_TO_PART;
        }
        if (!asking.facts().detachableCord()) {
            return EarthSubject.PLUG_TO_PART;
        }
        boolean ruled = asking.rules()
                .limit(RuleCase.of(
                                row.quantity(),
                                asking.facts().protection(),
                                SupplyConnection.DETACHABLE_CORD,
                                asking.device().builtTo())
                        .subject(EarthSubject.PLUG_TO_PART.word()))
                .isPresent();
        boolean outletEarth = asking.tester()
                .earthTest()
                .filter(test -> test.sockets().containsAll(List.of("earth-jack", "outlet-earth")))
                .isPresent();
        return ruled && outletEarth ? EarthSubject.PLUG_TO_PART : EarthSubject.INLET_TO_PART;
    }

    private Draft toPoint(TouchPoint point, EarthSubject subject) {
        Draft draft = reading(point.id(), subject).place(point.id());
        if (point.earthed() == Earthed.UNKNOWN) {
            return draft.note(
                    "continuity look: nobody states whether this part is earthed; not judged. If it is, say so"
                            + " in the device file and plan again; until then it also counts as unearthed");
        }
        // Through the outlet of a system the path is longer, and has a limit of its own or none.
        boolean system = asking.device().system().isPresent() && subject == EarthSubject.PLUG_TO_PART;
        draft = draft.limitCase(asking.asked(row.quantity()).subject((system ? SYSTEM : "") + subject.word()));
        return switch (subject) {
            case PLUG_TO_PART -> draft.note("cord fitted, and flexed along its length and at both ends while reading");
            case INLET_TO_PART -> draft.note("cord out; from the earth pin of the inlet, two leads");
            case REFERENCE_TO_PART -> draft.note("from the reference earth or the earth terminal, two leads");
            case CORD -> draft;
        };
    }

    private Draft reading(String subject, EarthSubject between) {
        Draft draft = Draft.of(
                        row.quantity(),
                        row.basis().clause(),
                        subject,
                        List.of(subject),
                        StateInMode.of(row, asking.facts()).get(0))
                .earthSubject(between);
        for (EarthTestRow source : asking.rules().earthTest()) {
            draft = draft.note("test current " + source.atLeast().text() + " or more"
                    + source.factorOfRated()
                            .map(factor -> ", or " + factor.toPlainString() + " x the rated current where that is more")
                            .orElse("")
                    + source.lasting()
                            .map(time -> ", for " + time.text() + " or more")
                            .orElse(""));
        }
        Optional<Quantity> current = EarthCurrent.set(asking);
        if (current.isPresent()) {
            draft = draft.note("set " + current.get().text() + " on the tester");
        }
        Optional<EarthTest> test = asking.tester().earthTest();
        if (test.filter(each -> each.source() == Component.DC).isPresent()) {
            draft = draft.note("d.c. source: both directions, the larger value counts");
        }
        return draft;
    }

    private void throughPaint(TouchPoint point) {
        boolean unknown = point.earthed() == Earthed.UNKNOWN;
        remarks.notApplicable(
                row.quantity().word() + " of " + point.id(),
                (unknown ? "nobody states whether it is earthed, and its" : "its") + " surface is "
                        + point.surface().word()
                        + ": no reading through it; a bare point of the same metal would do",
                row.basis().clause());
        if (!unknown) {
            remarks.warn(point.name() + " is to be earthed, but its surface is "
                    + point.surface().word() + ": its earth is not measured; state a bare point of the same metal");
        }
    }

    /** A stud for equalising potentials is read by nobody: it says nothing of what a person touches. */
    private void studs() {
        asking.device()
                .earthPoints()
                .forEach(point -> remarks.notApplicable(
                        row.quantity().word() + " of " + point.id(),
                        point.name() + ": no protective-earth path; a sound stud proves nothing of the housing, so that"
                                + " every earthed part is read instead",
                        "bench practice"));
    }
}
