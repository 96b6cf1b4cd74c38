package leadwright.render.diagram;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Routes the nets of one plan; what it has once routed it knows, since a layout is tried in many sizes. */
final class Router {
    private final List<Socket> sockets;
    private final Map<Asked, Routing> known = new HashMap<>();

    private record Asked(Net net, List<String> rows) {}

    Router(List<Socket> sockets) {
        this.sockets = List.copyOf(sockets);
    }

    List<Socket> sockets() {
        return sockets;
    }

    Routing route(Net net, List<Unit> rows) {
        Asked asked = new Asked(net, rows.stream().map(Unit::id).toList());
        return known.computeIfAbsent(asked, each -> Routing.of(net, rows, sockets));
    }
}
