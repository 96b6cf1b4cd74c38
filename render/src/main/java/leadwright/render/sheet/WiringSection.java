package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import leadwright.catalog.device.Connection;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Step;

/** The countable list of one hookup: jack, what is in between, wire, a tick per end, and the total. */
final class WiringSection {

    /** Wires up to which the list is not split over two pages. */
    private static final int WHOLE = 24;

    private WiringSection() {}

    /** Chains of one bundle, part and run of items: one row. */
    private record Run(String bundle, String part, List<String> through) {}

    static void write(Sheet sheet, Hookup hookup, String drawing, Course.Stretch stretch) {
        Numbers numbers = Numbers.of(stretch.joined());
        // A trunk has one tick, however many rows it stands in.
        Set<String> ticked = new HashSet<>();
        Xhtml page = sheet.page();
        int wires = hookup.chains().size();
        page.in("table", hookup.chains().size() <= WHOLE ? "wires whole" : "wires", () -> {
            page.in(
                    "thead",
                    "",
                    () -> page.in("tr", "bar", () -> {
                        page.with("th", "", new String[] {"colspan", "2"}, () -> {
                            page.text("Hookup " + hookup.id() + drawing);
                        });
                        page.with("th", "", new String[] {"colspan", "2"}, () -> {
                            page.text("Tick both ends." + empty(sheet, hookup) + " ");
                            if (wires > 0) {
                                page.ticked(wires + " of " + wires);
                            }
                        });
                    }));
            // The rows of one jack stay on one page.
            Map<String, Map<Run, List<Chain>>> byBundle = new LinkedHashMap<>();
            runs(sheet, hookup)
                    .forEach((run, chains) -> byBundle.computeIfAbsent(run.bundle(), each -> new LinkedHashMap<>())
                            .put(run, chains));
            byBundle.values()
                    .forEach(rows -> page.in(
                            "tbody",
                            "jackful",
                            () -> rows.forEach((run, chains) -> row(sheet, hookup, run, chains, numbers, ticked))));
            page.in("tbody", "", () -> {
                hookup.earth().stream()
                        .filter(path -> isOn(sheet.plan(), path, stretch))
                        .forEach(path -> earth(sheet, path, numbers, stretch));
                open(sheet, hookup);
            });
        });
    }

    private static Map<Run, List<Chain>> runs(Sheet sheet, Hookup hookup) {
        List<String> order = sheet.names()
                .inPanelOrder(hookup.chains().stream().map(Chain::connection).toList());
        Map<Run, List<Chain>> runs = new LinkedHashMap<>();
        // By jack, as a person fills the row of jacks; within a jack in panel order.
        for (Bundle bundle : hookup.bundles().stream()
                .sorted(java.util.Comparator.comparing(bundle -> bundle.jacks().get(0)))
                .toList()) {
            for (String connection : order) {
                if (bundle.connections().contains(connection)) {
                    Chain chain = hookup.chainOf(connection).orElseThrow();
                    Run run = new Run(bundle.id(), sheet.names().group(connection), through(sheet.plan(), chain));
                    runs.computeIfAbsent(run, each -> new ArrayList<>()).add(chain);
                }
            }
        }
        return runs;
    }

    /** Items from the tester to the device: a fan-out by its instance, all else by kind, for like ones are equal. */
    private static List<String> through(Plan plan, Chain chain) {
        List<String> names = new ArrayList<>();
        for (String item : chain.items()) {
            names.add(0, isFanOut(plan, item) ? item.replace('/', ' ') : kind(item));
        }
        return List.copyOf(names);
    }

    private static String kind(String instance) {
        int slash = instance.lastIndexOf('/');
        return slash < 0 ? instance : instance.substring(0, slash);
    }

    private static boolean isFanOut(Plan plan, String instance) {
        return plan.kit()
                .item(kind(instance))
                .filter(item -> item.kind() == ItemKind.FAN_OUT)
                .isPresent();
    }

    private static void row(
            Sheet sheet, Hookup hookup, Run run, List<Chain> chains, Numbers numbers, Set<String> ticked) {
        Xhtml page = sheet.page();
        page.in("tr", "", () -> {
            page.leaf("td", "jack", "jack\u00a0" + jacks(hookup, run, chains));
            page.in("td", "through", () -> {
                through(sheet, chains.get(0), numbers, ticked);
            });
            page.in("td", "", () -> {
                page.text(run.part() + ": ");
                for (Chain chain : chains) {
                    page.in("span", "wire", () -> {
                        page.bold(sheet.names().wire(chain.connection()));
                        List<String> ends = ends(sheet.plan(), chain);
                        tick(page, numbers.of(ends.get(0), ends.get(1)));
                        if (ends.size() > 2) {
                            tick(page, numbers.of(ends.get(ends.size() - 2), ends.get(ends.size() - 1)));
                        }
                    });
                    page.text(" ");
                }
            });
            page.leaf("td", "count", String.valueOf(chains.size()));
        });
    }

    /** Items from the tester to the device: a fan-out by its instance with a tick for its trunk, all else by kind. */
    private static void through(Sheet sheet, Chain chain, Numbers numbers, Set<String> ticked) {
        Xhtml page = sheet.page();
        String towardsTester = "jack-" + chain.jack();
        for (int i = chain.items().size() - 1; i >= 0; i--) {
            String item = chain.items().get(i);
            boolean fanOut = isFanOut(sheet.plan(), item);
            page.text(fanOut ? item.replace('/', ' ') : kind(item));
            if (fanOut && ticked.add(item)) {
                tick(page, numbers.of(item, towardsTester));
            }
            page.text(i > 0 ? " → " : "");
            towardsTester = item;
        }
        if (chain.items().isEmpty()) {
            page.text("direct");
        }
    }

    /** A square to tick, led by the number that the drawing gives to the joint. */
    private static void tick(Xhtml page, String number) {
        page.span("num", "\u00a0" + number).in("span", "tick", () -> page.text(""));
    }

    /** What one wire meets from the device as far as the first item that it shares with others, or the jack. */
    private static List<String> ends(Plan plan, Chain chain) {
        List<String> ends = new ArrayList<>(List.of(chain.connection()));
        for (String item : chain.items()) {
            ends.add(item);
            if (isFanOut(plan, item)) {
                return ends;
            }
        }
        ends.add("jack-" + chain.jack());
        return ends;
    }

    /** Step numbers of the joints made while this hookup is built, as the drawing shows them. */
    private record Numbers(Map<Joint, Integer> steps) {

        static Numbers of(List<Step> joined) {
            Map<Joint, Integer> steps = new LinkedHashMap<>();
            for (Step step : joined) {
                step.joint()
                        .ifPresent(
                                joint -> steps.put(new Joint(plain(joint.from()), plain(joint.to())), step.number()));
            }
            return new Numbers(steps);
        }

        /** The number, or nothing for a joint that stays from before. */
        String of(String from, String to) {
            Integer number = steps.get(new Joint(from, to));
            return number == null ? "" : String.valueOf(number);
        }

        private static String plain(String end) {
            int hash = end.indexOf('#');
            return hash < 0 ? end : end.substring(0, hash);
        }
    }

    private static String jacks(Hookup hookup, Run run, List<Chain> chains) {
        Set<Integer> own = chains.stream().map(Chain::jack).collect(Collectors.toCollection(java.util.TreeSet::new));
        List<String> links = hookup.bundles().stream()
                .filter(bundle -> bundle.id().equals(run.bundle()))
                .flatMap(bundle -> bundle.links().stream())
                .toList();
        String numbers = own.stream().map(String::valueOf).collect(Collectors.joining(", "));
        if (links.isEmpty()) {
            return numbers;
        }
        String all = hookup.bundles().stream()
                .filter(bundle -> bundle.id().equals(run.bundle()))
                .flatMap(bundle -> bundle.jacks().stream())
                .map(String::valueOf)
                .collect(Collectors.joining("+"));
        return all + " (link " + String.join(", ", links).replace('/', ' ') + ")";
    }

    /** Whether the lead is plugged once this stretch is built: a hookup that is come to again may stand without it. */
    private static boolean isOn(Plan plan, EarthPath path, Course.Stretch stretch) {
        int built = Stream.of(stretch.parted(), stretch.joined())
                .flatMap(List::stream)
                .mapToInt(Step::number)
                .max()
                .orElse(Integer.MAX_VALUE);
        return plan.steps().stream()
                .filter(step -> step.number() <= built)
                .filter(step -> step.joint()
                        .filter(joint -> joint.to().equals(path.socket()))
                        .isPresent())
                .reduce((earlier, later) -> later)
                .map(step -> step.does() == Step.Act.JOIN)
                .orElse(true);
    }

    /** Whether a step of this stretch asks for the lead to be unwound. */
    private static boolean isLong(List<String> items, Course.Stretch stretch) {
        return stretch.joined().stream()
                .filter(step -> step.joint()
                        .filter(joint -> items.contains(joint.from()))
                        .isPresent())
                .anyMatch(step -> step.text().contains("full length"));
    }

    /** The step that first puts the lead's end on its point once the hookup stands. */
    private static String numberOfClip(Plan plan, EarthPath path, Course.Stretch stretch) {
        int built = stretch.joined().stream().mapToInt(Step::number).max().orElse(0);
        return plan.steps().stream()
                .filter(step -> step.number() > built && step.hookup().equals(stretch.hookup()))
                .filter(step -> step.does() == Step.Act.CLIP
                        && step.place().filter(path.point()::equals).isPresent())
                .map(step -> String.valueOf(step.number()))
                .findFirst()
                .orElse("");
    }

    private static void earth(Sheet sheet, EarthPath path, Numbers numbers, Course.Stretch stretch) {
        Xhtml page = sheet.page();
        List<String> items = path.items();
        page.in("tr", "", () -> {
            page.leaf("td", "jack", path.socket().equals("earth-jack") ? sheet.say("earth") : "2nd");
            page.leaf("td", "through", items.stream().map(WiringSection::kind).collect(Collectors.joining(" → ")));
            page.in("td", "", () -> {
                page.text(sheet.say(path.pole().equals("part") ? "Earth lead, first to: " : "Reference lead to: "));
                page.in("span", "wire", () -> {
                    page.bold(sheet.names().place(path.point()));
                    tick(page, numberOfClip(sheet.plan(), path, stretch));
                    // A lead of several pieces has a tick for each place where they meet.
                    for (int i = items.size() - 1; i >= 0; i--) {
                        tick(page, numbers.of(items.get(i), i == 0 ? path.socket() : items.get(i - 1)));
                    }
                });
                if (isLong(items, stretch)) {
                    page.text(" ")
                            .in("span", "ticked", () -> page.tick().text("unwound to its full length."))
                            .text(" ");
                }
                if (!path.pole().equals("part")) {
                    page.text("Both leads begin at the tester; it stands where the device file's distances begin.");
                }
            });
            page.leaf("td", "count", "");
        });
    }

    private static String empty(Sheet sheet, Hookup hookup) {
        Set<Integer> used = new HashSet<>();
        hookup.bundles().forEach(bundle -> used.addAll(bundle.jacks()));
        int count = sheet.plan().kit().tester().jacks().map(Jacks::count).orElse(0);
        String free = IntStream.rangeClosed(1, count)
                .filter(jack -> !used.contains(jack))
                .mapToObj(String::valueOf)
                .collect(Collectors.joining(", "));
        return free.isEmpty() ? "" : " Empty jacks: " + free + ".";
    }

    /** What stays open: an absent wire is a mistake that nobody sees. */
    private static void open(Sheet sheet, Hookup hookup) {
        List<String> open = sheet.plan().device().patientConnections().stream()
                .map(Connection::name)
                .filter(each -> hookup.chainOf(each).isEmpty())
                .toList();
        if (!open.isEmpty()) {
            Xhtml page = sheet.page();
            page.in(
                    "tr",
                    "",
                    () -> page.with("td", "", new String[] {"colspan", "4"}, () -> {
                        page.bold("Leave open: " + sheet.names().subject(open) + ".");
                    }));
        }
    }
}
