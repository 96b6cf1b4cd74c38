package leadwright.render.diagram;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * Draws sketched hookups beside Graphviz {@code dot} and counts the crossings of both: once with the jacks as a technician
 * would number them down a list, from the last bundle to the first, and once with the jacks in the order of the pins. Writes the
 * {@code .dot} files into the folder that it is given and prints the table of docs/diagrams.md.
 *
 * <p>In {@code dot}'s graph pins, fan-outs and jacks are nodes in columns; pins and jacks are kept in their order by invisible
 * edges, as they are on a panel and on a tester. Its curves are read from the {@code plain} output and counted as crossing
 * where their polylines do, ends aside.
 */
final class BesideDot {
    private BesideDot() {}

    private record Point(double x, double y) {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        System.out.println("| hookup | wires | jacks | dot | here | sheets | fewest |");
        System.out.println("| --- | ---: | --- | ---: | ---: | ---: | ---: |");
        for (Map.Entry<String, List<Integer>> each : bundles().entrySet()) {
            for (boolean chosen : new boolean[] {false, true}) {
                Plan plan = plan(each.getValue(), chosen);
                Hookup hookup = plan.hookups().get(0);
                Panel panel = PinOrder.drawn(plan);
                String name = each.getKey() + (chosen ? "-chosen" : "-numbered");
                Path file = Files.writeString(folder.resolve(name + ".dot"), dot(panel, hookup));
                List<Drawing> drawings = Diagrams.draw(plan);
                OptionalInt fewest = FewestCrossings.of(plan, panel, hookup, Bars.ORDERS);
                int here = drawings.stream()
                        .mapToInt(drawing ->
                                new Measured(drawing.svg()).crossings().size())
                        .sum();
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %d | %s | %d | %d | %d | %s |%n",
                        each.getKey(),
                        hookup.chains().size(),
                        chosen ? "chosen" : "as numbered",
                        crossings(file),
                        here,
                        drawings.size(),
                        fewest.isPresent() ? fewest.getAsInt() : "not sought");
            }
        }
    }

    /** Wires of each bundle from the top of the panel to its end. */
    private static Map<String, List<Integer>> bundles() {
        Map<String, List<Integer>> all = new LinkedHashMap<>();
        all.put("ward", List.of(10, 1, 1, 2, 1, 1));
        all.put("ecg", List.of(3, 1, 2, 4));
        all.put("sleep", List.of(8, 8, 1, 1, 2, 2, 1, 1));
        all.put("eeg", List.of(8, 8, 8, 8, 8, 8, 8, 8));
        all.put("alone", List.of(1, 1, 1, 1, 1, 1, 1, 1, 1, 1));
        return all;
    }

    private static Plan plan(List<Integer> bundles, boolean chosen) {
        StringBuilder device = new StringBuilder("""
                leadwright: device/1
                name: Device beside dot
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.3 A}
                protection: class-2
                applied-parts:
                """);
        List<String> panel = new ArrayList<>();
        for (int b = 0; b < bundles.size(); b++) {
            panel.add("p" + b);
            device.append("  - {id: p" + b + ", name: Part " + b + ", type: CF, connections: [");
            device.append(String.join(
                    ", ",
                    IntStream.range(0, bundles.get(b))
                            .mapToObj(i -> "{id: w" + i + ", terminal: tp15-socket}")
                            .toList()));
            device.append("]}\n");
        }
        device.append("touch-points: [{id: case, name: Case, earthed: no}]\npanel: " + panel + "\n");
        Sketch.Wiring wiring = new Sketch(
                        Sketch.device(device.toString()),
                        Sketch.kit(Sketch.sample("k1-marrowgate-bench")
                                .replaceAll("count: 6", "count: " + Math.max(6, bundles.size()))
                                .replaceAll("(id: spread,.*stock: )\\d+", "$120")
                                .replaceAll("(id: comb,.*stock: )\\d+", "$120")))
                .hookup();
        for (int b = 0; b < bundles.size(); b++) {
            int jack = chosen ? b + 1 : bundles.size() - b;
            for (int i = 0; i < bundles.get(b); i++) {
                if (bundles.get(b) == 1) {
                    wiring.join(jack, "p" + b + ".w" + i, "touch-proof-pin");
                } else {
                    wiring.join(jack, "p" + b + ".w" + i, "spread/" + (b + 1));
                }
            }
        }
        return wiring.read(QuantityKind.PATIENT_LEAKAGE, "p0").done().plan();
    }

    private static String dot(Panel panel, Hookup hookup) {
        StringBuilder dot = new StringBuilder("digraph hookup {\n  rankdir=LR;\n  edge [dir=none];\n");
        List<String> pins = panel.pins().stream()
                .map(Panel.Pin::id)
                .filter(pin -> hookup.chainOf(pin).isPresent())
                .toList();
        List<String> jacks = hookup.chains().stream()
                .map(Chain::jack)
                .distinct()
                .sorted(Comparator.naturalOrder())
                .map(jack -> "jack-" + jack)
                .toList();
        for (List<String> column : List.of(pins, jacks)) {
            dot.append("  {rank=same; edge [style=invis]; \"")
                    .append(String.join("\" -> \"", column))
                    .append("\"}\n");
        }
        List<String> edges = new ArrayList<>();
        for (String pin : pins) {
            Chain chain = hookup.chainOf(pin).orElseThrow();
            List<String> way = new ArrayList<>(List.of(pin));
            chain.items().stream().filter(item -> item.startsWith("spread")).forEach(way::add);
            way.add("jack-" + chain.jack());
            for (int i = 1; i < way.size(); i++) {
                edges.add("  \"" + way.get(i - 1) + "\" -> \"" + way.get(i) + "\"\n");
            }
        }
        edges.stream().distinct().forEach(dot::append);
        return dot.append("}\n").toString();
    }

    private static int crossings(Path file) throws IOException, InterruptedException {
        Path plain = file.resolveSibling(file.getFileName() + ".plain");
        Process process = new ProcessBuilder("dot", "-Tplain", "-o", plain.toString(), file.toString())
                .inheritIO()
                .start();
        if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
            throw new IOException("dot (Debian package graphviz) did not draw " + file);
        }
        Map<String, List<Point>> lines = new HashMap<>();
        for (String line : Files.readAllLines(plain)) {
            String[] words = line.split(" ");
            if (words[0].equals("edge") && !line.contains("invis")) {
                List<Point> control = new ArrayList<>();
                for (int i = 0; i < Integer.parseInt(words[3]); i++) {
                    control.add(new Point(Double.parseDouble(words[4 + 2 * i]), Double.parseDouble(words[5 + 2 * i])));
                }
                lines.put(words[1] + ">" + words[2], flat(control));
            }
        }
        int crossings = 0;
        List<String> names = lines.keySet().stream().sorted().toList();
        for (int i = 0; i < names.size(); i++) {
            for (int j = 0; j < i; j++) {
                crossings += cross(lines.get(names.get(i)), lines.get(names.get(j)));
            }
        }
        return crossings;
    }

    private static List<Point> flat(List<Point> control) {
        List<Point> flat = new ArrayList<>(List.of(control.get(0)));
        for (int c = 0; c + 3 < control.size(); c += 3) {
            for (int k = 1; k <= 16; k++) {
                double t = k / 16.0;
                double u = 1 - t;
                double[] w = {u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t};
                double x = 0;
                double y = 0;
                for (int n = 0; n < 4; n++) {
                    x += w[n] * control.get(c + n).x();
                    y += w[n] * control.get(c + n).y();
                }
                flat.add(new Point(x, y));
            }
        }
        return flat;
    }

    private static int cross(List<Point> a, List<Point> b) {
        int crossings = 0;
        for (int i = 1; i < a.size(); i++) {
            for (int j = 1; j < b.size(); j++) {
                Point p = a.get(i - 1);
                Point q = a.get(i);
                Point r = b.get(j - 1);
                Point s = b.get(j);
                crossings += side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0 ? 1 : 0;
            }
        }
        return crossings;
    }

    private static double side(Point a, Point b, Point c) {
        return Math.signum((b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x()));
    }
}
