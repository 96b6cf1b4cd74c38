package leadwright.render.export;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.readings.ReadingsTable;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * The readings table as comma-separated values (RFC 4180, line feeds), in step order, with empty columns for value and
 * remark. A spreadsheet must never run what a file says: text that could be a formula is led by an apostrophe.
 */
public final class PlanCsv {

    private static final List<String> HEADER = Stream.of(
                    List.of("id"), ReadingsTable.OF_THE_PLAN, List.of("value", "remark"))
            .flatMap(List::stream)
            .toList();

    private PlanCsv() {}

    /** The whole file, header first, every line ended by a line feed. */
    public static String of(Plan plan) {
        StringBuilder file = new StringBuilder();
        line(file, HEADER);
        for (Reading reading : plan.readings()) {
            line(file, cells(reading));
        }
        return file.toString();
    }

    private static List<String> cells(Reading reading) {
        Obligation what = reading.obligation();
        List<String> cells = new ArrayList<>();
        cells.add(reading.id());
        cells.add(reading.hookup().orElse(""));
        cells.add(what.state().word());
        cells.add(what.mode());
        cells.add(what.quantity().word());
        cells.add(subject(what.quantity(), what.of(), what.key()));
        cells.add(joined(what.demand().measured()));
        cells.add(joined(what.demand().against()));
        cells.add(joined(what.demand().earthed()));
        cells.add(what.place().orElse(""));
        cells.add(what.method().map(Method::word).orElse(""));
        cells.add(what.component().map(Component::word).orElse(""));
        cells.add(what.network().map(MeasuringNetwork::word).orElse(""));
        cells.add(what.sourcePolarity().map(Obligation.SourcePolarity::word).orElse(""));
        cells.add(what.limit().map(limit -> limit.bound().word()).orElse(""));
        cells.add(what.limit().map(limit -> limit.value().text()).orElse(""));
        cells.add(what.limit().map(Limit::id).orElse(""));
        cells.add(what.limit().map(limit -> limit.mark().name()).orElse(""));
        cells.add(what.clause());
        cells.add("");
        cells.add("");
        return cells;
    }

    /** What is read; of the supply voltages also between which conductors, as nothing else tells them apart. */
    static String subject(QuantityKind quantity, List<String> of, String key) {
        String[] parts = key.split("/");
        boolean between = quantity == QuantityKind.SUPPLY_VOLTAGE && parts.length > 1;
        return joined(of) + (between ? " " + parts[1] : "");
    }

    private static String joined(Collection<String> names) {
        return String.join(" ", names);
    }

    private static void line(StringBuilder file, List<String> cells) {
        file.append(cells.stream().map(PlanCsv::cell).collect(Collectors.joining(",")))
                .append('\n');
    }

    /** One cell: harmless to a spreadsheet, quoted where it must be. */
    static String cell(String text) {
        String harmless = startsFormula(text) ? "'" + text : text;
        boolean quoted = harmless.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return quoted ? '"' + harmless.replace("\"", "\"\"") + '"' : harmless;
    }

    private static boolean startsFormula(String text) {
        // Some programs skip blanks and control characters, and take the full-width signs for the plain ones.
        return text.codePoints()
                .filter(c -> !Character.isWhitespace(c) && !Character.isISOControl(c))
                .limit(1)
                .anyMatch(c -> "=+-@|%\uff1d\uff0b\uff0d\uff20".indexOf(c) >= 0);
    }
}
