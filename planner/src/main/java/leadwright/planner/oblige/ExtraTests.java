package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Against;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.EarthedOthers;
import leadwright.catalog.rules.EarthedParts;
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.JoiningRow;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.Polarity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.Scope;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Shortfall;

/** Quantities that a house reads although the rule set does not ask for them: with no fault, in both polarities. */
final class ExtraTests {

    private ExtraTests() {}

    /** The asking with rows for the house's extra tests added to its rule set. */
    static Asking with(Asking asking, Remarks remarks) {
        List<TestRow> tests = new ArrayList<>();
        List<JoiningRow> joinings = new ArrayList<>();
        for (House.ExtraTest extra : asking.house().extraTests()) {
            Optional<QuantityKind> quantity = QuantityKind.of(extra.quantity());
            if (quantity.isEmpty() || !planned(quantity.get())) {
                remarks.shortfall(new Shortfall(
                        "house rules, extra test " + extra.quantity(),
                        List.of(),
                        "the house also asks for " + extra.quantity() + " (" + extra.because()
                                + "): it is not planned as an extra test",
                        List.of("a rule set that asks for it")));
            } else if (asking.tests(quantity.get()).isEmpty() && quantity.get() != QuantityKind.INSULATION_RESISTANCE) {
                Basis basis = new Basis("house: " + extra.because(), Mark.C, List.of());
                tests.addAll(rows(quantity.get(), basis));
                joinings.addAll(joining(quantity.get(), basis));
            }
        }
        boolean together = asking.device().system().isPresent()
                && asking.facts().onOutlet()
                && asking.tests(QuantityKind.TOUCH_CURRENT_BETWEEN).isEmpty()
                && asking.rules().network().isPresent();
        if (together && tests.stream().noneMatch(row -> row.quantity() == QuantityKind.TOUCH_CURRENT_BETWEEN)) {
            tests.addAll(rows(
                    QuantityKind.TOUCH_CURRENT_BETWEEN,
                    new Basis("bench practice: members of a system", Mark.C, List.of())));
        }
        return new Asking(
                asking.facts(), asking.kit(), asking.rules().with(tests, joinings), asking.house(), asking.occasion());
    }

    private static boolean planned(QuantityKind quantity) {
        return switch (quantity) {
            case INSULATION_RESISTANCE,
                    EARTH_LEAKAGE,
                    FUNCTIONAL_EARTH_LEAKAGE,
                    TOUCH_CURRENT,
                    TOUCH_CURRENT_BETWEEN,
                    PATIENT_LEAKAGE,
                    PATIENT_AUXILIARY,
                    SUPPLY_CURRENT -> true;
            default -> false;
        };
    }

    private static List<TestRow> rows(QuantityKind quantity, Basis basis) {
        boolean part = quantity == QuantityKind.PATIENT_LEAKAGE || quantity == QuantityKind.PATIENT_AUXILIARY;
        List<Polarity> both = List.of(Polarity.NORMAL, Polarity.REVERSED);
        List<TestRow> rows = new ArrayList<>();
        rows.add(row(
                quantity,
                onMains(quantity),
                part,
                quantity == QuantityKind.SUPPLY_CURRENT ? both.subList(0, 1) : both,
                basis));
        if (part || quantity == QuantityKind.TOUCH_CURRENT || quantity == QuantityKind.TOUCH_CURRENT_BETWEEN) {
            rows.add(row(quantity, List.of(Protection.INTERNALLY_POWERED), part, List.of(), basis));
        }
        return rows;
    }

    private static List<Protection> onMains(QuantityKind quantity) {
        return switch (quantity) {
            case EARTH_LEAKAGE -> List.of(Protection.CLASS_1);
            case FUNCTIONAL_EARTH_LEAKAGE -> List.of(Protection.CLASS_2);
            default -> List.of(Protection.CLASS_1, Protection.CLASS_2);
        };
    }

    private static TestRow row(
            QuantityKind quantity, List<Protection> classes, boolean part, List<Polarity> polarities, Basis basis) {
        Scope scope = new Scope(
                classes,
                part ? List.of(PartType.values()) : List.of(),
                List.of(),
                List.of(Condition.NONE),
                List.of(),
                List.of(Component.AC),
                Optional.empty(),
                List.of(),
                Optional.empty());
        return new TestRow(
                quantity, scope, polarities, List.of(), true, false, false, EarthedParts.WITH_EARTH_OPEN, basis);
    }

    private static List<JoiningRow> joining(QuantityKind quantity, Basis basis) {
        Scope any = new Scope(
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.<Method>of(),
                List.of(),
                Optional.empty(),
                List.of(),
                Optional.empty());
        return switch (quantity) {
            case PATIENT_LEAKAGE ->
                List.of(new JoiningRow(quantity, any, Joined.FUNCTION, Against.EARTH, EarthedOthers.NOTHING, basis));
            case PATIENT_AUXILIARY ->
                List.of(new JoiningRow(
                        quantity,
                        any,
                        Joined.CONNECTION,
                        Against.OTHER_CONNECTIONS_OF_DEVICE,
                        EarthedOthers.NOTHING,
                        basis));
            default -> List.of();
        };
    }
}
