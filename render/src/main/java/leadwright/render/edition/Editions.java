package leadwright.render.edition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Component;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Step;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What the editions have in common. */
final class Editions {

    /** Characters of a name in the head of a page. */
    private static final int HEAD = 40;

    /** A text that a drawing cuts at three dots, led by its title with the whole. */
    private static final Pattern SHORTENED = Pattern.compile("<title>([^<]*)</title>\\s*<text[^>]*>[^<]*\u2026</text>");

    private Editions() {}

    static String alt(Drawing drawing) {
        return "Drawing of hookup " + drawing.hookup()
                + (drawing.ofSheets() > 1 ? ", sheet " + drawing.sheet() + " of " + drawing.ofSheets() : "")
                + ": which wire goes to which jack, as in the list of the hookup"
                + shortened(drawing.svg());
    }

    /** Words that had no room in the drawing, in full. */
    private static String shortened(String svg) {
        String full = SHORTENED
                .matcher(svg)
                .results()
                .map(each ->
                        each.group(1).replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))
                .distinct()
                .collect(Collectors.joining("; "));
        return full.isEmpty() ? "" : ". Shortened in it: " + full;
    }

    /** A name as the head of a page has room for it. */
    static String brief(String name) {
        return name.codePointCount(0, name.length()) <= HEAD
                ? name
                : name.substring(0, name.offsetByCodePoints(0, HEAD - 1)) + "…";
    }

    /** What readings of one kind are called. */
    static String heading(Obligation reading, Vocabulary words) {
        String method =
                reading.method().map(each -> ", " + each.word() + " method").orElse("");
        String between = reading.earthSubject()
                .map(subject -> ", " + words.say(subject.word().replace('-', ' ')))
                .orElse("");
        String against = reading.insulatedFrom()
                .map(each -> ", against the " + words.say(each))
                .orElse("");
        String source = reading.sourcePolarity().isPresent() ? ", source on the part" : "";
        return words.named(reading.quantity()) + method + between + against + source;
    }

    static String source(Obligation reading) {
        return reading.sourcePolarity().map(each -> "; source " + each.word()).orElse("");
    }

    static String component(Component component) {
        return component == Component.AC ? "a.c." : "d.c.";
    }

    /** A limit with where it stands and how sure it is. */
    static Words limit(Obligation reading, Vocabulary words) {
        return reading.limit()
                .map(limit -> Words.strong(words.bound(limit))
                        .then(" by " + limit.clause() + "; mark " + limit.mark().name()))
                .orElse(Words.of("none"));
    }

    static List<Words> lines(Vocabulary words, String... lines) {
        return Arrays.stream(lines).map(words::say).map(Words::of).toList();
    }

    /** What is done because the trade does it, each line as far as this plan has to do with it. */
    static List<Words> practice(Plan plan, Vocabulary words) {
        List<String> lines = new ArrayList<>();
        lines.add("The tester is checked with a known resistor at the start and at the end, where the kit has one.");
        lines.add(
                "Data cables, bonding leads, hoses and rails are parted before the first reading and listed for putting back.");
        if (plan.steps().stream().anyMatch(step -> step.does() == Step.Act.NULL)) {
            lines.add("The leads are nulled with tips together, read twice, and read again at the end.");
        }
        if (plan.readings().stream().anyMatch(each -> each.obligation().phase() == Obligation.Phase.MAINS_ON_PART)) {
            lines.add(
                    "Mains on a part comes last in its hookup, is said aloud, and the background is written beside it and never"
                            + " subtracted.");
        }
        if (plan.steps().stream().anyMatch(step -> step.does() == Step.Act.MAKE_SAFE)) {
            lines.add("A therapy output is made safe, read back and initialled by two persons before it is plugged.");
        }
        lines.add("A bad value is repeated once after re-seating, and both values are written down.");
        lines.add(
                "The times of the single acts from which the bench time is added up are estimates of the house rules or of the"
                        + " program.");
        return lines.stream().map(words::say).map(Words::of).toList();
    }
}
