package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Where rows that do not fit one sheet are parted, and what of a net is drawn on which sheet. A fan-out whose wires are on several
 * sheets stands on each of them; its trunk is drawn on the one that has most of its lines.
 */
final class Pages {
    private Pages() {}

    /** The part of a net that one sheet shows; {@code sheetOf} gives the sheet of each row by its unit's id. */
    static Net part(Net net, Map<String, Integer> sheetOf, int sheet) {
        Map<String, Integer> home = homes(net, sheetOf);
        List<Net.Line> lines = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (Net.Line line : net.lines()) {
            if (sheetOf(line, sheetOf, home) == sheet) {
                lines.add(line);
                ids.add(line.id());
            }
        }
        List<Net.Box> boxes = new ArrayList<>();
        for (Net.Box box : net.boxes()) {
            Map<String, List<String>> posts = new LinkedHashMap<>(box.posts());
            posts.keySet().retainAll(ids);
            if (!posts.isEmpty()) {
                boxes.add(new Net.Box(box.id(), posts));
            }
        }
        return new Net(net.hookup(), lines, boxes);
    }

    /** The sheet on which each box's trunk is drawn: the one with most of the lines that enter it, the later of two. */
    static Map<String, Integer> homes(Net net, Map<String, Integer> sheetOf) {
        Map<String, Integer> home = new HashMap<>();
        // Boxes nearer the device stand first, so what enters a box has a sheet already.
        for (Net.Box box : inner(net)) {
            Map<Integer, Integer> lines = new TreeMap<>();
            for (Net.Line line : net.into(box.id())) {
                lines.merge(sheetOf(line, sheetOf, home), line.wires(), Integer::sum);
            }
            int most = lines.values().stream().max(Integer::compare).orElse(0);
            lines.forEach((sheet, wires) -> {
                if (wires == most) {
                    home.put(box.id(), sheet);
                }
            });
        }
        return home;
    }

    private static int sheetOf(Net.Line line, Map<String, Integer> sheetOf, Map<String, Integer> home) {
        return sheetOf.containsKey(line.from()) ? sheetOf.get(line.from()) : home.get(line.from());
    }

    private static List<Net.Box> inner(Net net) {
        List<Net.Box> ordered = new ArrayList<>();
        Set<String> done = new HashSet<>();
        Set<String> all = new HashSet<>();
        net.boxes().forEach(box -> all.add(box.id()));
        while (ordered.size() < net.boxes().size()) {
            for (Net.Box box : net.boxes()) {
                boolean ready = net.into(box.id()).stream()
                        .allMatch(line -> !all.contains(line.from()) || done.contains(line.from()));
                if (ready && done.add(box.id())) {
                    ordered.add(box);
                }
            }
        }
        return ordered;
    }

    /**
     * Sheets, each a run of units: as full as they can be without parting more fan-outs than they must.
     *
     * @param spare units by which each sheet is left shorter than full
     */
    static List<List<Unit>> split(
            Labels labels, Panel panel, List<Unit> units, List<Net> nets, Router router, int spare) {
        List<List<Unit>> sheets = new ArrayList<>();
        int begin = 0;
        while (begin < units.size()) {
            int end = full(labels, panel, units, begin, nets, router);
            if (end < units.size()) {
                end = best(units, begin, Math.max(begin + 1, end - spare), nets);
            }
            sheets.add(List.copyOf(units.subList(begin, end)));
            begin = end;
        }
        return sheets;
    }

    /** The end of a full sheet, by halving. */
    private static int full(Labels labels, Panel panel, List<Unit> units, int begin, List<Net> nets, Router router) {
        int fits = begin + 1;
        int beyond = Math.min(units.size() + 1, begin + 41);
        while (beyond - fits > 1) {
            int middle = (fits + beyond) / 2;
            if (fits(labels, panel, units, begin, middle, nets, router)) {
                fits = middle;
            } else {
                beyond = middle;
            }
        }
        return fits;
    }

    private static boolean fits(
            Labels labels, Panel panel, List<Unit> units, int begin, int end, List<Net> nets, Router router) {
        Map<String, Integer> sheetOf = new HashMap<>();
        for (int i = 0; i < units.size(); i++) {
            sheetOf.put(units.get(i).id(), i < begin ? 0 : i < end ? 1 : 2);
        }
        List<Unit> some = units.subList(begin, end);
        List<Net> parts = nets.stream().map(net -> part(net, sheetOf, 1)).toList();
        return Layout.tight(labels, panel, some, parts, router).isPresent();
    }

    /** The break in the lower half of a full sheet that parts the fewest fan-outs, the lowest of these. */
    private static int best(List<Unit> units, int begin, int full, List<Net> nets) {
        int best = full;
        long fewest = Long.MAX_VALUE;
        for (int end = full; end > begin + (full - begin) / 2; end--) {
            Set<String> above = new HashSet<>();
            units.subList(0, end).forEach(unit -> above.add(unit.id()));
            long parted = 0;
            for (Net net : nets) {
                parted += net.boxes().stream()
                        .filter(box -> {
                            long here = net.into(box.id()).stream()
                                    .filter(line -> above.contains(line.from()))
                                    .count();
                            long fromPins = net.into(box.id()).stream()
                                    .filter(line -> net.boxes().stream()
                                            .noneMatch(other -> other.id().equals(line.from())))
                                    .count();
                            return here > 0 && here < fromPins;
                        })
                        .count();
            }
            if (parted < fewest) {
                fewest = parted;
                best = end;
            }
        }
        return best;
    }

    /** Sheets on which a box stands, by its id. */
    static Map<String, List<Integer>> sheetsOf(List<Net> parts) {
        Map<String, List<Integer>> sheets = new LinkedHashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            for (Net.Box box : parts.get(i).boxes()) {
                sheets.computeIfAbsent(box.id(), each -> new ArrayList<>()).add(i);
            }
        }
        return sheets;
    }

    /** The sheet where a socket is used, by its id. */
    static Optional<Integer> socketSheet(List<Net> parts, String socket) {
        for (int i = 0; i < parts.size(); i++) {
            if (!parts.get(i).into(socket).isEmpty()) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }
}
