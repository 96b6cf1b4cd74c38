package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import leadwright.planner.Plan;

/** Draws the hookups of a plan. */
public final class Diagrams {

    private Diagrams() {}

    /**
     * The drawings of a plan, hookups in their order, each on one sheet or, where it has very many wires, on several. The same
     * plan gives the same bytes.
     */
    public static List<Drawing> draw(Plan plan) {
        Changes changes = new Changes(plan);
        List<Socket> sockets = Socket.of(plan);
        Panel asFiled = Panel.of(plan);
        List<Net> nets = nets(plan, asFiled, changes);
        Panel panel = RowOrder.order(asFiled, nets, sockets);
        nets = nets(plan, panel, changes);
        Layout layout = layout(panel, nets, sockets);
        Columns columns = columns(layout);
        List<Drawing> drawings = new ArrayList<>();
        for (int h = 0; h < plan.hookups().size(); h++) {
            drawings.addAll(new HookupPainter(plan, panel, sockets, changes, layout, columns, h).draw());
        }
        return List.copyOf(drawings);
    }

    /** The widest device with which every text in the boxes has room; but never more sheets for it. */
    private static Layout layout(Panel panel, List<Net> nets, List<Socket> sockets) {
        Layout best = Layout.of(Labels.ALL.get(0), panel, nets, sockets);
        Setting setting = columns(best).setting();
        for (Labels labels : Labels.ALL.subList(1, Labels.ALL.size())) {
            if (setting.easy()) {
                break;
            }
            Layout other = Layout.of(labels, panel, nets, sockets);
            Setting roomier = columns(other).setting();
            boolean better = Setting.ALL.indexOf(roomier) < Setting.ALL.indexOf(setting);
            if (better && other.sheets().size() <= best.sheets().size()) {
                best = other;
                setting = roomier;
            }
        }
        return best;
    }

    private static Columns columns(Layout layout) {
        return Columns.of(
                layout.labels().end(),
                TesterPainter.LEFT,
                layout.sheets().stream()
                        .flatMap(sheet -> sheet.drawn().stream())
                        .toList());
    }

    private static List<Net> nets(Plan plan, Panel panel, Changes changes) {
        return plan.hookups().stream()
                .map(hookup -> Net.of(plan, panel, changes, hookup))
                .toList();
    }
}
