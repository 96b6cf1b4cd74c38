package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** Phase 4: rows, each of one pin or of a ribbon, and the nets drawn between them. */
final class Units {
    /** A run of so many like pins may become a ribbon; where that saves a sheet, a shorter one too. */
    static final int RIBBON = 8;

    static final int SHORT_RIBBON = 4;

    private static final int WIDEST = 10;

    private Units() {}

    /** One row for each pin. */
    static List<Unit> singles(Panel panel) {
        return panel.pins().stream().map(pin -> new Unit(List.of(pin))).toList();
    }

    /** Runs of at least so many like pins of one part as ribbons of like width, the rest as they are. */
    static List<Unit> ribbons(Panel panel, List<Net> nets, int atLeast) {
        List<Unit> units = new ArrayList<>();
        for (Panel.Group group : panel.groups()) {
            List<Panel.Pin> run = new ArrayList<>();
            for (Panel.Pin pin : group.pins()) {
                if (!run.isEmpty() && !alike(run.get(0), pin, nets)) {
                    flush(run, units, atLeast);
                }
                run.add(pin);
            }
            flush(run, units, atLeast);
        }
        return List.copyOf(units);
    }

    private static void flush(List<Panel.Pin> run, List<Unit> units, int atLeast) {
        if (run.size() < atLeast) {
            run.forEach(pin -> units.add(new Unit(List.of(pin))));
        } else {
            int parts = (run.size() + WIDEST - 1) / WIDEST;
            for (int i = 0; i < parts; i++) {
                units.add(new Unit(run.subList(run.size() * i / parts, run.size() * (i + 1) / parts)));
            }
        }
        run.clear();
    }

    /** Whether two pins go the same way to the same box in every hookup, and change in the same hookups. */
    private static boolean alike(Panel.Pin a, Panel.Pin b, List<Net> nets) {
        if (a.kind() != Panel.Kind.PATIENT || b.kind() != Panel.Kind.PATIENT) {
            return false;
        }
        for (Net net : nets) {
            Optional<Net.Line> one = net.from(a.id());
            Optional<Net.Line> other = net.from(b.id());
            if (one.isPresent() != other.isPresent()
                    || one.isPresent() && !way(one.get()).equals(way(other.orElseThrow()))) {
                return false;
            }
        }
        return true;
    }

    private static List<Object> way(Net.Line line) {
        List<Object> way = new ArrayList<>();
        way.add(line.to().startsWith("jack-") ? line.id() : line.to());
        line.items().forEach(item -> way.add(Net.kind(item)));
        line.pieces().forEach(piece -> way.add(piece.isNew()));
        return way;
    }

    /** The net with the lines of each ribbon drawn as one. */
    static Net gathered(Net net, List<Unit> units) {
        Map<String, Unit> unitOf = new HashMap<>();
        units.forEach(unit -> unit.pins().forEach(pin -> unitOf.put(pin.id(), unit)));
        Map<String, String> newId = new HashMap<>();
        List<Net.Line> lines = new ArrayList<>();
        for (Net.Line line : net.lines()) {
            Optional<Unit> ribbon = Optional.ofNullable(unitOf.get(line.from())).filter(Unit::ribbon);
            newId.put(line.id(), ribbon.map(Unit::id).orElse(line.id()));
            if (ribbon.isEmpty()) {
                lines.add(line);
            } else if (ribbon.get().id().equals(line.from())) {
                lines.add(ribbon(net, ribbon.get(), line));
            }
        }
        List<Net.Box> boxes = new ArrayList<>();
        for (Net.Box box : net.boxes()) {
            Map<String, List<String>> posts = new LinkedHashMap<>();
            box.posts().forEach((line, post) -> {
                Optional<Unit> unit = Optional.ofNullable(unitOf.get(line)).filter(Unit::ribbon);
                posts.computeIfAbsent(newId.get(line), each -> new ArrayList<>())
                        .addAll(unit.map(each -> List.of(post.get(0) + " : " + each.label(line)))
                                .orElse(post));
            });
            boxes.add(new Net.Box(box.id(), posts));
        }
        return new Net(net.hookup(), lines, boxes);
    }

    private static Net.Line ribbon(Net net, Unit unit, Net.Line first) {
        List<String> items = new ArrayList<>();
        first.items().forEach(item -> items.add(unit.pins().size() + " × " + Net.kind(item)));
        List<Net.Piece> pieces = new ArrayList<>();
        for (int i = 0; i < first.pieces().size(); i++) {
            TreeSet<Integer> steps = new TreeSet<>();
            for (Panel.Pin pin : unit.pins()) {
                steps.addAll(net.from(pin.id()).orElseThrow().pieces().get(i).steps());
            }
            pieces.add(new Net.Piece(first.pieces().get(i).isNew(), List.copyOf(steps)));
        }
        String names =
                String.join(", ", unit.pins().stream().map(Panel.Pin::label).toList());
        return new Net.Line(
                first.id(),
                Ink.Look.TRUNK,
                first.from(),
                items,
                first.to(),
                pieces,
                unit.pins().size(),
                names + ": " + unit.pins().size() + " wires to " + first.to().replace('/', ' '));
    }
}
