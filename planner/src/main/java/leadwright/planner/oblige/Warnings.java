package leadwright.planner.oblige;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.PlaceRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.RuleSets;

/** What a person must know before going to the bench. */
final class Warnings {
    private static final Quantity LONG_START = Quantity.seconds(30);

    private final Asking asking;
    private final Device device;
    private final Remarks remarks;

    private Warnings(Asking asking, Remarks remarks) {
        this.asking = asking;
        this.device = asking.device();
        this.remarks = remarks;
    }

    static void add(Asking asking, Optional<Outlet> outlet, List<Draft> due, Remarks remarks) {
        Warnings warnings = new Warnings(asking, remarks);
        warnings.supply(outlet);
        warnings.system();
        warnings.powerCut();
        warnings.sockets(due);
        warnings.therapy();
        warnings.rules();
        warnings.places(due);
        warnings.unlimitedEarth(due);
        HouseChanges.of(asking.house(), asking.rules()).forEach(remarks::warn);
        warnings.tester(outlet, due);
    }

    private void supply(Optional<Outlet> outlet) {
        SupplySystem system = device.supply().system();
        if (asking.facts().fixedPlant()) {
            remarks.warn(
                    "fixed plant: a licensed person isolates it, locks it out, proves it dead and hands it over, and"
                            + " takes it back; nothing here replaces that");
        }
        if (asking.facts().fixedPlant() && device.supply().connection() != SupplyConnection.PERMANENT) {
            remarks.warn("three-phase equipment is planned as fixed plant: its conductors are not opened from a bench");
        }
        if (asking.facts().onOutlet() && (system == SupplySystem.SPLIT_PHASE || system == SupplySystem.PHASE_PHASE)) {
            remarks.warn(
                    "split-phase supply: with equal filter capacitors the earth leakage without fault is near zero,"
                            + " and the reading with one leg open rules; both legs are live");
        }
        if (CheckReadings.withoutEarthReference(outlet)) {
            remarks.warn("isolated supply: it makes everything read low; no leakage is read on it");
        }
        if (device.protection() == Protection.INTERNALLY_POWERED
                && device.supply().connection() == SupplyConnection.EXTERNAL_ADAPTER
                && device.adapter().isEmpty()) {
            remarks.warn(
                    "the class of the external adapter is not stated: judged as class II, the stricter; compare its"
                            + " label");
        }
    }

    private void system() {
        if (device.system().isEmpty()) {
            return;
        }
        remarks.warn("a system of " + String.join(", ", device.system().get().members())
                + ": test each member alone as well, by its own file; on the one plug the currents in the earth conductors"
                + " add up");
        if (device.system().get().separatingTransformer()) {
            remarks.warn(
                    "the members stand behind a separating transformer: at the plug nothing of their own leakage to"
                            + " earth is seen that does not pass the transformer");
        }
        if (device.supply().current().isEmpty()) {
            remarks.warn("not every member states its rated current: add up the labels before plugging in");
        }
    }

    private void powerCut() {
        if (!asking.facts().onOutlet()) {
            return;
        }
        boolean stated = device.toleratesPowerCut().isPresent();
        if (!device.startUpStated()) {
            remarks.warn("the device file does not state how long it takes to start: no start-up time is counted");
        } else if (!stated && device.startUp().compareTo(LONG_START) > 0) {
            remarks.warn("start-up takes " + device.startUp().text()
                    + ", and the device file does not state whether it tolerates a power cut: it counts as no; ask, and"
                    + " state tolerates-power-cut");
        }
        if (device.battery() == Battery.BACKS_UP) {
            remarks.warn("the battery keeps the device on in every state of the mains, until it is shut down");
        }
    }

    private void sockets(List<Draft> due) {
        if (asking.facts().hasProtectiveEarth()) {
            unknownEarth(due);
        }
        String ports = device.ports().stream().map(Port::name).collect(Collectors.joining(", "));
        if (!ports.isEmpty()) {
            remarks.warn("part the cables at these sockets before the first reading, and put them back after the last: "
                    + ports);
        }
    }

    /** A part of which nobody states whether it is earthed is looked at where something can be read of it. */
    private void unknownEarth(List<Draft> due) {
        List<TouchPoint> unknown = device.touchPoints().stream()
                .filter(point -> point.earthed() == Earthed.UNKNOWN)
                .toList();
        String looked = names(unknown.stream().filter(point -> looked(due, point)));
        String not = names(unknown.stream().filter(point -> !looked(due, point)));
        if (!looked.isEmpty()) {
            remarks.warn("nobody states whether this is earthed: " + looked
                    + ": a continuity look is planned, and it also counts as unearthed");
        }
        if (!not.isEmpty()) {
            remarks.warn("nobody states whether this is earthed, and no continuity look is planned: " + not
                    + ": find out, from the maker or at a bare point of the same metal, and state it in the device file;"
                    + " until then it counts as unearthed");
        }
    }

    private static boolean looked(List<Draft> due, TouchPoint point) {
        return due.stream()
                .anyMatch(draft ->
                        draft.earthSubject().isPresent() && draft.place().equals(Optional.of(point.id())));
    }

    private static String names(Stream<TouchPoint> points) {
        return points.map(TouchPoint::name).collect(Collectors.joining(", "));
    }

    private void therapy() {
        for (Output output : device.outputs()) {
            remarks.warn("therapy output " + output.id() + ": "
                    + output.madeSafeBy()
                            .map(how -> "make safe before its plugging: " + how)
                            .orElse(
                                    "the device file does not state what makes it safe; do not plug it until that is known")
                    + output.mayShare()
                            .map(why -> "; it may share a hookup: " + why)
                            .orElse(""));
        }
    }

    private void rules() {
        if (!asking.facts().parts().isEmpty()
                && asking.rules().network().equals(Optional.of(MeasuringNetwork.IEC_60990))) {
            remarks.warn("the device has applied parts, and " + asking.rules().id()
                    + " is for equipment without any: nothing here shows that they are safe; plan it by a rule set for"
                    + " medical equipment");
        }
        device.builtTo()
                .filter(edition -> asking.rules().id().startsWith("iec-60601"))
                .filter(edition -> !edition.equals(asking.rules().id()))
                .ifPresent(edition -> remarks.warn("the device was built to " + edition + " and is judged here by "
                        + asking.rules().id() + "; its own edition may have other limits"));
        for (House.Confirmed confirmed : asking.house().confirmed()) {
            if (asking.rules().limit(confirmed.limit()).isPresent()
                    && !confirmed.edition().equals(asking.rules().edition())) {
                remarks.warn("house rules: " + confirmed.limit() + " was confirmed in edition " + confirmed.edition()
                        + ", and this rule set is edition " + asking.rules().edition() + ": it stays unconfirmed");
            }
        }
        for (House.Tighter tighter : asking.house().tighter()) {
            if (RuleSets.builtIn().all().stream()
                    .allMatch(rules -> rules.limit(tighter.limit()).isEmpty())) {
                remarks.warn("house rules: no rule set has a limit '" + tighter.limit()
                        + "', so nothing is tightened by it");
            }
        }
    }

    /** Readings whose limits depend on a circumstance that the house does not state. */
    private void places(List<Draft> due) {
        List<String> known = asking.rules().places().stream().map(PlaceRow::id).toList();
        Optional<String> where = asking.house().where();
        where.filter(each -> !known.contains(each))
                .ifPresent(each ->
                        remarks.warn("house rules: " + asking.rules().id() + " lists no circumstance '" + each + "'"));
        boolean unjudged = due.stream()
                .flatMap(draft -> draft.limitCase().stream())
                .anyMatch(asked -> asking.rules().limit(asking.here(asked)).isEmpty()
                        && known.stream()
                                .anyMatch(place ->
                                        asking.rules().limit(asked.where(place)).isPresent()));
        if (unjudged) {
            remarks.warn(
                    "limits of " + asking.rules().id() + " depend on the country or the room, and the house rules state"
                            + " none of them for these readings: they are not judged. State 'where' as one of "
                            + String.join(", ", known));
        }
    }

    /** An earth reading that nobody judges stops nothing. */
    private void unlimitedEarth(List<Draft> due) {
        boolean unlimited = due.stream()
                .filter(draft -> draft.quantity() == QuantityKind.EARTH_RESISTANCE)
                .flatMap(draft -> draft.limitCase().stream())
                .anyMatch(asked -> asking.rules().limit(asking.here(asked)).isEmpty());
        if (unlimited) {
            remarks.warn(
                    "this rule set has no limit for an earth resistance that is read here: take it from the device's"
                            + " instructions, and decide on it before anything is powered");
        }
    }

    private void tester(Optional<Outlet> outlet, List<Draft> due) {
        boolean leakage = due.stream().anyMatch(Draft::isLeakage);
        if (leakage && asking.kit().checks().isEmpty()) {
            remarks.warn(
                    "the kit lists no known resistor: a blown input fuse or a stuck relay reads zero everywhere, and"
                            + " nothing would show it");
        }
        if (due.stream().anyMatch(draft -> draft.quantity() == QuantityKind.EARTH_RESISTANCE)) {
            earthTest();
        }
        Optional<PartSource> source = asking.tester().partSource();
        if (source.isPresent()
                && outlet.isPresent()
                && due.stream().anyMatch(draft -> draft.sourcePolarity().isPresent())
                && source.get().voltage().amount() * 10 < outlet.get().voltage().amount() * 9) {
            remarks.warn("the source for mains on an applied part has "
                    + source.get().voltage().text() + ": check that its readings are corrected to "
                    + outlet.get().voltage().text());
        }
    }

    private void earthTest() {
        Optional<EarthTest> test = asking.tester().earthTest();
        for (EarthTestRow row : asking.rules().earthTest()) {
            test.filter(each -> row.openCircuitAtMost()
                            .filter(most -> !each.openCircuit().atMost(most))
                            .isPresent())
                    .ifPresent(each -> remarks.warn("the earth test's open-circuit voltage "
                            + each.openCircuit().text() + " is above the rule set's "
                            + row.openCircuitAtMost().orElseThrow().text()));
        }
    }
}
