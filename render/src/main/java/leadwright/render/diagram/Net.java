package leadwright.render.diagram;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;

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
        return new NetBuilder(plan, changes, hookup).build(panel);
    }
}
