package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * A cell as the kit sees it: how many connections of each leaf, and how many further jacks it is linked to. Cells with
 * equal clusters have the same options.
 */
record Cluster(List<Group> groups) {

    record Group(Leaf leaf, int count) {}

    /** @param counts by leaf, leaves in their fixed order */
    static Cluster of(List<Leaf> leaves, int[] counts) {
        List<Group> groups = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                groups.add(new Group(leaves.get(i), counts[i]));
            }
        }
        return new Cluster(List.copyOf(groups));
    }

    Cluster linked(String jackSocket, int links) {
        if (links == 0) {
            return this;
        }
        List<Group> more = new ArrayList<>(groups);
        more.add(new Group(Leaf.link(jackSocket), links));
        return new Cluster(List.copyOf(more));
    }

    boolean isLinked() {
        return groups.stream().anyMatch(group -> group.leaf().kind() == Leaf.Kind.LINK);
    }

    /** Chains that end in it, links included. */
    int size() {
        return groups.stream().mapToInt(Group::count).sum();
    }

    long reach() {
        return groups.stream().mapToLong(group -> group.leaf().reach()).max().orElse(0);
    }
}
