package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What room each row of the panel needs, before it has a height. */
final class Rows {
    static final double NAME_LINE = 4.2;
    static final double LABEL_LINE = 4;
    static final double HEADER = 5;

    private Rows() {}

    static List<Row> of(Labels labels, Panel panel, List<Unit> units, Fit fit) {
        Map<String, Integer> groupOf = new HashMap<>();
        for (int g = 0; g < panel.groups().size(); g++) {
            for (Panel.Pin pin : panel.groups().get(g).pins()) {
                groupOf.put(pin.id(), g);
            }
        }
        List<Row> rows = new ArrayList<>();
        double owed = 0;
        for (int g = 0; g < panel.groups().size(); g++) {
            int group = g;
            Panel.Group named = panel.groups().get(g);
            List<Unit> own = units.stream()
                    .filter(unit -> groupOf.get(unit.id()) == group)
                    .toList();
            boolean ribbons = own.stream().anyMatch(Unit::ribbon);
            double name = nameHeight(labels, named, own, fit);
            double taken = 0;
            for (int i = 0; i < own.size(); i++) {
                double height = own.get(i).ribbon() ? ribbonHeight(labels, own.get(i)) : fit.pitch();
                if (own.size() == 1 && !named.below() && !ribbons) {
                    height = Math.max(height, Math.max(5.6, name));
                }
                double above = i > 0 ? 0 : owed + (rows.isEmpty() ? fit.pad() / 2 : fit.pad()) + (ribbons ? HEADER : 0);
                rows.add(new Row(own.get(i), g, height, above));
                taken += height;
            }
            owed = own.isEmpty() || ribbons ? 0 : Math.max(0, name - taken);
        }
        return List.copyOf(rows);
    }

    private static double nameHeight(Labels labels, Panel.Group group, List<Unit> units, Fit fit) {
        if (group.below()) {
            return 0;
        }
        return labels.name(group, units, fit).lines().size() * NAME_LINE + 0.6;
    }

    private static double ribbonHeight(Labels labels, Unit unit) {
        return Math.max(9, labels.ribbonLines(unit).size() * LABEL_LINE + 1);
    }
}
