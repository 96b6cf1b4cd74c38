package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Every hookup of a plan laid out on the same rows: on one sheet, row for row; where these are too many, with ribbons; and
 * where that is not enough, on several sheets.
 */
record Layout(Labels labels, Fit fit, List<Sheet> sheets) {
    Layout {
        sheets = List.copyOf(sheets);
    }

    static Layout of(Labels labels, Panel panel, List<Net> nets, Router router) {
        List<Unit> singles = Units.singles(panel);
        Optional<Layout> plain = laid(labels, panel, List.of(singles), nets, router);
        if (plain.isPresent()) {
            return plain.get();
        }
        for (int atLeast : List.of(Units.RIBBON, Units.SHORT_RIBBON)) {
            List<Unit> ribbons = Units.ribbons(panel, nets, atLeast);
            Optional<Layout> one = laid(labels, panel, List.of(ribbons), gathered(nets, ribbons), router);
            if (one.isPresent()) {
                return one.get();
            }
        }
        List<Unit> ribbons = Units.ribbons(panel, nets, Units.RIBBON);
        List<Net> gathered = gathered(nets, ribbons);
        for (int spare = 0; spare < ribbons.size(); spare++) {
            List<List<Unit>> split = Pages.split(labels, panel, ribbons, gathered, router, spare);
            Optional<Layout> several = laid(labels, panel, split, gathered, router);
            if (several.isPresent()) {
                return several.get();
            }
        }
        throw new IllegalStateException("a row that does not fit on a sheet of its own");
    }

    private static List<Net> gathered(List<Net> nets, List<Unit> units) {
        return nets.stream().map(net -> Units.gathered(net, units)).toList();
    }

    private static Optional<Layout> laid(
            Labels labels, Panel panel, List<List<Unit>> split, List<Net> nets, Router router) {
        Map<String, Integer> sheetOf = new HashMap<>();
        for (int s = 0; s < split.size(); s++) {
            for (Unit unit : split.get(s)) {
                sheetOf.put(unit.id(), s);
            }
        }
        for (Fit fit : Fit.ALL) {
            List<Sheet> sheets = new ArrayList<>();
            for (int s = 0; s < split.size(); s++) {
                int sheet = s;
                List<Net> parts = nets.stream()
                        .map(net -> Pages.part(net, sheetOf, sheet))
                        .toList();
                sheet(labels, panel, fit, split.get(s), parts, router).ifPresent(sheets::add);
            }
            if (sheets.size() == split.size()) {
                return Optional.of(new Layout(labels, fit, sheets));
            }
        }
        return Optional.empty();
    }

    /** One sheet laid out as tightly as can be. */
    static Optional<Sheet> tight(Labels labels, Panel panel, List<Unit> units, List<Net> nets, Router router) {
        return sheet(labels, panel, Fit.ALL.get(Fit.ALL.size() - 1), units, nets, router);
    }

    private static Optional<Sheet> sheet(
            Labels labels, Panel panel, Fit fit, List<Unit> units, List<Net> nets, Router router) {
        List<Routing> routings =
                nets.stream().map(net -> router.route(net, units)).toList();
        List<Row> rows = Rows.of(labels, panel, units, fit);
        return Heights.of(fit, labels.bottom(), rows, nets, routings, router.sockets())
                .map(laid -> {
                    Map<String, Double> room = new HashMap<>();
                    rows.forEach(row -> room.put(row.unit().id(), row.height()));
                    List<Columns.Drawn> drawn = new ArrayList<>();
                    for (int h = 0; h < nets.size(); h++) {
                        Lie lie = laid.lies().get(h);
                        drawn.add(new Columns.Drawn(
                                nets.get(h), routings.get(h), lie, Tracks.of(routings.get(h), lie), room));
                    }
                    return new Sheet(rows, laid.heights(), continued(panel, units), drawn);
                });
    }

    private static boolean continued(Panel panel, List<Unit> units) {
        return panel.groups().stream()
                .noneMatch(group -> !group.pins().isEmpty()
                        && group.pins().get(0).id().equals(units.get(0).id()));
    }
}
