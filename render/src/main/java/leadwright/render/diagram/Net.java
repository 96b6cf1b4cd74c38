package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.TouchThrough;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * Phase 2: what one hookup joins, without any place on paper. Lines run from a pin or a box to a box or a socket; a box is a
 * fan-out, where lines meet.
 *
 * @param lines lines from pins in the order of the rows, then lines from boxes, nearer the device first
 */
record Net(String hookup, List<Line> lines, List<Box> boxes) {
    Net {
        lines = List.copyOf(lines);
        boxes = List.copyOf(boxes);
    }

    /**
     * A line with the items on it.
     *
     * @param from a pin's or box's id
     * @param items what is on it, from the device to the tester: instance names, or words for the device's own cord
     * @param to a box's or socket's id
     * @param pieces the stretches between, one more than items
     * @param wires how many wires it stands for; several make a ribbon
     * @param title the whole way in words
     */
    record Line(
            String id,
            Ink.Look look,
            String from,
            List<String> items,
            String to,
            List<Piece> pieces,
            int wires,
            String title) {
        Line {
            items = List.copyOf(items);
            pieces = List.copyOf(pieces);
        }

        boolean anyNew() {
            return pieces.stream().anyMatch(Piece::isNew);
        }
    }

    /**
     * One joint, drawn as a stretch of wire.
     *
     * @param steps numbers of the steps that make it; empty where it stays or no step makes it
     */
    record Piece(boolean isNew, List<Integer> steps) {
        Piece {
            steps = List.copyOf(steps);
        }

        /** What stands on its plate. */
        String number() {
            if (steps.isEmpty()) {
                return "";
            }
            int low = steps.stream().min(Integer::compare).orElseThrow();
            int high = steps.stream().max(Integer::compare).orElseThrow();
            return low == high ? String.valueOf(low) : low + "\u2013" + high;
        }
    }

    /**
     * A fan-out.
     *
     * @param posts branch used by each line that enters, by line id; a line of several wires has several
     */
    record Box(String id, Map<String, List<String>> posts) {}

    Optional<Line> from(String pin) {
        return lines.stream().filter(line -> line.from().equals(pin)).findFirst();
    }

    List<Line> into(String box) {
        return lines.stream().filter(line -> line.to().equals(box)).toList();
    }

    List<Line> outOf(String box) {
        return lines.stream().filter(line -> line.from().equals(box)).toList();
    }

    /** Items that join a fan-out branch to a further jack, with that jack. */
    static Map<String, Integer> links(Hookup hookup) {
        Map<String, Integer> links = new LinkedHashMap<>();
        for (Bundle bundle : hookup.bundles()) {
            Set<Integer> reached = new LinkedHashSet<>();
            hookup.chains().stream()
                    .filter(chain -> bundle.connections().contains(chain.connection()))
                    .forEach(chain -> reached.add(chain.jack()));
            List<Integer> further = bundle.jacks().stream()
                    .filter(jack -> !reached.contains(jack))
                    .toList();
            for (int i = 0; i < bundle.links().size() && i < further.size(); i++) {
                links.put(bundle.links().get(i), further.get(i));
            }
        }
        return links;
    }

    /** The kind of an item instance: {@code spread} of {@code spread/1}. */
    static String kind(String instance) {
        int slash = instance.lastIndexOf('/');
        return slash < 0 ? instance : instance.substring(0, slash);
    }

    static Net of(Plan plan, Panel panel, Changes changes, Hookup hookup) {
        return new Builder(plan, changes, hookup).build(panel);
    }

    private static final class Builder {
        private final Plan plan;
        private final Changes changes;
        private final Hookup hookup;
        private final Map<String, Chain> chains = new HashMap<>();
        private final Set<String> meets = new LinkedHashSet<>();
        private final Map<String, String> roots = new LinkedHashMap<>();
        private final Map<String, Map<String, String>> branches = new HashMap<>();
        private final List<Line> lines = new ArrayList<>();

        Builder(Plan plan, Changes changes, Hookup hookup) {
            this.plan = plan;
            this.changes = changes;
            this.hookup = hookup;
            Map<String, Set<String>> before = new LinkedHashMap<>();
            for (Chain chain : hookup.chains()) {
                chains.put(chain.connection(), chain);
                String from = chain.connection();
                for (String item : chain.items()) {
                    before.computeIfAbsent(item, each -> new LinkedHashSet<>()).add(from);
                    from = item;
                }
            }
            before.forEach((item, ends) -> {
                boolean fanOut = plan.kit()
                        .item(kind(item))
                        .filter(each -> each.kind() == ItemKind.FAN_OUT)
                        .isPresent();
                if (fanOut || ends.size() > 1) {
                    meets.add(item);
                }
            });
            for (Step step : plan.steps()) {
                step.joint()
                        .filter(joint ->
                                step.does() == Step.Act.JOIN && joint.to().contains("#branch-"))
                        .ifPresent(joint -> branches.computeIfAbsent(Changes.plain(joint.to()), each -> new HashMap<>())
                                .put(
                                        Changes.plain(joint.from()),
                                        joint.to().substring(joint.to().indexOf("#branch-") + 8)));
            }
        }

        Net build(Panel panel) {
            for (Panel.Pin pin : panel.pins()) {
                pinLine(pin);
            }
            Set<String> done = new LinkedHashSet<>();
            for (Panel.Pin pin : panel.pins()) {
                Optional.ofNullable(chains.get(pin.id()))
                        .ifPresent(chain -> chain.items().stream()
                                .filter(meets::contains)
                                .filter(done::add)
                                .forEach(item -> trunk(item, chain)));
            }
            for (Map.Entry<String, Integer> link : links(hookup).entrySet()) {
                link(link.getKey(), link.getValue());
            }
            List<Box> boxes = new ArrayList<>();
            done.forEach(item -> boxes.add(box(item)));
            return new Net(hookup.id(), lines, boxes);
        }

        private void pinLine(Panel.Pin pin) {
            switch (pin.kind()) {
                case PATIENT, HOUSING, PORT ->
                    Optional.ofNullable(chains.get(pin.id()))
                            .ifPresent(chain -> chainLine(pin, chain, Ink.Look.PATIENT));
                case PROBE -> {
                    Optional<Chain> chain = Optional.ofNullable(chains.get(pin.id()));
                    chain.ifPresent(each -> chainLine(pin, each, Ink.Look.PROBE));
                    if (chain.isEmpty() && ownProbe() && touches()) {
                        plain(pin, Ink.Look.PROBE, List.of(), Socket.TOUCH);
                    }
                }
                case EARTH ->
                    hookup.earth().stream()
                            .filter(path -> path.point().equals(pin.place()))
                            .forEach(path -> earthLine(pin, path));
                case INLET -> plain(pin, Ink.Look.MAINS, List.of("mains cord"), Socket.OUTLET);
                case TOUCH -> {}
            }
        }

        private boolean ownProbe() {
            return plan.kit().tester().touchThrough().equals(Optional.of(TouchThrough.OWN));
        }

        private boolean touches() {
            return plan.readings().stream()
                    .filter(reading -> reading.hookup().equals(Optional.of(hookup.id())))
                    .map(Reading::obligation)
                    .anyMatch(Obligation::isTouch);
        }

        private void chainLine(Panel.Pin pin, Chain chain, Ink.Look look) {
            List<String> items = new ArrayList<>();
            List<Piece> pieces = new ArrayList<>();
            String from = chain.connection();
            String to = "jack-" + chain.jack();
            for (String item : chain.items()) {
                pieces.add(from.equals(Device.TOUCH_PROBE) ? still() : piece(from, item));
                if (meets.contains(item)) {
                    to = item;
                    break;
                }
                items.add(item);
                from = item;
            }
            if (!meets.contains(to)) {
                pieces.add(piece(from, to));
            }
            lines.add(new Line(pin.id(), look, pin.id(), items, to, pieces, 1, words(pin.label(), chain)));
        }

        /** The way from a fan-out to the next one or to the jack. */
        private void trunk(String box, Chain chain) {
            roots.put(box, "jack-" + chain.jack());
            List<String> items = new ArrayList<>();
            List<Piece> pieces = new ArrayList<>();
            String from = box;
            String to = "jack-" + chain.jack();
            for (String item : chain.items()
                    .subList(chain.items().indexOf(box) + 1, chain.items().size())) {
                pieces.add(piece(from, item));
                if (meets.contains(item)) {
                    to = item;
                    break;
                }
                items.add(item);
                from = item;
            }
            if (!meets.contains(to)) {
                pieces.add(piece(from, to));
            }
            String title = box.replace('/', ' ') + " to " + end(to);
            lines.add(new Line(box + ">", Ink.Look.TRUNK, box, items, to, pieces, 1, title));
        }

        private void link(String link, int jack) {
            Bundle bundle = hookup.bundles().stream()
                    .filter(each -> each.links().contains(link))
                    .findFirst()
                    .orElseThrow();
            Optional<String> box = bundle.connections().stream()
                    .map(chains::get)
                    .flatMap(chain -> chain.items().stream())
                    .filter(meets::contains)
                    .reduce((first, second) -> second);
            if (box.isEmpty()) {
                return;
            }
            Piece last = piece(link, "jack-" + jack);
            Changes.Status branch = changes.joint(hookup.id(), link, box.get());
            Piece first =
                    branch.step() > 0 ? new Piece(true, List.of(branch.step())) : new Piece(last.isNew(), List.of());
            String title = box.get().replace('/', ' ') + " linked to jack " + jack + " as well";
            lines.add(new Line(
                    box.get() + ">" + link,
                    Ink.Look.TRUNK,
                    box.get(),
                    List.of(link),
                    "jack-" + jack,
                    List.of(first, last),
                    1,
                    title));
        }

        private void earthLine(Panel.Pin pin, EarthPath path) {
            List<String> items = new ArrayList<>(path.items());
            java.util.Collections.reverse(items);
            List<Piece> pieces = new ArrayList<>();
            List<Integer> clips = changes.at(hookup.id(), Step.Act.CLIP, path.point());
            String from = pin.id();
            for (String item : items) {
                pieces.add(
                        from.equals(pin.id())
                                ? new Piece(
                                        changes.first(hookup.id()) || !clips.isEmpty(),
                                        clips.stream().limit(1).toList())
                                : piece(from, item));
                from = item;
            }
            pieces.add(piece(from, path.socket()));
            String title = pin.label() + " to the tester's " + end(path.socket());
            lines.add(new Line(pin.id(), Ink.Look.EARTH, pin.id(), items, path.socket(), pieces, 1, title));
        }

        private void plain(Panel.Pin pin, Ink.Look look, List<String> items, String to) {
            List<Piece> pieces = new ArrayList<>();
            for (int i = 0; i <= items.size(); i++) {
                pieces.add(still());
            }
            lines.add(new Line(
                    pin.id(), look, pin.id(), items, to, pieces, 1, pin.label() + " to the tester's " + end(to)));
        }

        private Piece still() {
            return new Piece(changes.first(hookup.id()), List.of());
        }

        private Piece piece(String from, String to) {
            Changes.Status status = changes.joint(hookup.id(), from, to);
            return new Piece(status.isNew(), status.step() > 0 ? List.of(status.step()) : List.of());
        }

        private Box box(String item) {
            Map<String, List<String>> posts = new LinkedHashMap<>();
            Map<String, String> known = branches.getOrDefault(item, Map.of());
            int next = 1;
            for (Line line : lines) {
                if (line.to().equals(item)) {
                    String end = line.items().isEmpty()
                            ? line.from()
                            : line.items().get(line.items().size() - 1);
                    posts.put(line.id(), List.of(known.getOrDefault(end, String.valueOf(next))));
                    next++;
                }
            }
            return new Box(item, posts);
        }

        private static String words(String label, Chain chain) {
            StringBuilder text = new StringBuilder(label);
            chain.items().forEach(item -> text.append(" to ").append(item.replace('/', ' ')));
            return text.append(" to jack ").append(chain.jack()).toString();
        }

        private static String end(String id) {
            return switch (id) {
                case "earth-jack" -> "earth socket";
                case "second-jack" -> "second socket";
                case Socket.TOUCH -> "touch socket";
                default -> id.replace('/', ' ').replace('-', ' ');
            };
        }
    }
}
