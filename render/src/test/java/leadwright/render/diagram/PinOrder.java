package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/** The order of the pins in a plan's drawings, and how far it is from the order of their jacks. */
final class PinOrder {
    private PinOrder() {}

    static Panel drawn(Plan plan) {
        Panel panel = Panel.of(plan);
        return RowOrder.order(panel, nets(plan, panel), Socket.of(plan));
    }

    /** The order with the fewest pairs out of order. */
    static Panel oneByOne(Plan plan) {
        Panel panel = Panel.of(plan);
        return RowOrder.oneByOne(panel, nets(plan, panel), Socket.of(plan));
    }

    /** Crossings of all hookups with the pins in this order. */
    static int routed(Plan plan, Panel panel) {
        return nets(plan, panel).stream()
                .mapToInt(net ->
                        Routing.of(net, Units.singles(panel), Socket.of(plan)).crossings())
                .sum();
    }

    private static List<Net> nets(Plan plan, Panel panel) {
        Changes changes = new Changes(plan);
        return plan.hookups().stream()
                .map(hookup -> Net.of(plan, panel, changes, hookup))
                .toList();
    }

    /**
     * Pairs of pins in different bundles whose jacks stand in the other order, and, for a fan-out inside another, the fewest
     * pairs that any place of it among the other wires of its bundle leaves out of order.
     */
    static long pairsOutOfOrder(Panel panel, Hookup hookup) {
        List<Chain> chains = panel.pins().stream()
                .flatMap(pin -> hookup.chainOf(pin.id()).stream())
                .toList();
        long pairs = 0;
        for (int i = 0; i < chains.size(); i++) {
            for (int j = i + 1; j < chains.size(); j++) {
                pairs += chains.get(i).jack() > chains.get(j).jack() ? 1 : 0;
            }
        }
        for (int jack : chains.stream().map(Chain::jack).distinct().toList()) {
            pairs += inner(chains, jack);
        }
        return pairs;
    }

    private static long inner(List<Chain> chains, int jack) {
        List<Integer> inside = new ArrayList<>();
        List<Integer> direct = new ArrayList<>();
        for (int row = 0; row < chains.size(); row++) {
            if (chains.get(row).jack() == jack) {
                (chains.get(row).items().size() > 2 ? inside : direct).add(row);
            }
        }
        long fewest = Long.MAX_VALUE;
        for (int above = 0; above <= direct.size(); above++) {
            long pairs = 0;
            for (int d = 0; d < direct.size(); d++) {
                for (int row : inside) {
                    pairs += d < above == row < direct.get(d) ? 1 : 0;
                }
            }
            fewest = Math.min(fewest, pairs);
        }
        return fewest;
    }
}
