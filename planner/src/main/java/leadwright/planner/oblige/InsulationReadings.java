package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Occasion;

/** Insulation resistance, where the house wants it and the device allows it. */
final class InsulationReadings {
    private static final QuantityKind QUANTITY = QuantityKind.INSULATION_RESISTANCE;

    private final Asking asking;
    private final Remarks remarks;
    private final String clause;

    private InsulationReadings(Asking asking, Remarks remarks, String clause) {
        this.asking = asking;
        this.remarks = remarks;
        this.clause = clause;
    }

    static List<Draft> of(Asking asking, Remarks remarks) {
        if (asking.forbidden(QUANTITY)) {
            return List.of();
        }
        List<TestRow> rows = asking.tests(QUANTITY);
        String clause =
                rows.stream().map(row -> row.basis().clause()).findFirst().orElse("house rules");
        boolean extra = asking.house().extraTests().stream()
                .anyMatch(test -> test.quantity().equals(QUANTITY.word()));
        if (!extra && !houseWants(asking)) {
            if (!rows.isEmpty()) {
                remarks.notApplicable(
                        QUANTITY.word(),
                        "house rules: insulation "
                                + asking.house().insulation().word() + ", and the occasion is "
                                + asking.occasion().word(),
                        clause);
            }
            return List.of();
        }
        return new InsulationReadings(asking, remarks, clause).readings();
    }

    private static boolean houseWants(Asking asking) {
        return switch (asking.house().insulation()) {
            case NEVER -> false;
            case AFTER_REPAIR -> asking.occasion() == Occasion.AFTER_REPAIR;
            case ALWAYS -> true;
        };
    }

    private List<Draft> readings() {
        if (asking.facts().supply() != SupplyConnection.NONE
                && asking.device().mainsSwitch() == MainsSwitch.ELECTRONIC) {
            remarks.notApplicable(
                    QUANTITY.word(),
                    "the mains switch is electronic: with the device unplugged its mains part is not joined through, so"
                            + " a reading would say nothing of what lies behind it",
                    clause);
            return List.of();
        }
        List<Draft> all = new ArrayList<>();
        boolean mains = asking.facts().onOutlet();
        if (mains && asking.facts().protection() == Protection.CLASS_1) {
            all.add(reading("mains-to-earth", "mains-to-earth", List.of("mains"), List.of(), List.of()));
        }
        List<Connection> metal = asking.facts().unearthedMetal().stream()
                .map(point -> point.connection())
                .toList();
        if (mains && asking.facts().protection() == Protection.CLASS_2) {
            if (metal.isEmpty()) {
                remarks.notApplicable(
                        "insulation-resistance from mains to housing",
                        "no unearthed metal is stated as a touch point",
                        clause);
            } else {
                all.add(reading("mains-to-housing", "mains-to-housing", List.of("housing"), metal, List.of()));
            }
        }
        for (AppliedPart part : asking.facts().parts()) {
            if (part.type().isFType()) {
                part.functions().forEach(function -> all.addAll(ofFunction(part, function, mains, metal)));
            }
        }
        return all;
    }

    private List<Draft> ofFunction(AppliedPart part, PartFunction function, boolean mains, List<Connection> metal) {
        String name = part.functionName(function);
        Map<Optional<String>, List<Connection>> groups = asking.facts()
                .therapy()
                .split(part.connections().stream()
                        .filter(connection -> connection.function().equals(name))
                        .toList());
        List<Draft> all = new ArrayList<>();
        groups.forEach((output, connections) -> {
            String subject = groups.size() > 1 && output.isPresent() ? name + "-" + output.get() : name;
            if (mains) {
                all.add(reading("mains-to-" + subject, "mains-to-part", List.of(name), connections, List.of())
                        .limitCase(asking.asked(QUANTITY).type(part.type()).subject("mains-to-part")));
            }
            all.addAll(toHousing(part, name, subject, connections, metal));
        });
        return all;
    }

    /** To the protective earth where there is one, else to the unearthed accessible metal, or the housing wrapped. */
    private List<Draft> toHousing(
            AppliedPart part, String name, String subject, List<Connection> connections, List<Connection> metal) {
        boolean earth = asking.facts().hasProtectiveEarth();
        List<Connection> other =
                earth ? List.of() : metal.isEmpty() ? asking.facts().housing() : metal;
        if (!earth && other.isEmpty()) {
            remarks.notApplicable(
                    "insulation-resistance of " + name + " to the housing", "no touch point is stated", clause);
            return List.of();
        }
        return List.of(reading(subject + "-to-housing", "part-to-housing", List.of(name), connections, other)
                .limitCase(asking.asked(QUANTITY).type(part.type()).subject("part-to-housing")));
    }

    private Draft reading(
            String subject,
            String limitSubject,
            List<String> of,
            Collection<Connection> measured,
            Collection<Connection> against) {
        StateInMode state = asking.facts().fixedPlant() ? StateInMode.ISOLATED : StateInMode.OFF;
        return Draft.of(QUANTITY, clause, subject, of, state)
                .demand(Demand.of(names(measured), names(against), List.of()))
                .limitCase(asking.asked(QUANTITY).subject(limitSubject))
                .note(
                        "500 V d.c.; device unplugged from the mains, its mains switch closed; afterwards discharged, below"
                                + " 60 V d.c.");
    }

    private static List<String> names(Collection<Connection> connections) {
        return connections.stream().map(Connection::name).toList();
    }
}
