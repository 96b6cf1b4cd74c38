package leadwright.planner.order;

import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/** Cautions and stop rules of readings: common practice, no source. */
record Safeguards(Texts texts) {

    private static final Set<QuantityKind> PATIENT = Set.of(
            QuantityKind.APPLIED_PART_LEAKAGE,
            QuantityKind.PATIENT_LEAKAGE,
            QuantityKind.TOTAL_PATIENT_LEAKAGE,
            QuantityKind.PATIENT_AUXILIARY,
            QuantityKind.LEAD_TO_LEAD);

    private static final String AGAIN = "A bad value once: re-seat, repeat once, record both.";
    private static final String OUT_OF_USE = " Take the device out of use, label it, tell its owner.";

    String supplyOpen() {
        return "Supply open: STILL LIVE, though the device looks dead. Nobody plugs, opens or touches; the probe by its"
                + " insulated handle only.";
    }

    String earthOpen() {
        return Texts.sentence(texts.earth())
                + " open: metal of the device may be live. Touch nothing but the probe's insulated handle.";
    }

    private static String handsOff() {
        return "Hands off, say it aloud: mains on the part. Nobody starts, plugs or touches while it is applied.";
    }

    Optional<String> caution(Obligation what) {
        if (what.phase() == Phase.MAINS_ON_PART) {
            return Optional.of(handsOff() + " Data cables parted, therapy disarmed.");
        }
        if (what.phase() == Phase.INSULATION) {
            return Optional.of("Insulation voltage: hands off until discharged and below 60 V d.c. The device's mains"
                    + " switch must be closed.");
        }
        if (what.state().fault() == Fault.SUPPLY_OPEN) {
            return Optional.of(supplyOpen());
        }
        if (what.state().fault() == Fault.EARTH_OPEN) {
            return Optional.of(earthOpen());
        }
        if (what.method().filter(each -> each == Method.ALTERNATIVE).isPresent()) {
            return Optional.of(
                    "The limited source is at mains voltage: hands off. The device's mains switch must be closed.");
        }
        if (what.phase() == Phase.EARTH) {
            return Optional.of("Do not move the clip while the test current flows.");
        }
        return Optional.empty();
    }

    Optional<String> onFail(Obligation what) {
        return switch (what.phase()) {
            case CHECK -> Optional.of(check(what));
            case EARTH ->
                what.limit().isEmpty()
                        ? Optional.of(AGAIN)
                        : Optional.of("If it fails: stop. No leakage readings, nothing powered through the tester."
                                + OUT_OF_USE);
            case INSULATION -> Optional.of("If it fails: stop. The device is not energised." + OUT_OF_USE);
            case MAINS_ON_PART -> Optional.of("If it fails: source off. " + AGAIN);
            case ORDINARY -> Optional.of(ordinary(what));
        };
    }

    private String check(Obligation what) {
        return switch (what.quantity()) {
            case TESTER_CHECK -> "If it is off: the tester is not used, readings since the last good check are void.";
            case PROOF ->
                "If it reads a value: the lead is still on. Take it off and prove again before any leakage reading.";
            default -> "If it fails: supply not " + texts.earth() + "-referenced, no leakage readings here.";
        };
    }

    private String ordinary(Obligation what) {
        if (what.state().fault() != Fault.NONE) {
            return "If it fails: close the conductor, outlet off. " + AGAIN;
        }
        if (what.isTouch()) {
            return "If it fails: no fault states, no mains on a part. " + AGAIN;
        }
        if (PATIENT.contains(what.quantity())) {
            return "If it fails: no mains on that part. " + AGAIN;
        }
        return "If it fails: outlet off. " + AGAIN;
    }
}
