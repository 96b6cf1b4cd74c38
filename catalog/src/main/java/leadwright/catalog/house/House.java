package leadwright.catalog.house;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;

/**
 * A department's own choices, as described by a {@code house/1} file; {@link #defaults()} where there is none.
 *
 * @param rules rule set in force
 * @param methods leakage methods in order of preference
 * @param capacitanceShare share of a limit that lead capacitance may take
 * @param floatJoined whether what a reading leaves floating may share a bundle; readings that ask nothing of the wiring
 *     are not concerned
 * @param department name of the department, where given
 * @param where the circumstance that it stands in, of those that a rule set lists
 */
public record House(
        String rules,
        List<Method> methods,
        InsulationPolicy insulation,
        LabelCode labels,
        Paper paper,
        EarthWord words,
        Aim aim,
        ReplugUnderPower replugUnderPower,
        Quantity capacitanceShare,
        CapacitanceLimit capacitanceLimit,
        FloatJoined floatJoined,
        PastDue pastDue,
        DecisionRule decision,
        Times times,
        List<Tighter> tighter,
        List<ExtraTest> extraTests,
        List<JoinStricter> joinStricter,
        List<String> signs,
        List<Confirmed> confirmed,
        Optional<String> department,
        Optional<String> where) {
    public House {
        methods = List.copyOf(methods);
        tighter = List.copyOf(tighter);
        extraTests = List.copyOf(extraTests);
        joinStricter = List.copyOf(joinStricter);
        signs = List.copyOf(signs);
        confirmed = List.copyOf(confirmed);
    }

    /** A house that states no circumstance. */
    public House(
            String rules,
            List<Method> methods,
            InsulationPolicy insulation,
            LabelCode labels,
            Paper paper,
            EarthWord words,
            Aim aim,
            ReplugUnderPower replugUnderPower,
            Quantity capacitanceShare,
            CapacitanceLimit capacitanceLimit,
            FloatJoined floatJoined,
            PastDue pastDue,
            DecisionRule decision,
            Times times,
            List<Tighter> tighter,
            List<ExtraTest> extraTests,
            List<JoinStricter> joinStricter,
            List<String> signs,
            List<Confirmed> confirmed,
            Optional<String> department) {
        this(
                rules,
                methods,
                insulation,
                labels,
                paper,
                words,
                aim,
                replugUnderPower,
                capacitanceShare,
                capacitanceLimit,
                floatJoined,
                pastDue,
                decision,
                times,
                tighter,
                extraTests,
                joinStricter,
                signs,
                confirmed,
                department,
                Optional.empty());
    }

    /** A limit made stricter; a looser value is an error of the file. */
    public record Tighter(String limit, Optional<Quantity> atMost, Optional<Quantity> atLeast, String because) {}

    /** A quantity that the house also reads. */
    public record ExtraTest(String quantity, String because) {}

    /** A joining stricter than the rule set's: connections of a part type each on their own. */
    public record JoinStricter(String type, String each, String because) {}

    /** A limit compared with the department's own copy of a standard. */
    public record Confirmed(String limit, String edition, String by, LocalDate date) {}

    public static House defaults() {
        return new House(
                "iec-62353-2014",
                List.of(Method.DIRECT, Method.ALTERNATIVE, Method.DIFFERENTIAL),
                InsulationPolicy.NEVER,
                LabelCode.IEC,
                Paper.A4,
                EarthWord.EARTH,
                Aim.HOOKUPS,
                ReplugUnderPower.NEVER,
                new Quantity(leadwright.catalog.quantity.Dimension.RATIO, 100_000),
                CapacitanceLimit.WARN,
                FloatJoined.NOTED,
                PastDue.REFUSE,
                DecisionRule.SIMPLE,
                Times.defaults(),
                List.of(),
                List.of(),
                List.of(),
                List.of("technician"),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }
}
