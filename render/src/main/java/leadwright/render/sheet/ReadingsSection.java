package leadwright.render.sheet;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.rules.Limit;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * The readings in step order. Each group of rows that share a state is a table whose head is the state, so that a page
 * break repeats it.
 */
final class ReadingsSection {

    /** As many joints as can be named one by one and still be taken in at a glance. */
    private static final int FEW = 6;

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
        for (Course.Stretch stretch : sheet.course().stretches()) {
            stretch.hookup().flatMap(sheet.plan()::hookup).ifPresent(hookup -> wiring(hookup, stretch));
            plugged = stretch.hookup().isPresent();
            stretch.groups().forEach(group -> group(group, stretch.hookup().flatMap(sheet.plan()::hookup)));
        }
    }

    private void wiring(Hookup hookup, Course.Stretch stretch) {
        boolean again = !listed.add(hookup.id());
        if (again || listed.size() > 1) {
            page.in("div", "change", () -> {
                page.in(
                        "p",
                        "changing",
                        () -> page.tick()
                                .bold("OUTLET OFF. Change the wiring to hookup " + hookup.id() + drawing(hookup)
                                        + "."));
                change("Take off", stretch.parted());
                change("Put on", stretch.joined());
            });
        }
        WiringSection.write(sheet, hookup, drawing(hookup), stretch.joined());
    }

    private String drawing(Hookup hookup) {
        int at = drawn.indexOf(hookup.id());
        return at < 0 ? "" : ", drawing " + (at + 1);
    }

    /** Few joints are named one by one; many by their wires, with the numbers that the drawing gives them. */
    private void change(String words, List<Step> steps) {
        if (steps.isEmpty()) {
            return;
        }
        List<Joint> joints =
                steps.stream().flatMap(step -> step.joint().stream()).toList();
        String what;
        if (joints.size() <= FEW) {
            what = joints.stream()
                    .map(joint -> end(joint.from()) + "–" + end(joint.to()))
                    .collect(Collectors.joining(", "));
        } else {
            List<String> wires = joints.stream()
                    .map(Joint::from)
                    .filter(sheet.names()::isConnection)
                    .toList();
            what = sheet.names().subject(wires) + ", with what is between";
        }
        int first = steps.get(0).number();
        int last = steps.get(steps.size() - 1).number();
        String numbers = first == last ? "no. " + first : "nos. " + first + "–" + last;
        page.in("p", "", () -> page.ticked(words + " " + steps.size() + " (" + numbers + "): " + what + "."));
    }

    private String end(String joined) {
        if (sheet.names().isConnection(joined)) {
            return sheet.names().subject(List.of(joined));
        }
        return joined.replace("#branch-", " branch ")
                .replace("#", " ")
                .replace('/', ' ')
                .replace("jack-", "jack ");
    }

    private void group(Course.Group group, Optional<Hookup> hookup) {
        String caution = RowWords.caution(group.state());
        if (group.isOnlyActs() && caution.isEmpty()) {
            page.in("table", "rows", () -> page.in("tbody", "", () -> onlyActs(group)));
            return;
        }
        page.in("table", "rows", () -> {
            page.in("thead", "", () -> {
                page.in("tr", "bar", () -> bar(group));
                if (!caution.isEmpty()) {
                    page.in(
                            "tr",
                            "caution",
                            () -> page.with("th", "", new String[] {"colspan", "7"}, () -> {
                                page.text(sheet.say(caution));
                            }));
                }
            });
            page.in("tbody", "", () -> group.lines().forEach(line -> line(line, hookup)));
        });
    }

    private void bar(Course.Group group) {
        page.leaf("th", "no", "");
        page.in("th", "what", () -> page.tick().text(state(group)));
        page.leaf("th", "limit", "Limit");
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
            value(value.reading(), value.headed(), hookup);
        } else if (line instanceof Course.Act act) {
            across("act", () -> act(act.step()));
        } else if (line instanceof Course.Note note) {
            across("act manner", () -> page.text(Amounts.inProse(note.text())));
        } else if (line instanceof Course.Heading heading) {
            across("act", () -> page.bold(sheet.words().quantity(heading.of())));
        } else if (line instanceof Course.Null nulled) {
            nullRow(nulled);
        } else {
            free("source off; hands off, say it", "µA", "Background");
        }
    }

    /** A line over the whole width of the table. */
    private void across(String styleClass, Xhtml.Inside inside) {
        page.in("tr", "", () -> {
            page.leaf("td", "no act", "");
            page.with("td", styleClass, new String[] {"colspan", "6"}, inside);
        });
    }

    private void value(Reading reading, boolean headed, Optional<Hookup> hookup) {
        Obligation what = reading.obligation();
        String source = RowWords.source(what);
        page.in("tr", "", () -> {
            page.leaf("td", "no", reading.id());
            page.in("td", "what", () -> {
                page.bold(sheet.words().what(what, hookup));
                if (headed) {
                    page.span("manner", source.isEmpty() ? "" : " " + source);
                } else {
                    page.empty("br");
                    page.span("manner", sheet.words().quantity(what) + (source.isEmpty() ? "" : ", " + source));
                }
            });
            page.in("td", "limit", () -> {
                if (what.limit().isPresent()) {
                    Limit limit = what.limit().get();
                    page.bold(Amounts.bound(limit))
                            .span("mark", " " + limit.mark().name());
                } else {
                    page.text("none");
                }
            });
            page.leaf("td", "value write", Amounts.unit(what));
            if (Amounts.correctable(what)) {
                page.leaf("td", "value write", Amounts.unit(what));
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

    private void act(Step step) {
        page.ticked(step.text());
        step.caution().ifPresent(caution -> page.bold(caution + " "));
        if (step.does() == Step.Act.MAKE_SAFE) {
            page.field("initials", "w18", "").box("w18", "");
        }
    }

    private void nullRow(Course.Null nulled) {
        String floor = Optional.ofNullable(
                        sheet.plan().kit().tester().accuracy().get("earth"))
                .map(Accuracy::floor)
                .map(Amounts::text)
                .map(text -> " > " + text)
                .orElse("");
        String words = nulled.last() ? "moved" + floor + ": repeat" : "tips together; read twice";
        free(words, "mΩ", nulled.last() ? "Null value, end" : "Null value");
    }

    /** A row to write in without a limit. */
    private void free(String words, String unit, String subject) {
        page.in("tr", "", () -> {
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
