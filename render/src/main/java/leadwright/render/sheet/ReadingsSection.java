package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * The readings in step order. Each group of rows that share a state is a table whose head is the state, so that a page
 * break repeats it.
 */
final class ReadingsSection {

    /** Lines up to which a group is not split over two pages. */
    private static final int WHOLE = 4;

    private final Sheet sheet;
    private final Xhtml page;
    private final List<String> drawn;
    private final Set<String> listed = new HashSet<>();
    private boolean plugged;

    /** @param drawn ids of the hookups that have a drawing, in its order; empty where the sheet goes without drawings */
    ReadingsSection(Sheet sheet, List<String> drawn) {
        this.sheet = sheet;
        this.page = sheet.page();
        this.drawn = List.copyOf(drawn);
    }

    void write() {
        Optional<Hookup> before = Optional.empty();
        for (Course.Stretch stretch : sheet.course().stretches()) {
            Optional<Hookup> hookup = stretch.hookup().flatMap(sheet.plan()::hookup);
            if (hookup.isPresent()) {
                wiring(hookup.get(), before, stretch);
                before = hookup;
            }
            plugged = hookup.isPresent();
            stretch.groups().forEach(group -> group(group, hookup));
        }
    }

    private void wiring(Hookup hookup, Optional<Hookup> before, Course.Stretch stretch) {
        boolean first = listed.isEmpty();
        listed.add(hookup.id());
        if (!first || !stretch.opening().isEmpty()) {
            page.in("div", "change", () -> {
                if (!first) {
                    page.in("p", "changing", () -> page.tick().bold(changing(hookup, stretch)));
                }
                stretch.opening().forEach(step -> page.in("p", "", () -> act(step)));
                if (!first) {
                    change("Take off", before, stretch.parted());
                    change("Put on", Optional.of(hookup), stretch.joined());
                }
            });
        }
        WiringSection.write(sheet, hookup, drawing(hookup), stretch);
    }

    private String changing(Hookup hookup, Course.Stretch stretch) {
        MainsState state = Stream.concat(stretch.parted().stream(), stretch.joined().stream())
                .map(Step::state)
                .findFirst()
                .orElse(MainsState.OFF);
        String words = sheet.words().state(state, Optional.empty());
        return words + ". Change the wiring to hookup " + hookup.id() + drawing(hookup) + ".";
    }

    private String drawing(Hookup hookup) {
        int at = drawn.indexOf(hookup.id());
        return at < 0 ? "" : ", drawing " + (at + 1);
    }

    /** What is moved, and the numbers that the drawing gives to the joints. */
    private void change(String words, Optional<Hookup> standing, List<Step> steps) {
        if (steps.isEmpty() || standing.isEmpty()) {
            return;
        }
        List<Joint> joints =
                steps.stream().flatMap(step -> step.joint().stream()).toList();
        String what = new Change(sheet.names(), sheet.terms(), standing.get()).words(joints);
        int first = steps.get(0).number();
        int last = steps.get(steps.size() - 1).number();
        String numbers = first == last ? "no. " + first : "nos. " + first + "–" + last;
        page.in("p", "", () -> page.ticked(words + " " + steps.size() + " (" + numbers + "): " + what + "."));
    }

    private void group(Course.Group group, Optional<Hookup> hookup) {
        List<String> cautions = cautions(group);
        if (group.isOnlyActs() && cautions.isEmpty()) {
            page.in("table", "rows", () -> page.in("tbody", "", () -> onlyActs(group)));
            return;
        }
        boolean first = true;
        for (List<Course.Line> run : group.runs()) {
            run(group, run, first, cautions, hookup);
            first = false;
        }
    }

    /** What hands must know while these rows are read; a page that the rows go on to says it again. */
    private static List<String> cautions(Course.Group group) {
        List<String> cautions = new ArrayList<>();
        if (group.mains()) {
            cautions.add("MAINS ON THE PART: hands off, say it. Nobody plugs, starts or touches until it is off.");
        }
        String state = RowWords.caution(group.state());
        if (!state.isEmpty()) {
            cautions.add(state);
        }
        return cautions;
    }

    private void run(
            Course.Group group, List<Course.Line> run, boolean first, List<String> cautions, Optional<Hookup> hookup) {
        Optional<Course.Heading> heading = run.stream()
                .filter(Course.Heading.class::isInstance)
                .map(Course.Heading.class::cast)
                .findFirst();
        page.in("table", run.size() <= WHOLE ? "rows whole" : "rows", () -> {
            page.in("thead", "", () -> {
                page.in("tr", "bar", () -> bar(group, first, heading));
                for (String caution : cautions) {
                    page.in(
                            "tr",
                            "caution",
                            () -> page.with("th", "", new String[] {"colspan", "7"}, () -> {
                                page.text(sheet.say(caution));
                            }));
                }
                if (first) {
                    heading.ifPresent(each -> across("heading", "act", () -> page.bold(quantity(each))));
                }
            });
            page.in("tbody", "", () -> run.forEach(line -> line(line, hookup)));
        });
    }

    private String quantity(Course.Heading heading) {
        return sheet.words().quantity(heading.of(), heading.withComponent());
    }

    /** The first bar of a state has the tick for having set it; the others say with it which quantity begins. */
    private void bar(Course.Group group, boolean first, Optional<Course.Heading> heading) {
        page.leaf("th", "no", "");
        page.in("th", "what", () -> {
            if (first) {
                page.tick().text(state(group));
            } else {
                heading.ifPresent(each -> page.unparted(quantity(each) + "; "));
                page.in("span", "plain", () -> page.text(state(group)));
            }
        });
        page.in("th", "limit", () -> {
            page.text("Limit");
            if (!sheet.plan().foresight().readings().isEmpty()) {
                page.empty("br").span("foreseen", "~ foreseen");
            }
        });
        page.leaf("th", "value", "Reading");
        page.leaf("th", "value", "Corrected");
        page.leaf("th", "okno", "ok  no");
        page.leaf("th", "then", "If no");
    }

    private String state(Course.Group group) {
        if (group.checks()) {
            return "CHECKS" + (plugged ? "" : ", not plugged in");
        }
        String words = sheet.words().state(group.state(), group.mode());
        return group.alternative() ? words + "; device's mains switch ON" : words;
    }

    /** A state in which nothing is read: its acts follow it on the same line. */
    private void onlyActs(Course.Group group) {
        page.in("tr", "bar", () -> {
            page.leaf("th", "no", "");
            page.with("th", "what", new String[] {"colspan", "6"}, () -> {
                page.tick().text(state(group) + ": ");
                for (Course.Line line : group.lines()) {
                    page.in("span", "plain", () -> act(((Course.Act) line).step()));
                }
            });
        });
    }

    private void line(Course.Line line, Optional<Hookup> hookup) {
        if (line instanceof Course.Value value) {
            value(value, hookup);
        } else if (line instanceof Course.Act act) {
            across("act", () -> act(act.step()));
        } else if (line instanceof Course.Null nulled) {
            nullRow(nulled);
        } else if (line instanceof Course.Background) {
            free(
                    "background",
                    "before the source is put on: what the tester shows; never subtracted"
                            + LeadWarnings.background(sheet.plan(), hookup),
                    "µA",
                    "Background");
        }
    }

    /** A line over the whole width of the table. */
    private void across(String styleClass, Xhtml.Inside inside) {
        across("", styleClass, inside);
    }

    /** Where the clip goes for this row, to tick, by the number that the drawing gives to the step. */
    private void clip(Step step) {
        page.text(" ");
        page.in("span", "manner", () -> {
            page.ticked(step.number() + " clip on");
            sheet.plan().steps().stream()
                    .filter(each -> each.number() == step.number() + 1 && Course.looksAtClip(each))
                    .forEach(each -> page.ticked(each.number() + " on bare metal of this part, no stud, no paint"));
        });
    }

    private void across(String row, String styleClass, Xhtml.Inside inside) {
        page.in("tr", row, () -> {
            page.leaf("td", "no act", "");
            page.with("td", styleClass, new String[] {"colspan", "6"}, inside);
        });
    }

    private void value(Course.Value value, Optional<Hookup> hookup) {
        Obligation what = value.reading().obligation();
        page.with("tr", "", new String[] {"data-reading", value.reading().id()}, () -> {
            page.leaf("td", "no", value.reading().id());
            page.in("td", "what", () -> {
                page.bold(sheet.words().what(what, hookup));
                if (value.under().isPresent()) {
                    manner(" " + RowWords.rest(what, !value.under().get().withComponent()));
                } else {
                    String source = RowWords.source(what);
                    page.empty("br");
                    boolean check = what.quantity() == QuantityKind.TESTER_CHECK;
                    // A kit does not say where its resistor goes; the bar above says that it is a check.
                    manner(
                            check
                                    ? "joined as the tester's instructions say"
                                    : sheet.words().quantity(what, true) + (source.isEmpty() ? "" : ", " + source));
                }
                value.clip().ifPresent(this::clip);
                value.note().ifPresent(note -> {
                    page.empty("br");
                    manner(sheet.sayOurs(Amounts.inProse(note)));
                });
            });
            page.in("td", "limit", () -> {
                if (what.limit().isPresent()) {
                    Limit limit = what.limit().get();
                    page.bold(Amounts.bound(limit))
                            .span("mark", " " + limit.mark().name());
                } else {
                    page.text("none");
                }
                foreseen(value.reading());
            });
            page.leaf("td", "value write", sheet.unit(what));
            if (Amounts.correctable(what)) {
                page.leaf("td", "value write", sheet.unit(what));
            } else {
                page.leaf("td", "value", "–");
            }
            page.in("td", "okno", () -> page.tick().text(" ").tick());
            page.leaf(
                    "td",
                    "then",
                    String.valueOf(IfNo.of(what, sheet.mainsOnParts()).number()));
        });
    }

    /** What the circuit foresees, small, beside the blank. */
    private void foreseen(Reading reading) {
        sheet.plan()
                .foresight()
                .of(reading.id())
                .flatMap(Amounts::foreseen)
                .ifPresent(text -> page.empty("br").span("foreseen", text));
    }

    /** Words in small type; "a.c." and "d.c." stay whole, which a line would else part after the first stop. */
    private void manner(String words) {
        page.in("span", "manner", () -> page.unparted(words));
    }

    private void act(Step step) {
        plugged = plugged && step.does() != Step.Act.RESTORE;
        page.ticked(step.number() + " " + step.text());
        step.caution().ifPresent(caution -> page.bold(caution + " "));
        if (step.does() == Step.Act.MAKE_SAFE || step.place().equals(Optional.of(Step.PROOF + "read-back-by-two"))) {
            // Two persons, and their boxes side by side.
            page.in("span", "ticked", () -> page.field("initials", "w18", "").box("w18", ""));
        } else if (step.place().filter(place -> place.startsWith(Step.PROOF)).isPresent()
                && step.text().contains("initial")) {
            page.field("initials", "w18", "");
        }
    }

    private void nullRow(Course.Null nulled) {
        String floor = Optional.ofNullable(
                        sheet.plan().kit().tester().accuracy().get("earth"))
                .map(Accuracy::floor)
                .map(Amounts::text)
                .map(text -> " > " + text)
                .orElse("");
        String words = nulled.last()
                ? "moved" + floor + ": repeat"
                : "tips together; read twice" + LeadWarnings.nulling(sheet.plan());
        free(
                nulled.last() ? "null-end" : "null-start",
                words,
                "mΩ",
                (nulled.last() ? "Null value, end" : "Null value") + " (no. "
                        + nulled.step().number() + ")");
    }

    /** A row to write in without a limit, named by what is written there. */
    private void free(String name, String words, String unit, String subject) {
        page.with("tr", "", new String[] {"data-free", name}, () -> {
            page.leaf("td", "no", "");
            page.in("td", "what", () -> page.bold(subject).empty("br").span("manner", sheet.say(words)));
            page.leaf("td", "limit", "");
            page.leaf("td", "value write", unit);
            page.leaf("td", "value", "–");
            page.in("td", "okno", () -> page.tick());
            page.leaf("td", "then", "");
        });
    }
}
