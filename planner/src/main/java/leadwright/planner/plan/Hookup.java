package leadwright.planner.plan;

import java.util.List;
import java.util.Optional;

/** One arrangement that stays in place while readings are taken. */
public record Hookup(String id, List<Bundle> bundles, List<Chain> chains, List<EarthPath> earth) {
    public Hookup {
        bundles = List.copyOf(bundles);
        chains = List.copyOf(chains);
        earth = List.copyOf(earth);
    }

    public Optional<Bundle> bundleOf(String connection) {
        return bundles.stream()
                .filter(bundle -> bundle.connections().contains(connection))
                .findFirst();
    }

    public Optional<Chain> chainOf(String connection) {
        return chains.stream()
                .filter(chain -> chain.connection().equals(connection))
                .findFirst();
    }
}
