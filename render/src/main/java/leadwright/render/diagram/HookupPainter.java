package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Step;

/** Phase 8: draws the sheets of one hookup. */
final class HookupPainter {
    private static final String UNREAD = "Nothing is powered before another tester has read the earth";

    private final Plan plan;
    private final Panel panel;
    private final List<Socket> sockets;
    private final Changes changes;
    private final Layout layout;
    private final Columns columns;
    private final int index;
    private final Hookup hookup;
    /** Number of each of the plan's sheets among those of this hookup. */
    private final Map<Integer, Integer> numbers = new LinkedHashMap<>();

    HookupPainter(
            Plan plan, Panel panel, List<Socket> sockets, Changes changes, Layout layout, Columns columns, int index) {
        this.plan = plan;
        this.panel = panel;
        this.sockets = sockets;
        this.changes = changes;
        this.layout = layout;
        this.columns = columns;
        this.index = index;
        this.hookup = plan.hookups().get(index);
        for (int s = 0; s < layout.sheets().size(); s++) {
            if (layout.sheets().size() == 1 || shown(layout.sheets().get(s))) {
                numbers.put(s, numbers.size() + 1);
            }
        }
    }

    /** Whether a hookup has anything on a sheet: a line, a wire that comes off, a place for the clip or the probe. */
    private boolean shown(Sheet sheet) {
        return !sheet.drawn().get(index).net().lines().isEmpty()
                || sheet.rows().stream()
                        .flatMap(row -> row.unit().pins().stream())
                        .anyMatch(this::handled);
    }

    private boolean handled(Panel.Pin pin) {
        return changes.takenOff(hookup.id(), pin.id()).isPresent()
                || !changes.at(hookup.id(), Step.Act.CLIP, pin.place()).isEmpty()
                || !changes.at(hookup.id(), Step.Act.TOUCH, pin.place()).isEmpty();
    }

    /** Whether there is anything to draw: a plan whose readings all fall short has a hookup without any. */
    boolean empty() {
        return layout.sheets().stream().noneMatch(this::shown)
                && plan.readings().stream()
                        .noneMatch(reading -> reading.hookup().equals(Optional.of(hookup.id())));
    }

    List<Drawing> draw() {
        return numbers.keySet().stream().map(this::draw).toList();
    }

    private Drawing draw(int s) {
        Sheet sheet = layout.sheets().get(s);
        Columns.Drawn drawn = sheet.drawn().get(index);
        int number = numbers.get(s);
        List<Ties> ties = ties(s);
        String again = FramePainter.again(changes, hookup);
        Svg svg = new Svg(
                Page.WIDTH,
                Page.HEIGHT,
                plan.device().name() + ", hookup " + FramePainter.ofHookups(plan, hookup)
                        + (numbers.size() > 1 ? ", sheet " + number + " of " + numbers.size() : ""),
                FramePainter.purpose(plan, hookup) + ". " + FramePainter.changeWords(changes, hookup)
                        + (again.isEmpty() ? "" : " " + again + "."));
        svg.leaf("rect", "class", "page", "width", Page.WIDTH, "height", Page.HEIGHT, "fill", Ink.WHITE);
        FramePainter.draw(svg, plan, changes, hookup, number, numbers.size());
        new PanelPainter(svg, layout.labels(), sheet, layout.fit()).draw(plan, panel);
        TesterPainter.draw(
                svg, plan, sockets, drawn, ties, elsewhere(s), sheet.heights().bottom(), layout.fit());
        new WirePainter(svg, columns, drawn, trunks(s)).draw();
        new EndsPainter(svg, plan, layout.labels(), changes, drawn.net(), columns).draw(sheet);
        below(s).draw(svg);
        return new Drawing(hookup.id(), number, numbers.size(), svg.finish());
    }

    /** Lines that the words under the drawing want, on the sheet where they want most. */
    int linesBelow() {
        return numbers.keySet().stream().mapToInt(s -> below(s).lines()).max().orElse(1);
    }

    private Below below(int s) {
        return Below.of(
                layout.labels(),
                notes(s),
                nonEmpty(
                        plan.earthUnread() ? Panel.say(plan, UNREAD) : "",
                        FramePainter.again(changes, hookup),
                        columns.names()
                                .key(layout.sheets().get(s).drawn().get(index).net()),
                        parted(s),
                        TesterPainter.legend(ties(s), Ties.others(plan, hookup))));
    }

    private List<Ties> ties(int s) {
        return Ties.of(plan, hookup, elsewhere(s).isEmpty() ? TesterPainter.LANES : TesterPainter.LANES_BESIDE_SHEETS);
    }

    private static List<String> nonEmpty(String... texts) {
        return List.of(texts).stream().filter(text -> !text.isEmpty()).toList();
    }

    private List<String> notes(int s) {
        List<String> notes =
                new ArrayList<>(List.of("Not to scale; parts in the order of the panel, wires so that few cross"));
        if (numbers.size() < layout.sheets().size()) {
            notes.add("all that is not drawn stays open");
        }
        if (numbers.containsKey(s + 1)) {
            notes.add("continues on sheet " + numbers.get(s + 1));
        }
        return notes;
    }

    /** Sockets that are used on other sheets. */
    private Map<String, String> elsewhere(int s) {
        Map<String, String> words = new HashMap<>();
        List<Net> parts = parts();
        for (Socket socket : sockets) {
            Pages.socketSheet(parts, socket.id())
                    .filter(sheet -> sheet != s)
                    .ifPresent(sheet -> words.put(socket.id(), "sheet " + numbers.get(sheet)));
        }
        return words;
    }

    private List<Net> parts() {
        return layout.sheets().stream()
                .map(sheet -> sheet.drawn().get(index).net())
                .toList();
    }

    /** The sheet of its trunk for each fan-out that stands here without one. */
    private Map<String, String> trunks(int s) {
        List<Net> parts = parts();
        Map<String, String> words = new HashMap<>();
        for (Net.Box box : parts.get(s).boxes()) {
            for (int other = 0; other < parts.size(); other++) {
                if (parts.get(s).outOf(box.id()).isEmpty()
                        && !parts.get(other).outOf(box.id()).isEmpty()) {
                    words.put(box.id(), "sheet " + numbers.get(other));
                }
            }
        }
        return words;
    }

    /** Fan-outs whose wires are on several sheets. */
    private String parted(int s) {
        List<String> words = new ArrayList<>();
        Pages.sheetsOf(parts()).forEach((box, sheets) -> {
            if (sheets.size() > 1 && sheets.contains(s)) {
                words.add(columns.names().box(box) + " also on sheet "
                        + sheets.stream()
                                .filter(sheet -> sheet != s)
                                .map(sheet -> numbers.get(sheet).toString())
                                .collect(Collectors.joining(", ")));
            }
        });
        return String.join("; ", words);
    }
}
