package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import leadwright.planner.Plan;

/** Draws the tester: a strip of named boxes at one side, each with the word used or free, and brackets for what it ties. */
final class TesterPainter {
    static final double LEFT = 198;
    private static final double BRACKET = 3.4;
    private static final double BRACKET_GAP = 2.4;

    /** Brackets side by side where the boxes say used or free alone. */
    static final int LANES = 4;

    /** The same where they may name a sheet. */
    static final int LANES_BESIDE_SHEETS = 3;

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
        List<Slot> slots = slots(sockets, drawn, elsewhere, bottom, fit);
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
        int lanes = ties.stream()
                .filter(Ties::bracketed)
                .mapToInt(tie -> tie.lane() + 1)
                .max()
                .orElse(0);
        double box = lanes == LANES ? 33.2 : 36.2;
        slots.forEach(slot -> slot(svg, slot, elsewhere, box));
        ties.stream()
                .filter(Ties::bracketed)
                .forEach(tie -> bracket(svg, tie, slots, LEFT + box + BRACKET_GAP + tie.lane() * BRACKET));
        svg.close();
    }

    private static String caption(Plan plan) {
        String name = plan.kit().tester().name();
        return name.isBlank() || name.toLowerCase(Locale.ROOT).contains("tester") ? name : "Tester: " + name;
    }

    /** What the brackets stand for, and what else is tied. */
    static String legend(List<Ties> ties, List<String> others) {
        List<String> words = new ArrayList<>(Ties.words(ties));
        words.addAll(others);
        return words.isEmpty() ? "" : "Tied jacks: " + String.join("; ", words);
    }

    private static void slot(Svg svg, Slot slot, Map<String, String> elsewhere, double box) {
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
                box,
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
        svg.text(LEFT + 2, slot.middle() - 0.15, Svg.Anchor.START, name, slot.used() ? type : type.in(Ink.QUIET));
        svg.text(
                LEFT + box - 1.5,
                slot.middle() - 0.15,
                Svg.Anchor.END,
                slot.used() ? "used" : word(slot, elsewhere),
                slot.used() ? Type.NOTE : Type.SMALL);
    }

    /** A bracket with its letter on it. */
    private static void bracket(Svg svg, Ties tie, List<Slot> slots, double x) {
        List<Double> ys = new ArrayList<>();
        for (Slot slot : slots) {
            if (slot.sockets().stream().allMatch(socket -> tie.jacks().contains(socket.jack()))) {
                ys.add(slot.middle());
            }
        }
        if (ys.size() < 2) {
            return;
        }
        double top = ys.get(0);
        double end = ys.get(ys.size() - 1);
        StringBuilder path = new StringBuilder("M" + Svg.number(x) + " " + Svg.number(top) + "V" + Svg.number(end));
        ys.forEach(y -> path.append("M" + Svg.number(x - 1.6) + " " + Svg.number(y) + "H" + Svg.number(x)));
        svg.titled(
                "Tied jacks: " + tie.words(),
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
        // Letters of neighbouring brackets stand at different heights where there is room for that.
        double middle = top + (end - top) * (end - top > 14 && tie.lane() % 2 == 1 ? 0.3 : 0.5);
        for (double y : ys) {
            middle = Math.abs(y - middle) < 2.2 ? middle + 2.5 : middle;
        }
        svg.leaf(
                "rect",
                "class",
                "plate",
                "x",
                x - 1.6,
                "y",
                middle - 1.8,
                "width",
                3.2,
                "height",
                3.6,
                "fill",
                Ink.WHITE);
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
    private static List<Slot> slots(
            List<Socket> sockets, Columns.Drawn drawn, Map<String, String> elsewhere, double bottom, Fit fit) {
        double half = (fit.jack() - Page.JACK_GAP) / 2;
        List<Slot> slots = new ArrayList<>();
        List<Socket> free = new ArrayList<>();
        double from = Page.TOP + Page.STRIP - fit.jack() / 2;
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
            spread(slots, free, elsewhere, from, first, fit);
            from = ys.get(ys.size() - 1);
            slots.add(new Slot(List.of(socket), first - half, from + half, true));
            free.clear();
        }
        spread(slots, free, elsewhere, from, bottom + fit.jack() / 2, fit);
        return slots;
    }

    private static void spread(
            List<Slot> slots, List<Socket> free, Map<String, String> elsewhere, double from, double to, Fit fit) {
        List<List<Socket>> jacks = new ArrayList<>();
        List<List<Socket>> others = new ArrayList<>();
        for (Socket socket : free) {
            (socket.jack() > 0 ? jacks : others).add(List.of(socket));
        }
        if (jacks.size() >= fit.shortRuns()) {
            List<Socket> run = jacks.stream().flatMap(List::stream).toList();
            jacks.clear();
            // One box for those in use on other sheets, one for the free ones, each where its first jack is.
            for (Socket socket : run) {
                boolean same = !jacks.isEmpty()
                        && elsewhere.containsKey(socket.id())
                                == elsewhere.containsKey(
                                        jacks.get(jacks.size() - 1).get(0).id());
                if (!same) {
                    jacks.add(new ArrayList<>());
                }
                jacks.get(jacks.size() - 1).add(socket);
            }
        }
        if ((jacks.size() + others.size() + 1) * fit.jack() > to - from + 0.1 && jacks.size() > 1) {
            List<Socket> all = jacks.stream().flatMap(List::stream).toList();
            jacks.clear();
            jacks.add(all);
        }
        double half = (fit.jack() - Page.JACK_GAP) / 2;
        int count = jacks.size() + others.size();
        double step = Math.min(fit.jack() * 1.1, (to - from) / (count + 1));
        boolean above = slots.isEmpty() && others.isEmpty();
        for (int i = 0; i < jacks.size(); i++) {
            double y = above ? to - (jacks.size() - i) * step : from + (i + 1) * step;
            slots.add(new Slot(jacks.get(i), y - half, y + half, false));
        }
        for (int i = 0; i < others.size(); i++) {
            double y = to - (others.size() - i) * step;
            slots.add(new Slot(others.get(i), y - half, y + half, false));
        }
    }
}
