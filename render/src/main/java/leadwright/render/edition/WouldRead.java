package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Basis;
import leadwright.planner.mistake.Exposure;
import leadwright.planner.mistake.Finding;
import leadwright.planner.mistake.ProofKind;
import leadwright.planner.mistake.ProofStep;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.plan.Step;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What the readings would have shown with each slip made, slips alike gathered in one row: and what shows it. */
final class WouldRead {
    static final List<String> HEAD = List.of("Slip", "Reading", "Should read", "Would read", "Shown by");
    static final List<Integer> WIDTHS = List.of(38, 10, 13, 13, 26);

    /** Things named in a row before it only counts them. */
    private static final int NAMED = 3;

    private final Plan plan;
    private final Vocabulary words;

    private WouldRead(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
    }

    /** Slips that stand in one row. */
    private record Alike(Optional<String> hookup, SlipKind kind, String part, Exposure exposure, String shownBy) {}

    static List<List<Words>> of(Plan plan, Vocabulary words) {
        return new WouldRead(plan, words).rows();
    }

    private List<List<Words>> rows() {
        Map<Alike, List<Finding>> rows = new LinkedHashMap<>();
        for (Finding finding : plan.foresight().watch().findings()) {
            Slip slip = finding.slip();
            Alike alike = new Alike(slip.hookup(), slip.kind(), part(slip), finding.exposure(), shownBy(finding));
            rows.computeIfAbsent(alike, each -> new ArrayList<>()).add(finding);
        }
        return rows.entrySet().stream()
                .map(each -> row(each.getKey(), each.getValue()))
                .toList();
    }

    /** The applied part of a single wire; slips of other kinds are gathered over the hookup. */
    private static String part(Slip slip) {
        return slip.kind() == SlipKind.WIRE_OFF ? slip.things().get(0).replaceAll("\\..*", "") : "";
    }

    private List<Words> row(Alike alike, List<Finding> findings) {
        Finding telling = telling(findings);
        return List.of(
                Words.strong(words.say(alike.kind().words()))
                        .then(alike.hookup().map(id -> ", " + id).orElse("") + which(alike, findings)),
                Words.of(telling.by().orElse("–")),
                Words.of(telling.planned().map(this::amount).orElse("–") + star(telling)),
                Words.of(telling.shown().map(this::shown).orElse("–")),
                alike.exposure() == Exposure.SILENT
                        ? Words.strong(words.say(alike.shownBy()))
                        : Words.of(words.say(alike.shownBy())));
    }

    private String which(Alike alike, List<Finding> findings) {
        if (!alike.part().isEmpty()) {
            return findings.size() == 1
                    ? ": " + words.subject(findings.get(0).slip().things())
                    : ": any of the " + findings.size() + " of "
                            + words.group(findings.get(0).slip().things().get(0));
        }
        if (findings.size() > NAMED) {
            return ": any of " + findings.size();
        }
        String things = findings.stream()
                .map(finding ->
                        finding.slip().things().stream().map(this::thing).collect(Collectors.joining(" to ")))
                .filter(each -> !each.isEmpty())
                .distinct()
                .collect(Collectors.joining("; "));
        return things.isEmpty() ? "" : ": " + things;
    }

    private String thing(String name) {
        boolean connection = plan.device().connections().stream()
                .anyMatch(each -> each.name().equals(name));
        return connection ? words.subject(List.of(name)) : name.replace('/', ' ');
    }

    /** The one whose reading is moved most, by share. */
    private static Finding telling(List<Finding> findings) {
        Finding most = findings.get(0);
        for (Finding each : findings) {
            if (moved(each) > moved(most)) {
                most = each;
            }
        }
        return most;
    }

    private static double moved(Finding finding) {
        double planned = finding.planned().map(Quantity::inSi).orElse(0.0);
        double shown = finding.shown().map(Quantity::inSi).orElse(planned);
        return planned == 0 ? 0 : Math.abs(shown - planned) / planned;
    }

    private String amount(Quantity quantity) {
        return quantity.amount() == 0 ? "0" : words.amount(quantity);
    }

    private String shown(Quantity quantity) {
        // What stands for no path at all.
        return quantity.inSi() >= 1e9 ? "open" : amount(quantity);
    }

    private String star(Finding finding) {
        boolean assumed = finding.by()
                .flatMap(plan.foresight()::of)
                .filter(foreseen -> foreseen.basis() == Basis.ASSUMED)
                .isPresent();
        return assumed ? "*" : "";
    }

    private String shownBy(Finding finding) {
        return switch (finding.exposure()) {
            case LIMIT -> "the limit";
            case BAND -> "the value: not what the device file foresees";
            case CHECK -> check(finding.slip().kind());
            case HARMLESS -> "nothing; no bad device passes for it";
            case SILENT -> proof(finding.slip());
        };
    }

    private static String check(SlipKind kind) {
        return switch (kind) {
            case NULL_WITH_CORD, NULL_TIPS_APART -> "the leads nulled again at the end";
            case FUSE_BLOWN, SUPPLY_TRIPPED -> "the known resistor at start and end";
            default -> "the supply voltages";
        };
    }

    private String proof(Slip slip) {
        Set<String> by = new LinkedHashSet<>();
        for (ProofStep proof : plan.foresight().watch().proofs()) {
            if (proof.exposes().contains(slip.id())) {
                by.add(named(plan, proof));
            }
        }
        return by.isEmpty() ? "NOTHING: it remains" : String.join("; ", by);
    }

    /** {@code step 41, count and tug}. */
    static String named(Plan plan, ProofStep proof) {
        String name = proof.kind().word().replace('-', ' ');
        if (proof.kind() == ProofKind.STATE_TICK) {
            return "the tick at the state's head";
        }
        List<String> numbers = plan.steps().stream()
                .filter(step -> step.place()
                        .equals(Optional.of(Step.PROOF + proof.kind().word())))
                .filter(step -> proof.hookup().isEmpty() || step.hookup().equals(proof.hookup()))
                .map(step -> String.valueOf(step.number()))
                .toList();
        String steps = numbers.size() > NAMED
                ? "steps " + numbers.get(0) + " to " + numbers.get(numbers.size() - 1)
                : (numbers.size() == 1 ? "step " : "steps ") + String.join(", ", numbers);
        return steps + ", " + name;
    }
}
