package leadwright.planner.audit;

import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Step;

/** The earth lead along the steps: nulled, on its place, off before leakage and shown to be off, or carrying the probe. */
final class EarthReplay {
    /** Places of the second lead: the other pole of two-lead readings. */
    private static final Set<String> REFERENCES = Set.of("inlet-earth", "cord-plug-earth", "reference-earth");

    /** What stands on the lead instead of its clip, where the tester reads touch current through it. */
    private static final String PROBE = "touch-probe";

    private final BenchModel bench;
    private final Breaches breaches;
    private final boolean restsOpen;
    private boolean nulled;
    private boolean nullDueAtEnd;
    private boolean leakageBegun;
    private boolean proofDue;
    private Optional<String> clipPlace = Optional.empty();
    private Optional<String> referencePlace = Optional.empty();

    EarthReplay(BenchModel bench, Breaches breaches) {
        this.bench = bench;
        this.breaches = breaches;
        this.restsOpen = bench.plan
                .kit()
                .tester()
                .earthJack()
                .flatMap(jack -> jack.atRest())
                .map(rest -> rest == AtRest.OPEN)
                .orElse(false);
    }

    void clip(Step step) {
        if (step.place().map(REFERENCES::contains).orElse(false)) {
            referencePlace = step.place();
        } else {
            clipPlace = step.place();
        }
    }

    void nulled() {
        nulled = true;
        // The tips are together, or one is on the outlet: no lead is on its place any more.
        clipPlace = clipPlace.filter(PROBE::equals);
        referencePlace = Optional.empty();
        nullDueAtEnd = false;
    }

    void joined() {
        nulled = false;
    }

    void parted(Joint joint) {
        clipPlace = Optional.empty();
        referencePlace = Optional.empty();
        proofDue |= joint.to().equals("earth-jack") && !restsOpen && !bench.permanent;
    }

    void end() {
        breaches.check(
                !nullDueAtEnd, Invariant.NULLING, "end", "the leads are not nulled again after the earth readings");
    }

    void read(Step step, Obligation what, String where) {
        switch (what.phase()) {
            case EARTH -> resistance(step, what, where);
            case ORDINARY, MAINS_ON_PART -> {
                leakage(where);
                earthed(where);
            }
            case CHECK -> {
                if (what.quantity() == QuantityKind.PROOF) {
                    breaches.check(
                            !fitted(), Invariant.EARTH_LEAD_PROVEN, where, "proves off a lead that is still plugged");
                    proofDue = false;
                }
            }
            case INSULATION -> {}
        }
        boolean throughLead = what.isTouch()
                && what.demand().isNothing()
                && bench.plan.kit().tester().touchThrough().equals(Optional.of(TouchThrough.EARTH_LEAD));
        if (throughLead) {
            breaches.check(
                    clipPlace.equals(Optional.of(PROBE)) && (bench.earthJoints.isEmpty() || fitted()),
                    Invariant.TOUCH_PLACE,
                    where,
                    "reads through the earth lead, which does not carry the probe");
        }
    }

    private void resistance(Step step, Obligation what, String where) {
        breaches.check(nulled, Invariant.NULLING, where, "an earth reading with leads that are not nulled");
        nullDueAtEnd = true;
        Optional<Hookup> hookup = step.hookup().flatMap(bench.plan::hookup);
        hookup.ifPresent(each -> breaches.check(
                bench.made.containsAll(Joints.ofEarth(each)),
                Invariant.EARTH_PATH,
                where,
                "the earth lead is not fitted as the hookup says"));
        what.place()
                .ifPresent(place -> breaches.check(
                        clipPlace.equals(Optional.of(place)),
                        Invariant.CLIP_PLACE,
                        where,
                        "the clip is not on " + place));
        Optional<String> reference = what.earthSubject().flatMap(subject -> switch (subject) {
            case INLET_TO_PART -> Optional.of("inlet-earth");
            case REFERENCE_TO_PART -> Optional.of("reference-earth");
            case CORD -> twoLeads(hookup) ? Optional.of("cord-plug-earth") : Optional.<String>empty();
            case PLUG_TO_PART -> Optional.<String>empty();
        });
        reference.ifPresent(place -> breaches.check(
                referencePlace.equals(reference), Invariant.CLIP_PLACE, where, "the second lead is not on " + place));
    }

    private static boolean twoLeads(Optional<Hookup> hookup) {
        return hookup.stream()
                .flatMap(each -> each.earth().stream())
                .anyMatch(path -> path.pole().equals("reference"));
    }

    private boolean fitted() {
        return bench.made.stream().anyMatch(joint -> joint.to().equals("earth-jack"));
    }

    /** A tester without an outlet has no earth but through its second lead. */
    private void earthed(String where) {
        boolean bySecondLead = bench.plan.kit().tester().outlets().isEmpty()
                && bench.plan
                        .kit()
                        .tester()
                        .earthTest()
                        .filter(test -> test.sockets().contains("second-jack"))
                        .isPresent();
        breaches.check(
                !bySecondLead || referencePlace.equals(Optional.of("reference-earth")),
                Invariant.REFERENCE_ON,
                where,
                "reads leakage with the tester's second lead off the reference earth, its only way to earth");
    }

    private void leakage(String where) {
        if (leakageBegun) {
            return;
        }
        leakageBegun = true;
        breaches.check(
                restsOpen || !fitted() || bench.permanent,
                Invariant.EARTH_LEAD_PARTED,
                where,
                "the first leakage reading with the earth lead still on");
        breaches.check(
                !proofDue,
                Invariant.EARTH_LEAD_PROVEN,
                where,
                "the first leakage reading without a proof that the parted earth lead is off");
    }
}
