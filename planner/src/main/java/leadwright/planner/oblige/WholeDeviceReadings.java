package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.Port;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Shortfall;

/** Readings of the device as a whole: equipment leakage, and what flows in the earth conductor of its cord. */
final class WholeDeviceReadings {
    static final String SWITCH_CLOSED = "device unplugged from the mains, its mains switch closed";

    private WholeDeviceReadings() {}

    static List<Draft> equipment(Asking asking, Remarks remarks) {
        QuantityKind quantity = QuantityKind.EQUIPMENT_LEAKAGE;
        List<TestRow> rows = asking.tests(quantity);
        if (rows.isEmpty()) {
            return List.of();
        }
        Optional<Method> method = MethodChoice.of(asking, quantity, remarks);
        List<Draft> all = new ArrayList<>();
        for (TestRow row : rows) {
            if (row.scope().methods().isEmpty()
                    || method.filter(row.scope().methods()::contains).isPresent()) {
                List<Asked> asked = asking.rules()
                        .joining(asking.asked(quantity).method(method))
                        .map(joining -> Joinings.ofHousing(asking, joining, remarks))
                        .orElse(List.of());
                sockets(asking, row, remarks);
                if (asked.isEmpty()) {
                    remarks.notApplicable(
                            quantity.word(),
                            "no touch point is stated, and there is no protective earth: nothing to measure at",
                            row.basis().clause());
                    remarks.warn("the device file states no touch point: wrap the housing in foil and state it as one");
                }
                asked.forEach(each -> all.addAll(inEveryState(asking, row, each, method)));
            }
        }
        return all;
    }

    /** Sockets are not among what is joined; nothing says of a socket that a person can touch its shell. */
    private static void sockets(Asking asking, TestRow row, Remarks remarks) {
        String sockets = asking.device().ports().stream().map(Port::name).collect(Collectors.joining(", "));
        if (!sockets.isEmpty()) {
            remarks.notApplicable(
                    row.quantity().word() + " of sockets",
                    "not joined with the accessible parts: " + sockets
                            + "; a shell that a person can touch is to be stated as a touch point, and is joined then",
                    row.basis().clause());
        }
    }

    private static List<Draft> inEveryState(Asking asking, TestRow row, Asked asked, Optional<Method> method) {
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            for (Component component : row.scope().components()) {
                Draft draft = Draft.of(row.quantity(), row.basis().clause(), asked.subject(), asked.of(), state)
                        .demand(asked.demand())
                        .method(method)
                        .component(Optional.of(component))
                        .limitCase(asking.asked(row.quantity())
                                .condition(state.condition())
                                .method(method)
                                .component(Optional.of(component)));
                all.add(withNote(asking, draft));
            }
        }
        return all;
    }

    private static Draft withNote(Asking asking, Draft draft) {
        if (draft.method().equals(Optional.of(Method.ALTERNATIVE))) {
            return draft.note(SWITCH_CLOSED);
        }
        if (draft.method().equals(Optional.of(Method.DIFFERENTIAL))) {
            return draft.note("the sum of the live conductors is read: every way to earth counts");
        }
        if (draft.method().equals(Optional.of(Method.DIRECT)) && asking.facts().hasProtectiveEarth()) {
            return draft.note(
                    "the measuring device takes the place of the earth conductor; the device stands insulated, with"
                            + " no other way to earth");
        }
        return draft;
    }

    /** Earth leakage, and the leakage in a functional earth: the measuring device is in the conductor of the cord. */
    static List<Draft> inEarthConductor(Asking asking, QuantityKind quantity, Remarks remarks) {
        boolean functional = quantity == QuantityKind.FUNCTIONAL_EARTH_LEAKAGE;
        List<TestRow> rows = asking.tests(quantity);
        if (rows.isEmpty() || functional && asking.facts().functionalEarth() == FunctionalEarth.NONE) {
            return List.of();
        }
        if (functional && !asking.facts().functionalEarthInCord()) {
            remarks.shortfall(new Shortfall(
                    "functional-earth terminal",
                    List.of(),
                    "functional-earth-leakage is not measured: the functional earth has a terminal of its own, and a tester"
                            + " has its measuring device in the earth conductor of the cord only",
                    List.of("state the terminal as an unearthed touch point, and it is read by touch with its conductor"
                            + " parted")));
            return List.of();
        }
        String subject = functional ? "functional-earth" : "earth";
        List<Draft> all = new ArrayList<>();
        for (TestRow row : rows) {
            for (StateInMode state : StateInMode.of(row, asking.facts())) {
                for (Component component : row.scope().components()) {
                    Draft draft = Draft.of(quantity, row.basis().clause(), subject, List.of(subject), state)
                            .component(Optional.of(component))
                            .limitCase(asking.asked(quantity)
                                    .condition(state.condition())
                                    .component(Optional.of(component)));
                    all.add(
                            functional
                                    ? draft.note("a functional earth is no protective earth: no earth-resistance limit")
                                    : draft);
                }
            }
        }
        return all;
    }

    /** The current that the device draws; judged only against the device's own value. */
    static List<Draft> supplyCurrent(Asking asking) {
        List<Draft> all = new ArrayList<>();
        for (TestRow row : asking.tests(QuantityKind.SUPPLY_CURRENT)) {
            for (StateInMode state : StateInMode.of(row, asking.facts())) {
                all.add(Draft.of(row.quantity(), row.basis().clause(), "supply", List.of("supply"), state)
                        .limitCase(asking.asked(row.quantity())));
            }
        }
        return all;
    }
}
