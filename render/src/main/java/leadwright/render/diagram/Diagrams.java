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
        int below = 1;
        Router router = new Router(sockets);
        List<HookupPainter> painters = painters(plan, panel, nets, router, changes, below);
        // What stands below takes its room from the rows: rare, so they are laid out without it first.
        for (int wanted = below(painters); wanted > below; wanted = below(painters)) {
            below = wanted;
            painters = painters(plan, panel, nets, router, changes, below);
        }
        return painters.stream()
                .filter(painter -> !painter.empty())
                .flatMap(painter -> painter.draw().stream())
                .toList();
    }

    private static int below(List<HookupPainter> painters) {
        return painters.stream().mapToInt(HookupPainter::linesBelow).max().orElse(1);
    }

    private static List<HookupPainter> painters(
            Plan plan, Panel panel, List<Net> nets, Router router, Changes changes, int below) {
        Layout layout = layout(panel, nets, router, Labels.all(Below.bottom(below)));
        Columns columns = columns(layout);
        List<HookupPainter> painters = new ArrayList<>();
        for (int h = 0; h < plan.hookups().size(); h++) {
            painters.add(new HookupPainter(plan, panel, router.sockets(), changes, layout, columns, h));
        }
        return painters;
    }

    /** The widest device with which every text in the boxes has room; but never more sheets for it. */
    private static Layout layout(Panel panel, List<Net> nets, Router router, List<Labels> widths) {
        Layout best = Layout.of(widths.get(0), panel, nets, router);
        Setting setting = columns(best).setting();
        for (Labels labels : widths.subList(1, widths.size())) {
            if (setting.easy()) {
                break;
            }
            Layout other = Layout.of(labels, panel, nets, router);
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
