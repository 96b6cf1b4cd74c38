package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.rules.Limit;
import leadwright.planner.judge.Judge;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.TestRecord;
import leadwright.render.cli.Main;

/** Sheets of the samples, written as a user does it, and what a person would fill in. */
final class BenchPages {

    static final Path SAMPLES = Path.of("..", "samples").toAbsolutePath().normalize();

    private BenchPages() {}

    /** A written plan: the page, the plan beside it, and the plan as the judge reads it. */
    record Written(Path page, Path planFile, PlannedTest plan) {}

    static Written brindlewick(Path folder) {
        return write(folder, SAMPLES.resolve("brindlewick-ward-monitor.yaml"), "k1-marrowgate-bench", "html,json,pdf");
    }

    /** @param formats as the command line takes them */
    static Written write(Path folder, Path device, String kit, String formats, String... more) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        List<String> arguments = new ArrayList<>(List.of(
                "plan",
                device.toString(),
                "--kit",
                SAMPLES.resolve(kit + ".yaml").toString(),
                "--formats",
                formats,
                "--out",
                folder.toString()));
        arguments.addAll(List.of(more));
        int code = Main.run(arguments.toArray(String[]::new), new PrintWriter(out), new PrintWriter(err));
        assertThat(code).as(out + "\n" + err).isLessThanOrEqualTo(1);
        Path plan = folder.resolve("plan.json");
        try {
            return new Written(
                    folder.resolve("bench-sheet.html"),
                    plan,
                    PlanFile.read("plan.json", Files.readAllBytes(plan)).orThrow());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A value for each reading that a sound device on a sound bench gives. */
    static Map<String, String> soundValues(PlannedTest plan) {
        Map<String, String> values = new LinkedHashMap<>();
        plan.readings().forEach(each -> values.put(each.id(), sound(each)));
        return values;
    }

    private static String sound(PlannedReading reading) {
        if (reading.key().contains("/neutral-to-earth")) {
            return "2 V";
        }
        if (reading.key().contains("earth-lead-off")) {
            return "open";
        }
        Optional<Limit> limit = reading.limit();
        if (limit.isPresent()) {
            long half = limit.get().value().amount() / 2;
            long inside = limit.get().bound() == Limit.Bound.AT_MOST ? half : half * 4;
            return leadwright.catalog.quantity.Quantity.of(limit.get().value().dimension(), inside)
                    .text();
        }
        return switch (reading.quantity()) {
            case TESTER_CHECK -> reading.component().isPresent() ? "100 uA" : "1 ohm";
            case SUPPLY_VOLTAGE -> "230 V";
            default -> reading.dimension().orElse(Dimension.RESISTANCE) == Dimension.CURRENT ? "12 uA" : "1 ohm";
        };
    }

    /** Fills in who, what and when, and every value. */
    static void fill(Browser browser, Map<String, String> values) {
        // The keys of a field for a day depend on the machine's language.
        browser.put("inventory", "A-17")
                .put("serial", "BW-0417")
                .put("accessories", "ECG trunk cable, finger sensor")
                .put("by", "R. Sedgemere")
                .put("date", "2027-01-10")
                .put("mains-voltage", "231");
        values.forEach((id, value) -> browser.put("value/" + id, value));
    }

    /** The judge's record of a readings file. */
    static TestRecord judge(PlannedTest plan, String readings) {
        return Judge.judge(
                        plan,
                        ReadingsReader.read("readings.json", readings.getBytes(StandardCharsets.UTF_8))
                                .orThrow(),
                        new Judge.Options(Optional.empty(), Optional.empty(), Optional.empty()))
                .orThrow();
    }
}
