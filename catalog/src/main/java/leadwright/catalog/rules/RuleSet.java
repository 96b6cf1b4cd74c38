package leadwright.catalog.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.MeasuringNetwork;

/**
 * A rule set: what is read on which device, what is joined, the limits, and what is left out.
 *
 * @param edition as a house's confirmation names it
 * @param network measuring network that its leakage limits are for; empty where it has none
 * @param editions why a case without a limit here takes that of the edition the device was built to; empty where it does
 *     not
 * @param places circumstances of which a house states one
 * @param nominalMains where it says that leakage currents are corrected to the nominal mains voltage; empty where not
 */
public record RuleSet(
        String id,
        String name,
        String edition,
        String about,
        Optional<MeasuringNetwork> network,
        Optional<Basis> editions,
        List<PlaceRow> places,
        Optional<Basis> nominalMains,
        List<EarthTestRow> earthTest,
        List<TestRow> tests,
        List<JoiningRow> joinings,
        List<LimitRow> limits,
        List<MethodRow> methods,
        List<NotDoneRow> notDone) {
    public RuleSet {
        places = List.copyOf(places);
        earthTest = List.copyOf(earthTest);
        tests = List.copyOf(tests);
        joinings = List.copyOf(joinings);
        limits = List.copyOf(limits);
        methods = List.copyOf(methods);
        notDone = List.copyOf(notDone);
    }

    /**
     * The limit that applies to the case, or empty: the program never makes one up.
     *
     * @throws IllegalStateException when two rows apply; the data may not leave that open
     */
    public Optional<LimitRow> limit(RuleCase asked) {
        List<LimitRow> rows = limits.stream()
                .filter(row -> row.quantity() == asked.quantity() && row.scope().covers(asked))
                .toList();
        if (rows.size() > 1) {
            throw new IllegalStateException(id + " has two limits for one case: "
                    + rows.get(0).id() + ", " + rows.get(1).id());
        }
        return rows.stream().findFirst();
    }

    /** How the quantity joins connections in the case; empty where it joins none. */
    public Optional<JoiningRow> joining(RuleCase asked) {
        return joinings.stream()
                .filter(row -> row.quantity() == asked.quantity() && row.scope().covers(asked))
                .findFirst();
    }

    /** The same with further quantities that are read, and how they join. */
    public RuleSet with(List<TestRow> moreTests, List<JoiningRow> moreJoinings) {
        List<TestRow> allTests = new ArrayList<>(tests);
        allTests.addAll(moreTests);
        List<JoiningRow> allJoinings = new ArrayList<>(joinings);
        allJoinings.addAll(moreJoinings);
        return new RuleSet(
                id,
                name,
                edition,
                about,
                network,
                editions,
                places,
                nominalMains,
                earthTest,
                allTests,
                allJoinings,
                limits,
                methods,
                notDone);
    }

    /** Rows that ask for the quantity. */
    public List<TestRow> tests(QuantityKind quantity) {
        return tests.stream().filter(row -> row.quantity() == quantity).toList();
    }

    public Optional<LimitRow> limit(String limitId) {
        return limits.stream().filter(row -> row.id().equals(limitId)).findFirst();
    }
}
