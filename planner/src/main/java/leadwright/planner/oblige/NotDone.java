package leadwright.planner.oblige;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Forbidden;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.rules.NotDoneRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.TestRow;
import leadwright.catalog.rules.Trait;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Shortfall;

/** The list of what is not done on a device, with reason and clause. */
final class NotDone {

    private NotDone() {}

    /** What the device's own instructions rule out. */
    private static void forbidden(Asking asking, Remarks remarks) {
        for (Forbidden forbidden : asking.device().forbids()) {
            remarks.notApplicable(
                    forbidden.test(),
                    "ruled out for this device: " + forbidden.because(),
                    clause(asking, forbidden.test()));
        }
    }

    private static String clause(Asking asking, String test) {
        return QuantityKind.of(test).stream()
                .flatMap(quantity -> asking.rules().tests(quantity).stream())
                .map(row -> row.basis().clause())
                .findFirst()
                .orElse("device's instructions");
    }

    /** What the rule set leaves out for a device with these traits, and any of its quantities that nothing else explains. */
    static void add(Asking asking, List<Draft> due, Remarks remarks) {
        Set<String> read = due.stream().map(draft -> draft.quantity().word()).collect(Collectors.toSet());
        forbidden(asking, remarks);
        Set<Trait> traits = asking.facts().traits();
        for (NotDoneRow row : asking.rules().notDone()) {
            if (traits.containsAll(row.when()) && !read.contains(row.test()) && !ruledOut(asking, row.test())) {
                remarks.notApplicable(row.test(), row.because(), row.basis().clause());
            }
        }
        asking.rules().tests().stream()
                .filter(asking::pointless)
                .filter(row -> row.scope().classes().isEmpty()
                        || row.scope().classes().contains(asking.facts().protection()))
                .forEach(row -> remarks.notApplicable(
                        row.quantity().word(),
                        "tested by itself the part has no source of its own: only mains on it shows its insulation; on its"
                                + " host it is read as the host's part",
                        row.basis().clause()));
        openInModes(asking, due, remarks);
        switchedOff(asking, remarks);
        for (TestRow row : asking.rules().tests()) {
            String test = row.quantity().word();
            if (!read.contains(test) && !explained(test, remarks)) {
                remarks.notApplicable(
                        test,
                        "the device has nothing of the kind that this is read on",
                        row.basis().clause());
            }
        }
    }

    /** A device that goes off with its supply is in none of its modes then. */
    private static void openInModes(Asking asking, List<Draft> due, Remarks remarks) {
        boolean open = due.stream().anyMatch(draft -> draft.state().fault() == MainsState.Fault.SUPPLY_OPEN);
        if (open && asking.device().modes().size() > 1 && asking.device().battery() == Battery.NONE) {
            remarks.notApplicable(
                    "supply open in each operating mode",
                    "with the supply open the device is off and in none of its modes: these readings are taken once",
                    "bench practice");
        }
    }

    private static void switchedOff(Asking asking, Remarks remarks) {
        if (asking.facts().onOutlet() && asking.device().mainsSwitch() == MainsSwitch.NONE) {
            asking.rules().tests().stream()
                    .filter(TestRow::switchedOffToo)
                    .forEach(row -> remarks.notApplicable(
                            row.quantity().word() + " switched off",
                            "the device has no switch of its own",
                            row.basis().clause()));
        }
    }

    private static boolean ruledOut(Asking asking, String test) {
        return QuantityKind.of(test).filter(asking::forbidden).isPresent();
    }

    /** Whether a remark names the quantity, alone or among others. */
    private static boolean explained(String test, Remarks remarks) {
        return Stream.concat(
                        remarks.notApplicable().stream().map(NotApplicable::test),
                        remarks.shortfalls().stream().map(Shortfall::because))
                .anyMatch(text -> List.of(text.split("[^a-z-]+")).contains(test));
    }
}
