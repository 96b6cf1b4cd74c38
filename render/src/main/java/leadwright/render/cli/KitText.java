package leadwright.render.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.reach.DeviceReach;
import leadwright.planner.reach.KitReach;
import leadwright.planner.reach.KitReport;
import leadwright.planner.reach.OneMore;
import leadwright.planner.wire.KitChains.Use;
import leadwright.planner.wire.KitChains.Way;

/** A kit's reach and report in words and columns. */
final class KitText {
    private static final long LONG = 30_000_000;

    private KitText() {}

    /** What the kit reaches by itself. */
    static List<String> of(KitReach reach) {
        Kit kit = reach.kit();
        Tester tester = kit.tester();
        List<String> lines = new ArrayList<>();
        lines.add(kit.name() + ": " + tester.name() + ", " + jacks(tester.jacks()) + ".");
        lines.add("Methods: "
                + (tester.methods().isEmpty()
                        ? "none"
                        : tester.methods().stream().map(Method::word).collect(Collectors.joining(", ")))
                + ". Mains on an applied part: "
                + tester.partSource()
                        .map(source -> "from " + source.voltage().text() + ", at most "
                                + source.shortCircuit().text())
                        .orElse("no")
                + ". Insulation: "
                + (tester.insulation().isEmpty()
                        ? "no"
                        : tester.insulation().stream().map(Quantity::text).collect(Collectors.joining(", ")))
                + ".");
        lines.add("");
        lines.addAll(terminals(reach));
        if (!reach.beyond().isEmpty()) {
            lines.add("");
            lines.add("Brings no jack to: " + String.join(", ", reach.beyond()) + ".");
        }
        lines.add("");
        if (reach.earth().isEmpty()) {
            lines.add("Earth readings: none; the tester has no earth test.");
        }
        for (KitReach.Earth each : reach.earth()) {
            lines.add("Earth readings with " + each.current().text() + ": "
                    + each.lead()
                            .map(lead -> "bare metal as far as a lead of " + metres(lead) + " reaches (routed distance "
                                    + metres(lead * 5 / 6 / 10_000 * 10_000) + ")")
                            .orElse("none; no lead and end of the kit carry it to bare metal"));
        }
        return lines;
    }

    private static String jacks(Optional<Jacks> jacks) {
        return jacks.map(each -> PlanReport.count(each.count(), "jack") + " (" + each.socket() + ")")
                .orElse("no jacks");
    }

    private static List<String> terminals(KitReach reach) {
        if (reach.terminals().isEmpty()) {
            return List.of("Brings no terminal to a jack.");
        }
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("terminal", "through", "at once", "mains on it", "insulation", "chain up to"));
        for (KitReach.Terminal each : reach.terminals()) {
            Optional<Way> way = Optional.ofNullable(each.ways().get(Use.ORDINARY));
            rows.add(List.of(
                    each.word(),
                    way.map(found -> found.items().isEmpty() ? "nothing" : String.join(", ", found.items()))
                            .orElse("-"),
                    count(each, Use.ORDINARY),
                    count(each, Use.MAINS_ON_PART),
                    count(each, Use.INSULATION),
                    way.map(found -> found.longest() >= LONG ? "30 m or more" : metres(found.longest()))
                            .orElse("-")));
        }
        return Columns.of(rows);
    }

    private static String count(KitReach.Terminal terminal, Use use) {
        return Optional.ofNullable(terminal.ways().get(use))
                .map(way -> String.valueOf(way.atOnce()))
                .orElse("-");
    }

    private static String metres(long micrometres) {
        return micrometres == 0
                ? "0 m"
                : Quantity.of(Dimension.LENGTH, micrometres).text();
    }

    /** What the kit does for devices. */
    static List<String> of(KitReport report) {
        List<String> lines = new ArrayList<>();
        lines.add(report.kit().name() + ", " + report.rules() + ": "
                + report.devices().stream().filter(DeviceReach::full).count() + " of "
                + PlanReport.count(report.devices().size(), "device") + " in full.");
        lines.add("");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("device", "plan", "readings", "stopped", "hookups", "minutes"));
        for (DeviceReach each : report.devices()) {
            boolean planned = each.plan().isPresent();
            rows.add(List.of(
                    each.device().name(),
                    !planned ? "none" : each.full() ? "full" : "PARTIAL",
                    planned ? String.valueOf(each.possible()) : "-",
                    planned ? stopped(each) : "-",
                    planned ? String.valueOf(each.hookups()) : "-",
                    planned ? String.valueOf((each.seconds() + 59) / 60) : "-"));
        }
        lines.addAll(Columns.of(rows));
        for (DeviceReach each : report.devices()) {
            if (!each.full() && each.plan().isPresent()) {
                lines.add("");
                lines.add(each.device().name() + " (" + each.file() + ")");
                missing(lines, each.plan().get());
            }
        }
        refused(lines, report);
        lines.add("");
        more(lines, report);
        return lines;
    }

    /** Each reason once, with the devices that it stops. */
    private static void refused(List<String> lines, KitReport report) {
        Map<String, List<String>> names = new LinkedHashMap<>();
        report.devices()
                .forEach(each -> each.refusal()
                        .ifPresent(reason -> names.computeIfAbsent(reason, key -> new ArrayList<>())
                                .add(each.device().name())));
        names.forEach((reason, stopped) -> {
            lines.add("");
            lines.add(String.join(", ", stopped));
            lines.add("  " + reason);
        });
    }

    /** A test that the tester lacks as a whole stops readings that nobody has counted. */
    private static String stopped(DeviceReach each) {
        return each.stopped() == 0 && !each.full() ? "some" : String.valueOf(each.stopped());
    }

    private static void missing(List<String> lines, Plan plan) {
        plan.shortfalls().forEach(each -> lines.add("  " + PlanReport.shortfall(each)));
        plan.remedy()
                .filter(remedy -> plan.shortfalls().size() > 1)
                .ifPresent(remedy -> lines.add("  " + PlanReport.together(remedy)));
    }

    private static void more(List<String> lines, KitReport report) {
        if (report.more().isEmpty()) {
            lines.add("One piece more of any kind changes nothing.");
            return;
        }
        lines.add("One piece more, the most useful first:");
        for (OneMore.Change each : report.more()) {
            lines.add("  " + each.piece().one() + price(each, report.kit()) + ": " + gain(each) + "; "
                    + names(each, report));
        }
    }

    private static String price(OneMore.Change change, Kit kit) {
        return change.piece().isNewTo(kit)
                ? ""
                : change.piece().item().price().map(price -> " (" + price + ")").orElse("");
    }

    private static String gain(OneMore.Change change) {
        List<String> gains = new ArrayList<>();
        if (change.readings() != 0) {
            gains.add(PlanReport.count(change.readings(), "reading") + " more");
        }
        if (change.hookups() != 0) {
            gains.add(PlanReport.count(change.hookups(), "hookup") + " fewer");
        }
        if (change.seconds() != 0) {
            gains.add(change.seconds() + " s less");
        }
        return String.join(", ", gains);
    }

    private static String names(OneMore.Change change, KitReport report) {
        return report.devices().stream()
                .filter(each -> change.files().contains(each.file()))
                .map(each -> each.device().name())
                .collect(Collectors.joining(", "));
    }
}
