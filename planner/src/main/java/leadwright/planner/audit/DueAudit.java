package leadwright.planner.audit;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.EarthedParts;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * Whether anything that the rule set asks for is missing without a word: a quantity that is neither read nor named among
 * what does not apply or cannot be done, and one that is not read under a fault which the plan opens for others.
 */
final class DueAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Breaches breaches;
    private final Set<Fault> opened = EnumSet.noneOf(Fault.class);

    DueAudit(Plan plan, RuleSet rules, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.breaches = breaches;
        plan.readings()
                .forEach(reading -> opened.add(reading.obligation().state().fault()));
    }

    void run() {
        for (TestRow row : rules.tests()) {
            if (!asked(row)) {
                continue;
            }
            List<Obligation> read = plan.readings().stream()
                    .map(Reading::obligation)
                    .filter(what -> what.quantity() == row.quantity() && ofType(what, row))
                    .toList();
            if (read.isEmpty()) {
                breaches.check(
                        said(row.quantity()),
                        Invariant.DUE,
                        "plan",
                        row.quantity().word() + " is asked for in "
                                + row.basis().clause() + ", and neither read nor listed as not done");
            } else {
                faults(row, read);
            }
        }
    }

    private void faults(TestRow row, List<Obligation> read) {
        for (Condition condition : row.scope().conditions()) {
            Fault fault = Fault.valueOf(condition.name());
            breaches.check(
                    !opened.contains(fault)
                            || !hasSubject(row, fault)
                            || read.stream().anyMatch(what -> what.state().fault() == fault)
                            || shortOf(row.quantity(), fault),
                    Invariant.DUE,
                    "plan",
                    row.quantity().word() + " is asked for under " + condition.word() + " and not read under it");
        }
    }

    /** Touch current of earthed parts is read by most rule sets only with their earth open: more needs another part or a port. */
    private boolean hasSubject(TestRow row, Fault fault) {
        Device device = plan.device();
        return row.quantity() != QuantityKind.TOUCH_CURRENT
                || row.earthedParts() == EarthedParts.ALWAYS
                || fault == Fault.EARTH_OPEN && row.earthedParts() == EarthedParts.WITH_EARTH_OPEN
                || !device.ports().isEmpty()
                || device.touchPoints().stream().anyMatch(point -> point.earthed() != Earthed.YES);
    }

    /** Whether a reading of the quantity under the fault is among those that a shortfall stops. */
    private boolean shortOf(QuantityKind quantity, Fault fault) {
        return plan.shortfalls().stream()
                .flatMap(each -> each.readings().stream())
                .map(key -> List.of(key.split("/")))
                .filter(key -> key.get(0).equals(quantity.word()))
                .anyMatch(key -> fault == Fault.NONE
                        ? Arrays.stream(Fault.values()).noneMatch(each -> key.contains(each.word()))
                        : key.contains(fault.word()));
    }

    /** Whether the row is for a device of this class and supply, with a part of its types, and its maker allows it. */
    private boolean asked(TestRow row) {
        Device device = plan.device();
        boolean parts = row.scope().types().isEmpty()
                || device.appliedParts().stream()
                        .map(AppliedPart::type)
                        .anyMatch(row.scope().types()::contains);
        return row.scope().where().isEmpty()
                && parts
                && (row.scope().classes().isEmpty() || row.scope().classes().contains(protection(device)))
                && (row.scope().supplies().isEmpty()
                        || row.scope().supplies().contains(device.supply().connection()))
                && device.forbids().stream()
                        .noneMatch(each -> each.test().equals(row.quantity().word()));
    }

    static Protection protection(Device device) {
        if (device.supply().connection() != SupplyConnection.EXTERNAL_ADAPTER) {
            return device.protection();
        }
        return device.adapter().map(adapter -> adapter.protection()).orElse(Protection.CLASS_2);
    }

    private boolean ofType(Obligation what, TestRow row) {
        List<PartType> types = row.scope().types();
        return types.isEmpty()
                || what.demand().measured().stream()
                        .map(name -> plan.device().appliedParts().stream()
                                .filter(part -> part.connections().stream()
                                        .anyMatch(each -> each.name().equals(name)))
                                .map(AppliedPart::type)
                                .findFirst())
                        .flatMap(Optional::stream)
                        .anyMatch(types::contains);
    }

    private boolean said(QuantityKind quantity) {
        String word = quantity.word();
        String words = word.replace('-', ' ');
        return plan.notApplicable().stream()
                        .anyMatch(each ->
                                each.test().contains(word) || each.test().contains(words))
                || plan.shortfalls().stream()
                        .anyMatch(each -> each.because().contains(word)
                                || each.because().contains(words)
                                || each.about().contains(word))
                || plan.warnings().stream().anyMatch(each -> each.contains(word) || each.contains(words));
    }
}
