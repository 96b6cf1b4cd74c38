package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.EarthSubject;
import leadwright.planner.plan.Obligation.SourcePolarity;

/**
 * A reading that is due, before the tester is asked and the limit looked up.
 *
 * @param subject its part of the key
 * @param limitCase the case for which the rule set is asked for a limit; empty where the reading is not judged
 * @param notes what a person must know about it
 */
record Draft(
        QuantityKind quantity,
        String clause,
        String subject,
        List<String> of,
        Demand demand,
        Optional<String> place,
        Optional<EarthSubject> earthSubject,
        StateInMode in,
        Optional<SourcePolarity> sourcePolarity,
        Optional<Method> method,
        Optional<Component> component,
        Optional<RuleCase> limitCase,
        List<String> notes) {
    Draft {
        of = List.copyOf(of);
        notes = List.copyOf(notes);
    }

    /** A reading with nothing but its subject; the rest is added. */
    static Draft of(QuantityKind quantity, String clause, String subject, List<String> of, StateInMode in) {
        return new Draft(
                quantity,
                clause,
                subject,
                of,
                Demand.NOTHING,
                Optional.empty(),
                Optional.empty(),
                in,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                in.note().map(List::of).orElse(List.of()));
    }

    Draft demand(Demand is) {
        return but(copy -> copy.demand = is);
    }

    Draft place(String is) {
        return but(copy -> copy.place = Optional.of(is));
    }

    Draft earthSubject(EarthSubject is) {
        return but(copy -> copy.earthSubject = Optional.of(is));
    }

    Draft sourcePolarity(Optional<SourcePolarity> is) {
        return but(copy -> copy.sourcePolarity = is);
    }

    Draft method(Optional<Method> is) {
        return but(copy -> copy.method = is);
    }

    Draft component(Optional<Component> is) {
        return but(copy -> copy.component = is);
    }

    Draft limitCase(RuleCase is) {
        return but(copy -> copy.limitCase = Optional.of(is));
    }

    Draft note(String also) {
        return but(copy -> copy.notes.add(also));
    }

    private Draft but(Consumer<Copy> change) {
        Copy copy = new Copy(this);
        change.accept(copy);
        return copy.done();
    }

    /** What may be added to a draft, while it is added. */
    private static final class Copy {
        private final Draft from;
        private Demand demand;
        private Optional<String> place;
        private Optional<EarthSubject> earthSubject;
        private Optional<SourcePolarity> sourcePolarity;
        private Optional<Method> method;
        private Optional<Component> component;
        private Optional<RuleCase> limitCase;
        private final List<String> notes;

        private Copy(Draft from) {
            this.from = from;
            this.demand = from.demand;
            this.place = from.place;
            this.earthSubject = from.earthSubject;
            this.sourcePolarity = from.sourcePolarity;
            this.method = from.method;
            this.component = from.component;
            this.limitCase = from.limitCase;
            this.notes = new ArrayList<>(from.notes);
        }

        private Draft done() {
            return new Draft(
                    from.quantity,
                    from.clause,
                    from.subject,
                    from.of,
                    demand,
                    place,
                    earthSubject,
                    from.in,
                    sourcePolarity,
                    method,
                    component,
                    limitCase,
                    notes);
        }
    }

    MainsState state() {
        return in.state();
    }

    /** A current that flows through the measuring network. */
    boolean isLeakage() {
        return switch (quantity) {
            case EARTH_RESISTANCE,
                    BONDING_RESISTANCE,
                    BONDING_VOLTAGE,
                    INSULATION_RESISTANCE,
                    SUPPLY_VOLTAGE,
                    SUPPLY_CURRENT,
                    TESTER_CHECK,
                    PROOF -> false;
            default -> true;
        };
    }

    /** A current through the measuring network, or a voltage across it. */
    boolean throughNetwork() {
        return isLeakage() || quantity == QuantityKind.BONDING_VOLTAGE;
    }

    /** Read once for the device, so that a limit for the device names its subject. */
    boolean isOfWholeDevice() {
        return switch (quantity) {
            case EQUIPMENT_LEAKAGE, EARTH_LEAKAGE, FUNCTIONAL_EARTH_LEAKAGE, SUPPLY_CURRENT -> true;
            default -> false;
        };
    }

    /** Mains voltage is put on patient connections or on the housing from a limited source. */
    boolean hasLimitedSource() {
        return sourcePolarity.isPresent() || method.equals(Optional.of(Method.ALTERNATIVE));
    }

    /** Quantity, subject, state, mode where the device has several, source polarity, component. */
    String key() {
        List<String> parts =
                new ArrayList<>(List.of(quantity.word(), subject, in.state().word()));
        in.keyOfMode().ifPresent(parts::add);
        sourcePolarity.ifPresent(polarity -> parts.add("source-" + polarity.word()));
        component.ifPresent(each -> parts.add(each.word()));
        return String.join("/", parts);
    }

    Obligation obligation(Optional<MeasuringNetwork> network, Optional<Limit> limit, List<String> more) {
        List<String> all = new ArrayList<>(notes);
        all.addAll(more);
        return new Obligation(
                key(),
                quantity,
                clause,
                of,
                demand,
                place,
                earthSubject,
                in.state(),
                in.mode(),
                sourcePolarity,
                method,
                component,
                isLeakage() ? network : Optional.empty(),
                limit,
                all.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", all)));
    }
}
