package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Shortfall;

/**
 * A protective earth of which nothing can be read is not known to be sound: no conductor is opened then and no mains put on
 * a part. The cord alone says nothing of the device, and a look at a part that nobody states to be earthed says nothing where
 * other parts are stated to be.
 */
public final class EarthUnread {
    private static final String BECAUSE = Shortfall.EARTH_NOT_KNOWN;

    private EarthUnread() {}

    /** Points of which one at least has to be read; empty where no protective earth is due. */
    static List<String> points(Asking asking) {
        if (!asking.facts().hasProtectiveEarth()
                || asking.tests(QuantityKind.EARTH_RESISTANCE).isEmpty()) {
            return List.of();
        }
        List<String> stated = ids(asking, Earthed.YES);
        return stated.isEmpty() ? ids(asking, Earthed.UNKNOWN) : stated;
    }

    private static List<String> ids(Asking asking, Earthed earthed) {
        return asking.device().touchPoints().stream()
                .filter(point -> point.earthed() == earthed)
                .map(TouchPoint::id)
                .toList();
    }

    /**
     * What is left of the readings where the earth cannot be read; the same where it can, or where that was said before.
     *
     * @param unwired keys of readings that no hookup serves
     */
    public static Obligations withheld(Obligations due, Collection<String> unwired) {
        Set<String> points = new HashSet<>(due.earthPoints());
        Set<String> not = new HashSet<>(unwired);
        boolean read = due.wanted().stream()
                .filter(each -> each.quantity() == QuantityKind.EARTH_RESISTANCE && !not.contains(each.key()))
                .anyMatch(each -> each.place().filter(points::contains).isPresent());
        if (points.isEmpty() || read) {
            return due;
        }
        boolean lead = due.wanted().stream().anyMatch(each -> each.phase() == Phase.EARTH && !not.contains(each.key()));
        List<Obligation> withheld =
                due.wanted().stream().filter(EarthUnread::dangerous).toList();
        List<Obligation> left = due.wanted().stream()
                .filter(each -> !dangerous(each))
                // With no earth lead there is none to show off.
                .filter(each -> lead || each.quantity() != QuantityKind.PROOF)
                .toList();
        List<Shortfall> shortfalls = new ArrayList<>(due.shortfalls());
        shortfalls.add(shortfall(withheld, due.earthPoints()));
        List<String> warnings = new ArrayList<>(due.warnings());
        warnings.add(
                0,
                BECAUSE + ". Nothing is powered before the earth was read with another tester the same day, and found"
                        + " within its limit; write down tester and value");
        return new Obligations(
                left, due.notApplicable(), shortfalls, warnings, due.refusal(), due.earthCurrent(), List.of());
    }

    private static boolean dangerous(Obligation what) {
        return what.state().fault() != Fault.NONE || what.phase() == Phase.MAINS_ON_PART;
    }

    private static Shortfall shortfall(List<Obligation> withheld, List<String> points) {
        Map<String, Long> counts = withheld.stream()
                .collect(Collectors.groupingBy(each -> inWords(each), LinkedHashMap::new, Collectors.counting()));
        String what = counts.entrySet().stream()
                .map(each ->
                        each.getKey() + " (" + each.getValue() + (each.getValue() == 1 ? " reading)" : " readings)"))
                .collect(Collectors.joining(", "));
        return new Shortfall(
                "protective earth",
                List.of(),
                BECAUSE + (what.isEmpty() ? "" : "; not measured: " + what),
                List.of("an earth reading of " + String.join(" or ", points)
                        + ", or of a bare point of the same metal stated in the device file"),
                List.of(),
                withheld.stream().map(Obligation::key).toList());
    }

    private static String inWords(Obligation what) {
        Optional<String> when = what.state().fault() == Fault.NONE
                ? Optional.empty()
                : Optional.of(" with " + what.state().fault().word().replace('-', ' '));
        return what.quantity().word() + when.orElse("");
    }
}
