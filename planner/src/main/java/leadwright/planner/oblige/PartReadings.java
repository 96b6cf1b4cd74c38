package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.JoiningRow;
import leadwright.catalog.rules.Polarity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Obligation.SourcePolarity;

/** Readings of applied parts: patient currents, and mains on a part or on unearthed metal. */
final class PartReadings {
    static final String TOTAL = "total";

    private final Asking asking;
    private final Remarks remarks;
    private final QuantityKind quantity;
    private final Optional<Method> method;

    private PartReadings(Asking asking, Remarks remarks, QuantityKind quantity, Optional<Method> method) {
        this.asking = asking;
        this.remarks = remarks;
        this.quantity = quantity;
        this.method = method;
    }

    static List<Draft> of(Asking asking, QuantityKind quantity, Remarks remarks) {
        List<TestRow> rows = asking.tests(quantity);
        boolean anyPart = rows.stream()
                .flatMap(row -> row.scope().types().stream())
                .anyMatch(type -> !asking.facts().parts(type).isEmpty());
        if (!anyPart) {
            return List.of();
        }
        Optional<Method> method = MethodChoice.of(asking, quantity, remarks);
        PartReadings readings = new PartReadings(asking, remarks, quantity, method);
        List<Draft> all = new ArrayList<>();
        for (TestRow row : rows) {
            if (row.scope().methods().isEmpty()
                    || method.filter(row.scope().methods()::contains).isPresent()) {
                all.addAll(readings.of(row));
            }
        }
        return all;
    }

    private List<Draft> of(TestRow row) {
        List<Asked> asked = new ArrayList<>();
        row.scope().types().stream()
                .flatMap(type -> joining(type, Optional.empty()).stream())
                .filter(joining -> joining.joined() == Joined.DEVICE)
                .findFirst()
                .ifPresent(joining -> asked.addAll(
                        Joinings.ofDevice(asking, joining, row.scope().types(), remarks)));
        for (AppliedPart part : asking.facts().parts()) {
            if (row.scope().types().contains(part.type())) {
                joining(part.type(), Optional.empty())
                        .filter(joining -> joining.joined() != Joined.TYPE && joining.joined() != Joined.DEVICE)
                        .ifPresent(joining -> asked.addAll(Joinings.ofPart(asking, joining, part, remarks)));
            }
        }
        for (PartType type : row.scope().types()) {
            joining(type, Optional.empty())
                    .filter(joining -> joining.joined() == Joined.TYPE)
                    .or(() -> joining(type, Optional.of(TOTAL)))
                    .ifPresent(joining -> asked.addAll(totals(joining, type, row)));
        }
        List<Draft> all = new ArrayList<>();
        asked.forEach(each -> all.addAll(inEveryState(row, each)));
        return all;
    }

    private Optional<JoiningRow> joining(PartType type, Optional<String> subject) {
        RuleCase asked = asking.asked(quantity).type(type).method(method);
        return asking.rules().joining(subject.map(asked::subject).orElse(asked));
    }

    /** Totals that say more than the readings of the single parts, whose limits are stricter. */
    private List<Asked> totals(JoiningRow joining, PartType type, TestRow row) {
        List<Asked> totals = new ArrayList<>();
        for (Asked total : Joinings.ofType(asking, joining, type, remarks)) {
            if (readAlone(total, type)) {
                remarks.notApplicable(
                        quantity.word() + " of " + total.subject(),
                        "one part alone is left of the total: its own reading, with a stricter limit, says as much",
                        row.basis().clause());
            } else {
                totals.add(total);
            }
        }
        return totals;
    }

    private boolean readAlone(Asked total, PartType type) {
        QuantityKind single = switch (quantity) {
            case TOTAL_PATIENT_LEAKAGE -> QuantityKind.PATIENT_LEAKAGE;
            case TOTAL_MAINS_ON_APPLIED_PART -> QuantityKind.MAINS_ON_APPLIED_PART;
            default -> quantity;
        };
        Remarks unheard = new Remarks();
        return asking.facts().parts(type).stream()
                .flatMap(part -> asking
                        .rules()
                        .joining(asking.asked(single).type(type).method(method))
                        .map(joining -> Joinings.ofPart(asking, joining, part, unheard))
                        .orElse(List.of())
                        .stream())
                .anyMatch(
                        asked -> asked.demand().measured().equals(total.demand().measured()));
    }

    private List<Draft> inEveryState(TestRow row, Asked asked) {
        List<Draft> all = new ArrayList<>();
        for (StateInMode state : StateInMode.of(row, asking.facts())) {
            for (Optional<SourcePolarity> source : sources(row)) {
                for (Component component : row.scope().components()) {
                    all.add(reading(row, asked, state, source, component));
                }
            }
        }
        return all;
    }

    private static List<Optional<SourcePolarity>> sources(TestRow row) {
        if (row.sourcePolarities().isEmpty()) {
            return List.of(Optional.empty());
        }
        return row.sourcePolarities().stream()
                .map(polarity ->
                        Optional.of(polarity == Polarity.NORMAL ? SourcePolarity.NORMAL : SourcePolarity.REVERSED))
                .toList();
    }

    private Draft reading(
            TestRow row, Asked asked, StateInMode state, Optional<SourcePolarity> source, Component component) {
        RuleCase ofType = asking.asked(quantity);
        RuleCase limitCase = asked.type()
                .map(ofType::type)
                .orElse(ofType)
                .condition(state.condition())
                .method(method)
                .component(Optional.of(component));
        // A total with a row of its own kind is told by its quantity; the others by their subject.
        boolean bySubject = asked.total()
                && quantity != QuantityKind.TOTAL_PATIENT_LEAKAGE
                && quantity != QuantityKind.TOTAL_MAINS_ON_APPLIED_PART;
        Draft draft = Draft.of(quantity, row.basis().clause(), asked.subject(), asked.of(), state)
                .demand(asked.demand())
                .method(method)
                .component(Optional.of(component))
                .sourcePolarity(source)
                .limitCase(bySubject ? limitCase.subject(TOTAL) : limitCase);
        if (row.sourcePolarities().size() > 1) {
            draft = draft.note("both polarities of the source are read, and the larger value counts");
        }
        if (method.equals(Optional.of(Method.ALTERNATIVE))) {
            draft = draft.note(WholeDeviceReadings.SWITCH_CLOSED);
        }
        return draft;
    }
}
