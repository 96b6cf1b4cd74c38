package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.MethodRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Shortfall;

/**
 * The leakage method for a quantity: the first of the house's order that the rule set has for it, the kit has, and the
 * device allows. One method per quantity.
 */
final class MethodChoice {
    private final Asking asking;
    private final QuantityKind quantity;
    private final List<Method> offered;

    private MethodChoice(Asking asking, QuantityKind quantity) {
        this.asking = asking;
        this.quantity = quantity;
        this.offered = asking.tests(quantity).stream()
                .flatMap(row -> row.scope().methods().stream())
                .distinct()
                .toList();
    }

    /**
     * Chooses.
     *
     * @return empty where the quantity is read without a method, or where none can be used: then a shortfall says why
     */
    static Optional<Method> of(Asking asking, QuantityKind quantity, Remarks remarks) {
        MethodChoice choice = new MethodChoice(asking, quantity);
        if (choice.offered.isEmpty()) {
            return Optional.empty();
        }
        List<String> reasons = new ArrayList<>();
        for (Method method : asking.house().methods()) {
            if (choice.offered.contains(method)) {
                Optional<String> reason = choice.against(method);
                if (reason.isEmpty()) {
                    reasons.forEach(
                            each -> remarks.warn(quantity.word() + ": " + method.word() + " method, since " + each));
                    return Optional.of(method);
                }
                reasons.add(reason.get());
            }
        }
        choice.offered.stream()
                .filter(method -> !asking.house().methods().contains(method))
                .forEach(method -> reasons.add("the house does not list the " + method.word() + " method"));
        remarks.shortfall(new Shortfall(
                "leakage method",
                List.of(),
                quantity.word() + " is not measured: " + String.join("; ", reasons),
                List.of("a tester with "
                        + String.join(
                                " or ",
                                choice.offered.stream()
                                        .filter(method ->
                                                choice.deviceAgainst(method).isEmpty())
                                        .map(method -> "the " + method.word() + " method")
                                        .toList()))));
        return Optional.empty();
    }

    private Optional<String> against(Method method) {
        if (!asking.tester().methods().contains(method)) {
            return Optional.of("the tester does not have the " + method.word() + " method");
        }
        if (quantity == QuantityKind.APPLIED_PART_LEAKAGE
                && method == Method.DIRECT
                && asking.tester().partSource().isEmpty()) {
            return Optional.of("the tester has no source for mains on an applied part");
        }
        return deviceAgainst(method);
    }

    private Optional<String> deviceAgainst(Method method) {
        for (MethodRow row : asking.rules().methods()) {
            if (row.method() == method) {
                if (row.notWithElectronicSwitch() && asking.device().mainsSwitch() == MainsSwitch.ELECTRONIC) {
                    return Optional.of("the " + method.word()
                            + " method needs a mains switch that stays closed while the device is unplugged, and this"
                            + " one is electronic");
                }
                if (row.notForLimitsTo()
                        .filter(most -> smallestLimit(method, most))
                        .isPresent()) {
                    return Optional.of("the " + method.word() + " method is too insensitive for a limit of "
                            + row.notForLimitsTo().get().text() + " or less");
                }
            }
        }
        return Optional.empty();
    }

    private boolean smallestLimit(Method method, Quantity most) {
        List<PartType> types = quantity == QuantityKind.APPLIED_PART_LEAKAGE
                ? asking.facts().parts().stream()
                        .map(part -> part.type())
                        .distinct()
                        .toList()
                : List.of();
        List<LimitRow> rows = new ArrayList<>();
        asking.rules().limit(asking.asked(quantity).method(Optional.of(method))).ifPresent(rows::add);
        types.forEach(type -> asking.rules()
                .limit(asking.asked(quantity).method(Optional.of(method)).type(type))
                .ifPresent(rows::add));
        return rows.stream().anyMatch(row -> row.value().atMost(most));
    }
}
