package leadwright.planner.plan;

import java.util.List;

/**
 * What joins one connection to a jack.
 *
 * @param items item instances ({@code press-pin/1}) from the device to the jack
 * @param contacts mated joints in the chain, the device's and the jack's included
 */
public record Chain(String connection, List<String> items, int jack, int contacts) {
    public Chain {
        items = List.copyOf(items);
    }
}
