package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import leadwright.planner.Plan;

/** Draws the tester: a strip of named boxes at one side, each with the word used or free, and brackets for what it ties. */
final class TesterPainter {
    static final double LEFT = 198;
    private static final double BOX = 35;
    private static final double BRACKET = 4;
    static final int BRACKETS = 3;

    private TesterPainter() {}

    /** A box of the strip: one socket, or a run of free jacks. */
    private record Slot(List<Socket> sockets, double top, double bottom, boolean used) {
        double middle() {
            return (top + bottom) / 2;
        }
    }

    /** @param elsewhere what to say of sockets that are used on another sheet, by socket id */
    static void draw(
            Svg svg,
            Plan plan,
            List<Socket> sockets,
            Columns.Drawn drawn,
            List<Ties> ties,
            Map<String, String> elsewhere,
            double bottom,
            Fit fit) {
        List<Slot> slots = slots(sockets, drawn, bottom, fit);
        double end =
                Math.max(bottom, slots.stream().mapToDouble(Slot::bottom).max().orElse(0) + 1);
        svg.open("g", "class", "tester");
        svg.leaf(
                "rect",
                "class",
                "tester frame",
                "x",
                LEFT,
                "y",
                Page.TOP,
                "width",
                Page.RIGHT - LEFT,
                "height",
                end - Page.TOP,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.FRAME);
        svg.fitted(Page.RIGHT, Page.CAPTION, 100, Svg.Anchor.END, caption(plan), Type.GROUP);
        slots.forEach(slot -> slot(svg, slot, elsewhere));
        for (int i = 0; i < Math.min(ties.size(), BRACKETS); i++) {
            bracket(svg, ties.get(i), slots, LEFT + BOX + 3.4 + i * BRACKET);
        }
        svg.close();
    }

    private static String caption(Plan plan) {
        String name = plan.kit().tester().name();
        return name.isBlank() || name.toLowerCase(Locale.ROOT).contains("tester") ? name : "Tester: " + name;
    }

    /** What the brackets stand for. */
    static String legend(List<Ties> ties) {
        if (ties.isEmpty()) {
            return "";
        }
        List<String> words = new ArrayList<>();
        ties.stream().limit(BRACKETS).map(Ties::words).forEach(words::add);
        if (ties.size() > BRACKETS) {
            words.add("and " + (ties.size() - BRACKETS) + " more, see the steps");
        }
        return "Tied in the tester: " + String.join("; ", words);
    }

    private static void slot(Svg svg, Slot slot, Map<String, String> elsewhere) {
        Socket first = slot.sockets().get(0);
        svg.leaf(
                "rect",
                "class",
                "jack box",
                "x",
                LEFT,
                "y",
                slot.top(),
                "width",
                BOX,
                "height",
                slot.bottom() - slot.top(),
                "fill",
                Ink.WHITE,
                "stroke",
                slot.used() ? Ink.BLACK : Ink.GREY,
                "stroke-width",
                slot.used() ? Ink.FRAME : Ink.HAIRLINE);
        String name = slot.sockets().size() == 1
                ? first.name()
                : first.name() + "\u2013"
                        + slot.sockets().get(slot.sockets().size() - 1).name();
        Type type = first.jack() > 0 ? Type.NUMBER : Type.KIT;
        svg.text(LEFT + 2, slot.middle(), Svg.Anchor.START, name, slot.used() ? type : type.in(Ink.QUIET));
        svg.text(
                LEFT + BOX - 1.5,
                slot.middle(),
                Svg.Anchor.END,
                slot.used() ? "used" : word(slot, elsewhere),
                Type.NOTE.in(slot.used() ? Ink.BLACK : Ink.QUIET));
    }

    private static void bracket(Svg svg, Ties tie, List<Slot> slots, double x) {
        List<Double> ys = new ArrayList<>();
        for (Slot slot : slots) {
            if (slot.sockets().stream().anyMatch(socket -> tie.jacks().contains(socket.jack()))) {
                ys.add(slot.middle());
            }
        }
        if (ys.size() < 2) {
            return;
        }
        double top = ys.get(0);
        double end = ys.get(ys.size() - 1);
        StringBuilder path = new StringBuilder("M" + Svg.number(x) + " " + Svg.number(top) + "V" + Svg.number(end));
        ys.forEach(y -> path.append("M")
                .append(Svg.number(x - 1.6))
                .append(" ")
                .append(Svg.number(y))
                .append("H")
                .append(Svg.number(x)));
        svg.titled(
                tie.words(),
                "path",
                "class",
                "tie",
                "d",
                path.toString(),
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.BOX);
        double middle = (top + end) / 2;
        for (double y : ys) {
            middle = Math.abs(y - middle) < 2.4 ? middle + 2.5 : middle;
        }
        svg.leaf("rect", "class", "plate", "x", x - 1.6, "y", middle - 2, "width", 3.2, "height", 4, "fill", Ink.WHITE);
        svg.text(x, middle, Svg.Anchor.MIDDLE, tie.name(), Type.NUMBER);
    }

    private static String word(Slot slot, Map<String, String> elsewhere) {
        List<String> words = slot.sockets().stream()
                .map(socket -> elsewhere.getOrDefault(socket.id(), "free"))
                .distinct()
                .toList();
        return words.size() == 1 ? words.get(0) : "other sheets";
    }

    /** Used sockets level with their lines; free jacks next to the used one before, other free sockets next to the one after. */
    private static List<Slot> slots(List<Socket> sockets, Columns.Drawn drawn, double bottom, Fit fit) {
        List<Slot> slots = new ArrayList<>();
        List<Socket> free = new ArrayList<>();
        double from = Page.TOP + Page.STRIP - Page.JACK / 2;
        for (Socket socket : sockets) {
            List<Double> ys = drawn.net().lines().stream()
                    .filter(line -> line.to().equals(socket.id()))
                    .map(line -> drawn.lie().to().get(line.id()))
                    .sorted()
                    .toList();
            if (ys.isEmpty()) {
                free.add(socket);
                continue;
            }
            double first = ys.get(0);
            spread(slots, free, from, first, fit);
            from = ys.get(ys.size() - 1);
            slots.add(new Slot(List.of(socket), first - Page.JACK_BOX / 2, from + Page.JACK_BOX / 2, true));
            free.clear();
        }
        spread(slots, free, from, bottom + Page.JACK / 2, fit);
        return slots;
    }

    private static void spread(List<Slot> slots, List<Socket> free, double from, double to, Fit fit) {
        List<List<Socket>> jacks = new ArrayList<>();
        List<List<Socket>> others = new ArrayList<>();
        for (Socket socket : free) {
            (socket.jack() > 0 ? jacks : others).add(List.of(socket));
        }
        if (jacks.size() >= fit.shortRuns()) {
            List<Socket> run = jacks.stream().flatMap(List::stream).toList();
            jacks.clear();
            jacks.add(run);
        }
        int count = jacks.size() + others.size();
        double step = Math.min(Page.JACK * 1.1, (to - from) / (count + 1));
        boolean above = slots.isEmpty() && others.isEmpty();
        for (int i = 0; i < jacks.size(); i++) {
            double y = above ? to - (jacks.size() - i) * step : from + (i + 1) * step;
            slots.add(new Slot(jacks.get(i), y - Page.JACK_BOX / 2, y + Page.JACK_BOX / 2, false));
        }
        for (int i = 0; i < others.size(); i++) {
            double y = to - (others.size() - i) * step;
            slots.add(new Slot(others.get(i), y - Page.JACK_BOX / 2, y + Page.JACK_BOX / 2, false));
        }
    }
}
