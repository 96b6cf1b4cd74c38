package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Outcome;
import leadwright.planner.judge.Judge;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.TestRecord;
import leadwright.render.Records;
import leadwright.render.export.BenchData;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The script beside the judge: for the judge's own sets of readings and for drawn ones, both refuse the same values and come
 * to the same verdict for each reading.
 */
@EnabledIf(value = "leadwright.render.browser.Browser#isInstalled", disabledReason = Browser.NEEDS)
class JudgingAgreesTest {

    private static final int DRAWN = 300;

    /** Asks the script for its verdicts of many sets at once, a text of words for each set. */
    private static final String ASK = """
            const plan = JSON.parse(arguments[0]);
            const amount = text => Judging.read(plan.units, text, "").amount;
            return JSON.parse(arguments[1]).map(set => {
              const taken = {shown: {}, date: set.date, mains: null, nulls: null};
              let refused = false;
              for (const planned of plan.readings) {
                const shown = Judging.read(plan.units, set.values[planned.id] || "", "");
                if (shown && (shown.problem || Judging.mismatch(planned, shown))) {
                  refused = true;
                } else if (shown) {
                  taken.shown[planned.id] = shown;
                }
              }
              taken.mains = set.mains ? Judging.read(plan.units, set.mains, "") : null;
              if (set.start) {
                taken.nulls = {start: amount(set.start), end: set.end ? amount(set.end) : null,
                  "taken-off": set["taken-off"] !== "no"};
              }
              const mains = Judging.mainsOf(plan, taken);
              if ((mains.due && mains.measured === null) || Judging.unlike(mains)) {
                refused = true;
              }
              return refused ? "refused"
                : plan.readings.map(each => {
                    const judged = Judging.judge(each, plan, taken);
                    const odd = Judging.unforeseen(each, taken.shown[each.id], judged, plan.decision);
                    return each.id + " " + judged.verdict + (odd ? " odd" : "");
                  }).join("\\n");
            });
            """;

    /** Of another plan, or without its rows: that is not a matter of values. */
    private static final String ANOTHER = "another";

    @TempDir
    static Path folder;

    private static Browser browser;
    private static String script;

    /** The judge's hand-made plan, and what else a kit or a house may say. */
    enum Variant {
        AS_IT_IS(plan -> plan),
        GUARD_BAND(plan -> plan.replace("\"decision\": \"simple\"", "\"decision\": \"guard-band\"")),
        RAW_SOURCE(plan -> plan.replace("\"reading\": \"corrected\"", "\"reading\": \"raw\"")),
        NO_ACCURACY(plan -> plan.replaceAll("(?s)\"accuracy\": \\{.*?\\}\\s*\\},", "\"accuracy\": {},")),
        NO_ACCURACY_GUARDED(plan -> GUARD_BAND.of(NO_ACCURACY.of(plan))),
        VOLTMETER(plan -> plan.replace(
                "\"accuracy\": {", "\"accuracy\": {\"voltage\": {\"reading\": \"1 %\", \"floor\": \"1 V\"}, ")),
        FOUR_WIRE(plan -> plan.replace("\"two-wire\"", "\"four-wire\"")),
        NOTHING_CORRECTED(plan -> plan.replace("\"nominal-mains\": \"Annex C\"", "\"nominal-mains\": null"));

        private final UnaryOperator<String> change;

        Variant(UnaryOperator<String> change) {
            this.change = change;
        }

        String of(String plan) {
            return change.apply(plan);
        }
    }

    @BeforeAll
    static void open() throws IOException {
        browser = Browser.start(folder);
        script = Files.readString(Path.of("src/main/resources/leadwright/render/sheet/judging.js"));
    }

    @AfterAll
    static void close() {
        browser.close();
    }

    @ParameterizedTest(name = "{0}, the judge''s sets and " + DRAWN + " drawn from seed 1 on")
    @EnumSource
    void sameVerdicts(Variant variant) throws IOException {
        String kept = Files.readString(Records.SETS.resolve("plan.json"));
        assertThat(variant == Variant.AS_IT_IS)
                .as("the variant changes something")
                .isEqualTo(kept.equals(variant.of(kept)));
        PlannedTest plan = PlanFile.read("plan.json", variant.of(kept).getBytes(StandardCharsets.UTF_8))
                .orThrow();
        List<String> names = new ArrayList<>();
        List<Readings> sets = new ArrayList<>();
        for (Path file : known()) {
            Outcome<Readings> read = ReadingsReader.read(file.toString(), Files.readAllBytes(file));
            if (read instanceof Outcome.Read<Readings> good) {
                names.add(file.getFileName().toString());
                sets.add(good.orThrow());
            }
        }
        assertThat(sets).hasSizeGreaterThan(25);
        for (int seed = 1; seed <= DRAWN; seed++) {
            names.add("seed " + seed);
            sets.add(ReadingsReader.read("drawn", drawn(plan, new Random(seed)).getBytes(StandardCharsets.UTF_8))
                    .orThrow());
        }
        TreeSet<String> seen = agreed(plan, names, sets);
        assertThat(seen).contains("refused", "fail", "void", "not-judged", "as-expected");
        assertThat(seen.contains("pass"))
                .as("without accuracy a guard band accepts nothing")
                .isEqualTo(variant != Variant.NO_ACCURACY_GUARDED);
    }

    /** Real plans: insulation with its limits from below, raw readings of a limited source, four wires, no mains. */
    @ParameterizedTest(name = "{0} on {1}, {2}, 100 drawn from seed 1 on")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, insulation: always",
        "oddlebar-rescue-set, k1-marrowgate-bench, decision: guard-band",
        "noctuary-sleep-recorder, k1-marrowgate-bench, paper: a4",
        "slaterow-tilt-table, k3-fixed-plant-case, paper: a4",
        "wickling-rhythm-card, k2-round-trolley, paper: letter",
        "dovecote-infant-warmer, k1-marrowgate-bench, methods: [alternative]",
    })
    void sameVerdictsOnRealPlans(String device, String kit, String house) throws IOException {
        Path rules = Files.writeString(folder.resolve("house.yaml"), "leadwright: house/1\n" + house + "\n");
        PlannedTest plan = BenchPages.write(
                        folder.resolve(device),
                        BenchPages.SAMPLES.resolve(device + ".yaml"),
                        kit,
                        "json",
                        "--house",
                        rules.toString())
                .plan();
        List<String> names = new ArrayList<>();
        List<Readings> sets = new ArrayList<>();
        for (int seed = 1; seed <= 100; seed++) {
            names.add("seed " + seed);
            sets.add(ReadingsReader.read("drawn", drawn(plan, new Random(seed)).getBytes(StandardCharsets.UTF_8))
                    .orThrow());
        }
        assertThat(agreed(plan, names, sets)).contains("refused", "fail", "void");
    }

    /** Asks both for every set; gives the words that the judge used. */
    private static TreeSet<String> agreed(PlannedTest plan, List<String> names, List<Readings> sets) {
        List<?> said = (List<?>) browser.script(
                script + ASK,
                BenchData.of(plan),
                sets.stream().map(JudgingAgreesTest::json).collect(Collectors.joining(",", "[", "]")));
        TreeSet<String> seen = new TreeSet<>();
        for (int i = 0; i < sets.size(); i++) {
            String judged = judged(plan, sets.get(i));
            if (judged.equals(ANOTHER)) {
                continue;
            }
            assertThat(said.get(i)).as(names.get(i)).isEqualTo(judged);
            judged.lines().forEach(line -> seen.add(line.substring(line.indexOf(' ') + 1)));
        }
        return seen;
    }

    private static List<Path> known() throws IOException {
        try (Stream<Path> list = Files.list(Records.SETS.resolve("readings"))) {
            return list.sorted().toList();
        }
    }

    /** The judge's verdicts; what was not taken has none. */
    private static String judged(PlannedTest plan, Readings readings) {
        Optional<LocalDate> on =
                readings.date().isPresent() ? Optional.empty() : Optional.of(LocalDate.of(2027, 1, 10));
        Outcome<TestRecord> outcome =
                Judge.judge(plan, readings, new Judge.Options(Optional.empty(), on, Optional.empty()));
        if (outcome instanceof Outcome.Read<TestRecord> record) {
            return record.orThrow().judged().stream()
                    .map(JudgingAgreesTest::word)
                    .collect(Collectors.joining("\n"));
        }
        boolean ofValues = outcome.problems().stream()
                .anyMatch(each -> !each.message().contains("for plan")
                        && !each.message().contains("occasion")
                        && !each.message().contains("has no reading")
                        && !each.message().contains("missing: R"));
        return ofValues ? "refused" : ANOTHER;
    }

    private static String word(Judged judged) {
        return judged.planned().id() + " "
                + (judged.taken().shown().isEmpty()
                        ? "not-read"
                        : judged.verdict().word() + (odd(judged) ? " odd" : ""));
    }

    private static boolean odd(Judged judged) {
        return judged.flags().stream()
                .anyMatch(
                        flag -> flag.startsWith("passes, but is not what") || flag.startsWith("not what is foreseen"));
    }

    // ---- readings as the script is given them

    private static String json(Readings set) {
        Map<String, String> head = new LinkedHashMap<>();
        head.put("date", set.date().map(each -> each.value().toString()).orElse("2027-01-10"));
        set.mainsVoltage().ifPresent(volts -> head.put("mains", volts.value().text()));
        set.nulls().ifPresent(nulls -> {
            head.put("start", nulls.start().text());
            nulls.end().ifPresent(end -> head.put("end", end.text()));
            head.put("taken-off", nulls.takenOff() ? "yes" : "no");
        });
        String values = set.taken().stream()
                .filter(taken -> taken.shown().isPresent())
                .map(taken ->
                        pair(taken.id().value(), taken.shown().get().value().text()))
                .collect(Collectors.joining(","));
        return head.entrySet().stream()
                .map(each -> pair(each.getKey(), each.getValue()))
                .collect(Collectors.joining(",", "{", ",\"values\":{" + values + "}}"));
    }

    private static String pair(String key, String value) {
        return "\"" + key + "\":\"" + value + "\"";
    }

    // ---- drawn readings

    /** Around every edge: the limit, the guard band, the range's ends, the mains, the nulls, the calibration. */
    private static String drawn(PlannedTest plan, Random random) {
        StringBuilder text = new StringBuilder("leadwright: readings/1\nplan: " + plan.fingerprint()
                + "\ndevice: {serial: \"1\"}\nby: drawn\ndate: "
                + pick(random, "2027-01-10", "2027-01-10", "2027-01-10", "2027-08-31", "2027-09-01") + "\n");
        if (random.nextInt(4) > 0) {
            text.append("mains-voltage: ")
                    .append(pick(random, "230 V", "231.5 V", "207 V", "253.3 V", "198.7 V", "100 V"))
                    .append('\n');
        }
        if (random.nextInt(3) > 0) {
            text.append("nulls: {start: ")
                    .append(pick(random, "62 mohm", "55.5 mohm", "2.1 ohm"))
                    .append(random.nextInt(3) > 0 ? ", end: " + pick(random, "62 mohm", "66 mohm", "90 mohm") : "")
                    .append(", taken-off: ")
                    .append(pick(random, "yes", "no"))
                    .append("}\n");
        }
        text.append("readings:\n");
        boolean odd = random.nextInt(6) == 0;
        for (PlannedReading each : plan.readings()) {
            text.append("  - {id: ").append(each.id());
            if (random.nextInt(25) == 0) {
                text.append(", not-taken: drawn so}\n");
            } else {
                text.append(", value: '").append(value(each, odd, random)).append("'}\n");
            }
        }
        return text.toString();
    }

    private static String value(PlannedReading reading, boolean odd, Random random) {
        if (odd && random.nextInt(8) == 0) {
            return pick(random, "3 A", "open", "2 kohm", "5 V", "> 20 kV", "200 Gohm", "10 mohm", "-4 mohm");
        }
        if (reading.limit().isPresent()) {
            Quantity limit = reading.limit().get().value();
            long amount = switch (random.nextInt(5)) {
                case 0 -> limit.amount();
                case 1 -> limit.amount() + (long) (limit.amount() * (random.nextDouble() - 0.5) / 8);
                case 2 -> (long) (limit.amount() * random.nextDouble());
                case 3 -> limit.amount() + random.nextInt(5) - 2;
                default -> (long) (limit.amount() * (1 + random.nextDouble() / 4));
            };
            String beyond = random.nextInt(12) == 0 ? pick(random, "> ", "< ") : "";
            return beyond + Quantity.of(limit.dimension(), amount).text();
        }
        if (reading.key().contains("to-earth") || reading.key().contains("line-to-neutral")) {
            boolean neutral = reading.key().contains("/neutral-to-earth");
            return neutral
                    ? pick(random, "2 V", "2 V", "23 V", "40 V")
                    : pick(random, "230 V", "231 V", "229.9 V", "200 V", "> 300 V");
        }
        if (reading.dimension().equals(Optional.of(Dimension.CURRENT))) {
            return pick(random, "100 uA", "101.5 uA", "97.25 uA", "112 uA", "0 uA", "> 10 mA");
        }
        return pick(random, "open", "> 10 ohm", "1 ohm", "100 mohm");
    }

    private static String pick(Random random, String... words) {
        return words[random.nextInt(words.length)];
    }
}
