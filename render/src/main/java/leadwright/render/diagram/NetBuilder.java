package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.SupplyConnection;
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

/** Reads the chains, links and earth paths of a hookup into lines and boxes. */
final class NetBuilder {
    private final Plan plan;
    private final Changes changes;
    private final Hookup hookup;
    private final Map<String, Chain> chains = new HashMap<>();
    private final Set<String> meets = new LinkedHashSet<>();
    private final Map<String, String> roots = new LinkedHashMap<>();
    private final Map<String, Map<String, String>> branches = new HashMap<>();
    private final List<Net.Line> lines = new ArrayList<>();

    NetBuilder(Plan plan, Changes changes, Hookup hookup) {
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
                    .item(Net.kind(item))
                    .filter(each -> each.kind() == ItemKind.FAN_OUT)
                    .isPresent();
            if (fanOut || ends.size() > 1) {
                meets.add(item);
            }
        });
        replayBranches();
    }

    /** Follows the joins up to this hookup's: a plug may have been moved to another branch since. */
    private void replayBranches() {
        int last = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.JOIN && step.hookup().equals(Optional.of(hookup.id())))
                .mapToInt(Step::number)
                .max()
                .orElse(0);
        for (Step step : plan.steps()) {
            if (step.number() > last
                    || step.does() != Step.Act.JOIN
                    || step.joint().isEmpty()) {
                continue;
            }
            String to = step.joint().get().to();
            int mark = to.indexOf("#branch-");
            if (mark >= 0) {
                branches.computeIfAbsent(Changes.plain(to), each -> new HashMap<>())
                        .put(Changes.plain(step.joint().get().from()), to.substring(mark + 8));
            }
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
        for (Map.Entry<String, Integer> link : Net.links(hookup).entrySet()) {
            link(link.getKey(), link.getValue());
        }
        List<Net.Box> boxes = new ArrayList<>();
        done.forEach(item -> boxes.add(box(item)));
        return new Net(hookup.id(), lines, boxes);
    }

    private void pinLine(Panel.Pin pin) {
        switch (pin.kind()) {
            case PATIENT, HOUSING, PORT ->
                Optional.ofNullable(chains.get(pin.id())).ifPresent(chain -> chainLine(pin, chain, Ink.Look.PATIENT));
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
            case INLET -> cord(pin);
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
        List<Net.Piece> pieces = new ArrayList<>();
        String from = chain.connection();
        String to = "jack-" + chain.jack();
        for (String item : chain.items()) {
            // The probe is laid on its place, which is no joint; that stretch is as new as what follows.
            String next = chain.items().size() > 1 ? chain.items().get(1) : to;
            pieces.add(
                    from.equals(Device.TOUCH_PROBE)
                            ? new Net.Piece(piece(item, next).isNew(), List.of())
                            : piece(from, item));
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
        lines.add(new Net.Line(pin.id(), look, pin.id(), items, to, pieces, 1, words(pin.label(), chain)));
    }

    /** The way from a fan-out to the next one or to the jack. */
    private void trunk(String box, Chain chain) {
        roots.put(box, "jack-" + chain.jack());
        List<String> items = new ArrayList<>();
        List<Net.Piece> pieces = new ArrayList<>();
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
        lines.add(new Net.Line(box + ">", Ink.Look.TRUNK, box, items, to, pieces, 1, title));
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
        Net.Piece last = piece(link, "jack-" + jack);
        Changes.Status branch = changes.joint(hookup.id(), link, box.get());
        Net.Piece first = branch.step() > 0
                ? new Net.Piece(true, List.of(branch.step()))
                : new Net.Piece(last.isNew(), List.of());
        String title = box.get().replace('/', ' ') + " linked to jack " + jack + " as well";
        lines.add(new Net.Line(
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
        Collections.reverse(items);
        List<Net.Piece> pieces = new ArrayList<>();
        List<Integer> clips = changes.at(hookup.id(), Step.Act.CLIP, path.point());
        String from = pin.id();
        for (String item : items) {
            pieces.add(
                    from.equals(pin.id())
                            ? new Net.Piece(
                                    changes.first(hookup.id()) || !clips.isEmpty(),
                                    clips.stream().limit(1).toList())
                            : piece(from, item));
            from = item;
        }
        pieces.add(piece(from, path.socket()));
        String title = pin.label() + " to the tester's " + end(path.socket());
        lines.add(new Net.Line(pin.id(), Ink.Look.EARTH, pin.id(), items, path.socket(), pieces, 1, title));
    }

    private void plain(Panel.Pin pin, Ink.Look look, List<String> items, String to) {
        List<Net.Piece> pieces = new ArrayList<>();
        for (int i = 0; i <= items.size(); i++) {
            pieces.add(still());
        }
        lines.add(new Net.Line(
                pin.id(), look, pin.id(), items, to, pieces, 1, pin.label() + " to the tester's " + end(to)));
    }

    /** The supply cord; its number stands where the hand fits it: at the device, or at the outlet for a cord that is fixed. */
    private void cord(Panel.Pin pin) {
        Optional<Integer> step = changes.pluggedIn(hookup.id());
        boolean fixed = plan.device().supply().connection() == SupplyConnection.FIXED_CORD;
        Net.Piece numbered =
                step.map(each -> new Net.Piece(true, List.of(each))).orElseGet(this::still);
        Net.Piece other = new Net.Piece(numbered.isNew(), List.of());
        lines.add(new Net.Line(
                pin.id(),
                Ink.Look.MAINS,
                pin.id(),
                List.of("cord"),
                Socket.OUTLET,
                fixed ? List.of(other, numbered) : List.of(numbered, other),
                1,
                pin.label() + " to the tester's " + end(Socket.OUTLET)));
    }

    private Net.Piece still() {
        return new Net.Piece(changes.first(hookup.id()), List.of());
    }

    private Net.Piece piece(String from, String to) {
        Changes.Status status = changes.joint(hookup.id(), from, to);
        return new Net.Piece(status.isNew(), status.step() > 0 ? List.of(status.step()) : List.of());
    }

    private Net.Box box(String item) {
        Map<String, String> known = branches.getOrDefault(item, Map.of());
        List<Net.Line> into =
                lines.stream().filter(line -> line.to().equals(item)).toList();
        List<String> posts = new ArrayList<>();
        for (Net.Line line : into) {
            String end = line.items().isEmpty()
                    ? line.from()
                    : line.items().get(line.items().size() - 1);
            posts.add(known.getOrDefault(end, ""));
        }
        // Where the steps do not tell a branch for each, they are counted from the top.
        boolean told = !posts.contains("") && new LinkedHashSet<>(posts).size() == posts.size();
        Map<String, List<String>> byLine = new LinkedHashMap<>();
        for (int i = 0; i < into.size(); i++) {
            byLine.put(into.get(i).id(), List.of(told ? posts.get(i) : String.valueOf(i + 1)));
        }
        return new Net.Box(item, byLine);
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
