package leadwright.planner.order;

import java.util.Arrays;

/** Nodes of the search in flat arrays: some twelve words each, found by their state through an open hash table. */
final class Store {
    private final int words;
    private int[] site = new int[1024];
    private int[] pose = new int[1024];
    private int[] tie = new int[1024];
    private int[] cost = new int[1024];
    private int[] parent = new int[1024];
    private int[] act = new int[1024];
    private int[] bound = new int[1024];
    private boolean[] expanded = new boolean[1024];
    private long[] done;
    private int[] formTie = new int[1024];
    private long[] form;
    private int[] table = new int[4096];
    private int size;

    Store(int words) {
        this.words = words;
        this.done = new long[1024 * words];
        this.form = new long[1024 * words];
        Arrays.fill(table, -1);
    }

    int size() {
        return size;
    }

    int site(int node) {
        return site[node];
    }

    int pose(int node) {
        return pose[node];
    }

    int tie(int node) {
        return tie[node];
    }

    int cost(int node) {
        return cost[node];
    }

    int parent(int node) {
        return parent[node];
    }

    int act(int node) {
        return act[node];
    }

    int bound(int node) {
        return bound[node];
    }

    boolean expanded(int node) {
        return expanded[node];
    }

    void expand(int node) {
        expanded[node] = true;
    }

    long[] done(int node) {
        return Arrays.copyOfRange(done, node * words, (node + 1) * words);
    }

    /**
     * The node of this state, or the complement of its free slot.
     *
     * @param withTie tie, in the form that stands for all that are alike
     * @param having units taken, in that form
     */
    int find(int atSite, int atPose, int withTie, long[] having) {
        int mask = table.length - 1;
        int slot = hash(atSite, atPose, withTie, having) & mask;
        while (table[slot] >= 0) {
            int node = table[slot];
            if (site[node] == atSite && pose[node] == atPose && formTie[node] == withTie && same(node, having)) {
                return node;
            }
            slot = (slot + 1) & mask;
        }
        return ~slot;
    }

    private boolean same(int node, long[] having) {
        for (int w = 0; w < words; w++) {
            if (form[node * words + w] != having[w]) {
                return false;
            }
        }
        return true;
    }

    private static int hash(int atSite, int atPose, int withTie, long[] having) {
        long h = atSite * 0x9E3779B97F4A7C15L + atPose * 0xC2B2AE3D27D4EB4FL + withTie * 0x165667B19E3779F9L;
        for (long word : having) {
            h = (h ^ word) * 0xFF51AFD7ED558CCDL;
            h ^= h >>> 32;
        }
        return (int) (h ^ (h >>> 29));
    }

    int add(int slot, int atSite, int atPose, int withTie, long[] having, int h) {
        if (size == site.length) {
            grow();
        }
        int node = size++;
        site[node] = atSite;
        pose[node] = atPose;
        formTie[node] = withTie;
        bound[node] = h;
        System.arraycopy(having, 0, form, node * words, words);
        table[slot] = node;
        if (2 * size > table.length) {
            rehash();
        }
        return node;
    }

    /**
     * @param withTie tie, as the way to this node left it
     * @param having units taken, likewise
     */
    void reach(int node, int withTie, long[] having, int g, int from, int by) {
        tie[node] = withTie;
        System.arraycopy(having, 0, done, node * words, words);
        cost[node] = g;
        parent[node] = from;
        act[node] = by;
        expanded[node] = false;
    }

    private void grow() {
        int next = site.length * 2;
        site = Arrays.copyOf(site, next);
        pose = Arrays.copyOf(pose, next);
        tie = Arrays.copyOf(tie, next);
        formTie = Arrays.copyOf(formTie, next);
        cost = Arrays.copyOf(cost, next);
        parent = Arrays.copyOf(parent, next);
        act = Arrays.copyOf(act, next);
        bound = Arrays.copyOf(bound, next);
        expanded = Arrays.copyOf(expanded, next);
        done = Arrays.copyOf(done, next * words);
        form = Arrays.copyOf(form, next * words);
    }

    private void rehash() {
        table = new int[table.length * 2];
        Arrays.fill(table, -1);
        int mask = table.length - 1;
        for (int node = 0; node < size; node++) {
            int slot = hash(
                            site[node],
                            pose[node],
                            formTie[node],
                            Arrays.copyOfRange(form, node * words, (node + 1) * words))
                    & mask;
            while (table[slot] >= 0) {
                slot = (slot + 1) & mask;
            }
            table[slot] = node;
        }
    }
}
