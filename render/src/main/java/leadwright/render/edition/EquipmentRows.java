package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Tester;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The tester and the items of the kit that a plan uses, with what they are rated for. */
final class EquipmentRows {

    static final List<String> ITEMS = List.of("Item", "Kind", "Ends", "Length, conductor", "Rated", "At once", "Stock");
    static final List<Integer> WIDTHS = List.of(16, 12, 25, 16, 13, 9, 9);

    private EquipmentRows() {}

    static List<List<Words>> tester(Plan plan, Vocabulary words) {
        Tester tester = plan.kit().tester();
        List<List<Words>> rows = new ArrayList<>();
        rows.add(row("tester", tester.name()));
        tester.jacks()
                .ifPresent(jacks -> rows.add(row(
                        "jacks",
                        jacks.count() + ", " + jacks.socket() + "; ties "
                                + jacks.ties().word() + "; at rest "
                                + jacks.atRest().word())));
        tester.earthJack()
                .ifPresent(jack -> rows.add(row(
                        words.say("earth jack"),
                        jack.socket() + "; at rest "
                                + jack.atRest()
                                        .map(each -> each.word())
                                        .orElse(words.say("not stated, taken as earthed")))));
        tester.outlets()
                .forEach(outlet -> rows.add(row(
                        "outlet",
                        outlet.socket() + ", " + outlet.system().word() + ", " + words.amount(outlet.voltage()) + ", "
                                + words.amount(outlet.current()))));
        tester.earthTest()
                .ifPresent(test -> rows.add(row(
                        words.say("earth test"),
                        test.currents().stream().map(words::amount).collect(Collectors.joining(", ")) + ", "
                                + Editions.component(test.source()) + ", " + words.amount(test.openCircuit())
                                + " open circuit, "
                                + test.wiring())));
        if (!tester.insulation().isEmpty()) {
            rows.add(row(
                    "insulation",
                    tester.insulation().stream().map(words::amount).collect(Collectors.joining(", "))));
        }
        tester.partSource()
                .ifPresent(source -> rows.add(row(
                        "source for mains on a part",
                        words.amount(source.voltage()) + ", at most " + words.amount(source.shortCircuit()) + ", reads "
                                + source.reading().word())));
        if (!tester.methods().isEmpty()) {
            rows.add(row(
                    "leakage methods",
                    tester.methods().stream().map(Method::word).collect(Collectors.joining(", "))));
        }
        if (!tester.networks().isEmpty()) {
            rows.add(row(
                    "measuring networks",
                    tester.networks().stream().map(each -> each.word()).collect(Collectors.joining(", "))));
        }
        new TreeMap<>(tester.accuracy())
                .forEach((function, accuracy) ->
                        rows.add(row(words.say("accuracy, " + function), accuracy(accuracy, words))));
        rows.add(row(
                "calibrated until",
                tester.calibratedUntil().map(Object::toString).orElse("not stated in the kit file")));
        plan.kit()
                .checks()
                .forEach(check -> rows.add(row(
                        "known resistor",
                        check.id() + ", " + words.amount(check.value()) + ", tolerance "
                                + words.amount(check.tolerance())
                                + check.voltage()
                                        .map(volts -> ", rated " + words.amount(volts))
                                        .orElse(""))));
        return rows;
    }

    private static String accuracy(Accuracy accuracy, Vocabulary words) {
        return words.amount(accuracy.reading()) + " of the reading and " + words.amount(accuracy.floor());
    }

    private static List<Words> row(String what, String is) {
        return List.of(Words.strong(what), Words.of(is));
    }

    static List<List<Words>> items(Plan plan, Vocabulary words) {
        Map<String, Integer> atOnce = new TreeMap<>();
        for (Hookup hookup : plan.hookups()) {
            Map<String, Long> here =
                    used(hookup).stream().collect(Collectors.groupingBy(WiringRows::kind, Collectors.counting()));
            here.forEach((kind, count) -> atOnce.merge(kind, count.intValue(), Math::max));
        }
        List<List<Words>> rows = new ArrayList<>();
        for (KitItem item : plan.kit().items()) {
            if (atOnce.containsKey(item.id())) {
                rows.add(row(item, atOnce.get(item.id()), words));
            }
        }
        return rows;
    }

    private static Set<String> used(Hookup hookup) {
        return Stream.of(
                        hookup.chains().stream().flatMap(chain -> chain.items().stream()),
                        hookup.earth().stream().flatMap(path -> path.items().stream()),
                        hookup.bundles().stream().flatMap(bundle -> bundle.links().stream()))
                .flatMap(items -> items)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static List<Words> row(KitItem item, int atOnce, Vocabulary words) {
        String ends =
                String.join(" to ", item.ends()) + (item.branches() > 0 ? ", " + item.branches() + " branches" : "");
        String length = Stream.concat(
                        item.length().map(words::amount).stream(), item.conductor().map(words::letters).stream())
                .collect(Collectors.joining(", "));
        String rated = Stream.concat(
                        item.voltage().map(words::amount).stream(), item.current().map(words::amount).stream())
                .collect(Collectors.joining(", "));
        return List.of(
                Words.strong(item.id()),
                Words.of(item.kind().word().replace('-', ' ')),
                Words.of(ends),
                Words.of(length.isEmpty() ? "–" : length),
                Words.of(rated.isEmpty() ? "not stated" : rated),
                Words.of(String.valueOf(atOnce)),
                Words.of(String.valueOf(item.stock())));
    }
}
