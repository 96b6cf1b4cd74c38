package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Port;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.SourceReading;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The mistakes that can be made in one hookup, which way each moves the readings, and how each is found. */
final class Slips {

    static final List<String> HEAD = List.of("Mistake", "What the readings do, and why", "How to find it");
    static final List<Integer> WIDTHS = List.of(27, 40, 33);

    private final Plan plan;
    private final Hookup hookup;
    private final Vocabulary words;
    private final List<Obligation> readings;
    private final List<List<Words>> rows = new ArrayList<>();

    private Slips(Plan plan, Hookup hookup, Vocabulary words) {
        this.plan = plan;
        this.hookup = hookup;
        this.words = words;
        this.readings = plan.readings().stream()
                .filter(reading -> reading.hookup().equals(java.util.Optional.of(hookup.id())))
                .map(reading -> reading.obligation())
                .toList();
    }

    static List<List<Words>> of(Plan plan, Hookup hookup, Vocabulary words) {
        Slips slips = new Slips(plan, hookup, words);
        slips.wires();
        slips.earth();
        slips.states();
        slips.device();
        return slips.rows;
    }

    private void row(String mistake, String effect, String found) {
        row(mistake, "", effect, found);
    }

    /** @param names as the files give them, in brackets after the mistake */
    private void row(String mistake, String names, String effect, String found) {
        Words first = Words.strong(words.say(mistake));
        rows.add(List.of(
                names.isEmpty() ? first : first.then(" (" + names + ")"),
                Words.of(words.say(effect)),
                Words.of(words.say(found))));
    }

    private boolean any(Predicate<Obligation> what) {
        return readings.stream().anyMatch(what);
    }

    private void wires() {
        if (hookup.chains().isEmpty() || !any(each -> !each.demand().isNothing())) {
            return;
        }
        TreeSet<String> fans = new TreeSet<>();
        hookup.chains()
                .forEach(chain -> chain.items().stream()
                        .filter(item -> WiringRows.isFanOut(plan, item))
                        .map(item -> item.replace('/', ' '))
                        .forEach(fans::add));
        boolean several = hookup.bundles().stream()
                .anyMatch(bundle -> bundle.connections().size() > 1);
        row(
                fans.isEmpty() ? "A plug not pushed home" : "A wire not pushed home on a fan-out",
                several
                        ? "What flows at this wire is missing: reads low. Where several wires are joined the others still carry"
                                + " theirs, so that the value may look unchanged; where the wire is alone, it reads nothing."
                        : "The loop is open: reads nothing, or no more than the background.",
                "Count the ticks, one for each end. The device's own sign that a wire is off. Outlet off, pull each plug a little.");
        if (!fans.isEmpty()) {
            row(
                    "The trunk of a fan-out left out",
                    String.join(", ", fans),
                    "Every wire on it is open at once: reads nothing, or no more than the background.",
                    "Outlet off, pull the trunk, on again: the value must have fallen. If nothing changed, it was never in.");
        }
        if (hookup.bundles().stream().anyMatch(bundle -> !bundle.links().isEmpty())) {
            row(
                    "A link between two jacks left off",
                    "The wires behind it are open: reads low by their share.",
                    "Tick the link by itself; it belongs to no wire.");
        }
        if (hookup.bundles().size() > 1) {
            row(
                    "A plug in the wrong jack, or two bundles swapped",
                    "The values stand under each other's names." + otherLimits()
                            + " Where all are read together the sum is unchanged.",
                    "Follow each wire with the hand from the label to the jack; compare with the drawing.");
        }
        if (hookup.chains().stream().anyMatch(this::byFoil)) {
            row(
                    "Foil or other contact aid dry, too small, not pressed on",
                    "The contact is a poor one: reads low.",
                    "Outlet off, press it on anew, on again: the value must be the same. It touches no other metal.");
        }
    }

    private boolean byFoil(Chain chain) {
        return chain.items().stream()
                .flatMap(item -> plan.kit().item(WiringRows.kind(item)).stream())
                .anyMatch(item -> item.kind() == ItemKind.CONTACT_AID);
    }

    /** Parts of different types in one hookup have different limits. */
    private String otherLimits() {
        Set<String> types = hookup.bundles().stream()
                .map(Bundle::connections)
                .flatMap(List::stream)
                .map(this::type)
                .filter(type -> !type.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
        return types.size() > 1 && types.contains("CF")
                ? " A part of type CF that is read under the name of another type is judged by a looser limit."
                : "";
    }

    private String type(String connection) {
        return plan.device().appliedParts().stream()
                .filter(part ->
                        part.connections().stream().anyMatch(each -> each.name().equals(connection)))
                .map(AppliedPart::type)
                .map(type -> type.word())
                .findFirst()
                .orElse("");
    }

    private void earth() {
        boolean leakage = any(
                each -> each.phase() == Obligation.Phase.ORDINARY || each.phase() == Obligation.Phase.MAINS_ON_PART);
        if (any(each -> each.phase() == Obligation.Phase.EARTH)) {
            row(
                    "Earth clip on paint, anodised or loose metal",
                    "The poor contact adds resistance: reads high and fails. On other metal it reads that metal, and may pass.",
                    "Bare metal, the place that the row names; move the clip a little and repeat.");
            row(
                    "Null forgotten, or leads changed after it",
                    "The leads count to the device: reads high by their own resistance. A lead that is shorter than the one"
                            + " that was nulled reads low.",
                    "The null is read twice at the start and once at the end, and may not have moved.");
            row(
                    "Null with the device's own cord in the path",
                    "The cord is taken off as well: reads low, or below nothing.",
                    "Tips together, or clip on the outlet's earth contact. Below nothing is void, never a pass.");
        }
        boolean open = plan.kit()
                .tester()
                .earthJack()
                .flatMap(EarthJack::atRest)
                .filter(AtRest.OPEN::equals)
                .isPresent();
        if (leakage && !hookup.earth().isEmpty() && !open) {
            row(
                    "Earth lead left in while leakage is read",
                    "This tester's earth jack lies at earth: the lead carries the current past the network. Reads nothing or low.",
                    "Outlet off, take the lead off and repeat; the earth test finds no path.");
        }
    }

    private void states() {
        Set<MainsState> states =
                readings.stream().map(Obligation::state).collect(Collectors.toCollection(TreeSet::new));
        long live = states.stream().filter(state -> state != MainsState.OFF).count();
        if (live > 1) {
            row(
                    "Outlet left in the state before",
                    "The row repeats what was read before: unchanged.",
                    "Tick each state when it is set. Two values that are equal to the last digit are a reason to look.");
        }
        if (states.stream().anyMatch(state -> state.fault() == MainsState.Fault.SUPPLY_OPEN)) {
            row(
                    "Supply open did not open, or was not closed again",
                    "Not open: the value is that of no fault, unchanged. Not closed again: the next rows are of a device that"
                            + " does not run.",
                    "A device without a battery stops when it opens; the supply current is nothing.");
        }
        if (states.stream().anyMatch(state -> state.fault() == MainsState.Fault.EARTH_OPEN)) {
            row(
                    "Earth open did not open, or a second way to earth is there",
                    "The earth still takes the current: touch readings at earthed metal stay next to nothing.",
                    "Every other cable parted, the device on an insulating surface.");
        }
    }

    private void device() {
        boolean leakage = any(each -> each.phase() == Obligation.Phase.ORDINARY && each.state() != MainsState.OFF);
        if (leakage) {
            row(
                    "Device off or on standby",
                    "What lies behind the switch is not driven: reads low.",
                    "The device's own display or lamp; the supply current is not nothing.");
        }
        if (leakage && plan.device().battery() == Battery.BACKS_UP) {
            row(
                    "Device runs on its battery, outlet off",
                    "No mains drives a current to earth: reads nothing or low, and the device looks as usual.",
                    "The device's sign for mains; the bar over the rows ticked when the state was set.");
        }
        if (any(each -> each.phase() == Obligation.Phase.ORDINARY)
                && !plan.device().ports().isEmpty()) {
            row(
                    "A data or other cable still in",
                    plan.device().ports().stream().map(Port::name).collect(Collectors.joining(", ")),
                    "Its screen or earth is a second way: it carries a share of the current past the network. Reads low.",
                    "Outlet off, part it, put it on the list for putting back, and repeat.");
        }
        if (any(Obligation::isTouch)) {
            row(
                    "Probe on paint or plastic, or beside the part",
                    "No contact: reads nothing or low.",
                    "Bare metal or foil; press and move the probe by its insulated handle, the value must not depend on it.");
        }
        boolean raw = plan.kit()
                .tester()
                .partSource()
                .filter(source -> source.reading() == SourceReading.RAW)
                .isPresent();
        if (raw && any(each -> each.phase() == Obligation.Phase.MAINS_ON_PART)) {
            row(
                    "A raw reading of the limited source judged by the limit itself",
                    "The source never gives more than its short-circuit current: reads lower than at full mains.",
                    "Judge it by the lower value that the record works out.");
        }
    }
}
