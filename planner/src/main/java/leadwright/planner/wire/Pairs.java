package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * Phase 7f: which two requirements can share a hookup at all.
 *
 * <p>Needs: fitting test. Gives: for a pair whether it fits; for a list of requirements groups of which no hookup holds two
 * of one group. Method: the fitting test, asked once a pair; groups by first fit. Cost: one test a pair. Proof: what does not
 * fit with two does not fit with more.
 */
final class Pairs {
    private static final byte FITS = 1;
    private static final byte APART = 2;

    private final Scene scene;
    private final Fit fit;
    private final byte[][] known;
    private final Draft[] alone;

    Pairs(Scene scene, Fit fit) {
        this.scene = scene;
        this.fit = fit;
        int count = scene.requirements().size();
        this.known = new byte[count][count];
        this.alone = new Draft[count];
    }

    /** Whether it is certain that no hookup holds both. */
    boolean apart(Requirement one, Requirement other) {
        int a = Math.min(one.index(), other.index());
        int b = Math.max(one.index(), other.index());
        if (known[a][b] == 0) {
            if (alone[a] == null) {
                alone[a] = Draft.empty(scene).with(a == one.index() ? one : other);
            }
            Verdict verdict = fit.fits(alone[a], b == one.index() ? one : other);
            known[a][b] = verdict == Verdict.NO ? APART : FITS;
        }
        return known[a][b] == APART;
    }

    /** Groups of requirements that are pairwise apart, by first fit in this order. */
    List<List<Requirement>> groups(List<Requirement> order) {
        List<List<Requirement>> groups = new ArrayList<>();
        for (Requirement each : order) {
            List<Requirement> own = null;
            for (List<Requirement> group : groups) {
                if (own == null && allApart(each, group)) {
                    own = group;
                }
            }
            if (own == null) {
                own = new ArrayList<>();
                groups.add(own);
            }
            own.add(each);
        }
        return groups;
    }

    private boolean allApart(Requirement each, List<Requirement> group) {
        for (Requirement other : group) {
            if (!apart(each, other)) {
                return false;
            }
        }
        return true;
    }
}
